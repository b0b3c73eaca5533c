package headings

import (
	"slices"
	"strings"
	"unicode"

	"blankoff/takeoff"
)

// Struck reports a cell that says its row doesn't count: it begins with a word as
// deleted or cancelled, or is one as void, by itself or before a sign.
func (l *Lexicon) Struck(cell string) bool {
	if !l.MayStrike(cell) {
		return false
	}
	if l.struckAt(Tokens(cell)) {
		return true
	}
	head := beforeSign(cell)
	return len(head) < len(cell) && cell[len(head)] != ':' && l.struckAt(Tokens(head)) // Example: delete this row
}

// MayStrike reports a cell that begins as one that Struck reports: most don't.
func (l *Lexicon) MayStrike(cell string) bool {
	if len(cell) < 2 || len(cell) > 200 {
		return false
	}
	_, may := l.strikes[begin(cell)]
	return may || cell[0] <= ' ' || cell[0] == '(' || cell[0] == '[' || cell[0] == '*'
}

// struckAt is Struck for words.
func (l *Lexicon) struckAt(parts []string) bool {
	for n := min(3, len(parts)); n > 0; n-- {
		switch l.struck[strings.Join(parts[:n], "")] {
		case "first":
			return true
		case "thing":
			return !l.ofThing(parts[n:])
		case "alone", "yes", "cell":
			return n == len(parts)
		}
	}
	return false
}

// ofThing reports words that name a thing at the duct, and no piece: transit film before
// fixing.
func (l *Lexicon) ofThing(words []string) bool {
	for _, w := range words {
		if _, piece := l.cells[takeoff.Kind][w]; piece {
			return false
		}
	}
	return l.NamesThing(words)
}

// StruckName reports the name of a system, a level, a place or the like that is none, but
// says that the row doesn't count: deleted, removed (rev B). What follows it without a
// sign belongs to a name: dropped ceiling.
func (l *Lexicon) StruckName(name string) bool {
	if !l.MayStrike(name) {
		return false
	}
	parts := Tokens(beforeSign(name))
	whole := strings.Join(parts, "")
	if len(parts) > 3 || len(whole) < 4 || slices.Contains(roomWords, whole) {
		return false
	}
	switch l.struck[whole] {
	case "first", "alone", "yes", "cell", "thing":
		return true
	}
	return false
}

// roomWords are words of Struck that rooms are called.
var roomWords = []string{"void", "spare", "sample", "example"}

// beforeSign is the part of a cell before the first sign that parts it: omit - see 3.
func beforeSign(cell string) string {
	if end := strings.IndexAny(cell, ",;:("); end > 0 {
		cell = cell[:end]
	}
	cell, _, _ = strings.Cut(cell, " - ")
	cell, _, _ = strings.Cut(cell, " – ")
	return cell
}

// StruckWithin reports a name that has a word in it as deleted.
func (l *Lexicon) StruckWithin(name string) bool {
	from := strings.IndexByte(name, ' ')
	if from < 0 {
		from = strings.IndexByte(name, '(')
	}
	return from >= 0 && strings.IndexFunc(name[from:], unicode.IsLetter) >= 0 && l.StruckAnywhere(name[from:])
}

// StruckEnd reports a name of several words whose first or last is one as omit or void: 1
// (option).
func (l *Lexicon) StruckEnd(name string) bool {
	if strings.IndexByte(name, ' ') < 0 {
		return false
	}
	words := Tokens(name)
	n := len(words) - 1
	return n > 0 && (l.struck[words[0]] == "alone" || l.struck[words[n]] == "alone" || l.struck[words[n]] == "cell")
}

// begin is how a word begins, in small letters.
func begin(word string) (b [3]byte) {
	for i := range min(3, len(word)) {
		b[i] = word[i] | 0x20
	}
	return b
}

// StruckAnywhere reports a line with a word in it as deleted.
func (l *Lexicon) StruckAnywhere(line string) bool {
	words := Tokens(line)
	for i, w := range words {
		if m := l.struck[w]; m == "first" || m == "thing" && !l.ofThing(words[i+1:]) || i+1 < len(words) && l.struck[w+words[i+1]] == "first" {
			return true
		}
	}
	return false
}

// Keeps says what a heading of a column that isn't one of ours says of its rows:
// "status" where cells may say that a row doesn't count, "named" where they hold names and
// may say so, "struck" where yes says so, "marked" where a mark does, "kept" where no says
// so, else nothing.
func (l *Lexicon) Keeps(heading string) string {
	switch whole := Squash(heading); l.struck[whole] {
	case "alone":
		if len(whole) < 4 { // or an abbreviation of something else
			return "marked"
		}
		return "struck"
	case "yes", "first", "thing":
		return "struck"
	case "no":
		return "kept"
	case "heading":
		return "status"
	case "column":
		return "named"
	case "cell":
		return "marked"
	}
	for _, w := range Tokens(heading) {
		if m := l.struck[w]; m == "heading" || m == "first" || m == "yes" || m == "thing" {
			return "status"
		}
	}
	return ""
}

// Counts reports a heading with a word in it that says how many.
func (l *Lexicon) Counts(heading string) bool {
	if _, ok := l.counts[Squash(heading)]; ok {
		return true
	}
	for _, w := range Tokens(heading) {
		if alone, ok := l.counts[w]; ok && !alone {
			return true
		}
	}
	return heading == "#"
}
