package described

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/quantity"
)

// BesideMark stands before each thing that a cell says of a piece beside its kind. The
// letter behind it says what it is.
const BesideMark = "\x1f"

// What a cell of a kind says besides.
const (
	OfSize    = 's' // a whole cross-section
	OfWhole   = 'w' // one with the length behind it
	OfLength  = 'l' // a length alone
	OfRadius  = 'r' // a radius, of which line isn't said
	Eccentric = 'e' // that it is eccentric
	Lined     = 'i' // that it is lined inside
	Upright   = 'v' // that a bend is vertical
	Level     = 'h' // or horizontal, as one is of which nothing is said
)

// kindOf is the kind of what Translate gives.
func kindOf(w string) fittings.Kind {
	w, _, _ = strings.Cut(w, BesideMark)
	kind, _, _, _ := fittings.ParseDescription(w[strings.LastIndexByte(w, '|')+1:])
	return kind
}

// described reads a kind with what else its cell says of the piece. The gauge, the thickness
// and the class of its sheet bear on no area and are passed over.
func (k Kinds) described(cell string) string {
	rest, said := stripped(cell)
	w := ""
	if rest != cell {
		w = k.turnedKind(rest)
	}
	if w == "" && celltext.HasDigit(rest) {
		w = k.withFigures(rest)
	}
	if w == "" {
		return ""
	}
	switch kind := kindOf(w); {
	case strings.IndexByte(said, Eccentric) >= 0 && kind != fittings.Reducer && kind != fittings.Transition:
		return ""
	case (strings.IndexByte(said, Upright) >= 0 || strings.IndexByte(said, Level) >= 0) && kind != fittings.Bend:
		return ""
	}
	return w + said
}

// stripped takes off a cell what is said of the piece beside its kind and its sizes.
func stripped(cell string) (rest, said string) {
	if at := eccentric.FindStringIndex(cell); at != nil {
		cell, said = without(cell, at), BesideMark+string(Eccentric)
	}
	if at := lined.FindStringIndex(cell); at != nil {
		cell, said = without(cell, at), said+BesideMark+string(Lined)
	}
	cell, said = ofBends(cell, said)
	if len(cell) > 14 && strings.Contains(cell, " ") {
		if at := supplied.FindStringIndex(cell); at != nil {
			cell = without(cell, at)
		}
	}
	if celltext.HasDigit(cell) {
		if at := zinced.FindStringIndex(cell); at != nil && celltext.HasDigit(cell[:at[0]]) {
			cell = without(cell, at)
		}
	}
	for range 3 {
		at := sheet.FindStringIndex(cell)
		if at == nil {
			break
		}
		cell = without(cell, at)
	}
	return cell, said
}

// withFigures reads a kind with a radius, a length or a size.
func (k Kinds) withFigures(cell string) string {
	if m := radius.FindStringSubmatch(cell); m != nil {
		w := k.turnedKind(celltext.Trim(m[1]))
		if w == "" {
			w = k.kindAndSize(m[1])
		}
		if kindOf(w) == fittings.Bend {
			return w + BesideMark + string(OfRadius) + m[2]
		}
	}
	if w := k.withLength(cell); w != "" {
		return w
	}
	return k.kindAndSize(cell)
}

// without is a cell without what stands at a place, and the strokes around it.
func without(cell string, at []int) string {
	before, after := strings.TrimRight(cell[:at[0]], " ,;-–("), strings.TrimLeft(cell[at[1]:], " ,;-–)")
	return celltext.Trim(before + " " + after)
}

// Words and figures beside kinds, in seven languages (from memory, unverified). Gauges and
// thicknesses are those of the sheet of ducts: 18 to 26, 0.5 to 1.5 mm; common practice, no
// source.
var (
	eccentric = regexp.MustCompile(`(?i)\b(?:ecc\b\.?|eccentric\w*|e[xk]zentri\w*|excentri\w*|exc[eé]ntric\w*|excentr(?:é|ée)(?:\W|$)|eccentric[oa])`)
	lined     = regexp.MustCompile(`(?i)\b(?:(?:internally|acoustic(?:ally)?|inside)\s+)?lined(?:\s+(?:internally|inside))?\b|\b(?:innen\s+|innenseitig\s+)?ausgekleidet\w*|\bdoublée?\s+(?:intérieurement|à l'intérieur)`)
	sheet     = regexp.MustCompile(`(?i)\b(?:1[89]|2[0-6])\s*(?:g|ga|gge|gauge|swg|sg)\b\.?|[\s,;(-](?:(?:ép|ep|épaisseur|épais|tôle|lamiera|sp|spessore)\.?\s*)+(?:[5-9]|1[0-5])/10(?:e|ème|èmes)?(?:\s*mm)?(?:$|[\s,;)])|(?:^|[\s,;(-])(?:[5-9]|1[0-5])/10(?:e|ème|èmes|\s*mm)(?:$|[\s,;)])|(?:^|[\s,;(-])(?:ép|épaisseur)\b\.?\s*[=:]?\s*(?:0?[.,][5-9]\d?|1[.,][0-5]\d?)(?:\s*mm\b)?|\b(?:de\s+|in\s+|di\s+|van\s+|av\s+|aus\s+|en\s+)?(?:chapa|tôle|tole|blech|stahlblech|plåt|plaat|lamiera|sheet|galv\w*|verzinkt\w*|verzinkt|zincat[ao]|inox|espesor|esp|épaisseur|ép|ep|spessore|sp|dikte|dicke|tjocklek|thickness|thk)\b\.?(?:\s+de)?\s*[=:]?\s*(?:0?[.,][5-9]\d?|1[.,][0-5]\d?)(?:\s*mm\b)?(?:$|[\s,;)])|\b(?:aisi|stainless|inox|edelstahl|rvs|rostfri\w*|inoxidable|ss)(?:\s+steel)?\s*(?:304|316)L?\b|\bZ(?:100|140|180|200|225|275|350)\b|\bDX51D?\b|(?:^|[\s,;(-])(?:(?:t|s|e|th|thk)\s*=\s*)?(?:0?[.,][5-9]\d?|1(?:[.,][0-5]\d?)?)\s*mm\b(?:\s*(?:thk|thick|stark|dick)\b\.?)?|\b(?:(?:tightness|dichtheits|luftdichtheits)?\s*(?:class|klasse|classe|klass|clase))\s*(?:ATC\s*)?[A-D]\b`)
	supplied  = regexp.MustCompile(`(?i)^(?:supply(?:ing)?\s*(?:and|&)\s*(?:install(?:ing|ation)?|fix(?:ing)?|erect(?:ing)?|fit(?:ting)?)(?:\s+of)?|liefer(?:n|ung)\s+und\s+mont(?:ieren|age)(?:\s+von)?|fourniture\s+et\s+pose(?:\s+de)?|leveren\s+en\s+(?:monteren|aanbrengen)(?:\s+van)?|leverans\s+och\s+montage(?:\s+av)?|suministro\s+y\s+(?:montaje|colocación|instalación)(?:\s+de)?|fornitura\s+e\s+(?:posa(?:\s+in\s+opera)?|montaggio)(?:\s+di)?)\s+|[\s,]+(?:liefern und montieren|supplied and (?:fixed|installed)|fourni[e]?s? et posé[e]?s?|leveren en monteren)$`)
	zinced    = regexp.MustCompile(`(?i)[\s,]+(?:galv(?:ani[sz]ed)?|verz(?:inkt)?|galvanis[ée]e?|galva|gegalvaniseerd|förzinkad|galvanizad[oa]|zincat[oa])(?:\s+steel)?\.?(?:\s+Z\d{2,3})?$`)
	radius    = regexp.MustCompile(`(?i)^(.+?)[\s,;(]+R(?:ad(?:ius)?)?\s*[=:.]?\s*(\d{2,4})\s*(?:mm)?\)?$`)
)

// withLength reads a straight with its length, and with or without its cross-section: the
// other kinds have figures that may be something else.
func (k Kinds) withLength(cell string) string {
	before, length := k.cutLength(cell)
	if length == "" || !quantity.SaysUnit(length) && !k.Millimetres() {
		return ""
	}
	w := k.turnedKind(before)
	if w == "" {
		w = k.kindAndSize(before)
	}
	kind, size, sized := strings.Cut(w, BesideMark)
	if kindOf(kind) != fittings.Straight || strings.Contains(kind, "|") {
		return ""
	}
	switch {
	case !sized:
		return kind + BesideMark + string(OfLength) + length
	case size[0] == OfSize && !strings.Contains(size, BesideMark):
		size = size[1:]
		if strings.HasSuffix(length, "m") && !strings.HasSuffix(length, "mm") && !quantity.SaysUnit(size) { // of the length only
			size += " mm"
		}
		return kind + BesideMark + string(OfWhole) + size + "x" + length
	}
	return ""
}

// The forms of a length beside a kind, in seven languages (from memory, unverified).
var (
	threeSizes  = regexp.MustCompile(`(?i)(\d+)\s*[x×*]\s*(\d+)\s*[x×*]\s*(\d+(?:[.,]\d+)?\s*m\b|\d+(?:\s*mm)?)(?:\s*(?:long|lg|lang|l)\b\.?)?`)
	roundLong   = regexp.MustCompile(`(?i)((?:[øØ⌀]|\b(?:dn|dia\.?)) ?\d+(?: ?mm)?)\s*[x×*]\s*(\d{3,5}(?:\s*mm)?)\b(?:\s*(?:long|lg|lang)\b\.?)?`)
	lengthNamed = regexp.MustCompile(`(?i)^(.+?)[\s,;(]+(?:l|lg|length|länge|laenge|longueur|lengte|längd|longitud|lunghezza)\s*[=:.]?\s*(\d[\d.,]*\s*(?:mm|cm|m)?)\)?$`)
	lengthLong  = regexp.MustCompile(`(?i)^(.+?)[\s,;(x×]+(\d[\d.,]*\s*(?:mm|cm|m)?)\s*(?:long|lg|lang|de long)\.?\)?$`)
	lengthLast  = regexp.MustCompile(`(?i)^(.+?)\s*[,;]\s*(\d[\d.,]*\s*(?:mm|m))$`)
)

// leastLength is the least third figure that is taken for a length, mm: a smaller one may
// be a thickness, or how many. Common practice, no source.
const leastLength = 200

// threeFigures are the three figures of a cell, mm, and where they stand; nil for no such cell.
func threeFigures(cell string) (v [3]float64, m []int) {
	if m = threeSizes.FindStringSubmatchIndex(cell); m == nil {
		return v, nil
	}
	for i := range v {
		text, _, _ := strings.Cut(strings.ToLower(cell[m[2*i+2]:m[2*i+3]]), "mm")
		figures := strings.TrimRight(text, " m")
		v[i], _ = strconv.ParseFloat(strings.Replace(celltext.Trim(figures), ",", ".", 1), 64)
		if strings.HasSuffix(text, "m") {
			v[i] *= 1000
		}
	}
	return v, m
}

// LengthLast reports a cell of three figures, and that the third of them is its length, being
// the largest.
func LengthLast(cell string) (last, three bool) {
	if !celltext.HasDigit(cell) {
		return false, false
	}
	v, m := threeFigures(cell)
	return v[2] >= leastLength && v[2] >= v[0] && v[2] >= v[1], m != nil
}

// cutLength parts a length from a cell. The third of three figures is one only if it is the
// largest, or is it in most cells: else the length may stand before the cross-section.
func (k Kinds) cutLength(cell string) (before, length string) {
	if v, m := threeFigures(cell); m != nil {
		if v[2] < leastLength || !k.LengthLast && (v[2] < v[0] || v[2] < v[1]) {
			return "", ""
		}
		return cell[:m[5]] + cell[m[1]:], cell[m[6]:m[7]]
	}
	if m := roundLong.FindStringSubmatchIndex(cell); m != nil {
		return cell[:m[3]] + cell[m[1]:], cell[m[4]:m[5]]
	}
	for _, form := range [...]*regexp.Regexp{lengthNamed, lengthLong, lengthLast} {
		m := form.FindStringSubmatch(cell)
		if m == nil {
			continue
		}
		if figures, mm := strings.CutSuffix(strings.ToLower(m[2]), "mm"); mm && form == lengthLast && len(strings.TrimSpace(figures)) < 3 { // a thickness
			continue
		}
		return m[1], m[2]
	}
	return "", ""
}

// kindAndSize parts a cell as "Straight duct 600x400" or "Ø315 spiral duct" into the
// kind and, behind a mark, the size. It is "" where it isn't one. Two sizes are those of
// both ends, so the piece has to have two. A figure that stands by itself before the size
// may be a number of the piece, how many there are or thousands: such a cell isn't parted.
func (k Kinds) kindAndSize(cell string) string {
	words := strings.Fields(strings.Trim(cell, " .;"))
	if len(words) < 2 || len(words) > 9 || len(cell) > 100 || !strings.ContainsFunc(words[0], unicode.IsLetter) && !strings.ContainsFunc(words[len(words)-1], unicode.IsLetter) {
		return ""
	}
	for i := 1; i < len(words); i++ {
		for _, parts := range [...][2][]string{{words[:i], words[i:]}, {words[i:], words[:i]}} {
			kind := strings.Trim(strings.Join(parts[0], " "), " ,;:-–()[]")
			size := strings.Trim(strings.Join(parts[1], " "), " ,;:-–()[]")
			if !celltext.HasDigit(size) || strings.TrimLeft(kind, "0123456789.,") == "" || celltext.LoneFigures(parts[1]) || !k.kindWord(parts[0]) {
				continue
			}
			w := k.turnedKind(kind)
			if w == "" {
				continue
			}
			if size, ok := k.sizeOfKind(w, kind, size); ok {
				return w + BesideMark + string(OfSize) + size
			}
		}
	}
	return ""
}

// kindWord reports words of which one may be of a kind: most cells that aren't parted end
// here, before anything is tried.
func (k Kinds) kindWord(words []string) bool {
	for _, w := range words {
		if _, known := k.Lex.Word(takeoff.Kind, w); known {
			return true
		}
	}
	return false
}

// sizeOfKind reads what stands beside a kind as its size: a circular one may be a figure
// alone.
func (k Kinds) sizeOfKind(w, word, size string) (string, bool) {
	kind, _, shape, ok := fittings.ParseDescription(w[strings.LastIndexByte(w, '|')+1:])
	if !ok || !quantity.SaysUnit(size) && !k.Millimetres() {
		return "", false
	}
	c := quantity.Column{Unit: quantity.Millimetre, Measure: takeoff.Lengths, Max: quantity.Largest(takeoff.Lengths)}
	if v, trouble := c.Number(size); trouble == "" && shape == fittings.Circular && v >= 0.06 {
		size = "Ø" + size
	}
	switch {
	case kind == fittings.Straight:
		size = k.Sides(word, shape, size)
	case kind == fittings.Reducer && Slashed(size): // settled by its row
		return size, true
	}
	found, trouble := c.Sizes(size)
	return size, trouble == "" && (len(found) == 1 || kind == fittings.Reducer || kind == fittings.Transition)
}
