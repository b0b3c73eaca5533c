package takeoff

import (
	"fmt"

	"blankoff/fittings"
)

// measure works out the area of item i; r is its row, or nil once it is gone.
func (t *Takeoff) measure(i int, r *Row) {
	it := &t.Items[i]
	m, problems := fittings.Measure(&it.Piece)
	for _, p := range problems {
		t.fault(i, it.problemFault(p, r))
	}
	if len(problems) > 0 {
		return
	}
	it.Each, it.Opening = m.Area, m.Opening
	it.Ends = append([]fittings.End(nil), m.Ends...)
	it.Notes = append(it.Notes, m.Notes...)
	if it.Piece.Shape == fittings.NoShape && len(it.Ends) > 0 {
		it.Piece.Shape = it.Ends[0].Shape
	}
	n := float64(it.Quantity)
	it.Area = it.Each * n
	it.JointLength = t.jointLength(it)
}

// problemFault places a problem of the piece in the schedule.
func (it *Item) problemFault(p fittings.Problem, r *Row) Fault {
	heading, value := p.Word, ""
	if p.Dim < fittings.NumDims {
		c := DimColumn(p.Dim)
		heading = c.Heading()
		switch v, given := it.Piece.Sizes.Get(p.Dim); {
		case r != nil:
			value = r.Text[c]
		case given:
			value = fmt.Sprintf("%g", v*1000)
		}
	} else if r != nil {
		for c := Column(0); c < NumColumns; c++ {
			if c.Heading() == heading {
				value = r.Text[c]
			}
		}
	}
	return it.At.Fault(heading, value, p.Expected, p.Message)
}

// jointLength is the length of the installation joints that are charged to a
// row, in m: each piece is charged with the joint at its plant end, so that
// the rows of a schedule add up to every joint once. A straight made of
// several pieces has one for each.
func (t *Takeoff) jointLength(it *Item) float64 {
	if len(it.Ends) == 0 {
		return 0
	}
	pieces := it.Quantity
	if it.Piece.Kind == fittings.Straight {
		pieces *= fittings.NumberOfPieces(it.Piece.Shape, it.Length(), t.PieceLength(it))
	}
	return float64(pieces) * it.Ends[0].Girth()
}

// measureSpigots measures the spigots, whose area depends on the wall that
// they sit in.
func (t *Takeoff) measureSpigots() {
	for i := range t.Items {
		it := &t.Items[i]
		if it.Piece.Kind != fittings.Spigot || it.Refused {
			continue
		}
		if it.Parent >= 0 {
			host := &t.Items[it.Parent]
			if host.Refused && len(host.Ends) == 0 {
				t.fault(i, it.At.Fault("from", it.From, "a wall of known size",
					fmt.Sprintf("the wall of %s isn't known because its row was refused; mend that row first", host.Name())))
				continue
			}
			if host.Piece.Kind == fittings.Plenum {
				it.Piece.WallFlat = true
			} else if len(host.Ends) > 0 {
				it.Piece.Wall = host.Ends[0].CrossSection
			}
		}
		t.measure(i, nil)
	}
}

// takeOffOpenings takes off each wall the openings that are cut in it: of
// spigots, and of whatever else hangs on the walls of a plenum.
func (t *Takeoff) takeOffOpenings() {
	for i := range t.Items {
		it := &t.Items[i]
		if it.Parent < 0 {
			continue
		}
		host := &t.Items[it.Parent]
		switch {
		case it.Piece.Kind == fittings.Spigot:
			host.Cut += it.Opening * float64(it.Quantity)
		case host.Piece.Kind == fittings.Plenum && len(it.Ends) > 0:
			host.Cut += it.Ends[0].FaceArea() * float64(it.Quantity)
		}
		if it.Piece.Kind == fittings.Plenum {
			if e, ok := host.End(it.ParentEnd); ok && it.ParentEnd != fittings.PlantEnd {
				it.Cut += e.FaceArea()
			}
		}
	}
	for i := range t.Items {
		it := &t.Items[i]
		if it.Refused || it.Cut == 0 {
			continue
		}
		if _, given := it.Piece.Sizes.Get(fittings.GivenArea); given {
			it.Notes = append(it.Notes, "the area was given, so openings cut in it were not taken off")
			it.Cut = 0
			continue
		}
		if it.Cut >= it.Area {
			t.fault(i, it.At.Fault("area_m2", "", "openings smaller than the wall",
				fmt.Sprintf("the openings cut in %s (%.3f m2) are larger than its surface (%.3f m2); check the sizes of what joins it", it.Name(), it.Cut, it.Area)))
			continue
		}
		it.Area -= it.Cut
	}
}
