package headings

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// Exact is Word for a cell that is one of the words as it stands.
func (l *Lexicon) Exact(c takeoff.Column, cell string) (string, bool) {
	if c == takeoff.Shape2 {
		c = takeoff.Shape
	}
	if len(l.cells[c]) == 0 || len(cell) > 200 {
		return "", false
	}
	w, ok := l.cells[c][Squash(cell)]
	return w, ok
}

// Worded reports a column whose cells hold words that may stand for ours.
func (l *Lexicon) Worded(c takeoff.Column) bool { return c == takeoff.Shape2 || l.cells[c] != nil }

// Word gives the word of ours for a cell of a column that holds words, and
// whether one was found. A kind may be several words, each of which has to be
// known: "coude rond" is a round bend.
func (l *Lexicon) Word(c takeoff.Column, cell string) (string, bool) {
	if w, ok := l.Exact(c, cell); ok || c != takeoff.Kind || len(cell) > 200 {
		return w, ok
	}
	parts := Tokens(cell)
	var found []phrase
	for len(parts) > 0 {
		n, p := l.phrase(parts)
		beside := l.besides(parts)
		switch {
		case n > 0 && n >= beside:
			found, parts = append(found, p), parts[n:]
		case beside > 0:
			parts = parts[beside:]
		default:
			return "", false
		}
	}
	if len(found) == 0 {
		return "", false
	}
	whole := described(found)
	_, _, _, ok := fittings.ParseDescription(whole)
	return whole, ok
}

// besides is how many words at the beginning of parts may stand beside a kind: galvanised,
// with turning vanes.
func (l *Lexicon) besides(parts []string) int {
	for n := min(4, len(parts)); n > 0; n-- {
		if _, known := l.beside[strings.Join(parts[:n], "")]; known {
			return n
		}
	}
	return 0
}

// SaysStraight reports a name with a word for straight in it, as straight ducts or
// Kanal gerade.
func (l *Lexicon) SaysStraight(name string) bool {
	return slices.ContainsFunc(Tokens(name), func(w string) bool {
		return strings.HasPrefix(w, "straight") || l.cells[takeoff.Style][w] == "straight"
	})
}

// Uncounted reports what a quantity is counted in that isn't single pieces: kg, pair, per
// floor, x2.
func (l *Lexicon) Uncounted(unit string) bool {
	words := Tokens(unit)
	if len(words) == 0 || len(words) > 4 {
		return false
	}
	for _, w := range words {
		if _, ok := l.uncount[w]; ok {
			return true
		}
	}
	_, ok := l.uncount[strings.Join(words, "")]
	first, last := words[0], words[len(words)-1]
	return ok || len(first) > 1 && first[0] == 'x' && strings.Trim(first[1:], "0123456789") == "" || len(last) > 1 && last[len(last)-1] == 'x' && strings.Trim(last[:len(last)-1], "0123456789") == ""
}

// phrase is a kind, style or shape in our words. listed says that the lists of
// kinds have it, so that "straight" isn't a style.
type phrase struct {
	word   string
	listed bool
}

// described joins what a cell says of a piece. A straight that is said to be
// straight, or a shape that is said twice, is said once; a straight together
// with another kind is nothing that we know.
func described(found []phrase) string {
	if len(found) == 1 {
		return found[0].word
	}
	straight, shape := -1, fittings.NoShape
	for i, p := range found {
		k, _, s, ok := fittings.ParseDescription(p.word)
		if !ok || k != fittings.Straight || !p.listed && p.word == "straight" {
			continue
		}
		if s == fittings.NoShape {
			found[i].word = "duct"
		}
		switch {
		case straight < 0:
			straight, shape = i, s
		case s == fittings.NoShape:
			found[i].word = ""
		case shape == fittings.NoShape:
			found[straight].word = ""
			straight, shape = i, s
		}
	}
	var out []string
	for _, p := range found {
		if s, ok := fittings.ParseShape(p.word); ok && s == shape || straight >= 0 && p.word == "straight" || p.word == "" {
			continue
		}
		out = append(out, p.word)
	}
	for i, w := range out { // "rectangular straight": the shape of a kind, not of a style
		if _, shape := fittings.ParseShape(out[len(out)-1-i]); len(out) == 2 && w == "straight" && shape {
			out[i] = "duct"
		}
	}
	return strings.Join(out, " ")
}

// phrase translates the longest phrase at the beginning of parts: a kind, style
// or shape in any language, one or several. n is how many parts it has, 0 where it
// isn't known.
func (l *Lexicon) phrase(parts []string) (n int, p phrase) {
	for n = min(len(parts), l.longest); n > 0; n-- {
		key := strings.Join(parts[:n], "")
		for _, c := range [...]takeoff.Column{takeoff.Kind, takeoff.Shape, takeoff.Style} {
			w, ok := l.cells[c][key]
			if !ok && c == takeoff.Kind && len(key) > 4 {
				w, ok = l.cells[c][strings.TrimSuffix(key, "s")]
			}
			if ok {
				return n, phrase{w, c == takeoff.Kind}
			}
		}
		typed := strings.Join(parts[:n], " ")
		_, kind := fittings.ParseKind(typed)
		_, style := fittings.ParseStyle(typed)
		_, shape := fittings.ParseShape(typed)
		if kind || style || shape {
			return n, phrase{word: typed}
		}
		if one, many := strings.CutSuffix(typed, "s"); many && len(one) > 2 { // bends
			if _, ok := fittings.ParseKind(one); ok {
				return n, phrase{word: one}
			}
		}
	}
	return 0, p
}

// Place says what a row that isn't a piece may be by its words: total, system,
// level, dimension or note. rest is the text after a colon, else all of it.
// A row with words of two lists may be either: both are given, in order. So are
// system and level for a word that may be either by itself: zone.
func (l *Lexicon) Place(text string) (places []string, rest string) {
	rest = text
	if before, after, ok := strings.Cut(text, ":"); ok && strings.TrimSpace(after) != "" {
		rest = strings.TrimSpace(after)
		if p := l.places[Squash(before)]; p != "" {
			return eitherOf([]string{p}), rest
		}
		rest = text
	}
	parts := Tokens(text)
	for i := range parts {
		for n := min(3, len(parts)-i); n > 0; n-- {
			p := l.places[strings.Join(parts[i:i+n], "")]
			if p == "" && n == 1 && strings.HasSuffix(parts[i], "geschoss") {
				p = "level"
			}
			if p == "" || len(places) > 0 && places[len(places)-1] == p {
				continue
			}
			if p == "total" && i > 0 || p == "note" && i > 0 {
				continue // these begin a row
			}
			places = append(places, p)
			break
		}
	}
	return eitherOf(places), rest
}

// eitherOf leaves out the word that may be a system or a level where another
// says which.
func eitherOf(places []string) []string {
	sure := slices.DeleteFunc(slices.Clone(places), func(p string) bool { return p == "either" })
	if len(sure) == 0 && len(places) > 0 {
		return []string{"system", "level"}
	}
	return sure
}

// Total reports words that begin a row of totals, or end one after a name: "Total
// S1", "S1 total", "Supply total".
func (l *Lexicon) Total(text string) bool {
	parts := Tokens(text)
	for n := min(3, len(parts)); n > 0; n-- {
		if l.places[strings.Join(parts[:n], "")] == "total" {
			return true
		}
	}
	last := len(parts) - 1
	return last > 0 && l.places[parts[last]] == "total" && slices.ContainsFunc(parts[:last], func(w string) bool {
		p := l.places[w]
		return p == "system" || p == "level" || strings.ContainsAny(w, "0123456789")
	})
}

// TotalName reports a name of a total and of nothing else: "Total", "Sub total",
// "Carried forward".
func (l *Lexicon) TotalName(name string) bool {
	if len(name) < 3 || len(name) > 40 || !l.totals[[2]byte{name[0] | 0x20, name[1] | 0x20}] {
		return false
	}
	parts := Tokens(name)
	return len(parts) <= 4 && !strings.ContainsAny(name, "0123456789") && l.places[strings.Join(parts[:min(3, len(parts))], "")] == "total"
}

// Over says what a heading means that stands over several others: main, branch,
// 2, or "" where it isn't known.
func (l *Lexicon) Over(name string) string { return l.over[Squash(name)] }

// Others lists what else a heading may say in English for a column, as it may
// be typed, and what it may say where a unit follows.
func (l *Lexicon) Others(c takeoff.Column) (names, withUnit []string) {
	return l.english[c], l.needUnit[c]
}

// Squash is a name without what is free in it.
func Squash(name string) string { return strings.Join(Tokens(name), "") }
