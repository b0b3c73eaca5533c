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
	mostText = 1 << 30
	mostBook = 256 << 20 // a workbook may hold pictures
)

// mostNotes is how much is noted of a file; mostHeads, how often other headings may
// start in a sheet.
const (
	mostNotes = 200
	mostHeads = 500
)

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
		return nil, fmt.Errorf("%s is a folder; name a schedule file (CSV, XLSX or ODS)", path)
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
