package workbook

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"
)

const filledRow = `<row r="1"><c r="A1"><v>600</v></c></row>`

// emptyRows are rows with a format and nothing in them, from one on, of so many bytes.
func emptyRows(from, size int) string {
	var b strings.Builder
	for r := from; b.Len() < size; r++ {
		fmt.Fprintf(&b, `<row r="%d"><c r="A%d" s="0"/><c r="B%d" s="0"/><c r="C%d" s="0"/></row>`, r, r, r, r)
	}
	return b.String()
}

// Empty rows with a format down to the last that there is are no harm; filled rows far
// below are told to be moved up; and the sheet has to be whole to its end.
func TestEmptyRowsBelow(t *testing.T) {
	empty := emptyRows(2, maxIdle+2<<20)
	for _, tt := range []struct{ behind, fails string }{
		{"", ""}, {`<row r="1048576"><c r="A1048576"><v>1</v></c></row>`, "delete the empty rows"}, {`<row r="1048576"><c r="A1048576" t="inlineStr"><x:is><x:t>1</x:t></x:is></c></row>`, "delete the empty rows"},
		{`</sheetData><sheetData><row r="1048576"><c r="A1048576"><v>1</v></c></row>`, "two lists of rows"},
	} {
		numbers, _, err := rowsOf(t, sheetData(t, filledRow+empty+tt.behind), 0)
		if !reflect.DeepEqual(numbers, []int{1}) || tt.fails == "" && err != nil || tt.fails != "" && (err == nil || !strings.Contains(err.Error(), tt.fails)) {
			t.Errorf("%s: rows %v %v, want %s", tt.behind, numbers, err, tt.fails)
		}
	}
	cut := part(t, sheetData(t, filledRow+empty), sheet1, func(s string) string { return s[:strings.Index(s, "</sheetData>")] })
	if _, _, err := rowsOf(t, cut, 0); err == nil {
		t.Error("a sheet without an end is read")
	}
}

func TestSecondListOfRows(t *testing.T) {
	for _, second := range []string{`</sheetData><sheetData><row r="2"><c r="A2"><v>2</v></c></row>`, `</sheetData><x:sheetData><x:row r="2"/></x:sheetData><sheetData>`} {
		if _, _, err := rowsOf(t, sheetData(t, filledRow+second), 0); err == nil || !strings.Contains(Unread("s", err).Error(), "s is damaged") {
			t.Errorf("%s: %v", second, err)
		}
	}
}

// Rows of no height and columns of no width are hidden, whatever hides them.
func TestOfNoSize(t *testing.T) {
	data := part(t, sheetData(t, filledRow+`<row r="2" ht="0" customHeight="1"><c r="A2"><v>1</v></c></row><row r="3" ht="0.0"><c r="A3"><v>1</v></c></row><row r="4" ht="15"><c r="A4"><v>1</v></c></row>`), sheet1, func(s string) string {
		return strings.Replace(s, "<sheetData>", `<cols><col min="2" max="2" width="0" customWidth="1"/><col min="3" max="3" width="9"/></cols><sheetData>`, 1)
	})
	numbers, _, err := rowsOf(t, data, 0)
	if want := []int{1, -2, -3, 4}; err != nil || !reflect.DeepEqual(numbers, want) {
		t.Errorf("rows %v %v, want %v", numbers, err, want)
	}
	if r := first(t, data); !reflect.DeepEqual(r.HiddenColumns, []bool{false, true}) {
		t.Errorf("columns %v", r.HiddenColumns)
	}
	styles := `<style:style style:name="ro1" style:family="table-row"><style:table-row-properties style:row-height="0in" style:use-optimal-row-height="false"/></style:style>` +
		`<style:style style:name="ro2" style:family="table-row"><style:table-row-properties style:row-height="0.1cm"/></style:style>` +
		`<style:style style:name="co1" style:family="table-column"><style:table-column-properties style:column-width="0mm"/></style:style>`
	row := func(style string) string {
		return `<table:table-row table:style-name="` + style + `"><table:table-cell office:value-type="float" office:value="1"/></table:table-row>`
	}
	data = styled(t, styles, `<table:table-column/><table:table-column table:style-name="co1"/>`+row("ro2")+row("ro1"))
	numbers, _, err = rowsOf(t, data, 0)
	if want := []int{1, -2}; err != nil || !reflect.DeepEqual(numbers, want) {
		t.Errorf("rows %v %v, want %v", numbers, err, want)
	}
	if r := first(t, data); !reflect.DeepEqual(r.HiddenColumns, []bool{false, true}) {
		t.Errorf("columns %v", r.HiddenColumns)
	}
}

// styled is an OpenDocument file with styles of its own.
func styled(t *testing.T, styles, inside string) []byte {
	return part(t, odsData(t, inside), "content.xml", func(s string) string {
		return strings.Replace(s, "<office:body>", `<office:automatic-styles xmlns:style="`+styleNS+`">`+styles+"</office:automatic-styles><office:body>", 1)
	})
}

// A cell is struck out by its own style, or without one by its row's or its column's,
// and each style goes back to its parents (OASIS OpenDocument 1.3 part 3, 16.2 and
// 19.615).
func TestODSStruckOut(t *testing.T) {
	style := func(name, parent, look string) string {
		return `<style:style style:name="` + name + `" style:family="table-cell" style:parent-style-name="` + parent + `"><style:text-properties ` + look + `/></style:style>`
	}
	styles := style("gone", "", `style:text-line-through-style="solid"`) + style("twice", "", `style:text-line-through-type="double"`) + style("kept", "gone", `style:text-line-through-style="none"`) +
		style("child", "gone", `x="1"`) + style("ring", "ring", `x="1"`) + style("plain", "", `style:text-line-through-type="none"`)
	for _, tt := range []struct{ column, row, cell, want string }{
		{"", "", "gone", "[0]"}, {"", "", "twice", "[0]"}, {"", "", "child", "[0]"}, {"", "", "kept", "[]"}, {"", "", "ring", "[]"}, {"", "", "plain", "[]"},
		{"gone", "", "", "[0 1]"}, {"gone", "", "plain", "[1]"}, {"gone", "plain", "", "[]"}, {"", "twice", "", "[0 1 2]"}, {"plain", "child", "", "[0 1 2]"},
	} {
		named := func(what, name string) string {
			if name == "" {
				return ""
			}
			return ` table:` + what + `="` + name + `"`
		}
		cell := func(style string) string {
			return `<table:table-cell office:value-type="float" office:value="1"` + named("style-name", style) + `/>`
		}
		data := styled(t, styles, `<table:table-column table:number-columns-repeated="2"`+named("default-cell-style-name", tt.column)+`/><table:table-column/><table:table-row`+named("default-cell-style-name", tt.row)+`>`+cell(tt.cell)+cell("")+cell("")+`</table:table-row>`)
		if got := fmt.Sprint(slices.Sorted(slices.Values(first(t, data).Struck))); got != tt.want {
			t.Errorf("column %q, row %q, cell %q: %s, want %s", tt.column, tt.row, tt.cell, got, tt.want)
		}
	}
}

func TestODSTableInside(t *testing.T) {
	inside := func(text string) string {
		return `<table:table-row><table:table-cell><table:table table:is-sub-table="true"><table:table-row><table:table-cell office:value-type="string"><text:p>` + text + `</text:p></table:table-cell></table:table-row></table:table></table:table-cell><table:table-cell office:value-type="float" office:value="1"/></table:table-row>`
	}
	if _, cells, err := rowsOf(t, odsData(t, inside(" ")), 0); err != nil || len(cells) != 1 {
		t.Errorf("an empty one: %q %v", cells, err)
	}
	if _, _, err := rowsOf(t, odsData(t, inside("D2")), 0); err == nil || !strings.Contains(Unread("s, row 1", err).Error(), "s, row 1 has a table inside a cell") {
		t.Errorf("%v", err)
	}
}
