package headings

import (
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
	var out []string
	for len(parts) > 0 {
		n, w := l.phrase(parts)
		if n == 0 {
			return "", false
		}
		out, parts = append(out, w), parts[n:]
	}
	whole := strings.Join(out, " ")
	_, _, _, ok := fittings.ParseDescription(whole)
	return whole, ok
}

// phrase translates the longest phrase at the beginning of parts: a kind, style
// or shape in any language. n is how many parts it has, 0 where it isn't known.
func (l *Lexicon) phrase(parts []string) (n int, word string) {
	for n = min(len(parts), l.longest); n > 0; n-- {
		key := strings.Join(parts[:n], "")
		for _, c := range [...]takeoff.Column{takeoff.Kind, takeoff.Shape, takeoff.Style} {
			if w, ok := l.cells[c][key]; ok {
				return n, w
			}
		}
		typed := strings.Join(parts[:n], " ")
		_, kind := fittings.ParseKind(typed)
		_, style := fittings.ParseStyle(typed)
		_, shape := fittings.ParseShape(typed)
		if kind || style || shape {
			return n, typed
		}
	}
	return 0, ""
}

// Place says what a row that isn't a piece may be by its words: total, system,
// level, dimension or note. rest is the text after a colon, else all of it.
// A row with words of two lists may be either: both are given, in order.
func (l *Lexicon) Place(text string) (places []string, rest string) {
	rest = text
	if before, after, ok := strings.Cut(text, ":"); ok && strings.TrimSpace(after) != "" {
		rest = strings.TrimSpace(after)
		if p := l.places[Squash(before)]; p != "" {
			return []string{p}, rest
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
	return places, rest
}

// Total reports words that begin a row of totals.
func (l *Lexicon) Total(text string) bool {
	parts := Tokens(text)
	for n := min(3, len(parts)); n > 0; n-- {
		if l.places[strings.Join(parts[:n], "")] == "total" {
			return true
		}
	}
	return false
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
