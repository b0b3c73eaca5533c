package plaintext

import (
	"bytes"
	"slices"
)

// Spaced puts tabs between the columns of a text that are parted by two spaces and more, as
// one that was pasted or printed: every line of several such columns has to have as many. It
// reports whether it is one.
func Spaced(data []byte) ([]byte, bool) {
	columns, lines, above := 0, 0, 0
	for line := range bytes.Lines(data) {
		cells := spacedCells(line)
		switch n := len(cells); {
		case n < 2:
			if above++; lines == 0 && above > mostAbove {
				return data, false
			}
			continue
		case columns == 0:
			if columns = n; n < 3 || bytes.ContainsAny(line, ",;\t|\"0123456789") { // headings
				return data, false
			}
		case n != columns || bytes.ContainsAny(line, "\t\""):
			return data, false
		}
		lines++
	}
	if lines < 2 {
		return data, false
	}
	out := make([]byte, 0, len(data))
	for line := range bytes.Lines(data) {
		out = append(out, bytes.Join(spacedCells(line), []byte{'\t'})...)
		if bytes.HasSuffix(line, []byte{'\n'}) {
			out = append(out, '\n')
		}
	}
	return out, true
}

// mostAbove is how many lines may stand above the headings.
const mostAbove = 20

// spacedCells parts a line where two spaces and more stand.
func spacedCells(line []byte) [][]byte {
	line = bytes.TrimSpace(line)
	if !bytes.Contains(line, []byte("  ")) {
		return [][]byte{line}
	}
	cells := bytes.Split(line, []byte("  "))
	for i := range cells {
		cells[i] = bytes.TrimSpace(cells[i])
	}
	return slices.DeleteFunc(cells, func(cell []byte) bool { return len(cell) == 0 })
}
