package text

import (
	"bytes"
	"io"
)

// Bold passes a text on to a terminal with its headings and the flags UNDER
// RANGE and OVER RANGE in bold. It works on whole lines that are laid out
// already, so that tables keep their widths. Close writes what is left.
type Bold struct {
	out     io.Writer
	held    []byte // of a line without its end yet
	head    bool   // in a heading, which may be several lines
	between bool   // the line before was text
}

// NewBold is a writer for a terminal that takes bold.
func NewBold(w io.Writer) *Bold { return &Bold{out: w} }

var (
	boldOn, boldOff = []byte("\x1b[1m"), []byte("\x1b[0m")
	flags           = [][]byte{[]byte("UNDER RANGE"), []byte("OVER RANGE")}
)

// Write takes text in any portions.
func (b *Bold) Write(text []byte) (int, error) {
	var out []byte
	for rest := text; len(rest) > 0; {
		end := bytes.IndexByte(rest, '\n')
		if end < 0 {
			b.held = append(b.held, rest...)
			break
		}
		out = append(b.line(out, append(b.held, rest[:end]...)), '\n')
		b.held, rest = b.held[:0], rest[end+1:]
	}
	if _, err := b.out.Write(out); err != nil {
		return 0, err
	}
	return len(text), nil
}

// Close writes a last line without its end.
func (b *Bold) Close() error {
	_, err := b.out.Write(b.line(nil, b.held))
	b.held = nil
	return err
}

// line adds a line to out. A heading stands at the left after an empty line or
// at the very beginning; a word with what it means, two spaces apart, is none.
func (b *Bold) line(out, line []byte) []byte {
	if len(line) == 0 {
		b.head, b.between = false, false
		return out
	}
	atLeft := line[0] != ' ' && !bytes.Contains(line, []byte("  "))
	b.head = atLeft && (b.head || !b.between)
	b.between = true
	if b.head {
		return append(append(append(out, boldOn...), line...), boldOff...)
	}
	for _, f := range flags {
		line = bytes.ReplaceAll(line, f, append(append(append([]byte{}, boldOn...), f...), boldOff...))
	}
	return append(out, line...)
}
