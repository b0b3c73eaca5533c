package wording

import (
	"regexp"
	"strings"
)

// Overstruck reports a text that is struck out letter by letter, by strokes that combine with
// the letter before them: U+0335 to U+0338.
func Overstruck(text string) bool {
	for i := strings.IndexByte(text, 0xcc); i >= 0; {
		if i+1 < len(text) && text[i+1] >= 0xb5 && text[i+1] <= 0xb8 {
			return true
		}
		next := strings.IndexByte(text[i+1:], 0xcc)
		if next < 0 {
			return false
		}
		i += next + 1
	}
	return false
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
		apart = true
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
