package schedule

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// The largest files that are read, bytes. A row of twenty columns takes some 150.
const (
	mostText = 48 << 20
	mostBook = 256 << 20 // a workbook may hold pictures
)

// mostNotes is how much is noted of a file; mostHeads and mostRepeats, how often
// other headings may start in a sheet, and stand again.
const (
	mostNotes   = 200
	mostHeads   = 500
	mostRepeats = 10_000
)

// mostRow is the longest row of a text file, bytes.
const mostRow = 1 << 20

func tooLarge(name string, most int) error {
	return fmt.Errorf("%s is larger than %d MiB; split the schedule", name, most>>20)
}

// readWhole reads a file, or a pipe, no further than a schedule can reach.
func readWhole(path string) ([]byte, error) {
	said := func(err error) error {
		if pe := (*fs.PathError)(nil); errors.As(err, &pe) {
			err = pe.Err
		}
		return fmt.Errorf("can't read %s: %w", path, err)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, said(err)
	}
	defer f.Close()
	st, err := f.Stat()
	switch {
	case err != nil:
		return nil, said(err)
	case st.IsDir():
		return nil, fmt.Errorf("%s is a folder; name a schedule file (CSV or XLSX)", path)
	case st.Size() > mostBook:
		return nil, tooLarge(path, mostBook)
	}
	most, size := mostText, min(st.Size(), mostText)
	var start [4]byte
	n, err := io.ReadFull(f, start[:])
	if err != nil && err != io.EOF && err != io.ErrUnexpectedEOF {
		return nil, said(err)
	}
	if isBook(start[:n]) && st.Mode().IsRegular() {
		most, size = mostBook, st.Size()
	}
	b := bytes.NewBuffer(make([]byte, 0, size+bytes.MinRead))
	b.Write(start[:n])
	if _, err := io.Copy(b, io.LimitReader(f, int64(most-n+1))); err != nil {
		return nil, said(err)
	}
	if b.Len() > most {
		return nil, tooLarge(path, most)
	}
	return b.Bytes(), nil
}

// isBook reports the first bytes of a workbook.
func isBook(data []byte) bool { return bytes.HasPrefix(data, []byte("PK\x03\x04")) }

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
