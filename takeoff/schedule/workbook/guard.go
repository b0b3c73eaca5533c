package workbook

import (
	"bufio"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
)

// What the XML of a workbook may be. A cell holds at most 32,767 characters (the
// application's limit, ECMA-376 names none), six bytes each when written as
// character references.
const (
	maxDepth = 64       // elements inside each other; real workbooks have some twenty
	maxRun   = 1 << 20  // bytes of one text, one tag or one comment
	maxIdle  = 16 << 20 // bytes of sheets without a filled row
	perRow   = 8 << 10  // more of them for each filled row
	maxRest  = 64 << 20 // bytes of a part after what is read of it
	maxParts = 20_000   // of the file
	maxSheet = 1000     // sheets
	mostKept = 1100     // columns: more than a schedule may have
)

var (
	errDeep   = fmt.Errorf("its elements lie more than %d deep in each other", maxDepth)
	errLong   = fmt.Errorf("it has a text of more than %d KiB in one piece", maxRun>>10)
	errRest   = fmt.Errorf("it goes on for more than %d MiB behind what counts of it", maxRest>>20)
	errNoRows = limit("is far larger than its filled rows explain; delete the empty rows and cells between and below the filled ones, or copy these to a new workbook")
)

// limit is what a sheet has more of than is read, and what to do. The sheet is sound.
type limit string

func (l limit) Error() string { return string(l) }

// Unread says why a sheet at a place couldn't be read to its end, and what to do.
func Unread(place string, err error) error {
	if l := limit(""); errors.As(err, &l) {
		return fmt.Errorf("%s %w", place, l)
	}
	return fmt.Errorf("%s is damaged (%w); save it again", place, err)
}

// guard passes XML on and counts how deep its elements lie and how long its
// pieces are, before a decoder has to keep either in memory. It needn't tell
// good XML from bad: the decoder does.
type guard struct {
	from  io.Reader
	count *int64 // bytes of sheets so far; nil where they aren't counted
	most  *int64

	depth, run int
	in         byte // 't' a tag, 'q' a quoted value of one, '!' a declaration; 0 text
	quote      byte
	head       [2]byte // of the tag after <
	n          int     // of head
	tail       [2]byte // what was read last
}

func (g *guard) Read(b []byte) (int, error) {
	n, err := g.from.Read(b)
	if e := g.look(b[:n]); e != nil {
		return 0, e
	}
	if g.count != nil {
		if *g.count += int64(n); *g.count > *g.most {
			return 0, errNoRows
		}
	}
	return n, err
}

func (g *guard) look(b []byte) error {
	for _, c := range b {
		if g.run++; g.run > maxRun {
			return errLong
		}
		switch {
		case g.in == 0 && c == '<':
			g.in, g.n, g.run = 't', 0, 0
		case g.in == 0:
		case g.in == 'q':
			if c == g.quote {
				g.in = 't'
			}
		case c == '>':
			g.close()
		case g.in == 't' && (c == '"' || c == '\''):
			g.in, g.quote = 'q', c
		case g.n < 2:
			g.head[g.n] = c
			if g.n++; g.n == 1 && c == '!' {
				g.in = '!' // comments, CDATA and DTDs hold no elements
			}
		}
		if g.tail = [2]byte{g.tail[1], c}; g.depth > maxDepth {
			return errDeep
		}
	}
	return nil
}

// close ends a tag, a comment or CDATA, if this > does.
func (g *guard) close() {
	switch {
	case g.in == '!' && (g.head[1] == '-' && g.tail != [2]byte{'-', '-'} || g.head[1] == '[' && g.tail != [2]byte{']', ']'}):
		return
	case g.in == '!' || g.head[0] == '?':
	case g.head[0] == '/':
		g.depth--
	case g.tail[1] != '/':
		g.depth++
	}
	g.in, g.run = 0, 0
}

// decoder reads the XML of a part as far as it is sound.
func decoder(r io.Reader) *xml.Decoder { return xml.NewDecoder(&guard{from: r}) }

// sheetDecoder is the same for sheets, which all together may not be much larger
// than their filled rows explain. raw is where it reads from.
func (w *File) sheetDecoder(r io.Reader) (raw *bufio.Reader, dec *xml.Decoder) {
	if w.most == 0 {
		w.most = maxIdle
	}
	raw = bufio.NewReader(&guard{from: r, count: &w.read, most: &w.most})
	return raw, xml.NewDecoder(raw)
}

// drain reads a part to its end, where its checksum is: what was read before it
// may be spoilt.
func drain(part io.Reader) error {
	n, err := io.Copy(io.Discard, io.LimitReader(part, maxRest))
	if n == maxRest {
		return errRest
	}
	return err
}
