package takeoff

import (
	"blankoff/takeoff/ledger"
	"blankoff/takeoff/terms"
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

// takeTimes takes from when and until when row i can be tested.
func (t *Takeoff) takeTimes(i int, when *times) {
	at := t.at(&t.book.Lines[i])
	var ready, closed terms.Moment
	for _, w := range []struct {
		c     Column
		typed string
		to    *terms.Moment
	}{{Ready, when.ready, &ready}, {Closed, when.closed, &closed}} {
		m, ok := terms.ParseMoment(w.typed)
		switch {
		case !ok:
			t.fault(i, at.Fault(w.c.Heading(), w.typed, "a date as 2026-03-14, or the number of a day or stage",
				fmt.Sprintf("%s '%s' isn't understood", w.c.Heading(), w.typed)))
		case m.Given && t.timed && m.Date() != t.dates:
			t.fault(i, at.Fault(w.c.Heading(), w.typed, "dates throughout, or numbers throughout",
				fmt.Sprintf("%s '%s' is of another kind than in the rows before; write dates or numbers, not both", w.c.Heading(), w.typed)))
		case m.Given:
			t.timed, t.dates, *w.to = true, m.Date(), m
		}
	}
	if ready.Given && closed.Given && closed.Value < ready.Value {
		t.fault(i, at.Fault("closed", closed.Text, "not before ready ("+ready.Text+")",
			fmt.Sprintf("closed on %s before it is ready on %s: it could never be tested", closed.Text, ready.Text)))
	}
	if !t.options.TotalsOnly {
		t.Items[i].Ready, t.Items[i].Closed = ready, closed
	}
}

// Limits of a schedule as a whole; beyond them it isn't one, or is damaged.
const (
	MostRows   = 4_000_000
	mostFaults = 50_000
	firstRows  = 20_000 // of which one at least must be of use
)

// Hopeless says why no more rows should be added: there are too many of them, too
// many faults, or nothing of use in the first rows. It names the first fault, so
// that a mistake which goes through all rows can be mended. It is about the rows
// that were taken in; see Gather.
func (t *Takeoff) Hopeless() error { return t.hopeless }

// despair finds out, once n rows were taken, whether it is hopeless.
func (t *Takeoff) despair(n int) {
	switch {
	case t.hopeless != nil:
	case n > MostRows:
		t.hopeless = fmt.Errorf("there are more than %d rows; split the schedule, by system say", MostRows)
	case len(t.Faults) > mostFaults:
		t.hopeless = fmt.Errorf("there are more than %d faults in the first %d rows, the first in %s; mend these first", mostFaults, n, t.firstFault())
	case n == firstRows && t.used == 0:
		t.hopeless = fmt.Errorf("none of the first %d rows can be used, the first fault is in %s; mend these first", n, t.firstFault())
	}
}

// firstFault is the first fault in one line.
func (t *Takeoff) firstFault() string {
	f := t.Faults[0]
	return fmt.Sprintf("%s: %s", Place{File: f.File, Sheet: f.Sheet, Row: f.Row}, f.Message)
}
