package fittings

import (
	"math"
	"slices"

	"blankoff/fittings/surface"
)

// buildTee reads a tee or a cross: main - openings + branches.
func buildTee(c *checker) built {
	s := c.main()
	c.checkSameEnds(s, "the main keeps its size: give the branch in branch_ columns and a change of the main as a reducer, or give area_m2")
	length := c.need(Length, " (of the main)")
	branch := c.teeBranch(s)
	b := built{ends: append(Through(s), End{Role: BranchEnd, CrossSection: branch}), source: branchSource(s)}
	times := 1.0
	if c.p.Kind == Cross {
		b.ends = append(b.ends, End{Role: BranchEnd2, CrossSection: branch})
		times = 2
	}
	j := c.junction(branch, sideEnd, func() (float64, bool) { return c.take(BranchLength) })
	if !c.ok() {
		return b
	}
	c.fit(&j, s, sideEnd)
	c.fitAlong(j, length)
	if !c.ok() {
		return b
	}
	main := prism{s, level(length)}
	opening, side := j.surfaces()
	b.parts = append([]part{{"main", 1, main}}, scaled(opening, -times)...)
	b.parts = append(b.parts, scaled(side, times)...)
	c.run(&b, func() stretch { return main.stretch(PlaneWidth, byLength) })
	if c.lengths {
		b.branches = slices.Repeat([]sideStretch{{j, s}}, int(times))
	}
	return b
}

func scaled(parts []part, times float64) []part {
	for i := range parts {
		parts[i].times *= times
	}
	return parts
}

func branchSource(main CrossSection) string {
	if main.Shape == Circular {
		return "intersection of cylinders (complete elliptic integrals), mensuration"
	}
	return "mensuration: girth x length, the opening taken out of a flat wall"
}

// teeBranch reads the branch's section. A width and height on a flat-oval main
// leave a doubt that only shape2 settles.
func (c *checker) teeBranch(main CrossSection) CrossSection {
	doubt := main.Shape == FlatOval && c.p.Shape2 == NoShape && !c.p.Sizes.Has(BranchDiameter) &&
		(c.p.Sizes.Has(BranchWidth) || c.p.Sizes.Has(BranchHeight))
	if doubt {
		c.refuse("shape2", "rectangular or flat-oval", "say whether the branch on this flat-oval main is rectangular or flat-oval")
		return CrossSection{}
	}
	return c.section(c.inferred(c.p.Shape2, sideEnd, "shape2"), sideEnd)
}

// buildSpigot reads a branch on the side wall of another piece. Its own size may
// be in the branch_ columns, or in its own with length_mm as the collar.
func buildSpigot(c *checker) built {
	branch, names := c.spigotSection()
	b := built{ends: []End{{Role: PlantEnd, CrossSection: branch}, {Role: FarEnd, CrossSection: branch}}}
	j := c.junction(branch, names, func() (float64, bool) { return c.either(BranchLength, Length) })
	wall := c.p.Wall
	if c.p.WallFlat {
		wall = CrossSection{}
	} else if wall.Shape == NoShape {
		c.refuse("from", "the tag of the straight, tee or plenum it sits on", "give from: a spigot's area depends on the wall it sits on")
	}
	b.source = branchSource(wall)
	if c.ok() {
		c.fit(&j, wall, names)
	}
	if c.ok() {
		b.opening, b.parts = j.surfaces()
		if c.lengths {
			b.branches = []sideStretch{{j, wall}}
		}
		b.ends[0].CrossSection = j.foot()
	}
	return b
}

// foot is the opening in the wall as it's named: the entry of a conical or shoe
// branch, else the branch's own section.
func (j junction) foot() CrossSection {
	s := j.branch
	switch j.style {
	case Conical:
		s.Diameter = j.entry
	case Shoe:
		s.Width += j.entry
	}
	return s
}

// spigotSection reads a spigot's own cross-section and the headings it came
// from.
func (c *checker) spigotSection() (CrossSection, sectionDims) {
	names := sectionDims{c.prefer(BranchWidth, Width), c.prefer(BranchHeight, Height), c.prefer(BranchDiameter, Diameter)}
	stated := c.p.Shape
	if stated == NoShape {
		stated = c.p.Shape2
	}
	if stated == NoShape && c.p.Wall.Shape == FlatOval && !c.p.Sizes.Has(names.diameter) {
		c.refuse("shape", "circular, rectangular or flat-oval", "say what shape this spigot on a flat-oval wall is")
		return CrossSection{}, names
	}
	return c.section(c.inferred(stated, names, "shape"), names), names
}

// prefer gives the heading under which a spigot's own size is given, and refuses
// two that disagree.
func (c *checker) prefer(side, plain Dim) Dim {
	if !c.p.Sizes.Has(plain) {
		return side
	}
	if !c.p.Sizes.Has(side) {
		return plain
	}
	c.either(side, plain)
	return side
}

// junction reads how a branch stands on its wall.
func (c *checker) junction(branch CrossSection, names sectionDims, collar func() (float64, bool)) junction {
	j := junction{branch: branch, style: c.p.Style, angle: 90}
	if j.style == NoStyle {
		j.style = StraightSided
	}
	length, given := collar()
	if !given {
		length = math.NaN()
		c.add(true, Problem{Dim: BranchLength, Expected: BranchLength.allowed(), Message: "give branch_length_mm (collar beyond the main's wall)"})
	}
	j.collar = length
	if angle, given := c.either(BranchAngle, Angle); given {
		j.angle = angle
		if l := dims[BranchAngle]; angle < l.min || angle > l.max {
			c.wrong(Angle, BranchAngle.allowed(), "the angle between branch and main is out of range")
		}
	}
	shift, _ := c.take(BranchShift)
	j.shift = math.Abs(shift)
	switch j.style {
	case Conical:
		j.entry = c.need(Entry, " (diameter at the wall; at the crown of a round main)")
		c.checkEntry(j, branch.Shape == Rectangular || branch.Shape == FlatOval, "circular")
		if j.entry < branch.Diameter-slack {
			c.wrong(Entry, mm(branch.Diameter)+" mm and more", "a conical branch is widest at the wall")
		}
	case Shoe:
		j.entry = c.need(Entry, " (extra entry on one side)")
		c.checkEntry(j, branch.Shape == Circular || branch.Shape == FlatOval, "rectangular")
		if j.entry > j.collar+slack {
			c.wrong(Entry, mm(leastSide)+" to "+mm(j.collar)+" mm", "a 45 degree shoe can't be longer than its collar")
		}
	}
	return j
}

// checkEntry refuses a conical or shoe branch of the wrong shape or angle.
func (c *checker) checkEntry(j junction, misfit bool, want string) {
	if misfit {
		c.refuse("style", "straight, a "+want+" branch, or area_m2", "only a "+want+" branch is measured in style "+j.style.String())
	}
	if math.Abs(j.angle-90) > slack {
		c.refuse("style", "straight, 90 degrees, or area_m2", "a "+j.style.String()+" branch is measured only at 90 degrees")
	}
}

// extent is how much of the wall a branch takes up, across the main and along
// it, and the size that governs across.
func (j junction) extent(names sectionDims) (across, along float64, at Dim) {
	switch {
	case j.style == Conical:
		return j.entry, j.entry, Entry
	case j.branch.Shape == Circular:
		return j.branch.Diameter, j.branch.Diameter, names.diameter
	case j.style == Shoe:
		return j.branch.Height, j.branch.Width + j.entry, names.height
	}
	return j.branch.Height, j.branch.Width, names.height
}

// fit checks that a branch fits across its wall, that its collar clears it, and
// that its style can be measured on it. A wall without a shape is flat and
// without end.
func (c *checker) fit(j *junction, wall CrossSection, names sectionDims) {
	across, along, at := j.extent(names)
	room, where := math.Inf(1), ""
	switch wall.Shape {
	case Circular:
		room, where, j.roundOf = wall.Diameter, "the main", wall.Diameter/2
	case Rectangular:
		room, where = math.Max(wall.Width, wall.Height), "the main"
	case FlatOval:
		room, where = wall.Width-wall.Height, "the flat of the main"
	}
	if across+2*j.shift > room+slack {
		c.wrong(at, mm(leastSide)+" to "+mm(math.Max(0, room-2*j.shift))+" mm", "the branch is wider than "+where)
		return
	}
	if j.roundOf > 0 {
		c.fitRound(j, across, along)
		return
	}
	if least := along / 2 * math.Abs(math.Cos(rad(j.angle))/math.Sin(rad(j.angle))); j.angle != 90 && j.collar < least-slack {
		c.shortCollar(least)
	}
}

// fitRound is the rest of fit on a round main.
func (c *checker) fitRound(j *junction, across, along float64) {
	j.shift = math.Min(j.shift, math.Max(0, j.roundOf-across/2))
	if across > 2*j.roundOf {
		j.trim(2 * j.roundOf)
	}
	switch j.style {
	case Shoe:
		c.refuse("style", "straight or conical, or area_m2", "a shoe on a round main has no exact area here")
	case Conical:
		c.fitCone(*j)
	default:
		s := surface.Saddle{R: j.roundOf, Shift: j.shift, Beta: rad(j.angle)}
		reach := s.Reach(along/2, across/2)
		if j.branch.Shape == Circular {
			reach = s.RoundReach(j.branch.Diameter / 2)
		}
		if least := reach - j.wallAt(); j.collar < least-slack {
			c.shortCollar(least)
		}
	}
}

// trim takes float noise off a branch that's as wide as its main.
func (j *junction) trim(room float64) {
	if j.branch.Shape == Circular {
		j.branch.Diameter = math.Min(j.branch.Diameter, room)
		return
	}
	j.branch.Height = math.Min(j.branch.Height, room)
}

// fitCone checks that a conical branch meets its round main in one closed curve.
func (c *checker) fitCone(j junction) {
	if j.shift > 0 {
		c.refuse("style", "straight, on the main's axis, or area_m2", "a conical branch off the main's axis has no exact area here")
		return
	}
	meets := func(entry float64) bool {
		return surface.Cone{R: j.roundOf, Crown: entry / 2, End: j.branch.Diameter / 2, Height: j.collar}.Meets()
	}
	if meets(j.entry) {
		return
	}
	low, high := j.branch.Diameter, j.entry
	for range 40 {
		if mid := (low + high) / 2; meets(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	c.wrong(Entry, mm(j.branch.Diameter)+" to "+mm(low-agree/10)+" mm", "the cone outgrows the main")
}

func (c *checker) shortCollar(least float64) {
	c.wrong(BranchLength, mm(least+agree/10)+" mm and more", "the collar is too short: the branch's free end would cut into the main")
}

// fitAlong checks that the opening fits in the length of its main.
func (c *checker) fitAlong(j junction, length float64) {
	_, along, _ := j.extent(sideEnd)
	if least := along / math.Sin(rad(j.angle)); length < least-slack {
		c.wrong(Length, mm(least)+" to "+mm(mostRun)+" mm", "the main is shorter than the opening for its branch")
	}
}
