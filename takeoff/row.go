package takeoff

import (
	"fmt"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff/ledger"
)

// Place is where in a schedule something stands.
type Place struct {
	File  string
	Sheet string // empty for a text file
	Row   int    // as the file counts: the first line is 1
}

// String is the place as people write it: "plant.xlsx, sheet Supply, row 14".
func (p Place) String() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Sheet != "" {
		b.WriteString(", sheet " + p.Sheet)
	}
	if p.Row > 0 {
		fmt.Fprintf(&b, ", row %d", p.Row)
	}
	return b.String()
}

// Fault says what is wrong in a schedule, where, and what to do about it.
type Fault struct {
	File     string `json:"file"`
	Sheet    string `json:"sheet"`
	Row      int    `json:"row"`
	Heading  string `json:"heading"`
	Value    string `json:"value"`    // as typed
	Expected string `json:"expected"` // what was expected there
	Message  string `json:"message"`  // what is wrong and what to do
}

// Fault makes a fault at this place.
func (p Place) Fault(heading, value, expected, message string) Fault {
	return Fault{p.File, p.Sheet, p.Row, heading, value, expected, message}
}

// Row is one row of a schedule after the door: the text of each known column
// as typed, and its numbers in the program's units.
type Row struct {
	At      Place
	Text    [NumColumns]string  // as typed, outer white space cut
	Number  [NumColumns]float64 // m, degrees, m2, Pa, minutes or a count; see Has
	has     uint64
	refused uint64
	Faults  []Fault // cells that couldn't be understood
	Most    int     // rows that the file may hold, where the door knows; 0: not known
	Assumed bool    // its sizes are in a unit that nobody stated

	Revision uint16 // marks its revision, where a column tells it; 0: none
	Named    uint8  // lines above it that name the rows below them, or end those above
	Mark     uint8  // marks it as it stands, with all its cells: another has another, as a rule
}

// Entitled is what a line that names the rows below it adds to Row.Named; one that ends those above
// adds 1.
const Entitled = ledger.Entitled

// ownUnit reports a row of which a length or a size across has its unit, or another word,
// in its cell.
func ownUnit(r *Row) bool {
	for _, d := range [...]fittings.Dim{fittings.Length, fittings.Width, fittings.Diameter} {
		if text := r.Text[DimColumn(d)]; text != "" && (text[len(text)-1] < '0' || text[len(text)-1] > '9') {
			return true
		}
	}
	return false
}

// SetNumber gives column c a number, in the program's unit.
func (r *Row) SetNumber(c Column, v float64) {
	r.Number[c] = v
	r.has |= 1 << c
}

// Bare reports a row without a number.
func (r *Row) Bare() bool { return r.has == 0 }

// Unset empties column c.
func (r *Row) Unset(c Column) {
	r.Text[c], r.Number[c] = "", 0
	r.has &^= 1 << c
}

// Has reports whether column c holds a number that was understood.
func (r *Row) Has(c Column) bool { return r.has&(1<<c) != 0 }

// Refuse adds a fault of the cell in column c.
func (r *Row) Refuse(c Column, f Fault) {
	r.refused |= 1 << c
	r.Faults = append(r.Faults, f)
}

// Refused reports whether the cell in column c has a fault already.
func (r *Row) Refused(c Column) bool { return r.refused&(1<<c) != 0 }

// Reset empties the row for use again at place p.
func (r *Row) Reset(p Place) { *r = Row{At: p} }

// Clear is Reset for a row that holds nothing but what is in these columns.
func (r *Row) Clear(columns []Column, p Place) {
	for _, c := range columns {
		r.Text[c], r.Number[c] = "", 0
	}
	r.At, r.has, r.refused, r.Faults, r.Most, r.Assumed, r.Revision, r.Named, r.Mark = p, 0, 0, nil, 0, false, 0, 0, 0
}

// Schedule says which file was read and what became of its rows:
// rows read = used + excluded + refused.
type Schedule struct {
	File         string `json:"file"`
	SHA256       string `json:"sha256"` // fingerprint of the file's bytes
	RowsRead     int    `json:"rows_read"`
	RowsUsed     int    `json:"rows_used"`
	RowsExcluded int    `json:"rows_excluded"`
	RowsRefused  int    `json:"rows_refused"`

	// Areas of the excluded and of the refused rows as far as they are known, m2.
	OutM2     float64 `json:"out_m2,omitzero"`
	RefusedM2 float64 `json:"refused_m2,omitzero"`

	TotalRows []TotalRow `json:"-"` // they count as excluded
	RowsLeft  int        `json:"-"` // hidden rows left out; they too
	Hidden    []Place    `json:"-"` // rows that are hidden, and read all the same
}

// TotalRow is a row of a schedule that sums up others. It is no piece.
type TotalRow struct {
	At       Place
	Label    string
	Before   int     // rows of the file handed on before it
	Since    [3]int  // rows handed on before the last total, the last sub-heading, and its sheet
	Below    [2]int  // of one above its rows: rows handed on before the next total, and at the end of its sheet
	Area     float64 // m2; see AreaText
	AreaText string  // as typed; empty: it gives none
	Quantity int     // 0: it gives none
	Whole    bool    // by its name it is of all pieces, and each row above says how many it is
}

// StatedTotal is an area that somebody states for a whole system or section.
type StatedTotal struct {
	At      Place
	By      string // system or section
	Name    string
	Area    float64 // m2
	Text    string  // as typed
	Flow    float64 // greatest flow of the network, L/s; 0 is not given
	Reading float64 // a test's reading, L/s; 0 is not given
}
