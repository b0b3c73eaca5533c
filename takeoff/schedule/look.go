package schedule

import (
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/schedule/told"
)

// Map makes a map that reads a schedule as it was read, to be edited.
func (info *Info) Map() *mapping.Map {
	m := &mapping.Map{}
	for _, s := range info.Sheets {
		x := mapping.Sheet{Name: s.Name, HeadingRows: s.Headings, Skip: len(s.Headings) == 0}
		for _, c := range s.Columns {
			y := mapping.Column{At: c.Letter, Heading: c.Typed, Is: c.Reads, Unit: c.Unit, Assumed: c.Unit != "" && c.Why == told.AssumedUnit}
			if len(s.Headings) == 1 && s.Headings[0] == 0 {
				y.Heading = ""
			}
			x.Columns = append(x.Columns, y)
		}
		m.Sheets = append(m.Sheets, x)
	}
	return m
}

// describe takes over how the columns were read. Where headings start anew
// further down, the first ones stay.
func (t *table) describe(rows []int) {
	s := t.look
	if len(s.Headings) > 0 {
		return
	}
	s.Headings = rows
	t.refresh()
	for i, row := range rows {
		if row > 0 {
			s.Class(told.HeadingRow, row, t.heads[i])
		}
	}
}

// refresh takes over the columns as they are read now.
func (t *table) refresh() {
	s := t.look
	s.Columns = nil
	for i := range t.specs {
		p := &t.specs[i]
		c := told.Column{Letter: mapping.Letter(i), Typed: p.Typed, Settled: p.settled, Hidden: i < len(s.HiddenColumns) && s.HiddenColumns[i]}
		if p.used {
			c.Reads = reads(p)
			c.Spread, c.Asked = p.Verdict == headings.Known && spreads(p.to()) || p.Verdict == headings.Sizes, p.doubtful()
			if c.Unit, c.Why = unitWhy(p); p.settled && c.Why == "" {
				c.Why = "its cells"
			}
		} else {
			c.Why = whyNot(p)
		}
		s.Columns = append(s.Columns, c)
	}
	for n := len(s.Columns); n > 0 && s.Columns[n-1].Typed == ""; n-- {
		s.Columns = s.Columns[:n-1]
	}
}

func reads(p *spec) string {
	if p.Verdict != headings.Sizes {
		return p.to().Heading()
	}
	return [...]string{headings.OwnSize: "size", headings.LongSize: "size_length", headings.SecondSize: "size2", headings.BranchSize: "branch_size"}[p.Size]
}

// unitWhy is the unit of a column, and what says so.
func unitWhy(p *spec) (unit, why string) {
	switch {
	case p.Column.Unit.Name == "" || p.Column.Unit.Name == "each":
		return "", ""
	case p.fixed:
		return p.Column.Unit.Name, "the map"
	case p.says != "":
		return p.Column.Unit.Name, p.says
	case p.Said:
		return p.Column.Unit.Name, "the heading"
	}
	return p.Column.Unit.Name, told.AssumedUnit
}

// whyNot says why a column isn't used.
func whyNot(p *spec) string {
	switch p.Verdict {
	case headings.Blank:
		return "no heading"
	case headings.Near:
		if p.Taken {
			return "not known, and another column is " + p.to().Heading()
		}
		return "did you mean " + p.to().Heading() + "?"
	case headings.Misfit:
		return "the unit " + p.Heading.Unit.Name + " doesn't fit " + p.to().Heading()
	case headings.Asks:
		return "more than one meaning: " + p.Ask.Write
	case headings.Known, headings.Sizes:
		return "the faults and notes say why"
	}
	return "not known"
}
