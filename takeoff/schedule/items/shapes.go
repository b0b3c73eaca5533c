package items

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
)

// shapeTold is the shape that something else than a cell of the row gives its pieces.
type shapeTold struct {
	told        bool   // anything
	axes        bool   // the headings are of major and minor axes
	ovals       bool   // a title begins with oval ducts, and goes on with a name
	oval, round string // what says so
}

// TellShape finds out what is said of the shape of all pieces where no column is.
func (t *Reader) TellShape() {
	t.shape = shapeTold{}
	if t.Maps(takeoff.Shape) {
		return
	}
	named := func(word string, d fittings.Dim) bool {
		return slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
			return s.Used && s.Verdict == headings.Known && s.To() == takeoff.DimColumn(d) && slices.Contains(headings.Tokens(s.Typed), word)
		})
	}
	t.shape.axes = named("major", fittings.Width) && named("minor", fittings.Height)
	for _, x := range append([]headrow.Line{{Text: t.Place.Sheet, Among: true}}, t.Search.Texts...) {
		text := x.Text
		oval, round := described.OvalWord.MatchString(text) || described.OvalDucts.MatchString(text), described.RoundWord.MatchString(text)
		switch {
		case described.RectWord.MatchString(text) || oval && round:
			t.shape.oval, t.shape.round, t.shape.ovals = "", "", false
		case oval:
			t.shape.oval, t.shape.round, t.shape.ovals = celltext.Shorten(text), "", !x.Among && t.ofOvals(text)
		case round:
			t.shape.oval, t.shape.round, t.shape.ovals = "", celltext.Shorten(text), false
		}
	}
	t.shape.told = t.shape.axes || t.shape.oval+t.shape.round != ""
}

// ofOvals reports a title of oval ducts and a name, with no word that parts them from others:
// Ovalrohre Kongresszentrum; not Ovalrohre und Kanäle.
func (t *Reader) ofOvals(title string) bool {
	words := headings.Tokens(title)
	return described.OvalTitle.MatchString(title) && len(words) < 7 && t.Lex.Says(words, title) == 0 && !slices.ContainsFunc(words, func(w string) bool {
		return slices.Contains(joining, w)
	})
}

// joining are words of titles with which something else follows, in seven languages (from memory, unverified).
var joining = []string{"and", "or", "with", "to", "see", "in", "as", "und", "oder", "mit", "auf", "siehe", "als", "et", "ou", "avec", "vers", "voir", "en", "of", "met", "naar", "zie", "och", "eller", "med", "till", "se", "y", "o", "con", "a", "ver", "e", "vedi", "not", "no", "ohne", "without", "sans", "zonder", "utan", "sin", "senza", "nicht", "pas", "geen", "ej", "non"}

// doubtShape gives a row the shape that its headings say, or refuses it where
// something says another than it would be taken for.
func (t *Reader) doubtShape(r *takeoff.Row) {
	if r.Text[takeoff.Shape] != "" || r.Text[columns.Own[0]] == "" || r.Text[columns.Own[1]] == "" || r.Text[columns.Own[2]] != "" {
		return
	}
	if _, _, shape, ok := fittings.ParseDescription(r.Text[takeoff.Kind]); !ok || shape != fittings.NoShape {
		return
	}
	said := t.shape.oval + t.shape.round
	switch note := r.Text[takeoff.Note]; {
	case t.shape.axes:
		r.Text[takeoff.Shape] = fittings.FlatOval.String()
		t.Told.Add("rows of a major and a minor axis, read as flat oval", "", r.At.Row)
		return
	case t.shape.ovals && r.Number[columns.Own[0]] > r.Number[columns.Own[1]]:
		r.Text[takeoff.Shape] = fittings.FlatOval.String()
		t.Told.Add("rows of sides below '%s', read as flat oval", t.shape.oval, r.At.Row)
		return
	case note != "" && len(note) <= maxRemark && (described.OvalWord.MatchString(note) || saysRound(r, note)):
		said = celltext.Shorten(note)
	}
	if said != "" {
		r.Faults = append(r.Faults, t.Place.Fault(takeoff.Shape.Heading(), "", "the shape of the piece",
			fmt.Sprintf("'%s' seems to say that it isn't rectangular, and nothing in the row does; write the shape in a column, or behind the size", said)))
	}
}

// saysRound reports a remark that calls a piece of sides round. A diameter may be that of
// something in it, where the sides aren't alike.
func saysRound(r *takeoff.Row, note string) bool {
	if !described.RoundNote.MatchString(note) {
		return false
	}
	k, _, _, _ := fittings.ParseDescription(r.Text[takeoff.Kind])
	return r.Number[columns.Own[0]] == r.Number[columns.Own[1]] || k != fittings.Transition && !celltext.Digit(note[len(note)-1])
}

// missing is what no column gives of the pieces, though columns that aren't used may.
type missing struct{ size, length bool }

// seeMissing finds out whether no column gives sizes, or lengths.
func (t *Reader) seeMissing() {
	gives := func(d ...fittings.Dim) bool {
		return slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
			return s.Used && (s.Verdict == headings.Sizes || s.Verdict == headings.Known && slices.ContainsFunc(d, func(d fittings.Dim) bool { return s.To() == takeoff.DimColumn(d) }))
		})
	}
	long := slices.ContainsFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.Size == headings.LongSize })
	t.missing = missing{size: !gives(fittings.Width, fittings.Height, fittings.Diameter, fittings.GivenArea),
		length: !long && t.UnitsAt == 0 && !t.Maps(takeoff.DimColumn(fittings.Length)) && !t.Maps(takeoff.DimColumn(fittings.GivenArea))}
}

// doubtMissing refuses a row of which no column gives the size or the length, where columns
// that aren't used hold figures: these are the cause.
func (t *Reader) doubtMissing(r *takeoff.Row, cells []string) {
	if t.Loud || len(r.Faults) > 0 {
		return
	}
	kind, _, _, _ := fittings.ParseDescription(r.Text[takeoff.Kind])
	what, write, c := "", "", takeoff.DimColumn(fittings.Width)
	switch {
	case t.missing.size && len(t.Pending) == 0 && kind != fittings.Inline && kind != fittings.NoKind:
		what, write = "size", "size, or width_mm and height_mm, or diameter_mm"
	case t.missing.length && kind == fittings.Straight && r.Text[takeoff.DimColumn(fittings.Length)] == "" && !t.longInKind():
		what, write, c = "length", "length_mm, with quantity", takeoff.DimColumn(fittings.Length)
	default:
		return
	}
	var names []string
	for i, cell := range cells[:min(len(cells), len(t.Specs))] {
		s := &t.Specs[i]
		if cell = celltext.Trim(cell); s.Used || s.Typed == "" || cell == "" || !celltext.Digit(cell[0]) || s.OfUnits ||
			slices.ContainsFunc(headings.Tokens(s.Typed), t.Lex.Unused) || len(names) > 3 {
			continue
		}
		if s.Verdict != headings.Unknown || s.Fixed && t.meant(s) != headings.Unknown { // said at the heading
			return
		}
		names = append(names, "'"+s.Typed+"'")
	}
	if len(names) == 0 {
		return
	}
	are := "isn't"
	if len(names) > 1 {
		are = "aren't"
	}
	r.Refuse(c, t.Place.Fault(what, "", write, fmt.Sprintf("no column gives the %s, and %s %s used; rename what holds it to %s", what, strings.Join(names, ", "), are, write)))
}

// longInKind reports a length beside the kind of the row.
func (t *Reader) longInKind() bool {
	return t.InKind.row.length != "" || slices.ContainsFunc(t.Pending, func(p SizeCell) bool { return p.Spec == t.InKind.whole })
}

// meant is what became of a heading without a map.
func (t *Reader) meant(s *columns.Spec) headings.Verdict {
	if over, low, two := strings.Cut(s.Typed, " / "); two {
		return t.Lex.Under(over, low).Verdict
	}
	return t.Lex.Read(s.Typed).Verdict
}

// maxRemark is the length of a remark that is looked at for what it says, bytes.
const maxRemark = 200

// both is what is kept to find rows that give sides and a diameter, where most give one of these.
type both struct {
	may   bool // there are columns of both
	rows  []bothSizes
	one   int // rows that give one of these
	agree int // that give both, and the diameter is that of a duct as large
	count int // of the others
}

// bothSizes is such a row.
type bothSizes struct {
	row                     int
	width, height, diameter string
}

// mostBoth is how many of them are told.
const mostBoth = 50

// seeBoth takes in a row. Kinds of two ends may have one of each.
func (t *Reader) seeBoth(r *takeoff.Row) {
	b := &t.both
	w, h, d := r.Number[columns.Own[0]], r.Number[columns.Own[1]], r.Number[columns.Own[2]]
	if sides := w > 0 && h > 0; !sides || d == 0 {
		if sides || d > 0 {
			b.one++
		}
		return
	}
	switch kind, _, _, _ := fittings.ParseDescription(r.Text[takeoff.Kind]); {
	case len(r.Faults) > 0 || kind != fittings.Straight && kind != fittings.Bend:
	case asLarge(w, h, d):
		b.agree++
	default:
		if b.count++; len(b.rows) < mostBoth {
			b.rows = append(b.rows, bothSizes{r.At.Row, strings.Clone(r.Text[columns.Own[0]]), strings.Clone(r.Text[columns.Own[1]]), strings.Clone(r.Text[columns.Own[2]])})
		}
	}
}

// asLarge reports a diameter that is one of a duct of two sides: of the same area, the same ratio of
// area to girth, or the same friction (ASHRAE Fundamentals 2021 ch. 21, from memory, unverified), within 4 %; or is
// the side of one that is as wide as high.
func asLarge(w, h, d float64) bool {
	for _, e := range [...]float64{math.Sqrt(4 * w * h / math.Pi), 2 * w * h / (w + h), 1.3 * math.Pow(w*h, 0.625) / math.Pow(w+h, 0.25)} {
		if math.Abs(d-e) <= 0.04*e {
			return true
		}
	}
	return w == h && d == w
}

// merge adds what was found further down.
func (b *both) merge(below *both) {
	b.one, b.agree, b.count = b.one+below.one, b.agree+below.agree, b.count+below.count
	b.rows = append(b.rows, below.rows[:min(len(below.rows), mostBoth-len(b.rows))]...)
}

// toldBoth finds fault with them, where they are few.
func (t *Reader) toldBoth() {
	b := t.both
	t.both = both{may: b.may}
	if b.count > b.one || b.agree > b.count {
		return
	}
	for _, x := range b.rows {
		p := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: x.row}
		t.Found.Faults = append(t.Found.Faults, p.Fault(columns.Own[2].Heading(), celltext.Shorten(x.diameter), "sides or a diameter",
			fmt.Sprintf("'%s' and '%s' make it rectangular, and '%s' round; leave out what it isn't", celltext.Shorten(x.width), celltext.Shorten(x.height), celltext.Shorten(x.diameter))))
	}
}
