package schedule

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/takeoff"
)

// readAll reads a schedule and keeps its rows.
func readAll(t testing.TB, name string, data []byte) ([]takeoff.Row, Info) {
	t.Helper()
	var rows []takeoff.Row
	info, err := ReadFrom(name, data, func(r *takeoff.Row) error {
		one := *r
		one.Most = 0 // only a text tells how many rows there may be
		one.Mark = 0 // it is of how the row is typed
		rows = append(rows, one)
		return nil
	})
	if err != nil {
		t.Fatalf("%v\n%s", err, data[:min(len(data), 300)])
	}
	return rows, info
}

// asCSV and asXLSX write the same table: a float64 is a number, a string text.
func asCSV(t testing.TB, table [][]any) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	for _, row := range table {
		cells := make([]string, len(row))
		for i, v := range row {
			cells[i] = fmt.Sprint(v)
			if f, ok := v.(float64); ok {
				cells[i] = strconv.FormatFloat(f, 'f', -1, 64)
			}
		}
		if err := w.Write(cells); err != nil {
			t.Fatal(err)
		}
	}
	w.Flush()
	return b.Bytes()
}

func asXLSX(t testing.TB, table [][]any) []byte {
	f := excelize.NewFile()
	defer f.Close()
	for i, row := range table {
		for j, v := range row {
			cell, err := excelize.CoordinatesToCellName(j+1, i+1)
			if err != nil {
				t.Fatal(err)
			}
			if v == "" {
				continue
			}
			if err := f.SetCellValue("Sheet1", cell, v); err != nil {
				t.Fatal(err)
			}
		}
	}
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// sameFromBoth fails where the table reads otherwise from a workbook than from
// a text file.
func sameFromBoth(t *testing.T, table [][]any) {
	t.Helper()
	text, textInfo := readAll(t, "t", asCSV(t, table))
	book, bookInfo := readAll(t, "t", asXLSX(t, table))
	for i := range book {
		book[i].At.Sheet = ""
		for k := range book[i].Faults {
			book[i].Faults[k].Sheet = ""
		}
	}
	for i := range bookInfo.Faults {
		bookInfo.Faults[i].Sheet = ""
	}
	for i, n := range bookInfo.Notes {
		bookInfo.Notes[i] = strings.TrimPrefix(n, "sheet 'Sheet1': ")
	}
	bookInfo.SHA256 = textInfo.SHA256
	bookInfo.Encoding, bookInfo.Separator, bookInfo.Decimal = textInfo.Encoding, textInfo.Separator, textInfo.Decimal
	bookInfo.Sheets[0].Name = ""
	if !reflect.DeepEqual(textInfo, bookInfo) {
		t.Fatalf("text %+v\nbook %+v\n%v", textInfo, bookInfo, table)
	}
	if len(text) != len(book) {
		t.Fatalf("%d rows from text, %d from the workbook\n%v", len(text), len(book), table)
	}
	for i := range text {
		if !reflect.DeepEqual(text[i], book[i]) {
			t.Fatalf("row %d\ntext %+v\nbook %+v", i, text[i], book[i])
		}
	}
}

func TestAllColumnsFromTextAndWorkbook(t *testing.T) {
	table := make([][]any, 4)
	for c := range takeoff.NumColumns {
		table[0] = append(table[0], c.Heading())
		if c.Measure() == takeoff.Text {
			table[1] = append(table[1], "word "+c.Heading())
			table[2] = append(table[2], "007")
			table[3] = append(table[3], float64(c))
			continue
		}
		table[1] = append(table[1], float64(c)+1)
		table[2] = append(table[2], strconv.Itoa(int(c)))
		table[3] = append(table[3], "")
	}
	sameFromBoth(t, table)
	rows, info := readAll(t, "t", asXLSX(t, table))
	if len(rows) != 3 || len(info.Faults) != 0 || len(info.Notes) != 1 || !strings.Contains(info.Notes[0], "column 'joint' that say something else") {
		t.Fatalf("%d rows, %v %v", len(rows), info.Faults, info.Notes)
	}
	for c := range takeoff.NumColumns {
		if c == takeoff.Joint { // "word joint" bears on nothing, so it is left out
			continue
		}
		if len(rows[0].Faults) > 0 || rows[0].Text[c] == "" || rows[0].Has(c) != (c.Measure() != takeoff.Text) {
			t.Errorf("%s: %q %v", c.Heading(), rows[0].Text[c], rows[0].Faults)
		}
	}
}

// Random tables, good and bad cells alike, read the same from both.
func TestRandomTablesFromTextAndWorkbook(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	headings := []string{"Tag", "tag", "Kind", "W", "Width (in)", "width_mm", "Height mm", "Dia", "Length m", "L", "Qty", "Offset", "Area (m2)",
		"Test pressure (in wg)", "Pressure", "Level", "Notes", "Remarks", "Supplier", "", "lenght", "Class", "From", "Radius (mm)", "Widht", "Size"}
	cells := []any{"", "", "straight", "A1", "007", " x ", "-", "n/a", "1,500", "1,5", "-300", "NaN", "600 mm", `24"`, "2'-6\"", "#REF!", "=A1",
		"Ø300", "two, words", `a "quote"`, "mm", "m", "^", "Level 2", "1e99", "1e3", "0600"}
	for range 300 {
		columns := 2 + r.Intn(12)
		table := [][]any{}
		for range r.Intn(3) {
			table = append(table, []any{"Title", float64(r.Intn(9))})
		}
		head := []any{"Kind", "Height mm"}
		for range columns {
			head = append(head, headings[r.Intn(len(headings))])
		}
		r.Shuffle(len(head), func(i, j int) { head[i], head[j] = head[j], head[i] })
		table = append(table, head)
		for range 1 + r.Intn(6) {
			row := make([]any, len(head))
			for i := range row {
				row[i] = cells[r.Intn(len(cells))]
				if r.Intn(3) == 0 {
					row[i] = float64(r.Intn(1e6)-1e5) / []float64{1, 10, 100, 8}[r.Intn(4)]
				}
			}
			table = append(table, row)
		}
		table = append(table, append([]any{"A1"}, make([]any, len(head)-1)...))
		for i := range table[len(table)-1][1:] {
			table[len(table)-1][i+1] = "x"
		}
		sameFromBoth(t, table)
	}
}

// A schedule in shuffled columns reads as the same rows.
func TestColumnOrderDoesNotMatter(t *testing.T) {
	head := []any{"tag", "kind", "width_in", "height_mm", "length (m)", "from", "note"}
	rows := [][]any{{"A", "straight", 24.0, 400.0, 1.5, "", "x"}, {"B", "bend", "1,500", 400.0, "", "A", ""}}
	want, _ := readAll(t, "t", asCSV(t, append([][]any{head}, rows...)))
	r := rand.New(rand.NewSource(2))
	for range 50 {
		p := r.Perm(len(head))
		table := make([][]any, 3)
		for i, row := range append([][]any{head}, rows...) {
			for _, k := range p {
				table[i] = append(table[i], row[k])
			}
		}
		if got, _ := readAll(t, "t", asCSV(t, table)); !reflect.DeepEqual(got, want) {
			t.Fatalf("%v\n%+v\nwant\n%+v", table, got, want)
		}
	}
}
