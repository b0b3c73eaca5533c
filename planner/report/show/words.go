package show

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"blankoff/planner/price"
	"blankoff/planner/report"
	"blankoff/planner/units"
	"blankoff/takeoff"
)

// Range is the range to set in a section's test, with its rig where there are
// several.
func Range(v *report.Plan, s *report.Section) string {
	if len(v.Alone) == 0 || s.Range == "" {
		return s.Range
	}
	return s.Rig + ": " + s.Range
}

// Span names a row, or the stretch of its pieces that is meant: "D4", "D4 piece
// 2 of 8", "D4 pieces 2 to 5 of 8".
func Span(p *report.Piece) string {
	switch {
	case p.Of <= 1 || p.From <= 1 && p.To >= p.Of:
		return p.Tag
	case p.From == p.To:
		return fmt.Sprintf("%s piece %d of %d", p.Tag, p.From, p.Of)
	}
	return fmt.Sprintf("%s pieces %d to %d of %d", p.Tag, p.From, p.To, p.Of)
}

// State says whether the rig can judge a section: "in range", "under range" or
// "over range".
func State(s *report.Section) string {
	switch {
	case s.OverRange:
		return "over range"
	case s.UnderRange:
		return "under range"
	}
	return "in range"
}

// ItemSize is the size of a row in the units of the view.
func ItemSize(it *report.Item) string {
	if it.Shown == "" {
		return it.Size
	}
	return it.Shown
}

// PieceSize is the size of a piece in the units of the view.
func PieceSize(p *report.Piece) string {
	if p.Shown == "" {
		return p.Size
	}
	return p.Shown
}

// ItemState says what became of a row: "used", "excluded" where it is out of
// scope, or "refused".
func ItemState(it *report.Item, refused bool) string {
	switch {
	case refused:
		return "refused"
	case it.Scope == "out":
		return "excluded"
	}
	return "used"
}

// Safe makes a text of a schedule safe to be shown: control characters other
// than white space, and marks that turn the direction of writing, become "?", so
// that a schedule can't steer a screen or disguise what it says.
func Safe(s string) string {
	plain := true
	for i := 0; i < len(s) && plain; i++ {
		plain = s[i] >= ' ' && s[i] < 0x7f
	}
	if plain {
		return s
	}
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return r
		case unicode.IsControl(r), r == unicode.ReplacementChar,
			r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069, r == 0x200e, r == 0x200f, r == 0xfeff:
			return '?'
		}
		return r
	}, s)
}

// Difference is that of a balance, m2, to six digits; what is less than 1e-9 is
// the noise of adding up and is shown as none.
func Difference(m2 float64) float64 {
	if math.Abs(m2) <= 1e-9 {
		return 0
	}
	v, err := strconv.ParseFloat(strconv.FormatFloat(m2, 'g', 6, 64), 64)
	if err != nil {
		return m2
	}
	return v
}

// DifferenceIn is that difference in these units.
func DifferenceIn(u units.System, m2 float64) float64 {
	return Difference(u.Of(units.Area, Difference(m2)))
}

// Rows shows that no row was lost.
func Rows(s *takeoff.Schedule) string {
	return fmt.Sprintf("%d read = %d used + %d excluded + %d refused", s.RowsRead, s.RowsUsed, s.RowsExcluded, s.RowsRefused)
}

// RowsIn is Rows with the areas of the rows that don't count, as far as they are
// known.
func RowsIn(u units.System, s *takeoff.Schedule) string {
	out, refused := "", ""
	if s.OutM2 > 0 {
		out = " (" + u.Area(s.OutM2) + ")"
	}
	switch {
	case s.RefusedM2 > 0:
		refused = " (" + u.Area(s.RefusedM2) + " known)"
	case s.RowsRefused > 0:
		refused = " (area not known)"
	}
	return fmt.Sprintf("%d read = %d used + %d excluded%s + %d refused%s", s.RowsRead, s.RowsUsed, s.RowsExcluded, out, s.RowsRefused, refused)
}

// Faults is a fault on one or more rows.
type Faults struct {
	takeoff.Fault
	Rows []int
}

// Gather puts faults that differ only in their row together, in the order in
// which they first come.
func Gather(faults []takeoff.Fault) []Faults {
	at := map[takeoff.Fault]int{}
	var out []Faults
	for _, f := range faults {
		key := f
		key.Row = 0
		k, ok := at[key]
		if !ok {
			k = len(out)
			at[key] = k
			out = append(out, Faults{Fault: key})
		}
		if f.Row > 0 {
			out[k].Rows = append(out[k].Rows, f.Row)
		}
	}
	return out
}

// Place is where a fault is and what stands there: "tower.csv, rows 12 to 40
// and 55, width_mm: '6OO'".
func (f *Faults) Place() string {
	var parts []string
	if f.File != "" {
		parts = append(parts, f.File)
	}
	if f.Sheet != "" {
		parts = append(parts, "sheet "+f.Sheet)
	}
	if text := RowsText(f.Rows); text != "" {
		parts = append(parts, text)
	}
	if f.Heading != "" {
		parts = append(parts, f.Heading)
	}
	s := strings.Join(parts, ", ")
	switch {
	case f.Value != "":
		return s + ": '" + f.Value + "'"
	case f.Heading != "" && len(f.Rows) > 0:
		return s + ": empty"
	}
	return s
}

// Text is what is wrong and what was expected.
func (f *Faults) Text() string {
	text := f.Message
	if f.Expected != "" && !strings.Contains(text, f.Expected) {
		text = strings.TrimSuffix(text, ".") + "; expected " + f.Expected
	}
	return strings.TrimPrefix(text, "; ")
}

// RowsText writes rows as people do: "row 7", "rows 12 to 40 and 55". They are
// given in ascending order; the same one twice counts once.
func RowsText(rows []int) string { return rowsText(runsOf(rows)) }

// stretch is rows that follow each other; two are named, more are "from to".
type stretch struct {
	text []string
	rows int
}

// runsOf finds the stretches of rows, and how many rows there are.
func runsOf(rows []int) (runs []stretch, n int) {
	for i := 0; i < len(rows); {
		k := i
		for k+1 < len(rows) && rows[k+1] >= rows[k] && rows[k+1] <= rows[k]+1 {
			k++
		}
		from, to := rows[i], rows[k]
		r := stretch{rows: to - from + 1}
		switch r.rows {
		case 1:
			r.text = []string{fmt.Sprint(from)}
		case 2:
			r.text = []string{fmt.Sprint(from), fmt.Sprint(to)}
		default:
			r.text = []string{fmt.Sprintf("%d to %d", from, to)}
		}
		runs, n, i = append(runs, r), n+r.rows, k+1
	}
	return runs, n
}

func rowsText(runs []stretch, n int) string {
	var text []string
	for _, r := range runs {
		text = append(text, r.text...)
	}
	switch {
	case n == 0:
		return ""
	case n == 1:
		return "row " + text[0]
	case len(text) == 1:
		return "rows " + text[0]
	}
	last := len(text) - 1
	return "rows " + strings.Join(text[:last], ", ") + " and " + text[last]
}

// PressureRule says how rows without a test pressure get one.
func PressureRule(rule string) string {
	if rule == "operating" {
		return "the mean operating pressure of their system, weighed by area"
	}
	return "the highest usual step that their design pressure and ceilings allow"
}

// Count is a number of things: 1 test, 2 tests.
func Count(n int, word string) string { return units.Count(n, word) }

// Many is the word for so many things: test, tests.
func Many(n int, word string) string { return units.Many(n, word) }

// Quantity is a quantity of a bill with its unit: 1 day, 5 days, 84.57 m2.
func Quantity(q price.Quantity, unit string) string { return report.QuantityText(q, unit) }
