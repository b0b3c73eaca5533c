package refused

import (
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"github.com/xuri/excelize/v2"
)

// mark is the byte order mark by which spreadsheet programs know UTF-8.
const mark = "\ufeff"

func writeText(w io.Writer, g grid, separator string) error {
	if _, err := io.WriteString(w, mark); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	if separator != "" {
		out.Comma = []rune(separator)[0]
	}
	for _, row := range g.rows {
		if err := out.Write(harmless(row)); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// harmless writes cells so that no spreadsheet program takes them for formulas: with
// an apostrophe in front, which the door takes off again, and so that none steers what
// shows them.
func harmless(row []string) []string {
	safe := slices.Clone(row)
	for i, cell := range safe {
		if strings.ContainsFunc(cell, steers) {
			cell = strings.Map(func(r rune) rune {
				if steers(r) {
					return '\ufffd'
				}
				return r
			}, cell)
			safe[i] = cell
		}
		bare := strings.TrimLeft(cell, " \t\r\n\u00a0")
		if bare == "" || !strings.ContainsRune("=+-@＝＋－＠", []rune(bare)[0]) {
			continue
		}
		if _, err := strconv.ParseFloat(bare, 64); err != nil && bare != "-" {
			safe[i] = "'" + cell
		}
	}
	return safe
}

// steers reports a character that steers a terminal or turns the order of writing; the row
// is refused for it anyway.
func steers(r rune) bool {
	return unicode.IsControl(r) && r != '\n' && r != '\r' && r != '\t' || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069
}

// XLSX writes the rows as a workbook with a sheet for each that has any.
func (r *Rows) XLSX(w io.Writer, data []byte) error {
	gs, err := r.grids(data)
	if err != nil {
		return err
	}
	if len(gs) == 0 {
		return fmt.Errorf("no row of %s was refused", r.name)
	}
	f := excelize.NewFile()
	defer f.Close()
	for i, g := range gs {
		name := g.name
		if name == "" {
			name = "refused"
		}
		if i == 0 {
			err = f.SetSheetName("Sheet1", name)
		} else {
			_, err = f.NewSheet(name)
		}
		if err == nil {
			err = fillSheet(f, name, g)
		}
		if err != nil {
			return fmt.Errorf("can't write the refused rows: %w", err)
		}
	}
	return f.Write(w)
}

// fillSheet writes the cells: a number where that keeps every digit, else text.
func fillSheet(f *excelize.File, name string, g grid) error {
	for i, row := range g.rows {
		for k, cell := range row {
			if cell == "" {
				continue
			}
			at, err := excelize.CoordinatesToCellName(k+1, i+1)
			if err != nil {
				return err
			}
			if v, bad := strconv.ParseFloat(cell, 64); bad == nil && strconv.FormatFloat(v, 'f', -1, 64) == cell {
				err = f.SetCellFloat(name, at, v, -1, 64)
			} else {
				err = f.SetCellStr(name, at, cell)
			}
			if err != nil {
				return err
			}
		}
	}
	return nil
}
