// Package plaintext takes text files apart as people write them: it finds out
// the encoding and what parts the cells.
package plaintext

import (
	"bytes"
	"encoding/binary"
	"errors"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
)

// Decode turns a file into UTF-8 without a byte order mark. encoding is what it
// was, note what was decided, if anything was.
func Decode(data []byte) (out []byte, encoding, note string, err error) {
	var order unicode.Endianness
	switch {
	case bytes.HasPrefix(data, []byte("\xef\xbb\xbf")):
		data, encoding = data[3:], "UTF-8 with a byte order mark"
	case bytes.HasPrefix(data, []byte("\xff\xfe")):
		return from16(data, unicode.LittleEndian, "")
	case bytes.HasPrefix(data, []byte("\xfe\xff")):
		return from16(data, unicode.BigEndian, "")
	case halfNUL(data, &order):
		return from16(data, order, "the file is read as UTF-16 without a byte order mark")
	default:
		encoding = "UTF-8"
	}
	if utf8.Valid(data) {
		return data, encoding, "", nil
	}
	if mostlyUTF8(data) {
		return bytes.ToValidUTF8(data, []byte("\ufffd")), "damaged UTF-8", "the file holds bytes that aren't UTF-8; the cells that hold them are refused", nil
	}
	out, err = charmap.Windows1252.NewDecoder().Bytes(data)
	return out, "Windows-1252", "the file isn't UTF-8 and is read as Windows-1252", err
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

func from16(data []byte, order unicode.Endianness, note string) ([]byte, string, string, error) {
	if len(data)%2 != 0 {
		return nil, "UTF-16", note, errors.New("it is UTF-16 that is cut short")
	}
	out, err := unicode.UTF16(order, unicode.UseBOM).NewDecoder().Bytes(data)
	return out, "UTF-16", note, err
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

// Controls reports whether text holds control characters, or others that
// can't be read. Eight bytes are looked at in one go: most hold none.
func Controls(data []byte) bool {
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

// OneLineEnd makes line ends of carriage returns that stand by themselves, as in
// files that went through an old program, or were put together from several.
func OneLineEnd(data []byte) []byte {
	own := false
	for i := 0; i < len(data); i++ {
		n := bytes.IndexByte(data[i:], '\r')
		if n < 0 {
			break
		}
		i += n
		end := i
		for end < len(data) && data[end] == '\r' {
			end++
		}
		if end == len(data) || data[end] != '\n' {
			if !own {
				data, own = bytes.Clone(data), true
			}
			for k := i; k < end; k++ {
				data[k] = '\n'
			}
		}
		i = end
	}
	return data
}

// Form is how a text file is written.
type Form struct {
	Separator rune
	quotes    bool // there are any
	spaced    bool // a space may stand before one
}

// separators are what may part the cells, in the order in which they are tried.
var separators = [...]rune{',', ';', '\t', '|'}

// FormOf finds out how data is written. score says how good a row is as the
// heading row, 0 for one that can't be; of the separators that gives the best
// one is taken. begin starts the search anew for each.
func FormOf(data []byte, rows int, begin func() (score func(number int, cells []string) int)) Form {
	f := Form{quotes: bytes.IndexByte(data, '"') >= 0}
	f.spaced = f.quotes && bytes.Contains(data, []byte(` "`))
	best, most := ',', 0
	for _, f.Separator = range separators {
		lines, score, last := f.Lines(data), begin(), 0
		for range rows {
			number, cells, err := lines.Next()
			if err != nil {
				break
			}
			n := score(number, cells)
			if n < last || n == last && n > 0 {
				break
			}
			if n > most {
				best, most = f.Separator, n
			}
			last = n
		}
	}
	if f.Separator = best; most == 0 {
		f.Separator = f.evenly(data, rows)
	}
	return f
}

// evenly is the separator that parts the most rows into as many cells, where none gives
// headings: the first of those that are as good.
func (f Form) evenly(data []byte, rows int) rune {
	best, most := separators[0], 0
	for _, f.Separator = range separators {
		lines, like := f.Lines(data), map[int]int{}
		for range rows {
			_, cells, err := lines.Next()
			if err != nil {
				break
			}
			if n := len(cells); n > 1 {
				if like[n]++; like[n] > most {
					best, most = f.Separator, like[n]
				}
			}
		}
	}
	return best
}

// CommaDecimals reports whether text writes decimals with a comma: a figure, a
// comma and one, two or more than three figures, in a cell by itself.
func (f Form) CommaDecimals(data []byte) bool {
	if f.Separator == ';' {
		return true
	}
	mark := byte(',')
	if f.Separator == ',' {
		mark = '"' // there are fewer of these
	}
	for at := 0; ; at++ {
		n := bytes.IndexByte(data[at:], mark)
		if n < 0 {
			return false
		}
		at += n
		if mark == '"' && quotedDecimal(data[at+1:]) || mark == ',' && decimalAt(data, at) {
			return true
		}
	}
}

// quotedDecimal reports text that begins with a figure, a comma, a figure that
// isn't one of thousands, and a quote.
func quotedDecimal(data []byte) bool {
	whole := figures(data)
	if whole == 0 || len(data) <= whole || data[whole] != ',' {
		return false
	}
	part := figures(data[whole+1:])
	end := whole + 1 + part
	return part > 0 && part != 3 && end < len(data) && data[end] == '"'
}

// decimalAt reports the comma at a place of data that stands for decimals.
func decimalAt(data []byte, at int) bool {
	from := at
	for from > 0 && data[from-1] >= '0' && data[from-1] <= '9' {
		from--
	}
	part := figures(data[at+1:])
	end := at + 1 + part
	edge := func(i int) bool { return i < 0 || i >= len(data) || bytes.IndexByte([]byte("\"\t\n\r|"), data[i]) >= 0 }
	unit := func(i int) bool { return i < len(data) && (data[i] == ' ' || data[i] == 'm' || data[i] == 'c') }
	return from < at && part > 0 && part != 3 && edge(from-1) && (edge(end) || unit(end))
}

// figures is how many figures data begins with.
func figures(data []byte) int {
	n := 0
	for n < len(data) && data[n] >= '0' && data[n] <= '9' {
		n++
	}
	return n
}
