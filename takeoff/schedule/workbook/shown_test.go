package workbook

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"
)

// first reads a sheet's first row with its marks.
func first(t *testing.T, data []byte) *Rows {
	t.Helper()
	w, err := Open(data)
	if err != nil {
		t.Fatal(err)
	}
	r, err := w.Rows(w.Sheets[0])
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close() })
	if err := r.Next(); err != nil {
		t.Fatal(err)
	}
	return r
}

// Text between the figures of a number, or next to them, makes something else of it.
// What is shown was looked up in no program: it follows from the rules for the codes
// (ECMA-376 part 1, 18.8.31), figures being dealt out from the right.
func TestFormatsThatPartFigures(t *testing.T) {
	for _, tt := range []struct {
		value, format, want string
		unlike              bool
	}{
		{"510", `0'-00\"`, `5'-10"`, false}, {"6", `0'-00\"`, `0'-06"`, false}, {"350", `0"m"00`, "3m50", false}, {"600400", `0"x"000`, "600x400", false},
		{"600400", `#" x "###" mm"`, "600 x 400 mm", false}, {"12034", `0-000`, "12-034", false}, {"1234", `00 00`, "12 34", false},
		{"1500", `# ##0`, "1500", false}, {"1500", `#\'##0`, "1500", false}, {"1234567", `#" "##0" "##0`, "1234567", false}, {"1500", `0\.000`, "1.500", false},
		{"3005", `0\.0`, "300.5", true}, {"300", `0"0"`, "3000", true}, {"300", `"1"0`, "1300", true}, {"24", `0" 1/2"`, "24 1/2", true}, {"300", `\-0`, "300", true},
		{"510.5", `0'-00\"`, `5'-10"`, true}, {"3", `0"0 mm"`, "30 mm", true}, {"1", `"yes";;"no"`, "yes", true}, {"600", `0" x 400"`, "600 x 400", false},
		{"600", `0"×400"`, "600×400", false}, {"1234.5", `# ??/??" ft"`, "1234.5 ft", false}, {"1500", `0.00E+00`, "1500", false}, {"7", `"T-"000`, "T-007", false},
		{"300", `0"-"`, "300", false}, {"300", `"("0")"`, "300", false}, {"300", `[<0]-0;0`, "300", false},
	} {
		escape := strings.NewReplacer(`&`, "&amp;", `"`, "&quot;", "<", "&lt;")
		data := part(t, sheetData(t, `<row r="1"><c r="A1" s="1"><v>`+tt.value+`</v></c></row>`), "xl/styles.xml", func(string) string {
			return `<styleSheet><numFmts><numFmt numFmtId="164" formatCode="` + escape.Replace(tt.format) + `"/></numFmts><cellXfs><xf/><xf numFmtId="164"/></cellXfs></styleSheet>`
		})
		r := first(t, data)
		if r.Cells[0] != tt.want || slices.Contains(r.Unlike, 0) != tt.unlike {
			t.Errorf("%s as %s: %q %v, want %q %v", tt.value, tt.format, r.Cells[0], r.Unlike, tt.want, tt.unlike)
		}
	}
}

// A format of text puts something round a text.
func TestFormatOfText(t *testing.T) {
	for _, code := range []string{`@&quot; m&quot;`, `0;0;0;@&quot; m&quot;`} {
		data := part(t, sheetData(t, `<row r="1"><c r="A1" s="1" t="inlineStr"><is><t>3</t></is></c></row>`), "xl/styles.xml", func(string) string {
			return `<styleSheet><numFmts><numFmt numFmtId="164" formatCode="` + code + `"/></numFmts><cellXfs><xf/><xf numFmtId="164"/></cellXfs></styleSheet>`
		})
		if r := first(t, data); r.Cells[0] != "3 m" {
			t.Errorf("%s: %q", code, r.Cells)
		}
	}
}

func TestODSPartedFigures(t *testing.T) {
	for _, tt := range []struct {
		value, shown, want string
		unlike             bool
	}{
		{"510", `5'-10"`, `5'-10"`, false}, {"6", `0'-06"`, `0'-06"`, false}, {"350", "3m50", "3m50", false}, {"600400", "600x400", "600x400", false},
		{"600", "600 x 400", "600 x 400", false}, {"300", "3000", "3000", true}, {"500", "0.5 m", "0.5 m", false}, {"1500", "1 500", "1500", false},
		{"1.5", "1 1/2", "1.5", false}, {"1000", "1E+03", "1000", false}, {"1", "TRUE", "TRUE", false},
	} {
		r := first(t, odsData(t, fmt.Sprintf(`<table:table-row><table:table-cell office:value-type="float" office:value="%s"><text:p>%s</text:p></table:table-cell></table:table-row>`, tt.value, tt.shown)))
		if r.Cells[0] != tt.want || slices.Contains(r.Unlike, 0) != tt.unlike {
			t.Errorf("%s as %s: %q %v, want %q %v", tt.value, tt.shown, r.Cells[0], r.Unlike, tt.want, tt.unlike)
		}
	}
}

// Cells merged down are followed in one sweep, however they lie over each other.
func TestMergedDown(t *testing.T) {
	merged := func(quote, prefix string, refs ...string) []byte {
		return part(t, sheetData(t, `<row r="1"><c r="B1"><v>1</v></c></row><row r="2"><c r="A2"><v>5</v></c><c r="B2"><v>2</v></c></row><row r="3"><c r="B3"><v>3</v></c></row><row r="4"/><row r="5"><c r="C5"><v>9</v></c></row>`), sheet1, func(s string) string {
			open, shut := "<"+prefix+"mergeCell ref="+quote, quote+"/>"
			list := open + strings.Join(refs, shut+open) + shut
			return strings.Replace(s, "</sheetData>", "</sheetData><"+prefix+"mergeCells>"+list+"</"+prefix+"mergeCells>", 1)
		})
	}
	for _, tt := range []struct {
		quote, prefix string
		refs          []string
		want          string
	}{
		{`"`, "", []string{"A2:A4"}, " 1|5 2|5 3|  9"}, {`'`, "x:", []string{"A2:A4"}, " 1|5 2|5 3|  9"}, {`"`, "", []string{"B1:B5", "A2:A5", "B2:B3"}, " 1|5 2|5 3|5 1 9"},
		{`"`, "", []string{"A1:A5", "D2:D9"}, " 1|5 2| 3|  9"}, {`"`, "", []string{"B3:C5"}, " 1|5 2| 3| 3 9"},
	} {
		_, cells, err := rowsOf(t, merged(tt.quote, tt.prefix, tt.refs...), 0)
		var rows []string
		for _, c := range cells {
			rows = append(rows, strings.Join(c, " "))
		}
		if got := strings.Join(rows, "|"); got != tt.want || err != nil {
			t.Errorf("%v: %q %v, want %q", tt.refs, got, err, tt.want)
		}
	}
	many := make([]string, mostMerges+1)
	for i := range many {
		many[i] = "Z5:Z9"
	}
	if _, _, err := rowsOf(t, merged(`"`, "", many...), 0); err == nil || !strings.Contains(Unread("s", err).Error(), "s has more than 100000 merged cells") {
		t.Errorf("%v", err)
	}
}

// A sheet with many cells merged over each other is read in about the time of one with
// none: the benchmark holds one beside the other.
func BenchmarkMergedDown(b *testing.B) {
	var rows, list strings.Builder
	for i := 1; i <= 20_000; i++ {
		fmt.Fprintf(&rows, `<row r="%d"><c><v>600</v></c><c><v>400</v></c></row>`, i)
		if i <= 15_000 {
			fmt.Fprintf(&list, `<mergeCell ref="B%d:B20000"/>`, i)
		}
	}
	for name, list := range map[string]string{"none": "", "many": "<mergeCells>" + list.String() + "</mergeCells>"} {
		data := part(b, sheetData(b, rows.String()), sheet1, func(s string) string { return strings.Replace(s, "</sheetData>", "</sheetData>"+list, 1) })
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				w, err := Open(data)
				if err != nil {
					b.Fatal(err)
				}
				r, err := w.Rows(w.Sheets[0])
				for err == nil {
					err = r.Next()
				}
				if err != io.EOF {
					b.Fatal(err)
				}
			}
		})
	}
}
