package workbook

import (
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"strings"
	"testing"
	"testing/iotest"

	"blankoff/takeoff/schedule/workbook/dress"

	"github.com/xuri/excelize/v2"
)

// What stands behind the rows is found wherever the reading of a block ends.
func TestScan(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 4))
	for range 30 {
		before, between := rnd.IntN(300_000), rnd.IntN(300_000)
		text := strings.Repeat("<c/>mergeCells ", before/15) + strings.Repeat(" ", before%15) + `<mergeCells count="1"><mergeCell ref="A1:A2"/></mergeCells>` + strings.Repeat("x", between) + `<s:headerFooter><s:oddHeader>&amp;CAll</s:oddHeader></s:headerFooter><a/>`
		s := scan{from: iotest.HalfReader(strings.NewReader(text))}
		if got := s.find("mergeCells", "headerFooter"); got != 0 {
			t.Fatalf("found %d first", got)
		}
		if list, over := s.until("mergeCells>", 1000); over || !bytes.HasPrefix(list, []byte(` count="1"><mergeCell ref="A1:A2"/></`)) {
			t.Fatalf("%.60q %v", list, over)
		}
		if got := s.find("mergeCells", "headerFooter"); got != 1 {
			t.Fatalf("found %d second", got)
		}
		if list, over := s.until("headerFooter>", 1000); over || fmt.Sprint(printed(list)) != "[All]" {
			t.Fatalf("%.60q %v", list, over)
		}
		if got := s.find("mergeCells", "headerFooter"); got != -1 {
			t.Fatalf("found %d third", got)
		}
	}
	s := scan{from: io.LimitReader(strings.NewReader("<mergeCells"+strings.Repeat(" ", 400_000)), 400_000)}
	s.find("mergeCells")
	if _, over := s.until("mergeCells>", 1000); !over {
		t.Error("a list without end isn't told of")
	}
}

// Text at the head and foot of pages, without its codes (ECMA-376 part 1, 18.3.1.46).
func TestPrinted(t *testing.T) {
	list := []byte(`><oddHeader>&amp;L&amp;"Arial,Bold"&amp;12Job 7&amp;CAlle Maße in cm&amp;R&amp;K808080Seite &amp;P von &amp;N</oddHeader><oddFooter>&amp;CA &amp;&amp; B</oddFooter><evenHeader/></`)
	if got := strings.Join(printed(list), "|"); got != "Job 7|Alle Maße in cm|Seite  von|A & B" {
		t.Error(got)
	}
}

// Colours of the text and the filling of cells, as each kind of file writes them.
func TestPaints(t *testing.T) {
	ods := odsData(t, `<table:table-row><table:table-cell table:style-name="g" office:value-type="string"><text:p>a</text:p></table:table-cell><table:table-cell table:style-name="child" office:value-type="string"><text:p>b</text:p></table:table-cell></table:table-row>`+
		`<table:table-row><table:table-cell table:style-name="w" office:value-type="string"><text:p>a</text:p></table:table-cell></table:table-row><table:table-row><table:table-cell table:style-name="wb" office:value-type="string"><text:p>a</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>a</text:p></table:table-cell></table:table-row>`,
		`<style:style style:name="g" style:family="table-cell"><style:text-properties fo:color="#808080"/></style:style><style:style style:name="child" style:family="table-cell" style:parent-style-name="g"><style:table-cell-properties fo:background-color="transparent"/></style:style>`+
			`<style:style style:name="w" style:family="table-cell"><style:text-properties fo:color="#ffffff"/></style:style><style:style style:name="wb" style:family="table-cell" style:parent-style-name="w"><style:table-cell-properties fo:background-color="#000080"/></style:style>`)
	check(t, "ods", ods, dress.Painted{Font: 0x1808080}, dress.Painted{Font: 0x1ffffff, Unseen: true}, dress.Painted{})

	f := excelize.NewFile()
	two := 1
	for i, s := range []*excelize.Style{{Font: &excelize.Font{Color: "808080"}}, {Font: &excelize.Font{ColorTheme: new(int), ColorTint: -.5}}, {Font: &excelize.Font{ColorTheme: new(int)}}, {Font: &excelize.Font{ColorTheme: &two}}, {Font: &excelize.Font{ColorIndexed: 10}, Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"FFFF00"}}}} {
		id, err := f.NewStyle(s)
		if err == nil {
			err = f.SetCellStr("Sheet1", fmt.Sprintf("A%d", i+1), "x")
		}
		if err == nil {
			err = f.SetCellStyle("Sheet1", fmt.Sprintf("A%d", i+1), fmt.Sprintf("A%d", i+1), id)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatal(err)
	}
	check(t, "xlsx", b.Bytes(), dress.Painted{Font: 0x1808080}, dress.Painted{Font: 0x17f7f7f}, dress.Painted{Font: 0x1ffffff, Unseen: true}, dress.Painted{}, dress.Painted{Font: 0x1ff0000, Fill: 0x1ffff00})
}

// check holds the colours of the rows of the first sheet against those wanted.
func check(t *testing.T, what string, data []byte, want ...dress.Painted) {
	t.Helper()
	w, err := Open(data)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := w.Rows(w.Sheets[0])
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	for i, x := range want {
		if err := rows.Next(); err != nil {
			t.Fatal(err)
		}
		got := rows.Paint
		got.Met = false
		if got != x {
			t.Errorf("%s, row %d: %+v, want %+v", what, i+1, got, x)
		}
	}
}
