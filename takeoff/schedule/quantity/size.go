package quantity

import (
	"math"
	"regexp"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// Size is a cross-section that stands in one cell, in m: a width and a height,
// or a diameter.
type Size struct {
	Shape                   fittings.Shape // NoShape where width and height may be those of an oval
	Width, Height, Diameter float64
	WidthText, HeightText   string // the parts as typed
	DiameterText            string
}

// ovalWords are words for a flat oval, in seven languages (from memory, unverified).
const ovalWords = `(?:flat|plat|flach|piatt[oa]|plan[oa])?[\s-]*(?:ovale?s?|ovaal|ovalt|ovala|ovaal|ovalad[oa]s?|ovali|oblong(?:ue|o|a)?s?|oblung[oa])`

var (
	diameterBefore = regexp.MustCompile(`(?i)^(?:[ø⌀∅Φφ]|(?:diam|dia|diameter|durchmesser|durchm|diamètre|diamètro|diámetro|diám|diametro|dn|nw|nennweite|round|rund|rond|circular|redondo|tondo)\.?|d(?:\s*[=.]\s*)?)\s*(\d.*)$`)
	diameterAfter  = regexp.MustCompile(`(?i)^(\d.*?)\s*(?:[ø⌀∅Φφ]|\b(?:diameter|diam|dia|durchm)\.?|\b(?:rnd|round|rund|rond|redondo|tondo))$`)
	oval           = regexp.MustCompile(`(?i)^(.*?)\s*\b(?:` + ovalWords + `|f/?o)$`)
	ovalBefore     = regexp.MustCompile(`(?i)^(?:` + ovalWords + `|f/?o)[\s:.]*([ø⌀∅\d].*)$`)
	across         = regexp.MustCompile(`(?i)^(.*?\S)\s*(?:[x×*✕хХ]|\bby\b)\s*(.*)$`)
	between        = regexp.MustCompile(`\s*(?:->|→|\bto\b|\bauf\b|\sà\s|\bnaar\b|\btill\b|\s-\s|\s–\s|/)\s*`)
)

// joined is two sizes with a stroke between them and no spaces.
var joined = regexp.MustCompile(`^(\d+\s*[xX×*]\s*\d+)[-–](\d+\s*[xX×*]\s*\d+)$`)

// CutDiameter takes off the sign or word for a diameter: "Ø315", "dia 315",
// "315 dia". It reports whether there was one.
func CutDiameter(t string) (string, bool) {
	if m := diameterBefore.FindStringSubmatch(t); m != nil {
		return m[1], true
	}
	if m := diameterAfter.FindStringSubmatch(t); m != nil {
		return strings.TrimSpace(m[1]), true
	}
	return t, false
}

// Combined reports a cell that holds a whole cross-section, or tries to, where
// a single number is expected.
func Combined(text string) bool {
	if len(text) > mostTyped {
		return false
	}
	t := cellCleaner.Replace(text)
	if !digitIn(t) || len(t) > 60 { // most words end here
		return false
	}
	if _, ok := CutDiameter(t); ok || square.MatchString(t) || oval.MatchString(t) || ovalBefore.MatchString(t) {
		return true
	}
	if t[0] == '0' && len(t) > 2 && t[1]|0x20 == 'x' { // 0x258
		return false
	}
	m := across.FindStringSubmatch(t)
	return m != nil && digitIn(m[1]) && digitIn(m[2])
}

func digitIn(s string) bool { return strings.ContainsAny(s, "0123456789") }

const sizeForm = "write it as 600x400 or Ø315, with mm or in after it where the heading doesn't say"

// Sizes reads a cell that holds one cross-section ("600x400", `24" x 16"`,
// "Ø315", "525x150 oval") or, parted by / or -, those of both ends of a piece.
// s says the unit where the cell doesn't. trouble is what is wrong and what to
// do.
func (s *Column) Sizes(text string) (found []Size, trouble string) {
	if len(text) > mostTyped {
		return nil, "is too long for a size; " + sizeForm
	}
	if trouble = Above(text, s.Measure); trouble != "" {
		return nil, trouble
	}
	t := strings.TrimSpace(cellCleaner.Replace(text))
	if one, trouble := s.oneSize(t); trouble == "" {
		return []Size{one}, ""
	}
	if trouble = beside(t); trouble != "" {
		return nil, trouble
	}
	parts := between.Split(t, -1)
	if m := joined.FindStringSubmatch(t); m != nil { // 400x300-300x200
		parts = m[1:]
	}
	if len(parts) != 2 || parts[0] == "" || parts[1] == "" {
		_, trouble = s.oneSize(t)
		return nil, strange(t, trouble)
	}
	if s.Diameter && plainNumber(parts[0]) && plainNumber(parts[1]) {
		return nil, "holds two diameters; write each in a column of its own: diameter_mm, and diameter2_mm (of the other end) or branch_diameter_mm"
	}
	if plainNumber(parts[0]) && plainNumber(parts[1]) {
		return nil, "could be " + parts[0] + " wide and " + parts[1] + " high, or two diameters; write " +
			parts[0] + "x" + parts[1] + ", or Ø" + parts[0] + "/Ø" + parts[1]
	}
	if ovalBefore.MatchString(parts[0]) && !ovalBefore.MatchString(parts[1]) {
		return nil, "says oval of one size only; write it behind each"
	}
	tail := s.tailUnit(parts[1])
	for _, part := range parts {
		if s.tailUnit(part) == "" {
			part += tail
		}
		one, trouble := s.oneSize(part)
		if trouble != "" {
			return nil, trouble
		}
		found = append(found, one)
	}
	return found, ""
}

func plainNumber(s string) bool { return strings.Trim(s, "0123456789.,") == "" }

// oneSize reads one cross-section.
func (s *Column) oneSize(t string) (z Size, trouble string) {
	t, z.Shape = cutOval(t)
	one := *s
	one.Diameter = false
	if d, ok := CutDiameter(t); ok {
		if z.Shape == fittings.FlatOval || Combined(d) {
			return Size{}, "isn't one cross-section; " + sizeForm
		}
		z.Shape = fittings.Circular
		z.Diameter, trouble = one.Number(d)
		z.DiameterText = d
		return z, trouble
	}
	a, b, swapped, trouble := one.pair(t, z.Shape)
	if trouble != "" {
		return Size{}, trouble
	}
	if one.tailUnit(a) == "" { // 600 x 400 mm: the unit is that of both
		a += one.tailUnit(b)
	}
	if z.Width, trouble = one.Number(a); trouble != "" {
		return Size{}, trouble
	}
	if one.tailUnit(a) != "" && one.tailUnit(b) == "" {
		if u, _ := UnitOf(one.tailUnit(a)); u != s.Unit {
			return Size{}, "gives the first figure a unit and the second none; write the unit behind both"
		}
	}
	if z.Height, trouble = one.Number(b); trouble != "" {
		return Size{}, trouble
	}
	z.WidthText, z.HeightText = a, b
	if swapped {
		z.Width, z.Height, z.WidthText, z.HeightText = z.Height, z.Width, b, a
	}
	return z, ""
}

// cutOval takes off the word for a flat oval, before or behind the figures.
func cutOval(t string) (string, fittings.Shape) {
	if !strings.ContainsAny(t, "oO") { // most sizes
		return t, fittings.NoShape
	}
	for _, form := range [...]*regexp.Regexp{oval, ovalBefore} {
		if m := form.FindStringSubmatch(t); m != nil {
			return m[1], fittings.FlatOval
		}
	}
	return t, fittings.NoShape
}

// pair parts a size into its two figures, as typed. swapped says that the height
// comes first. An oval's may be parted by / too, as it can't be two diameters.
func (s *Column) pair(t string, shape fittings.Shape) (a, b string, swapped bool, trouble string) {
	if strings.ContainsAny(t, "qQ") && shape != fittings.FlatOval && !across.MatchString(t) {
		if m := square.FindStringSubmatch(t); m != nil {
			return m[1], m[1], false, ""
		}
	}
	if parts := strings.Split(t, "/"); shape == fittings.FlatOval && len(parts) == 2 && plainNumber(strings.TrimSpace(parts[0])) {
		return strings.TrimSpace(parts[0]), strings.TrimSpace(parts[1]), false, ""
	}
	m := across.FindStringSubmatch(t)
	if m == nil {
		if _, bad := s.Number(t); bad == "" {
			return "", "", false, "could be a diameter or the side of a square; write Ø" + t + " or " + t + "x" + t
		}
		return "", "", false, "isn't a size; " + sizeForm
	}
	a, b = strings.TrimSpace(m[1]), strings.TrimSpace(m[2])
	if across.MatchString(b) && digitIn(across.FindStringSubmatch(b)[2]) {
		if last := across.FindStringSubmatch(b)[2]; len(last) < 4 && strings.ContainsAny(last[:1], "012") && strings.ContainsAny(last, ".,") {
			return "", "", false, "holds a third figure, perhaps the thickness of the sheet; write that in a column of its own"
		}
		return "", "", false, "holds three figures; write the length in a column of its own"
	}
	return sides(a, b)
}

var tail = regexp.MustCompile(`[^\d\s.,/][^\d]*$`)

// tailUnit is the unit of length at the end of t, with a space before it, or "".
func (s *Column) tailUnit(t string) string {
	w := strings.TrimSpace(tail.FindString(t))
	if u, ok := UnitOf(w); ok && u.Measure == takeoff.Lengths {
		return " " + w
	}
	return ""
}

// Same reports whether two lengths, m, are the same but for rounding in the
// last place: an inch size beside its millimetres may be a tenth of one off.
func Same(a, b float64) bool { return math.Abs(a-b) <= 1e-4 }

// SaysUnit reports a cell that ends in a unit of length: 600 mm, 24" x 16", 16" dia.
func SaysUnit(cell string) bool {
	if cell == "" || len(cell) > mostTyped || digitAt(cell, len(cell)-1) {
		return false
	}
	t, _ := CutDiameter(strings.TrimSpace(cellCleaner.Replace(cell)))
	n := len(t)
	for n > 0 && !digitAt(t, n-1) {
		n--
	}
	word, _, _ := strings.Cut(strings.TrimSpace(t[n:]), " ")
	u, ok := UnitOf(word)
	return ok && u.Measure == takeoff.Lengths
}

func digitAt(s string, i int) bool { return s[i] >= '0' && s[i] <= '9' }
