package wording

import (
	"regexp"
	"strings"
	"unicode"
)

// Overstruck reports a text that is struck out letter by letter, by strokes that combine with
// the letter before them: U+0335 to U+0338. A letter or two among many may be so written.
func Overstruck(text string) bool {
	if strings.IndexByte(text, 0xcc) < 0 {
		return false
	}
	strokes, letters := 0, 0
	for _, r := range text {
		switch {
		case r >= 0x335 && r <= 0x338:
			strokes++
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			letters++
		case unicode.IsMark(r): // of a script
			return false
		}
	}
	return strokes > 0 && strokes >= letters
}

// htmlStruck is a text that is struck out as on a page.
var htmlStruck = regexp.MustCompile(`(?i)^<(?:s|del|strike)>`)

// SetApart reports a tag in brackets, or behind a sign that makes a line one of remarks: (2),
// [D2], #2, ; 2.
func SetApart(tag string) bool {
	n := len(tag) - 1
	if n < 1 {
		return false
	}
	apart := false
	switch tag[0] {
	case '(':
		apart = tag[n] == ')'
	case '[':
		apart = tag[n] == ']'
	case '{':
		apart = tag[n] == '}'
	case '#', ';', '!':
		apart = PlainTag(strings.TrimLeft(tag[1:], " "))
	}
	return apart && strings.ContainsAny(tag, "0123456789")
}

// StruckTag reports a tag between signs that strike it out, as in a chat: ~D2~, -D2-, ~~D2~~,
// or behind two of them.
func StruckTag(tag string) bool {
	if strings.HasPrefix(tag, "~~") || strings.HasPrefix(tag, "//") || Overstruck(tag) {
		return true
	}
	if tag[0] == '<' && htmlStruck.MatchString(tag) {
		return true
	}
	n := len(tag) - 1
	return n > 1 && tag[0] == tag[n] && strings.IndexByte("~-=/", tag[0]) >= 0
}
