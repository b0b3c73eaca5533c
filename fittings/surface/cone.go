package surface

import "math"

// Cone is a round branch that flares towards a round main at right angles to
// it: diameter 2 Crown at the main's crown, 2 End at its free end, Height beyond
// the crown.
type Cone struct {
	R      float64 // radius of the main
	Crown  float64 // radius of the branch at the main's crown, over End
	End    float64 // radius at the free end
	Height float64 // of the free end beyond the crown
}

// slope is m = (Crown - End) / Height.
func (c Cone) slope() float64 { return (c.Crown - c.End) / c.Height }

// room is R^2 (1 + m^2) - A^2 with A = Crown + m R. Where it is negative the
// cone outgrows the main and the two don't meet in one closed curve.
func (c Cone) room() float64 {
	m := c.slope()
	a := c.Crown + m*c.R
	return c.R*c.R*(1+m*m) - a*a
}

// Meets reports whether the cone meets the main in one closed curve above the
// main's axis.
func (c Cone) Meets() bool { return c.room() >= 0 && c.foot(1) > 0 }

// foot is the height z0 over the main's axis at which the generator with
// s = sin p meets the main. It solves (s rho(z))^2 + z^2 = R^2 with
// rho(z) = Crown + m (R - z).
func (c Cone) foot(s float64) float64 {
	m := c.slope()
	a, s2 := c.Crown+m*c.R, s*s
	disc := math.Max(0, c.R*c.R*(1+m*m*s2)-s2*a*a)
	return (m*a*s2 + math.Sqrt(disc)) / (1 + m*m*s2)
}

// Hole is the area cut out of the main: integral 0..2pi of
// (R^2/sin^2 p) (1 - sqrt(1 - rho^2 sin^2 p / R^2)) dp with rho = rho(z0),
// written R rho^2 / (R + z0), which is the same and has no 0/0.
func (c Cone) Hole() float64 { return c.hole(Integrate) }

// HoleStrips is Hole by n strips a quarter.
func (c Cone) HoleStrips(n int) float64 { return c.hole(StripsOf(n)) }

func (c Cone) hole(integrate integrator) float64 {
	m := c.slope()
	return 4 * integrate(func(p float64) float64 {
		z := c.foot(math.Sin(p))
		rho := c.Crown + m*(c.R-z)
		return c.R * rho * rho / (c.R + z)
	}, 0, math.Pi/2)
}

// Area is the area of the cone from the main to its free end:
// sqrt(1+m^2) integral 0..2pi of [End (z2-z0) + m (z2-z0)^2 / 2] dp, where z2 is
// the free end's height.
func (c Cone) Area() float64 { return c.area(Integrate) }

// AreaStrips is Area by n strips a quarter.
func (c Cone) AreaStrips(n int) float64 { return c.area(StripsOf(n)) }

func (c Cone) area(integrate integrator) float64 {
	m := c.slope()
	return 4 * math.Sqrt(1+m*m) * integrate(func(p float64) float64 {
		up := c.R + c.Height - c.foot(math.Sin(p))
		return up * (c.End + m*up/2)
	}, 0, math.Pi/2)
}
