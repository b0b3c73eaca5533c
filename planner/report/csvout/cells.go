// Package csvout renders a takeoff, the sections and the blanks of a plan as
// CSV: one heading row, comma, point, UTF-8. The headings name the units of the
// view: area_m2, or area_ft2. Numbers are rounded to a
// millionth, forces and minutes to a tenth; limits are cut off at a millionth.
package csvout

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/gocarina/gocsv"

	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// words is a text cell. A spreadsheet takes a cell that begins with one of
// opens for a formula or a command; an apostrophe before it keeps it text.
type words string

const opens = "=+-@\t\r\n\uff1d\uff0b\uff0d\uff20" // the last four are the wide forms

func (t words) MarshalCSV() (string, error) {
	s := show.Safe(string(t))
	if r, _ := utf8.DecodeRuneInString(s); s != "" && strings.ContainsRune(opens, r) {
		return "'" + s, nil
	}
	return s, nil
}

// joined makes one cell of several texts.
func joined(list []string) words { return words(strings.Join(list, "; ")) }

// number is rounded to a millionth.
type number float64

func (v number) MarshalCSV() (string, error) {
	r := math.Round(float64(v)*1e6) / 1e6
	if r == 0 {
		r = 0 // not -0
	}
	return strconv.FormatFloat(r, 'f', -1, 64), nil
}

// tenth is rounded to a tenth: forces in N and minutes, which are no surer.
type tenth float64

func (v tenth) MarshalCSV() (string, error) {
	return number(math.Round(float64(v)*10) / 10).MarshalCSV()
}

// size is a number, or empty where the opening has no such size.
type size float64

func (v size) MarshalCSV() (string, error) {
	if v == 0 {
		return "", nil
	}
	return number(v).MarshalCSV()
}

// in is a figure in the units of the view.
func in(u units.System, q units.Quantity, v float64) number { return number(u.Of(q, v)) }

// across is a size in mm, in the units of the view.
func across(u units.System, mm float64) size {
	if u == units.SI {
		return size(mm)
	}
	return size(u.Of(units.Size, mm/1000))
}

// permitted is a limit, cut off at a millionth so that it is never more than
// what is permitted.
type permitted float64

func (v permitted) MarshalCSV() (string, error) {
	s := show.Down(float64(v), 6)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s, nil
}

// headed writes a table whose first row is the headings, in SI, and turns them to
// other units.
type headed struct {
	*gocsv.SafeCSVWriter
	units units.System
	begun bool
}

// Write writes one row.
func (h *headed) Write(row []string) error {
	if !h.begun {
		for i, name := range row {
			row[i] = h.units.Rename(name)
		}
	}
	h.begun = true
	return h.SafeCSVWriter.Write(row)
}

// write makes a row of every entry and writes them in portions, so that a long
// list isn't held twice. The headings come from the row's tags, which are those
// of SI.
func write[T, R any](w io.Writer, u units.System, list []T, row func(*T) R) error {
	const portion = 2048
	out := &headed{SafeCSVWriter: gocsv.NewSafeCSVWriter(csv.NewWriter(w)), units: u}
	rows := make([]R, 0, min(portion, len(list)))
	first := true
	for i := 0; i < len(list) || first; i += portion {
		rows = rows[:0]
		for k := i; k < min(i+portion, len(list)); k++ {
			rows = append(rows, row(&list[k]))
		}
		marshal := gocsv.MarshalCSVWithoutHeaders
		if first {
			marshal = gocsv.MarshalCSV
		}
		if err := marshal(rows, out); err != nil {
			return err
		}
		first = false
	}
	return nil
}
