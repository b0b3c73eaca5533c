package xlsx

import (
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/fittings"
	"blankoff/planner"
	"blankoff/planner/report"
	"blankoff/planner/report/internal/testview"
	"blankoff/planner/report/show"
	"blankoff/planner/rig"
	"blankoff/planner/units"
	"blankoff/takeoff"
)

// table is a sheet by heading. One in US units is known by the headings of SI, and
// its figures are read and written in SI.
type table struct {
	t     *testing.T
	f     *excelize.File
	sheet string
	at    map[string]string
	one   map[string]float64 // by heading: how much of SI one of its unit is
	rows  [][]string
}

func tableOf(t *testing.T, f *excelize.File, sheet string) *table {
	t.Helper()
	rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	x := &table{t, f, sheet, map[string]string{}, map[string]float64{}, rows}
	for i, h := range rows[0] {
		h, one := inSI(h)
		if _, ok := x.at[h]; !ok {
			x.at[h], _ = excelize.ColumnNumberToName(i + 1)
			x.one[h] = one
		}
	}
	return x
}

// row is the first row, counted from 1, in which the cells of the given headings
// are so.
func (x *table) row(is map[string]string) int {
	for r := range x.rows[1:] {
		ok := true
		for h, want := range is {
			ok = ok && x.text(h, r+2) == want
		}
		if ok {
			return r + 2
		}
	}
	x.t.Helper()
	x.t.Fatalf("sheet %s has no row with %v", x.sheet, is)
	return 0
}

func (x *table) text(heading string, row int) string {
	x.t.Helper()
	column, ok := x.at[heading]
	if !ok {
		x.t.Fatalf("sheet %s has no column %s", x.sheet, heading)
	}
	v, err := x.f.GetCellValue(x.sheet, column+strconv.Itoa(row), excelize.Options{RawCellValue: true})
	if err != nil {
		x.t.Fatal(err)
	}
	return v
}

func (x *table) number(heading string, row int) float64 {
	x.t.Helper()
	v, err := strconv.ParseFloat(x.text(heading, row), 64)
	if err != nil {
		x.t.Fatalf("%s, %s, row %d: %v", x.sheet, heading, row, err)
	}
	return v * x.one[heading]
}

func (x *table) set(heading string, row int, v any) {
	x.t.Helper()
	if q, ok := v.(float64); ok {
		v = q / x.one[heading]
	}
	if err := x.f.SetCellValue(x.sheet, x.at[heading]+strconv.Itoa(row), v); err != nil {
		x.t.Fatal(err)
	}
}

// changedCSV sets cells of a schedule: by tag and heading.
func changedCSV(t *testing.T, text string, to map[[2]string]string) string {
	t.Helper()
	in := csv.NewReader(strings.NewReader(text))
	in.FieldsPerRecord = -1
	rows, err := in.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	done := 0
	for k, r := range rows {
		for len(r) < len(rows[0]) {
			r = append(r, "")
		}
		rows[k] = r
		for i, h := range rows[0] {
			if v, ok := to[[2]string{r[0], h}]; ok {
				r[i] = v
				done++
			}
		}
	}
	if done != len(to) {
		t.Fatalf("%d of %d cells changed", done, len(to))
	}
	var b strings.Builder
	w := csv.NewWriter(&b)
	if err := w.WriteAll(rows); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// compareTakeoff holds every row of the sheet takeoff against a view.
func compareTakeoff(t *testing.T, f *excelize.File, v *report.Plan) {
	t.Helper()
	x := tableOf(t, f, "takeoff")
	for i := range v.Takeoff.Items {
		it := &v.Takeoff.Items[i]
		for heading, want := range map[string]float64{"area m2": it.Area, "exact m2": it.ExactArea, "joints m": it.JointLength} {
			if got := x.number(heading, i+2); math.Abs(got-want) > 1e-6 {
				t.Errorf("%s: %s %v, want %v (%s)", it.Tag, heading, got, want, x.text("how the area follows", i+2))
			}
		}
		if got := x.text("size", i+2); got != show.ItemSize(it) {
			t.Errorf("%s: size %s, want %s", it.Tag, got, show.ItemSize(it))
		}
	}
}

// compareSections holds the sections that are made of the same pieces against a
// view, and says how many there are.
func compareSections(t *testing.T, f *excelize.File, was, v *report.Plan) (n int) {
	t.Helper()
	made := func(s *report.Section) string {
		text := ""
		for _, p := range s.Pieces {
			text += fmt.Sprintf("%s %d %d;", p.Tag, p.From, p.To)
		}
		return text
	}
	of := map[string]*report.Section{}
	for i := range v.Sections {
		of[made(&v.Sections[i])] = &v.Sections[i]
	}
	x := tableOf(t, f, "sections")
	for i := range was.Sections {
		s := of[made(&was.Sections[i])]
		if s == nil {
			continue
		}
		n++
		force := 0.0
		for _, b := range s.Blanks {
			force = max(force, b.Force)
		}
		for heading, want := range map[string]float64{"area m2": s.Area, "exact area m2": s.ExactArea, "limit L/s, all digits": s.Limit, "limit L/s per m2": s.LimitPerM2, "force on it N": force} {
			if got := x.number(heading, i+2); math.Abs(got-want) > 1e-6 {
				t.Errorf("%s: %s %v, want %v", s.ID, heading, got, want)
			}
		}
		if got, want := strings.TrimSuffix(x.text("state", i+2), ", grouping"), stateNow(v, s); got != want {
			t.Errorf("%s: %s, want %s", s.ID, got, want)
		}
		if got, want := x.text("range to set", i+2), show.Range(v, s); got != want {
			t.Errorf("%s: range %s, want %s", s.ID, got, want)
		}
	}
	return n
}

// TestChangedWidths: with sizes changed in the workbook every sheet says what a
// plan of the changed schedule says.
func TestChangedWidths(t *testing.T) {
	office(t)
	lead := file(t, "examples", "site-lead", "schedule.csv")
	type change struct {
		name  string
		j     job
		cells map[[2]string]string
		least int // sections to compare
	}
	changes := []change{
		{"site lead", job{csv: lead, rigs: []string{file(t, "examples", "site-lead", "rig.toml")}}, map[[2]string]string{
			{"SA-02", "width_mm"}: "1410", {"SA-02", "length_mm"}: "810",
		}, 5},
		{"every kind", job{csv: testview.EveryKind, rigs: []string{holedRig}, set: func(s *planner.Settings) { s.Class, s.TestPa = "B", 400 }}, map[[2]string]string{
			{"A1", "height_mm"}: "510", {"A2", "height_mm"}: "510", {"A3", "angle_deg"}: "50", {"A5", "throat_mm"}: "140", {"A9", "offset_mm"}: "-230", {"A12", "radius_mm"}: "340",
			{"A15", "branch_length_mm"}: "170", {"A16", "entry_mm"}: "230", {"A19", "lining_mm"}: "25", {"A24", "diameter2_mm"}: "210", {"A26", "rise_mm"}: "45", {"S1", "branch_diameter_mm"}: "210",
			{"S3", "entry_mm"}: "130", {"S6", "branch_height_mm"}: "90", {"S7", "diameter_mm"}: "300", {"B1", "width_mm"}: "500", {"C3", "branch_width_mm"}: "310", {"C7", "area_m2"}: "2.75", {"C6", "width_mm"}: "620",
		}, 1},
		{"sheet", job{csv: testview.EveryKind, rigs: []string{holedRig}, set: func(s *planner.Settings) { s.Class, s.TestPa = "C", 600 }, opts: takeoff.Options{Sheet: 0.0008}}, map[[2]string]string{
			{"A1", "width_mm"}: "790", {"A22", "length_mm"}: "6900", {"C6", "height_mm"}: "410",
		}, 1},
	}
	for _, tt := range changes[:3] {
		tt.name += ", US units"
		tt.j.us = true
		changes = append(changes, tt)
	}
	for _, tt := range changes {
		t.Run(tt.name, func(t *testing.T) {
			was := planned(t, tt.j)
			f := opened(t, written(t, was))
			x := tableOf(t, f, "takeoff")
			for at, v := range tt.cells {
				q, err := strconv.ParseFloat(v, 64)
				if err != nil {
					t.Fatal(err)
				}
				x.set(at[1], x.row(map[string]string{"tag": at[0]}), q)
			}
			g := recalculated(t, f)
			tt.j.csv = changedCSV(t, tt.j.csv, tt.cells)
			v := planned(t, tt.j)
			compareTakeoff(t, g, v)
			if n := compareSections(t, g, was, v); n < tt.least {
				t.Errorf("%d sections compared, want %d", n, tt.least)
			}
			compareSummary(t, g, v)
		})
	}
}

// compareSummary holds the sums against a view.
func compareSummary(t *testing.T, f *excelize.File, v *report.Plan) {
	t.Helper()
	rows, err := f.GetRows("summary", excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	one := 1.0
	if v.Units == units.US {
		one = squareFoot
	}
	want := map[string]float64{"takeoff": v.Balance.Takeoff, "of which in sections": v.Balance.Sections, "of which outside": v.Balance.Outside, "difference, m2": 0}
	for _, r := range rows {
		if len(r) < 2 {
			continue
		}
		label := strings.Replace(r[0], ", ft2", ", m2", 1)
		if w, ok := want[label]; ok {
			if got, err := strconv.ParseFloat(r[1], 64); err != nil || math.Abs(got*one-w) > 1e-6 {
				t.Errorf("summary, %s: %s, want %v m2", r[0], r[1], w)
			}
			delete(want, label)
		}
	}
	if len(want) > 0 {
		t.Errorf("summary lacks %v", want)
	}
}

// many is a schedule of n systems of one straight each, of very different areas.
func many(n int) string {
	var b strings.Builder
	b.WriteString("tag,system,kind,width_mm,height_mm,length_mm\n")
	for i := range n {
		fmt.Fprintf(&b, "D%d,System %d,straight,%d,400,%d\n", i, i, 200+i*37%800, 500+i*i*7)
	}
	return b.String()
}

// TestChangedClassesAndPressures: with any class and pressure written into a
// section the limit is that of the scheme, and state and range are those of the
// rig's own judgement.
func TestChangedClassesAndPressures(t *testing.T) {
	office(t)
	lead := file(t, "examples", "site-lead", "rig-fine.toml")
	all := map[string]job{
		"holed":    {rigs: []string{holedRig}},
		"two rigs": {rigs: []string{holedRig, otherRig}},
		"fine":     {rigs: []string{lead}},
		"numbered": {rigs: []string{lead, otherRig}, set: func(s *planner.Settings) { s.Scheme, s.Class, s.MinArea, s.MaxArea = "US", "6", 8, 60 }},
	}
	for name, j := range together(all, inUS(all, "holed", "two rigs", "numbered")) {
		t.Run(name, func(t *testing.T) {
			set := j.set
			j.csv, j.set = many(90), func(s *planner.Settings) {
				s.Class, s.TestPa = "B", 300
				if set != nil {
					set(s)
				}
			}
			v := planned(t, j)
			f := opened(t, written(t, v))
			x := tableOf(t, f, "sections")
			classes := map[string][]string{"EN": {"A", "B", "C", "D"}, "US": {"3", "6", "12", "2.5"}}[v.Schemes[0].Name]
			pa := func(i int) float64 { return 40 + math.Mod(float64(i)*173.5, 1400) }
			for i := range v.Sections {
				x.set("test Pa", i+2, pa(i))
				x.set("class", i+2, classes[i%4])
			}
			y := tableOf(t, recalculated(t, f), "sections")
			states := map[string]int{}
			for i := range v.Sections {
				checkSection(t, v, &v.Sections[i], y, i+2, pa(i), classes[i%4])
				states[y.text("state", i+2)]++
			}
			t.Log(states)
		})
	}
}

// checkSection works a section out with another class and pressure.
func checkSection(t *testing.T, v *report.Plan, s *report.Section, y *table, row int, pa float64, class string) {
	t.Helper()
	scheme := v.Schemes[0]
	c, err := scheme.Class(class)
	if err != nil {
		t.Fatal(err)
	}
	q := scheme.Limit(c, pa) * s.Area
	if got := y.number("limit L/s, all digits", row); math.Abs(got-q) > 1e-6 {
		t.Errorf("%s, class %s at %g Pa: limit %v, want %v", s.ID, class, pa, got, q)
	}
	if cut := y.number("limit L/s, cut off", row); cut > q+1e-9 || cut < q*0.99-1e-4 {
		t.Errorf("%s: limit %v is cut off to %v", s.ID, q, cut)
	}
	for _, k := range []float64{1 - 1e-7, 1 + 1e-7} { // at the very end of a window either is right
		if v.Rigs.Judge(q*k, pa, v.Settings.Headroom).State != v.Rigs.Judge(q, pa, v.Settings.Headroom).State {
			return
		}
	}
	got := strings.TrimSuffix(y.text("state", row), ", grouping")
	if want := judged(v, s, q, pa, scheme.Limit(c, pa)); got != want {
		t.Errorf("%s, class %s at %g Pa, limit %v: %q, want %q", s.ID, class, pa, q, got, want)
	}
	r, name, ok := v.Rigs.RangeFor(q, pa, v.Settings.Headroom)
	switch {
	case !ok:
		name = ""
	case len(v.Rigs) > 1:
		name = r.Name + ": " + name
	}
	if got := y.text("range to set", row); got != name {
		t.Errorf("%s, class %s at %g Pa, limit %v: range %q, want %q", s.ID, class, pa, q, got, name)
	}
}

// judged is the state by the rig's own judgement.
func judged(v *report.Plan, s *report.Section, q, pa, perM2 float64) string {
	set := &v.Settings
	most := 0.0
	for _, w := range v.Rigs.AreaWindows(perM2, pa, set.Headroom) {
		most = max(most, w.High)
	}
	state := v.Rigs.Judge(q, pa, set.Headroom).State
	switch {
	case s.Area > most, set.MaxArea > 0 && s.Area > set.MaxArea:
		return "OVER RANGE"
	case state == rig.In && s.Area < set.MinArea:
		return "UNDER RANGE, area"
	case state == rig.In:
		return "in range"
	case state == rig.Gap:
		return "UNDER RANGE, gap"
	}
	return "UNDER RANGE"
}

// TestOnlyWhatFollowsMayBeChanged: a size is marked as one that may be changed
// where the area of its row follows it, and nowhere else.
func TestOnlyWhatFollowsMayBeChanged(t *testing.T) {
	v := planned(t, jobs(t)["every kind"])
	f := opened(t, written(t, v))
	x := tableOf(t, f, "takeoff")
	open := func(heading string, row int) bool {
		id, err := f.GetCellStyle("takeoff", x.at[heading]+strconv.Itoa(row))
		if err != nil {
			t.Fatal(err)
		}
		s, err := f.GetStyle(id)
		if err != nil {
			t.Fatal(err)
		}
		return len(s.Fill.Color) == 1 && strings.HasSuffix(s.Fill.Color[0], shade)
	}
	for tag, want := range map[string]map[fittings.Dim]bool{
		"A1": {fittings.Width: true, fittings.Length: true}, "A21": {fittings.Width: false, fittings.Length: false},
		"C7": {fittings.GivenArea: true, fittings.Width: true, fittings.Length: false}, "S4": {fittings.BranchDiameter: false}, "A19": {fittings.Lining: true},
	} {
		row := x.row(map[string]string{"tag": tag})
		for d, may := range want {
			if open(d.Heading(), row) != may {
				t.Errorf("%s, %s: may be changed %v, want %v", tag, d.Heading(), !may, may)
			}
		}
	}
}
