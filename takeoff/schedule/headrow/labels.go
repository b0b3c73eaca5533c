package headrow

import (
	"unicode/utf8"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
)

// mostLabelled is how many cells a row of labels with what they say has.
const mostLabelled = 6

// Labelled reports a row of labels, each with what it says in the cell behind it, as stand
// above headings: Class | B, Material | GI | System | S1. Labels are of what bears on no size,
// and one of what they say is a letter or has a number, so it is no row of headings.
func Labelled(lex *headings.Lexicon, cells []string) bool {
	filled := celltext.Filled(cells)
	if n := len(filled); n == 0 || n%2 != 0 || n > mostLabelled {
		return false
	}
	told := false
	for k := 0; k < len(filled); k += 2 {
		label, said := celltext.Trim(cells[filled[k]]), celltext.Trim(cells[filled[k+1]])
		if filled[k+1] != filled[k]+1 || len(label) > 100 || len(said) > 100 || celltext.HasDigit(label) || !labels(lex, label) {
			return false
		}
		letter := utf8.RuneCountInString(said) == 1
		if !letter && heads(lex, said) {
			return false
		}
		told = told || letter || celltext.HasDigit(said)
	}
	return told
}

// labels reports a heading that bears on no size and names no piece.
func labels(lex *headings.Lexicon, label string) bool {
	switch h := lex.Read(label); h.Verdict {
	case headings.Known:
		_, isSize := h.Column.Dim()
		return !isSize && h.Column != takeoff.Tag && h.Column != takeoff.Kind && h.Column != takeoff.Quantity && h.Column != takeoff.Shape && h.Column != takeoff.Style
	case headings.Asks:
		return h.Ask.Pressures() || h.Ask.Units()
	}
	return lex.Unused(headings.Squash(label))
}

// heads reports a text that is a heading, or stands over several.
func heads(lex *headings.Lexicon, text string) bool {
	switch lex.Read(text).Verdict {
	case headings.Known, headings.Sizes, headings.Asks:
		return true
	}
	key := headings.Squash(text)
	return lex.Over(text) != "" || lex.Unused(key) || lex.Dimension(key)
}
