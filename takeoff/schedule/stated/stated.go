// Package stated reads a list of areas that somebody states for whole systems or sections,
// to be held against those that are computed.
package stated

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/plaintext"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/source"
	"blankoff/takeoff/schedule/workbook"
)

// Totals is a list of areas stated for whole systems or sections.
type Totals struct {
	File   string
	SHA256 string
	List   []takeoff.StatedTotal
	Faults []takeoff.Fault
	Notes  []string
}

// flowUnits are the units of a flow, in L/s.
var flowUnits = map[string]float64{"flowm3h": 1 / 3.6, "flowls": 1, "flowm3s": 1000, "readingls": 1, "readingm3h": 1 / 3.6}

// columns are those of a list of stated sums.
type columns struct {
	by                  int // of the name
	section             bool
	area, flow, reading int // columns, -1 for none
	areaIn              quantity.Column
	areaTyped           string
	flowIn, readingIn   float64 // L/s in one of theirs
	typed               []string
}

// Read reads a list of stated sums from a text file or a workbook's first
// sheet that has the headings: system or section, stated_area_m2, and if need be
// flow_m3_h and reading_l_s. The error says why it can't be read at all.
func Read(path string) (*Totals, error) {
	data, err := source.Load(path)
	if err != nil {
		return nil, err
	}
	return ReadFrom(filepath.Base(path), data)
}

// mostStated is how many sums may be stated, and how many of them may be faults.
const mostStated = 50_000

// ReadFrom is ReadTotals for a list that is in memory; name is the file's.
func ReadFrom(name string, data []byte) (*Totals, error) {
	if err := source.Strange(name, data); err != nil {
		return nil, err
	}
	out := &Totals{File: name, SHA256: source.Fingerprint(data)}
	var heads *columns
	each := func(place takeoff.Place, cells []string, comma bool) error {
		if heads == nil {
			heads = headsOf(cells, comma)
			return nil
		}
		if len(out.List)+len(out.Faults) >= mostStated {
			return fmt.Errorf("%s has more than %d rows; a list states the sum of each system or section once", name, mostStated)
		}
		out.add(place, heads, cells)
		return nil
	}
	var err error
	if source.IsBook(data) {
		err = sheets(name, data, each, func() bool { return heads != nil })
	} else {
		err = out.text(data, each)
	}
	if err != nil {
		return nil, err
	}
	if heads == nil {
		return nil, fmt.Errorf("%s has no heading row with system or section and stated_area_m2", name)
	}
	if len(out.List)+len(out.Faults) == 0 {
		return nil, fmt.Errorf("%s has headings but no rows under them", name)
	}
	return out, nil
}

// text reads the rows of a text file.
func (out *Totals) text(data []byte, each func(takeoff.Place, []string, bool) error) error {
	data, _, note, err := plaintext.Decode(data)
	if err != nil {
		return fmt.Errorf("%s can't be read as text: %w; save it as CSV in UTF-8", out.File, err)
	}
	if note != "" {
		out.Notes = append(out.Notes, note)
	}
	form := plaintext.FormOf(data, headrow.MaxSearch, func() func(int, []string) int {
		return func(_ int, cells []string) int {
			if headsOf(cells, false) == nil {
				return 0
			}
			return len(cells)
		}
	})
	comma := form.CommaDecimals(data)
	lines := form.Lines(data)
	for {
		number, cells, err := lines.Next()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return fmt.Errorf("%s, row %d: %w", out.File, number, err)
		}
		if err := each(takeoff.Place{File: out.File, Row: number}, cells, comma); err != nil {
			return err
		}
	}
}

// sheets reads the rows of a workbook, up to the end of the sheet in which
// the headings were found.
func sheets(name string, data []byte, each func(takeoff.Place, []string, bool) error, found func() bool) error {
	w, err := workbook.Open(data)
	if err != nil {
		return fmt.Errorf("%s can't be read as a workbook: %w", name, err)
	}
	for _, s := range w.Sheets {
		if found() {
			return nil
		}
		r, err := w.Rows(s)
		if err != nil {
			return workbook.Unread(fmt.Sprintf("%s, sheet %s", name, s.Name), err)
		}
		for {
			if err = r.Next(); err != nil {
				break
			}
			if err := each(takeoff.Place{File: name, Sheet: s.Name, Row: r.Number}, r.Cells, false); err != nil {
				r.Close()
				return err
			}
		}
		r.Close()
		if err != io.EOF {
			return workbook.Unread(fmt.Sprintf("%s, sheet %s, row %d", name, s.Name, r.Number), err)
		}
	}
	return nil
}

// headsOf finds the columns in a heading row; nil where it isn't one.
func headsOf(cells []string, comma bool) *columns {
	t := &columns{by: -1, area: -1, flow: -1, reading: -1, typed: slices.Clone(cells)}
	lex, err := headings.BuiltIn()
	if err != nil {
		return nil
	}
	for i, cell := range cells {
		words := headings.Squash(cell)
		h := lex.Read(cell)
		switch {
		case words == "section" || words == "testsection" || words == "sectionid":
			t.by, t.section = i, true
		case t.by < 0 && h.Verdict == headings.Known && h.Column == takeoff.System:
			t.by = i
		case h.Verdict == headings.Known && h.Column == takeoff.StatedArea, t.area < 0 && words == "aream2":
			if h.Column != takeoff.StatedArea {
				h = lex.Read("stated_area_m2")
			}
			unit := h.Unit
			if !h.Said {
				unit = quantity.Default(takeoff.Areas)
			}
			t.area, t.areaTyped = i, cell
			t.areaIn = quantity.Column{Unit: unit, Measure: takeoff.Areas, Max: quantity.Largest(takeoff.Areas), CommaFile: comma}
		case flowUnits[words] > 0 && strings.HasPrefix(words, "flow"):
			t.flow, t.flowIn = i, flowUnits[words]
		case flowUnits[words] > 0:
			t.reading, t.readingIn = i, flowUnits[words]
		}
	}
	if t.by < 0 || t.area < 0 {
		return nil
	}
	return t
}

// add reads one row.
func (out *Totals) add(at takeoff.Place, t *columns, cells []string) {
	cell := func(i int) string {
		if i < 0 || i >= len(cells) {
			return ""
		}
		return celltext.Trim(cells[i])
	}
	s := takeoff.StatedTotal{At: at, By: "system", Name: celltext.Shorten(cell(t.by)), Text: cell(t.area)}
	if t.section {
		s.By = "section"
	}
	if s.Name == "" && s.Text == "" {
		return
	}
	v, trouble := t.areaIn.Number(s.Text)
	short := celltext.Shorten(s.Text)
	switch {
	case s.Text == "":
		trouble = "the area of " + s.By + " '" + s.Name + "' is missing; write it"
	case trouble != "":
		trouble = fmt.Sprintf("'%s' %s", short, trouble)
	}
	if trouble != "" {
		out.Faults = append(out.Faults, at.Fault(t.areaTyped, short, "an area in "+t.areaIn.Unit.Name+", not negative", trouble))
		return
	}
	s.Area = v
	for _, f := range []struct {
		column int
		in     float64
		to     *float64
	}{{t.flow, t.flowIn, &s.Flow}, {t.reading, t.readingIn, &s.Reading}} {
		text := cell(f.column)
		if text == "" || celltext.MeansNothing(text) {
			continue
		}
		as := quantity.Column{Unit: quantity.Default(takeoff.Areas), Measure: takeoff.Areas, Max: 1e9, CommaFile: t.areaIn.CommaFile}
		q, trouble := as.Number(text)
		if trouble != "" {
			out.Faults = append(out.Faults, at.Fault(t.typed[f.column], celltext.Shorten(text), "a number, not negative", fmt.Sprintf("'%s' %s", celltext.Shorten(text), trouble)))
			continue
		}
		*f.to = q * f.in
	}
	out.List = append(out.List, s)
}
