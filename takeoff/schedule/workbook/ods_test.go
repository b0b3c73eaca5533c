package workbook

import (
	"archive/zip"
	"bytes"
	"io"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// odsData packs the inside of a sheet into an OpenDocument file, with styles of its cells.
func odsData(t testing.TB, inside string, styles ...string) []byte {
	t.Helper()
	var b bytes.Buffer
	zw := zip.NewWriter(&b)
	w, err := zw.Create("content.xml")
	if err == nil {
		_, err = w.Write([]byte(`<office:document-content xmlns:office="` + officeNS + `" xmlns:table="` + tableNS + `" xmlns:text="` + textNS + `" xmlns:calcext="urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0" xmlns:style="` + styleNS + `" xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0"><office:automatic-styles>` + strings.Join(styles, "") + `</office:automatic-styles><office:body><office:spreadsheet><table:table table:name="S">` + inside + `</table:table></office:spreadsheet></office:body></office:document-content>`))
	}
	if err == nil {
		err = zw.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// What a cell says, by its kind. Values are those of OASIS OpenDocument 1.3
// part 3, 19.385 office:value-type.
func TestODSCells(t *testing.T) {
	cell := func(attrs, inside string) string {
		return "<table:table-row><table:table-cell " + attrs + ">" + inside + "</table:table-cell></table:table-row>"
	}
	for _, tt := range []struct{ cell, want string }{
		{cell(`office:value-type="float" office:value="0.30000000000000004"`, "<text:p>0,3</text:p>"), "0.3"},
		{cell(`office:value-type="float" office:value="1500"`, "<text:p>1.500</text:p>"), "1500"},
		{cell(`office:value-type="float" office:value="600"`, "<text:p>600 mm</text:p>"), "600 mm"},
		{cell(`office:value-type="float" office:value="7"`, "<text:p>T-007</text:p>"), "T-007"},
		{cell(`office:value-type="float" office:value="-300"`, "<text:p>-300</text:p>"), "-300"},
		{cell(`office:value-type="float" office:value="1234567"`, "<text:p>1,23E+06</text:p>"), "1234567"},
		{cell(`office:value-type="percentage" office:value="0.15"`, "<text:p>15 %</text:p>"), "15%"},
		{cell(`office:value-type="date" office:date-value="2026-04-06T00:00:00"`, "<text:p>6.4.</text:p>"), "2026-04-06"},
		{cell(`office:value-type="date" office:date-value="2026-04-06T12:30:00"`, "<text:p>6.4.</text:p>"), "2026-04-06 12:30:00"},
		{cell(`office:value-type="boolean" office:boolean-value="true"`, "<text:p>WAHR</text:p>"), "TRUE"},
		{cell(`office:value-type="string"`, "<text:p>a<text:s text:c=\"2\"/>b<text:tab/>c</text:p><text:p>d</text:p>"), "a  b\tc\nd"},
		{cell(`office:value-type="string"`, `<text:p><text:span>Ø</text:span><text:a>315</text:a></text:p>`), "Ø315"},
		{cell(`office:value-type="string"`, `<office:annotation><text:p>a remark</text:p></office:annotation><text:p>x</text:p>`), "x"},
		{cell(`table:formula="of:=NA()" office:value-type="string" office:string-value="" calcext:value-type="error"`, "<text:p>#N/A</text:p>"), "#N/A"},
		{cell(`table:formula="of:=1/0" office:value-type="float" office:value="0" calcext:value-type="error"`, "<text:p>#DIV/0!</text:p>"), "#DIV/0!"},
		{cell(`table:formula="of:=[.A1]*2"`, ""), "=[.A1]*2"},
	} {
		_, cells, err := rowsOf(t, odsData(t, tt.cell), 0)
		if err != nil || len(cells) != 1 || cells[0][0] != tt.want {
			t.Errorf("%s: %q %v, want %q", tt.cell, cells, err, tt.want)
		}
	}
}

// Files of many sheets and rows, written at length as office programs do, are read
// to their ends: each sheet from where the one before it ended, and in any order.
func TestODSAtLength(t *testing.T) {
	row := func(tag string) string {
		cell := `<table:table-cell table:style-name="ce1" office:value-type="string" calcext:value-type="string"><text:p>` + tag + `</text:p></table:table-cell>`
		return `<table:table-row table:style-name="ro1">` + strings.Repeat(cell, 9) + `</table:table-row>`
	}
	const rows, sheets = 6000, 4 // 8 MB a sheet
	var b strings.Builder
	for i := range rows - 1 {
		b.WriteString(row(strconv.Itoa(i * i)))
	}
	sheet := b.String() + row("last") +
		`<table:table-row><table:table-cell office:value-type="float" office:value="1"><text:p>1</text:p><table:table table:name="inside"/></table:table-cell></table:table-row>`
	data := odsData(t, sheet+strings.Repeat(`</table:table><table:table table:name="S">`+sheet, sheets-1))
	w, err := Open(data)
	if err != nil {
		t.Fatal(err)
	}
	if len(w.Sheets) != sheets {
		t.Fatalf("%d sheets", len(w.Sheets))
	}
	for _, s := range []int{0, 1, 2, 3, 1} {
		r, err := w.Rows(w.Sheets[s])
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		for err = r.Next(); err == nil; err = r.Next() {
			if n++; n == rows && r.Cells[8] != "last" {
				t.Errorf("sheet %d: %q", s, r.Cells)
			}
		}
		if n != rows+1 || err != io.EOF || r.Close() != nil {
			t.Errorf("sheet %d: %d rows, %v", s, n, err)
		}
	}
}

// Rows that stand there by a count keep their numbers.
func TestODSRowNumbers(t *testing.T) {
	x := `<table:table-cell office:value-type="string"><text:p>x</text:p></table:table-cell></table:table-row>`
	numbers, _, err := rowsOf(t, odsData(t, `<table:table-row table:number-rows-repeated="4"><table:table-cell table:number-columns-repeated="9"/></table:table-row>`+
		`<table:table-row>`+x+`<table:table-row-group><table:table-row table:number-rows-repeated="3">`+x+`</table:table-row-group><table:table-row>`+x), 0)
	if err != nil || len(numbers) != 5 || numbers[0] != 5 || numbers[3] != 8 || numbers[4] != 9 {
		t.Errorf("%v %v", numbers, err)
	}
}

// FuzzODS reads any XML as an OpenDocument sheet: rows in order within the limits
// of a sheet, or an error.
func FuzzODS(f *testing.F) {
	f.Add(`<table:table-row table:number-rows-repeated="3"><table:table-cell table:number-columns-repeated="2" office:value-type="float" office:value="6"><text:p>6 mm</text:p></table:table-cell></table:table-row>`)
	f.Add(`<table:table-column table:visibility="collapse"/><table:table-row><table:table-cell table:number-rows-spanned="9" office:value-type="string"><text:p>x<text:s text:c="99"/></text:p></table:table-cell></table:table-row><table:table-row><table:covered-table-cell/></table:table-row>`)
	f.Fuzz(func(t *testing.T, inside string) {
		if len(inside) > 5000 || strings.Count(inside, "repeated") > 6 {
			return
		}
		numbers, cells, _ := rowsOf(t, odsData(t, inside), 0)
		last := 0
		for i, n := range numbers {
			if n = max(n, -n); n <= last || n > excelize.TotalRows || len(cells[i]) == 0 || len(cells[i]) > excelize.MaxColumns {
				t.Fatalf("row %d after %d with %d cells", n, last, len(cells[i]))
			}
			last = n
		}
	})
}
