package items

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
)

// Kindless is what a table without a column of kinds has instead.
type Kindless struct {
	NoKind    bool   // no column says the kind
	KindTold  string // so this is it
	KindSays  string // as a title says
	Plain     bool   // or its rows can be straights, by headings and cells
	Straights bool   // and by what stands above them
	fitted    string // a cell of the row that names a fitting all the same
	fits      map[string]bool
	KindAbove string // the cell of the kind of the row above, where that is a piece
	kindNow   string // that of the row
	kindLast  string // that of the row above, while its kind is settled
	Once      bool   // kinds stand once, above rows without
	onceSum   onceSum
}

// kindAsAbove takes the kind of the row above for one that says so.
func (t *Reader) kindAsAbove(r *takeoff.Row, s *columns.Spec, cell string) {
	if t.KindAbove == "" || t.OfRefused() {
		t.Unsure = t.chunked
		t.fault(r, s, cell, "means the row above; write the value itself")
		return
	}
	r.Text[takeoff.Kind] = t.word(s, t.KindAbove)
	t.Told.Add("kinds as that of the row above, the first '%s'", celltext.Shorten(cell), t.Place.Row)
}

// TellKind finds out what kind all pieces are of, where no column says it and a title, or
// the name of the sheet, does: Rectangular ducts, Bends. Where nothing does, and nothing
// names fittings, rows of a whole straight are taken for one.
func (t *Reader) TellKind() {
	t.KindTold, t.KindSays, t.Straights = "", "", false
	t.NoKind = !t.Maps(takeoff.Kind)
	if t.Units.Kinds = t.Units.Kinds || !t.NoKind; !t.NoKind || slices.ContainsFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.To() == takeoff.DimColumn(fittings.GivenArea) }) {
		return
	}
	texts := []string{t.Place.Sheet}
	for _, x := range t.Search.Texts {
		if x.Among { // it ends what stands above
			texts = nil
		}
		texts = append(texts, x.Text)
	}
	for _, text := range slices.Backward(texts[max(0, len(texts)-8):]) {
		for _, part := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("-–:;,()|/", r) }) {
			if w := t.Kinds().TitleKind(celltext.Trim(part)); w != "" {
				t.KindTold, t.KindSays, t.Units.Kinds = w, celltext.Shorten(celltext.Trim(text)), true
				return
			}
		}
	}
	t.Straights = t.Plain && !slices.ContainsFunc(texts, t.Kinds().OfOthers)
}

// nameKind gives a row the kind that its title says, or that of a straight, or asks for it.
func (t *Reader) nameKind(r *takeoff.Row) {
	if r.Text[takeoff.Kind] != "" || r.Refused(takeoff.Kind) {
		return
	}
	if t.KindTold == "" {
		t.takeStraight(r)
		return
	}
	if kind, _, _, _ := fittings.ParseDescription(t.KindTold); kind == fittings.Straight && t.turns(r) {
		r.Refuse(takeoff.Kind, t.Place.Fault(takeoff.Kind.Heading(), t.KindSays, "a column of kinds",
			fmt.Sprintf("'%s' above the rows names straights, and this one has sizes that only fittings have; add a column kind (straight, bend, reducer and so on)", t.KindSays)))
		return
	}
	r.Text[takeoff.Kind], t.Loud = t.KindTold, false
	t.Told.Add("kinds that no column gives, from '%s'", t.KindSays, r.At.Row)
}

// takeStraight takes a row of a whole cross-section and a length for a straight, where the
// table has no kinds and nothing of it names a fitting.
func (t *Reader) takeStraight(r *takeoff.Row) {
	whole := t.Straights && t.whole(r)
	switch {
	case whole && t.fitted == "":
		r.Text[takeoff.Kind], t.Loud = fittings.Straight.String(), false
		t.Told.Add("no column says what kind of piece each row is, so rows with a size and a length are read as straights; add a column kind if any is a fitting", "", r.At.Row)
	case whole:
		r.Refuse(takeoff.Kind, t.Place.Fault(takeoff.Kind.Heading(), celltext.Shorten(t.fitted), "a column of kinds",
			fmt.Sprintf("'%s' seems to name the kind of piece, and no column does; add a column kind (straight, bend, reducer and so on)", celltext.Shorten(t.fitted))))
	default:
		r.Refuse(takeoff.Kind, t.Place.Fault(takeoff.Kind.Heading(), "", "a column of kinds",
			"no column says what kind of piece this is; add a column kind (straight, bend, reducer and so on), or write it above the table, as Straight ducts"))
	}
}

// whole reports a row of a whole cross-section and a length; fitted is what names a fitting
// in it all the same.
func (t *Reader) whole(r *takeoff.Row) bool {
	across := r.Has(columns.Own[0]) && r.Has(columns.Own[1]) || r.Has(columns.Own[2]) || t.OrDiameter && r.Has(columns.Own[0])
	if !(across || r.Has(columns.Own[0]) && roundShape(r)) || !r.Has(takeoff.DimColumn(fittings.Length)) || t.turns(r) {
		return false
	}
	for _, c := range ofWords {
		if t.fitted == "" && r.Text[c] != "" {
			t.seeFitting(r.Text[c], noted[c == takeoff.Note])
		}
	}
	return true
}

// roundShape reports a row whose shape is circular: its width is its diameter.
func roundShape(r *takeoff.Row) bool {
	shape, ok := fittings.ParseShape(r.Text[takeoff.Shape])
	return ok && shape == fittings.Circular
}

// turns reports a row with a size that straights haven't: of another end, a radius, an angle.
func (t *Reader) turns(r *takeoff.Row) bool {
	for d := range fittings.NumDims {
		switch d {
		case fittings.Width, fittings.Height, fittings.Diameter, fittings.Length, fittings.Lining:
		default:
			if c := takeoff.DimColumn(d); r.Text[c] != "" && !(r.Has(c) && r.Number[c] == 0) {
				return true
			}
		}
	}
	return false
}

// ofWords are the columns of words that may name a fitting.
var ofWords = [...]takeoff.Column{takeoff.Note, takeoff.PlaceOnSite, takeoff.Tag, takeoff.System, takeoff.Run, takeoff.Group}

// noted gives remarks a heading for seeFitting, and no other words.
var noted = map[bool]string{true: "note"}

// seeFitting takes note of a cell that names a fitting. Its figures don't matter, so that
// numbered names are looked at once.
// A code counts under a heading that is given, of remarks or of what isn't used.
func (t *Reader) seeFitting(cell, heading string) {
	if heading != "" && described.FittingCode(cell) && !described.OfColours(heading) {
		t.fitted = cell
		return
	}
	if !celltext.HasWord(cell) {
		return
	}
	var room [64]byte
	name := room[:0]
	for i := range min(len(cell), len(room)) {
		if c := cell[i]; !celltext.Digit(c) {
			name = append(name, c)
		} else if n := len(name); n > 0 && name[n-1] != ' ' {
			name = append(name, ' ')
		}
	}
	names, met := t.fits[string(name)]
	if len(cell) > len(room) {
		names, met = t.namesFitting(cell), true
	}
	if !met {
		if names = t.namesFitting(string(name)); t.fits == nil || len(t.fits) > mostMet {
			t.fits = map[string]bool{}
		}
		t.fits[string(name)] = names
	}
	if names {
		t.fitted = cell
	}
}

// namesFitting reports words that name the fitting that the row may be.
func (t *Reader) namesFitting(words string) bool {
	return t.Kinds().NamesFitting(words) && !t.Kinds().FittingBeside(words)
}

// mostMet is how many names are remembered.
const mostMet = 4096
