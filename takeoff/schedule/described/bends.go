package described

import "regexp"

// What is said of bends, in seven languages (from memory, unverified): the plane in which they
// turn, the hand, which bears on no area, and vanes, which don't either.
var (
	upright = regexp.MustCompile(`(?i)\b(?:vertical(?:e|ly)?|vert\b\.?|verticaal|vertikal(?:er|t)?|senkrecht(?:er)?)(?:\W|$)`)
	level   = regexp.MustCompile(`(?i)\b(?:hori[sz]ontal(?:e|er|ly)?|horiz\b\.?|horizontaal|horisontell?|waage?recht(?:er)?|orizzontale)(?:\W|$)`)
	handed  = regexp.MustCompile(`(?i)\b(?:lh|rh|left|right)(?:[\s-]*hand(?:ed)?)?\b`)
	vanes   = regexp.MustCompile(`(?i)\b(?:with|c/w|incl(?:uding|\.)?|mit|avec|met|med|con)\s+(?:turning\s+|guide\s+|air\s+)?(?:vanes?|leitbleche?n?|aubes?(?:\s+directrices)?|geleideschoepen|ledskenor|deflettori|[aá]labes)(?:\W|$)`)
)

// ofBends takes off a cell what is said of bends only. A cell of both planes or both hands
// keeps one of them, so that it isn't known.
func ofBends(cell, said string) (string, string) {
	if at := upright.FindStringIndex(cell); at != nil {
		cell, said = without(cell, at), said+BesideMark+string(Upright)
	} else if at := level.FindStringIndex(cell); at != nil {
		cell, said = without(cell, at), said+BesideMark+string(Level)
	}
	if at := vanes.FindStringIndex(cell); at != nil {
		cell, said = without(cell, at), said+BesideMark+string(Level)
	}
	if at := handed.FindStringIndex(cell); at != nil {
		cell, said = without(cell, at), said+BesideMark+string(Level)
	}
	return cell, said
}
