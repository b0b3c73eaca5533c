package takeoff

import (
	"blankoff/takeoff/ledger"
	"fmt"
)

// fill is the number of rows that are gathered before they are taken in.
const fill = 1000

// mostAhead is the greatest number of rows that room is made for beforehand.
const mostAhead = 4_000_000

// Add reads one row. The row may be used again by the caller.
func (t *Takeoff) Add(r *Row) {
	t.Expect(r.Most)
	if t.own == nil {
		t.own = t.NewBatch()
	}
	if t.own.Add(r); t.own.Len() >= fill {
		t.Take(t.own)
	}
}

// Gather takes in the rows that wait, and says what Hopeless says.
func (t *Takeoff) Gather() error {
	if t.own != nil {
		t.Take(t.own)
	}
	return t.hopeless
}

// Expect makes room for so many rows: a list that grows is copied again and
// again.
func (t *Takeoff) Expect(rows int) {
	if rows = min(rows, mostAhead); rows == 0 || cap(t.book.Lines) > 0 {
		return
	}
	t.book.Expect(rows)
	if !t.options.TotalsOnly {
		t.Items = make([]Item, 0, rows)
	}
}

// Take puts the rows of a batch into the takeoff, after those that it has, and
// empties the batch. Rows of a batch that the file holds later come later.
func (t *Takeoff) Take(b *Batch) {
	if b != t.own && t.own != nil && t.own.Len() > 0 {
		t.Take(t.own)
	}
	first := t.book.Add(&b.book)
	if !b.totals {
		whole := string(b.book.Text)
		for k := range b.items {
			l := &b.book.Lines[k]
			it, from := &b.items[k], l.Text+int(l.TagLength)
			it.index, it.Tag, it.From = int32(first+k), whole[l.Text:from], whole[from:from+int(l.FromLength)]
		}
	}
	t.Items = append(t.Items, b.items...)
	t.book.Warm(b.hashes)
	faults, times := b.faults, b.times
	for k := range b.book.Lines {
		l := &t.book.Lines[first+k]
		n := 0
		for n < len(faults) && int(faults[n].line) == k {
			n++
		}
		timed := len(times) > 0 && int(times[0].line) == k
		t.claim(first+k, b.hashes[k], faults[:n], timed, times)
		if faults = faults[n:]; timed {
			times = times[1:]
		}
		if !l.Refused {
			t.used++
		}
		t.despair(first + k + 1)
	}
	b.Reset()
}

// claim files row i under its tag and tells its faults, each kind in its turn. A
// row that its tag or its times refuse isn't measured.
func (t *Takeoff) claim(i int, hash uint32, faults []staged, timed bool, when []times) {
	n := 0
	for ; n < len(faults) && faults[n].stage == atDoor; n++ {
		t.fault(i, faults[n].Fault)
	}
	before := len(t.Faults)
	t.claimTag(i, hash)
	for ; n < len(faults) && faults[n].stage == reading; n++ {
		t.fault(i, faults[n].Fault)
	}
	if timed {
		t.takeTimes(i, &when[0])
	}
	if len(t.Faults) > before {
		t.unmeasure(i)
		return
	}
	for ; n < len(faults); n++ {
		t.fault(i, faults[n].Fault)
	}
}

// claimTag files the row under its tag; a tag may stand once.
func (t *Takeoff) claimTag(i int, hash uint32) {
	first, taken := t.book.FileTag(i, hash)
	if !taken {
		return
	}
	l := &t.book.Lines[i]
	tag := string(t.book.TagOf(l))
	t.fault(i, t.at(l).Fault("tag", tag, "a tag of its own",
		fmt.Sprintf("tag '%s' already stands on %s; give one of the two another tag", tag, t.rowText(&t.book.Lines[first], l.Sheet))))
}

// rowText is where a row stands, seen from a sheet.
func (t *Takeoff) rowText(l *ledger.Line, from int32) string {
	if name := t.book.Sheets[l.Sheet].Name; name != t.book.Sheets[from].Name {
		return fmt.Sprintf("row %d of sheet '%s'", l.Row, name)
	}
	return fmt.Sprintf("row %d", l.Row)
}

// unmeasure takes back what was measured of a row.
func (t *Takeoff) unmeasure(i int) {
	l := &t.book.Lines[i]
	l.Shape, l.Roles, l.Area, l.Exact, l.Joint = l.Typed, 0, 0, 0, 0
	if t.options.TotalsOnly {
		return
	}
	it := &t.Items[i]
	it.Piece.Shape, it.Ends, it.noSheet, it.Notes = l.Typed, nil, false, it.Notes[:l.Notes:l.Notes]
	it.Each, it.EachExact = 0, 0
	if it.Rare != nothingRare {
		it.Opening, it.OpeningExact = 0, 0
	}
	it.Area, it.Exact, it.JointLength = 0, 0, 0
}
