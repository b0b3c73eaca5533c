package headings

import (
	"slices"
	"strings"

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
	if !l.MayTotal(name) {
		return false
	}
	parts := Tokens(name)
	return len(parts) <= 4 && !strings.ContainsAny(name, "0123456789") && l.places[strings.Join(parts[:min(3, len(parts))], "")] == "total"
}

// MayTotal reports a name that begins as one of a total: most don't.
func (l *Lexicon) MayTotal(name string) bool {
	return len(name) > 2 && len(name) <= 40 && l.totals[begin(name)]
}

// Sums reports a name of a total that isn't one of something else: carriage, a report.
func (l *Lexicon) Sums(name string) bool { return SumWord(name) && l.TotalName(name) }

// SumWord reports a text with a word for a sum in it.
func SumWord(text string) bool {
	for i := 2; i < len(text); i++ {
		switch a, b, c := text[i-2]|0x20, text[i-1]|0x20, text[i]|0x20; {
		case a == 't' && b == 'o' && c == 't', a == 's' && (b == 'u' || b == 'o') && c == 'm':
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
