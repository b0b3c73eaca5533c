package wording

import (
	"regexp"
	"slices"
	"strings"

	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
)

// colourWords are words for colours in seven languages, without accents (from memory,
// unverified).
var colourWords = func() map[string]string {
	all := map[string]string{}
	for colour, words := range map[string]string{
		"grey":   "grey gray greyed grayed grau graue grauer graues grauem gris grise grises grisee grisees grises grijs grijze gra gratt graa grigio grigia grigi grigie",
		"red":    "red rot rote roter rotes roten rouge rouges rood rode rod rott roda rojo roja rojos rojas rosso rossa rossi rosse",
		"orange": "orange oranges oranje naranja naranjas arancio arancione arancioni",
		"yellow": "yellow gelb gelbe gelber gelbes gelben jaune jaunes geel gele gul gult gula amarillo amarilla amarillos amarillas giallo gialla gialli gialle",
		"green":  "green grun grune gruner grunes grunen vert verte verts vertes groen groene gron gront grona verde verdes verdi",
		"blue":   "blue blau blaue blauer blaues blauen bleu bleue bleus bleues blauw blauwe bla blatt azul azules blu azzurro",
		"purple": "purple violet violett lila magenta violette paars paarse morado morada viola",
		"pink":   "pink rosa rose roze",
		shaded: "shaded highlighted hatched coloured colored tinted schattiert schattierte schraffiert schraffierte hinterlegt hinterlegte markiert markierte farbig farbige ombre ombres ombree ombrees hachure hachures hachuree hachurees surligne surlignes surlignee surlignees colore colores coloree colorees " +
			"gearceerd gearceerde gemarkeerd gemarkeerde gekleurd gekleurde skuggad skuggade markerad markerade fargad fargade sombreado sombreada sombreados sombreadas resaltado resaltada resaltados resaltadas coloreado coloreadas ombreggiato ombreggiata ombreggiati ombreggiate evidenziato evidenziata evidenziati evidenziate colorato colorati colorate",
	} {
		for w := range strings.FieldsSeq(words) {
			all[w] = colour
		}
	}
	return all
}()

// shaded is any colour of a background, where a line names none.
const shaded = "shaded"

// Colours are the colours that a line names, or that it is of any.
func Colours(line string) (found []string) {
	for _, w := range headings.Tokens(line) {
		if c := colourWords[w]; c != "" && !slices.Contains(found, c) {
			found = append(found, c)
		}
	}
	if len(found) > 1 {
		found = slices.DeleteFunc(found, func(c string) bool { return c == shaded })
	}
	return found
}

// Named reports a colour of a background or a font that a line names.
func Named(names []string, r, g, b int, ground bool) bool {
	pale := max(r, g, b)-min(r, g, b) < 24 // grey, if a line says so of backgrounds
	if ground && min(r, g, b) < 0xfa && (slices.Contains(names, shaded) || pale && slices.Contains(names, "grey")) {
		return true
	}
	return slices.ContainsFunc(ColourNames(r, g, b), func(name string) bool { return slices.Contains(names, name) })
}

// ExplainsColour reports a line of a legend: Yellow = delivered.
func ExplainsColour(line string) bool {
	colour, behind, found := strings.Cut(line, "=")
	if !found {
		colour, behind, found = strings.Cut(strings.Replace(line, " – ", " - ", 1), " - ")
	}
	words := headings.Tokens(colour)
	return found && len(line) <= longestLegend && behind != "" && len(words) > 0 && len(words) < 4 && len(Colours(colour)) > 0
}

// Legends are the parts of a line of which each names a colour, or the line.
func Legends(line string) []string {
	parts := strings.FieldsFunc(line, func(r rune) bool { return r == ',' || r == ';' || r == '|' })
	if len(parts) < 2 || slices.ContainsFunc(parts, func(part string) bool { return len(Colours(part)) == 0 }) {
		return []string{line}
	}
	return parts
}

// ColourNames are what people may call a colour of red, green and blue of 0 to 255; none for
// black and white, which say nothing.
func ColourNames(r, g, b int) []string {
	most, least := max(r, g, b), min(r, g, b)
	if most-least < 24 {
		if most >= 0x40 && most <= 0xea {
			return []string{"grey"}
		}
		return nil
	}
	span, hue := float64(most-least), 0.0
	switch most {
	case r:
		hue = 60 * float64(g-b) / span
	case g:
		hue = 120 + 60*float64(b-r)/span
	default:
		hue = 240 + 60*float64(r-g)/span
	}
	if hue < 0 {
		hue += 360
	}
	var names []string
	for _, x := range hues {
		if hue >= x.from && hue <= x.to {
			names = append(names, x.name)
		}
	}
	return names
}

// hues are the names of colours by their hue, in degrees, which overlap. Common practice, no
// source.
var hues = []struct {
	name     string
	from, to float64
}{{"red", 0, 18}, {"orange", 10, 48}, {"yellow", 40, 70}, {"green", 65, 175}, {"blue", 160, 260}, {"purple", 250, 330}, {"pink", 0, 12}, {"pink", 300, 360}, {"red", 335, 360}}

// longestLegend is how long a line is that explains a colour, bytes.
const longestLegend = 120

// ColourLegend reports a line of a legend that says of what it explains that it doesn't count, as
// Grey: existing. A line that names no colour has to be short: it may be in the colour itself.
// swatch: it stands beside a cell of a colour, and so is of that.
func ColourLegend(lex *headings.Lexicon, line string, swatch bool) bool {
	if len(line) > longestLegend || line == "" {
		return false
	}
	if swatch && Remark(lex, line).Of&ofLegend != 0 {
		return true
	}
	if len(Colours(line)) == 0 && len(headings.Tokens(line)) > 4 && !swatch {
		return false
	}
	if lex.StruckAnywhere(line) || lex.Struck(line) || Outside.MatchString(line) {
		return true
	}
	for _, sign := range [...]string{"=", ":", " - ", " – "} {
		if _, behind, found := strings.Cut(line, sign); found {
			behind = celltext.Trim(behind)
			return lex.Struck(behind) || len(Colours(line)) > 0 && Remark(lex, behind).Of&ofLegend != 0
		}
	}
	return len(Colours(line)) > 0 && namesRows.MatchString(line) && Remark(lex, line).Of&ofLegend != 0
}

// ofLegend is what a legend may say that bears on the rows that it is of.
const ofLegend = OfCounts | OfMany | OfOut | OfSum | OfPart | OfUnsized | OfDoubt

// namesRows names rows, in seven languages (from memory, unverified).
var namesRows = regexp.MustCompile(`(?i)\b(?:rows?|lines?|items?|cells?|entries|text|zeilen?|positionen|felder|zellen|einträge|lignes?|cellules?|postes|regels?|rijen|cellen|posten|rader|rad|celler|filas?|líneas?|lineas?|celdas?|righe|riga|celle|voci)\b`)
