package headings

import (
	"slices"
	"strings"
	"unicode"

	"blankoff/takeoff"
)

// Part reports a line that names a place or a part of the ductwork and says nothing else:
// Plant room, Riser 1, Main run. Each of its words has to be known, and a label stands
// behind the word that it is of.
func (l *Lexicon) Part(line string) bool {
	if len(line) > longestName {
		return false
	}
	words, named, last := Tokens(line), false, false
	for i := 0; i < len(words); {
		n := 0
		for k := min(3, len(words)-i); k > 0 && n == 0; k-- {
			key := strings.Join(words[i:i+k], "")
			if _, known := l.parts[key]; known || l.places[key] == "either" {
				n = k
			}
		}
		switch {
		case n > 0:
			named, last, i = true, true, i+n
		case last && label(words[i]):
			last, i = false, i+1
		case slices.Contains(articles, words[i]):
			last, i = false, i+1
		default:
			return false
		}
	}
	return named
}

// articles are small words in names of places, in seven languages (from memory,
// unverified).
var articles = []string{"the", "of", "in", "at", "der", "des", "im", "le", "la", "les", "du", "de", "het", "van", "el", "del", "il", "della"}

// label reports a number, a letter or both: 3, A, 2b, IV.
func label(word string) bool {
	letters := strings.Trim(word, "0123456789")
	return len(word) <= 4 && (len(letters) <= 1 && letters != "x" || len(letters) == len(word) && strings.Trim(word, "ivx") == "")
}

// SystemLevel parts a line of a system and a level with nothing between them: Zuluft EG,
// Supply air level 2, 2nd floor extract. A plain number between them may be of either: ok is
// false then.
func (l *Lexicon) SystemLevel(line string) (system, level string, ok bool) {
	fields := strings.Fields(line)
	if len(line) > longestName || len(fields) < 2 || len(fields) > 5 || strings.ContainsAny(line, ":,;/()") {
		return "", "", false
	}
	var is [5]string
	first, second := -1, -1
	for i, f := range fields {
		words := Tokens(f)
		if len(words) != 1 {
			return "", "", false
		}
		is[i] = l.places[words[0]]
		if is[i] == "" && strings.HasSuffix(words[0], "geschoss") {
			is[i] = "level"
		}
		switch {
		case is[i] == "system" || is[i] == "level":
			if first < 0 {
				first = i
			} else if second < 0 && is[i] != is[first] {
				second = i
			} else {
				return "", "", false
			}
		case is[i] != "" || !label(words[0]) && !slices.Contains(airs, words[0]) && !ordinal(f):
			return "", "", false
		}
	}
	if second < 0 {
		return "", "", false
	}
	cut := second
	if second > first+1 {
		switch between := fields[second-1]; {
		case ordinal(between) && is[second] == "level":
			cut--
		case unicode.IsDigit(rune(between[0])) && is[first] == "system": // AHU 2 roof
			return "", "", false
		}
	}
	a, b := strings.Join(fields[:cut], " "), strings.Join(fields[cut:], " ")
	if is[first] == "level" {
		a, b = b, a
	}
	return a, b, a != "" && b != ""
}

// airs are words behind that of a system.
var airs = []string{"air", "luft", "lucht"}

// ordinal reports a number of a storey: 2., 2nd, 1er.
func ordinal(field string) bool {
	rest := strings.TrimLeft(strings.ToLower(field), "0123456789")
	return len(rest) < len(field) && slices.Contains([]string{".", "st", "nd", "rd", "th", "er", "e", "ème", "eme", "º", "°", "ª", "de"}, rest)
}

// Apart reports a kind of thing that is no ductwork, as a grille or a hanger: Linear grille,
// Duct hangers, Painting of ductwork. What names a duct with something isn't, nor what is
// supplied or fitted.
func (l *Lexicon) Apart(cell string) bool {
	if cell == "" || len(cell) > 2*longestName {
		return false
	}
	if l.isApart(Squash(cell)) {
		return true
	}
	if head, rest, parted := strings.Cut(cell, ","); parted && !decimal(head, rest) && (l.isApart(Squash(head)) || l.Apart(head)) { // Grille, egg crate
		return !slices.ContainsFunc(Tokens(rest), func(w string) bool {
			_, piece := l.cells[takeoff.Kind][w]
			return piece || slices.Contains(ducts, w)
		})
	}
	words := unpacked(bareWords(Tokens(cell)))
	if len(words) == 0 || len(words) > 6 || strings.ContainsAny(cell, ";+&/–") || strings.Contains(cell, ",") && strings.Contains(decimals.Replace(cell), ",") || strings.Contains(cell, " - ") {
		return false
	}
	for i := range words { // the longest such name at the end
		if thing := strings.Join(words[i:], ""); l.isApart(thing) {
			return !slices.ContainsFunc(words[:i], func(w string) bool { return !l.mayPrecede(w, thing) })
		}
	}
	for len(words) > 1 && slices.Contains(qualities, words[0]) { // thermal insulation to ducts
		words = words[1:]
	}
	for n := len(words) - 1; n > 0; n-- { // or at the beginning
		if thing := strings.Join(words[:n], ""); l.isApart(thing) {
			return l.ofDucts(thing, words[n:])
		}
	}
	return false
}

// decimal reports a comma between figures: parkers 4,2x13.
func decimal(before, after string) bool {
	return before != "" && after != "" && unicode.IsDigit(rune(before[len(before)-1])) && unicode.IsDigit(rune(after[0]))
}

// decimals takes commas between figures out.
var decimals = strings.NewReplacer(decimalPairs()...)

func decimalPairs() (pairs []string) {
	for a := '0'; a <= '9'; a++ {
		for b := '0'; b <= '9'; b++ {
			pairs = append(pairs, string(a)+","+string(b), string(a)+string(b))
		}
	}
	return pairs
}

func (l *Lexicon) isApart(key string) bool {
	if _, ok := l.apart[key]; ok {
		return true
	}
	_, ok := l.apart[strings.TrimSuffix(key, "s")]
	return ok
}

// mayPrecede reports a word before a thing that is no ductwork: linear grille, supply air
// diffuser, and duct before what ducts have: duct hangers, not duct AHU.
func (l *Lexicon) mayPrecede(word, thing string) bool {
	if slices.Contains(ducts, word) {
		return strings.HasPrefix(word, "duct") && slices.ContainsFunc(oneHas, func(has string) bool { return strings.HasPrefix(thing, has) })
	}
	_, beside := l.beside[word]
	return slices.Contains(qualities, word) || l.places[word] == "system" || beside && len(word) > 2 && !slices.Contains(belonging, word) && word != "section" && word != "piece"
}

// ofDucts reports words behind a thing that is no ductwork that say which it is of: testing
// of ductwork, insulation to duct.
func (l *Lexicon) ofDucts(thing string, words []string) bool {
	of := slices.ContainsFunc(insulation, func(w string) bool { return strings.HasPrefix(thing, w) }) // isolation gaines
	for _, w := range words {
		_, beside := l.beside[w]
		switch {
		case slices.Contains(belonging, w):
			of = true
		case slices.Contains(ducts, w):
			if !of || slices.ContainsFunc(supplies, func(s string) bool { return strings.HasPrefix(thing, s) }) {
				return false
			}
		case !slices.Contains(qualities, w) && !(beside && len(w) > 2):
			return false
		}
	}
	return true
}

// bareWords leaves out figures and units: 25 mm, 600x150, Ø250, 310 ml.
func bareWords(words []string) []string {
	return slices.DeleteFunc(words, func(w string) bool {
		rest := strings.Trim(w, "0123456789x")
		return rest == "" || rest != w && (units[rest] || rest == "m" || rest == "diameter" || rest == "dn") || units[w] && len(w) > 1
	})
}

var units = setOf("mm cm ml l kg g pcs pc stk stuck st stuks uds pz")

// unpacked leaves out what things come in, and how many are in it: box of screws, Rolle Klebeband,
// sealant cartridge.
func unpacked(words []string) []string {
	last := len(words) - 1
	if last > 0 && packs[words[last]] {
		words = words[:last]
	}
	for len(words) > 1 && packs[words[0]] {
		if words = words[1:]; len(words) > 1 && slices.Contains(belonging, words[0]) {
			words = words[1:]
		}
	}
	return words
}

// packs are words for what things come in, in seven languages, without accents (from memory,
// unverified).
var packs = setOf("box boxes pack packs packet bag bags roll rolls reel reels tube tubes cartridge cartridges tin tins can cans bucket bundle carton tub kit set " +
	"karton kartons kiste kisten packung packungen paket pakete beutel rolle rollen kartusche kartuschen eimer dose dosen satz bund gebinde " +
	"boite boites sachet sachets rouleau rouleaux cartouche cartouches seau pot bidon carton cartons paquet paquets lot " +
	"doos dozen pak pakken zak rol rollen koker kokers emmer blik patroon patronen bundel " +
	"lada lador pase pasar rulle rullar patron patroner hink burk forpackning " +
	"caja cajas bolsa bolsas rollo rollos cartucho cartuchos bote botes cubo paquete paquetes juego " +
	"scatola scatole busta buste rotolo rotoli cartuccia cartucce secchio barattolo confezione confezioni pacco")

func setOf(words string) map[string]bool {
	out := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		out[w] = true
	}
	return out
}

// Words beside things that are no ductwork, in seven languages (from memory, unverified).
var (
	qualities  = []string{"linear", "slot", "slots", "swirl", "eggcrate", "bar", "fixed", "adjustable", "external", "internal", "thermal", "acoustic", "vapour", "leakage", "leak", "pressure", "air", "ceiling", "wall", "floor", "rubber", "steel", "site", "all", "general", "new"}
	belonging  = []string{"of", "to", "for", "on", "the", "fur", "von", "der", "des", "am", "de", "du", "pour", "sur", "van", "voor", "aan", "av", "pa", "del", "para", "di", "per", "dei", "delle", "el", "la", "le", "les", "los"}
	ducts      = []string{"duct", "ducts", "ductwork", "ducting", "kanal", "kanale", "kanalen", "luftkanal", "luftkanale", "rohr", "rohre", "gaine", "gaines", "conduit", "conduits", "kanaal", "luchtkanalen", "kanaler", "conducto", "conductos", "canale", "canali", "condotte"}
	oneHas     = []string{"hanger", "support", "bracket", "fixing", "insulation", "lagging", "lining", "ductlining", "sealant", "gasket", "flange", "testing", "leak", "paint", "clean", "identification", "labelling", "access", "test", "tape", "firestopping", "drop", "grille", "diffuser", "louvre", "louver", "delivery", "transport", "commissioning"}
	insulation = []string{"isol", "damm", "calorif", "coibent", "aisl"}
	supplies   = []string{"deliver", "suppl", "install", "transport", "liefer", "mont", "lever", "livr", "fourn", "entrega", "suminist", "consegn", "forn"}
)
