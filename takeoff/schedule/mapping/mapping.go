// Package mapping reads and writes map files: how the columns, units and rows
// of one office's schedules are to be read, fixed for good.
package mapping

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// Map says how a schedule is to be read. A nil map says nothing.
type Map struct {
	Decimal string  `toml:"decimal,omitempty"` // comma or point; empty is found out
	Sheets  []Sheet `toml:"sheet"`
}

// Sheet says how one sheet is to be read.
type Sheet struct {
	Name        string   `toml:"name,omitempty"` // empty: every sheet that isn't named
	Skip        bool     `toml:"skip,omitempty"`
	HeadingRows []int    `toml:"heading_rows,omitempty"` // one or two; 0: there are no headings; empty: found by the headings
	SkipRows    []int    `toml:"skip_rows,omitempty"`
	SubHeadings string   `toml:"sub_headings,omitempty"` // system or level: what a row of one cell gives to the rows below
	Columns     []Column `toml:"column"`
}

// Column says what one column is.
type Column struct {
	At      string `toml:"at,omitempty"`      // its letter
	Heading string `toml:"heading,omitempty"` // or its heading
	Is      string `toml:"is"`                // heading of ours, size, size2, branch_size, or empty: not used
	Unit    string `toml:"unit,omitempty"`
	Assumed bool   `toml:"assumed,omitempty"` // nothing says the unit: a line on units still counts

	OfAll       bool `toml:"of_all,omitempty"`       // of length_mm: of all pieces of a row together
	LengthFirst bool `toml:"length_first,omitempty"` // of size_length: 1500x600x400
}

// Read reads a map file; name is its name in errors. Whatever isn't known in it
// is an error.
func Read(name string, r io.Reader) (*Map, error) {
	var m Map
	meta, err := toml.NewDecoder(r).Decode(&m)
	var bad toml.ParseError
	switch {
	case errors.As(err, &bad):
		return nil, fmt.Errorf("map file %s, line %d: %s", name, bad.Position.Line, bad.Message)
	case err != nil:
		return nil, fmt.Errorf("map file %s: %w", name, err)
	}
	if left := meta.Undecoded(); len(left) > 0 {
		return nil, fmt.Errorf("map file %s: '%s' isn't known; expected decimal, and sheet with name, skip, heading_rows, skip_rows, sub_headings and column (at, heading, is, unit, assumed, of_all, length_first)", name, left[0])
	}
	if err := m.check(); err != nil {
		return nil, fmt.Errorf("map file %s: %w", name, err)
	}
	return &m, nil
}

func (m *Map) check() error {
	if m.Decimal != "" && m.Decimal != "comma" && m.Decimal != "point" {
		return fmt.Errorf("decimal '%s': expected comma or point", m.Decimal)
	}
	if len(m.Sheets) == 0 {
		return errors.New("it names no [[sheet]]; `blankoff inspect FILE -o MAP.toml` writes one to start from")
	}
	seen := map[string]bool{}
	for i := range m.Sheets {
		s := &m.Sheets[i]
		if seen[s.Name] {
			return fmt.Errorf("sheet '%s' stands there twice", s.Name)
		}
		seen[s.Name] = true
		if err := s.check(); err != nil {
			return fmt.Errorf("sheet '%s': %w", s.Name, err)
		}
	}
	return nil
}

func (s *Sheet) check() error {
	n := len(s.HeadingRows)
	switch {
	case n > 2 || n == 2 && s.HeadingRows[1] != s.HeadingRows[0]+1 || slices.Min(append([]int{0}, s.HeadingRows...)) < 0:
		return fmt.Errorf("heading_rows %v: expected one row, or two that follow each other, or 0 where there are no headings", s.HeadingRows)
	case s.SubHeadings != "" && s.SubHeadings != "system" && s.SubHeadings != "level":
		return fmt.Errorf("sub_headings '%s': expected system or level", s.SubHeadings)
	case len(s.Columns) == 0 && len(s.HeadingRows) > 0 && !s.Skip:
		return errors.New("heading_rows need [[sheet.column]] with at or heading, and is")
	}
	used := map[string]string{}
	for _, c := range s.Columns {
		if err := c.check(n == 1 && s.HeadingRows[0] == 0); err != nil {
			return err
		}
		if before, twice := used[c.Is]; twice && c.Is != "" {
			return fmt.Errorf("%s and %s are both %s; keep one", before, c.name(), c.Is)
		}
		used[c.Is] = c.name()
	}
	return nil
}

func (c *Column) name() string {
	if c.Heading != "" {
		return "column '" + c.Heading + "'"
	}
	return "column " + c.At
}

func (c *Column) check(bare bool) error {
	_, ok := Number(c.At)
	switch {
	case c.At == "" && c.Heading == "":
		return fmt.Errorf("a column that is '%s' has neither at (its letter) nor heading", c.Is)
	case c.At != "" && !ok:
		return fmt.Errorf("at '%s': expected the letter of a column, as C or AB", c.At)
	case bare && c.At == "":
		return fmt.Errorf("%s: without headings give at, its letter", c.name())
	}
	h, err := c.Read()
	if err == nil && c.Unit != "" && h.Verdict == headings.Blank {
		err = errors.New("has a unit and isn't used")
	}
	if err != nil {
		return fmt.Errorf("%s: %w", c.name(), err)
	}
	return nil
}

// Read gives the heading that the map makes of the column; Blank where it isn't
// used.
func (c *Column) Read() (headings.Heading, error) {
	h := headings.Heading{}
	if c.Is == "" {
		return h, nil
	}
	column, of, ok := headings.Canonical(c.Is)
	if !ok {
		return h, fmt.Errorf("is '%s': that isn't a heading of ours; the second sheet of the template lists them", c.Is)
	}
	h.Verdict, h.Column, h.Size, h.Foremost = headings.Known, column, of, c.LengthFirst && of == headings.LongSize
	h.OfAll = c.OfAll && c.Is == "length_mm"
	if of != headings.NoSize {
		h.Verdict = headings.Sizes
	}
	m := column.Measure()
	h.Unit = quantity.Default(m)
	if c.Unit == "" {
		h.Said = m != takeoff.Lengths || strings.HasSuffix(c.Is, "_mm")
		return h, nil
	}
	u, ok := quantity.UnitOf(c.Unit)
	if !ok || u.Measure != m || m == takeoff.Text || m == takeoff.Count {
		return h, fmt.Errorf("unit '%s' doesn't fit %s", c.Unit, c.Is)
	}
	h.Unit, h.Said = u, !c.Assumed
	return h, nil
}
