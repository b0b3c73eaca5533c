package headings

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/quantity"
)

// branchOf and secondOf are the columns that sizes stand for under a heading
// for the branch, or for the other end.
var (
	branchOf = map[fittings.Dim]fittings.Dim{fittings.Width: fittings.BranchWidth, fittings.Height: fittings.BranchHeight,
		fittings.Diameter: fittings.BranchDiameter, fittings.Length: fittings.BranchLength, fittings.Angle: fittings.BranchAngle}
	secondOf = map[fittings.Dim]fittings.Dim{fittings.Width: fittings.Width2, fittings.Height: fittings.Height2, fittings.Diameter: fittings.Diameter2}
)

// Under reads a heading in two rows: low stands under over. Where the two
// aren't known together, and over isn't known to say nothing, the column is
// only suggested.
func (l *Lexicon) Under(over, low string) Heading {
	typed := over + " / " + low
	for _, both := range []string{over + " " + low, low + " " + over} {
		if h := l.Read(both); h.Verdict == Known || h.Verdict == Sizes {
			h.Typed = typed
			return h
		}
	}
	name, u, said := cutUnit(over)
	h := l.Read(low)
	if !h.Said && said && u.Measure == h.Column.Measure() {
		h.Unit, h.Said = u, true
	}
	h.Typed = typed
	if h.Verdict == Sizes {
		if of := map[string]SizeOf{"branch": BranchSize, "2": SecondSize, "main": h.Size}[l.Over(name)]; of != NoSize {
			h.Size = of
			return h
		}
		h.Verdict, h.Column = Near, takeoff.DimColumn(fittings.Width)
		return h
	}
	if h.Verdict != Known {
		return h
	}
	d, isSize := h.Column.Dim()
	of, ok := map[fittings.Dim]fittings.Dim(nil), true
	switch l.Over(name) {
	case "main":
		return h
	case "branch":
		of = branchOf
	case "2":
		of = secondOf
	default:
		upper := l.Read(over)
		if upper.Verdict == Known && upper.Column == h.Column {
			return h
		}
	}
	if d, ok = of[d]; ok && isSize {
		h.Column = takeoff.DimColumn(d)
		return h
	}
	h.Verdict = Near
	return h
}

// Beside reads a heading in the lower row right of one that stands under over, where over
// is the heading of a column and no group, and low that of another, which isn't a size: Length
// over (m), and Qty beside (m).
func (l *Lexicon) Beside(over, low string) (h Heading, ok bool) {
	upper, h := l.Read(over), l.Read(low)
	name, _, _ := cutUnit(over)
	_, isSize := h.Column.Dim()
	return h, l.Over(name) == "" && upper.Verdict == Known && h.Verdict == Known && !isSize && h.Column != upper.Column
}

// BesideEnd reports a heading that isn't of the other end or of the branch, over which it may
// seem to stand, as these have none: Qty, and Length beside the other end.
func (l *Lexicon) BesideEnd(over string, h Heading) bool {
	name, _, _ := cutUnit(over)
	of := map[string]map[fittings.Dim]fittings.Dim{"2": secondOf, "branch": branchOf}[l.Over(name)]
	d, isSize := h.Column.Dim()
	_, has := of[d]
	return of != nil && h.Verdict == Known && (!isSize || !has)
}

// OfDucts reports a heading that is a word for ducts, or for what stands over the sizes of
// ducts, with a unit or without: Duct, Kanal (mm).
func (l *Lexicon) OfDucts(typed string) bool {
	name, _, _ := cutUnit(typed)
	words := Tokens(name)
	return len(words) < 4 && l.Over(name) == "main" || len(words) == 1 && slices.Contains(ducts, words[0])
}

// cutUnit takes a unit off the end of a heading.
func cutUnit(typed string) (name string, u quantity.Unit, said bool) {
	words := Tokens(typed)
	for k := min(3, len(words)-1); k > 0; k-- {
		if u, ok := unitAtEnd(words, k); ok {
			words = words[:len(words)-k]
			if n := len(words) - 1; n > 0 && (words[n] == "in" || words[n] == "en" || words[n] == "i") {
				words = words[:n]
			}
			return strings.Join(words, " "), u, true
		}
	}
	return typed, u, false
}

// Unused reports a word that means nothing to us, though a schedule may have it as a
// heading: insulation, weight.
func (l *Lexicon) Unused(word string) bool {
	_, ok := l.unused[word]
	return ok
}

// Dimension reports a word that is about sizes or units in general.
func (l *Lexicon) Dimension(word string) bool { return l.places[word] == "dimension" }

// OfEnd reads a heading of the other end of a piece, which names that end before or behind the
// size, or alone: Outlet Ø, Ø sortie (mm), Austritt.
func (l *Lexicon) OfEnd(typed string) (h Heading, ok bool) {
	name, u, said := cutUnit(typed)
	words := Tokens(name)
	for k := min(2, len(words)); k > 0; k-- {
		rest := words[k:]
		if l.over[strings.Join(words[:k], "")] != "2" {
			if rest = words[:len(words)-k]; l.over[strings.Join(words[len(words)-k:], "")] != "2" {
				continue
			}
		}
		if len(rest) == 0 {
			h.Verdict, h.Size = Sizes, SecondSize
		} else if h = l.Read(strings.Join(rest, " ")); h.Verdict == Sizes && h.Size == OwnSize {
			h.Size = SecondSize
		} else if d, isSize := h.Column.Dim(); h.Verdict == Known && isSize && secondOf[d] != d {
			if d, ok = secondOf[d]; !ok {
				return h, false
			}
			h.Column = takeoff.DimColumn(d)
		} else {
			return h, false
		}
		if h.Typed = typed; said {
			h.Unit, h.Said = u, true
		}
		return h, !said || u.Measure == takeoff.Lengths
	}
	return h, false
}

// feetOnly takes the inches off words that end in feet and inches, of cells as 5'-0", and reports
// whether they do.
func feetOnly(words []string) ([]string, bool) {
	n := len(words) - 1
	if n < 2 || !slices.Contains(inchWords, words[n]) {
		return words, false
	}
	if words[n-1] == "and" && n > 2 {
		n--
	}
	if u, ok := quantity.UnitOf(words[n-1]); !ok || u != quantity.Foot {
		return words, false
	}
	return words[:n], true
}

// inchWords are those behind feet.
var inchWords = []string{"in", "ins", "inch", "inches"}

// Words of headings beside a side, a diameter or a length: of ducts, of one of them, and small
// ones between, in seven languages, without accents (from memory, unverified).
var (
	pipes    = []string{"pipe", "tube", "spiral", "buis", "ror", "tubo", "tuberia", "condotta", "leitung"}
	oneWords = []string{"unit", "unitaire", "unitario", "unitaria", "einzeln", "each", "piece", "stuk", "stuck", "st", "stk", "ea", "net", "netto", "nette", "neto", "neta", "netta", "pezzo", "pieza", "ud", "pz", "styck", "cut", "einzel"}
	ofWords  = []string{"of", "the", "de", "du", "des", "der", "del", "della", "di", "van", "av", "per", "je", "pro", "par", "por"}
)

// ofDuct settles a heading of a side, a diameter, a length or a size of which it says that it is
// that of the duct, and of a length that it is that of one: Rohr DN, Ø gaine, Long. unit.
func (l *Lexicon) ofDuct(h *Heading, words []string) bool {
	duct, one := false, false
	var rest []string
	for _, w := range words {
		switch {
		case slices.Contains(ducts, w) || slices.Contains(pipes, w):
			duct = true
		case slices.Contains(oneWords, w):
			one = true
		case !slices.Contains(ofWords, w):
			rest = append(rest, w)
		}
	}
	if !duct && !one || len(rest) == 0 || len(rest) > 2 || duct && rest[0] == "l" {
		return false
	}
	x := Heading{Typed: h.Typed}
	if _, ok := l.settle(&x, rest); !ok {
		return false
	}
	d, isSize := x.Column.Dim()
	switch {
	case x.Verdict == Sizes && x.Size == OwnSize && !one:
	case x.Verdict != Known || !isSize:
		return false
	case d == fittings.Length, !one && (d == fittings.Width || d == fittings.Height || d == fittings.Diameter):
	default:
		return false
	}
	*h = x
	return true
}

// numbered reports a column of names whose heading ends in a word for number, which isn't how
// many.
func numbered(c takeoff.Column, u quantity.Unit) bool {
	switch c {
	case takeoff.Tag, takeoff.System, takeoff.Level, takeoff.PlaceOnSite, takeoff.Drawing:
		return u.Measure == takeoff.Count
	}
	return false
}

// ofRemarks reports a heading with a word for remarks among others, as QC remark, Bemerkung
// Bauleitung, Site comments. Delivery note no isn't one.
func (l *Lexicon) ofRemarks(words []string) bool {
	if len(words) < 2 || len(words) > 5 {
		return false
	}
	some := false
	for _, w := range words {
		switch w {
		case "no", "nr", "number", "numero", "nummer", "ref", "date", "datum", "delivery", "credit", "by", "rev":
			return false
		}
		m, known := l.meanings[w]
		some = some || known && m.column == takeoff.Note && m.size == NoSize && w != "nota" && w != "info" && w != "ext"
	}
	return some
}
