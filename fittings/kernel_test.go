package fittings

import (
	"encoding/json"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// kernelPiece is a piece as it was built and measured by a geometry kernel that
// knows none of our formulas. Sizes are under the headings of a schedule, in mm
// and degrees.
type kernelPiece struct {
	Kind    string             `json:"kind"`
	Style   string             `json:"style"`
	Shape   string             `json:"shape"`
	Shape2  string             `json:"shape2"`
	Plane   string             `json:"plane"`
	From    string             `json:"from"` // the wall of a spigot
	Note    string             `json:"note"`
	Sizes   map[string]float64 `json:"sizes"`
	With    []kernelPiece      `json:"with"` // spigots in its wall
	Built   string             `json:"built"`
	Area    float64            `json:"area_m2"`
	Opening float64            `json:"opening_m2"`
}

// String gives the piece as a row of a schedule, which rows_test.go reads.
func (k kernelPiece) String() string {
	var cells []string
	for _, c := range [...][2]string{{"kind", k.Kind}, {"style", k.Style}, {"shape", k.Shape}, {"shape2", k.Shape2}, {"plane", k.Plane}, {"from", k.From}} {
		if c[1] != "" {
			cells = append(cells, c[0]+"="+c[1])
		}
	}
	for d := range NumDims {
		if v, given := k.Sizes[d.Heading()]; given {
			cells = append(cells, d.Heading()+"="+strconv.FormatFloat(v, 'g', -1, 64))
		}
	}
	return strings.Join(cells, ", ")
}

func readKernelPieces(t *testing.T) []kernelPiece {
	t.Helper()
	text, err := os.ReadFile("../testdata/kernel/areas.json")
	if err != nil {
		t.Fatal(err)
	}
	var file struct{ Pieces []kernelPiece }
	if err := json.Unmarshal(text, &file); err != nil {
		t.Fatal(err)
	}
	return file.Pieces
}

func TestDev(t *testing.T) {
	for _, k := range readKernelPieces(t) {
		p := row(t, k.String())
		m, pr := Measure(p)
		if len(pr) > 0 {
			fmt.Println("PROBLEM", k, k.Note, pr)
			continue
		}
		a := m.Area
		for _, w := range k.With {
			wm := measured(t, w.String())
			a += wm.Area - wm.Opening
		}
		op := 0.0
		if k.Opening > 0 {
			op = m.Opening/k.Opening - 1
		}
		fmt.Printf("%9.1e %9.1e %.9f %s %s\n", a/k.Area-1, op, k.Area, k, k.Note)
	}
	_ = slices.Max[[]int]
}
