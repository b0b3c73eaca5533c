package fittings

import (
	"fmt"
	"math"
	"math/rand"
	"testing"
)

// TestBendsAgainstMesh sweeps the outline of a section round an axis, or along
// the tangent polygon of a gored bend, and meshes the reducing bend's sheets.
func TestBendsAgainstMesh(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	for _, shape := range []Shape{Circular, Rectangular, FlatOval} {
		for range 4 {
			s := randomSection(r, shape)
			angle, gores := between(r, 20, 120), float64(3+r.Intn(4))
			w := inPlane(s, PlaneWidth)
			rc := w/2 + between(r, 0, 0.6)
			theta := angle * math.Pi / 180
			swept := refined(16, func(n int) float64 {
				sum := 0.0
				for q := range 4 {
					sum += grid(n, n, func(u, v float64) point {
						x, y := meshWalk(s, q, v)
						return point{(rc + x) * math.Cos(theta*u), (rc + x) * math.Sin(theta*u), y}
					})
				}
				return sum
			})
			mitres := gores - 1
			segments := refined(64, func(n int) float64 {
				// a whole piece between two mitre planes, square to its axis in the middle
				half := math.Tan(theta / 2 / mitres)
				sum := 0.0
				for q := range 4 {
					sum += grid(1, n, func(u, v float64) point {
						x, y := meshWalk(s, q, v)
						return point{x, y, (2*u - 1) * (rc + x) * half}
					})
				}
				return mitres * sum
			})
			for style, want := range map[Style]float64{RadiusStyle: swept, Gored: segments} {
				p := &Piece{Kind: Bend, Style: style, Shape: shape}
				setSection(p, s, nearEnd)
				p.Sizes.Set(Angle, angle)
				p.Sizes.Set(Radius, rc)
				if style == Gored {
					p.Sizes.Set(Gores, gores)
				}
				what := fmt.Sprintf("%v bend of %v, %.1f degrees, radius %.3f", style, s, angle, rc)
				closeTo(t, what, measuredPiece(t, p, what).Area, want, 1e-6)
			}
		}
	}
}

func TestReducingAndSquareHeelBendsAgainstMesh(t *testing.T) {
	r := rand.New(rand.NewSource(6))
	for range 8 {
		w1, w2, h, throat := between(r, 0.2, 0.9), between(r, 0.2, 0.9), between(r, 0.1, 0.8), between(r, 0, 0.4)
		angle := between(r, 15, 130)
		theta := angle * math.Pi / 180
		heel := func(u float64) float64 { return throat + w1 + (w2-w1)*u }
		corner := func(u float64) float64 { // outer sheets of a square heel, in polar form
			return (throat + w1) / math.Cos(math.Min(u, 1-u)*theta)
		}
		sheets := func(outer func(u float64) float64) float64 {
			return refined(64, func(n int) float64 {
				at := func(rho, u, z float64) point {
					return point{rho * math.Cos(theta*u), rho * math.Sin(theta*u), z}
				}
				cheek := grid(n, n, func(u, v float64) point { return at(throat+v*(outer(u)-throat), u, 0) })
				back := grid(n, 1, func(u, v float64) point { return at(outer(u), u, h*v) })
				front := grid(n, 1, func(u, v float64) point { return at(throat, u, h*v) })
				return 2*cheek + back + front
			})
		}
		p := &Piece{Kind: Bend}
		for d, v := range map[Dim]float64{Width: w1, Height: h, Width2: w2, Throat: throat, Angle: angle} {
			p.Sizes.Set(d, v)
		}
		what := fmt.Sprintf("bend %.3f to %.3f x %.3f, throat %.3f, %.1f degrees", w1, w2, h, throat, angle)
		closeTo(t, "reducing "+what, measuredPiece(t, p, what).Area, sheets(heel), 1e-7)
		p = &Piece{Kind: Bend, Style: SquareHeel}
		for d, v := range map[Dim]float64{Width: w1, Height: h, Throat: throat, Angle: angle} {
			p.Sizes.Set(d, v)
		}
		closeTo(t, "square heel "+what, measuredPiece(t, p, what).Area, sheets(corner), 1e-7)
	}
}
