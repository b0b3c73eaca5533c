package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"blankoff/planner/report"
)

// outside programs that some checks need. CI installs them and sets
// BLANKOFF_CHECK_ALL, which makes a missing one a failure.
func need(t *testing.T, names ...string) string {
	t.Helper()
	for _, n := range names {
		if path, err := exec.LookPath(n); err == nil {
			return path
		}
	}
	if os.Getenv("BLANKOFF_CHECK_ALL") != "" {
		t.Fatalf("none of %v is on the PATH, and every check was asked for", names)
	}
	t.Skipf("none of %v is on the PATH", names)
	return ""
}

// opened is a page in a real browser, and what it asked for and complained of.
type opened struct {
	ctx      context.Context
	complain []string
	asked    []string
}

// open opens a plan's page in a headless browser.
func open(t *testing.T, file string) *opened {
	t.Helper()
	return openAt(t, file, "#data")
}

// openAt opens a file in a headless browser and waits for an element.
func openAt(t *testing.T, file, ready string) *opened {
	t.Helper()
	options := append(slices.Clone(chromedp.DefaultExecAllocatorOptions[:]), chromedp.ExecPath(need(t, "chromium", "chromium-browser", "google-chrome")),
		chromedp.NoSandbox, chromedp.DisableGPU, chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-component-update", true),
		chromedp.UserDataDir(t.TempDir()), chromedp.WindowSize(1400, 900))
	alloc, stop := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(stop)
	ctx, stop := chromedp.NewContext(alloc)
	t.Cleanup(stop)
	o := &opened{}
	err := chromedp.Listen(ctx, func(event any) {
		switch e := event.(type) {
		case *runtime.EventConsoleAPICalled:
			o.complain = append(o.complain, fmt.Sprintf("console %s", e.Type))
		case *runtime.EventExceptionThrown:
			o.complain = append(o.complain, fmt.Sprintf("%s, line %d", e.ExceptionDetails.Text, e.ExceptionDetails.LineNumber+1))
		case *network.EventRequestWillBeSent:
			if !strings.HasPrefix(e.Request.URL, "blob:") {
				o.asked = append(o.asked, e.Request.URL)
			}
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	o.ctx, stop = context.WithTimeout(ctx, 90*time.Second)
	t.Cleanup(stop)
	if _, err := chromedp.Call(o.ctx, network.Enable, network.EnableParams{}); err != nil {
		t.Fatal(err)
	}
	path, err := filepath.Abs(file)
	if err != nil {
		t.Fatal(err)
	}
	o.do(t, chromedp.Navigate("file://"+path), chromedp.WaitReady(ready))
	return o
}

// do carries out steps.
func (o *opened) do(t *testing.T, steps ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	if err := chromedp.Do(o.ctx, steps...); err != nil {
		t.Fatal(err)
	}
}

// text is what an element of the page says.
func (o *opened) text(t *testing.T, id string) string {
	t.Helper()
	text, err := chromedp.Run(o.ctx, chromedp.Text(id))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// eval runs a script in the page and reads what it gives.
func (o *opened) eval(t *testing.T, script string, to any) {
	t.Helper()
	text, err := chromedp.Run(o.ctx, chromedp.Evaluate[string]("JSON.stringify("+script+")"))
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal([]byte(text), to); err != nil {
		t.Fatalf("%s gave %.200s: %v", script, text, err)
	}
}

// packOf plans into a pack and gives its folder.
func packOf(t *testing.T, line string) string {
	t.Helper()
	dir := t.TempDir()
	var stdout, stderr bytes.Buffer
	args := append(strings.Fields(line), "-o", dir)
	if code := run(args, &stdout, &stderr); code != exitDone && code != exitPartly {
		t.Fatalf("%s: exit %d\n%s", line, code, stderr.String())
	}
	return dir
}

// TestPageInBrowser opens the page of an example: nothing is asked of a network,
// nothing complains, everything that can be used has a name, and what is typed
// into the schedule stays text.
func TestPageInBrowser(t *testing.T) {
	dir := packOf(t, "plan ../../examples/site-lead/schedule.csv --rig ../../examples/site-lead/rig.toml")
	o := open(t, filepath.Join(dir, "plan.html"))
	o.do(t, chromedp.SendKeys("#what", "sa-230\r"), chromedp.Click("#try"), chromedp.Click("#in"), chromedp.Click("#fit"))
	said := o.text(t, "#said")
	o.do(t, chromedp.Click("#try"), chromedp.SendKeys("#what", "\r"))
	if panel := o.text(t, "#panel"); !strings.Contains(said, "SA-230") || !strings.Contains(panel, "Section S07") {
		t.Errorf("looking for a tag says %q and shows %q", said, panel)
	}
	if len(o.complain) > 0 {
		t.Errorf("the page complains: %s", o.complain)
	}
	for _, url := range o.asked {
		if !strings.HasPrefix(url, "file://") || !strings.HasSuffix(url, "plan.html") {
			t.Errorf("the page asks for %s", url)
		}
	}
	tree, err := chromedp.Call(o.ctx, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	if err != nil {
		t.Fatal(err)
	}
	named := 0
	for _, n := range tree.Nodes {
		if n.Ignored || n.Role == nil {
			continue
		}
		switch role := strings.Trim(string(n.Role.Value), `"`); role {
		case "button", "link", "image", "searchbox", "textbox", "article", "region", "group", "navigation", "complementary":
			if n.Name == nil || strings.Trim(string(n.Name.Value), `" `) == "" {
				t.Errorf("a %s has no name (%v)", role, n.BackendDOMNodeID)
			}
			named++
		}
	}
	if named < 40 {
		t.Errorf("only %d things with names in the page", named)
	}
}

// tried is a section as the page works it out.
type tried struct {
	Area  float64 `json:"area"`
	Limit float64 `json:"limit"`
	State string  `json:"state"`
	Blank int     `json:"blanks"`
}

// TestTriedCutsAreThePlans tries cuts in the page and gives the list that it
// saves to plan --cuts: areas, limits, states and blanks have to be the same
// wherever those cuts need nothing added, and the score as given always.
func TestTriedCutsAreThePlans(t *testing.T) {
	schedule, err := os.ReadFile("../../examples/site-lead/schedule.csv")
	if err != nil {
		t.Fatal(err)
	}
	for name, flags := range map[string]string{
		"as planned": "", "on a basis": " --basis centre-line", "both bases": " --basis largest-girth --hold-both", "least and most": " --min-area 12 --max-area 60",
	} {
		t.Run(name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(6, uint64(len(flags))))
			need(t, "chromium", "chromium-browser", "google-chrome")
			site(t, map[string]string{"site.csv": string(schedule)})
			line := "plan site.csv --rig rig.toml" + flags
			o := open(t, filepath.Join(packOf(t, line), "plan.html"))
			var free, planned []int
			o.eval(t, "blankoff.data.joints.map((j, k) => [j, k]).filter(([j]) => !j.bar && !j.fix && j.cut).map(([, k]) => k)", &planned)
			o.eval(t, "blankoff.data.joints.map((j, k) => [j, k]).filter(([j]) => !j.bar && !j.fix && !j.loose).map(([, k]) => k)", &free)
			whole := 0
			const states = 8
			for i := range states {
				list := free
				if i%2 == 0 && len(planned) > 0 { // sections grow too large
					list = planned
				}
				for range 1 + r.IntN(3) {
					o.eval(t, fmt.Sprintf("(blankoff.toggle(%d), 0)", list[r.IntN(len(list))]), new(int))
				}
				if sameAsPlanned(t, o, line) {
					whole++
				}
			}
			if len(o.complain) > 0 {
				t.Errorf("the page complains: %s", o.complain)
			}
			t.Logf("%d states tried, %d of them needing nothing added", states, whole)
		})
	}
}

// sameAsPlanned compares what the page says with a plan of the same cuts, and
// reports whether those needed nothing added.
func sameAsPlanned(t *testing.T, o *opened, line string) bool {
	t.Helper()
	var list string
	var parts []tried
	var score struct{ Tests, Over, Under int }
	o.eval(t, "blankoff.cutList()", &list)
	o.eval(t, "blankoff.parts().map(({area, limit, state, blanks}) => ({area, limit, state, blanks}))", &parts)
	o.eval(t, "blankoff.score()", &score)
	if err := os.WriteFile("own.csv", []byte(list), 0o644); err != nil {
		t.Fatal(err)
	}
	var stdout, stderr bytes.Buffer
	if code := run(append(strings.Fields(line), "--cuts", "own.csv", "--format", "json"), &stdout, &stderr); code != exitDone && code != exitPartly {
		t.Fatalf("exit %d\n%s\n%s", code, stderr.String(), list)
	}
	var v report.Plan
	if err := json.Unmarshal(stdout.Bytes(), &v); err != nil {
		t.Fatal(err)
	}
	as := v.OwnCuts.AsGiven
	if as.Tests != score.Tests || as.OverRange != score.Over || as.UnderRange != score.Under {
		t.Fatalf("the page says %+v, the plan %+v with\n%s", score, as, list)
	}
	if as.Tests != v.Proof.Tests || len(v.Sections) != len(parts) {
		return false
	}
	var planned []tried
	for i := range v.Sections {
		s := &v.Sections[i]
		state := "in range"
		if s.OverRange {
			state = "over range"
		} else if s.UnderRange {
			state = "under range"
		}
		planned = append(planned, tried{s.Area, s.Limit, state, len(s.Blanks)})
	}
	byArea := func(a, b tried) int {
		if math.Abs(a.Area-b.Area) > 1e-9 {
			return int(math.Copysign(1, a.Area-b.Area))
		}
		return a.Blank - b.Blank
	}
	slices.SortFunc(planned, byArea)
	slices.SortFunc(parts, byArea)
	for i, p := range planned {
		if q := parts[i]; math.Abs(p.Area-q.Area) > 1e-9 || math.Abs(p.Limit-q.Limit) > 1e-9 || p.State != q.State || p.Blank != q.Blank {
			t.Fatalf("the page says %+v, the plan %+v with\n%s", q, p, list)
		}
	}
	return true
}

// TestPrintedCards prints the page: every card is on exactly one sheet of paper,
// and no sheet has two.
func TestPrintedCards(t *testing.T) {
	reader := need(t, "pdftotext")
	for name, line := range map[string]string{
		"site lead": "plan ../../examples/site-lead/schedule.csv --rig ../../examples/site-lead/rig.toml",
		"estimator": "plan ../../examples/estimator/tender-schedule.xlsx --rig ../../examples/estimator/rig.toml --class B --test-pressure 400",
	} {
		t.Run(name, func(t *testing.T) {
			dir := packOf(t, line)
			var v report.Plan
			data, err := os.ReadFile(filepath.Join(dir, "plan.json"))
			if err != nil {
				t.Fatal(err)
			}
			if err := json.Unmarshal(data, &v); err != nil {
				t.Fatal(err)
			}
			o := open(t, filepath.Join(dir, "plan.html"))
			yes := true
			pdf, err := chromedp.Run(o.ctx, chromedp.PrintToPDF(func(p *page.PrintToPDFParams) { p.PreferCSSPageSize = &yes }))
			if err != nil {
				t.Fatal(err)
			}
			file := filepath.Join(dir, "printed.pdf")
			if err := os.WriteFile(file, pdf, 0o644); err != nil {
				t.Fatal(err)
			}
			text, err := exec.Command(reader, "-layout", file, "-").Output()
			if err != nil {
				t.Fatal(err)
			}
			onePageEach(t, strings.Split(string(text), "\f"), len(v.Sections))
		})
	}
}

// onePageEach looks that each card's head and foot are on one page of their own.
func onePageEach(t *testing.T, pages []string, cards int) {
	t.Helper()
	found := 0
	for i, p := range pages {
		heads, feet := strings.Count(p, "What a reading means"), strings.Count(p, "witnessed by")
		if heads == 0 && feet == 0 {
			continue
		}
		if foot := fmt.Sprintf("card %d of %d", found+1, cards); heads != 1 || !strings.Contains(p, foot) || feet != 1 {
			t.Errorf("page %d has %d heads and %d feet of cards; want card %d whole:\n%s", i+1, heads, feet, found+1, p)
		}
		found++
	}
	if found != cards {
		t.Errorf("%d cards were printed, want %d", found, cards)
	}
}

// TestLargePageOpens opens the page of a plan with 500 sections.
func TestLargePageOpens(t *testing.T) {
	need(t, "chromium", "chromium-browser", "google-chrome")
	var b strings.Builder
	b.WriteString("tag,system,level,kind,shape,width_mm,height_mm,length_mm,from,class,test_pa\n")
	for s := range 126 {
		for i := range 30 {
			from := ""
			if i > 0 {
				from = fmt.Sprintf("S%d-%d", s, i-1)
			}
			fmt.Fprintf(&b, "S%d-%d,AHU %d,L%d,straight,rectangular,1000,800,9000,%s,B,400\n", s, i, s, i/6, from)
		}
	}
	site(t, map[string]string{"site.csv": b.String()})
	dir := packOf(t, "plan site.csv --rig rig.toml")
	o := open(t, filepath.Join(dir, "plan.html"))
	var sections int
	o.eval(t, "blankoff.data.sections.length", &sections)
	if sections < 500 {
		t.Errorf("%d sections, want 500 or more", sections)
	}
	least := math.Inf(1)
	for range 5 { // the machine may be busy with other tests
		var took float64
		o.do(t, chromedp.Reload(), chromedp.WaitReady("#data"))
		o.eval(t, "performance.getEntriesByType('navigation')[0].duration", &took)
		least = min(least, took)
	}
	t.Logf("%d sections open in %.0f ms", sections, least)
	if least > 2000 {
		t.Errorf("the page takes %.0f ms to open, want under 2 s", least)
	}
	if len(o.complain) > 0 {
		t.Errorf("the page complains: %s", o.complain)
	}
}
