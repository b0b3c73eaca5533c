// Package described knows what the words for a piece say: its kind and shape, and what stands
// beside them of its sizes, its length, its ends and its style. It reads text only.
package described

import (
	"regexp"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// Kinds knows what words stand for that name kinds of pieces.
type Kinds struct {
	Lex         *headings.Lexicon
	Millimetres func() bool // nothing says that sizes are in another unit
	LengthLast  bool        // the third of three figures is the length
}

// Translate finds what a word stands for: "" where it isn't known, and an angle
// before a bar where the cell gives one, as in "90° bend".
func (k Kinds) Translate(c takeoff.Column, cell string) string {
	if c == takeoff.Kind && (cell == "" || wording.DoubtfulKind(cell) || strings.Contains(cell, BesideMark)) {
		return ""
	}
	if w, ok := k.Lex.Exact(c, cell); ok {
		if headings.Squash(w) == headings.Squash(cell) {
			return cell
		}
		return w
	}
	if c == takeoff.Joint { // 30 mm flange
		for _, word := range headings.Tokens(cell) {
			if w, ok := k.Lex.Exact(c, word); ok {
				return w
			}
		}
	}
	if c == takeoff.Shape || c == takeoff.Shape2 {
		if _, known := fittings.ParseShape(cell); known {
			return cell
		}
		if s := k.ShapeOf(cell); s != fittings.NoShape {
			return s.String()
		}
	}
	if c != takeoff.Kind {
		return cell
	}
	if w := k.turnedKind(cell); w != "" {
		return w
	}
	return k.described(cell)
}

// turnedKind reads a kind by itself or with an angle: bend, 90° bend, Bend (90°).
func (k Kinds) turnedKind(cell string) string {
	if w := k.kind(cell); w != "" {
		return w
	}
	if m := angled.FindStringSubmatch(cell); m != nil {
		if w := k.kind(celltext.Trim(m[2] + m[3])); w != "" {
			return strings.Replace(m[1]+m[4], ",", ".", 1) + "|" + w
		}
	}
	if !celltext.HasDigit(cell) {
		return ""
	}
	if m := turned.FindStringSubmatch(cell); m != nil && len(celltext.Trim(m[2]+m[3])) > 1 { // Bend 90, Tee (90°); T15 is a tag
		switch w := k.kind(celltext.Trim(m[2] + m[3])); kindOf(w) {
		case fittings.Bend, fittings.Tee, fittings.Cross:
			return m[1] + m[4] + "|" + w
		}
	}
	return ""
}

// kind reads a kind by itself.
func (k Kinds) kind(cell string) string {
	if cell == "" || wording.DoubtfulKind(cell) {
		return ""
	}
	if w, ok := k.Lex.Exact(takeoff.Kind, cell); ok {
		return w
	}
	if _, _, _, ok := fittings.ParseDescription(cell); ok {
		return cell
	}
	if w, ok := k.Lex.Word(takeoff.Kind, cell); ok {
		return w
	}
	return ""
}

// KindIn is the kind that a cell names.
func (k Kinds) KindIn(cell string) fittings.Kind {
	if !k.NamesKind(cell) {
		return fittings.NoKind
	}
	return kindOf(k.Translate(takeoff.Kind, cell))
}

// Whole reports a cell that says all of a straight: Straight duct 600x400x1500.
func (k Kinds) Whole(cell string) bool {
	_, said, _ := strings.Cut(k.Translate(takeoff.Kind, cell), BesideMark)
	return said != "" && said[0] == OfWhole
}

// NamesShape reports a cell that names a shape.
func (k Kinds) NamesShape(cell string) bool {
	_, known := k.Lex.Exact(takeoff.Shape, cell)
	_, shape := fittings.ParseShape(cell)
	return known || shape
}

// ShapeOf is the shape that a cell of shapes names, by itself or as that of a duct: Gaine
// rectangulaire, Spiral round.
func (k Kinds) ShapeOf(cell string) fittings.Shape {
	if len(cell) > celltext.MaxWord {
		return fittings.NoShape
	}
	if s, ok := k.shape(cell); ok {
		return s
	}
	if kind, _, s, ok := fittings.ParseDescription(k.kind(cell)); ok && kind == fittings.Straight {
		return s
	}
	found := fittings.NoShape
	for _, w := range headings.Tokens(cell) {
		s, ok := k.shape(w)
		if kind, _, of, known := fittings.ParseDescription(k.kind(w)); !ok && known && kind == fittings.Straight {
			s, ok = of, true
		}
		if !ok && !k.Lex.BesideKind(w) || s != fittings.NoShape && found != fittings.NoShape && s != found {
			return fittings.NoShape
		}
		found = max(found, s)
	}
	return found
}

// shape is the shape that a cell is the name of.
func (k Kinds) shape(cell string) (fittings.Shape, bool) {
	if w, known := k.Lex.Exact(takeoff.Shape, cell); known {
		cell = w
	}
	return fittings.ParseShape(cell)
}

// NamesKind reports a cell that names a kind of piece, and not only a shape.
func (k Kinds) NamesKind(cell string) bool {
	if len(cell) > celltext.MaxWord || strings.TrimLeft(cell, "0123456789.,") == "" {
		return false
	}
	if k.NamesShape(cell) || len(headings.Tokens(cell)) == 1 && (RoundWord.MatchString(cell) || RectWord.MatchString(cell)) {
		return false
	}
	return k.Translate(takeoff.Kind, cell) != ""
}

// NamesPiece is NamesKind for cells of a column that may be of kinds: words as Rechteckkanal and
// Spirobuis, which name a duct and its shape in one, are kinds there too. Spiral alone isn't.
func (k Kinds) NamesPiece(cell string) bool {
	return k.NamesKind(cell) || len(cell) > 6 && len(cell) <= celltext.MaxWord && !k.NamesShape(cell) && ductWithin.MatchString(cell) && k.Translate(takeoff.Kind, cell) != ""
}

// ductWithin is a word for a duct, by itself or at the end of one, in seven languages (from
// memory, unverified).
var ductWithin = regexp.MustCompile(`(?i)(?:ducts?|pipes?|tubes?|kan[aä]le?|kanalen|kanaler|kanaal|rohre?|gaines?|conduits?|buis|buizen|r[öo]r|tubos?|conductos?|canal[ei]|tubi|tubo|condott[aeoi])$`)

const degreeSigns = `(?:[°º˚]|degrees?|degr[ée]s?|deg\.?|grad(?:en|ers?|i|os)?|gr\.?)`

var angled = regexp.MustCompile(`(?i)^(?:(\d{1,3}(?:[.,]\d+)?)[\s-]*` + degreeSigns + `[\s-]*(.+)|(.+?)(?:[\s,]+(?:à|a|de|di|of|von|van))?[\s,]*?(\d{1,3}(?:[.,]\d+)?)\s*` + degreeSigns + `)$`)

// turned is a bend, a tee or a cross beside a usual angle that has no sign, or stands in brackets.
var turned = regexp.MustCompile(`(?i)^(?:\(?(15|22\.5|30|45|60|75|90)\s*[°º˚]?\)?[\s-]+(\D+)|(\D+?)[\s-]*\(?(15|22\.5|30|45|60|75|90)\s*(?:[°º˚]|deg\.?)?\)?)$`)
