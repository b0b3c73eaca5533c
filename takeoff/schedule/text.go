package schedule

import (
	"bytes"
	"encoding/binary"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"blankoff/takeoff"
)

// readText reads a text file: it finds out the encoding and what parts the
// cells, then hands every line to the table.
func (info *Info) readText(data []byte, each func(*takeoff.Row) error) error {
	data, err := info.decode(data)
	if err != nil {
		return fmt.Errorf("%s can't be read as text: %w; save it as CSV in UTF-8", info.File, err)
	}
	if len(bytes.TrimSpace(data)) == 0 {
		return fmt.Errorf("%s is empty; `blankoff template -o FILE.xlsx` writes a workbook to fill in", info.File)
	}
	if bytes.IndexByte(data, '\n') < 0 {
		data = bytes.ReplaceAll(data, []byte("\r"), []byte("\n"))
	}
	form := textForm{quotes: bytes.IndexByte(data, '"') >= 0}
	form.spaced = form.quotes && bytes.Contains(data, []byte(` "`))
	form.sep = form.separator(data)
	t := &table{info: info, place: takeoff.Place{File: info.File}, ragged: true,
		commaFile: form.sep == ';', suspect: controls(data), most: bytes.Count(data, []byte{'\n'})}
	lines := form.lines(data)
	for {
		number, cells, err := lines.next()
		if err == io.EOF {
			break
		}
		if err != nil {
			return fmt.Errorf("%s, row %d: %w", info.File, number, err)
		}
		if err := t.offer(number, cells, lines.broken(), each); err != nil {
			return err
		}
		if t.noHeading {
			break
		}
		if info.into != nil && t.specs != nil && !t.fresh && !form.quotes {
			return t.inChunks(data[lines.end:], number+1, form, info.into)
		}
	}
	if t.specs == nil {
		return noHeadingRow(t.place.String(), len(t.above), t.first)
	}
	return nil
}

// noHeadingRow is the error of a file without a heading row.
func noHeadingRow(where string, rows int, first string) error {
	return fmt.Errorf("%s has no heading row in its first %d rows (the first reads '%s'); "+
		"a heading row names kind or a size (width_mm, height_mm, diameter_mm, length_mm) and at least one more column, as tag or quantity; "+
		"`blankoff template -o FILE.xlsx` writes a workbook with all headings", where, rows, first)
}

// decode turns the file into UTF-8 without a byte order mark.
func (info *Info) decode(data []byte) ([]byte, error) {
	var order unicode.Endianness
	switch {
	case bytes.HasPrefix(data, []byte("\xef\xbb\xbf")):
		data = data[3:]
	case bytes.HasPrefix(data, []byte("\xff\xfe")):
		return info.utf16(data, unicode.LittleEndian)
	case bytes.HasPrefix(data, []byte("\xfe\xff")):
		return info.utf16(data, unicode.BigEndian)
	case halfNUL(data, &order):
		info.note("the file is read as UTF-16 without a byte order mark")
		return info.utf16(data, order)
	}
	if utf8.Valid(data) {
		return data, nil
	}
	if mostlyUTF8(data) {
		info.note("the file holds bytes that aren't UTF-8; the cells that hold them are refused")
		return bytes.ToValidUTF8(data, []byte("\ufffd")), nil
	}
	info.note("the file isn't UTF-8 and is read as Windows-1252")
	return charmap.Windows1252.NewDecoder().Bytes(data)
}

// mostlyUTF8 reports damaged UTF-8: most of what isn't ASCII is right. Text in
// Windows-1252 hardly ever looks so.
func mostlyUTF8(data []byte) bool {
	good, bad := 0, 0
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			bad++
		case size > 1:
			good++
		}
		i += size
	}
	return good > bad
}

func (info *Info) utf16(data []byte, order unicode.Endianness) ([]byte, error) {
	if len(data)%2 != 0 {
		return nil, errors.New("it is UTF-16 that is cut short")
	}
	return unicode.UTF16(order, unicode.UseBOM).NewDecoder().Bytes(data)
}

// halfNUL reports text in which every other byte is NUL: UTF-16 without a
// byte order mark.
func halfNUL(data []byte, order *unicode.Endianness) bool {
	head := data[:min(len(data), 200)&^1]
	var odd, even int
	for i, c := range head {
		switch {
		case c == 0 && i%2 == 1:
			odd++
		case c == 0:
			even++
		}
	}
	*order = unicode.LittleEndian
	if even > odd {
		*order = unicode.BigEndian
	}
	return len(head) >= 4 && min(odd, even) == 0 && max(odd, even) >= len(head)*2/5
}

// controls reports whether text holds control characters, or others that
// can't be read. Eight bytes are looked at in one go: most hold none.
func controls(data []byte) bool {
	const ones, tops = 0x0101010101010101, 0x8080808080808080
	i := 0
	for ; i+8 <= len(data); i += 8 {
		x := binary.LittleEndian.Uint64(data[i:])
		if del := x ^ 0x7f*ones; (x-0x20*ones)&^x&tops == 0 && (del-ones)&^del&tops == 0 && x&tops == 0 {
			continue
		}
		for _, c := range data[i : i+8] {
			if oddByte(c) {
				return true
			}
		}
	}
	for _, c := range data[i:] {
		if oddByte(c) {
			return true
		}
	}
	return false
}

// oddByte reports a byte that may be part of a character that can't be read:
// a control, or the first byte of U+0080 to U+009F or of U+FFFD in UTF-8.
func oddByte(c byte) bool {
	return c < 0x20 && c != '\n' && c != '\r' && c != '\t' || c == 0x7f || c == 0xc2 || c == 0xef
}

// textForm is how a text file is written.
type textForm struct {
	sep    rune
	quotes bool // there are any
	spaced bool // a space may stand before one
}

// separator finds what parts the cells: the sign under which the best heading
// row comes out.
func (f textForm) separator(data []byte) rune {
	best, most := ',', 0
	for _, f.sep = range [...]rune{',', ';', '\t', '|'} {
		lines := f.lines(data)
		for range maxSearch {
			_, cells, err := lines.next()
			if err != nil {
				break
			}
			if n := isHeadingRow(cells); n > 0 {
				if n > most {
					best, most = f.sep, n
				}
				break
			}
		}
	}
	return best
}

// lines reads the rows of a text file.
type lines struct {
	data       []byte
	form       textForm
	csv        *csv.Reader
	start, end int64 // of the last row
}

func (f textForm) lines(data []byte) *lines {
	return &lines{data: data, form: f, csv: f.reader(data, true)}
}

// reader reads a file as people write them: inch marks needn't be quoted, rows
// may be of any length, and a space may follow the separator.
func (f textForm) reader(data []byte, lazy bool) *csv.Reader {
	r := csv.NewReader(bytes.NewReader(data))
	r.Comma = f.sep
	r.LazyQuotes = lazy
	r.FieldsPerRecord = -1
	r.TrimLeadingSpace = f.spaced && f.sep != '\t'
	r.ReuseRecord = true
	return r
}

// next is the next row that isn't empty and the line on which it starts.
func (l *lines) next() (number int, cells []string, err error) {
	l.start = l.end
	cells, err = l.csv.Read()
	l.end = l.csv.InputOffset()
	if err != nil {
		return 0, nil, err
	}
	number, _ = l.csv.FieldPos(0)
	return number, cells, nil
}

// broken says what is wrong with the quotes of the last row. A quote that is
// never closed swallows the rows below it, so a row of several lines, and the
// last one, must read the same by the strict rules (RFC 4180).
func (l *lines) broken() string {
	if !l.form.quotes {
		return ""
	}
	raw := l.data[l.start:l.end]
	if n := bytes.IndexByte(raw, '\n'); (n < 0 || n == len(raw)-1) && l.end < int64(len(l.data)) || bytes.IndexByte(raw, '"') < 0 {
		return ""
	}
	_, err := l.form.reader(raw, false).Read()
	bare := errors.Is(err, csv.ErrBareQuote) && strings.Contains(strings.TrimSpace(string(raw)), "\n")
	if errors.Is(err, csv.ErrQuote) || bare {
		return "a quote in this row isn't closed, so it may have swallowed rows below; close it, or write inches as 24 in"
	}
	return ""
}
