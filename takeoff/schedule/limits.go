package schedule

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// The largest files that are read, bytes. A row of twenty columns takes some 100
// to 150. How long a pipe is isn't known before it ends, so less of it is held.
const (
	mostFile  = 256 << 20
	mostPiped = 128 << 20
)

// mostNotes is how much is noted of a file.
const mostNotes = 200

// mostHeads is how often other headings may start in a sheet.
const mostHeads = 500

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
	case st.Size() > mostFile:
		return nil, tooLarge(path, mostFile)
	}
	if !st.Mode().IsRegular() {
		data, err := readPipe(f)
		if err != nil {
			return nil, said(err)
		}
		if len(data) > mostPiped {
			return nil, fmt.Errorf("%s is a pipe with more than %d MiB; save it as a file, or split the schedule", path, mostPiped>>20)
		}
		return data, nil
	}
	b := bytes.NewBuffer(make([]byte, 0, st.Size()+bytes.MinRead))
	if _, err := io.Copy(b, io.LimitReader(f, mostFile+1)); err != nil {
		return nil, said(err)
	}
	if b.Len() > mostFile {
		return nil, tooLarge(path, mostFile) // it grew while it was read
	}
	return b.Bytes(), nil
}

// readPipe reads to the end of a pipe, or one byte past the most that is read of it.
// It is read in pieces: a buffer that grows would be held twice.
func readPipe(f io.Reader) ([]byte, error) {
	const piece = 1 << 20
	var pieces [][]byte
	for left := mostPiped + 1; left > 0; {
		b := make([]byte, min(piece, left))
		n, err := io.ReadFull(f, b)
		pieces = append(pieces, b[:n])
		left -= n
		if err == io.EOF || err == io.ErrUnexpectedEOF {
			break
		}
		if err != nil {
			return nil, err
		}
	}
	return bytes.Join(pieces, nil), nil
}

// isBook reports the first bytes of a workbook.
func isBook(data []byte) bool { return bytes.HasPrefix(data, []byte("PK\x03\x04")) }
