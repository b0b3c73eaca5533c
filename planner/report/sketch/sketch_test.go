package sketch

import (
	"math"
	"slices"
	"strings"
	"testing"

	"blankoff/fittings"
)

// eachDrawing calls f for every kind and style that there is.
func eachDrawing(t *testing.T, f func(t *testing.T, k fittings.KindInfo, d Drawing)) {
	for _, k := range fittings.Kinds() {
		styles := k.Styles
		if len(styles) == 0 {
			styles = []fittings.Style{fittings.NoStyle}
		}
		for _, s := range styles {
			d, ok := Of(k.Kind, s)
			if !ok {
				t.Errorf("no drawing of %s %s", k.Name, s)
				continue
			}
			t.Run(strings.ReplaceAll(d.Name(), ", ", "-"), func(t *testing.T) { f(t, k, d) })
		}
	}
}

func figures(d *Drawing) []Figure { return slices.Concat(d.Views, d.Sections) }

// TestRowsCanBeMeasured: every drawing is of a piece that can be made.
func TestRowsCanBeMeasured(t *testing.T) {
	eachDrawing(t, func(t *testing.T, k fittings.KindInfo, d Drawing) {
		p, err := ParseRow(d.Row)
		if err != nil {
			t.Fatal(err)
		}
		style := p.Style
		if style == fittings.NoStyle && len(k.Styles) > 0 {
			style = k.Styles[0]
		}
		if p.Kind != d.Kind || style != d.Style {
			t.Errorf("the row is a %s %s", style, p.Kind)
		}
		if m, problems := fittings.Measure(&p); len(problems) > 0 || len(m.Notes) > 0 {
			t.Errorf("%s: %v %v", d.Row, problems, m.Notes)
		}
	})
}

// TestEveryColumnHasALetter: each size among the columns of a kind has a letter
// in some drawing of that kind, and no letter stands for two sizes.
func TestEveryColumnHasALetter(t *testing.T) {
	drawn := map[fittings.Kind]map[string]bool{}
	eachDrawing(t, func(t *testing.T, k fittings.KindInfo, d Drawing) {
		if drawn[k.Kind] == nil {
			drawn[k.Kind] = map[string]bool{}
		}
		seen := map[string]bool{}
		for _, m := range d.Legend {
			if m.Letter == "" || seen[m.Letter] {
				t.Errorf("letter %q is missing or stands twice", m.Letter)
			}
			seen[m.Letter] = true
			for _, h := range m.Headings {
				drawn[k.Kind][h] = true
			}
		}
	})
	for _, k := range fittings.Kinds() {
		for _, text := range slices.Concat(k.Needs, k.Takes) {
			for _, w := range strings.FieldsFunc(text, func(r rune) bool { return !(r == '_' || r >= 'a' && r <= 'z' || r >= '0' && r <= '9') }) {
				if _, size := fittings.ParseDim(w); size && !drawn[k.Kind][w] {
					t.Errorf("%s: %s has no letter in any drawing", k.Name, w)
				}
			}
		}
	}
	letters := map[string]fittings.Dim{}
	for d := range fittings.NumDims {
		l := Letter(d)
		if other, twice := letters[l]; twice && l != "" {
			t.Errorf("%s stands for %s and %s", l, other.Heading(), d.Heading())
		}
		letters[l] = d
	}
	if Letter(fittings.NumDims) != "" {
		t.Error("what isn't a size has a letter")
	}
}

// TestLettersAreInTheLegend: every letter that is drawn is in the legend, and the
// other way round.
func TestLettersAreInTheLegend(t *testing.T) {
	eachDrawing(t, func(t *testing.T, _ fittings.KindInfo, d Drawing) {
		legend, drawn := map[string]bool{}, map[string]bool{}
		for _, m := range d.Legend {
			legend[m.Letter] = true
		}
		for _, f := range figures(&d) {
			for _, l := range f.Labels {
				if !l.Dim {
					continue
				}
				text, _, _ := strings.Cut(l.Text, " = ")
				for letter := range strings.SplitSeq(text, " or ") {
					drawn[letter] = true
					if !legend[letter] {
						t.Errorf("%q isn't in the legend", letter)
					}
				}
			}
		}
		for letter := range legend {
			if !drawn[letter] {
				t.Errorf("%q isn't drawn", letter)
			}
		}
	})
}

// TestLabelsAreClear: no line, arrow or other label runs through a label.
func TestLabelsAreClear(t *testing.T) {
	eachDrawing(t, func(t *testing.T, _ fittings.KindInfo, d Drawing) {
		for _, f := range figures(&d) {
			paths := pathsOf(&f)
			for i, l := range f.Labels {
				a, b := l.Box()
				for _, points := range paths {
					for k := 1; k < len(points); k++ {
						if crosses(points[k-1], points[k], a, b) {
							t.Errorf("%s: a line runs through %q at %.0f %.0f", f.Caption, l.Text, l.At.X, l.At.Y)
						}
					}
				}
				for _, other := range f.Labels[:i] {
					c, e := other.Box()
					if a.X < e.X && c.X < b.X && a.Y < e.Y && c.Y < b.Y {
						t.Errorf("%s: %q and %q overlap", f.Caption, l.Text, other.Text)
					}
				}
			}
		}
	})
}

func pathsOf(f *Figure) [][]Point {
	var paths [][]Point
	for _, l := range f.Lines {
		points := l.Points
		if l.Closed {
			points = append(slices.Clone(points), points[0])
		}
		paths = append(paths, points)
	}
	for _, a := range f.Arcs {
		paths = append(paths, a.Points())
	}
	for _, a := range f.Arrows {
		paths = append(paths, a.Corners())
	}
	return paths
}

// crosses reports whether any of 200 points of a line lies in a box.
func crosses(p, q, least, most Point) bool {
	for i := range 201 {
		s := float64(i) / 200
		x, y := p.X+(q.X-p.X)*s, p.Y+(q.Y-p.Y)*s
		if x > least.X && x < most.X && y > least.Y && y < most.Y {
			return true
		}
	}
	return false
}

// TestFiguresAreWhole: everything is finite and of a size that fits a page.
func TestFiguresAreWhole(t *testing.T) {
	eachDrawing(t, func(t *testing.T, _ fittings.KindInfo, d Drawing) {
		for _, f := range figures(&d) {
			if f.Caption == "" || len(f.Lines)+len(f.Arcs) == 0 || len(f.Labels) == 0 {
				t.Errorf("figure %q is empty", f.Caption)
			}
			for _, points := range pathsOf(&f) {
				for _, p := range points {
					if math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) {
						t.Errorf("%s: a point at %v", f.Caption, p)
					}
				}
			}
			least, most := f.Bounds()
			if w, h := most.X-least.X, most.Y-least.Y; w < 30 || w > 420 || h < 30 || h > 420 {
				t.Errorf("%s is %.0f by %.0f", f.Caption, w, h)
			}
		}
	})
}

// TestDrawnTrue holds a few sizes of drawings to their pieces.
func TestDrawnTrue(t *testing.T) {
	bend, _ := Of(fittings.Bend, fittings.RadiusStyle)
	var radii []float64
	for _, a := range bend.Views[0].Arcs {
		if a.Weight == Outline {
			radii = append(radii, a.R)
		}
	}
	// throat 200, width 500: the radii are as 2 to 7
	if len(radii) != 2 || math.Abs(radii[1]/radii[0]-3.5) > 1e-9 {
		t.Errorf("a bend's throat and heel have radii %v", radii)
	}
	// a cone is as wide as its entry where it meets the crown, and dips below it
	tee, _ := Of(fittings.Tee, fittings.Conical)
	p, _ := ParseRow(tee.Row)
	pen := &pen{sizes: p.Sizes, scale: 1000, drawing: &Drawing{Kind: fittings.Tee, Style: fittings.Conical}}
	j := pen.junction()
	foot := j.saddle()
	if w := foot[len(foot)-1].X - foot[0].X; math.Abs(w-330) > 1e-6 || math.Abs(foot[0].Y+250) > 1e-6 {
		t.Errorf("the cone is %g wide at %g", w, foot[0].Y)
	}
	for _, q := range foot {
		// on the cone: its radius at that height, with y from the main's circle
		across := math.Sqrt(250*250 - q.Y*q.Y)
		r := 165 + (250+q.Y)*(165-125)/150
		if math.Abs(math.Hypot(q.X, across)-r) > 1e-6 {
			t.Errorf("%v is off the cone: %g, want %g", q, math.Hypot(q.X, across), r)
		}
	}
	// a gored bend has a line for each mitre, and pieces numbered to the last
	gored, _ := Of(fittings.Bend, fittings.Gored)
	if labels := gored.Views[0].Labels; !slices.ContainsFunc(labels, func(l Label) bool { return l.Text == "5" }) || slices.ContainsFunc(labels, func(l Label) bool { return l.Text == "6" }) {
		t.Errorf("a bend of 5 gores has labels %v", labels)
	}
}

func TestOfRefuses(t *testing.T) {
	for _, c := range []struct {
		kind  fittings.Kind
		style fittings.Style
	}{{fittings.NoKind, 0}, {fittings.Kind(99), 0}, {fittings.Straight, fittings.Mitred}, {fittings.Bend, fittings.Dished}} {
		if d, ok := Of(c.kind, c.style); ok {
			t.Errorf("%v %v is drawn as %s", c.kind, c.style, d.Name())
		}
	}
	if d, ok := Of(fittings.Offset, fittings.NoStyle); !ok || d.Style != fittings.RadiusStyle {
		t.Errorf("an offset of no style is drawn as %s", d.Name())
	}
}

func TestParseRowRefuses(t *testing.T) {
	for _, row := range []string{"", "kind", "kind=widget", "kind=bend, style=odd", "widht_mm=5", "width_mm=x", "shape=blob", "shape2=blob", "plane=up", "from=a straight of dia x"} {
		if _, err := ParseRow(row); err == nil {
			t.Errorf("%q is read", row)
		}
	}
	p, err := ParseRow("kind=offset, style=mitred, shape=oval, shape2=round, plane=height, width_mm=600, angle_deg=45, from=a plenum")
	w, _ := p.Sizes.Get(fittings.Width)
	a, _ := p.Sizes.Get(fittings.Angle)
	if err != nil || w != 0.6 || a != 45 || p.Shape != fittings.FlatOval || p.Shape2 != fittings.Circular || p.Plane != fittings.PlaneHeight || !p.WallFlat {
		t.Errorf("%+v, %v", p, err)
	}
}
