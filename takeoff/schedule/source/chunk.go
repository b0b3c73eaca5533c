package source

import (
	"bytes"
	"fmt"
	"hash"
	"io"
	"sort"
)

// ChunkSize is about how much of a text file is read in one go, in bytes.
var ChunkSize = 1 << 18

// Source is the text of a file in UTF-8 without a byte order mark: in memory, or
// left in the file, of which so much is read as is being worked on.
type Source struct {
	Data []byte
	Size int

	name string
	File io.ReaderAt // nil: all of it is in data
	cuts []Cut       // where chunks of the file begin, and its end
	mark int64       // length of the byte order mark

	print   hash.Hash // the fingerprint of a file, so far; nil: it is known
	printed int64     // bytes that it holds
}

// Cut is where a line begins.
type Cut struct {
	At     int
	Number int // of the line, from 1
}

// Next is where the chunk ends that begins at a cut: behind whole lines, the last
// of them without a quote if there is one near, as no text can go on behind it.
func (s *Source) Next(from Cut) Cut {
	if s.File != nil {
		return s.cuts[sort.Search(len(s.cuts), func(k int) bool { return s.cuts[k].At > from.At })]
	}
	end := from.At + wholeLines(s.Data[from.At:], sizeAt(from.At))
	return Cut{end, from.Number + bytes.Count(s.Data[from.At:end], Newline)}
}

// sizeAt is about how long the chunk is that begins here. The first is short:
// nothing is known yet that it could be read by.
func sizeAt(at int) int {
	if at == 0 {
		return ChunkSize / 16
	}
	return ChunkSize
}

// wholeLines is the length of the whole lines at the start of a text that come to
// a size.
func wholeLines(text []byte, size int) int {
	if len(text) <= size {
		return len(text)
	}
	const near = 64
	first, end := 0, size
	for range near {
		n := bytes.IndexByte(text[end:], '\n')
		if n < 0 {
			break
		}
		line := text[end:][:n]
		if end += n + 1; first == 0 {
			first = end
		} else if bytes.IndexByte(line, '"') < 0 {
			return end
		}
	}
	if first == 0 {
		return len(text)
	}
	return first
}

// Read gives the text from one place to another; room is used again for it where
// it has to be fetched.
func (s *Source) Read(from, to int, room []byte) ([]byte, error) {
	if s.File == nil {
		return s.Data[from:to], nil
	}
	if cap(room) < to-from {
		room = make([]byte, to-from)
	}
	room = room[:to-from]
	if _, err := s.File.ReadAt(room, s.mark+int64(from)); err == io.EOF {
		return nil, fmt.Errorf("%s changed while it was read; run this again", s.name)
	} else if err != nil {
		return nil, fmt.Errorf("can't read %s: %w", s.name, cause(err))
	}
	return room, nil
}

// Rows gives the text of the rows that begin between two places, and perhaps
// more: with quotes, a row may reach further than its line.
func (s *Source) Rows(from, to int) ([]byte, error) {
	if s.File == nil {
		return s.Data[from:], nil
	}
	return s.Read(from, to, nil)
}

// Took adds text that begins at a place to the fingerprint, if it is what comes next: so
// a large file isn't read once more for it.
func (s *Source) Took(from int, text []byte) {
	if s.print != nil && s.mark+int64(from) == s.printed {
		s.print.Write(text)
		s.printed += int64(len(text))
	}
}
