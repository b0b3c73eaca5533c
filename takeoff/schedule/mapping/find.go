package mapping

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"blankoff/takeoff"
)

// For is what the map says of a sheet, or nil.
func (m *Map) For(sheet string) *Sheet {
	if m == nil {
		return nil
	}
	var rest *Sheet
	for i := range m.Sheets {
		switch m.Sheets[i].Name {
		case sheet:
			return &m.Sheets[i]
		case "":
			rest = &m.Sheets[i]
		}
	}
	return rest
}

// Fixes reports whether the map fixes the columns of a sheet.
func (m *Map) Fixes(sheet string) bool {
	s := m.For(sheet)
	return s != nil && len(s.Columns) > 0
}

// Skips reports a row that the map passes over.
func (m *Map) Skips(sheet string, row int) bool {
	if m == nil {
		return false
	}
	s := m.For(sheet)
	return s != nil && slices.Contains(s.SkipRows, row)
}

// SubHeading is what a row of one cell gives to the rows below, where the map
// says so.
func (m *Map) SubHeading(sheet string) (takeoff.Column, bool) {
	s := m.For(sheet)
	switch {
	case s == nil || s.SubHeadings == "":
		return 0, false
	case s.SubHeadings == "level":
		return takeoff.Level, true
	}
	return takeoff.System, true
}

// Unmet lists the sheets that the map names and the file hasn't got.
func (m *Map) Unmet(sheets []string) (out []string) {
	if m == nil {
		return nil
	}
	for _, s := range m.Sheets {
		if s.Name != "" && !slices.Contains(sheets, s.Name) {
			out = append(out, s.Name)
		}
	}
	return out
}

// Letter is the letter of a column, from 0: A, B, ... Z, AA.
func Letter(i int) string {
	var b []byte
	for i++; i > 0; i = (i - 1) / 26 {
		b = append(b, byte('A'+(i-1)%26))
	}
	slices.Reverse(b)
	return string(b)
}

// Number is the column of a letter, from 0.
func Number(letter string) (int, bool) {
	n := 0
	for _, r := range strings.ToUpper(letter) {
		if r < 'A' || r > 'Z' || n > 1000 {
			return 0, false
		}
		n = n*26 + int(r-'A') + 1
	}
	return n - 1, n > 0
}

// HasAll reports a row with every heading that the map names, and at least one.
func (s *Sheet) HasAll(cells []string) bool {
	named := 0
	for _, c := range s.Columns {
		if c.Heading == "" {
			continue
		}
		if named++; !slices.ContainsFunc(cells, func(cell string) bool { return sameHeading(cell, c.Heading) }) {
			return false
		}
	}
	return named > 0
}

func sameHeading(a, b string) bool {
	return strings.EqualFold(strings.Join(strings.Fields(a), " "), strings.Join(strings.Fields(b), " "))
}

// Seek finds the column that the map means, -1 where it isn't there or stands
// there twice.
func (c *Column) Seek(typed []string) int {
	if c.At != "" {
		i, _ := Number(c.At)
		if c.Heading != "" && (i >= len(typed) || !sameHeading(typed[i], c.Heading)) {
			return -1
		}
		return i
	}
	found := -1
	for i := range typed {
		if sameHeading(typed[i], c.Heading) {
			if found >= 0 {
				return -1
			}
			found = i
		}
	}
	return found
}

// Joined writes the headings of one or two rows as one, at most limit of them: "Branch / Width".
func Joined(heads [][]string, limit int) []string {
	n := 0
	for _, cells := range heads {
		n = max(n, len(cells))
	}
	out := make([]string, min(n, limit))
	over := ""
	for i := range out {
		low := cellAt(heads[len(heads)-1], i)
		out[i] = low
		if len(heads) == 1 {
			continue
		}
		up := cellAt(heads[0], i)
		switch {
		case low == "":
			over, out[i] = "", up
			continue
		case up != "":
			over = up
		}
		if over != "" {
			out[i] = over + " / " + low
		}
	}
	return out
}

// cellAt is a cell without outer white space; cells beyond the last are blank.
func cellAt(cells []string, i int) string {
	if i < len(cells) {
		return strings.TrimSpace(cells[i])
	}
	return ""
}

// Write writes the map with a word on how to edit it.
func (m *Map) Write(w io.Writer) error {
	_, err := fmt.Fprint(w, `# How a schedule is read. Give it with --map. Columns that aren't named here aren't used.
# is: a heading of ours (blankoff kinds and the template list them), size, size2 or branch_size; empty: not used.
# heading_rows = [0]: there are no headings. skip_rows: rows to pass over. sub_headings: "system" or "level".
# assumed: nothing in the file says the unit; take the word out once you know that it is right.
# of_all: the length is of all pieces of a row together. length_first: a whole size begins with it, as 1500x600x400.

`)
	if err == nil {
		err = toml.NewEncoder(w).Encode(m)
	}
	return err
}
