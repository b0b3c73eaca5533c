package units

import (
	"fmt"
	"strings"
)

// Count is a number of things in words: 1 test, 2 tests, 0 mismatches.
func Count(n int, word string) string { return fmt.Sprintf("%d %s", n, Many(n, word)) }

// Many is the word for so many things: test, tests.
func Many(n int, word string) string {
	if n == 1 || n == -1 {
		return word
	}
	for _, end := range []string{"s", "x", "z", "ch", "sh"} {
		if strings.HasSuffix(word, end) {
			return word + "es"
		}
	}
	if stem, ok := strings.CutSuffix(word, "y"); ok && stem != "" && !strings.ContainsAny(stem[len(stem)-1:], "aeiou") {
		return stem + "ies"
	}
	return word + "s"
}
