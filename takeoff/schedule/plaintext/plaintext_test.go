package plaintext

import (
	"strings"
	"testing"
)

// plainScore takes the first row for the heading row, the better the more cells
// it has.
func plainScore() func(int, []string) int {
	return func(number int, cells []string) int {
		if len(cells) < 2 || number > 1 {
			return 0
		}
		return len(cells)
	}
}

func TestSeparatorsAndDecimals(t *testing.T) {
	for _, tt := range []struct {
		text  string
		sep   rune
		comma bool
	}{
		{"a,b,c\n1,2,3\n", ',', false}, {"a;b;c\n1,5;2;3\n", ';', true}, {"a\tb\tc\n1,5\t2\t3\n", '\t', true}, {"a\tb\n1,500\t2\n", '\t', false},
		{"a|b|c\n12,25|2|3\n", '|', true}, {"a,b,c\n\"1,5\",2,3\n", ',', true}, {"a,b,c\n\"1,500\",2,3\n", ',', false}, {"a,b,c\n\"x 1,5 y\",2,3\n", ',', false},
		{"a\tb\n1,5 m\t2\n", '\t', true}, {"a\tb\nx1,5\t2\n", '\t', false},
	} {
		f := FormOf([]byte(tt.text), 10, plainScore)
		if f.Separator != tt.sep || f.CommaDecimals([]byte(tt.text)) != tt.comma {
			t.Errorf("%q: parted by %q, comma %v", tt.text, f.Separator, f.CommaDecimals([]byte(tt.text)))
		}
	}
}

func TestEncodings(t *testing.T) {
	for _, tt := range []struct{ in, out, encoding, note string }{
		{"Höhe", "Höhe", "UTF-8", ""}, {"\xef\xbb\xbfx", "x", "UTF-8 with a byte order mark", ""}, {"H\xf6he", "Höhe", "Windows-1252", "read as Windows-1252"},
		{"\xff\xfeH\x00\xf6\x00", "Hö", "UTF-16", ""}, {"a\x00b\x00c\x00d\x00", "abcd", "UTF-16", "without a byte order mark"},
	} {
		out, encoding, note, err := Decode([]byte(tt.in))
		if err != nil || string(out) != tt.out || encoding != tt.encoding || !strings.Contains(note, tt.note) || (note != "") != (tt.note != "") {
			t.Errorf("%q: %q, %s, %q %v", tt.in, out, encoding, note, err)
		}
	}
}
