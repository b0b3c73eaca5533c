package workbook

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"blankoff/takeoff/schedule/workbook/dress"
)

// put puts the cell's text into the row.
func (sr *Rows) put() error {
	text, unlike, err := sr.text()
	if err != nil {
		return err
	}
	if text == "" {
		if s := sr.cell.style; s > 0 && s < len(sr.book.paints) {
			sr.Paint.Blank(sr.book.paints[s])
		}
		return nil
	}
	c := sr.cell.column
	if c >= mostKept {
		sr.Beyond = max(sr.Beyond, c+1)
		return nil
	}
	for len(sr.Cells) <= c {
		sr.Cells = append(sr.Cells, "")
	}
	sr.Cells[c] = text
	if s := sr.cell.style; s < len(sr.book.struck) && sr.book.struck[s] {
		sr.Struck = append(sr.Struck, c)
	}
	if s := sr.cell.style; s < len(sr.book.paints) {
		sr.Paint.Meet(sr.book.paints[s])
	}
	if unlike {
		sr.Unlike = append(sr.Unlike, c)
	}
	if sr.cell.has {
		f := sr.cell.inline.String()
		sr.Linked = sr.Linked || strings.Contains(f, "!")
		if dress.SumsUp(f, c, sr.Number) {
			sr.Sums = append(sr.Sums, c)
		}
	}
	return nil
}

// text is what the cell says: text, a number with all its digits, TRUE or
// FALSE, an error's name, a date as 2026-03-01, or the formula where its
// result isn't stored. unlike reports one that shows another number than it holds.
func (sr *Rows) text() (text string, unlike bool, err error) {
	c := &sr.cell
	v := c.value.String()
	if c.has && (!c.stored || v == "" && c.kind != "str") {
		return "=" + c.inline.String(), false, nil
	}
	f := &plainFormat
	if c.style >= 0 && c.style < len(sr.book.formats) {
		f = &sr.book.formats[c.style]
	}
	switch c.kind {
	case "inlineStr":
		return f.Dress(c.inline.String()), false, nil
	case "s":
		i, err := strconv.Atoi(strings.TrimSpace(v))
		if err != nil || i < 0 || i >= len(sr.book.strings) {
			return "", false, fmt.Errorf("there is no text number '%.20s'", v)
		}
		return f.Dress(sr.book.strings[i]), false, nil
	case "str":
		return f.Dress(dress.Unescape(v)), false, nil
	case "b":
		if v == "1" || v == "true" {
			return "TRUE", false, nil
		}
		return "FALSE", false, nil
	case "e", "d":
		return v, false, nil
	}
	n, err := strconv.ParseFloat(v, 64)
	if err != nil || math.IsInf(n, 0) || math.IsNaN(n) {
		return v, false, nil
	}
	text, unlike = f.Show(v, n, sr.book.date1904)
	return text, unlike, nil
}

var plainFormat dress.Format
