package schedule

import (
	"slices"

	"blankoff/takeoff/schedule/workbook"
)

// sheetRow is a row of a sheet.
type sheetRow struct {
	number, level  int
	hidden, linked bool
	cells          []string
	marks          workbook.Marks
}

// sheetRows reads the rows of a sheet, and looks ahead.
type sheetRows struct {
	*workbook.Rows
	ahead []sheetRow
	err   error // that ends what was looked at
}

// next is the next row. Its cells are used again for the one after it.
func (s *sheetRows) next() (sheetRow, error) {
	if len(s.ahead) > 0 {
		x := s.ahead[0]
		s.ahead = s.ahead[1:]
		return x, nil
	}
	if s.err == nil {
		s.err = s.Next()
	}
	return sheetRow{s.Number, s.Level, s.Hidden, s.Linked, s.Cells, s.Marks()}, s.err
}

// below gives up to n rows that come next.
func (s *sheetRows) below(n int) (rows [][]string) {
	s.Cells, s.Down, s.Over, s.Struck, s.Sums, s.Unlike, s.Comments = nil, nil, nil, nil, nil, nil, nil // those of the row before are still in use
	for s.err == nil && len(s.ahead) < n {
		if s.err = s.Next(); s.err != nil {
			break
		}
		s.ahead = append(s.ahead, sheetRow{s.Number, s.Level, s.Hidden, s.Linked, slices.Clone(s.Cells), s.Marks().Clone()})
	}
	for _, x := range s.ahead[:min(n, len(s.ahead))] {
		rows = append(rows, x.cells)
	}
	return rows
}
