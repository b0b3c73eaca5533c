package headings

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Says is what the words of a remark say of its row, as far as they say anything.
type Says uint32

// What they may say.
const (
	Several   Says = 1 << iota // there are more of it than the row says
	Twice                      // there are two
	Part                       // there is less of it
	Instead                    // the figure behind takes the place of the row's
	Site                       // so does one that was taken on site
	Open                       // something isn't settled
	Unsized                    // its size isn't
	Out                        // it doesn't count
	Sum                        // it is a total of others
	Doubt                      // something of the row, it can't be told what
	aside                      // words before others: this duct is
	repeats                    // it is there again, if a level, a system or a side follows
	small                      // words between these
	vague                      // not, it, we: of what is known they say nothing
	comparing                  // longer, too wide: of a figure, or almost alone
	side
	dimension
)

// sayings are the meanings of the lists of remarks.
var sayings = map[string]Says{"several": Several, "twice": Twice, "part": Part, "instead": Instead, "site": Site, "open": Open, "unsized": Unsized, "out": Out,
	"subject": aside, "repeats": repeats, "small": small, "side": side, "dimension": dimension, "doubt": Doubt, "vague": vague, "more": comparing}

// saying is a phrase of a remark: its words, # for a number up to 99.
type saying struct {
	words []string
	says  Says
	at    uint8
}

// Where in a remark a phrase stands.
const (
	anywhere = iota
	alone
	atEnd
)

// addSayings files phrases of remarks.
func (l *Lexicon) addSayings(line line) error {
	says, ok := sayings[line.means]
	if !ok {
		return fmt.Errorf("'%s' isn't a thing that a remark may say; expected several, twice, part, instead, site, open, unsized, out, subject, repeats, small, side, dimension, doubt, vague or more", line.means)
	}
	at := map[string]uint8{remarkList: anywhere, remarkAloneList: alone, remarkEndList: atEnd}[line.list]
	for _, phrase := range line.words {
		words := Tokens(strings.ReplaceAll(phrase, "#", " "+numberMark+" "))
		if len(words) > 0 {
			l.sayings[words[0]] = append(slices.Clip(l.sayings[words[0]]), saying{words, says, at})
		}
	}
	return nil
}

// addNumbers files words for a number.
func (l *Lexicon) addNumbers(line line) error {
	n, err := strconv.Atoi(line.means)
	if err != nil || n < 1 || n > 99 {
		return fmt.Errorf("'%s' isn't a number from 1 to 99", line.means)
	}
	for _, w := range line.words {
		l.numbers[Squash(w)] = n
	}
	return nil
}

// numberMark is the word that stands for a number in a phrase: no word of a remark.
const numberMark = "zzzzzz"

// isNumber reports a number up to 99, in figures or as a word.
func (l *Lexicon) isNumber(word string) bool { return l.Number(word) > 0 }

// Number is what a word counts, up to 99: 0 where it is no number.
func (l *Lexicon) Number(word string) (n int) {
	if word == "" || len(word) > 2 || word[0] < '0' || word[0] > '9' {
		return l.numbers[word]
	}
	for i := range len(word) {
		if word[i] < '0' || word[i] > '9' {
			return 0
		}
		n = 10*n + int(word[i]-'0')
	}
	return n
}

// match reports that words begin with those of a phrase.
func (l *Lexicon) match(words []string, p *saying) bool {
	if len(words) < len(p.words) {
		return false
	}
	for i, w := range p.words {
		if words[i] != w && !(w == numberMark && l.isNumber(words[i])) {
			return false
		}
	}
	return true
}

// Says finds out what a remark of these words says.
func (l *Lexicon) Says(words []string, remark string) (says Says) {
	for i, w := range words {
		says |= l.saysAt(words, i, l.sayings[w])
		if l.isNumber(w) {
			says |= l.saysAt(words, i, l.sayings[numberMark])
		}
	}
	rest := l.behindSubject(words)
	if len(rest) < len(words) && l.struckAt(rest) {
		says |= Out
	}
	if len(rest) > 1 && l.one(rest[0], dimension) {
		if rest = l.behindSubject(rest[1:]); l.begins(rest, Open) {
			says |= Unsized
		}
	}
	if n := len(words); n > 1 && n < 4 && l.one(words[0], dimension) && !slices.Contains(heightWords, words[0]) && l.figure(words[1:]) {
		says |= Instead // length 1350
	}
	if l.sumOf(words, remark) {
		says |= Sum
	}
	if l.doubtful(words) {
		says |= Doubt
	}
	return says
}

// heightWords are words of dimensions that remarks have for where a piece hangs.
var heightWords = []string{"height", "hohe", "hauteur", "hoogte", "altura", "altezza", "hojd", "alto"}

// saysAt is what the phrases say that may begin at a place of a remark.
func (l *Lexicon) saysAt(words []string, i int, phrases []saying) (says Says) {
	for k := range phrases {
		p := &phrases[k]
		rest := words[i:]
		if !l.match(rest, p) || p.at == alone && len(words) != len(p.words) || p.at == atEnd && len(rest) != len(p.words) {
			continue
		}
		rest = rest[len(p.words):]
		switch p.says {
		case repeats:
			if l.another(rest) {
				says |= Several
			}
		case Instead:
			if l.figure(rest) {
				says |= Instead
			}
		case Site:
			if slices.ContainsFunc(words, func(w string) bool { return l.one(w, dimension) }) {
				says |= Instead
			}
		case aside, small, side, dimension, vague, comparing, Doubt:
		case Open:
			if p.at == alone {
				says |= Open
			}
		default:
			says |= p.says
		}
	}
	return says
}

// one reports a word that says something by itself.
func (l *Lexicon) one(word string, says Says) bool {
	return slices.ContainsFunc(l.sayings[word], func(p saying) bool { return p.says == says && len(p.words) == 1 })
}

// begins reports words that begin with a phrase.
func (l *Lexicon) begins(words []string, says Says) bool {
	return len(words) > 0 && slices.ContainsFunc(l.sayings[words[0]], func(p saying) bool { return p.says == says && l.match(words, &p) })
}

// behindSubject takes off the words at the beginning that name the row: this duct is.
func (l *Lexicon) behindSubject(words []string) []string {
	for len(words) > 0 && l.one(words[0], aside) {
		words = words[1:]
	}
	return words
}

// another reports words that begin with a level, a system or a side: level 2, on the other
// side, L3; not roof cowl.
func (l *Lexicon) another(words []string) bool {
	n := 0
	for ; n < 3 && len(words) > 0 && l.one(words[0], small); n++ {
		words = words[1:]
	}
	if len(words) == 0 {
		return false
	}
	w, next := words[0], ""
	if len(words) > 1 {
		next = words[1]
	}
	if len(w) > 1 && w[0] == 'l' && strings.Trim(w[1:], "0123456789") == "" || l.isNumber(w) && l.areaWord(next) {
		return true
	}
	return l.areaWord(w) && (n > 0 || next == "" || len(next) < 4 && strings.ContainsAny(next, "0123456789"))
}

// areaWord reports a word for a level, a system or a side.
func (l *Lexicon) areaWord(w string) bool {
	w = strings.TrimRight(w, "0123456789") // AHU2
	switch l.places[w] {
	case "system", "level", "either":
		return true
	}
	return w != "" && (strings.HasSuffix(w, "geschoss") || l.places[strings.TrimSuffix(w, "s")] == "level" || l.one(w, side))
}

// figure reports words that begin with the figure of a size, or with what it is of.
func (l *Lexicon) figure(words []string) bool {
	for n := 0; n < 2 && len(words) > 0 && (l.one(words[0], dimension) || l.one(words[0], small)); n++ {
		words = words[1:]
	}
	if len(words) == 0 || words[0][0] < '0' || words[0][0] > '9' {
		return false
	}
	return len(words[0]) > 1 || len(words) > 2 && words[1][0] >= '0' && words[1][0] <= '9' && words[2] == "m" // 1.2 m
}

// sumOf reports a remark that calls its row a total: total, sum of above, total of 1 and 2;
// not total length 6 m.
func (l *Lexicon) sumOf(words []string, text string) bool {
	for n := min(3, len(words)); n > 0; n-- {
		if l.places[strings.Join(words[:n], "")] != "total" {
			continue
		}
		rest := words[n:]
		if len(rest) == 0 || l.sized(rest) {
			return true
		}
		if l.places[strings.Join(rest, "")] == "level" || len(rest) == 3 && l.isNumber(rest[0]) && l.one(rest[1], small) && l.isNumber(rest[2]) { // total ground floor, total 4 to 9
			return true
		}
		of := false
		for len(rest) > 0 && l.one(rest[0], small) {
			of, rest = true, rest[1:]
		}
		if l.sized(rest) {
			return true
		}
		if !of || len(rest) == 0 || rest[0][0] < '0' || rest[0][0] > '9' {
			return of
		}
		return len(rest) > 1 && l.isNumber(rest[len(rest)-1]) && (len(rest) > 2 && !l.isNumber(rest[1]) || strings.ContainsAny(text, "+&-–"))
	}
	return l.Total(text) // S1 total
}

// sized reports words that are a size of a cross-section and nothing else: 400x300, Ø315 mm.
func (l *Lexicon) sized(words []string) bool {
	if n := len(words); n > 1 && words[n-1] == "mm" {
		words = words[:n-1]
	}
	whole := strings.Join(words, "")
	rest, round := strings.CutPrefix(whole, "diameter")
	a, b, sides := strings.Cut(rest, "x")
	figures := func(w string) bool { return len(w) > 1 && strings.Trim(w, "0123456789") == "" }
	return round && figures(rest) || sides && figures(a) && figures(b)
}
