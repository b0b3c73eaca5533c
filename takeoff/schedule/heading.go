package schedule

import (
	"strings"
	"unicode"

	"blankoff/takeoff"
)

// verdict is what became of a heading.
type verdict uint8

const (
	blank   verdict = iota // no heading
	known                  // a column
	asks                   // more than one reading
	near                   // nearly a known one
	misfit                 // a known one with a unit that doesn't fit
	unknown                // nothing here
)

// heading is a heading that was read.
type heading struct {
	typed   string
	verdict verdict
	column  takeoff.Column // of known, near and misfit
	unit    unit           // what the heading says
	said    bool           // whether it says a unit
	ask     *question      // of asks
}

// tokens parts a heading into words, in lower case: runs of letters and
// digits, and the signs that stand for one.
func tokens(typed string) []string {
	var out []string
	var word strings.Builder
	end := func() {
		if word.Len() > 0 {
			out = append(out, word.String())
			word.Reset()
		}
	}
	rs := []rune(strings.ToLower(typed))
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

var unitSigns = map[rune]string{'"': "in", '″': "in", '”': "in", '\'': "ft", '′': "ft", '’': "ft", '°': "deg"}

// readHeading finds out what a heading means.
func readHeading(typed string) heading {
	h := heading{typed: shorten(strings.TrimSpace(typed))}
	words := tokens(h.typed)
	if len(words) == 0 {
		if h.typed != "" {
			h.verdict = unknown
		}
		return h
	}
	whole := strings.Join(words, "")
	if h.means(whole) {
		return h
	}
	name := whole
	for k := min(3, len(words)-1); k > 0; k-- {
		u, ok := unitOf(strings.Join(words[len(words)-k:], ""))
		if !ok {
			continue
		}
		rest := words[:len(words)-k]
		h.unit, h.said = u, true
		if h.means(strings.Join(rest, "")) {
			return h
		}
		if n := len(rest) - 1; n > 0 && rest[n] == "in" && h.means(strings.Join(rest[:n], "")) {
			return h
		}
		name = strings.Join(rest, "")
		break
	}
	if !h.said {
		if rest, u, ok := glued(whole); ok {
			h.unit, h.said = u, true
			if h.means(rest) {
				return h
			}
			name = rest
		}
	}
	h.guess(name, whole)
	return h
}

// glued parts a unit from the word that it is written to: "widthmm".
func glued(word string) (rest string, u unit, ok bool) {
	for _, s := range [...]string{"mm", "cm", "deg", "kpa", "pa", "m2"} {
		if rest, ok = strings.CutSuffix(word, s); ok && len(rest) > 1 {
			u, ok = unitOf(s)
			return rest, u, ok
		}
	}
	return word, u, false
}

// means settles the heading if name is known or asked about.
func (h *heading) means(name string) bool {
	m, ok := meanings[name]
	if ok && (h.said || !m.unitNeeded) {
		h.column, h.verdict = m.column, known
		if !h.said {
			h.canonicalUnit(name)
		} else if !takes(m.column, h.unit) {
			h.verdict = misfit
		}
		return true
	}
	if q := asked[name]; q != nil {
		h.verdict, h.ask = asks, q
		return true
	}
	if _, ok := unusedName[name]; ok {
		h.verdict = unknown
		return true
	}
	return false
}

// canonicalUnit takes the unit from a canonical heading, which ends in it.
func (h *heading) canonicalUnit(name string) {
	h.unit = defaultUnit(h.column.Measure())
	h.said = name == squash(h.column.Heading())
}

// takes reports whether a heading of column c may say unit u.
func takes(c takeoff.Column, u unit) bool {
	if c == takeoff.BlankMinutes {
		return u == minute
	}
	return u.measure == c.Measure() && c.Measure() != takeoff.Text && c.Measure() != takeoff.Count
}

// guess looks for a known name that the heading may have meant.
func (h *heading) guess(names ...string) {
	h.verdict = unknown
	best := 3
	for _, name := range names {
		limit := 1 + min(1, len(name)/8)
		if len(name) < 4 || len(name) > longestName || name[0] <= '9' {
			continue
		}
		for _, n := range nearNames {
			if d := distance(name, n.name, best); d < best && d <= limit {
				best, h.verdict, h.column = d, near, n.column
			}
		}
	}
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
