package fittings

import (
	"encoding/binary"
	"math"
	"math/rand"
	"testing"
)

// FuzzMeasure makes pieces of anything at all: each has either problems and no
// area, or a finite area over 0, whole ends, a working and a source.
func FuzzMeasure(f *testing.F) {
	f.Add(byte(Straight), byte(0), byte(0), byte(0), byte(0), uint32(1<<Width|1<<Height|1<<Length), []byte{2, 88, 1, 144, 5, 220})
	f.Add(byte(Tee), byte(Conical), byte(Circular), byte(0), byte(0), uint32(1<<Diameter|1<<Length|1<<BranchDiameter|1<<BranchLength|1<<Entry), []byte{1, 244, 2, 188, 0, 250, 0, 150, 1, 94})
	f.Add(byte(Spigot), byte(0), byte(FlatOval), byte(0), byte(9), uint32(1<<Width|1<<Height|1<<Length|1<<BranchShift|1<<BranchAngle), []byte{1, 244, 0, 100, 1, 94, 0, 60, 0, 20})
	f.Add(byte(Transition), byte(0), byte(Rectangular), byte(FlatOval), byte(0), uint32(1<<Width|1<<Height|1<<Width2|1<<Height2|1<<Length|1<<OffsetShift), []byte{1, 244, 0, 100, 1, 94, 0, 60, 0, 1, 0, 7})
	f.Add(byte(Bend), byte(Gored), byte(0), byte(0), byte(1), uint32(1<<Diameter|1<<Angle|1<<Radius|1<<Gores), []byte{1, 244, 0, 100, 1, 94, 0, 5})
	f.Add(byte(Breeches), byte(0), byte(0), byte(0), byte(1), uint32(1<<Diameter|1<<BranchDiameter|1<<OffsetShift|1<<Length), []byte{1, 244, 0, 100, 1, 94, 0, 50})
	f.Fuzz(func(t *testing.T, kind, style, shape, shape2, flags byte, given uint32, raw []byte) {
		p := &Piece{Kind: Kind(kind % 16), Style: Style(style % 13), Shape: Shape(shape % 5), Shape2: Shape(shape2 % 5), Plane: Plane(flags % 3)}
		p.WallFlat = flags&4 != 0
		p.Wall.Shape = Shape(flags >> 3 % 4)
		next := func() float64 {
			v, rest := fuzzed(raw)
			raw = rest
			return v
		}
		for d := range NumDims {
			if given&(1<<d) != 0 {
				v := next()
				if d.Unit() != Metre {
					v *= 1000
				}
				p.Sizes.Set(d, v)
			}
		}
		p.Wall.Width, p.Wall.Height, p.Wall.Diameter = next(), next(), next()
		checkOutcome(t, p)
	})
}

// fuzzed takes two bytes as millimetres, and a few values as what no size may be.
func fuzzed(raw []byte) (float64, []byte) {
	if len(raw) < 2 {
		return 0.3, nil
	}
	switch v := int16(binary.BigEndian.Uint16(raw)); v {
	case math.MaxInt16:
		return math.NaN(), raw[2:]
	case math.MinInt16:
		return math.Inf(1), raw[2:]
	case math.MinInt16 + 1:
		return 5e-324, raw[2:]
	case math.MaxInt16 - 1:
		return math.MaxFloat64, raw[2:]
	default:
		return float64(v) / 1000, raw[2:]
	}
}

func checkOutcome(t *testing.T, p *Piece) {
	t.Helper()
	m, problems := Measure(p)
	if len(problems) > 0 {
		if m.Area != 0 || m.Opening != 0 {
			t.Fatalf("%+v: area %g beside %+v", p, m.Area, problems)
		}
		for _, problem := range problems {
			if problem.Message == "" || problem.Expected == "" || problem.Dim == NumDims && problem.Word == "" {
				t.Fatalf("%+v: empty problem %+v", p, problem)
			}
		}
	} else if !(m.Area > 0) || math.IsInf(m.Area, 0) || !(m.Opening >= 0) || math.IsInf(m.Opening, 0) {
		t.Fatalf("%+v: area %g, opening %g and no problem", p, m.Area, m.Opening)
	}
	checkBases(t, p, len(problems) == 0)
	for _, end := range m.Ends {
		known := end.Shape != NoShape
		if known && !(end.Girth() > 0 && end.FaceArea() > 0 && !math.IsInf(end.Girth(), 0)) || !known && end.CrossSection != (CrossSection{}) {
			t.Fatalf("%+v: end %+v", p, end)
		}
	}
	if measured := len(problems) == 0; measured != (Working(p) != "") || measured != (Source(p) != "") {
		t.Fatalf("%+v: working %q and source %q don't fit %+v", p, Working(p), Source(p), problems)
	}
}

// checkBases: a basis measures what Measure measures, but for centre lines that
// don't meet, and its area is finite and not negative.
func checkBases(t *testing.T, p *Piece, measured bool) {
	t.Helper()
	for _, b := range []*Basis{&byCentreLine, &byIntersection, &byLargest} {
		area, opening, problems := AreaOn(p, b)
		unmet := b.BendLength == ToIntersection && len(problems) == 1 && (problems[0].Dim == Angle || problems[0].Dim == OffsetShift)
		if (len(problems) == 0) != measured && !unmet {
			t.Fatalf("%+v on %s: %+v", p, b.Name, problems)
		}
		if !(area >= 0) || math.IsInf(area, 0) || opening != 0 || len(problems) > 0 && area != 0 {
			t.Fatalf("%+v on %s: area %g, opening %g", p, b.Name, area, opening)
		}
		if (len(problems) == 0) != (WorkingOn(p, b) != "") {
			t.Fatalf("%+v on %s: working %q", p, b.Name, WorkingOn(p, b))
		}
	}
}

// TestLikelyPieces holds the same of many pieces whose sizes are nearly right.
func TestLikelyPieces(t *testing.T) {
	r := rand.New(rand.NewSource(9))
	measured := map[Kind]int{}
	for range 40000 {
		p := &Piece{Kind: Kind(1 + r.Intn(int(Inline))), Shape: Shape(r.Intn(4)), Shape2: Shape(r.Intn(4)), Plane: Plane(r.Intn(2))}
		if styles := kinds[p.Kind-1].Styles; len(styles) > 0 {
			p.Style = styles[r.Intn(len(styles))]
		}
		p.Wall, p.WallFlat = randomSection(r, Shape(1+r.Intn(3))), r.Intn(4) == 0
		likelySizes(r, p)
		checkOutcome(t, p)
		if _, problems := Measure(p); len(problems) == 0 {
			measured[p.Kind]++
		}
	}
	for _, info := range kinds {
		if measured[info.Kind] < 20 {
			t.Errorf("only %d likely %s pieces could be measured", measured[info.Kind], info.Name)
		}
	}
}

// likelySizes gives most sizes, and leaves out those that contradict others.
func likelySizes(r *rand.Rand, p *Piece) {
	roundBranch := r.Intn(2) == 0
	branched := p.Kind == Tee || p.Kind == Cross || p.Kind == Spigot
	skip := map[Dim]bool{
		BranchDiameter: !roundBranch, BranchWidth: roundBranch, BranchHeight: roundBranch,
		Angle: branched, Radius: r.Intn(2) == 0, BranchAngle: r.Intn(2) == 0, BranchShift: r.Intn(2) == 0,
	}
	for _, d := range []Dim{Width2, Height2, Diameter2} {
		skip[d] = p.Kind != Reducer && p.Kind != Transition
	}
	for _, d := range []Dim{Width, Height, Diameter, Length} {
		skip[d] = p.Kind == Spigot
	}
	skip[Throat] = !skip[Radius]
	for d := range GivenArea {
		if skip[d] || r.Intn(20) == 0 {
			continue
		}
		v := between(r, 0, 0.6)
		switch d {
		case Length, BranchLength:
			v *= 3
		case Angle, BranchAngle:
			v *= 250
		case Gores:
			v = float64(2 + r.Intn(6))
		case BranchDiameter, BranchWidth, BranchHeight, BranchShift:
			v /= 3
		}
		p.Sizes.Set(d, v)
	}
}
