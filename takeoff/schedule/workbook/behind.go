package workbook

import (
	"archive/zip"
	"bytes"
	"html"
	"io"
	"regexp"
	"strings"

	"blankoff/takeoff/schedule/workbook/dress"
)

// behind is what an XLSX sheet lists behind its rows and what bears on them.
type behind struct {
	merged  []merge  // cells that are merged down
	printed []string // what is printed above and below each page
}

// lookBehind looks through a sheet once before its rows are read.
func lookBehind(f *zip.File) (b behind, err error) {
	r, err := f.Open()
	if err != nil {
		return b, err
	}
	defer r.Close()
	const list, page = "mergeCells", "headerFooter"
	s := scan{from: r}
	for {
		switch s.find(list, page) {
		case 0:
			text, over := s.until(list+">", 64*mostMerges)
			if over {
				return b, errMerges
			}
			if b.merged, err = mergedDown(text); err != nil {
				return b, err
			}
		case 1:
			text, _ := s.until(page+">", mostPrinted)
			b.printed = printed(text)
			return b, nil
		default: // what is damaged the rows will tell
			return b, nil
		}
	}
}

// scan looks for tags in XML without reading it.
type scan struct {
	from  io.Reader
	block []byte
	buf   []byte // what was read and not looked at
	err   error
}

// read reads on, and keeps as many bytes of the end of what it has.
func (s *scan) read(keep int) {
	if s.block == nil {
		s.block = make([]byte, 1<<17)
	}
	kept := copy(s.block, s.buf[max(0, len(s.buf)-keep):])
	n, err := io.ReadFull(s.from, s.block[kept:])
	s.buf, s.err = s.block[:kept+n], err
}

// find goes on behind the next of the names that begins a tag, and gives its number; -1:
// there is none.
func (s *scan) find(names ...string) int {
	for {
		which, at := -1, 0
		for i, name := range names {
			if found := tagAt(s.buf, name); found >= 0 && (which < 0 || found < at) {
				which, at = i, found
			}
		}
		if which >= 0 {
			s.buf = s.buf[at+len(names[which]):]
			return which
		}
		if s.err != nil {
			return -1
		}
		s.read(32)
	}
}

// until gives what stands before the end of an element, and goes on behind it; nothing where
// that doesn't come. over reports that it is longer than it may be.
func (s *scan) until(end string, most int) (text []byte, over bool) {
	out := bytes.Clone(s.buf)
	from := 0
	for {
		if i := bytes.Index(out[from:], []byte(end)); i >= 0 {
			s.buf = out[from+i+len(end):]
			return out[:from+i], false
		}
		if s.buf = nil; s.err != nil || len(out) > most {
			return nil, len(out) > most
		}
		s.read(0)
		from = max(0, len(out)-len(end))
		out = append(out, s.buf...)
	}
}

// tagAt finds where a tag's name begins, which may have a prefix; -1: nowhere.
func tagAt(b []byte, name string) int {
	for from := 0; ; {
		i := bytes.Index(b[from:], []byte(name))
		if i < 0 {
			return -1
		}
		if from += i; from > 0 && (b[from-1] == '<' || b[from-1] == ':') {
			return from
		}
		from += len(name)
	}
}

// mostPrinted is how long the list of what is printed on each page may be, bytes: programs
// take 255 characters for each of six.
const mostPrinted = 1 << 14

// pageText is one of these, and pageCode what isn't text in it (ECMA-376 part 1, 18.3.1.46):
// fonts, sizes, colours, page numbers. The parts at the left, in the middle and at the right
// begin with a code of their own.
var (
	pageText = regexp.MustCompile(`<(?:\w+:)?(?:odd|even|first)(?:Header|Footer)\b[^>]*>([^<]+)<`)
	pagePart = regexp.MustCompile(`&[LCR]`)
	pageCode = regexp.MustCompile(`&"[^"]*"|&\d{1,3}|&K[0-9A-Fa-f]{6}|&K\d\d[+-]\d{3}|&[A-Z]`)
)

// printed reads what is printed on each page.
func printed(list []byte) (out []string) {
	for _, m := range pageText.FindAllSubmatch(list, -1) {
		for _, part := range pagePart.Split(dress.Unescape(html.UnescapeString(string(m[1]))), -1) {
			if text := strings.TrimSpace(strings.ReplaceAll(pageCode.ReplaceAllString(part, ""), "&&", "&")); text != "" {
				out = append(out, text)
			}
		}
	}
	return out
}
