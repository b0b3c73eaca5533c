package celltext

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// NumbersColumns reports a row of nothing but the numbers or letters of its columns, in
// order, four and more: 1, 2, 3; (a), (b), (c); Col 1, Col 2. lettered says that they are
// letters.
func NumbersColumns(cells []string) (numbers, lettered bool) {
	n := 0
	for i := range cells {
		cell := Trim(cells[i])
		if cell == "" {
			continue
		}
		if len(cell) > 10 { // most rows
			return false, false
		}
		label := strings.ToLower(strings.Trim(cell, "()[]. "))
		for _, word := range [...]string{"column", "col"} {
			label = strings.TrimLeft(strings.TrimPrefix(label, word), ". ")
		}
		letter := n < 26 && label == string(rune('a'+n))
		if !letter && label != strconv.Itoa(n+1) || n > 0 && letter != lettered {
			return false, false
		}
		lettered = letter
		n++
	}
	return n > 3, lettered
}

// Unnumbered is a row of headings without the numbers or letters before them, where three
// and more stand there in order: 1. Tag, 2. Width (mm); (a) Tag, (b) Width. Any other row is
// given back as it is.
func Unnumbered(cells []string) []string {
	first := slices.IndexFunc(cells, func(c string) bool {
		return strings.Trim(c, "( [\t") != "" && strings.IndexByte("1aA", strings.TrimLeft(c, "( [\t")[0]) >= 0
	})
	if first < 0 || len(cells) > 100 { // most rows
		return cells
	}
	for _, letters := range [...]bool{false, true} {
		out, n := slices.Clone(cells), 0
		for i := range cells {
			if name, ok := afterLabel(Trim(cells[i]), n, letters); ok {
				out[i] = name
				n++
			}
		}
		if n > 2 && !slices.ContainsFunc(out, func(c string) bool { c = Trim(c); return c != "" && Digit(c[0]) }) {
			return out
		}
	}
	return cells
}

// afterLabel is what stands behind the label of the nth heading, from 0, with a sign between
// them, or white space behind a number.
func afterLabel(cell string, n int, letters bool) (name string, ok bool) {
	label := strconv.Itoa(n + 1)
	if letters {
		if label = string(rune('a' + n)); n > 25 {
			return "", false
		}
	}
	bare := strings.TrimLeft(cell, "([")
	if len(bare) <= len(label) || !strings.EqualFold(bare[:len(label)], label) {
		return "", false
	}
	rest := bare[len(label):]
	name = strings.TrimLeft(rest, ".):]- ")
	signs := rest[:len(rest)-len(name)]
	if signs == "" || letters && !strings.ContainsAny(signs, ".):]") {
		return "", false
	}
	r, _ := utf8.DecodeRuneInString(name)
	return name, unicode.IsLetter(r) || r == 'Ø' || r == '⌀' || r == '∅'
}
