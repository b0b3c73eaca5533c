package workbook

import (
	"bufio"
	"bytes"
	"errors"
	"io"
)

// maxEmpty is how many bytes of empty rows are looked through in all the sheets of a
// workbook.
const maxEmpty = 256 << 20

var errTwice = errors.New("its rows lie in two lists of rows")

// rest reads a sheet to its end behind the rows, where its checksum is: what was read
// before may be spoilt. There is no second list of rows.
func (sr *Rows) rest() error {
	tags := sr.tags(maxRest)
	for {
		name, err := tags.next()
		switch {
		case err == errLeft:
			return errRest
		case err != nil:
			return err
		case string(name) == "sheetData":
			return errTwice
		}
	}
}

// onlyEmpty ends a sheet in which only empty rows follow, which are too many to be read
// one by one.
func (sr *Rows) onlyEmpty() error {
	tags := sr.tags(maxEmpty - sr.book.empty)
	begun := tags.left
	rows := true
	for {
		name, err := tags.next()
		sr.book.empty += begun - tags.left
		begun = tags.left
		switch {
		case err == io.EOF && rows:
			return io.ErrUnexpectedEOF // the end of sheetData comes before
		case err == errLeft:
			return errNoRows
		case err != nil:
			return err
		case rows && fills(name):
			return errNoRows
		case string(name) == "/sheetData":
			rows = false
		case string(name) == "sheetData":
			return errTwice
		}
	}
}

// fills reports the name of an element that a filled cell has.
func fills(name []byte) bool {
	switch string(name) {
	case "v", "is", "f", "t":
		return true
	}
	return false
}

// tags finds the tags of so many bytes from where the decoder has come to.
func (sr *Rows) tags(left int64) *tagReader {
	read, _ := sr.raw.Peek(sr.raw.Buffered())
	return &tagReader{from: bufio.NewReader(io.MultiReader(bytes.NewReader(read), sr.part)), left: left}
}

var errLeft = errors.New("too much")

// tagReader finds the tags of XML without looking at what else is in it.
type tagReader struct {
	from *bufio.Reader
	left int64 // bytes that may be read yet
	name [16]byte
}

// next gives the name of the next tag, without prefix and no longer than it matters; that
// of a tag that closes with /. io.EOF ends the part.
func (t *tagReader) next() ([]byte, error) {
	if err := t.skip('<'); err != nil {
		return nil, err
	}
	n := 0
	for {
		c, err := t.from.ReadByte()
		if err != nil {
			return nil, err
		}
		t.left--
		switch {
		case c == ':' && n > 0 && t.name[0] == '/':
			n = 1
		case c == ':':
			n = 0
		case c == '>' || c <= ' ' || c == '/' && n > 0:
			return t.name[:n], nil
		case n == len(t.name):
			return nil, nil
		default:
			t.name[n] = c
			n++
		}
	}
}

// skip reads up to a sign and over it.
func (t *tagReader) skip(sign byte) error {
	for {
		b, err := t.from.ReadSlice(sign)
		t.left -= int64(len(b))
		switch {
		case t.left < 0:
			return errLeft
		case err != bufio.ErrBufferFull:
			return err
		}
	}
}
