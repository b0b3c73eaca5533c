package text

import (
	"bufio"
	"bytes"
	"io"
	"math"
	"strings"
)

// width is the widest line, columns. gap parts the columns of a table.
const (
	width = 110
	gap   = 2
	// deepest is the most lines a cell may take; what is longer is cut.
	deepest = 8
)

// Align is how the cells of a column stand.
type Align uint8

// The alignments.
const (
	Left  Align = iota
	Right       // numbers
	Point       // numbers with unlike decimals, point under point
)

// Column is a column of a table.
type Column struct {
	Head  string
	Align Align
	// Max is the greatest width; a longer cell is wrapped. Zero: what is left
	// of the line in the last column, any width in the others.
	Max int
	// Whole columns are never cut, however many lines a cell takes.
	Whole bool
}

// Table writes an aligned table, indented by two. rows is called twice, first to
// measure and then to write, and must give the same rows both times, so that a
// long table needs no memory. A column that is empty throughout is left out.
func Table(w io.Writer, columns []Column, rows func(row func(cells ...string))) error {
	b := bufio.NewWriter(w)
	writeTable(b, columns, rows)
	return b.Flush()
}

// layout is a table's widths.
type layout struct {
	columns []Column
	wide    []int
	before  []int // of the point, in Point columns
	after   []int // the point and what follows it
	any     bool

	parts [][]string // of the row at work: the lines of its cells
	row   []byte     // a line of it
}

func writeTable(b *bufio.Writer, columns []Column, rows func(row func(cells ...string))) {
	n := len(columns)
	l := &layout{columns: columns, wide: make([]int, n), before: make([]int, n), after: make([]int, n), parts: make([][]string, n)}
	rows(l.measure)
	if !l.any {
		return
	}
	l.settle()
	heads := make([]string, len(columns))
	for i, c := range columns {
		heads[i] = c.Head
	}
	l.line(b, heads, true)
	rows(func(cells ...string) { l.line(b, cells, false) })
}

// measure takes a row's cells into the widths.
func (l *layout) measure(cells ...string) {
	l.any = true
	for i, c := range cells {
		c = clean(c)
		l.wide[i] = max(l.wide[i], columnsOf(c))
		if l.columns[i].Align == Point && c != "" {
			whole, rest := atPoint(c)
			l.before[i], l.after[i] = max(l.before[i], len(whole)), max(l.after[i], len(rest))
		}
	}
}

// settle makes room for the headings, in one line as far as there is room for
// that, and fits the table into the line.
func (l *layout) settle() {
	full, used, last := make([]int, len(l.wide)), 0, 0
	for i, c := range l.columns {
		if l.wide[i] == 0 {
			continue
		}
		last = i
		n := max(l.wide[i], l.before[i]+l.after[i])
		if c.Max > 0 {
			n = min(n, c.Max)
		}
		l.wide[i], full[i] = n, max(n, columnsOf(c.Head))
		for _, word := range strings.Fields(c.Head) {
			l.wide[i] = max(l.wide[i], columnsOf(word))
		}
		used += gap + l.wide[i]
	}
	for i, n := range full {
		if more := n - l.wide[i]; used+more <= width {
			l.wide[i], used = max(n, l.wide[i]), used+max(0, more)
		}
	}
	l.giveWay(used-width, last)
}

// giveWay takes what is too much from the widest columns of text that may be
// wrapped, the last one first. Numbers are never wrapped.
func (l *layout) giveWay(over, last int) {
	const least, leastOfLast = 8, 20
	if l.columns[last].Align == Left {
		n := min(max(0, over), max(0, l.wide[last]-leastOfLast))
		l.wide[last], over = l.wide[last]-n, over-n
	}
	for ; over > 0; over-- {
		widest := -1
		for i, c := range l.columns {
			if c.Max > 0 && l.wide[i] > least && (widest < 0 || l.wide[i] > l.wide[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			return
		}
		l.wide[widest]--
	}
}

// line writes one row, on as many lines as its longest cell needs.
func (l *layout) line(b *bufio.Writer, cells []string, head bool) {
	parts := l.parts
	deep := 1
	for i := range parts {
		parts[i] = parts[i][:0]
	}
	for i, c := range cells {
		if l.wide[i] == 0 {
			continue
		}
		if c = clean(c); l.columns[i].Align == Point && !head && c != "" {
			_, rest := atPoint(c)
			c += strings.Repeat(" ", l.after[i]-len(rest))
			parts[i] = append(parts[i], c)
			continue
		}
		most := deepest
		if l.columns[i].Whole {
			most = math.MaxInt
		}
		parts[i] = wrapOnto(parts[i], c, l.wide[i], most)
		deep = max(deep, len(parts[i]))
	}
	if head { // headings stand on their columns
		for i, p := range parts {
			if len(p) > 0 {
				parts[i] = append(make([]string, deep-len(p)), p...)
			}
		}
	}
	for k := range deep {
		l.put(b, k)
	}
}

// put writes the k-th line of the parts of a row.
func (l *layout) put(b *bufio.Writer, k int) {
	l.row = l.row[:0]
	for i, wide := range l.wide {
		if wide == 0 {
			continue
		}
		text := ""
		if k < len(l.parts[i]) {
			text = l.parts[i][k]
		}
		l.row = append(l.row, strings.Repeat(" ", gap)...)
		room := strings.Repeat(" ", max(0, wide-columnsOf(text)))
		if l.columns[i].Align != Left {
			l.row = append(l.row, room...)
		}
		if l.row = append(l.row, text...); l.columns[i].Align == Left {
			l.row = append(l.row, room...)
		}
	}
	b.Write(bytes.TrimRight(l.row, " "))
	b.WriteByte('\n')
}

func atPoint(s string) (whole, rest string) {
	if i := strings.IndexByte(s, '.'); i >= 0 {
		return s[:i], s[i:]
	}
	return s, ""
}
