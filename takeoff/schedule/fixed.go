package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/mapping"
)

// findFixed takes the heading rows that a map fixes, by their numbers or by
// their headings.
func (t *table) findFixed(number int, cells []string) (done bool, err error) {
	m := t.opt.Map.For(t.place.Sheet)
	f := &t.search
	n := len(m.HeadingRows)
	switch {
	case n == 0:
		if !hasAll(m, cells) {
			t.passOver(number, cells)
			return true, nil
		}
		return true, t.setFixed(m, []int{number}, [][]string{cells})
	case m.HeadingRows[0] == 0:
		return false, t.setFixed(m, []int{0}, [][]string{nil})
	case number < m.HeadingRows[n-1]:
		t.passOver(number, cells)
		return true, nil
	case number > m.HeadingRows[n-1]:
		return true, fmt.Errorf("%s: the map says that row %d holds headings, but it is blank; mend heading_rows in the map", t.place, m.HeadingRows[n-1])
	case n == 2 && f.last != nil && f.lastAt == m.HeadingRows[0]:
		f.drop()
		return true, t.setFixed(m, m.HeadingRows, [][]string{slices.Clone(f.last), cells})
	}
	return true, t.setFixed(m, m.HeadingRows[n-1:], [][]string{cells})
}

// hasAll reports a row with every heading that the map names, and at least one.
func hasAll(m *mapping.Sheet, cells []string) bool {
	named := 0
	for _, c := range m.Columns {
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

// setFixed makes the columns what the map says. A column of the map that isn't
// there is a fault.
func (t *table) setFixed(m *mapping.Sheet, rows []int, heads [][]string) error {
	typed := joined(heads)
	hs := make([]headings.Heading, len(typed))
	for i := range hs {
		hs[i] = headings.Heading{Typed: shorten(typed[i]), Verdict: headings.Unknown}
		if typed[i] == "" {
			hs[i].Verdict = headings.Blank
		}
	}
	fixed := map[int]bool{}
	at := takeoff.Place{File: t.place.File, Sheet: t.place.Sheet, Row: rows[0]}
	for _, c := range m.Columns {
		i := t.seek(c, typed)
		if i < 0 || fixed[i] {
			name := c.Heading
			if name == "" {
				name = c.At
			}
			t.info.Faults = append(t.info.Faults, at.Fault(name, name, "a column that the map names",
				fmt.Sprintf("the map names column '%s', which isn't there or stands there twice; mend the map or the heading", name)))
			continue
		}
		for len(hs) <= i {
			hs = append(hs, headings.Heading{})
		}
		h, err := c.Read()
		if err != nil {
			return err
		}
		h.Typed = hs[i].Typed
		if h.Typed == "" {
			h.Typed = "column " + mapping.Letter(i)
		}
		if fixed[i] = true; c.Is == "" {
			h = headings.Heading{Typed: h.Typed}
		}
		hs[i] = h
	}
	t.fixing = fixed
	return t.setHeadings(rows, heads, hs)
}

// seek finds the column that the map means, -1 where it isn't there or stands
// there twice.
func (t *table) seek(c mapping.Column, typed []string) int {
	if c.At != "" {
		i, _ := mapping.Number(c.At)
		if c.Heading != "" && (i >= len(typed) || !sameHeading(typed[i], c.Heading)) || i >= maxColumns {
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

// joined writes the headings of one or two rows as one: "Branch / Width".
func joined(heads [][]string) []string {
	n := 0
	for _, cells := range heads {
		n = max(n, lastFilled(cells))
	}
	out := make([]string, min(n, maxColumns))
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
