package headrow

import (
	"slices"

	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// Above is what stands above the heading row, as far as it was looked for.
type Above struct {
	Rows   []int  // rows above the heading row
	First  string // the first of them, as text
	Texts  []Line
	Last   []string // the cells of the row before, where it may be the upper of two heading rows
	LastAt int
	Held   []string // a heading row whose lower row may follow
	HeldAt int
	Failed bool  // looked long enough
	Piece  int   // the first row that looks like one, though no headings stand above it; 0: none
	Sized  []int // rows that may be pieces

	Printed []Line // on units, at the head or foot of each page
}

// OnAll are the lines that hold for all tables of a sheet or for the one below them.
func (f *Above) OnAll() []Line { return append(slices.Clip(f.Printed), f.Texts...) }

// Line is a row above the headings as text.
type Line struct {
	Row   int
	Text  string
	Parts string // of several cells: these with commas between them
	Sheet string // of a cover, else empty
	Unit  quantity.Unit
	Among bool // it stands among the rows
}

// Quoted is the first rows above the headings as text.
func (f *Above) Quoted() string {
	out := "'" + f.First + "'"
	for i, x := range f.Texts[min(1, len(f.Texts)):] {
		if i == told.MostQuoted {
			break
		}
		out += ", '" + celltext.Shorten(x.Text) + "'"
	}
	return out
}

// Drop takes the last row out of those above the headings.
func (f *Above) Drop() {
	n := len(f.Rows) - 1
	for len(f.Texts) > 0 && f.Texts[len(f.Texts)-1].Row == f.Rows[n] {
		f.Texts = f.Texts[:len(f.Texts)-1]
	}
	f.Rows = f.Rows[:n]
	if n == 0 {
		f.First = ""
	}
}

// Names is the unit that a title seems to name for sizes.
func (x *Line) Names() (quantity.Unit, bool) {
	if x.Unit.Name != "" {
		return x.Unit, true
	}
	m := wording.LoneUnit.FindStringSubmatch(x.Text)
	if m == nil || slices.ContainsFunc(headings.Tokens(x.Text), func(w string) bool { return slices.Contains(wording.OfInsulation, w) }) {
		return quantity.Unit{}, false
	}
	return quantity.UnitOf(m[1] + m[2] + m[3])
}

// Whole is the line as it was before commas made several cells of it.
func (x *Line) Whole() string {
	if x.Parts != "" {
		return x.Parts
	}
	return x.Text
}

// MostTitle is how many cells of a row above the headings are looked at.
const MostTitle = 40
