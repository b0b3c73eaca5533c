package headings

import (
	"fmt"
	"slices"
	"strings"
)

// addHarmless files words of remarks that bear on no area.
func (l *Lexicon) addHarmless(line line) error {
	if line.means != "" && line.means != "thing" {
		return fmt.Errorf("'%s' is no sort of words of remarks; expected thing, or nothing", line.means)
	}
	for _, phrase := range line.words {
		for _, w := range Tokens(phrase) {
			l.harmless[w] = l.harmless[w] || line.means == "thing"
		}
	}
	return nil
}

// Harmless reports a remark of which each word is known to bear on no area: fire rated,
// above ceiling, level 3, FD 12. What a sentence with any other word in it says can't be
// told from lists of words.
func (l *Lexicon) Harmless(words []string) bool {
	return !slices.ContainsFunc(words, func(w string) bool { return !l.harmlessWord(w) })
}

// doubtful reports words that say something of a row that can't be told: one that says so
// wherever it stands; one of a sentence, as not, it or we, among words that aren't known,
// unless it names a thing at the duct that it may be of; or a comparison of sizes beside a
// figure or almost alone. Not built, client has it, make it 50 wider, too long; not so not
// insulated, screw it from below, longer bolts at the rear flange.
func (l *Lexicon) doubtful(words []string) bool {
	sure, maybe := l.Doubts(words)
	return sure || maybe
}

// Doubts is doubtful, parted: sure where a word says so wherever it stands, maybe where a sentence
// does or a comparison.
func (l *Lexicon) Doubts(words []string) (sure, maybe bool) {
	vagues, figures, other, thing, compares := 0, 0, false, false, false
	if Agreed(words) {
		return false, false
	}
	for i, w := range words {
		known := l.harmlessWord(w) || l.compound(w)
		switch said := l.wordsFrom(words[i:]); {
		case said&Doubt != 0 && !(measured[w] && l.ofThing(words[:i])) && !(i > 0 && len(words) < 7 && l.isThing(words[:i])): // supports measured separately, hangers reused
			return true, false
		case said&vague != 0:
			vagues++
		case said&comparing != 0:
			compares = true
		default:
			other = other || !known && !l.one(w, Open)
		}
		if !thing {
			thing, _ = l.remarkWord(w)
		}
		if strings.ContainsAny(w, "0123456789") || l.numbers[w] > 0 || halves[w] {
			figures++
		}
	}
	sentence := vagues > 1 || vagues > 0 && (other || vagues+figures == len(words) && (len(words) > 1 || len(words[0]) > 3))
	return false, sentence && !thing || compares && (figures > 0 || len(words) < 3)
}

// Agreed reports a remark that something was measured, perhaps twice, and is right.
func Agreed(words []string) bool {
	is := func(list map[string]bool) bool {
		return slices.ContainsFunc(words, func(w string) bool { return list[w] })
	}
	return len(words) < 8 && is(measured) && is(rights) && !slices.Contains(words, "lot")
}

// rights are words for being right, in seven languages, without accents (from memory, unverified).
var rights = map[string]bool{"agree": true, "agrees": true, "ok": true, "okay": true, "stimmt": true, "passt": true, "bon": true, "juste": true, "klopt": true, "akkoord": true, "stammer": true, "correcto": true, "correcta": true, "bien": true, "bene": true, "torna": true, "corretto": true}

// shortPart is how short a part of a compound is that says nothing of it.
const shortPart = 5

// compound reports a word put together, as German, Dutch and Swedish do, that begins with or ends
// in one for a thing at the duct: Deckenfeld, schakelkastdeur.
func (l *Lexicon) compound(w string) bool {
	if len(w) < 2*shortPart {
		return false
	}
	for at := shortPart; at <= len(w)-shortPart; at++ {
		if thing, known := l.remarkWord(w[:at]); thing || known && at > shortPart {
			return true
		}
		if thing, known := l.remarkWord(w[at:]); thing || known && len(w)-at > shortPart {
			return true
		}
	}
	return false
}

// isThing reports words that end in one for a thing at the duct, and name no piece: existing hanger.
func (l *Lexicon) isThing(words []string) bool {
	thing, _ := l.remarkWord(words[len(words)-1])
	return thing && l.ofThing(words)
}

// NamesThing reports words with one for a thing at the duct.
func (l *Lexicon) NamesThing(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { thing, _ := l.remarkWord(w); return thing })
}

// measured are words for measuring, and the French for a trade, in seven languages, without accents (from memory, unverified).
var measured = map[string]bool{"lot": true, "measured": true, "gemessen": true, "aufgemessen": true, "mesure": true, "mesuree": true, "mesures": true, "mesurees": true, "gemeten": true, "mats": true, "matt": true, "uppmatt": true, "medido": true, "medida": true, "medidos": true, "medidas": true, "misurato": true, "misurata": true, "misurati": true, "misurate": true}

// halves are words for a half, in seven languages, without accents (from memory, unverified).
var halves = map[string]bool{"half": true, "halben": true, "halber": true, "demi": true, "halve": true, "halv": true, "halva": true, "medio": true, "media": true, "mezzo": true, "mezza": true}

// wordsFrom is what the phrases say with which words begin.
func (l *Lexicon) wordsFrom(words []string) (says Says) {
	for k, phrases := 0, l.sayings[words[0]]; k < len(phrases); k++ {
		if p := &phrases[k]; p.at == anywhere && l.match(words, p) {
			says |= p.says
		}
	}
	return says
}

// harmlessWord reports a word of a remark that bears on no area: a figure, a sign, a place,
// a kind or a quality of a piece.
func (l *Lexicon) harmlessWord(w string) bool {
	if len(w) == 1 || strings.ContainsAny(w, "0123456789") {
		return true
	}
	if _, known := l.remarkWord(w); known {
		return true
	}
	switch l.places[w] {
	case "system", "level", "either":
		return true
	}
	if _, known := l.beside[w]; known {
		return true
	}
	for _, words := range l.cells {
		if _, known := words[w]; known {
			return true
		}
	}
	return false
}
