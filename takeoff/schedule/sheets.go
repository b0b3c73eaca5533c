package schedule

import (
	"fmt"
	"io"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/workbook"
)

// readWorkbook reads every sheet that has a heading row.
func (info *Info) readWorkbook(data []byte, each func(*takeoff.Row) error) error {
	w, err := workbook.Open(data)
	if err != nil {
		return fmt.Errorf("%s can't be read as a workbook: %w", info.File, err)
	}
	found, rows, first := false, 0, ""
	for _, s := range w.Sheets {
		t := &table{info: info, place: takeoff.Place{File: info.File, Sheet: s.Name}, suspect: true}
		if err := t.readSheet(w, s, each); err != nil {
			return err
		}
		switch {
		case t.specs == nil && len(t.above) > 0:
			info.note("sheet '%s' has no heading row and was passed over", s.Name)
			if rows += len(t.above); first == "" {
				first = t.first
			}
		case t.specs != nil && s.Hidden:
			t.note("the sheet is hidden and was read all the same")
		}
		found = found || t.specs != nil
	}
	if !found && rows == 0 {
		return fmt.Errorf("%s has no filled cells; `blankoff template -o FILE.xlsx` writes a workbook to fill in", info.File)
	}
	if !found {
		return noHeadingRow(info.File, rows, first)
	}
	return nil
}

// readSheet reads one sheet.
func (t *table) readSheet(w *workbook.File, s workbook.Sheet, each func(*takeoff.Row) error) error {
	damaged := func(err error) error { return fmt.Errorf("%s is damaged (%w); save it again", t.place, err) }
	r, err := w.Rows(s)
	if err != nil {
		return damaged(err)
	}
	defer r.Close()
	var hidden []int
	for !t.noHeading {
		err := r.Next()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.place.Row = r.Number
			return damaged(err)
		}
		before := t.rows
		if err := t.offer(r.Number, r.Cells, "", each); err != nil {
			return err
		}
		if r.Hidden && t.rows > before {
			hidden = append(hidden, r.Number)
		}
	}
	if len(hidden) > 0 {
		t.note("hidden and read all the same: %s", rowsWord(hidden))
	}
	return nil
}
