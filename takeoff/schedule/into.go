package schedule

import (
	"bytes"
	"errors"
	"os"
	"runtime"
	"slices"
	"strings"

	"blankoff/takeoff"
)

// Into reads the schedule in the file path into a takeoff: what Read and
// Takeoff.Add give one after the other, with text files read and measured on all
// cores. told, if not nil, is told the number of rows so far now and then.
func Into(path string, t *takeoff.Takeoff, told func(rows int)) (Info, error) {
	return read(path, nil, newInto(t, told))
}

// IntoFrom is Into for a schedule that is in memory; see ReadFrom.
func IntoFrom(name string, data []byte, t *takeoff.Takeoff, told func(rows int)) (Info, error) {
	return readFrom(name, data, nil, newInto(t, told))
}

// into is a takeoff that is read into.
type into struct {
	takeoff *takeoff.Takeoff
	told    func(rows int)
	rows    int
	spare   []*takeoff.Batch
}

func newInto(t *takeoff.Takeoff, told func(int)) *into {
	if told == nil {
		told = func(int) {}
	}
	return &into{takeoff: t, told: told}
}

// add takes one row.
func (o *into) add(r *takeoff.Row) error {
	o.takeoff.Add(r)
	if o.rows++; o.rows%1000 == 0 {
		o.told(o.rows)
	}
	return nil
}

// batch is an empty batch.
func (o *into) batch() *takeoff.Batch {
	if n := len(o.spare); n > 0 {
		b := o.spare[n-1]
		o.spare = o.spare[:n-1]
		return b
	}
	return o.takeoff.NewBatch()
}

// chunkSize is about how much of a file is read in one go, in bytes.
var chunkSize = 1 << 18

// chunk is a stretch of whole lines of a text file that is read and measured by
// itself, as if the headings above held to its end. Where they may not, or
// something else has to be known of the rows before, it is odd: it counts for
// nothing and is read again in its turn.
type chunk struct {
	data   []byte
	number int // of its first line
	sep    byte
	specs  []spec // that it is read by
	table  table  // of its own
	batch  *takeoff.Batch
	odd    bool
	done   chan struct{}
}

// inChunks reads a text file from a line on, the first of which has the given
// number. There are no quotes in it, so that every line is a row.
func (t *table) inChunks(data []byte, number int, form textForm, o *into) error {
	o.takeoff.Expect(t.most)
	var ahead []*chunk
	for len(data) > 0 || len(ahead) > 0 {
		for len(data) > 0 && len(ahead) <= runtime.GOMAXPROCS(0) {
			size := wholeLines(data)
			c := t.chunk(data[:size], number, byte(form.sep), o)
			ahead = append(ahead, c)
			go c.work()
			number += bytes.Count(data[:size], []byte{'\n'})
			data = data[size:]
		}
		c := ahead[0]
		ahead = ahead[1:]
		<-c.done
		if err := t.takeChunk(c, form, o); err != nil {
			return err
		}
	}
	return nil
}

// readWhole is os.ReadFile, with a large file read on all cores.
func readWhole(path string, size int64) ([]byte, error) {
	if size < 1<<23 {
		return os.ReadFile(path)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data := make([]byte, size)
	parts := make(chan error, 2)
	for _, span := range [2][2]int64{{0, size / 2}, {size / 2, size}} {
		go func() {
			_, err := f.ReadAt(data[span[0]:span[1]], span[0])
			parts <- err
		}()
	}
	if err := errors.Join(<-parts, <-parts); err != nil {
		return os.ReadFile(path) // it isn't a plain file, or is being written
	}
	return data, nil
}

// wholeLines is the length of the next chunk.
func wholeLines(data []byte) int {
	if len(data) <= chunkSize {
		return len(data)
	}
	if k := bytes.IndexByte(data[chunkSize:], '\n'); k >= 0 {
		return chunkSize + k + 1
	}
	return len(data)
}

// chunk makes a chunk ready to be worked on beside the table.
func (t *table) chunk(data []byte, number int, sep byte, o *into) *chunk {
	c := &chunk{data: data, number: number, sep: sep, specs: t.specs, table: *t, batch: o.batch(), done: make(chan struct{})}
	c.table.info = &Info{}
	c.table.stray = slices.Clone(t.stray)
	if t.fresh { // a row of units may yet change them
		c.table.specs = slices.Clone(t.specs)
		c.specs = nil
	}
	c.table.row = takeoff.Row{}
	return c
}

// work reads and measures the rows of a chunk.
func (c *chunk) work() {
	defer close(c.done)
	t := &c.table
	var cells []string
	var columns []takeoff.Column
	for i := range t.specs {
		columns = append(columns, t.specs[i].column)
	}
	number := c.number - 1
	for rest := string(c.data); rest != "" && !c.odd; {
		line := rest
		if k := strings.IndexByte(rest, '\n'); k >= 0 {
			line, rest = rest[:k], rest[k+1:]
		} else {
			rest = ""
		}
		number++
		if line = strings.TrimSuffix(line, "\r"); line == "" {
			continue
		}
		cells = split(cells[:0], line, c.sep)
		t.place.Row = number
		t.row.Clear(columns, t.place)
		t.row.Most = t.most
		worded, empty := t.fill(&t.row, cells)
		if empty {
			continue
		}
		c.odd = worded && isHeadingRow(cells) >= 2 || len(t.info.Notes) > 0
		c.batch.Add(&t.row)
	}
}

// split parts a line without quotes into cells.
func split(cells []string, line string, sep byte) []string {
	start := 0
	for i := range len(line) { // cells are short: a loop is faster than a search for each
		if line[i] == sep {
			cells = append(cells, line[start:i])
			start = i + 1
		}
	}
	return append(cells, line[start:])
}

// takeChunk takes a chunk into the takeoff, or reads it again where it can't
// stand by itself.
func (t *table) takeChunk(c *chunk, form textForm, o *into) error {
	sound := len(c.table.info.Notes) == 0 && !t.fresh && len(c.specs) > 0 && len(t.specs) > 0 && &c.specs[0] == &t.specs[0]
	if !sound || c.odd {
		return t.again(c, form, o)
	}
	n := c.batch.Len()
	o.takeoff.Take(c.batch)
	o.spare = append(o.spare, c.batch)
	t.rows += n
	t.info.RowsRead += n
	o.rows += n
	o.told(o.rows)
	return nil
}

// again reads a chunk row by row.
func (t *table) again(c *chunk, form textForm, o *into) error {
	var cells []string
	number := c.number - 1
	for line := range strings.SplitSeq(strings.TrimSuffix(string(c.data), "\n"), "\n") {
		number++
		if line = strings.TrimSuffix(line, "\r"); line == "" {
			continue
		}
		cells = split(cells[:0], line, c.sep)
		if err := t.offer(number, cells, "", o.add); err != nil {
			return err
		}
	}
	return nil
}
