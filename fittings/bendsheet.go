package fittings

import (
	"math"

	"blankoff/fittings/surface"
)

// squareHeel is a rectangular bend with a throat of radius R and a heel whose
// outer sheets meet in a corner, W in the plane and H across:
//
//	2 cheeks [(R+W)^2 tan(theta/2) - R^2 theta/2] + 2 (R+W) tan(theta/2) H + R theta H
//
// At 90 degrees: 2[(R+W)^2 - pi R^2/4] + 2(R+W)H + pi R H/2. Mensuration.
type squareHeel struct{ w, h, throat, angle float64 }

func (f squareHeel) area() float64 {
	outer, t, theta := f.throat+f.w, math.Tan(rad(f.angle)/2), rad(f.angle)
	cheek := outer*outer*t - f.throat*f.throat*theta/2
	return 2*cheek + 2*outer*t*f.h + f.throat*theta*f.h
}

func (f squareHeel) figures() string {
	outer, tan := fig(f.throat+f.w), "tan("+deg(f.angle)+" / 2)"
	arc := fig(f.throat) + " x pi x " + deg(f.angle) + " / 180"
	return "2 x (" + outer + "^2 x " + tan + " - " + fig(f.throat) + " x " + arc + " / 2) + 2 x " +
		outer + " x " + tan + " x " + fig(f.h) + " + " + arc + " x " + fig(f.h)
}
func (f squareHeel) second() string { return "" }

// cheeks is the two cheeks of a reducing radius bend, whose heel's radius goes
// linearly from r1 to r2 round a throat of radius R:
// integral of (rho^2 - R^2) d phi = theta [(r1^2 + r1 r2 + r2^2)/3 - R^2].
type cheeks struct{ r1, r2, throat, angle float64 }

func (f cheeks) area() float64 {
	return rad(f.angle) * ((f.r1*f.r1+f.r1*f.r2+f.r2*f.r2)/3 - f.throat*f.throat)
}
func (f cheeks) figures() string {
	a, b := fig(f.r1), fig(f.r2)
	return "pi x " + deg(f.angle) + " / 180 x ((" + a + "^2 + " + a + " x " + b + " + " + b + "^2) / 3 - " + fig(f.throat) + "^2)"
}
func (f cheeks) second() string { return "" }

// heel is the heel of a reducing radius bend, H across:
// H integral 0..theta of sqrt(rho^2 + rho'^2) d phi.
type heel struct{ r1, r2, h, angle float64 }

func (f heel) strip(phi float64) float64 {
	theta := rad(f.angle)
	return math.Hypot(f.r1+(f.r2-f.r1)*phi/theta, (f.r2-f.r1)/theta)
}
func (f heel) area() float64 { return f.h * surface.Integrate(f.strip, 0, rad(f.angle)) }
func (f heel) figures() string {
	slope := (f.r2 - f.r1) / rad(f.angle)
	return fig(f.h) + " x integral over t from 0 to pi x " + deg(f.angle) + " / 180 of sqrt((" + fig(f.r1) + times(slope, "t") + ")^2 + (" + fig(slope) + ")^2)"
}
func (f heel) second() string {
	return "t in radians, " + byStrips(f.h*surface.Strips(f.strip, 0, rad(f.angle), strips))
}

// curvedStrip is a sheet of constant width along a path.
type curvedStrip struct {
	wide float64
	path path
}

func (f curvedStrip) area() float64   { return f.wide * f.path.length() }
func (f curvedStrip) figures() string { return fig(f.wide) + " x " + f.path.figures() }
func (f curvedStrip) second() string  { return "" }
