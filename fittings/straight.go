package fittings

import "math"

// Common piece lengths in m: a straight longer than this is several pieces.
// Common practice (a 1500 mm standard rectangular piece is in a German list of
// fittings; round duct of 3000 mm in spiral-duct catalogues).
const (
	RectangularPieceLength = 1.5
	RoundPieceLength       = 3.0 // circular and flat-oval
)

// pieceSlack is how much shorter than a whole piece a remainder may be before it
// counts, in m: it absorbs float noise.
const pieceSlack = 1e-6

// mostPieces keeps a slip in the piece length from making millions of pieces.
const mostPieces = 100000

// NumberOfPieces is the number of pieces in a straight of the given length (m)
// made in pieces of pieceLength (m; 0 or less means the common length of the
// shape). It's at least 1, and 1 for a length that isn't finite.
func NumberOfPieces(shape Shape, length, pieceLength float64) int {
	if !(pieceLength > 0) {
		pieceLength = RoundPieceLength
		if shape == Rectangular {
			pieceLength = RectangularPieceLength
		}
	}
	n := math.Ceil((length - pieceSlack) / pieceLength)
	if !(n > 1) || math.IsInf(n, 0) {
		return 1
	}
	return int(min(n, mostPieces))
}

// PieceLengths divides a straight into whole pieces from the plant end and a
// remainder, m. The lengths add up to the straight's.
func PieceLengths(shape Shape, length, pieceLength float64) []float64 {
	n := NumberOfPieces(shape, length, pieceLength)
	if !(pieceLength > 0) {
		pieceLength = RoundPieceLength
		if shape == Rectangular {
			pieceLength = RectangularPieceLength
		}
	}
	lengths := make([]float64, n)
	for i := range n - 1 {
		lengths[i] = pieceLength
	}
	lengths[n-1] = length - float64(n-1)*pieceLength
	return lengths
}

// prism is a constant section along a path: A = P x l, exactly, for any straight,
// arc or mitred path, because every prism cut by oblique planes has the lateral
// area of its girth times the distance along the line through the girth's
// centroid, and a section swept round an axis that of its girth times the
// centroid's path (Pappus).
type prism struct {
	section CrossSection
	path    path
}

func (f prism) area() float64   { return f.section.Girth() * f.path.length() }
func (f prism) figures() string { return f.section.girthFigures() + " x " + f.path.figures() }
func (f prism) second() string  { return "" }

// path is the centre line of a prism.
type path interface {
	length() float64 // m
	figures() string
	intersection() path      // by where the centre lines meet; nil where they don't
	outer(side float64) path // along the longest edge, side (m) in the plane
}

// level is a straight path.
type level float64

func (l level) length() float64 { return float64(l) }
func (l level) figures() string { return fig(float64(l)) }

// PlainStraight measures the commonest piece, a straight with nothing odd about
// it: its cross-section, and its area girth x length, m2. ok is false for any
// piece that needs a closer look; Measure gives the same and more.
func PlainStraight(p *Piece) (s CrossSection, area float64, ok bool) {
	const round, sided = 1<<Diameter | 1<<Length, 1<<Width | 1<<Height | 1<<Length
	if p.Kind != Straight || p.Style != NoStyle {
		return s, 0, false
	}
	s.Shape = p.Shape
	fits := within(p, Length)
	switch {
	case p.Sizes.given == round && (p.Shape == Circular || p.Shape == NoShape):
		s.Shape, s.Diameter = Circular, p.Sizes.of(Diameter)
		fits = fits && within(p, Diameter)
	case p.Sizes.given == sided && p.Shape != Circular:
		if s.Shape == NoShape {
			s.Shape = Rectangular
		}
		s.Width, s.Height = p.Sizes.of(Width), p.Sizes.of(Height)
		fits = fits && within(p, Width) && within(p, Height) && (s.Shape == Rectangular || s.Shape == FlatOval && s.Height <= s.Width)
	default:
		return s, 0, false
	}
	return s, s.Girth() * p.Sizes.of(Length), fits
}

func within(p *Piece, d Dim) bool {
	v := p.Sizes.of(d)
	return v >= dims[d].min && v <= dims[d].max
}

// buildStraight reads a straight, a flexible or an in-line piece: P x L.
func buildStraight(c *checker) built {
	s := c.main()
	length := c.need(Length, "")
	b := built{ends: Through(s), source: "girth x length, mensuration"}
	switch c.p.Kind {
	case Flexible:
		b.source = "girth x extended length, mensuration; corrugation ignored"
	case Inline:
		b.source = "girth x length, mensuration; measured through"
	}
	if c.ok() {
		c.prism(&b, prism{s, level(length)}, byLength)
	}
	return b
}

// face is the area of an end: ab, pi d^2/4, or pi m^2/4 + m(M-m).
type face struct{ section CrossSection }

func (f face) area() float64   { return f.section.FaceArea() }
func (f face) figures() string { return f.section.faceFigures() }
func (f face) second() string  { return "" }

// dome is a spherical cap of rise h on a circle: pi (d^2/4 + h^2).
type dome struct{ d, h float64 }

func (f dome) area() float64   { return math.Pi * (f.d*f.d/4 + f.h*f.h) }
func (f dome) figures() string { return "pi x (" + fig(f.d) + "^2 / 4 + " + fig(f.h) + "^2)" }
func (f dome) second() string  { return "" }

// buildCap reads a cap, flat by default or dished.
func buildCap(c *checker) built {
	s := c.main()
	b := built{ends: []End{{Role: PlantEnd, CrossSection: s}}, source: "face area, mensuration"}
	if c.p.Style != Dished {
		if c.ok() {
			b.parts = one(face{s})
		}
		return b
	}
	b.source = "spherical cap, mensuration"
	rise := c.need(Rise, " of the dished cap")
	switch {
	case s.Shape == Rectangular || s.Shape == FlatOval:
		c.refuse("style", "a circular dished cap, or area_m2", "only a circular dished cap has an exact area here: give area_m2")
	case s.Shape == Circular && rise > s.Diameter/2+slack:
		c.wrong(Rise, mm(leastSide)+" to "+mm(s.Diameter/2)+" mm", "a dished cap rises at most half its diameter")
	}
	if c.ok() {
		b.parts = one(dome{s.Diameter, rise})
	}
	return b
}

// box is the six faces of a plenum: 2 (wh + wl + hl).
type box struct{ w, h, l float64 }

func (f box) area() float64 { return 2 * (f.w*f.h + f.w*f.l + f.h*f.l) }
func (f box) figures() string {
	w, h, l := fig(f.w), fig(f.h), fig(f.l)
	return "2 x (" + w + " x " + h + " + " + w + " x " + l + " + " + h + " x " + l + ")"
}
func (f box) second() string { return "" }

// buildPlenum reads a plenum: all six faces. It has no ends of its own: each
// opening is as big as what joins it, which only the caller knows, and the
// caller takes it off.
func buildPlenum(c *checker) built {
	b := built{source: "six faces, mensuration; less what joins it"}
	if c.p.Shape == Circular || c.p.Shape == FlatOval {
		c.refuse("shape", "rectangular, or area_m2", "only a rectangular plenum can be measured: give area_m2")
		return b
	}
	w := c.need(Width, "")
	h := c.need(Height, "")
	l := c.need(Length, "")
	if c.ok() {
		b.parts = one(box{w, h, l})
	}
	return b
}
