// Package source holds the file that a schedule is read from: its bytes, or its text and how
// that is written, in memory or, if it is large, left where it is and cut into chunks.
package source

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// The largest files that are read, bytes. A row of twenty columns takes some 100
// to 150. How long a pipe is isn't known before it ends, so less of it is held.
const (
	MostFile  = 256 << 20
	mostPiped = 128 << 20
)

// TooLarge is the error of a file of more bytes than are read.
func TooLarge(name string, most int) error {
	return fmt.Errorf("%s is larger than %d MiB; split the schedule", name, most>>20)
}

// Load reads a file, or a pipe, whole, but no further than a schedule can reach. The error
// says why it can't be read.
func Load(path string) ([]byte, error) {
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
	case st.Size() > MostFile:
		return nil, TooLarge(path, MostFile)
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
	if _, err := io.Copy(b, io.LimitReader(f, MostFile+1)); err != nil {
		return nil, said(err)
	}
	if b.Len() > MostFile {
		return nil, TooLarge(path, MostFile) // it grew while it was read
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

// IsBook reports the first bytes of a workbook.
func IsBook(data []byte) bool { return bytes.HasPrefix(data, []byte("PK\x03\x04")) }

// cause is what went wrong with a file, without its name.
func cause(err error) error {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return pe.Err
	}
	return err
}

// Fingerprint is that of a file's bytes.
func Fingerprint(data []byte) string {
	h := sha256.Sum256(data)
	return hex.EncodeToString(h[:])
}

// foreign lists the first bytes of files that are taken for schedules.
var foreign = []struct{ magic, what string }{
	{"\xd0\xcf\x11\xe0", "an old .xls workbook or one with a password; save it as .xlsx without a password, or as CSV"},
	{"%PDF", "a PDF; export the schedule as .xlsx or CSV"},
	{"{\\rtf", "a text document; export the schedule as .xlsx or CSV"},
	{"\x1f\x8b", "a compressed file; unpack it first"},
}

// Strange refuses files that are taken for schedules.
func Strange(name string, data []byte) error {
	for _, f := range foreign {
		if bytes.HasPrefix(data, []byte(f.magic)) {
			return fmt.Errorf("%s is %s", name, f.what)
		}
	}
	return nil
}
