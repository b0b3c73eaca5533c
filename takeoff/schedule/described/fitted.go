package described

import (
	"regexp"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// fittingNames are words for pieces that aren't straights, and otherThings for no ductwork,
// that no kind is called by, in seven languages (from memory, unverified).
var (
	fittingNames = []string{"tee", "tees", "fitting", "fittings", "formteil", "formteile", "formstuck", "formstucke", "formstueck", "formstuecke", "raccord", "raccords", "hulpstuk", "hulpstukken",
		"accesorio", "accesorios", "accessori", "speciali", "accessoire", "accessoires", "accessory", "accessories", "detaljer", "elbows", "curve", "gomiti", "riduzioni"}
	otherThings = []string{"pipe", "pipes", "pipework", "cable", "cables", "tray", "trays", "trunking", "weights", "summary", "totals", "rohrleitungen", "tuyauterie", "tuberia", "tubazioni", "leidingen"}
)

// otherSense are words for kinds that mean something else as often.
var otherSense = []string{"cross", "fond", "boden", "lock", "tapa", "registre", "abzweig", "derivacion", "derivation", "piquage", "kors", "kreuz", "croix", "versatz", "knee", "stub", "collar", "saddle", "plan",
	"abzweigung", "abzweigungen", "kreuzung", "kruis", "kryss", "cruces", "croci", "crociera", "derivaciones", "canvas", "lona", "overgang"}

// NamesFitting reports a text with a word for a piece that is no straight, or for
// fittings as such: cut beside bend, Bends and reducers.
func (k Kinds) NamesFitting(text string) bool {
	if len(text) > 200 {
		text = text[:200]
	}
	words := headings.Tokens(text)
	at, _, _ := k.fittingIn(words)
	return at < len(words)
}

// fittingIn finds the first words that name a piece that is no straight: where they stand, how
// many they are, and the kind, if it is one. None stand behind the words.
func (k Kinds) fittingIn(words []string) (at, n int, kind fittings.Kind) {
	for at = 0; at < len(words); at += max(1, n) {
		if slices.Contains(fittingNames, words[at]) || strings.HasPrefix(words[at], "formteil") || strings.HasPrefix(words[at], "formst") {
			return at, 1, fittings.NoKind
		}
		for n = min(4, len(words)-at); n > 0; n-- {
			if kind = k.named(words[at : at+n]); kind == fittings.NoKind {
				continue
			}
			if kind != fittings.Straight {
				return at, n, kind
			}
			break
		}
	}
	return len(words), 0, fittings.NoKind
}

// FittingBeside reports a remark of which each fitting is something at the duct and not what
// the piece is: a damper, a flexible, a lid or taps among other words, which change no more of the duct
// than beside a kind, or any fitting of which it is said that the duct is before or
// behind it. Brandschutzklappe folgt, flex at diffuser, after bend; not 45° bend.
func (k Kinds) FittingBeside(text string) bool {
	if len(text) > 200 || k.NamesKind(text) {
		return false
	}
	words, some := headings.Tokens(text), false
	for rest := words; ; {
		at, n, kind := k.fittingIn(rest)
		if at == len(rest) {
			return some
		}
		from := len(words) - len(rest) + at
		if !k.atDuct(words, from, n, kind) {
			return false
		}
		rest, some = rest[at+n:], true
	}
}

// atDuct reports that the n words at a place of a remark name something at the duct.
func (k Kinds) atDuct(words []string, at, n int, kind fittings.Kind) bool {
	for before := at; before > 0 && before > at-3; before-- {
		if slices.Contains(besideWords, words[before-1]) {
			return true
		}
		if len(words[before-1]) > 5 {
			break
		}
	}
	if kind == fittings.Cap && slices.ContainsFunc(words, func(w string) bool { return slices.Contains(closedWords, w) }) {
		return true
	}
	if kind != fittings.Inline && kind != fittings.Flexible && !(kind == fittings.Cap && n == 1 && slices.Contains(lids, words[at])) && (kind != fittings.Spigot || at == 0 && !strings.HasSuffix(words[at+n-1], "s")) {
		return false
	}
	for i, w := range words {
		if i >= at && i < at+n || len(w) < 2 || strings.ContainsAny(w, "0123456789") || k.Lex.BesideKind(w) {
			continue
		}
		if k.named(words[i:i+1]) == fittings.NoKind && (len(w) > 2 || slices.Contains(smallWords, w)) {
			return true
		}
	}
	return false
}

// closedWords are words of remarks that say when or where a duct is capped, in seven languages,
// without accents (from memory, unverified).
var closedWords = []string{"ends", "transport", "transit", "delivery", "shipping", "travel", "storage", "dust", "enden", "lieferung", "versand", "lagerung", "staub", "extremites", "bouts", "livraison", "stockage", "poussiere",
	"uiteinden", "levering", "opslag", "stof", "andar", "andarna", "leverans", "lagring", "damm", "extremos", "extremidades", "entrega", "almacenaje", "polvo", "estremita", "trasporto", "transporte", "consegna", "stoccaggio", "polvere"}

// Words before a fitting at which a duct is, and small ones that join it to others, in seven
// languages, without accents (from memory, unverified).
var (
	besideWords = []string{"before", "after", "behind", "beside", "near", "next", "between", "until", "into", "above", "below", "under", "over", "past", "upstream", "downstream", "adjacent",
		"vor", "nach", "hinter", "neben", "zwischen", "unter", "uber", "bis", "bei", "oberhalb", "unterhalb", "avant", "apres", "derriere", "entre", "sous", "sur", "jusqu", "amont", "aval", "pres",
		"voor", "na", "achter", "naast", "tussen", "onder", "boven", "tot", "bij", "fore", "efter", "bakom", "bredvid", "intill", "mellan", "ovan", "ovanfor", "nedanfor", "vid",
		"antes", "despues", "detras", "junto", "debajo", "encima", "hasta", "tras", "prima", "dopo", "dietro", "accanto", "tra", "fra", "sotto", "sopra", "fino", "vicino", "presso", "monte", "valle"}
	lids       = []string{"deckel", "lid", "lids", "cover", "deksel", "couvercle", "lock", "lucka", "tapa", "coperchio"}
	smallWords = []string{"at", "by", "on", "am", "an", "im", "au", "en", "op", "pa", "av", "in", "al", "su", "od", "ok"}
)

// fittingCodes are short forms of fittings as offices number them: BD90, RED (common practice,
// no source; from memory, unverified).
var fittingCodes = []string{"bd", "bnd", "bend", "el", "elb", "elbow", "ell", "red", "rdc", "rdr", "tee", "tpr", "taper", "trans", "trn", "trf", "ofs", "ofst", "offs", "sqr", "s2r", "ecap", "vcd", "mfd", "bog", "etg", "wye"}

// OfColours reports a heading of colours, among which red is one.
func OfColours(heading string) bool {
	return slices.ContainsFunc(headings.Tokens(heading), func(w string) bool {
		return slices.Contains([]string{"colour", "color", "ral", "farbe", "couleur", "kleur", "colore", "farg"}, w)
	})
}

// FittingCode reports a cell that is short for a fitting, with a number or without: BD90, RED.
func FittingCode(cell string) bool {
	if len(cell) < 2 || len(cell) > 9 {
		return false
	}
	for i := range len(cell) {
		if c := cell[i]; c >= 'a' && c <= 'z' { // a word
			return false
		}
	}
	word := strings.TrimRight(cell, "0123456789")
	if len(cell)-len(word) > 3 { // a height above the ground
		return false
	}
	word = strings.TrimRight(word, "-_ /")
	return len(word) > 1 && slices.Contains(fittingCodes, strings.ToLower(word))
}

// ofTests is in words for tests and their papers, for which lists of ducts are made, in seven
// languages, without accents (from memory, unverified).
var ofTests = regexp.MustCompile(`leak|test|pruf|probe|provning|protokol|essai|epreuve|etancheit|prueba|estanqu|prova|collaud|tenuta|beproev|lekdicht|luchtdicht|tathet|dichtheit|dichtigkeit`)

// mostTitleWords is how many words a title has at most that names what a list is of.
const mostTitleWords = 6

// OfOthers reports a title of fittings, or of what isn't ductwork: Grille schedule. What may
// be a part of the ductwork isn't: Delivery note.
func (k Kinds) OfOthers(title string) bool {
	title = WithoutList(title)
	if wording.Summary.MatchString(title) || len(headings.Tokens(title)) > mostTitleWords { // or a sentence
		return wording.Summary.MatchString(title)
	}
	return k.OfOtherThings(title) || slices.ContainsFunc(headings.Tokens(title), func(w string) bool {
		return len(w) > 3 && w != "joint" && w != "joints" && w != "register" && k.Lex.Apart(w) && !k.Lex.Part(w) && !ofTests.MatchString(w)
	})
}

// OfOtherThings reports a heading of fittings, or of pipes and the like.
func (k Kinds) OfOtherThings(heading string) bool {
	words := headings.Tokens(heading)
	return k.NamesFitting(heading) || slices.ContainsFunc(words, func(w string) bool { return slices.Contains(otherThings, w) }) &&
		!slices.ContainsFunc(words, func(w string) bool {
			return strings.HasPrefix(w, "spir") || w == "duct" || w == "ductwork" || w == "ventilation"
		}) // spiral pipe
}

// named is the kind that words are the whole name of, one or several.
func (k Kinds) named(words []string) fittings.Kind {
	name := strings.Join(words, " ")
	for _, ending := range [...]string{"", "s", "e", "en", "n", "es", "ar"} {
		one, ends := strings.CutSuffix(name, ending)
		if !ends || len(words) == 1 && len(one) < 4 {
			continue
		}
		if places, _ := k.Lex.Place(one); len(words) == 1 && (len(places) > 0 || slices.Contains(otherSense, one)) {
			return fittings.NoKind
		}
		w, known := k.Lex.Exact(takeoff.Kind, one)
		if !known {
			w = one
		}
		if kind, _, _, ok := fittings.ParseDescription(w); ok {
			return kind
		}
	}
	return fittings.NoKind
}
