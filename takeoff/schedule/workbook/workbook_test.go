package workbook

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"math/rand"
	"reflect"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// file writes a workbook with excelize.
func file(t testing.TB, fill func(f *excelize.File)) []byte {
	t.Helper()
	f := excelize.NewFile()
	defer f.Close()
	fill(f)
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// rowsOf reads all rows of a sheet: their numbers, hidden ones with a minus
// sign, and their cells.
func rowsOf(t testing.TB, data []byte, sheet int) (numbers []int, cells [][]string, err error) {
	t.Helper()
	w, err := Open(data)
	if err != nil {
		return nil, nil, err
	}
	r, err := w.Rows(w.Sheets[sheet])
	if err != nil {
		return nil, nil, err
	}
	defer r.Close()
	for {
		if err := r.Next(); err == io.EOF {
			return numbers, cells, nil
		} else if err != nil {
			return numbers, cells, err
		}
		n := r.Number
		if r.Hidden {
			n = -n
		}
		numbers = append(numbers, n)
		cells = append(cells, append([]string(nil), r.Cells...))
	}
}

// one reads the cell A1 of a workbook.
func one(t testing.TB, fill func(f *excelize.File)) string {
	t.Helper()
	_, cells, err := rowsOf(t, file(t, fill), 0)
	if err != nil {
		t.Fatal(err)
	}
	if len(cells) == 0 {
		return ""
	}
	return cells[0][0]
}

// randomSheet writes a sheet of text, numbers and gaps, cell by cell or as a
// stream, which puts text inside the sheet.
func randomSheet(t *testing.T, r *rand.Rand, f *excelize.File) {
	texts := []string{"straight", "007", " space ", "a & b <c>", "line\nbreak", "Ø300", "=not a formula", "_x000D_ typed", "日本"}
	set, done := f.SetSheetRow, func() error { return nil }
	if r.Intn(2) == 0 {
		sw, err := f.NewStreamWriter("Sheet1")
		if err != nil {
			t.Fatal(err)
		}
		set = func(_, cell string, values any) error { return sw.SetRow(cell, *values.(*[]any)) }
		done = sw.Flush
	}
	for row := 1; row < 40; row += 1 + r.Intn(3) {
		values := make([]any, 1+r.Intn(30))
		for i := range values {
			switch r.Intn(4) {
			case 0:
				values[i] = texts[r.Intn(len(texts))]
			case 1:
				values[i] = float64(r.Intn(1e6)) / 8
			case 2:
				values[i] = r.Intn(5000)
			}
		}
		if err := set("Sheet1", fmt.Sprintf("A%d", row), &values); err != nil {
			t.Fatal(err)
		}
	}
	if err := done(); err != nil {
		t.Fatal(err)
	}
}

// Text and plain numbers read as excelize reads them, in random sheets.
func TestAgainstExcelize(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 20 {
		data := file(t, func(f *excelize.File) { randomSheet(t, r, f) })
		numbers, cells, err := rowsOf(t, data, 0)
		if err != nil {
			t.Fatal(err)
		}
		f, err := excelize.OpenReader(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		want, err := f.GetRows("Sheet1", excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		for i, n := range numbers {
			if trimmed := strings.Join(want[n-1], "\x00"); trimmed != strings.Join(cells[i], "\x00") {
				t.Fatalf("row %d: %q, excelize reads %q", n, cells[i], want[n-1])
			}
			want[n-1] = nil
		}
		for n, row := range want {
			if strings.Join(row, "") != "" {
				t.Fatalf("row %d is lost: %q", n+1, row)
			}
		}
	}
}

// What a number means doesn't hang on how it is shown, unless the format adds
// words or makes a date of it.
func TestNumberFormats(t *testing.T) {
	tests := []struct {
		value  float64
		format string
		want   string
	}{
		{1500, "#,##0", "1500"}, {1500.25, "0", "1500.25"}, {0.1, "0.00", "0.1"}, {-300, "#,##0;[Red]-#,##0", "-300"},
		{0.30000000000000004, "General", "0.3"}, {609.6, "0.0", "609.6"}, {1e15, "General", "1e+15"}, {123456789012, "0", "123456789012"},
		{7, "000", "007"}, {7, `"T-"000`, "T-007"}, {7, `\T\-000`, "T-007"}, {24, `0" in"`, "24 in"}, {1.5, `0.0" m"`, "1.5 m"}, {24, `General\"`, `24"`},
		{300, `"Ø"0`, "Ø300"}, {12, `_-* #,##0.00_-;\-* #,##0.00_-`, "12"}, {12, `[$€-407] #,##0`, "12"}, {12, `(0)`, "12"},
		{0.5, "0%", "50%"}, {46082, "dd/mm/yyyy", "2026-03-01"}, {46082.75, "d mmm yy hh:mm", "2026-03-01 18:00"}, {46082, `[$-809]d mmmm yyyy`, "2026-03-01"},
		{1, "[h]:mm", "1900-01-01"}, {1234.5, "# ?/?", "1234.5"}, {100, "0.00E+00", "100"},
	}
	for _, tt := range tests {
		got := one(t, func(f *excelize.File) {
			id, err := f.NewStyle(&excelize.Style{CustomNumFmt: &tt.format})
			if err == nil {
				err = f.SetCellStyle("Sheet1", "A1", "A1", id)
			}
			if err == nil {
				err = f.SetCellFloat("Sheet1", "A1", tt.value, -1, 64)
			}
			if err != nil {
				t.Fatal(err)
			}
		})
		if got != tt.want {
			t.Errorf("%v as %s: %q, want %q", tt.value, tt.format, got, tt.want)
		}
	}
}

// part replaces a part of a workbook.
func part(t testing.TB, data []byte, name string, change func(string) string) []byte {
	t.Helper()
	zr, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	zw := zip.NewWriter(&b)
	for _, f := range zr.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		if f.Name == name {
			if text = []byte(change(string(text))); len(text) == 0 {
				continue
			}
		}
		w, err := zw.Create(f.Name)
		if err == nil {
			_, err = w.Write(text)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := zw.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

const sheet1 = "xl/worksheets/sheet1.xml"

// sheetData makes a workbook whose sheet holds the XML of rows.
func sheetData(t testing.TB, rows string) []byte {
	return part(t, file(t, func(*excelize.File) {}), sheet1, func(s string) string {
		before, after, ok := strings.Cut(s, "<sheetData></sheetData>")
		if !ok {
			t.Fatalf("no empty sheet: %s", s)
		}
		return before + "<sheetData>" + rows + "</sheetData>" + after
	})
}

func TestCells(t *testing.T) {
	tests := []struct{ xml, want string }{
		{`<c r="A1"><v>1.50</v></c>`, "1.5"}, {`<c><v>609.60000000000002</v></c>`, "609.6"}, {`<c t="b"><v>1</v></c>`, "TRUE"}, {`<c t="b"><v>0</v></c>`, "FALSE"},
		{`<c t="e"><f>A9</f><v>#REF!</v></c>`, "#REF!"}, {`<c><f>1+1</f><v>2</v></c>`, "2"}, {`<c><f>1+1</f></c>`, "=1+1"}, {`<c><f>1+1</f><v></v></c>`, "=1+1"},
		{`<c t="str"><f>A2</f><v></v></c>`, ""}, {`<c t="str"><f>A2</f><v>word</v></c>`, "word"}, {`<c t="str"><f>A2</f></c>`, "=A2"},
		{`<c t="inlineStr"><is><t>plain</t></is></c>`, "plain"}, {`<c t="inlineStr"><is><r><t>two </t></r><r><rPr><b/></rPr><t>looks</t></r></is></c>`, "two looks"},
		{`<c t="d"><v>2026-03-01</v></c>`, "2026-03-01"}, {`<c><v>1E-3</v></c>`, "0.001"}, {`<c><v>-0</v></c>`, "-0"}, {`<c t="str"><v>a_x000A_b</v></c>`, "a\nb"},
	}
	for _, tt := range tests {
		_, cells, err := rowsOf(t, sheetData(t, `<row r="3">`+tt.xml+`<c r="D3"><v>4</v></c></row>`), 0)
		if want := [][]string{{tt.want, "", "", "4"}}; err != nil || !reflect.DeepEqual(cells, want) {
			t.Errorf("%s: %q %v, want %q", tt.xml, cells, err, want)
		}
	}
}

func TestRowsCounted(t *testing.T) {
	numbers, cells, err := rowsOf(t, sheetData(t, `<row r="2"><c r="B2"><v>1</v></c></row><row r="3"/><row hidden="1"><c><v>2</v></c></row><row r="9" hidden="true"><c r="C9"><v>3</v></c></row>`), 0)
	if want := []int{2, -4, -9}; err != nil || !reflect.DeepEqual(numbers, want) {
		t.Errorf("rows %v %v, want %v: %q", numbers, err, want, cells)
	}
}
