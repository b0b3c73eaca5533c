package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/xuri/excelize/v2"
)

// lettered runs check on a schedule and a list of sums and gives its folder and
// the letter in it.
func lettered(t *testing.T, schedule, totals string) (dir, letter string) {
	t.Helper()
	dir = t.TempDir()
	args := []string{"check", filepath.Join(dir, "stated.csv"), "-o", filepath.Join(dir, "out")}
	if totals != "" {
		args = append(args, "--stated", filepath.Join(dir, "totals.csv"))
	}
	for name, text := range map[string]string{"stated.csv": schedule, "totals.csv": totals} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	var talk bytes.Buffer
	if code := run(args, &bytes.Buffer{}, &talk); code != exitPartly {
		t.Fatalf("exit %d\n%s", code, talk.String())
	}
	text, err := os.ReadFile(filepath.Join(dir, "out", "letter.html"))
	if err != nil {
		t.Fatal(err)
	}
	return filepath.Join(dir, "out"), string(text)
}

// TestLetterTellsWhatDiffers: girth 2 m, so A 2.40 m2, B 3.00, C 2.00. Stated are
// 2.40, 4.50 and nothing: 6.90 of the 5.40 m2 of the same rows, 27.8 % more, with
// C's 2.00 beside that. The total of U agrees, that of W names nothing.
func TestLetterTellsWhatDiffers(t *testing.T) {
	rows := "A,S,straight,rectangular,600,400,1200,B,400,2.40\nB,T,straight,rectangular,600,400,1500,B,400,4.50\nC,U,straight,rectangular,600,400,1000,B,400,\n"
	_, letter := lettered(t, ducts+rows, "system,stated_area_m2\nS,2.40\nT,4.50\nU,2.00\nW,10\n")
	for _, want := range []string{
		"come to 6.90 m² as stated and to 5.40 m² as worked out: 27.8 % more is stated", "1 further row (straight 1) states no area; worked out it comes to 2.00 m²",
		"<td>system T</td>", "<td>B</td>", "Lines of totals.csv that we couldn&#39;t use", "system &#39;W&#39; isn&#39;t in the schedule", "Please correct 1 line of totals.csv",
	} {
		if !strings.Contains(letter, want) {
			t.Errorf("the letter lacks %q", want)
		}
	}
	for _, not := range []string{"<td>system S</td>", "<td>system U</td>", "<td>A</td>", "+0.00", "−0.0", "as above"} {
		if strings.Contains(letter, not) {
			t.Errorf("the letter has %q", not)
		}
	}
}

// TestLetterOrder: within totals and within rows the largest difference first.
func TestLetterOrder(t *testing.T) {
	read := func(name string) string {
		text, err := os.ReadFile("../../examples/engineer/" + name)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	_, letter := lettered(t, read("specified.csv"), read("specified-totals.csv"))
	cell := regexp.MustCompile(`data-is="difference, m²">(?:&#43;)?([^<]*)<`)
	bodies := strings.Split(letter, "<tbody>")
	n := 0
	for _, b := range bodies {
		last := math.Inf(1)
		for _, m := range cell.FindAllStringSubmatch(b, -1) {
			v, err := strconv.ParseFloat(strings.Replace(m[1], "−", "-", 1), 64)
			if n++; err != nil || math.Abs(v) > last {
				t.Errorf("%s after %g (%v)", m[1], last, err)
			}
			last = math.Abs(v)
		}
	}
	if n != 7 {
		t.Errorf("%d figures, want 7", n)
	}
	if !strings.Contains(letter, "the two causes named on page 1") {
		t.Error("rows don't say where the causes are named")
	}
}

// TestCauseThatShowsInNoFigure: straights of girth 2 m that state 2 x length, with
// spigots of 200 mm on them that state nothing. All rules that keep openings give
// these figures; only the one that does nothing else is the cause.
func TestCauseThatShowsInNoFigure(t *testing.T) {
	var b strings.Builder
	b.WriteString("tag,system,kind,shape,width_mm,height_mm,length_mm,branch_diameter_mm,branch_length_mm,from,class,test_pa,stated_area_m2\n")
	for i, mm := range []int{1200, 900, 1400, 700, 1100, 800} {
		fmt.Fprintf(&b, "A%d,S,straight,rectangular,600,400,%d,,,,B,400,%.2f\nA%d.1,S,spigot,circular,,,,200,100,A%d,B,400,\n", i, mm, float64(mm)/500, i, i)
	}
	v, _ := checked(t, b.String())
	r := v.Reason
	if len(r.Causes) != 1 || strings.Join(r.Causes[0].Keys, "") != "openings-kept" || r.Sure != "certain" || len(r.Alike) < 3 {
		t.Errorf("%+v", r)
	}
	if !strings.Contains(r.Sentence, "fittings left out") {
		t.Errorf("what can't be told apart isn't named: %s", r.Sentence)
	}
	for _, x := range v.Rows {
		if x.Reason != "the cause" {
			t.Errorf("%s: %q", x.Name, x.Reason)
		}
	}
	if len(v.Unstated) != 6 || v.Effects[0].Unstated != 6 || v.Effects[0].Rows != 6 {
		t.Errorf("%d rows without a stated area; %+v", len(v.Unstated), v.Effects[0])
	}
}

// TestOneOfSeveralCauses: girths outside 25 and 30 mm of insulation are 2.20 and
// 2.24 m; to 0.1 m2 both give the same over 0.9, 0.5, 1.4 and 0.45 m. So no row
// may say that it has the cause.
func TestOneOfSeveralCauses(t *testing.T) {
	rows := ""
	for i, x := range []string{"900,B,400,2.0", "500,B,400,1.1", "1400,B,400,3.1", "450,B,400,1.0"} {
		rows += fmt.Sprintf("R%d,S,straight,rectangular,600,400,%s\n", i, x)
	}
	v, _ := checked(t, ducts+rows)
	if v.Reason.Sure != "one of these" || len(v.Reason.Causes) != 2 {
		t.Fatalf("%+v", v.Reason)
	}
	for _, x := range v.Rows {
		if x.Reason != "one of the causes" {
			t.Errorf("%s: %q", x.Name, x.Reason)
		}
	}
	if text := v.Reckoning.Lines[0].Text; !strings.HasPrefix(text, "supposed: ") {
		t.Errorf("a step takes one of several causes for sure: %q", text)
	}
}

// TestCheckWorkbook: limits are numbers in the unit of their heading, sentences
// are sentences.
func TestCheckWorkbook(t *testing.T) {
	rows := "A,S,straight,rectangular,600,400,1200,B,400,4.80\nB,S,straight,rectangular,600,400,1500,B,400,\n"
	dir, _ := lettered(t, ducts+rows, "system,stated_area_m2,reading_l_s\nS,6.00,2.5\n")
	f, err := excelize.OpenFile(filepath.Join(dir, "check.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	test, err := f.GetRows("test")
	if err != nil {
		t.Fatal(err)
	}
	// 0.009 x 400^0.65 = 0.44216 L/s per m2, cut off
	if got := test[1][4]; got != "0.442" {
		t.Errorf("%s is %q", test[0][4], got)
	}
	if text := test[1][12]; strings.Contains(text, ".;") || strings.Count(text, ". ") < 2 {
		t.Errorf("%q", text)
	}
	if list, err := f.GetRows("no stated area"); err != nil || len(list) != 2 || list[1][1] != "B" || list[1][6] != "3.00" {
		t.Errorf("%v %v", list, err)
	}
}

// TestLetterOnANarrowScreen: on a phone no line is cut and nothing has to be
// pushed aside.
func TestLetterOnANarrowScreen(t *testing.T) {
	dir, _ := lettered(t, hostileAreas(), "system,stated_area_m2\nW,10\n")
	o := openAt(t, filepath.Join(dir, "letter.html"), "main")
	o.do(t, chromedp.EmulateViewport(390, 800))
	var cut []string
	o.eval(t, `[...document.querySelectorAll("main *")].filter(e => { const r = e.getBoundingClientRect(); return r.width > 0 && (r.right > innerWidth + 0.5 || r.left < 0) }).map(e => e.tagName + " " + e.textContent.slice(0, 40))`, &cut)
	var wide float64
	o.eval(t, `document.documentElement.scrollWidth - innerWidth`, &wide)
	if len(cut) > 0 || wide > 0 {
		t.Errorf("%g px over the edge: %q", wide, cut)
	}
	var font float64
	o.eval(t, `parseFloat(getComputedStyle(document.querySelector("main p")).fontSize)`, &font)
	if font < 14 {
		t.Errorf("text of %g px", font)
	}
}
