package takeoff

import (
	"fmt"

	"blankoff/fittings"
)

// measure works out the areas of an item; r is its row, or nil once it is gone.
func (b *Batch) measure(it *Item, r *Row) {
	m, problems := b.gauge.Measure(&it.Piece)
	if b.faultProblems(it, r, problems) {
		return
	}
	a, problems := b.gauge.Areas(&it.Piece, &m)
	it.Each, it.EachExact = a.Each, a.Exact
	if a.NoSheet {
		it.noSheet = true
		it.Notes = append(it.Notes, "the thickness of the sheet isn't added: a piece of these outside sizes can't be measured")
	}
	if a.Opening != 0 || a.OpeningExact != 0 {
		o := it.own()
		o.Opening, o.OpeningExact = a.Opening, a.OpeningExact
	}
	if b.faultProblems(it, r, problems) {
		return
	}
	it.Ends = m.Ends
	it.Notes = b.gauge.NoteSeries(append(it.Notes, m.Notes...), &it.Piece, it.Ends)
	if it.Piece.Shape == fittings.NoShape && len(it.Ends) > 0 {
		it.Piece.Shape = it.Ends[0].Shape
	}
	n := float64(it.Quantity)
	it.Area, it.Exact = it.Each*n, it.EachExact*n
	if len(it.Ends) > 0 {
		it.JointLength = b.gauge.JointLength(&it.Piece, it.Quantity, it.Ends[0].Girth())
	}
}

// faultProblems refuses an item for the problems of its piece, if it has any.
func (b *Batch) faultProblems(it *Item, r *Row, problems []fittings.Problem) bool {
	for _, p := range problems {
		b.fault(it, it.problemFault(p, r))
	}
	return len(problems) > 0
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

// measureSpigots measures the spigots, whose area depends on the wall that
// they sit in.
func (t *Takeoff) measureSpigots() {
	b := t.NewBatch()
	b.stage = atMeasuring
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
		keep(&t.book.Ledger, l, it, b.gauge.SeriesNote)
		for _, f := range b.faults {
			t.fault(i, f.Fault)
		}
		b.faults = b.faults[:0]
	}
}
