package answered

import (
	"slices"
	"strings"

	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// signs mark rows of which a line says something.
var signs = [...]string{"*", "†", "‡"}

// Legend is the sign of which a line says something that may bear on whether rows count: *
// are somebody else's. "" where it says of none, or only what pieces are like or where to look.
func Legend(line string) string {
	if len(line) > 3*wording.MaxTitle {
		return ""
	}
	for _, sign := range signs {
		at := strings.Index(line, sign)
		if at < 0 {
			continue
		}
		before, after := strings.TrimSpace(line[:at]), strings.TrimSpace(line[at+len(sign):])
		if rest := strings.TrimLeft(after, sign); rest == "" || strings.HasSuffix(line, sign) && at == 0 || endsFigure(before) && rest[0] >= '0' && rest[0] <= '9' { // ***, *bold*, 600*400
			return ""
		}
		if slices.ContainsFunc(headings.Tokens(line), func(w string) bool { return lookWords[w] || hasQualityStem(w) }) {
			return ""
		}
		return sign
	}
	return ""
}

func endsFigure(text string) bool {
	return text != "" && text[len(text)-1] >= '0' && text[len(text)-1] <= '9'
}

// lookWords are words of lines that say where to look, what is filled in, or what a piece is
// like, in seven languages (from memory, unverified).
var lookWords = wording.SetOf("lined lining fire rated access vane vanes painted coated weatherproof measured brandschutz feuer lackiert gemessen feu peint brandwerend geverfd gemeten brand malad matt fuego pintado medido fuoco verniciato misurato see drawing drawings dwg detail details note notes required mandatory siehe zeichnung plan pflichtfeld voir dessin obligatoire zie tekening verplicht ritning obligatorisk ver dibujo obligatorio vedi disegno obbligatorio")

// HasSign reports a cell with a sign at its beginning or end.
func HasSign(cell, sign string) bool {
	return cell != "" && (strings.HasSuffix(cell, sign) || strings.HasPrefix(cell, sign))
}

// Signed reports a tag with one of the signs of lines.
func Signed(tag string) bool {
	return slices.ContainsFunc(signs[:], func(sign string) bool { return HasSign(tag, sign) })
}
