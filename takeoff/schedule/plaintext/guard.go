package plaintext

import (
	"fmt"
	"io"
)

// mostRow is the longest row of a text file, bytes.
const mostRow = 1 << 20

// longRow passes text on, but of each row no more than a row may have.
type longRow struct {
	from         io.Reader
	handed, most int64
}

// allow begins a row at this place; a reader may fetch a little in advance.
func (g *longRow) allow(at int64) { g.most = at + mostRow }

func (g *longRow) Read(b []byte) (int, error) {
	if g.handed >= g.most {
		return 0, fmt.Errorf("the row is longer than %d KiB; close a quote that is left open, or break the line", mostRow>>10)
	}
	n, err := g.from.Read(b[:min(int64(len(b)), g.most-g.handed)])
	g.handed += int64(n)
	return n, err
}
