package schedule

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// isHeadingRow reports how many columns are known in a row that can be the
// heading row: at least two, one of them the kind or a size. Else 0.
func isHeadingRow(cells []string) int {
	count, telling := 0, false
	var seen [takeoff.NumColumns]bool
	for i, cell := range cells {
		if i >= maxColumns || len(cell) > 100 {
			continue
		}
		h := readHeading(cell)
		if h.verdict != known && h.verdict != near {
			continue
		}
		d, isSize := h.column.Dim()
		telling = telling || h.column == takeoff.Kind || isSize && d <= fittings.Length
		if !seen[h.column] {
			seen[h.column] = true
			count++
		}
	}
	if !telling || count < 2 {
		return 0
	}
	return count
}

// search looks for the heading row.
func (t *table) search(number int, cells []string) error {
	if t.noHeading {
		return nil
	}
	if isHeadingRow(cells) > 0 {
		return t.setHeadings(number, cells)
	}
	text := strings.Join(strings.Fields(strings.Join(cells, " ")), " ")
	if text == "" {
		return nil
	}
	if t.above = append(t.above, number); t.first == "" {
		t.first = shorten(text)
	}
	t.noHeading = len(t.above) >= maxSearch
	return nil
}

// setHeadings maps the columns of the heading row once for all rows below it.
func (t *table) setHeadings(number int, cells []string) error {
	if len(cells) > maxColumns {
		last := len(cells) - 1
		for last > 0 && trim(cells[last]) == "" {
			last--
		}
		if cells = cells[:last+1]; len(cells) > maxColumns {
			return fmt.Errorf("%s has %d columns; a schedule has at most %d", t.place, len(cells), maxColumns)
		}
	}
	if len(t.above) > 0 {
		t.note("%s above the headings passed over: '%s'", rowsWord(t.above), t.first)
		t.above = nil
	}
	t.place.Row = number
	t.fresh = true
	t.specs = make([]spec, len(cells))
	for i, cell := range cells {
		h := readHeading(cell)
		s := &t.specs[i]
		*s = spec{heading: h, used: h.verdict == known, commaFile: t.commaFile}
		if !s.used {
			continue
		}
		s.measure = h.column.Measure()
		s.max = largest(s.measure)
		d, isSize := h.column.Dim()
		s.signed = isSize && (d == fittings.OffsetShift || d == fittings.OffsetShift2 || d == fittings.BranchShift)
		s.diameter = isSize && (d == fittings.Diameter || d == fittings.Diameter2 || d == fittings.BranchDiameter)
	}
	t.refuseTwins()
	t.doubtDepth()
	t.report()
	return nil
}

// refuse takes a column out of use and says why.
func (t *table) refuse(s *spec, expected, message string) {
	s.used = false
	t.info.Faults = append(t.info.Faults, t.place.Fault(s.typed, s.typed, expected, message))
}

// refuseTwins refuses columns that mean the same; of several note columns the
// first is used.
func (t *table) refuseTwins() {
	var at [takeoff.NumColumns][]int
	for i := range t.specs {
		if t.specs[i].used {
			at[t.specs[i].column] = append(at[t.specs[i].column], i)
		}
	}
	for c, twins := range at {
		if len(twins) < 2 {
			continue
		}
		column := takeoff.Column(c)
		if column == takeoff.Note {
			for _, i := range twins[1:] {
				t.specs[i].used = false
				t.note("column '%s' is a second note column and isn't used", t.specs[i].typed)
			}
			continue
		}
		names := make([]string, len(twins))
		for k, i := range twins {
			names[k] = fmt.Sprintf("'%s' (column %d)", t.specs[i].typed, i+1)
		}
		t.refuse(&t.specs[twins[0]], "one column for "+column.Heading(),
			strings.Join(names, " and ")+" both mean "+column.Heading()+", so none of them is used; rename or remove all but one")
		for _, i := range twins[1:] {
			t.specs[i].used = false
		}
	}
}

// doubtDepth refuses a bare D beside a width without a height: it may be the
// depth.
func (t *table) doubtDepth() {
	for i := range t.specs {
		s := &t.specs[i]
		if s.used && tokens(s.typed)[0] == "d" && t.maps(takeoff.DimColumn(fittings.Width)) && !t.maps(takeoff.DimColumn(fittings.Height)) {
			t.refuse(s, "height_mm or diameter_mm",
				"'"+s.typed+"' may be the depth or the diameter, so it isn't used; rename it height_mm or diameter_mm")
		}
	}
}

// maps reports whether a column of the file is used for c.
func (t *table) maps(c takeoff.Column) bool {
	return slices.ContainsFunc(t.specs, func(s spec) bool { return s.used && s.column == c })
}

// report turns what was found in the heading row into faults and notes.
func (t *table) report() {
	for i := range t.specs {
		s := &t.specs[i]
		canonical := s.column.Heading()
		switch s.verdict {
		case known:
			t.noteReading(s)
		case near:
			t.refuse(s, canonical, fmt.Sprintf("'%s' isn't a known heading, so the column isn't used; did you mean %s? rename it if so", s.typed, canonical))
		case misfit:
			t.refuse(s, canonical, fmt.Sprintf("'%s' says %s, which doesn't fit, so the column isn't used; write %s", s.typed, s.unit.name, canonical))
		case asks:
			t.question(s)
		case unknown:
			t.note("column '%s' isn't used", s.typed)
		}
	}
}

// noteReading says how a heading with two readings was read, where it names a
// unit and so counts as the canonical one, but isn't written like it.
func (t *table) noteReading(s *spec) {
	if !s.used || strings.EqualFold(s.typed, s.column.Heading()) {
		return
	}
	words := tokens(s.typed)
	switch {
	case words[0] == "radius":
		t.note("column '%s' is read as radius_mm, to the centre line; write throat_mm for the inside radius", s.typed)
	case words[0] == "area":
		t.note("column '%s' is read as area_m2, areas given instead of sizes; write stated_area_m2 for figures to check", s.typed)
	}
}

// question asks about a heading with more than one reading.
func (t *table) question(s *spec) {
	for _, columns := range s.ask.settled {
		if !slices.ContainsFunc(columns, func(c takeoff.Column) bool { return !t.maps(c) }) {
			t.note("column '%s' isn't used", s.typed)
			return
		}
	}
	why := s.ask.why
	if why == "" {
		why = "has more than one meaning"
	}
	t.refuse(s, s.ask.ask, fmt.Sprintf("'%s' %s, so the column isn't used; write %s", s.typed, why, s.ask.ask))
}

// noteUnits says which columns are read in a unit that nobody stated.
func (t *table) noteUnits() {
	for _, m := range [...]takeoff.Measure{takeoff.Lengths, takeoff.Areas, takeoff.Pressure} {
		var names []string
		for _, s := range t.specs {
			if s.used && !s.said && s.measure == m {
				names = append(names, "'"+s.typed+"'")
			}
		}
		if len(names) > 0 {
			t.note("no unit is given for %s: read as %s", strings.Join(names, ", "), defaultUnit(m).name)
		}
	}
}

// rowsWord writes a list of row numbers in words: "row 4", "rows 1 to 3".
func rowsWord(rows []int) string {
	n := len(rows)
	switch {
	case n == 1:
		return fmt.Sprintf("row %d", rows[0])
	case rows[n-1]-rows[0] == n-1:
		return fmt.Sprintf("rows %d to %d", rows[0], rows[n-1])
	}
	return fmt.Sprintf("%d rows from %d to %d", n, rows[0], rows[n-1])
}
