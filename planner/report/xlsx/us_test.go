package xlsx

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/planner"
	"blankoff/planner/report/internal/testview"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// One of each US unit in SI, not from the program: NIST SP 811 (2008) appendix
// B.8 (from memory, unverified), with all digits where it is exact by definition:
// foot 0.3048 m, pound 0.45359237 kg, gravity 9.80665 m/s2.
const (
	squareFoot = 0.3048 * 0.3048                 // m2
	cfm        = 0.3048 * 0.3048 * 0.3048 / 0.06 // L/s
	inchWater  = 25.4 * 9.80665                  // Pa
	lbf        = 0.45359237 * 9.80665            // N
)

// usUnits are the units of headings and number formats, those first that hold
// others.
var usUnits = []struct {
	us, si string
	one    float64
}{
	{"cfm per 100 ft2", "L/s per m2", cfm / (100 * squareFoot)}, {"in. w.g. per cfm2", "Pa per (L/s)2", inchWater / (cfm * cfm)}, {"cfm per in. w.g.", "L/s per Pa", cfm / inchWater},
	{"in. w.g.", "Pa", inchWater}, {"in_wg", "pa", inchWater}, {"ft2", "m2", squareFoot}, {"cfm", "L/s", cfm}, {"lbf", "N", lbf}, {"ft", "m", 0.3048}, {"in", "mm", 25.4},
}

// unitWords find the units of a heading or number format.
var unitWords = func() (all []*regexp.Regexp) {
	for _, u := range usUnits {
		all = append(all, regexp.MustCompile(`(^|[ _])`+regexp.QuoteMeta(u.us)+`($|[ ,"])`))
	}
	return all
}()

// words of headings in which in isn't the inch
var inAWord = map[string]bool{"could be tested in": true, "opening in its wall m2": true, "why in no section": true, "name in formulas": true, "blanks to fit, in all tests": true, "of which in sections": true}

// inSI gives the heading of SI, and how much of its unit one of this is.
func inSI(head string) (string, float64) {
	if inAWord[head] {
		return head, 1
	}
	for i, u := range usUnits {
		if at := unitWords[i].FindStringSubmatchIndex(head); at != nil {
			return head[:at[3]] + u.si + head[at[4]:], u.one
		}
	}
	return head, 1
}

// siWord finds a unit of SI in a heading, a number format or a sentence.
var siWord = regexp.MustCompile(`L/s|\bPa\b|\bm2\b|\bmm2?\b|\bkg\b|[0-9] (m|N)\b|\bmetres?\b|_(m2|l_s|pa|mm)$| [mN]"?$`)

// quoted is what a source says in its own words.
const quoted = "at least 10 m2 in one test"

// sheetRows are the rows of a sheet as held; those that only a workbook in US
// units has are left out.
func sheetRows(t *testing.T, f *excelize.File, sheet string) (rows [][]string, at []int) {
	t.Helper()
	all, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range all {
		if len(r) > 2 && (r[2] == pushName || r[2] == speedName) {
			continue
		}
		rows, at = append(rows, r), append(at, i+1)
	}
	return rows, at
}

// formatOf is a cell's number format.
func formatOf(t *testing.T, f *excelize.File, sheet string, column, row int) string {
	t.Helper()
	cell, _ := excelize.CoordinatesToCellName(column, row)
	id, err := f.GetCellStyle(sheet, cell)
	if err != nil {
		t.Fatal(err)
	}
	s, err := f.GetStyle(id)
	if err != nil || s.CustomNumFmt == nil {
		return ""
	}
	return *s.CustomNumFmt
}

// TestUSIsSI sets the workbooks of a plan in both systems side by side: every
// figure is that of SI turned by the unit of its number format or of its heading,
// and no word of SI is left.
func TestUSIsSI(t *testing.T) {
	for name, j := range jobs(t) {
		t.Run(name, func(t *testing.T) {
			si := opened(t, written(t, planned(t, j)))
			j.us = true
			us := opened(t, written(t, planned(t, j)))
			turned := 0
			if a, b := strings.Join(si.GetSheetList(), ","), strings.Join(us.GetSheetList(), ","); a != b {
				t.Fatalf("sheets %s and %s", a, b)
			}
			for _, sheet := range us.GetSheetList() {
				turned += pairSheets(t, si, us, sheet)
			}
			if turned < 700 {
				t.Errorf("%d figures were turned", turned)
			}
		})
	}
}

func pairSheets(t *testing.T, si, us *excelize.File, sheet string) (turned int) {
	t.Helper()
	a, atA := sheetRows(t, si, sheet)
	b, atB := sheetRows(t, us, sheet)
	if len(a) != len(b) {
		t.Fatalf("%s: %d and %d rows", sheet, len(a), len(b))
	}
	heads := map[int]string{} // the last heading of a column
	for i := range b {
		if len(a[i]) != len(b[i]) {
			t.Errorf("%s, row %d: %d and %d cells", sheet, atB[i], len(a[i]), len(b[i]))
			continue
		}
		for c, text := range b[i] {
			y, err := strconv.ParseFloat(text, 64)
			if err != nil {
				pairWords(t, sheet, a[i][c], text)
				if i == 0 || sheet == "settings" && c > 0 && text != "" {
					heads[c] = text
				}
				continue
			}
			x, err := strconv.ParseFloat(a[i][c], 64)
			if err != nil {
				t.Errorf("%s, row %d: %q and %q", sheet, atB[i], a[i][c], text)
				continue
			}
			label := heads[c]
			if sheet == "summary" {
				label = b[i][0]
			}
			one := unitOf(t, label, formatOf(t, si, sheet, c+1, atA[i]), formatOf(t, us, sheet, c+1, atB[i]))
			if strings.HasPrefix(heads[c], "k, cfm") { // at 1 in. w.g., in SI at 1 Pa
				n, _ := strconv.ParseFloat(b[i][c+1], 64)
				one /= math.Pow(inchWater, n)
			}
			if !turnedTo(x, y, one) {
				t.Errorf("%s, row %d, %s: %v, in SI %v", sheet, atB[i], heads[c], y, x)
			}
			if one != 1 {
				turned++
			}
		}
	}
	return turned
}

// unitOf is how much of SI one of the unit of a number format is, or where that
// has none, of its heading.
func unitOf(t *testing.T, label, si, us string) (one float64) {
	t.Helper()
	if !strings.Contains(si, `"`) {
		_, one = inSI(label)
		return one
	}
	_, one = inSI(us)
	if one == 1 && !strings.Contains(si, "min") && !strings.Contains(si, "deg") || siWord.MatchString(us) {
		t.Errorf("%s: number format %s, in SI %s", label, us, si)
	}
	return one
}

// turnedTo says whether y is x by its unit; -1 and 1E+99 stand for none, and 1E+6
// marks an error, see windows. A limit is cut off in both.
func turnedTo(x, y, one float64) bool {
	switch {
	case x == y && (x < 0 || x >= 1e99 || one == 1):
		return true
	case x >= 1e6 && y >= 1e6:
		x, y = x-1e6, y-1e6
	}
	return math.Abs(y*one-x) <= 1e-6*math.Abs(x) || math.Abs(y*one-x) <= lastPlace(x)+one*lastPlace(y)
}

// lastPlace is what a limit of so much may be cut off by, where it was.
func lastPlace(x float64) float64 {
	d := math.Pow10(-show.LimitDecimals(x))
	if math.Abs(x/d-math.Round(x/d)) > 1e-6 {
		return 0
	}
	return d
}

// pairWords: no word of SI is left, and what holds no figure is the same but for
// its unit.
func pairWords(t *testing.T, sheet, a, b string) {
	t.Helper()
	if word := siWord.FindString(strings.ReplaceAll(b, quoted, "")); word != "" {
		t.Errorf("%s: %q in %q", sheet, word, b)
	}
	if back, _ := inSI(b); a != b && back != a && !strings.ContainsAny(a, "0123456789") {
		t.Errorf("%s: %q, in SI %q", sheet, b, a)
	}
}

// TestRoundUSFigures: a schedule and a rig in round figures of US units stay
// round, worked out by hand: two straights of 24 x 16 in and 30 ft have 2 (2 + 4/3) 60
// = 400 ft2; class 6 at 1 in. w.g. permits 6 cfm per 100 ft2, 24 cfm; the push on
// 24 x 16 in is 24 x 16 cubic inches of water of 0.03613 lb each, 13.87 lbf.
func TestRoundUSFigures(t *testing.T) {
	j := job{
		csv: "tag,from,kind,width_in,height_in,length_in\nD1,,straight,24,16,360\nD2,D1,straight,24,16,360\n", us: true,
		rigs: []string{"name = \"round\"\n[[range]]\nname = \"one\"\nmin_l_s = 0.4719474432\nmax_l_s = 47.19474432\naccuracy_percent = 3\naccuracy_l_s = 0.04719474432\nown_leak_l_s = 0.04719474432\n"},
		set:  func(s *planner.Settings) { s.Scheme, s.Class, s.TestPa = "US", "6", inchWater },
	}
	f := opened(t, written(t, planned(t, j)))
	for _, want := range [][3]string{
		{"sections", "H2", "400.0 ft2"}, {"sections", "I2", "24.00 cfm"}, {"sections", "F2", "1.000 in. w.g."}, {"sections", "P2", "6.0"}, {"takeoff", "H2", "24 x 16 in"}, {"sections", "N2", "13.9 lbf"},
		{"sections", "M2", "24 x 16 in"},
	} {
		got, err := f.GetCellValue(want[0], want[1])
		if err != nil {
			t.Fatal(err)
		}
		if got != want[2] {
			t.Errorf("%s!%s: %q, want %q", want[0], want[1], got, want[2])
		}
	}
	raw := func(sheet, cell string) string {
		v, err := f.GetCellValue(sheet, cell, excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	x := tableOf(t, f, "takeoff")
	for heading, want := range map[string]string{"width_mm": "24", "height_mm": "16", "length_mm": "360"} {
		if got := raw("takeoff", x.at[heading]+"2"); got != want {
			t.Errorf("%s holds %s, want %s", heading, got, want)
		}
	}
	rows, _ := sheetRows(t, f, "settings")
	found := 0
	for _, r := range rows {
		switch {
		case len(r) > 6 && r[0] == "round":
			found++
			if got := strings.Join(r[2:7], " "); got != "1 100 3 0.1 0.1" {
				t.Errorf("rig: %s", got)
			}
		case len(r) > 3 && r[1] == "each 1":
			found++
			if r[2] != "1" {
				t.Errorf("k of class 1: %s cfm per 100 ft2 at 1 in. w.g.", r[2])
			}
		}
	}
	if found != 2 {
		t.Errorf("%d rows found", found)
	}
}

// TestLimitsAreNeverMoreUS: nor is a limit in cfm more than what is permitted.
func TestLimitsAreNeverMoreUS(t *testing.T) {
	v := testview.Big(200)
	v.Units = units.US
	f := opened(t, written(t, v))
	for i, s := range v.Sections {
		shown, err := f.GetCellValue("sections", "I"+strconv.Itoa(i+2))
		if err != nil {
			t.Fatal(err)
		}
		if q, err := strconv.ParseFloat(strings.TrimSuffix(shown, " cfm"), 64); err != nil || q*cfm > s.Limit*(1+1e-12) || q*cfm < s.Limit*0.99 {
			t.Errorf("%s: shown %s, permitted %v L/s", s.ID, shown, s.Limit)
		}
	}
}

// TestChangedPressureUS: with every section's pressure changed in in. w.g. limits,
// states, ranges and forces are those of a plan at that pressure.
func TestChangedPressureUS(t *testing.T) {
	office(t)
	at := func(inches float64) job {
		return job{csv: testview.EveryKind, rigs: []string{holedRig}, us: true, set: func(s *planner.Settings) { s.Class, s.TestPa = "B", inches*inchWater }}
	}
	was, v := planned(t, at(1.6)), planned(t, at(1.75))
	f := opened(t, written(t, was))
	for i := range was.Sections {
		if err := f.SetCellValue("sections", "F"+strconv.Itoa(i+2), 1.75); err != nil {
			t.Fatal(err)
		}
	}
	g := recalculated(t, f)
	if n := compareSections(t, g, was, v); n < 2 {
		t.Errorf("%d sections compared", n)
	}
	if got := tableOf(t, g, "sections").text("test Pa", 2); got != "1.75" {
		t.Errorf("pressure %s", got)
	}
}
