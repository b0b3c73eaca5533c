package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"blankoff/planner/report"
)

// checked runs check on a schedule and gives its view and exit code.
func checked(t *testing.T, schedule string, more ...string) (*report.Check, int) {
	t.Helper()
	path := filepath.Join(t.TempDir(), "stated.csv")
	if err := os.WriteFile(path, []byte(schedule), 0o644); err != nil {
		t.Fatal(err)
	}
	var out, talk bytes.Buffer
	code := run(append([]string{"check", path, "--format", "json"}, more...), &out, &talk)
	v := &report.Check{}
	if code == exitDone || code == exitPartly {
		if err := json.Unmarshal(out.Bytes(), v); err != nil {
			t.Fatalf("%v\n%s", err, talk.String())
		}
	}
	return v, code
}

const ducts = "tag,system,kind,shape,width_mm,height_mm,length_mm,class,test_pa,stated_area_m2\n"

// Exit codes and verdicts. 600 x 400, 1.2 m: 2 x (0.6 + 0.4) x 1.2 = 2.40 m2; its
// cross-section is 0.24 m2.
func TestCheckVerdicts(t *testing.T) {
	for name, tt := range map[string]struct {
		rows    string
		more    []string
		code    int
		verdict string
	}{
		"agrees":         {"A,S,straight,rectangular,600,400,1200,B,400,2.40\n", nil, exitDone, "agrees"},
		"within 1 %":     {"A,S,straight,rectangular,600,400,1200,B,400,2.42\n", nil, exitDone, "within tolerance"},
		"not within 0 %": {"A,S,straight,rectangular,600,400,1200,B,400,2.42\n", []string{"--tolerance", "0"}, exitPartly, "differs"},
		"differs":        {"A,S,straight,rectangular,600,400,1200,B,400,0.24\n", nil, exitPartly, "differs"},
		"no area":        {"A,S,straight,rectangular,600,400,,B,400,0.24\nB,S,straight,rectangular,600,400,1200,B,400,2.4\n", nil, exitPartly, "no area"},
	} {
		v, code := checked(t, ducts+tt.rows, tt.more...)
		if code != tt.code || len(v.Rows) == 0 || v.Rows[0].Verdict != tt.verdict {
			t.Errorf("%s: exit %d, %+v", name, code, v.Rows)
		}
	}
	for _, args := range [][]string{{"check"}, {"check", "x.csv", "--tolerance", "-1"}, {"check", "x.csv", "--sign", "up"}, {"check", "x.csv", "--class", "Q"}, {"check", "x.csv", "--units", "us"}, {"check", "x.csv", "--units", "mm"}} {
		if code := run(args, &bytes.Buffer{}, &bytes.Buffer{}); code != exitMisuse {
			t.Errorf("%v: exit %d", args, code)
		}
	}
	if _, code := checked(t, "tag,kind,diameter_mm\nA,cap,200\n"); code != exitFailed {
		t.Errorf("nothing stated: exit %d", code)
	}
}

// TestCheckExample holds what the example's letter says against figures worked
// out by hand: S1 is 2 x (0.9 + 0.6) x 9 = 27.00 m2 outside 50 mm, 23.40 m2 as it
// is; class B at 400 Pa permits 0.4421 L/s per m2.
func TestCheckExample(t *testing.T) {
	var out bytes.Buffer
	dir := "../../examples/engineer/"
	if code := run([]string{"check", dir + "specified.csv", "--stated", dir + "specified-totals.csv", "--format", "json"}, &out, &bytes.Buffer{}); code != exitPartly {
		t.Fatalf("exit %d", code)
	}
	var v report.Check
	if err := json.Unmarshal(out.Bytes(), &v); err != nil {
		t.Fatal(err)
	}
	if r := v.Reason; r.Sure != "certain" || len(r.Causes) != 1 || strings.Join(r.Causes[0].Keys, " ") != "outside-insulation-50 openings-kept" || r.Causes[0].Hits != 24 {
		t.Errorf("%+v", r)
	}
	if x := v.Rows[0]; math.Abs(*x.Area-23.4) > 1e-9 || math.Abs(x.Stated-27) > 1e-9 {
		t.Errorf("%+v", x)
	}
	if e := v.Effects[0]; e.Proves != "A" || !e.PassStated || e.Pass || math.Abs(e.BreakEven-47.5/0.44216) > 0.01 {
		t.Errorf("%+v", e)
	}
	running := v.Reckoning.Stated
	for _, l := range v.Reckoning.Lines {
		running += l.Change
	}
	if math.Abs(running-v.Reckoning.Area) > 1e-9 || math.Abs(v.Reckoning.Difference) > 1e-9 {
		t.Errorf("the steps leave %g m2", running-v.Reckoning.Area)
	}
}

// hostileAreas is a schedule whose every text is long and wants to be markup.
func hostileAreas() string {
	var b strings.Builder
	b.WriteString(ducts)
	for i := range 400 {
		bad := fmt.Sprintf("<script>alert(%d)</script>%s", i, strings.Repeat("W", 60+i%40))
		stated, mm := fmt.Sprintf("%.2f", float64(1+i%7)), strconv.Itoa(900+i)
		switch i % 10 {
		case 3:
			stated = "" // states none
		case 7:
			mm = "" // has none of ours
		}
		fmt.Fprintf(&b, "%s,%s<b>%d,straight,rectangular,600,400,%s,B,400,%s\n", bad, strings.Repeat("system ", 12), i%9, mm, stated)
	}
	return b.String()
}

// hostileSums are sums of what is there and of what isn't, and lines that are none.
func hostileSums() string {
	var b strings.Builder
	b.WriteString("system,stated_area_m2,reading_l_s\n")
	for i := range 40 {
		name := strings.Repeat("system ", 12)
		fmt.Fprintf(&b, "%s<b>%d,%d.25,20.125\n%s,%s\n", name, i, 900+i, strings.Repeat("Q", 70+i), map[bool]string{true: "", false: "<i>odd"}[i%2 == 0])
	}
	return b.String()
}

// TestLetterIsTwoPages prints letters, that of the example and one of a hostile
// schedule, and counts the pages; nothing may be cut off on either.
func TestLetterIsTwoPages(t *testing.T) {
	dir := t.TempDir()
	bad := filepath.Join(dir, "h.csv")
	job := filepath.Join(dir, "job.toml")
	sums := filepath.Join(dir, "w.csv")
	long := strings.Repeat("very long & <i>odd</i> ", 30)
	for name, text := range map[string]string{bad: hostileAreas(), sums: hostileSums(), job: fmt.Sprintf("project = %q\nclient = %q\nreference = %q\nclause = %q\n[letter]\nto = %q\nfrom = %q\ndate = %q\n", long, long, long, long, long, long, long)} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	example := "../../examples/engineer/"
	for name, args := range map[string][]string{
		"example": {"check", example + "specified.csv", "--stated", example + "specified-totals.csv", "--job", example + "job.toml"},
		"areas":   {"check", example + "areas.csv", "--reading", "23.4"},
		"hostile": {"check", bad, "--job", job, "--stated", sums},
	} {
		out := filepath.Join(dir, name)
		if code := run(append(args, "-o", out), &bytes.Buffer{}, &bytes.Buffer{}); code != exitPartly {
			t.Fatalf("%s: exit %d", name, code)
		}
		text, err := os.ReadFile(filepath.Join(out, "letter.html"))
		if err != nil {
			t.Fatal(err)
		}
		if s := string(text); strings.Contains(s, "<script") || strings.Contains(s, "<i>odd") || strings.Contains(s, "http://") {
			t.Errorf("%s: the letter holds markup of the schedule, or asks for something", name)
		}
		o := openAt(t, filepath.Join(out, "letter.html"), "main")
		var over []float64
		o.eval(t, `[...document.querySelectorAll(".page")].map(p => { const f = p.querySelector("footer").getBoundingClientRect(); return Math.max(...[...p.children].filter(c => c.tagName != "FOOTER").map(c => c.getBoundingClientRect().bottom)) - f.top })`, &over)
		for i, px := range over {
			if px > 0 {
				t.Errorf("%s: page %d runs %g px into its foot", name, i+1, px)
			}
		}
		yes := true
		pdf, err := chromedp.Run(o.ctx, chromedp.PrintToPDF(func(p *page.PrintToPDFParams) { p.PreferCSSPageSize = &yes }))
		if err != nil {
			t.Fatal(err)
		}
		if n := len(regexp.MustCompile(`/Type /Page\b[^s]`).FindAll(pdf, -1)); n != 2 {
			t.Errorf("%s: %d pages, want 2", name, n)
		}
		if len(o.complain) > 0 || len(o.asked) > 1 {
			t.Errorf("%s: %v %v", name, o.complain, o.asked)
		}
	}
}

// Rows that name no system are told as such beside a system, not as everything; one
// row that can't be measured is one row.
func TestCheckNamesWhatItIsOf(t *testing.T) {
	const a, b, c = "A,,straight,rectangular,600,400,1200,B,400,2.90\n", "B,S1,straight,rectangular,600,400,1200,B,400,2.80\n", "C,S1,straight,rectangular,600,400,,B,400,2.80\n"
	for _, tt := range []struct {
		rows      string
		want, not []string
	}{
		{a + b + c, []string{"rows without a system", "system S1", "sizes of the row that can't be measured as it stands"}, []string{"verything stated", "1 rows"}},
		{a, []string{"everything stated"}, []string{"without a system"}},
		{a + "D,,cap,rectangular,600,400,,B,400,\n", []string{"ows without a system (1 of 2):"}, []string{"rows rows", "2 rows)"}},
		{b + "D,S1,cap,rectangular,600,400,,B,400,\n", []string{"system S1 (1 of 2 rows)"}, nil},
		{b + c + strings.Replace(c, "C", "D", 1), []string{"sizes of the 2 rows that can't be measured as they stand"}, nil},
	} {
		site(t, map[string]string{"x.csv": ducts + tt.rows})
		_, out, _ := typed(t, "check x.csv")
		told := strings.Join(strings.Fields(out), " ")
		for _, w := range tt.want {
			if !strings.Contains(told, w) {
				t.Errorf("%q isn't said:\n%s", w, out)
			}
		}
		for _, w := range tt.not {
			if strings.Contains(told, w) {
				t.Errorf("%q is said:\n%s", w, out)
			}
		}
	}
}
