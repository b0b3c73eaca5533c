package fittings

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
)

// row reads a piece from heading=value pairs in schedule units, as the examples
// of the kinds are written. A wall is written from=plenum, or from=rectangular
// 600x400, from=circular 500, from=flat-oval 800x300.
func row(t testing.TB, text string) *Piece {
	t.Helper()
	p, err := readRow(text)
	if err != nil {
		t.Fatalf("row %q: %v", text, err)
	}
	return p
}

func readRow(text string) (*Piece, error) {
	p := &Piece{}
	for pair := range strings.SplitSeq(text, ",") {
		heading, value, _ := strings.Cut(strings.TrimSpace(pair), "=")
		if err := setCell(p, heading, value); err != nil {
			return nil, err
		}
	}
	return p, nil
}

func setCell(p *Piece, heading, value string) error {
	ok := true
	switch heading {
	case "kind":
		p.Kind, ok = ParseKind(value)
	case "style":
		p.Style, ok = ParseStyle(value)
	case "shape":
		p.Shape, ok = ParseShape(value)
	case "shape2":
		p.Shape2, ok = ParseShape(value)
	case "plane":
		p.Plane, ok = ParsePlane(value)
	case "from":
		return setWall(p, value)
	default:
		d, known := ParseDim(heading)
		if !known {
			return fmt.Errorf("no heading %q", heading)
		}
		v, err := strconv.ParseFloat(value, 64)
		if err != nil {
			return err
		}
		if d.Unit() == Metre {
			v /= 1000
		}
		p.Sizes.Set(d, v)
	}
	if !ok {
		return fmt.Errorf("%s %q isn't known", heading, value)
	}
	return nil
}

func setWall(p *Piece, value string) error {
	word, size, sized := strings.Cut(value, " ")
	shape, ok := ParseShape(word)
	if !ok || !sized {
		p.WallFlat = true
		return nil
	}
	p.Wall.Shape = shape
	if shape == Circular {
		_, err := fmt.Sscanf(size, "%g", &p.Wall.Diameter)
		p.Wall.Diameter /= 1000
		return err
	}
	_, err := fmt.Sscanf(size, "%gx%g", &p.Wall.Width, &p.Wall.Height)
	p.Wall.Width, p.Wall.Height = p.Wall.Width/1000, p.Wall.Height/1000
	return err
}

// measured measures a row that must have no problems.
func measured(t testing.TB, text string) Measurement {
	t.Helper()
	return measuredPiece(t, row(t, text), text)
}

func measuredPiece(t testing.TB, p *Piece, text string) Measurement {
	t.Helper()
	m, problems := Measure(p)
	if len(problems) > 0 {
		t.Fatalf("%s: %+v", text, problems)
	}
	return m
}

// close fails unless got is within tol of want, relative to want.
func closeTo(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: got %.10g, want %.10g (off by %.2g)", what, got, want, got/want-1)
	}
}
