package html

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"blankoff/planner"
	"blankoff/planner/report"
	"blankoff/planner/report/card"
	"blankoff/planner/report/keyplan"
	"blankoff/planner/rig"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
)

// aRig reads 0.1 L/s to 2,000 L/s; made up.
const aRig = "name = \"rig\"\n[[range]]\nname = \"only\"\nmin_l_s = 0.1\nmax_l_s = 2000\naccuracy_percent = 3\naccuracy_l_s = 0.01\nown_leak_l_s = 0\n"

// planned is the plan of a main with so many spigots, at class C and 500 Pa.
func planned(t *testing.T, spigots int) *report.Plan {
	t.Helper()
	var b strings.Builder
	b.WriteString("tag,system,level,kind,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,at_mm,from\n")
	from := ""
	for i := range spigots {
		fmt.Fprintf(&b, "M%d,S1,Level %d & <up>,straight,500,9000,,,,%s\nP%d,S1,Level %d & <up>,spigot,,,160,100,4500,M%d\n", i, i/6, from, i, i/6, i)
		from = fmt.Sprintf("M%d", i)
	}
	r, _, err := rig.Load(strings.NewReader(aRig), "rig.toml")
	if err != nil {
		t.Fatal(err)
	}
	tk := takeoff.New(takeoff.Options{})
	info, err := schedule.ReadFrom("ducts.csv", []byte(b.String()), func(r *takeoff.Row) error { tk.Add(r); return nil })
	if err != nil {
		t.Fatal(err)
	}
	tk.Finish(info.Schedule, info.Faults, info.Notes)
	set := planner.Defaults()
	set.Rigs, set.Class, set.TestPa, set.Sign, set.MaxArea = rig.Fleet{r}, "C", 500, "positive", 260
	p, err := planner.Make(tk, set)
	if err != nil || len(p.Faults) > 0 {
		t.Fatalf("%v %+v", err, p.Faults)
	}
	return report.Of(p)
}

var (
	articles = regexp.MustCompile(`(?s)<article.*?</article>`)
	bold     = regexp.MustCompile(`font-weight="700">([^<]*)</text>`)
)

// A card of the page draws the number of every blank, the rig and the tapping, and
// names each of them in its list; what must never be exceeded stands before the
// readings.
func TestCardsOfThePage(t *testing.T) {
	v := planned(t, 40)
	var b bytes.Buffer
	if err := Plan(&b, v); err != nil {
		t.Fatal(err)
	}
	list, cards := articles.FindAllString(b.String(), -1), card.All(v)
	if len(list) != len(cards) || len(cards) < 2 {
		t.Fatalf("%d cards on the page, want %d", len(list), len(cards))
	}
	for i, text := range list {
		drawn := map[string]bool{}
		for _, m := range bold.FindAllStringSubmatch(text, -1) {
			drawn[m[1]] = true
		}
		for _, k := range cards[i].EveryBlank {
			want := k.Number
			if k.Rig {
				want += " rig"
			}
			if k.Tap {
				want += " tapping"
			}
			if !drawn[want] {
				t.Errorf("%s: %q isn't drawn", cards[i].ID, want)
			}
			if !strings.Contains(text, "<td>"+k.Number+"</td>") && !strings.Contains(text, `<span class="box">`+k.Number+" ") {
				t.Errorf("%s: blank %s isn't in the list", cards[i].ID, k.Number)
			}
		}
		if warn, read := strings.Index(text, "Never above"), strings.Index(text, "<h3>Readings"); warn < 0 || warn > read {
			t.Errorf("%s: the caution stands at %d, the readings at %d", cards[i].ID, warn, read)
		}
		if strings.Contains(text, "<up>") {
			t.Errorf("%s: text of the schedule is markup", cards[i].ID)
		}
	}
}

// Widths are those of Liberation Sans, as metric as Arial, or a little more.
// From the font: advances in 1/2048 em.
func TestWidth(t *testing.T) {
	for text, ems := range map[string]float64{
		"0123456789": 10 * 1139.0 / 2048,
		"SA-101":     (1366 + 1366 + 682 + 3*1139) / 2048.0,
		"tapping":    (569 + 1139 + 1139 + 1139 + 455 + 1139 + 1139) / 2048.0,
	} {
		mm := ems * 8 * 25.4 / 72
		if got := (&sketch{}).Width(text, keyplan.Type{Size: 8}); got < mm || got > 1.15*mm {
			t.Errorf("%q: %.2f mm, the font has %.2f", text, got, mm)
		}
	}
}

// No line breaks inside an option, and text of the schedule stays text.
func TestProse(t *testing.T) {
	for in, want := range map[string]string{
		"plan again with --sign negative": `plan again with <span class="option">--sign</span> negative`,
		"--test-pressure 500 was given":   `<span class="option">--test-pressure</span> 500 was given`,
		"<b>--x</b> a--b & -1":            `&lt;b&gt;<span class="option">--x</span>&lt;/b&gt; a--b &amp; -1`,
	} {
		if got := string(prose(in)); got != want {
			t.Errorf("%q became %q, want %q", in, got, want)
		}
	}
}
