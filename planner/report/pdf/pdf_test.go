package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"blankoff/planner"
	"blankoff/planner/report"
	"blankoff/planner/report/card"
	"blankoff/planner/report/internal/testview"
	"blankoff/planner/rig"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
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

// comb is a main with so many spigots, each with its own tag and place.
func comb(spigots int, tag, place string) string {
	var b strings.Builder
	b.WriteString("tag,system,level,place,drawing,kind,diameter_mm,length_mm,branch_diameter_mm,branch_length_mm,at_mm,from\n")
	for i := range spigots {
		from := ""
		if i > 0 {
			from = fmt.Sprintf("%sM%d", tag, i-1)
		}
		fmt.Fprintf(&b, "%sM%d,S1,Level %d,\"%s\",D-%d,straight,500,9000,,,,%s\n", tag, i, i/20, place, i/40, from)
		fmt.Fprintf(&b, "%sP%d,S1,Level %d,\"%s\",D-%d,spigot,,,%d,100,4500,%sM%d\n", tag, i, i/20, place, i/40, 100+5*(i%9), tag, i)
	}
	return b.String()
}

// page is what stands on a page: its texts in order, one line each.
type page []string

func (p page) text() string { return strings.Join(p, " ") }

var (
	streams = regexp.MustCompile(`<</Filter /FlateDecode /Length (\d+)>>\nstream\n`)
	shown   = regexp.MustCompile(`(?s)\(((?:[^()\\]|\\.)*)\) Tj`)
)

// read takes the texts out of a document's pages again, by another way than the
// writer's own: out of the bytes.
func read(t testing.TB, doc []byte) []page {
	t.Helper()
	var out []page
	for _, at := range streams.FindAllSubmatchIndex(doc, -1) {
		n, _ := strconv.Atoi(string(doc[at[2]:at[3]]))
		z, err := zlib.NewReader(bytes.NewReader(doc[at[1] : at[1]+n]))
		if err != nil {
			t.Fatal(err)
		}
		data, err := io.ReadAll(z)
		if err != nil {
			t.Fatal(err)
		}
		var p page
		for _, m := range shown.FindAllSubmatch(data, -1) {
			raw := regexp.MustCompile(`(?s)\\(.)`).ReplaceAllFunc(m[1], func(b []byte) []byte {
				if b[1] == 'r' {
					return []byte{'\r'}
				}
				return b[1:]
			})
			var units []uint16
			for i := 0; i+1 < len(raw); i += 2 {
				units = append(units, uint16(raw[i])<<8|uint16(raw[i+1]))
			}
			p = append(p, string(utf16.Decode(units)))
		}
		if len(p) > 0 {
			out = append(out, p)
		}
	}
	return out
}

// write makes the cards and holds them against what is true of any: one page a
// section, nothing outside the margins, no text over another, none too small.
func write(t testing.TB, v *report.Plan) []page {
	t.Helper()
	s, err := newSheet(title(v))
	if err != nil {
		t.Fatal(err)
	}
	var texts []trace
	s.seen = func(x trace) {
		if x.x0 < left-0.6 || x.x1 > right+0.6 || x.y0 < top-0.6 || x.y1 > bottom+0.6 {
			t.Errorf("page %d: %q reaches from %.1f, %.1f to %.1f, %.1f", x.page, x.text, x.x0, x.y0, x.x1, x.y1)
		}
		if x.text == "" {
			return
		}
		if x.size < 7.5 {
			t.Errorf("page %d: %q is set in %g points", x.page, x.text, x.size)
		}
		for i := len(texts) - 1; i >= 0 && texts[i].page == x.page; i-- {
			const slack = 0.25
			if o := texts[i]; x.x0 < o.x1-slack && o.x0 < x.x1-slack && x.y0 < o.y1-slack && o.y0 < x.y1-slack {
				t.Errorf("page %d: %q lies on %q", x.page, x.text, o.text)
			}
		}
		texts = append(texts, x)
	}
	var b bytes.Buffer
	if err := s.cards(&b, v); err != nil {
		t.Fatal(err)
	}
	if dir := os.Getenv("CARDS"); dir != "" {
		os.WriteFile(dir+"/"+strings.ReplaceAll(t.Name(), "/", "-")+".pdf", b.Bytes(), 0o644)
	}
	pages := read(t, b.Bytes())
	if n := bytes.Count(b.Bytes(), []byte("/Type /Page\n")); n != len(v.Sections) || len(pages) != n {
		t.Fatalf("%d pages, %d with text, for %d sections", n, len(pages), len(v.Sections))
	}
	for i, p := range pages {
		whole(t, v, i, p)
	}
	return pages
}

// whole looks for what every card has to say.
func whole(t testing.TB, v *report.Plan, i int, p page) {
	t.Helper()
	c := card.All(v)[i]
	text := p.text()
	for _, want := range append([]string{c.ID, fmt.Sprintf("card %d of %d", c.Number, c.Of), "tested by", "witnessed by", "held from - to", "Before the pressure is raised"}, c.Readings...) {
		if !strings.Contains(text, want) {
			t.Errorf("card %s lacks %q:\n%s", c.ID, want, text)
		}
	}
	for _, f := range c.Big {
		number, _, _ := strings.Cut(f.Value, " ")
		found := 0
		for _, line := range p {
			if line == number {
				found++
			}
		}
		if found == 0 {
			t.Errorf("card %s lacks its %s %s", c.ID, f.Name, f.Value)
		}
	}
	for _, want := range c.Checks {
		if !strings.Contains(text, want) {
			t.Errorf("card %s lacks the check %q", c.ID, want)
		}
	}
}

// Every blank is on its card with number, size and where, on that card only.
func TestEveryBlankIsOnItsCard(t *testing.T) {
	v := planned(t, comb(24, "D", "hall"), 60)
	if len(v.Sections) < 4 {
		t.Fatalf("%d sections", len(v.Sections))
	}
	pages := write(t, v)
	for i := range v.Sections {
		text := pages[i].text()
		for k, b := range card.All(v)[i].EveryBlank {
			at := strings.TrimPrefix(b.At, "free end of ")
			at = strings.TrimPrefix(at, "far end of ")
			if !strings.Contains(text, fmt.Sprintf("%d %s", k+1, at)) && !strings.Contains(text, fmt.Sprintf("%d %s", k+1, b.Kind)) || !strings.Contains(text, b.Size) {
				t.Errorf("%s: blank %d, %s at %s, isn't on its card:\n%s", v.Sections[i].ID, k+1, b.Size, b.At, text)
			}
		}
	}
}

// What is needed at the duct is wrapped, never cut: where the rig and the tapping
// go, and where the blanks are, with long tags and places; and long tags of many
// pieces are shortened in their middle before any is left out.
func TestLongNamesAreWhole(t *testing.T) {
	place := "Großküche, Achse Ü3 bis Ö7, über der abgehängten Decke im Zwischengeschoß"
	v := planned(t, comb(12, "Überströmkanal-Größe-Äußere-Straße-", place), 60)
	if len(v.Sections) < 2 {
		t.Fatalf("%d sections", len(v.Sections))
	}
	solid := func(text string) string { return strings.Join(strings.Fields(text), "") }
	for i, p := range write(t, v) {
		text := solid(p.text())
		c := card.All(v)[i]
		for _, f := range c.Site {
			if f.Name == card.RigAt || f.Name == card.TapAt {
				if want := solid(upper(c.At(f)) + ": " + f.Value); !strings.Contains(text, want) {
					t.Errorf("%s lacks %q:\n%s", c.ID, want, text)
				}
			}
		}
		if strings.Contains(text, "more,listedinplan.xlsx") {
			t.Errorf("%s leaves pieces out:\n%s", c.ID, text)
		}
		for k, b := range c.EveryBlank {
			if !strings.Contains(text, solid(b.Where)) && !strings.Contains(text, solid(card.Place(b.Level, b.Place))) {
				t.Errorf("%s, blank %d: %q is cut", c.ID, k+1, b.Where)
			}
		}
		if n := strings.Count(text, "Zwischengeschoß"); n < 4 { // in the heading, for rig, tapping and the first blank
			t.Errorf("%s has the whole place %d times:\n%s", c.ID, n, text)
		}
	}
}

// A section with more than any page can name is still one page, and says what
// it leaves out and where that is.
func TestTooMuchForAPage(t *testing.T) {
	v := planned(t, comb(130, "D", "hall"), 0)
	if len(v.Sections) != 1 || len(v.Sections[0].Blanks) < 120 || len(v.Sections[0].Pieces) < 250 {
		t.Fatalf("%d sections, %d blanks, %d pieces", len(v.Sections), len(v.Sections[0].Blanks), len(v.Sections[0].Pieces))
	}
	text := write(t, v)[0].text()
	for _, want := range []string{"more, listed in plan.xlsx", "each listed in blanks.csv", "15 open ends dia 100", "dia 140"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q:\n%s", want, text)
		}
	}
}

// Cuts and ends of scope without end, all of another size, with long tags.
func TestNothingRunsOver(t *testing.T) {
	long := strings.Repeat("Lüftungszentrale_", 12)
	for _, n := range []int{0, 1, 16, 120, 400} {
		v := testview.Big(3)
		for i := range v.Sections {
			s := &v.Sections[i]
			s.ID, s.System, s.Places, s.Levels = "S0"+strconv.Itoa(i+1), long, []string{long, long + " " + long, "x"}, []string{long}
			s.Drawings = []string{long, "D-1"}
			s.Blanks, s.Pieces = nil, nil
			for k := range n {
				b := report.Blank{At: "between " + long + strconv.Itoa(k) + " and " + long, Why: []string{"cut", "scope", "open end"}[k%3], Level: long, Place: long, Drawing: long, Force: float64(k * 31)}
				b.Face = report.Face{Shape: "rectangular", Text: fmt.Sprintf("%d.5 x %d.5 oval", 1000+k/(i+1), 400+k/(i+1))}
				s.Blanks = append(s.Blanks, b)
				s.Pieces = append(s.Pieces, report.Piece{Tag: long + strconv.Itoa(k)})
			}
			s.Notes, s.Reason = []string{strings.Repeat(long+" ", 20), "second"}, strings.Repeat("the limit lies far below what it reads, ", 20)
			s.Cures = []string{strings.Repeat("a longer cure ", 60), long}
			s.RigAt, s.TapAt = long+" "+long+" "+long, long
			s.Readings = []string{"below 0.85 L/s: passes", "0.85 to 37.3 L/s: passes", "above 62 L/s, or the pressure can't be held: fails"}
			s.Area, s.Limit = 1234567.891, 123456.789
		}
		write(t, v)
	}
}

// What the font lacks, what steers a screen and what is written from right to
// left is shown as a question mark, and the card says so; Latin with its marks,
// Greek and Cyrillic come through.
func TestLetters(t *testing.T) {
	v := testview.Small()
	v.Sections[0].System = "Zuluft Ü ß ő ș ế, Προσαγωγή, Приток"
	v.Sections[0].Places = []string{"U\u0308ber 長い \u05d0 a\x1b[2Jb\u202e \U0001f600"}
	pages := write(t, v)
	text := pages[0].text()
	for _, want := range []string{"Zuluft Ü ß ő ș ế, Προσαγωγή, Приток", "Über ?? ? a?[2Jb? ?", "? is a letter that can't be printed."} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q:\n%s", want, text)
		}
	}
	if strings.Contains(pages[2].text(), "can't be printed") {
		t.Error("a card without such letters says that it has some")
	}
}

// The blanks of a grouping can't be listed: there are lines to write them into,
// and no drawing of what nobody knows.
func TestGrouping(t *testing.T) {
	text := write(t, testview.Small())[0].text()
	for _, want := range []string{"grouping aren't known; write them in", "plant end of D1", "grouping"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q:\n%s", want, text)
		}
	}
	if strings.Contains(text, "Not to scale") {
		t.Error("a grouping is drawn")
	}
}

func TestSameBytes(t *testing.T) {
	v := planned(t, comb(24, "D", "hall"), 60)
	var a, b bytes.Buffer
	for _, w := range []*bytes.Buffer{&a, &b} {
		if err := Cards(w, v); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("two runs differ")
	}
	if !bytes.Contains(a.Bytes(), []byte("/CreationDate (\xfe\xff")) && !bytes.Contains(a.Bytes(), []byte("D:20000101000000")) {
		t.Error("the date isn't the fixed one")
	}
	if bytes.Contains(a.Bytes(), []byte("/Producer")) {
		t.Error("names a producer")
	}
	if n := bytes.Count(a.Bytes(), []byte("/Title")); n != len(v.Sections)+1 {
		t.Errorf("%d titles for %d sections and the document", n, len(v.Sections))
	}
}

// Figures that are read at arm's length are set in 22 points or more.
func TestArmsLength(t *testing.T) {
	v := planned(t, comb(24, "D", "hall"), 60)
	s, err := newSheet("")
	if err != nil {
		t.Fatal(err)
	}
	big := map[string]float64{}
	s.seen = func(x trace) { big[x.text] = math.Max(big[x.text], x.size) }
	if err := s.cards(io.Discard, v); err != nil {
		t.Fatal(err)
	}
	for _, c := range card.All(v) {
		for _, f := range c.Big {
			if number, _, _ := strings.Cut(f.Value, " "); big[number] < 22 {
				t.Errorf("%s: %s in %g points", c.ID, f.Value, big[number])
			}
		}
	}
}

// A plan without sections still makes a document that says so.
func TestNoSections(t *testing.T) {
	v := testview.Small()
	v.Sections = nil
	var b bytes.Buffer
	if err := Cards(&b, v); err != nil {
		t.Fatal(err)
	}
	if p := read(t, b.Bytes()); len(p) != 1 || !strings.Contains(p[0].text(), "no section to test") {
		t.Errorf("%q", p)
	}
}

func BenchmarkCards(b *testing.B) {
	v := planned(b, comb(1500, "D", "main hall, B3"), 45)
	for b.Loop() {
		if err := Cards(io.Discard, v); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(len(v.Sections)), "cards")
}

// A size in inches keeps to one line: its column takes what it needs from that of
// where the blank is.
func TestSizesKeepToALine(t *testing.T) {
	for _, text := range []string{"114.17 x 59.06 in", "19.69 x 19.69 in", "600 x 400"} {
		s, err := newSheet("sizes")
		if err != nil {
			t.Fatal(err)
		}
		s.page("S01")
		l := &list{sheet: s, size: 9, marks: map[string]string{}}
		b := card.Blank{Number: "1", Size: text, Force: "489 lbf", Kind: "cut 1, to S02"}
		l.share([]card.Blank{b})
		c := l.cells("1", b.Kind, &b)
		if n := len(c[colSize]); n != 1 {
			t.Errorf("%s takes %d lines", text, n)
		}
		for k := range l.columns[:colPlace] {
			if end := l.columns[k].x + l.columns[k].w; end > l.columns[k+1].x+1e-9 {
				t.Errorf("%s: column %d ends at %g, the next begins at %g", text, k, end, l.columns[k+1].x)
			}
		}
	}
}
