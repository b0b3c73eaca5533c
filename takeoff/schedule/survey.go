package schedule

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
	"blankoff/takeoff/schedule/plaintext"
)

// surveyFrom is the size from which a text file is left where it is and read twice,
// first to see how it is written, instead of being held in memory; in bytes.
var surveyFrom int64 = 4 << 20

// survey is a large text file that has been looked through.
type survey struct {
	text
	file *os.File
	was  fs.FileInfo
	sum  chan string // its fingerprint; empty: it couldn't be read
}

// surveyed looks a file through. It is nil for one that has to be held in memory:
// it isn't a plain file, is small, isn't text in UTF-8, or has quotes, between
// which a row may go on behind the end of a line.
func surveyed(path string, lex *headings.Lexicon) *survey {
	was, err := os.Stat(path) // a pipe mustn't be opened twice
	if err != nil || !was.Mode().IsRegular() || was.Size() < surveyFrom || was.Size() > mostFile {
		return nil
	}
	file, err := os.Open(path)
	if err != nil {
		return nil
	}
	v := &survey{file: file, was: was, sum: make(chan string, 1)}
	go v.fingerprint()
	if !v.through(lex) {
		file.Close()
		return nil
	}
	v.source.name, v.source.file = path, file
	return v
}

// fingerprint works out the fingerprint of the file; a file that is closed
// meanwhile has none.
func (v *survey) fingerprint() {
	h := sha256.New()
	if _, err := io.Copy(h, io.NewSectionReader(v.file, 0, v.was.Size())); err != nil {
		v.sum <- ""
		return
	}
	v.sum <- hex.EncodeToString(h.Sum(nil))
}

// close ends the reading. It is an error if the file changed meanwhile.
func (v *survey) close(info *Info) error {
	defer v.file.Close()
	info.SHA256 = <-v.sum
	now, err := v.file.Stat()
	if err != nil || info.SHA256 == "" || now.Size() != v.was.Size() || !now.ModTime().Equal(v.was.ModTime()) {
		return fmt.Errorf("%s changed while it was read; run this again", v.name)
	}
	return nil
}

// through goes through the file and notes where its chunks begin. It reports
// whether the file can be read like that.
func (v *survey) through(lex *headings.Lexicon) bool {
	room := make([]byte, 2*chunkSize)
	held, from, at := 0, int64(0), cut{0, 1}
	for from < v.was.Size() {
		n, err := v.file.ReadAt(room[held:], from)
		if n == 0 || err != nil && err != io.EOF {
			return false
		}
		from += int64(n)
		part, last := room[:held+n], from >= v.was.Size()
		if v.encoding == "" {
			if !v.begin(part, lex) {
				return false
			}
			part = part[v.mark:]
		}
		for len(part) > chunkSize || last && len(part) > 0 {
			k := wholeLines(part, sizeAt(at.at))
			if k == len(part) && !last || !v.plain(part[:k]) {
				return false
			}
			at = cut{at.at + k, at.number + bytes.Count(part[:k], newline)}
			v.cuts = append(v.cuts, at)
			part = part[k:]
		}
		held = copy(room, part)
	}
	v.size, v.lines = at.at, at.number-1
	return from == v.was.Size()
}

// begin finds out how the file is written, by its first part.
func (v *survey) begin(part []byte, lex *headings.Lexicon) bool {
	whole := part[:bytes.LastIndexByte(part, '\n')+1]
	if strange("", part) != nil || isBook(part) || bytes.Count(whole, newline) <= maxSearch {
		return false
	}
	out, encoding, note, err := plaintext.Decode(whole)
	if err != nil || note != "" || !strings.HasPrefix(encoding, "UTF-8") || len(bytes.TrimSpace(out)) == 0 {
		return false
	}
	v.encoding, v.mark, v.form = encoding, int64(len(whole)-len(out)), formOf(out, lex)
	return true
}

// plain looks through whole lines.
func (v *survey) plain(lines []byte) bool {
	if same := plaintext.OneLineEnd(lines); &same[0] != &lines[0] {
		return false
	}
	v.comma = v.comma || v.form.CommaDecimals(lines)
	return bytes.IndexByte(lines, '"') < 0 && utf8.Valid(lines)
}
