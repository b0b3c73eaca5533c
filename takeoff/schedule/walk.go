package schedule

import (
	"io"

	"blankoff/takeoff/schedule/source"
	"blankoff/takeoff/schedule/workbook"
)

// Walk hands on the cells of every row of a schedule as they stand, sheet by
// sheet. The cells are used again for the next row.
func (o Options) Walk(name string, data []byte, each func(sheet string, number int, cells []string, m workbook.Marks) error) error {
	lex, err := o.lexicon()
	if err != nil {
		return err
	}
	if !source.IsBook(data) {
		x, err := source.Open(name, data, lex)
		if err != nil {
			return err
		}
		lines := x.Form.Lines(x.Data)
		for {
			number, cells, err := lines.Next()
			if err == io.EOF {
				return nil
			}
			if err == nil {
				err = each("", number, cells, workbook.Marks{})
			}
			if err != nil {
				return err
			}
		}
	}
	w, err := workbook.Open(data)
	if err != nil {
		return err
	}
	for _, s := range w.Sheets {
		if err := walkSheet(w, s, each); err != nil {
			return err
		}
	}
	return nil
}

func walkSheet(w *workbook.File, s workbook.Sheet, each func(sheet string, number int, cells []string, m workbook.Marks) error) error {
	r, err := w.Rows(s)
	if err != nil {
		return err
	}
	defer r.Close()
	for {
		err := r.Next()
		if err == io.EOF {
			return nil
		}
		if err == nil {
			err = each(s.Name, r.Number, r.Cells, r.Marks())
		}
		if err != nil {
			return err
		}
	}
}
