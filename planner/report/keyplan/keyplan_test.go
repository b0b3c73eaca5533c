package keyplan

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"sort"
	"strings"
	"testing"

	"blankoff/planner"
	"blankoff/planner/report"
	"blankoff/planner/report/card"
	"blankoff/planner/rig"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
	"blankoff/takeoff/terms"
)

// aRig reads 0.1 L/s to 2,000 L/s; made up.
const aRig = "name = \"rig\"\n[[range]]\nname = \"only\"\nmin_l_s = 0.1\nmax_l_s = 2000\naccuracy_percent = 3\naccuracy_l_s = 0.01\nown_leak_l_s = 0\n"

// planned is the view of the plan of a schedule, at class C and 500 Pa.
func planned(t testing.TB, csv string, cap float64) *report.Plan {
	t.Helper()
	r, _, err := rig.Load(strings.NewReader(aRig), "rig.toml")
	if err != nil {
		t.Fatal(err)
	}
	tk := takeoff.New(takeoff.Options{})
	info, err := schedule.ReadFrom("ducts.csv", []byte(csv), func(r *takeoff.Row) error { tk.Add(r); return nil })
	if err != nil {
		t.Fatal(err)
	}
	tk.Finish(info.Schedule, info.Faults, info.Notes)
	set := planner.Defaults()
	set.Rigs, set.Class, set.TestPa, set.Sign, set.MaxArea = rig.Fleet{r}, "C", 500, "positive", cap
	p, err := planner.Make(tk, set)
	if err != nil || len(p.Faults) > 0 {
		t.Fatalf("%v %+v", err, p.Faults)
	}
	return report.Of(p)
}

// bush is n straights and spigots of random lengths that hang on each other, on
// several levels, with long tags as models of buildings have them.
func bush(seed uint64, n int) string {
	r := rand.New(rand.NewPCG(seed, 9))
	var b strings.Builder
	b.WriteString("tag,system,level,kind,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,at_mm,from\n")
	level := []string{"Second Floor", "First Floor", "Ground Floor", "Basement of the Long East Wing by the River"}
	type duct struct {
		tag   string
		level int
		from  string
	}
	var ducts []duct
	for i := range n {
		d := duct{tag: fmt.Sprintf("0rcx3NRlHCjxDJbh%03d", i), level: 1}
		if i > 0 {
			up := ducts[max(0, i-1-r.IntN(1+r.IntN(7)))]
			d.from, d.level = up.tag, up.level
			if r.IntN(5) == 0 {
				d.level = r.IntN(len(level))
			}
			if slices.ContainsFunc(ducts, func(o duct) bool { return o.from == d.from }) { // hangs sideways
				fmt.Fprintf(&b, "%sp,S1,%s,spigot,,,160,100,%d,%s\n", d.tag, level[up.level], 200+r.IntN(800), d.from)
				d.from = d.tag + "p"
			}
		}
		fmt.Fprintf(&b, "%s,S1,%s,straight,%d,%d,,,,%s\n", d.tag, level[d.level], []int{315, 160}[min(i, 1)], 1200+r.IntN(9000), d.from)
		ducts = append(ducts, d)
	}
	return b.String()
}

// paper notes what is drawn. Letters are as wide as digits of usual fonts.
type paper struct {
	texts []written
	lines []drawn
	boxes []rect
}

type written struct {
	rect
	text string
	Type
}

type drawn struct {
	weight float64
	grey   int
	at     []float64
}

func (p *paper) Line(weight float64, grey int, points ...float64) {
	p.lines = append(p.lines, drawn{weight, grey, points})
}
func (p *paper) Box(x, y, w, h, weight float64, _ int) {
	p.boxes = append(p.boxes, rect{x, y, x + w, y + h, 0})
}
func (p *paper) Text(x, y float64, text string, f Type) {
	rise := f.Size * mmPerPoint
	p.texts = append(p.texts, written{rect{x, y - 0.7*rise, x + p.Width(text, f), y, 0}, text, f})
}
func (p *paper) Width(text string, f Type) float64 {
	return 0.56 * f.Size * mmPerPoint * float64(len([]rune(text)))
}
func (p *paper) Safe(text string) string { return text }

// numbered are what the blanks of a card have to show.
func numbered(c *card.Card) map[string]bool {
	out := map[string]bool{}
	for i := range c.EveryBlank {
		b := &c.EveryBlank[i]
		text := b.Number
		if b.Rig {
			text += " rig"
		}
		if b.Tap {
			text += " tapping"
		}
		out[text] = true
	}
	return out
}

// Every blank's number, the rig and the tapping are drawn once, or named as what
// had no room; where a card's drawing has the height that it asks for, all are
// drawn up to 24 blanks. None lies on a text, on a black line or on a mark, and
// each is nearest to its own mark, or at the end of a leader from it.
func TestEveryNumberIsDrawn(t *testing.T) {
	all, lost, led := 0, 0, 0
	for seed := range uint64(40) {
		v := planned(t, bush(seed, 8+int(seed)), []float64{0, 30, 60}[seed%3])
		for i, c := range card.All(v) {
			d := Of(v, i, &c)
			want := numbered(&c)
			for _, high := range []float64{23, 40, d.High()} {
				p := &paper{}
				missing := d.Draw(p, 182, high)
				what := fmt.Sprintf("seed %d, %s, %.0f mm", seed, c.ID, high)
				found := map[string]int{}
				for k, x := range p.texts {
					if want[x.text] && x.Bold {
						found[x.text]++
						led += p.held(t, what, k)
					}
				}
				for text := range want {
					if all++; found[text] == 0 {
						lost++
						if !slices.Contains(missing.Numbers, text) {
							t.Errorf("%s: %s is neither drawn nor named", what, text)
						}
					}
					if found[text] > 1 {
						t.Errorf("%s: %s is drawn %d times", what, text, found[text])
					}
				}
				if len(missing.Numbers) > 0 && high == d.High() && len(want) <= 24 {
					t.Errorf("%s: of %d blanks, no room for %v", what, len(want), missing.Numbers)
				}
			}
		}
	}
	if lost*200 > all || led == 0 {
		t.Errorf("%d of %d numbers had no room, %d stand at a leader", lost, all, led)
	}
}

// held looks where a number stands, and says whether it is at a leader: 1 or 0.
func (p *paper) held(t *testing.T, what string, k int) int {
	t.Helper()
	x := p.texts[k]
	for j, o := range p.texts {
		if j != k && o.meets(x.rect) {
			t.Errorf("%s: %s lies on %s", what, x.text, o.text)
		}
	}
	for _, b := range p.boxes {
		if b.x1-b.x0 < 2 && b.meets(x.rect) {
			t.Errorf("%s: %s lies on a square", what, x.text)
		}
	}
	near := math.Inf(1)
	for _, l := range p.lines {
		x0, y0, x1, y1 := l.at[0], l.at[1], l.at[len(l.at)-2], l.at[len(l.at)-1]
		if l.weight == 0.13 {
			near = min(near, x.gap(x1, y1))
		} else if l.grey < 100 && len(l.at) == 4 && x.meets(rect{min(x0, x1), min(y0, y1), max(x0, x1) + 1e-6, max(y0, y1) + 1e-6, 0}) {
			t.Errorf("%s: %s lies on a line", what, x.text)
		}
	}
	if near < 0.6 {
		return 1
	}
	return 0
}

// All levels are named at the height that a drawing asks for, those of the section
// in black, and every one is drawn or named as missing at any height.
func TestLevelsAreNamed(t *testing.T) {
	several := 0
	for seed := range uint64(20) {
		v := planned(t, bush(seed, 24), 40)
		for i, c := range card.All(v) {
			d := Of(v, i, &c)
			for _, high := range []float64{12, 23, d.High()} {
				p := &paper{}
				missing := d.Draw(p, 182, high)
				var black, any string
				for k, x := range p.texts {
					if x.Size == levelType.Size && !x.Bold {
						if x.y0 < 0 || x.y1 > high || slices.ContainsFunc(p.texts[:k], func(o written) bool { return o.meets(x.rect) }) {
							t.Errorf("seed %d, %s, %.0f mm: %s lies on a text, or outside", seed, c.ID, high, x.text)
						}
						any += x.text + " "
						if !x.Grey {
							black += x.text + " "
						}
					}
				}
				for _, level := range v.Sections[i].Levels {
					word, _, _ := strings.Cut(level, " ")
					if !strings.Contains(black, word) && (high == d.High() || !strings.Contains(missing.Text(), word)) {
						t.Errorf("seed %d, %s, %.0f mm: %s isn't named in black among %q, missing %q", seed, c.ID, high, level, any, missing.Text())
					}
				}
				if len(v.Sections[i].Levels) > 1 {
					several++
				}
			}
		}
	}
	if several == 0 {
		t.Error("no section with several levels")
	}
}

func TestMissing(t *testing.T) {
	many := make([]string, 30)
	for i := range many {
		many[i] = fmt.Sprint(i + 1)
	}
	for _, c := range []struct {
		m    Missing
		want string
	}{
		{Missing{}, ""},
		{Missing{Tags: 1}, "No room for: a tag."},
		{Missing{Numbers: []string{"4 rig"}, Levels: []string{"Roof"}, Tags: 3}, "No room for: number 4 rig; level Roof; 3 tags."},
		{Missing{Numbers: []string{"4", "12"}, Sections: []string{"S01", "S09"}}, "No room for: numbers 4, 12; sections S01, S09."},
		{Missing{Numbers: many}, "No room for: numbers 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23 and 7 more."},
	} {
		if got := c.m.Text(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	// Numbers without room are named in the order of the list of blanks: 2 before 10.
	v := planned(t, bush(3, 40), 0)
	c := card.All(v)[0]
	if m := Of(v, 0, &c).Draw(&paper{}, 12, 5); len(m.Numbers) < 11 || !sort.SliceIsSorted(m.Numbers, func(i, k int) bool { return terms.NaturalLess(m.Numbers[i], m.Numbers[k]) }) {
		t.Errorf("%q", m.Numbers)
	}
}

// A ring that has to be cut at one joint and fits one section has two blanks at that
// joint: both numbers stand there, each line of the card says which side it is, and
// the tapping is at one of them.
func TestBothSidesOfACutInOneSection(t *testing.T) {
	v := planned(t, "tag,system,kind,width_mm,height_mm,length_mm,branch_width_mm,branch_height_mm,branch_length_mm,from,joins,blank_minutes\n"+
		"A,S,straight,600,400,3000,,,,,,\nT,S,tee,600,400,800,600,400,200,A,,\nB,S,straight,600,400,3000,,,,T,,\nC,S,straight,600,400,3000,,,,B,E,must\n"+
		"D,S,straight,600,400,3000,,,,T/branch,,\nE,S,straight,600,400,3000,,,,D,,\n", 0)
	cards := card.All(v)
	if len(cards) != 1 || len(v.Cuts) != 1 || len(cards[0].EveryBlank) != 3 {
		t.Fatalf("%d cards, %d cuts", len(cards), len(v.Cuts))
	}
	kinds, taps, p := map[string]bool{}, 0, &paper{}
	for _, b := range cards[0].EveryBlank {
		if kinds[b.Kind] = true; b.Tap {
			taps++
		}
	}
	d := Of(v, 0, &cards[0])
	if missing := d.Draw(p, 182, d.High()); len(kinds) != 3 || taps != 1 || len(missing.Numbers) > 0 {
		t.Errorf("kinds %v, %d tappings, missing %v", kinds, taps, missing.Numbers)
	}
	if !slices.ContainsFunc(p.texts, func(x written) bool { return x.text == "1 tapping, 2" }) {
		t.Errorf("the two numbers of the cut aren't drawn: %v", p.texts)
	}
}
