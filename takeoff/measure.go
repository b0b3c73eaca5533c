package takeoff

import (
	"fmt"

	"blankoff/fittings"
)

// measure works out the areas of an item; r is its row, or nil once it is gone.
func (b *Batch) measure(it *Item, r *Row) {
	m, problems := b.measured(&it.Piece)
	for _, p := range problems {
		b.fault(it, it.problemFault(p, r))
	}
	if len(problems) > 0 {
		return
	}
	if !b.measureOutside(it, r, m) {
		return
	}
	it.Ends = m.Ends
	it.Notes = append(it.Notes, m.Notes...)
	b.noteSeries(it)
	if it.Piece.Shape == fittings.NoShape && len(it.Ends) > 0 {
		it.Piece.Shape = it.Ends[0].Shape
	}
	n := float64(it.Quantity)
	it.Area, it.Exact = it.Each*n, it.EachExact*n
	it.JointLength = b.options.jointLength(it)
}

// measured measures a piece. A fitting that is like one before isn't measured
// again; a straight is measured faster than it is found.
func (b *Batch) measured(p *fittings.Piece) (fittings.Measurement, []fittings.Problem) {
	if c, area, ok := fittings.PlainStraight(p); ok {
		f := &b.book.Faces[b.book.Face(c, b.seriesNote)]
		if f.Both == nil {
			f.Both = fittings.Through(c)
		}
		return fittings.Measurement{Area: area, Ends: f.Both}, nil
	}
	m, known := b.alike[*p]
	if known {
		return m, nil
	}
	m, problems := fittings.MeasureIn(p, b.options.Written)
	if len(problems) == 0 {
		b.alike[*p] = m
	}
	return m, problems
}

// measureOutside works out the areas of an item by its outside surface, exactly
// and on the basis; m is its measurement at the sizes that the row gives.
func (b *Batch) measureOutside(it *Item, r *Row, m fittings.Measurement) bool {
	var opening, exact float64
	it.EachExact, exact = m.Area, m.Opening
	if b.options.Sheet > 0 {
		p := b.options.outsidePiece(&it.Piece)
		if grown, problems := fittings.Measure(&p); len(problems) == 0 {
			it.EachExact, exact = grown.Area, grown.Opening
		} else {
			it.noSheet = true
			it.Notes = append(it.Notes, "the thickness of the sheet isn't added: a piece of these outside sizes can't be measured")
		}
	}
	it.Each, opening = it.EachExact, exact
	var problems []fittings.Problem
	if !b.options.Basis.Exact() {
		p := b.options.measuredPiece(it)
		it.Each, opening, problems = fittings.AreaOn(&p, b.options.Basis)
	}
	if opening != 0 || exact != 0 {
		o := it.own()
		o.Opening, o.OpeningExact = opening, exact
	}
	for _, p := range problems {
		b.fault(it, it.problemFault(p, r))
	}
	return len(problems) == 0
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
func (o *Options) jointLength(it *Item) float64 {
	if len(it.Ends) == 0 {
		return 0
	}
	pieces := it.Quantity
	if it.Piece.Kind == fittings.Straight {
		pieces *= fittings.NumberOfPieces(it.Piece.Shape, it.Length(), o.pieceLength(it.Piece.Shape))
	}
	return float64(pieces) * it.Ends[0].Girth()
}

// measureSpigots measures the spigots, whose area depends on the wall that
// they sit in.
func (t *Takeoff) measureSpigots() {
	b := t.NewBatch()
	b.stage = measuring
	for k := range t.book.More {
		i := int(t.book.More[k].Line)
		l := &t.book.Lines[i]
		if l.Kind != fittings.Spigot || l.Refused {
			continue
		}
		it := t.full(i)
		if l.Parent >= 0 {
			host := &t.book.Lines[l.Parent]
			if host.Refused && host.Roles == 0 {
				t.fault(i, t.at(l).Fault("from", it.From, "a wall of known size",
					fmt.Sprintf("the wall of %s isn't known because its row was refused; mend that row first", t.book.NameText(host))))
				continue
			}
			if host.Kind == fittings.Plenum {
				it.Piece.WallFlat = true
			} else if c, ok := t.book.First(host); ok {
				it.Piece.Wall = c
			}
		}
		b.measure(it, nil)
		keep(&t.book.Ledger, l, it, b.seriesNote)
		for _, f := range b.faults {
			t.fault(i, f.Fault)
		}
		b.faults = b.faults[:0]
	}
}
