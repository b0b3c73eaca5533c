package quantity

import (
	"fmt"
	"unicode"
)

// strange names a character of a cell that isn't what it looks like, or can't be seen,
// where there is one: more helps nobody who only sees 600. Else it gives the trouble
// that was found.
func strange(text, trouble string) string {
	for _, r := range text {
		switch {
		case unicode.Is(unicode.Cf, r), unicode.IsControl(r) && r != '\n' && r != '\r' && r != '\t':
			return fmt.Sprintf("holds the character U+%04X, which can't be seen; type the cell anew", r)
		case r > unicode.MaxASCII && unicode.IsDigit(r):
			return fmt.Sprintf("holds the figure U+%04X, which isn't one of 0 to 9; type the cell anew", r)
		}
	}
	return trouble
}
