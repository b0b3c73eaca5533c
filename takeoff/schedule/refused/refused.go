// Package refused writes the rows of a schedule that couldn't be used as a
// schedule of their own: in the user's layout, with the reasons beside each, to
// be mended and read again.
package refused

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/workbook"
)

// The headings of the columns that are added.
const (
	Where = columns.AddedMark + "headings"
	Why   = columns.AddedMark + "why"
)

// place is where a row stands.
type place struct {
	sheet string
	row   int
}

// Rows are the refused rows of a schedule.
type Rows struct {
	name    string
	options schedule.Options
	info    *schedule.Info
	faults  map[place][]takeoff.Fault
	order   []place
	sheets  []string // that have any
}

// Of gathers the refused rows of a takeoff; info is what its schedule was read
// with.
func Of(t *takeoff.Takeoff, info *schedule.Info, o schedule.Options) *Rows {
	r := &Rows{name: info.File, options: o, info: info, faults: map[place][]takeoff.Fault{}}
	for _, at := range t.Refused {
		p := place{at.Sheet, at.Row}
		r.faults[p] = nil
		r.order = append(r.order, p)
		if !slices.Contains(r.sheets, p.sheet) {
			r.sheets = append(r.sheets, p.sheet)
		}
	}
	for _, f := range t.Faults {
		p := place{f.Sheet, f.Row}
		if _, ok := r.faults[p]; ok {
			r.faults[p] = append(r.faults[p], f)
		}
	}
	return r
}

// Count is how many rows there are.
func (r *Rows) Count() int { return len(r.order) }

// Workbook reports whether a workbook is the form that loses nothing: the rows
// come from one.
func (r *Rows) Workbook() bool { return r.info.Encoding == "" }

// reasons says what is wrong with a row: the headings, and the messages.
func (r *Rows) reasons(p place) (where, why string) {
	var names, said []string
	for _, f := range r.faults[p] {
		if f.Heading != "" && !slices.Contains(names, f.Heading) {
			names = append(names, f.Heading)
		}
		if !slices.Contains(said, f.Message) {
			said = append(said, f.Message)
		}
	}
	return strings.Join(names, ", "), strings.Join(said, "; ")
}

// grid is the rows of one sheet as they are to be written.
type grid struct {
	name string
	rows [][]string
}

// layout is how the rows of a sheet are to be written.
type layout struct {
	columns int          // of the headings
	earlier []int        // columns that an earlier file of refused rows added
	kept    map[int]bool // rows that the others are read by
	spread  []bool       // columns whose merged cells count for all their rows
	asked   []bool       // and those of which nobody knows
	settled []string     // columns by their letters, and what their cells settled
	units   []string     // of columns, that only what is printed on each page gives; else nil
	kind    int          // column of the kind, -1 for none
	last    int          // row of the headings, the lower where there are two
	reads   []string     // what each column is read as
	typed   []string     // and its heading
}

func layoutOf(s *told.Sheet) *layout {
	l := &layout{kept: map[int]bool{}, kind: -1}
	for _, row := range s.Kept {
		l.kept[row] = true
	}
	if n := len(s.Headings); n > 0 {
		l.last = s.Headings[n-1]
	}
	for i, c := range s.Columns {
		l.spread, l.asked = append(l.spread, c.Spread), append(l.asked, c.Asked)
		l.reads, l.typed = append(l.reads, c.Reads), append(l.typed, c.Typed)
		if c.Reads == takeoff.Kind.Heading() {
			l.kind = i
		}
		if c.Why == told.PrintedUnit {
			l.units = append(l.units, make([]string, i-len(l.units))...)
			l.units = append(l.units, c.Unit)
		}
		if c.Settled {
			l.settled = append(l.settled, c.Letter+" "+cmp.Or(c.Reads, "-"))
		}
		if c.Typed == Where || strings.HasPrefix(c.Typed, columns.SettledMark) || c.Typed == Why || c.Typed == Why+" "+columns.CommaMark {
			l.earlier = append(l.earlier, i)
		}
	}
	l.columns = len(s.Columns) - len(l.earlier)
	return l
}

// doubt is put behind a cell that the file can't mark as the user's own does.
const doubt = " ?"

// unmerged leaves out what a cell merged down says in columns where that doesn't
// count for the row.
func (l *layout) unmerged(cells []string, m workbook.Marks) []string {
	if len(m.Down)+len(m.Over)+len(m.Struck)+len(m.Sums)+len(m.Unlike) == 0 && !m.Paint.Unseen {
		return cells
	}
	out := slices.Clone(cells)
	for _, i := range m.Over {
		if i < len(l.asked) && l.asked[i] {
			out[i] += doubt
		}
	}
	for _, i := range m.Unlike {
		out[i] += doubt
	}
	if (len(m.Struck)+len(m.Sums) > 0 || m.Paint.Unseen) && l.kind < len(out) && out[l.kind] != "" && l.kind >= 0 {
		out[l.kind] += doubt
	}
	for _, i := range m.Down {
		switch {
		case i < len(l.asked) && l.asked[i]:
			out[i] += doubt // of each row, or of all together
		case i >= len(l.spread) || !l.spread[i]:
			out[i] = ""
		}
	}
	return out
}

// doubted marks the cells of a row of which something else in the file said that they are in
// doubt: a comment, a quantity that the others have, sizes written otherwise.
func (l *layout) doubted(cells []string, faults []takeoff.Fault) []string {
	out := slices.Clone(cells)
	for _, f := range faults {
		at := -1
		switch {
		case strings.HasPrefix(f.Heading, items.CommentOn):
			at = l.kind
		case f.Heading == takeoff.Quantity.Heading() && f.Value == "":
			at = slices.Index(l.reads, f.Heading)
		case described.Slashed(f.Value):
			at = slices.Index(l.typed, f.Heading)
		}
		for at >= len(out) {
			out = append(out, "")
		}
		if at >= 0 && !strings.HasSuffix(out[at], doubt) {
			out[at] = strings.TrimSpace(out[at] + doubt)
		}
	}
	return out
}

// row puts what is added behind the columns that have headings; cells beyond
// these stay beyond, where they are found fault with again.
func (l *layout) row(cells []string, where, why string) []string {
	var own []string
	for i, cell := range cells {
		if !slices.Contains(l.earlier, i) {
			own = append(own, cell)
		}
	}
	out := make([]string, l.columns, l.columns+2)
	copy(out, own)
	out = append(out, where, why)
	if len(own) > l.columns {
		out = append(out, own[l.columns:]...)
	}
	return out
}

// grids gathers what is to be written, sheet by sheet: the rows that the others
// are read by, and the refused ones.
func (r *Rows) grids(data []byte) ([]grid, error) {
	layouts := map[string]*layout{}
	for _, s := range r.info.Sheets {
		layouts[s.Name] = layoutOf(s)
	}
	var out []grid
	said := Why
	if r.info.Decimal == "comma" {
		said += " " + columns.CommaMark
	}
	err := r.options.Walk(r.name, data, func(sheet string, number int, cells []string, m workbook.Marks) error {
		p := place{sheet, number}
		l := layouts[sheet]
		_, refused := r.faults[p]
		if l == nil || !slices.Contains(r.sheets, sheet) || !refused && !l.kept[number] {
			return nil
		}
		if len(out) == 0 || out[len(out)-1].name != sheet {
			out = append(out, grid{name: sheet})
		}
		g := &out[len(out)-1]
		for len(g.rows) < number-1 && number <= l.last { // headings keep their row, which a map may name
			g.rows = append(g.rows, make([]string, max(2, l.columns)))
		}
		where, why := "", ""
		switch {
		case refused:
			where, why = r.reasons(p)
		case number == l.last:
			where, why = Where, said
			if len(l.settled) > 0 {
				where = columns.SettledMark + strings.Join(l.settled, ", ") + "]"
			}
		}
		g.rows = append(g.rows, l.row(l.doubted(l.unmerged(cells, m), r.faults[p]), where, why))
		if number == l.last && l.units != nil {
			g.rows = append(g.rows, l.row(l.units, "", ""))
		}
		return nil
	})
	return out, err
}

// CSV writes the rows as text, parted as the schedule is. Rows of several
// sheets need a workbook.
func (r *Rows) CSV(w io.Writer, data []byte) error {
	if len(r.sheets) > 1 {
		return errors.New("rows of several sheets were refused; give --refused a name that ends in .xlsx")
	}
	gs, err := r.grids(data)
	if err != nil {
		return err
	}
	if len(gs) == 0 {
		return fmt.Errorf("no row of %s was refused", r.name)
	}
	return writeText(w, gs[0], r.info.Separator)
}
