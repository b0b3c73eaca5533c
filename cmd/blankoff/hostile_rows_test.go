//go:build unix

package main

import (
	"fmt"
	"io"
	"strings"
	"testing"
)

// TestHostileRows reads sheets of many rows whose cells or merged cells are made to
// keep a reader busy.
func TestHostileRows(t *testing.T) {
	rows := func(n int, third, below string) func(io.Writer) {
		return func(w io.Writer) {
			io.WriteString(w, sheetOpen+strings.NewReplacer("diameter_mm", "size", "</row>", `<c r="D1" t="inlineStr"><is><t>note</t></is></c></row>`).Replace(headRow))
			for i := range n {
				fmt.Fprintf(w, `<row r="%d"><c t="inlineStr"><is><t>straight</t></is></c><c t="inlineStr"><is><t>%s</t></is></c><c><v>3000</v></c><c><v>%d</v></c></row>`, i+2, third, i)
			}
			io.WriteString(w, below)
		}
	}
	var apart, within strings.Builder
	for i := range 15_000 {
		fmt.Fprintf(&apart, `<mergeCell ref="%s%d:%s30000"/>`, string(rune('H'+i%15)), i+2, string(rune('H'+i%15)))
		fmt.Fprintf(&within, `<mergeCell ref="D%d:D30000"/>`, i+2)
	}
	var below strings.Builder
	for r := range 1_000_000 {
		fmt.Fprintf(&below, `<row r="%d" ht="15"><c r="A%d" s="0"/></row>`, r+12, r+12)
	}
	merged := func(list string) string {
		return "</sheetData><mergeCells>" + list + "</mergeCells></worksheet>"
	}
	for _, c := range []struct {
		name  string
		write func(io.Writer)
		code  int
		about string
	}{
		{"merged cells over each other, beside the rows", rows(20_000, "600x400", merged(apart.String())), exitDone, ""},
		{"merged cells over each other, in the rows", rows(20_000, "600x400", merged(within.String())), exitDone, ""},
		{"200,000 merged cells", rows(9, "600x400", merged(strings.Repeat(`<mergeCell ref="H2:H9"/>`, 200_000))), exitFailed, "take the merging off"},
		{"sizes without end", rows(19_000, strings.Repeat("600x", 240), sheetShut), exitFailed, "too long for a size"},
		{"brackets without end", rows(19_000, strings.Repeat("(", 960), sheetShut), exitFailed, "too long for a size"},
		{"a million empty rows below", rows(9, "600x400", below.String()+sheetShut), exitDone, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := site(t, map[string]string{"hostile.xlsx": string(book(t, map[string]func(io.Writer){sheetPart: c.write}))})
			r := withstands(t, dir, c.name, nil, "takeoff", "hostile.xlsx", "--totals")
			if r.code != c.code || !strings.Contains(strings.Join(strings.Fields(r.stderr), " "), c.about) {
				t.Errorf("exit %d, said %.300q, want exit %d and a word of %q", r.code, r.stderr, c.code, c.about)
			}
		})
	}
}
