// Package headings knows the words of a schedule: what a heading means, in
// which unit, and what kinds, styles and shapes are called. Its words are data,
// a file for each language, and a user's own file adds to them or replaces them.
package headings

import (
	"math/bits"
	"strings"
	"unicode"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/quantity"
)

// Verdict is what became of a heading.
type Verdict uint8

// The verdicts.
const (
	Blank   Verdict = iota // no heading
	Known                  // a column
	Sizes                  // a whole cross-section in a cell
	Asks                   // more than one reading
	Near                   // nearly a known one
	Misfit                 // a known one with a unit that doesn't fit
	Unknown                // nothing here
)

// SizeOf is whose cross-section a cell holds.
type SizeOf uint8

// The cross-sections of a piece.
const (
	NoSize SizeOf = iota
	OwnSize
	SecondSize
	BranchSize
	LongSize // with the length behind it
)

// Heading is a heading that was read.
type Heading struct {
	Typed     string
	Verdict   Verdict
	Column    takeoff.Column // of Known, Near and Misfit
	Size      SizeOf         // of Sizes
	Unit      quantity.Unit  // what the heading says
	Said      bool           // whether it says a unit
	Ask       *Question      // of Asks
	Taken     bool           // of Near: another column of the row is headed so
	Foremost  bool           // of LongSize: the length stands before the cross-section
	OfAll     bool           // of a length: of all pieces of a row together
	InchesToo bool           // its figures are in feet and inches
}

// Tokens parts a heading into words, in lower case: runs of letters and
// digits, and the signs that stand for one.
func Tokens(typed string) []string {
	var out []string
	var word strings.Builder
	end := func() {
		if word.Len() > 0 {
			out = append(out, word.String())
			word.Reset()
		}
	}
	rs := []rune(plainLetters.Replace(strings.ToLower(typed)))
	letter := func(i int) bool { return i >= 0 && i < len(rs) && unicode.IsLetter(rs[i]) }
	for i, r := range rs {
		switch {
		case r == '²' || r == '³':
			word.WriteRune(r - '²' + '2')
		case r == 'ø' || r == '⌀' || r == '∅':
			end()
			word.WriteString("diameter")
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			word.WriteRune(r)
		case (r == '\'' || r == '’') && letter(i-1) && letter(i+1):
			// an apostrophe: q'ty
		case (r == '×' || r == '✕' || r == '*') && joins(rs, i):
			end()
			out = append(out, "x")
		case letter(i-1) || letter(i+1) || unitSigns[r] == "":
			end()
		default:
			end()
			word.WriteString(unitSigns[r])
			end()
		}
	}
	end()
	return out
}

// plainLetters takes the accents off, which are often left out; a sign for a
// diameter isn't a letter.
var plainLetters = strings.NewReplacer("ä", "a", "à", "a", "á", "a", "â", "a", "ã", "a", "å", "a", "æ", "ae", "ç", "c", "è", "e", "é", "e",
	"ê", "e", "ë", "e", "ì", "i", "í", "i", "î", "i", "ï", "i", "ñ", "n", "ò", "o", "ó", "o", "ô", "o", "ö", "o", "õ", "o", "œ", "oe",
	"ù", "u", "ú", "u", "û", "u", "ü", "u", "ß", "ss", "n°", "no ", "nº", "no ", "n.°", "no ", "n.º", "no ")

// Plain is text in lower case without accents.
func Plain(text string) string { return plainLetters.Replace(strings.ToLower(text)) }

var unitSigns = map[rune]string{'"': "in", '″': "in", '”': "in", '\'': "ft", '′': "ft", '’': "ft", '°': "deg"}

// Read finds out what a heading means; typed is fit for a message.
func (l *Lexicon) Read(typed string) Heading { return l.find(typed, nil) }

// find is Read that suggests no column of those taken.
func (l *Lexicon) find(typed string, taken []bool) Heading {
	h := Heading{Typed: typed}
	words := Tokens(h.Typed)
	words, h.InchesToo = feetOnly(words)
	if len(words) == 0 {
		if h.Typed != "" {
			h.Verdict = Unknown
		}
		return h
	}
	name, ok := l.settle(&h, words)
	if ok {
		return h
	}
	if once := unitOnce(words); once != nil {
		other := Heading{Typed: typed, InchesToo: h.InchesToo}
		if _, ok := l.settle(&other, once); ok {
			return other
		}
	}
	whole := strings.Join(words, "")
	if !h.Said {
		if rest, u, ok := glued(whole); ok {
			h.Unit, h.Said = u, true
			if l.means(&h, rest) {
				return h
			}
			name = rest
		}
	}
	if l.bothTongues(&h) || l.ofDuct(&h, words) {
		return h
	}
	if l.ofRemarks(words) {
		h.Verdict, h.Column, h.Unit, h.Said = Known, takeoff.Note, quantity.Unit{}, false
		return h
	}
	l.guess(&h, taken, name, whole)
	return h
}

// settle settles the heading if its words are known, with or without a unit at
// the end. name is what they are without it.
func (l *Lexicon) settle(h *Heading, words []string) (name string, ok bool) {
	name = strings.Join(words, "")
	if m, ok := l.meanings[name]; ok && m.own && l.means(h, name) {
		return name, true
	}
	if l.measured(h, words) {
		return name, true
	}
	if l.means(h, name) {
		return name, true
	}
	for k := min(3, len(words)-1); k > 0; k-- {
		u, ok := unitAtEnd(words, k)
		if !ok {
			continue
		}
		words = words[:len(words)-k]
		h.Unit, h.Said = u, true
		if l.means(h, strings.Join(words, "")) {
			return name, true
		}
		if n := len(words) - 1; n > 0 && (words[n] == "in" || words[n] == "en" || words[n] == "i") {
			if words = words[:n]; l.means(h, strings.Join(words, "")) {
				return name, true
			}
		}
		name = strings.Join(words, "")
		break
	}
	return name, l.across(h, words)
}

// means settles the heading if name is known or asked about.
func (l *Lexicon) means(h *Heading, name string) bool {
	m, ok := l.meanings[name]
	if ok && m.size != NoSize {
		h.Size, h.Verdict = m.size, Sizes
		if h.Said && h.Unit.Measure != takeoff.Lengths {
			h.Verdict, h.Column = Misfit, m.column
		}
		return true
	}
	if ok = ok && !(m.unitNeeded && h.Unit.Measure == takeoff.Areas && !takes(m.column, h.Unit)); ok && // not Sviluppo m²
		(h.Said || !m.unitNeeded) {
		h.Column, h.Verdict = m.column, Known
		if !h.Said {
			h.canonicalUnit(name)
		} else if numbered(m.column, h.Unit) { // Locale n.
			h.Unit, h.Said = quantity.Unit{}, false
		} else if m.column == takeoff.Run && h.Unit.Measure == takeoff.Lengths { // Run (m)
			h.Column = takeoff.DimColumn(fittings.Length)
		} else if !takes(m.column, h.Unit) {
			h.Verdict = Misfit
		}
		return true
	}
	if q := l.asked[name]; q != nil {
		if h.Verdict, h.Ask = Asks, q; q.names == threeSizes && l.withLength(name) {
			h.Verdict, h.Ask, h.Size = Sizes, nil, LongSize
			if h.Said && h.Unit.Measure != takeoff.Lengths {
				h.Verdict, h.Column = Misfit, takeoff.DimColumn(fittings.Width)
			}
		}
		return true
	}
	if _, ok := l.unused[name]; ok {
		h.Verdict = Unknown
		return true
	}
	return false
}

// guess looks for a known name that the heading may have meant, of a column that
// isn't taken.
func (l *Lexicon) guess(h *Heading, taken []bool, names ...string) {
	h.Verdict = Unknown
	if len(names) > 0 && names[0] == "riser" { // a name, and no rise
		return
	}
	best := 3
	for _, name := range names {
		limit := 1 + min(1, len(name)/8)
		if len(name) < 4 || len(name) > longestName || name[0] <= '9' {
			continue
		}
		letters := lettersOf(name)
		for _, n := range l.near {
			if taken != nil && taken[n.column] || otherNumber(name, n.name) || bits.OnesCount32(letters^n.letters) > 2*limit { // a letter changed is one more and one fewer
				continue
			}
			if d := distance(name, n.name, best); d < best && d <= limit {
				best, h.Verdict, h.Column = d, Near, n.column
			}
		}
	}
}

// otherNumber reports a name known with a number at its end that the one typed hasn't:
// width 3 isn't width 2 misspelt.
func otherNumber(typed, known string) bool {
	last := known[len(known)-1]
	return last <= '9' && typed[len(typed)-1] != last
}

// lettersOf marks the letters and other bytes that a name has.
func lettersOf(name string) (set uint32) {
	for i := range len(name) {
		set |= 1 << (name[i] & 31)
	}
	return set
}

// longestName is the length of the longest name that may be misspelt.
const longestName = 40

// distance is the number of letters to put in, leave out, change or swap with
// a neighbour to get from a to b, or limit where it is at least that or b is longer than longestName.
//
// Source: the optimal string alignment form of Damerau's distance
// (Communications of the ACM 7, 1964).
func distance(a, b string, limit int) int {
	if len(a)-len(b) >= limit || len(b)-len(a) >= limit || len(b) > longestName {
		return limit
	}
	var space [3][longestName + 1]int
	before, last, now := &space[0], &space[1], &space[2]
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		now[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			now[j] = min(last[j]+1, now[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				now[j] = min(now[j], before[j-2]+1)
			}
		}
		before, last, now = last, now, before
	}
	return min(last[len(b)], limit)
}
