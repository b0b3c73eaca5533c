package workbook

import (
	"archive/zip"
	"bytes"
	"errors"
	"runtime"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// A damaged workbook is an error that says so, never a short schedule.
func TestDamaged(t *testing.T) {
	good := sheetData(t, `<row r="1"><c t="s"><v>0</v></c></row><row r="2"><c><v>2</v></c></row>`)
	keep := func(s string) string { return s }
	tests := []struct {
		name, part string
		change     func(string) string
	}{
		{"text that isn't there", sheet1, keep},
		{"cut in a row", sheet1, func(s string) string { return s[:strings.Index(s, `<row r="2"`)] }},
		{"cut in a cell", sheet1, func(s string) string { return s[:strings.Index(s, `</v></c></row><row`)] }},
		{"no sheet", sheet1, func(string) string { return "" }},
		{"rows out of order", sheet1, func(s string) string {
			return strings.Replace(strings.Replace(s, ` t="s"`, "", 1), `r="2"`, `r="1"`, 1)
		}},
		{"row too far down", sheet1, func(s string) string {
			return strings.Replace(strings.Replace(s, ` t="s"`, "", 1), `r="2"`, `r="1048577"`, 1)
		}},
		{"cell too far right", sheet1, func(s string) string {
			return strings.Replace(strings.Replace(s, ` t="s"`, "", 1), `<c>`, `<c r="XFE2">`, 1)
		}},
		{"no rows at all", sheet1, func(string) string { return "<worksheet></worksheet>" }},
		{"no workbook", "xl/workbook.xml", func(string) string { return "" }},
		{"workbook cut", "xl/workbook.xml", func(s string) string { return s[:len(s)/2] }},
		{"styles cut", "xl/styles.xml", func(s string) string { return s[:len(s)/2] }},
	}
	for _, tt := range tests {
		if _, cells, err := rowsOf(t, part(t, good, tt.part, tt.change), 0); err == nil {
			t.Errorf("%s: no error, %q", tt.name, cells)
		}
	}
	if _, err := Open(good[:len(good)-30]); err == nil {
		t.Error("a cut file has no error")
	}
}

// A small file that unpacks to very much is refused before it is unpacked.
func TestBomb(t *testing.T) {
	for _, name := range []string{sheet1, "xl/sharedStrings.xml", "xl/media/picture.png"} {
		var b bytes.Buffer
		zw := zip.NewWriter(&b)
		w, err := zw.Create(name)
		for i := 0; i < 64 && err == nil; i++ {
			_, err = w.Write(make([]byte, 1<<20))
		}
		if err = errors.Join(err, zw.Close()); err != nil {
			t.Fatal(err)
		}
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		if _, err := Open(b.Bytes()); err == nil || !strings.Contains(err.Error(), "unpacks to far more") {
			t.Errorf("%s: %v", name, err)
		}
		runtime.ReadMemStats(&after)
		if used := after.TotalAlloc - before.TotalAlloc; used > 1<<20 {
			t.Errorf("%s: %d bytes used to refuse it", name, used)
		}
	}
}

func TestOtherZipFiles(t *testing.T) {
	var b bytes.Buffer
	zw := zip.NewWriter(&b)
	if _, err := zw.Create("content.xml"); err != nil {
		t.Fatal(err)
	}
	if err := zw.Close(); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(b.Bytes()); err == nil || !strings.Contains(err.Error(), "content.xml is damaged") && !strings.Contains(err.Error(), "no sheets") {
		t.Errorf("%v", err)
	}
}

// FuzzOpen looks for bytes that crash the reader or fill the memory.
func FuzzOpen(f *testing.F) {
	f.Add(sheetData(f, `<row r="1"><c t="inlineStr"><is><t>kind</t></is></c><c s="1"><v>2</v></c></row>`))
	f.Fuzz(func(t *testing.T, data []byte) {
		w, err := Open(data)
		if err != nil {
			return
		}
		for i := range w.Sheets {
			_, _, _ = rowsOf(t, data, i)
		}
	})
}

// FuzzSheet reads any XML as a sheet: rows in order, or an error.
func FuzzSheet(f *testing.F) {
	f.Add(`<row r="1"><c r="A1" t="str"><v>x</v></c></row><row r="7" hidden="1"><c><f>1</f></c></row>`)
	f.Fuzz(func(t *testing.T, rows string) {
		numbers, cells, _ := rowsOf(t, sheetData(t, rows), 0)
		last := 0
		for i, n := range numbers {
			if n = max(n, -n); n <= last || len(cells[i]) == 0 || len(cells[i]) > excelize.MaxColumns {
				t.Fatalf("row %d after %d with %d cells", n, last, len(cells[i]))
			}
			last = n
		}
	})
}
