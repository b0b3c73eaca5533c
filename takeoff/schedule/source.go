package schedule

import (
	"bytes"
	"fmt"
	"io"
	"sort"
)

// chunkSize is about how much of a text file is read in one go, in bytes.
var chunkSize = 1 << 18

// source is the text of a file in UTF-8 without a byte order mark: in memory, or
// left in the file, of which so much is read as is being worked on.
type source struct {
	data []byte
	size int

	name string
	file io.ReaderAt // nil: all of it is in data
	cuts []cut       // where chunks of the file begin, and its end
	mark int64       // length of the byte order mark
}

// cut is where a line begins.
type cut struct {
	at     int
	number int // of the line, from 1
}

// next is where the chunk ends that begins at a cut: behind whole lines, the last
// of them without a quote if there is one near, as no text can go on behind it.
func (s *source) next(from cut) cut {
	if s.file != nil {
		return s.cuts[sort.Search(len(s.cuts), func(k int) bool { return s.cuts[k].at > from.at })]
	}
	end := from.at + wholeLines(s.data[from.at:], sizeAt(from.at))
	return cut{end, from.number + bytes.Count(s.data[from.at:end], newline)}
}

// sizeAt is about how long the chunk is that begins here. The first is short:
// nothing is known yet that it could be read by.
func sizeAt(at int) int {
	if at == 0 {
		return chunkSize / 16
	}
	return chunkSize
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

// read gives the text from one place to another; room is used again for it where
// it has to be fetched.
func (s *source) read(from, to int, room []byte) ([]byte, error) {
	if s.file == nil {
		return s.data[from:to], nil
	}
	if cap(room) < to-from {
		room = make([]byte, to-from)
	}
	room = room[:to-from]
	if _, err := s.file.ReadAt(room, s.mark+int64(from)); err == io.EOF {
		return nil, fmt.Errorf("%s changed while it was read; run this again", s.name)
	} else if err != nil {
		return nil, fmt.Errorf("can't read %s: %w", s.name, cause(err))
	}
	return room, nil
}

// rows gives the text of the rows that begin between two places, and perhaps
// more: with quotes, a row may reach further than its line.
func (s *source) rows(from, to int) ([]byte, error) {
	if s.file == nil {
		return s.data[from:], nil
	}
	return s.read(from, to, nil)
}
