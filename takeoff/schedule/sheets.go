package schedule

import (
	"fmt"
	"io"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/items"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/schedule/settled"
	"blankoff/takeoff/schedule/told"
	"blankoff/takeoff/schedule/wording"
	"blankoff/takeoff/schedule/workbook"
)

// begin starts a sheet.
func (info *Info) begin(name string, o *Options, lex *headings.Lexicon) *table {
	t := &table{info: info, opt: o, Reader: items.Reader{Reading: settled.Reading{Reading: columns.Reading{Lex: lex, ByMap: o.Map, Decimal: o.decimal(),
		Place: takeoff.Place{File: info.File, Sheet: name}, Found: &info.Findings, Units: &info.units, Look: &told.Sheet{Name: name}}}}}
	t.since = [3]int{info.handed, info.handed, info.handed}
	t.totals = len(info.TotalRows)
	info.Sheets = append(info.Sheets, t.Look)
	return t
}

// end ends a sheet: what was counted is told.
func (t *table) end() error {
	err := t.flush()
	t.totalsOnTop()
	t.ToldCounts()
	t.NoteCounts()
	return err
}

// unmet finds fault with sheets that the map names and the file hasn't got.
func (info *Info) unmet(o *Options, sheets []string) {
	for _, name := range o.Map.Unmet(sheets) {
		p := takeoff.Place{File: info.File, Sheet: name}
		info.Faults = append(info.Faults, p.Fault("", name, "a sheet that the map names", fmt.Sprintf("the map names sheet '%s', which isn't there; mend the map", name)))
	}
}

// readWorkbook reads every sheet that has a heading row.
func (info *Info) readWorkbook(data []byte, o *Options, lex *headings.Lexicon, each func(*takeoff.Row) error) error {
	w, err := workbook.Open(data)
	if err != nil {
		return fmt.Errorf("%s can't be read as a workbook: %w", info.File, err)
	}
	found, rows, first := false, 0, ""
	info.Decimal = decimalWord(o, w.CommaDecimals())
	var names []string
	for _, s := range w.Sheets {
		names = append(names, s.Name)
		t := info.begin(s.Name, o, lex)
		t.Look.Among = len(w.Sheets) > 1
		t.Suspect, t.Look.Hidden, t.CommaFile = true, s.Hidden, w.CommaDecimals()
		m := o.Map.For(s.Name)
		if m != nil && m.Skip || o.SkipHidden && s.Hidden {
			t.Note("the sheet is left out, as was asked for")
			continue
		}
		if err := t.readSheet(w, s, each); err != nil {
			return err
		}
		t.Look.Mapped = m != nil
		t.tellSheet(s)
		if found = found || t.Specs != nil; t.Specs == nil && len(t.Search.Rows) > 0 {
			if rows += len(t.Search.Rows); first == "" {
				first = t.Search.First
			}
		}
	}
	info.unmet(o, names)
	info.doubtAll(lex)
	if !found && rows == 0 {
		return fmt.Errorf("%s has no filled cells; `blankoff template -o FILE.xlsx` writes a workbook to fill in", info.File)
	}
	if !found {
		return noHeadingRow(info.File, rows, first)
	}
	return nil
}

// tellSheet tells how a sheet was read as a whole: that it has no headings, or is hidden.
func (t *table) tellSheet(s workbook.Sheet) {
	for _, x := range t.Search.Texts {
		t.Look.Titles = append(t.Look.Titles, x.Text)
	}
	switch {
	case t.Specs == nil && len(t.Search.Rows) > 0:
		t.info.Note("sheet '%s' has no heading row and was passed over", s.Name)
		t.passedOver()
	case t.Specs != nil && s.Hidden:
		t.Note("the sheet is hidden and was read all the same")
	}
}

// doubtAll doubts what only all sheets together show: units, colours, and sheets that double
// others.
func (info *Info) doubtAll(lex *headings.Lexicon) {
	info.units.CoverAfter(&info.Findings)
	info.units = columns.Units{}
	info.Forget()
	info.doubtColours(&info.shown)
	info.shown = shown{}
	info.DoubtSheets(info.File, info.Sheets, lex)
}

// passedOver says what of a sheet without headings bears on the others: rows that look
// like pieces, and a line on units.
func (t *table) passedOver() {
	if row := t.pieceBelow(); row > 0 && !wording.ListSheet.MatchString(t.Place.Sheet) {
		p := t.Place
		p.Row = row
		t.Found.Faults = append(t.Found.Faults, p.Fault("", "", "headings above the rows", fmt.Sprintf("sheet '%s' has rows that look like pieces, but no headings that are known, so none of it is read; put such headings above them, or leave the sheet out by skip in a map (inspect -o)", p.Sheet)))
	}
	for _, title := range t.Search.Texts {
		if wording.Changes(t.Lex, title.Text) {
			t.doubtLine(title.Row, title.Text)
		}
		if wording.Many.MatchString(title.Text) || wording.Several(title.Text) || wording.AsOther.MatchString(title.Text) {
			p := t.Place
			p.Row = title.Row
			t.Found.Faults = append(t.Found.Faults, p.Fault("", celltext.Shorten(title.Text), "rows of pieces", fmt.Sprintf("'%s' seems to stand for pieces of another sheet, which nobody counts; write the rows, or how many under quantity there", celltext.Shorten(title.Text))))
		}
		if u, says := wording.StatedUnit(t.Lex, title.Text); says && u.Name != "" {
			t.Units.Cover = &headrow.Line{Row: title.Row, Text: title.Text, Sheet: t.Place.Sheet, Unit: u}
		}
	}
}

// pieceBelow is the first row of a sheet without headings that looks like a piece, 0 for
// none: one of a kind, or one of sizes, if most rows are.
func (t *table) pieceBelow() int {
	f := &t.Search
	switch {
	case f.Piece > 0:
		return f.Piece
	case len(f.Sized) > 1 && 2*len(f.Sized) > len(f.Rows) && !t.Kinds().NoDuctwork(t.Place.Sheet):
		return f.Sized[0]
	}
	return 0
}

// readSheet reads one sheet.
func (t *table) readSheet(w *workbook.File, s workbook.Sheet, each func(*takeoff.Row) error) error {
	damaged := func(err error) error { return workbook.Unread(t.Place.String(), err) }
	rows, err := w.Rows(s)
	if err != nil {
		return damaged(err)
	}
	r := &sheetRows{Rows: rows}
	defer r.Close()
	r.LookAround()
	t.Below = r.below
	t.readPrinted(rows.Printed)
	var h hidden
	t.info.shown.looked = 0
	for !t.Search.Failed {
		x, err := r.next()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Place.Row = x.number
			return damaged(err)
		}
		t.Look.HiddenColumns = r.HiddenColumns
		if x.hidden && t.opt.SkipHidden && t.Specs != nil {
			t.leave(x.number, x.cells)
			continue
		}
		if err := t.readRow(&x, &h, each); err != nil {
			return err
		}
	}
	t.doubtHidden(&h)
	if err := t.end(); err != nil {
		return err
	}
	if r.Beyond > 0 && t.Specs != nil {
		t.Note("there are cells as far right as column %s; they aren't used", mapping.Letter(r.Beyond-1))
	}
	t.noteHidden(h.numbers)
	t.doubtPrinted(rows.Printed)
	t.notePinned(rows.Pinned())
	return nil
}

// readRow reads a row of a sheet.
func (t *table) readRow(x *sheetRow, h *hidden, each func(*takeoff.Row) error) error {
	t.Marked = x.marks
	t.Marked.Down = nil
	if t.Specs == nil {
		t.keepPinned(x.number, x.marks.Comments)
	}
	before, handed := t.info.RowsRead, t.info.handed
	t.mark = t.markCells(x.cells)
	if err := t.offer(x.number, x.cells, "", x.marks.Down, each); err != nil {
		return err
	}
	if t.info.RowsRead == before {
		t.info.shown.line(t.Lex, t.Place, x.number, x.cells, x.marks.Paint)
		return nil
	}
	if x.linked {
		t.Look.Linked++
	}
	if x.hidden {
		h.numbers = append(h.numbers, x.number)
	}
	if t.info.handed > handed {
		t.info.shown.piece(t.Place.Sheet, x.marks.Paint, x.number)
		h.see(t, x)
	}
	return nil
}

// markCells is the mark of a row of a sheet.
func (t *table) markCells(cells []string) uint8 {
	t.joined = t.joined[:0]
	for _, cell := range cells {
		t.joined = append(append(t.joined, cell...), 0)
	}
	return celltext.Mark(t.joined)
}

// readPrinted keeps what is printed at the head or foot of each page, if it says in which unit
// sizes are.
func (t *table) readPrinted(texts []string) {
	for _, text := range texts {
		_, _, apart := wording.UnitsApart(text)
		if _, says := wording.StatedUnit(t.Lex, text); says || apart {
			t.Search.Printed = append(t.Search.Printed, headrow.Line{Text: text})
		}
	}
}

// notePinned says what lies on the sheet and isn't read: comments on cells of a schedule,
// and a picture where there is none.
func (t *table) notePinned(p workbook.Pinned) {
	if p.Picture && t.Specs == nil {
		t.Found.Note("sheet '%s' holds a picture or a drawing, which isn't read", t.Place.Sheet)
	}
	if len(p.Comments) == 0 || t.Specs == nil {
		return
	}
	names := strings.Join(p.Comments, ", ")
	if p.More > 0 {
		names += fmt.Sprintf(" and %d more", p.More)
	}
	t.Note("comments on cells aren't read but for words that strike or change a row: %s", names)
}

// leave leaves a hidden row out; it counts as read and excluded.
func (t *table) leave(number int, cells []string) {
	t.Told.Add("hidden rows left out, as was asked for", "", number)
	t.Look.Class(told.HiddenRow, number, cells)
	t.info.RowsRead++
	t.info.RowsLeft++
}

// noteHidden says which hidden rows and columns were read.
func (t *table) noteHidden(rows []int) {
	for _, row := range rows {
		t.info.Hidden = append(t.info.Hidden, takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: row})
	}
	if len(rows) > 0 {
		t.Note("hidden and read all the same: %s", told.RowsWord(rows))
	}
	var names []string
	for i := range t.Specs {
		if i < len(t.Look.HiddenColumns) && t.Look.HiddenColumns[i] && t.Specs[i].Typed != "" {
			names = append(names, fmt.Sprintf("'%s' (%s)", t.Specs[i].Typed, mapping.Letter(i)))
		}
	}
	if len(names) > 0 {
		t.Note("hidden columns, read as the others: %s", strings.Join(names, ", "))
	}
}
