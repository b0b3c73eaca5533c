package schedule

import (
	"bytes"
	"io"
	"runtime"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/plaintext"
	"blankoff/takeoff/schedule/source"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
)

// longLine is the length from which a line is looked at by itself: there is a
// bound on it.
const longLine = 1 << 16

// chunk is a stretch of lines of a text file that is read and measured beside
// others, as if all that was known above it held to its end. Where it may not
// hold, or something has to be told or remembered of its rows, the chunk is odd:
// it counts for nothing, and its lines are read again in their turn.
type chunk struct {
	start, end source.Cut
	source     *source.Source
	form       plaintext.Form
	table      table // of its own
	batch      *takeoff.Batch
	columns    []takeoff.Column
	heads      *columns.Spec // the first of the columns that it is read by; nil: not known
	data       []byte        // its text
	room       []byte        // to read it into
	doubtful   []bool        // of the names that its batch has met
	doubts     bool          // some are
	odd        bool
	err        error
	done       chan struct{}
}

// chunks reads a text file in chunks.
type chunks struct {
	*table
	text  *source.Text
	each  func(*takeoff.Row) error
	at    source.Cut // where the first row is that isn't taken yet
	ahead []*chunk
	spare []*chunk
	alone int // so many chunks are read row by row before others are begun
	pause int // how many that was the last time
}

// inChunks reads the lines of a text file, many at once.
func (t *table) inChunks(x *source.Text, each func(*takeoff.Row) error) error {
	s := &chunks{table: t, text: x, each: each, at: source.Cut{At: 0, Number: 1}}
	t.Suspect = true // of what is read row by row; chunks look for themselves
	defer s.drop()
	for s.at.At < x.Size && !t.Search.Failed {
		if s.alone > 0 || t.fresh || t.repeated || t.TwoTables || t.unitsAt == s.at.Number-1 || len(t.Specs) == 0 {
			s.alone = max(0, s.alone-1)
			if err := s.oneByOne(x.Next(s.at).At); err != nil {
				return err
			}
			continue
		}
		s.begin()
		c := s.ahead[0]
		s.ahead = s.ahead[1:]
		<-c.done
		s.spare = append(s.spare, c)
		if err := s.takeIn(c); err != nil {
			return err
		}
	}
	return nil
}

// begin begins chunks, one more than there are cores.
func (s *chunks) begin() {
	s.info.into.takeoff.Expect(s.most)
	at := s.at
	if n := len(s.ahead); n > 0 {
		at = s.ahead[n-1].end
	}
	for at.At < s.text.Size && len(s.ahead) <= runtime.GOMAXPROCS(0) {
		c := s.chunk()
		c.start, c.end = at, s.text.Next(at)
		s.ahead = append(s.ahead, c)
		go c.work()
		at = c.end
	}
}

// chunk is one to be filled, with a table that knows what this one knows.
func (s *chunks) chunk() *chunk {
	var c *chunk
	if n := len(s.spare); n > 0 {
		c, s.spare = s.spare[n-1], s.spare[:n-1]
	} else {
		c = &chunk{source: &s.text.Source, form: s.text.Form, batch: s.info.into.takeoff.NewBatch()}
	}
	t := &c.table
	if c.heads != &s.Specs[0] {
		c.heads = &s.Specs[0]
		*t = *s.table
		t.Separate()
		c.columns = t.Touched()
		t.row = takeoff.Row{}
	}
	t.info = &Info{}
	t.Again(&s.Reader, &t.info.Findings)
	c.odd, c.err, c.done = false, nil, make(chan struct{})
	if c.batch.Reset(); len(c.batch.Names()) == 0 { // they were forgotten
		c.doubtful, c.doubts = c.doubtful[:0], false
	}
	return c
}

// work reads and measures the rows of a chunk.
func (c *chunk) work() {
	defer close(c.done)
	defer func() { c.odd = c.odd || c.doubtfulNames() }()
	data, err := c.source.Read(c.start.At, c.end.At, c.room)
	if err != nil {
		c.err = err
		return
	}
	if c.data = data; c.source.File != nil {
		c.room = data
	}
	if bytes.IndexByte(data, '"') < 0 {
		c.plainly(string(data))
		return
	}
	c.table.Suspect = plaintext.Controls(data)
	lines := c.form.Lines(data)
	for !c.odd {
		number, cells, err := lines.Next()
		if err == io.EOF {
			break
		}
		if c.odd = err != nil; !c.odd {
			c.row(c.start.Number-1+number, cells, c.table.broken(lines, cells), lines.Raw())
		}
	}
	c.odd = c.odd || !lines.Closed()
}

// plainly reads lines without quotes.
func (c *chunk) plainly(text string) {
	var cells []string
	separator := byte(c.form.Separator)
	for number, rest := c.start.Number, text; rest != "" && !c.odd; number++ {
		at := len(text) - len(rest)
		line, below, _ := strings.Cut(rest, "\n")
		rest = below
		if line = strings.TrimSuffix(line, "\r"); line == "" {
			continue
		}
		if c.odd = len(line) > longLine; c.odd {
			return
		}
		var plain bool
		cells, plain = celltext.Split(cells[:0], line, separator)
		c.table.Suspect = !plain && plaintext.Controls(c.data[at:at+len(line)])
		c.row(number, cells, "", c.data[at:at+len(line)])
	}
}

// row reads one row that isn't empty.
func (c *chunk) row(number int, cells []string, broken string, raw []byte) {
	t := &c.table
	t.Place.Row = number
	r := &t.row
	r.Clear(c.columns, t.Place)
	r.Most = t.most
	if !t.joins {
		r.Mark = celltext.Mark(raw)
	}
	worded, empty := t.Fill(r, cells, nil)
	if empty && broken == "" {
		return
	}
	again := func() bool { _, ok := t.OtherHeads(cells); return ok || t.Repeats(cells) }
	if c.odd = broken == "" && (worded && again() || t.mayBeAside(r) && t.maybeAside(cells, r)) || t.ByMap.Skips(t.Place.Sheet, number); c.odd {
		return
	}
	t.Settle(r, broken)
	t.Look.Class(told.PieceRow, number, cells)
	if c.batch.Add(r); t.Moved {
		r.Clear(items.Elsewhere, t.Place)
		t.Moved = false
	}
	c.odd = len(t.info.Notes) > 0 || len(t.Found.Faults) > 0 || t.Long > 0 || t.NewUnit || t.Unsure
}

// takeIn takes what a chunk has found, or reads its lines again.
func (s *chunks) takeIn(c *chunk) error {
	switch {
	case c.err != nil:
		return c.err
	case c.odd:
		s.drop() // they were begun without what it holds
		s.pause = min(2*s.pause+1, 127)
		s.alone = s.pause
		return s.oneByOne(c.end.At)
	}
	s.pause = 0
	t := &c.table
	s.Merge(&t.Reader, c.batch.Len())
	if x, found := &s.Look.Classes[told.PieceRow], t.Look.Classes[told.PieceRow]; x.Count == 0 {
		*x = found
	} else {
		x.Count += found.Count
	}
	s.count(c.batch.Len())
	s.at = c.end
	s.text.Took(c.start.At, c.data)
	return s.info.into.take(c.batch, s.most)
}

// oneByOne reads the rows that begin before a place row by row.
func (s *chunks) oneByOne(end int) error {
	data, err := s.text.Rows(s.at.At, end)
	if err != nil {
		return err
	}
	lines, read := s.text.Form.Lines(data), 0
	at := s.at.At
	s.Below = func(n int) [][]string { return s.text.RowsFrom(at+lines.Read(), n) }
	for s.at.At+read < end && !s.Search.Failed {
		number, cells, err := lines.Next()
		if err == io.EOF {
			read = len(data)
			break
		}
		number += s.at.Number - 1
		if err != nil {
			return s.info.unread(number, err)
		}
		if !s.joins {
			s.mark = celltext.Mark(lines.Raw())
		}
		if err := s.offer(number, cells, s.broken(lines, cells), nil, s.each); err != nil {
			return err
		}
		read = lines.Read()
	}
	s.text.Took(s.at.At, data[:read])
	s.at = source.Cut{At: s.at.At + read, Number: s.at.Number + bytes.Count(data[:read], source.Newline)}
	return nil
}

// drop waits for the chunks that were begun and makes nothing of them.
func (s *chunks) drop() {
	for _, c := range s.ahead {
		<-c.done
		s.spare = append(s.spare, c)
	}
	s.ahead = nil
}

// doubtfulNames reports that the chunk has met a name that may be no name of a system or
// level: its rows are looked at one by one then.
func (c *chunk) doubtfulNames() bool {
	names := c.batch.Names()
	for _, name := range names[len(c.doubtful):] {
		is, _ := wording.Name(c.table.Lex, name)
		doubt := is != wording.IsName || wording.AnyLevel(name)
		c.doubtful, c.doubts = append(c.doubtful, doubt), c.doubts || doubt
	}
	return c.doubts && c.batch.Meets(c.doubtful)
}
