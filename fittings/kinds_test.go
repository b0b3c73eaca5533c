package fittings

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// TestEveryKindIsDocumented fails when a kind lacks a word of explanation, a
// source, an example that works, or a reference value for each of its styles and
// shapes.
func TestEveryKindIsDocumented(t *testing.T) {
	if len(Kinds()) != int(Inline) {
		t.Fatalf("%d kinds listed", len(Kinds()))
	}
	for i, info := range Kinds() {
		if int(info.Kind) != i+1 {
			t.Errorf("%s stands in the place of kind %d", info.Name, i+1)
		}
		for what, text := range map[string]string{"name": info.Name, "formula": info.Formula, "source": info.Source, "example": info.Example, "doc": info.Doc} {
			if text == "" {
				t.Errorf("%s has no %s", info.Name, what)
			}
		}
		if len(info.Needs) == 0 || len(info.Shapes) == 0 || len(info.Aliases) == 0 {
			t.Errorf("%s lacks needs, shapes or aliases", info.Name)
		}
		if p := row(t, info.Example); p.Kind != info.Kind {
			t.Errorf("%s: the example is a %s", info.Name, p.Kind)
		}
		if got := measured(t, info.Example).Area; math.Abs(got-info.ExampleArea) > 1e-6 {
			t.Errorf("%s: the example is %.6f, stated %.6f", info.Name, got, info.ExampleArea)
		}
	}
}

// TestEveryStyleAndShapeIsMeasured: what KindInfo promises is measured, and
// nothing else.
func TestEveryStyleAndShapeIsMeasured(t *testing.T) {
	for _, info := range kinds {
		styles := info.Styles
		if len(styles) == 0 {
			styles = []Style{NoStyle}
		}
		for _, style := range styles {
			done := false
			for _, shape := range []Shape{Rectangular, Circular, FlatOval} {
				_, problems := Measure(fullRow(t, info.Kind, style, shape))
				if len(problems) == 0 {
					done = true
				}
				if listed := slices.Contains(info.Shapes, shape); !listed && len(problems) == 0 {
					t.Errorf("%s %s %s is measured but not listed", shape, style, info.Name)
				}
			}
			if !done {
				t.Errorf("%s %s is listed but no shape of it is measured", style, info.Name)
			}
		}
	}
}

// fullRow gives every size that a kind could want.
func fullRow(t *testing.T, kind Kind, style Style, shape Shape) *Piece {
	more := map[Kind]string{
		Bend: ", angle_deg=90", Reducer: ", width2_mm=500, height2_mm=100", Transition: ", diameter2_mm=400",
		Offset: ", offset_mm=300", Breeches: ", angle_deg=90, throat_mm=100", Cap: ", rise_mm=50",
	}[kind]
	section := ", width_mm=600, height_mm=200"
	if shape == Circular {
		section = ", diameter_mm=500"
		if other, changes := map[Kind]string{
			Reducer: ", diameter2_mm=400", Transition: ", width2_mm=500, height2_mm=100",
			Breeches: ", branch_diameter_mm=400, offset_mm=300",
		}[kind]; changes {
			more = other
		}
	}
	switch kind {
	case Tee, Cross, Spigot:
		more = ", branch_length_mm=200, branch_diameter_mm=100, entry_mm=120"
		if style == Shoe {
			more = ", branch_length_mm=200, branch_width_mm=100, branch_height_mm=100, entry_mm=50"
		}
	case Bend:
		if style != SquareThroat {
			more += ", throat_mm=100, gores=5"
		}
	}
	text := "kind=" + kind.String() + section + more + ", length_mm=2000, from=plenum"
	if kind == Spigot {
		text = "kind=spigot, from=plenum" + more
	}
	p := row(t, text)
	p.Style = style
	if kind != Spigot {
		p.Shape = shape
	}
	return p
}

// TestWordsAreUnambiguous: no alias means two kinds, and every name and alias is
// found in any dress.
func TestWordsAreUnambiguous(t *testing.T) {
	owner := map[string]Kind{}
	for _, info := range Kinds() {
		for _, w := range append([]string{info.Name}, info.Aliases...) {
			if other, taken := owner[plain(w)]; taken && other != info.Kind {
				t.Errorf("%q means %s and %s", w, other, info.Kind)
			}
			owner[plain(w)] = info.Kind
			for _, dressed := range []string{w, strings.ToUpper(w), " " + strings.ReplaceAll(w, "-", " ") + " ", strings.ReplaceAll(w, " ", "_"), w + "s"} {
				if k, ok := ParseKind(dressed); !ok || k != info.Kind {
					t.Errorf("ParseKind(%q) = %v, %v", dressed, k, ok)
				}
			}
		}
		if info.Kind.String() != info.Name {
			t.Errorf("%v prints as %q", info.Name, info.Kind.String())
		}
	}
	for _, w := range []string{"", "s", "grille", "square bend", "mitred bend", "wye", "eccentric reducer"} {
		if k, ok := ParseKind(w); ok {
			t.Errorf("ParseKind(%q) = %v", w, k)
		}
	}
}

func TestWords(t *testing.T) {
	for s := RadiusStyle; s <= Dished; s++ {
		if got, ok := ParseStyle(s.String()); !ok || got != s {
			t.Errorf("style %q parses as %v", s.String(), got)
		}
	}
	for s := Rectangular; s <= FlatOval; s++ {
		if got, ok := ParseShape(s.String()); !ok || got != s {
			t.Errorf("shape %q parses as %v", s.String(), got)
		}
	}
	for _, p := range []Plane{PlaneWidth, PlaneHeight} {
		if got, ok := ParsePlane(p.String()); !ok || got != p {
			t.Errorf("plane %q parses as %v", p.String(), got)
		}
	}
	for d := range NumDims {
		if got, ok := ParseDim(d.Heading()); !ok || got != d || d.Heading() == "" {
			t.Errorf("heading %q parses as %v", d.Heading(), got)
		}
	}
	for word, want := range map[string]Style{"Lobster-Back": Gored, "mitre": Mitred, "SQUARE THROAT": SquareThroat, "square heel": SquareHeel, "domed": Dished} {
		if got, ok := ParseStyle(word); !ok || got != want {
			t.Errorf("style %q parses as %v", word, got)
		}
	}
	for word, want := range map[string]Shape{"Round": Circular, "RECT": Rectangular, "Flat Oval": FlatOval, "oval": FlatOval, "circ.": Circular} {
		if got, ok := ParseShape(word); !ok || got != want {
			t.Errorf("shape %q parses as %v", word, got)
		}
	}
	if _, ok := ParsePlane("hard"); ok {
		t.Error("plane hard depends on which side is longer, and isn't taken")
	}
	if (NumDims).Heading() != "" || Kind(200).String() != "" || Style(200).String() != "" || EndRole(200).String() != "" {
		t.Error("words that aren't any print as something")
	}
}

func TestPieceLengths(t *testing.T) {
	for _, c := range []struct {
		shape         Shape
		length, piece float64
		want          int
	}{
		{Rectangular, 1.5, 0, 1}, {Rectangular, 3, 0, 2}, {Rectangular, 3.0000000001, 1.5, 2}, {Rectangular, 3.001, 1.5, 3},
		{Rectangular, 0.2, 0, 1}, {Circular, 3, 0, 1}, {Circular, 9.1, 0, 4}, {FlatOval, 6, 0, 2}, {FlatOval, 6, 2, 3},
		{Rectangular, 24 * 60 * 0.0254, 60 * 0.0254, 24}, {Rectangular, math.NaN(), 1.5, 1}, {Rectangular, math.Inf(1), 1.5, 1}, {Rectangular, -4, 1.5, 1},
		{Circular, 1000, 1e-9, mostPieces},
	} {
		if got := NumberOfPieces(c.shape, c.length, c.piece); got != c.want {
			t.Errorf("%s %g m in pieces of %g: %d, want %d", c.shape, c.length, c.piece, got, c.want)
		}
		lengths := PieceLengths(c.shape, c.length, c.piece)
		if len(lengths) != c.want {
			t.Errorf("%g m: %d lengths", c.length, len(lengths))
		}
		if c.want > 100 || !(c.length > 0) || math.IsInf(c.length, 0) {
			continue
		}
		sum := 0.0
		for i, l := range lengths {
			if !(l > 0) || i < len(lengths)-1 && l != lengths[0] {
				t.Errorf("%g m: piece %d is %g", c.length, i, l)
			}
			sum += l
		}
		closeTo(t, "sum of pieces", sum, c.length, 1e-14)
	}
}

func BenchmarkMeasureStraight(b *testing.B) {
	p := row(b, "kind=straight, width_mm=600, height_mm=400, length_mm=1500")
	b.ReportAllocs()
	for b.Loop() {
		Measure(p)
	}
}

func BenchmarkMeasure(b *testing.B) {
	for _, info := range kinds[1:] {
		p := row(b, info.Example)
		b.Run(info.Name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Measure(p)
			}
		})
	}
}
