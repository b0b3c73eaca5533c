package schedule

import (
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
