package sketch

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"blankoff/fittings"
)

// Mark is a dimension letter and the column that it stands for.
type Mark struct {
	Letter   string
	Headings []string // more than one where either may be given
	Note     string
	Drawn    string // the size as drawn, in the column's unit; "" where it isn't drawn to a size
}

// Letter is the letter of a size in every drawing, "" for one that isn't drawn
// (a lining, a given area).
func Letter(d fittings.Dim) string {
	if d >= fittings.NumDims {
		return ""
	}
	return letters[d]
}

var letters = [fittings.NumDims]string{
	fittings.Width: "w", fittings.Height: "h", fittings.Diameter: "d", fittings.Length: "l",
	fittings.Angle: "a", fittings.Radius: "r", fittings.Throat: "t", fittings.Legs: "e", fittings.Gores: "n",
	fittings.Width2: "w2", fittings.Height2: "h2", fittings.Diameter2: "d2",
	fittings.OffsetShift: "o", fittings.OffsetShift2: "o2",
	fittings.BranchWidth: "bw", fittings.BranchHeight: "bh", fittings.BranchDiameter: "bd",
	fittings.BranchLength: "bl", fittings.BranchAngle: "ba", fittings.BranchShift: "bs",
	fittings.Entry: "entry", fittings.Rise: "rise",
}

// notes is what a size means wherever nothing else is said.
var notes = [fittings.NumDims]string{
	fittings.Angle: "change of direction", fittings.Radius: "of the centre line", fittings.Throat: "inside radius, instead of radius_mm",
	fittings.Legs: "straight leg at each end, if any", fittings.Gores: "pieces, ends counted",
	fittings.BranchWidth: "along the main", fittings.BranchHeight: "across the main",
	fittings.BranchLength: "along the branch's axis, from the main's wall",
	fittings.BranchAngle:  "90 where not given", fittings.BranchShift: "off the main's axis, if any",
}

// legend lists the letters that were drawn.
func (p *pen) legend() []Mark {
	var marks []Mark
	for d := range fittings.NumDims {
		if p.used&(1<<d) == 0 {
			continue
		}
		m := Mark{Letter: letters[d], Headings: []string{d.Heading()}, Note: notes[d]}
		if p.notes[d] != "" {
			m.Note = p.notes[d]
		}
		for _, other := range p.also[d] {
			m.Headings = append(m.Headings, other.Heading())
		}
		if v, ok := p.sizes.Get(d); ok {
			if d.Unit() == fittings.Metre {
				v *= 1000
			}
			m.Drawn = strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64)
		}
		marks = append(marks, m)
	}
	return marks
}

// ParseRow reads heading=value pairs in schedule units, as the examples of kinds
// are written. A `from` other than a round main is a flat wall.
func ParseRow(row string) (fittings.Piece, error) {
	var p fittings.Piece
	for pair := range strings.SplitSeq(row, ",") {
		heading, value, _ := strings.Cut(strings.TrimSpace(pair), "=")
		if err := setCell(&p, heading, value); err != nil {
			return fittings.Piece{}, err
		}
	}
	return p, nil
}

func setCell(p *fittings.Piece, heading, value string) error {
	ok := true
	switch heading {
	case "kind":
		p.Kind, ok = fittings.ParseKind(value)
	case "style":
		p.Style, ok = fittings.ParseStyle(value)
	case "shape":
		p.Shape, ok = fittings.ParseShape(value)
	case "shape2":
		p.Shape2, ok = fittings.ParseShape(value)
	case "plane":
		p.Plane, ok = fittings.ParsePlane(value)
	case "from":
		ok = setWall(p, value)
	default:
		ok = setSize(p, heading, value)
	}
	if !ok {
		return fmt.Errorf("%s=%s can't be read", heading, value)
	}
	return nil
}

func setSize(p *fittings.Piece, heading, value string) bool {
	d, ok := fittings.ParseDim(heading)
	v, err := strconv.ParseFloat(value, 64)
	if !ok || err != nil {
		return false
	}
	if d.Unit() == fittings.Metre {
		v /= 1000
	}
	p.Sizes.Set(d, v)
	return true
}

// setWall reads what a spigot sits on: "a straight of dia 500", else a flat wall.
func setWall(p *fittings.Piece, value string) bool {
	_, size, round := strings.Cut(value, roundMain)
	if !round {
		p.WallFlat = true
		return true
	}
	d, err := strconv.ParseFloat(size, 64)
	p.Wall = fittings.CrossSection{Shape: fittings.Circular, Diameter: d / 1000}
	return err == nil
}

const roundMain = "a straight of dia "
