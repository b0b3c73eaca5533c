package main

import (
	"fmt"
	"io"
	"unicode"
	"unicode/utf8"
)

// calm passes text on with what would steer a terminal or turn its lines about
// written out: names and keys of files may hold anything. Line ends and tabs stay.
type calm struct {
	out  io.Writer
	part []byte // of a letter that isn't complete yet
}

func (c *calm) Write(b []byte) (int, error) {
	if len(c.part) == 0 && readable(b) {
		return c.out.Write(b)
	}
	text := append(c.part, b...)
	var out []byte
	for len(text) > 0 {
		if !utf8.FullRune(text) {
			break
		}
		r, size := utf8.DecodeRune(text)
		switch {
		case r == '\n' || r == '\t' || r == '\r' || !steers(r):
			out = append(out, text[:size]...)
		case r < 0x100:
			out = fmt.Appendf(out, "\\x%02x", r)
		default:
			out = fmt.Appendf(out, "\\u%04x", r)
		}
		text = text[size:]
	}
	c.part = append([]byte(nil), text...)
	if _, err := c.out.Write(out); err != nil {
		return 0, err
	}
	return len(b), nil
}

// readable reports whether a text is letters of one byte and line ends only, as most
// are.
func readable(b []byte) bool {
	for _, c := range b {
		if (c < ' ' || c > '~') && c != '\n' {
			return false
		}
	}
	return true
}

// steers reports controls, and marks that turn the direction of a line (Unicode
// Standard Annex 9, explicit formatting characters).
func steers(r rune) bool {
	return unicode.IsControl(r) || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069
}

// IsTerminal reports whether the text goes to a terminal.
func (c *calm) IsTerminal() bool { return isTerminal(c.out) }
