package source

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
	"unicode/utf8"

	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/plaintext"
)

// SurveyFrom is the size from which a text file is left where it is and read twice,
// first to see how it is written, instead of being held in memory; in bytes.
var SurveyFrom int64 = 4 << 20

// survey is a large text file that has been looked through.
type survey struct {
	Text
	file *os.File
	was  fs.FileInfo
}

// Surveyed looks a file through. It is nil for one that has to be held in memory:
// it isn't a plain file, is small, isn't text in UTF-8, or has quotes, between
// which a row may go on behind the end of a line.
func Surveyed(path string, lex *headings.Lexicon) *survey {
	was, err := os.Stat(path) // a pipe mustn't be opened twice
	if err != nil || !was.Mode().IsRegular() || was.Size() < SurveyFrom || was.Size() > MostFile {
		return nil
	}
	file, err := os.Open(path)
	if err != nil {
		return nil
	}
	v := &survey{file: file, was: was}
	if !v.through(lex) {
		file.Close()
		return nil
	}
	v.Source.name, v.Source.File = path, file
	return v
}

// Close ends the reading and gives the fingerprint. It is an error if the file changed
// meanwhile.
func (v *survey) Close() (sum string, err error) {
	defer v.file.Close()
	_, err = io.Copy(v.print, io.NewSectionReader(v.file, v.printed, v.was.Size()-v.printed))
	now, gone := v.file.Stat()
	if err != nil || gone != nil || now.Size() != v.was.Size() || !now.ModTime().Equal(v.was.ModTime()) {
		return "", fmt.Errorf("%s changed while it was read; run this again", v.name)
	}
	return hex.EncodeToString(v.print.Sum(nil)), nil
}

// through goes through the file and notes where its chunks begin. It reports
// whether the file can be read like that.
func (v *survey) through(lex *headings.Lexicon) bool {
	stop := make(chan struct{})
	defer close(stop)
	var rest []byte
	from, at := int64(0), Cut{0, 1}
	for next := range v.stretches(stop) {
		from += int64(len(next) - ChunkSize)
		part, last := next[ChunkSize-len(rest):], from >= v.was.Size()
		copy(part, rest)
		if v.Encoding == "" {
			if !v.begin(part, lex) {
				return false
			}
			part = part[v.mark:]
		}
		for len(part) > ChunkSize || last && len(part) > 0 {
			k := wholeLines(part, sizeAt(at.At))
			if k == len(part) && !last || !v.plain(part[:k]) {
				return false
			}
			at = Cut{at.At + k, at.Number + bytes.Count(part[:k], Newline)}
			v.cuts = append(v.cuts, at)
			part = part[k:]
		}
		rest = part
	}
	v.Size, v.Lines = at.At, at.Number-1
	return from == v.was.Size()
}

// stretches reads the file ahead, until it ends, can't be read or is to stop. Before each
// stretch there is room for what is left of the one before, of which a chunk is the most.
// A stretch holds until the next but one is asked for.
func (v *survey) stretches(stop <-chan struct{}) <-chan []byte {
	next, before := make(chan []byte), ChunkSize
	go func() {
		defer close(next)
		var rooms [3][]byte // being read, waiting, being looked through
		for k, from := 0, int64(0); from < v.was.Size(); k = (k + 1) % len(rooms) {
			if rooms[k] == nil {
				rooms[k] = make([]byte, 3*before)
			}
			n, err := v.file.ReadAt(rooms[k][before:], from)
			if n == 0 || err != nil && err != io.EOF {
				return
			}
			from += int64(n)
			select {
			case next <- rooms[k][:before+n]:
			case <-stop:
				return
			}
		}
	}()
	return next
}

// begin finds out how the file is written, by its first part.
func (v *survey) begin(part []byte, lex *headings.Lexicon) bool {
	whole := part[:bytes.LastIndexByte(part, '\n')+1]
	if Strange("", part) != nil || IsBook(part) || bytes.Count(whole, Newline) <= headrow.MaxSearch {
		return false
	}
	out, encoding, note, err := plaintext.Decode(whole)
	if err != nil || note != "" || !strings.HasPrefix(encoding, "UTF-8") || len(bytes.TrimSpace(out)) == 0 {
		return false
	}
	v.Encoding, v.mark, v.Form = encoding, int64(len(whole)-len(out)), headrow.Form(out, lex)
	v.print = sha256.New()
	v.print.Write(part[:v.mark])
	v.printed = v.mark
	return true
}

// plain looks through whole lines.
func (v *survey) plain(lines []byte) bool {
	if same := plaintext.OneLineEnd(lines); &same[0] != &lines[0] {
		return false
	}
	v.Comma = v.Comma || v.Form.CommaDecimals(lines)
	return bytes.IndexByte(lines, '"') < 0 && utf8.Valid(lines)
}
