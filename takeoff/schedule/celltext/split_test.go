package celltext

import (
	"slices"
	"strings"
	"testing"
)

// FuzzSplit: cells are those that the strings package finds, whatever the bytes, and a line
// is plain where all of its bytes are.
func FuzzSplit(f *testing.F) {
	for _, line := range []string{"", ",", ",,", "a,b", "a,-1,,b", "tag,system,level,place,drawing", strings.Repeat("12345678,", 5), ",-,-,-,-,-,-,-", "é,ß,\x80,\xff,\x00", "a,b,c,d,\x7f", "a,b,c,d,e,\x1f\x1f", "~~~~~~~~~ "} {
		f.Add(line, byte(','))
		f.Add(line, byte('\t'))
	}
	f.Fuzz(func(t *testing.T, line string, separator byte) {
		got, plain := Split(nil, line, separator)
		if want := strings.Split(line, string([]byte{separator})); !slices.Equal(got, want) {
			t.Errorf("%q parted by %q: %q, want %q", line, separator, got, want)
		}
		if odd := strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r > '~' }); plain == odd {
			t.Errorf("%q: plain %v", line, plain)
		}
	})
}
