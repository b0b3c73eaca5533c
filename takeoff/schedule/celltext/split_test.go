package celltext

import (
	"slices"
	"strings"
	"testing"
)

// FuzzSplit: cells are those that the strings package finds, whatever the bytes.
func FuzzSplit(f *testing.F) {
	for _, line := range []string{"", ",", ",,", "a,b", "a,-1,,b", "tag,system,level,place,drawing", strings.Repeat("12345678,", 5), ",-,-,-,-,-,-,-", "é,ß,\x80,\xff,\x00"} {
		f.Add(line, byte(','))
		f.Add(line, byte('\t'))
	}
	f.Fuzz(func(t *testing.T, line string, separator byte) {
		if got, want := Split(nil, line, separator), strings.Split(line, string([]byte{separator})); !slices.Equal(got, want) {
			t.Errorf("%q parted by %q: %q, want %q", line, separator, got, want)
		}
	})
}
