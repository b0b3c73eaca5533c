package takeoff

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff/ledger"
	"blankoff/takeoff/measuring"
	"blankoff/takeoff/terms"
)

// Batch is rows that are read and measured apart from the takeoff, as far as
// each goes by itself, so that several batches can be worked on at once. Take
// puts them into the takeoff, in the order of the file.
type Batch struct {
	book    ledger.Ledger // its rows as lines
	gauge   measuring.Gauge
	totals  bool // for totals: no items are kept
	items   []Item
	scratch Item
	hashes  []uint32 // of the tags
	faults  []staged
	times   []times
	stage   stage

	kind  lately[described]
	shape lately[fittings.Shape]
	scope lately[terms.Scope]
	joint lately[terms.Joint]
	sign  lately[string]

	common [4]*Shared // of rows before
	lone   Shared     // of the row, for totals
	oldest int        // of these
}

// stage is when a fault of a row is found: the order in which they are told.
type stage uint8

const (
	atDoor stage = iota
	reading
	atMeasuring // left out where the tag or the times refuse the row
)

// staged is a fault of a row of a batch.
type staged struct {
	Fault
	line  int32
	stage stage
}

// NewBatch begins a batch of rows for the takeoff.
func (t *Takeoff) NewBatch() *Batch {
	b := &Batch{book: ledger.New(), totals: t.options.TotalsOnly}
	b.gauge = measuring.NewGauge(t.rule, &b.book, b.totals)
	return b
}

// Names are the names that its rows have met, of systems, levels and more, in the order
// in which they were met; they stay when it is emptied, but for a great many.
func (b *Batch) Names() []string { return b.book.Names }

// Meets reports that a row of it has one of some of these names as its system or level.
func (b *Batch) Meets(names []bool) bool {
	return slices.ContainsFunc(b.book.Lines, func(l ledger.Line) bool { return names[l.System] || names[l.Level] })
}

// Len is the number of rows in the batch.
func (b *Batch) Len() int { return len(b.book.Lines) }

// Reset empties a batch for use again. What is filed once for many rows stays.
func (b *Batch) Reset() {
	b.book.Reset()
	b.hashes = b.hashes[:0]
	clear(b.items)
	b.items, b.faults, b.times = b.items[:0], b.faults[:0], b.times[:0]
	b.gauge.Reset()
}

// Add reads and measures one row. The row may be used again by the caller.
func (b *Batch) Add(r *Row) {
	it := &b.scratch
	if !b.totals {
		b.items = append(b.items, Item{})
		it = &b.items[len(b.items)-1]
	}
	*it = Item{} // and not what follows with it: that would be made elsewhere and copied
	it.At, it.Quantity, it.Parent, it.RingWith = r.At, 1, -1, -1
	l := b.book.Begin(r.At.Row, ledger.Sheet{File: r.At.File, Name: r.At.Sheet})
	b.stage = atDoor
	for _, f := range r.Faults {
		b.fault(it, f)
	}
	b.stage = reading
	it.Tag, it.OnSite, it.Class, it.From = r.Text[Tag], r.Text[PlaceOnSite], r.Text[Class], r.Text[From]
	if it.Shared = &b.lone; b.totals {
		b.lone.System, b.lone.Level = r.Text[System], r.Text[Level]
	} else {
		it.Shared = b.shared(Shared{r.Text[System], r.Text[Level], r.Text[Drawing]})
	}
	it.Rare = rareOf(r)
	b.readPiece(it, r)
	b.readNumbers(it, r)
	b.readWords(it, r)
	b.readTimes(r)
	l.Typed, l.Notes = it.Piece.Shape, uint8(len(it.Notes))
	if !it.Refused && it.Piece.Kind != fittings.Spigot {
		b.stage = atMeasuring
		b.measure(it, r)
	}
	l.Own, l.Revision, l.Named, l.Mark = ownUnit(r), r.Revision, r.Named, r.Mark
	b.note(l, it, r.Assumed)
}

// note fills in the line of an item that has been read.
func (b *Batch) note(l *ledger.Line, it *Item, assumed bool) {
	above := &b.book.Lines[max(0, len(b.book.Lines)-2)]
	l.Text, l.TagLength, l.FromLength = len(b.book.Text), uint32(len(it.Tag)), uint32(len(it.From))
	b.book.Text = append(append(b.book.Text, it.Tag...), it.From...)
	b.hashes = append(b.hashes, ledger.HashTag(it.Tag))
	l.System, l.Level, l.Quantity = b.book.Again(above.System, it.System), b.book.Again(above.Level, it.Level), int32(it.Quantity)
	l.Kind, l.Scope, l.Refused = it.Piece.Kind, it.Scope, it.Refused
	l.Length, l.Given, l.Assumed = it.Length(), it.Piece.Sizes.Has(fittings.GivenArea), assumed
	if l.Kind == fittings.Plenum || l.Kind == fittings.Spigot {
		b.book.Rest(l).Piece = it.Piece
	}
	if d, v := ledger.Thin(&it.Piece); v > 0 {
		m := b.book.Rest(l)
		m.Thin, m.ThinDim = v, d
	}
	if it.HasAt {
		m := b.book.Rest(l)
		m.At, m.HasAt = it.AtM, true
	}
	if it.Run != "" || it.Joins != "" {
		m := b.book.Rest(l)
		m.Run, m.Joins = strings.Clone(it.Run), strings.Clone(it.Joins)
	}
	keep(&b.book, l, it, b.gauge.SeriesNote)
	b.book.Tally(l)
	if !b.totals {
		b.own(it, l)
	}
	if !b.totals && len(it.Ends) == 2 && l.Faces[0] == l.Faces[1] && it.Ends[1].Role == fittings.FarEnd {
		f := &b.book.Faces[l.Faces[0]]
		if f.Both == nil {
			f.Both = it.Ends
		}
		it.Ends = f.Both
	}
}

// longText is a text of which one is kept for all rows that have it, in bytes.
const longText = 64

// own gives an item texts of its own, those that stand on many rows once for all:
// else the whole of the text that they were read from would be kept for them. Its
// tag and its reference come from the batch's text when the batch is taken.
func (b *Batch) own(it *Item, l *ledger.Line) {
	for _, s := range []*string{&it.OnSite, &it.Class} {
		if *s != "" {
			*s = b.book.Names[b.book.Name(*s)]
		}
	}
	if it.Rare != nothingRare {
		r := it.Rare
		for _, s := range []*string{&r.Note, &r.Scheme, &r.Stage, &r.Group, &r.Joins, &r.Run, &r.StatedText} {
			if len(*s) > longText { // a workbook may hold one for many rows
				*s = b.book.Names[b.book.Name(*s)]
			} else {
				*s = strings.Clone(*s)
			}
		}
	}
}

// shared is what rows have in common: that of a row before, if it is the same, in
// texts of its own.
func (b *Batch) shared(s Shared) *Shared {
	for _, o := range b.common {
		if o != nil && *o == s {
			return o
		}
	}
	o := &Shared{b.book.Names[b.book.Name(s.System)], b.book.Names[b.book.Name(s.Level)], b.book.Names[b.book.Name(s.Drawing)]}
	b.common[b.oldest] = o
	b.oldest = (b.oldest + 1) % len(b.common)
	return o
}

// fault refuses the row that is being read for the reason f.
func (b *Batch) fault(it *Item, f Fault) {
	it.Refused = true
	f.Value = strings.Clone(f.Value) // it may be part of a long text, which would be kept for it
	b.faults = append(b.faults, staged{f, int32(len(b.book.Lines) - 1), b.stage})
}
