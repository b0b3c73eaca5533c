package fittings

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// kernelPiece is a piece as it was built and measured by a geometry kernel that
// knows none of our formulas (see the README beside the file). Sizes are under
// the headings of a schedule, in mm and degrees.
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
	Area    float64            `json:"area_m2"`
	Opening float64            `json:"opening_m2"`
	// Tolerance is relative: 1e-9, the error asked of the kernel's integration;
	// 1e-8 where it fuses curved solids, whose meeting curve it only follows,
	// and where a spiral heel is a spline. The worst seen is 2e-9.
	Tolerance float64 `json:"tolerance"`
}

// String gives the piece as a row, which readRow reads.
func (k kernelPiece) String() string {
	cells := []string{"kind=" + k.Kind}
	for _, c := range [...][2]string{{"style", k.Style}, {"shape", k.Shape}, {"shape2", k.Shape2}, {"plane", k.Plane}, {"from", k.From}} {
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
	var file struct {
		Pieces []kernelPiece `json:"pieces"`
	}
	if err := json.Unmarshal(text, &file); err != nil {
		t.Fatal(err)
	}
	for _, k := range file.Pieces {
		for heading := range k.Sizes {
			if _, known := ParseDim(heading); !known {
				t.Fatalf("%s: no heading %q", k, heading)
			}
		}
	}
	return file.Pieces
}

// TestKernelAgrees holds Measure against a general-purpose geometry kernel.
func TestKernelAgrees(t *testing.T) {
	worst := map[float64]float64{}
	for _, k := range readKernelPieces(t) {
		name := strings.TrimSpace(k.String() + " " + k.Note)
		if !(k.Area > 0 && k.Tolerance > 0 && k.Tolerance <= 1e-8) {
			t.Fatalf("%s: area %g, tolerance %g", name, k.Area, k.Tolerance)
		}
		m := measured(t, k.String())
		area := m.Area
		for _, s := range k.With {
			on := measured(t, s.String())
			area += on.Area - on.Opening
		}
		closeTo(t, name, area, k.Area, k.Tolerance)
		worst[k.Tolerance] = max(worst[k.Tolerance], math.Abs(area/k.Area-1))
		if k.Kind == "spigot" {
			closeTo(t, name+": opening", m.Opening, k.Opening, k.Tolerance)
		}
	}
	t.Logf("worst by tolerance: %.1g", worst)
}

// TestKernelCoversEveryKind fails when a kind, a style or a shape of a kind has
// no piece that the kernel measured, or when fewer than 60 pieces of 15 kinds
// and styles are left.
func TestKernelCoversEveryKind(t *testing.T) {
	var seen, made []string
	pieces := readKernelPieces(t)
	for _, k := range pieces {
		p := row(t, k.String())
		style := fmt.Sprintf("%s in style %q", p.Kind, p.Style)
		shape := fmt.Sprintf("%s %s", p.Shape, p.Kind)
		seen, made = append(seen, style, shape), append(made, style)
	}
	slices.Sort(made)
	made = slices.Compact(made)
	for _, info := range Kinds() {
		for _, s := range info.Styles {
			if want := fmt.Sprintf("%s in style %q", info.Kind, s); !slices.Contains(seen, want) {
				t.Errorf("no %s", want)
			}
		}
		for _, s := range info.Shapes {
			if want := fmt.Sprintf("%s %s", s, info.Kind); !slices.Contains(seen, want) {
				t.Errorf("no %s", want)
			}
		}
	}
	if len(pieces) < 60 || len(made) < 15 {
		t.Errorf("%d pieces of %d kinds and styles, want at least 60 of 15", len(pieces), len(made))
	}
}
