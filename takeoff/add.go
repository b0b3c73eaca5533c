package takeoff

import (
	"fmt"
	"math"
	"math/bits"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff/measuring"
	"blankoff/takeoff/terms"
)

// Limits of what a row may say; beyond them it is a slip of the pen.
const (
	maxQuantity = 10000
	maxPa       = 100000
)

// wholeNumber is what is expected of a quantity.
var wholeNumber = fmt.Sprintf("a whole number from 1 to %d", maxQuantity)

// readPiece reads what the piece is and its sizes.
func (b *Batch) readPiece(it *Item, r *Row) {
	p := &it.Piece
	bad := func(c Column, expected, message string) {
		b.fault(it, it.At.Fault(c.Heading(), r.Text[c], expected, message))
	}
	if s := r.Text[Kind]; r.Refused(Kind) {
		// said already
	} else if s == "" {
		bad(Kind, "a kind of piece", "no kind; `blankoff kinds` lists them")
	} else if d, ok := b.kind.of(s, parseDescription); ok {
		p.Kind, p.Style, p.Shape = d.kind, d.style, d.shape
	} else {
		bad(Kind, kindList(), fmt.Sprintf("'%s' isn't a kind of piece; `blankoff kinds` lists them with their other names", s))
	}
	if s := r.Text[Style]; s != "" {
		if v, ok := fittings.ParseStyle(s); ok && p.Style != fittings.NoStyle && p.Style != v {
			bad(Style, p.Style.String()+", as in kind", fmt.Sprintf("kind '%s' and style '%s' say two things; correct one", r.Text[Kind], s))
		} else if ok {
			p.Style = v
		} else if p.Kind == fittings.Straight {
			it.Notes = append(it.Notes, fmt.Sprintf("style '%s' isn't known, and bears on no straight", s))
		} else {
			bad(Style, "a style of "+p.Kind.String(), fmt.Sprintf("style '%s' isn't known; `blankoff kinds` lists them", s))
		}
	}
	for _, w := range []struct {
		c  Column
		to *fittings.Shape
	}{{Shape, &p.Shape}, {Shape2, &p.Shape2}} {
		if s := r.Text[w.c]; s != "" {
			if v, ok := b.shape.of(s, fittings.ParseShape); ok && w.c == Shape && p.Shape != fittings.NoShape && p.Shape != v {
				bad(Shape, p.Shape.String()+", as in kind", fmt.Sprintf("kind '%s' and shape '%s' say two things; correct one", r.Text[Kind], s))
			} else if ok {
				*w.to = v
			} else {
				bad(w.c, "rectangular, circular or flat-oval", fmt.Sprintf("shape '%s' isn't known", s))
			}
		}
	}
	b.readSizes(it, r)
	b.readLining(it, r)
}

// readSizes reads the plane and the sizes.
func (b *Batch) readSizes(it *Item, r *Row) {
	if s := r.Text[Plane]; s != "" {
		if v, ok := fittings.ParsePlane(s); ok {
			it.Piece.Plane = v
		} else {
			b.fault(it, it.At.Fault("plane", s, "width or height", fmt.Sprintf("plane '%s' isn't known", s)))
		}
	}
	for given := r.has >> firstDim & (1<<fittings.NumDims - 1); given != 0; given &= given - 1 {
		d := fittings.Dim(bits.TrailingZeros64(given))
		it.Piece.Sizes.Set(d, r.Number[DimColumn(d)])
	}
}

// readLining turns sizes that are given clear of an inside lining into the
// sizes of the metal, because the area is that of the outside: a clear width w
// with lining t is w + 2t of metal.
func (b *Batch) readLining(it *Item, r *Row) {
	s := &it.Piece.Sizes
	lining, given := s.Get(fittings.Lining)
	if !given && r.Text[SizeIs] == "" { // most rows
		return
	}
	word := terms.Fold(r.Text[SizeIs])
	switch word {
	case "", "clear", "metal":
	default:
		b.fault(it, it.At.Fault("size_is", r.Text[SizeIs], "clear or metal", "say whether the sizes are clear of the lining or of the metal"))
		return
	}
	if !given || lining == 0 {
		return
	}
	if word == "" {
		b.fault(it, it.At.Fault("size_is", "", "clear or metal",
			"there is a lining, so size_is has to say whether the sizes are clear of it or of the metal"))
		return
	}
	if word == "metal" {
		it.Notes = append(it.Notes, "lined; sizes are of the metal, so the lining changes no area")
		return
	}
	it.Clear = true
	measuring.Widen(&it.Piece, 2*lining)
	if v, ok := s.Get(fittings.Throat); ok {
		s.Set(fittings.Throat, v-lining)
	}
	it.Notes = append(it.Notes, "sizes are clear of the lining; the area is that of the metal outside it")
}

func kindList() string {
	var names []string
	for _, k := range fittings.Kinds() {
		names = append(names, k.Name)
	}
	return strings.Join(names, ", ")
}

// seldom are the columns of numbers, but for sizes, that few schedules have.
const seldom = 1<<DesignPa | 1<<OperatingPa | 1<<DuctClassPa | 1<<EndMinutes | 1<<At | 1<<StatedArea

// readNumbers reads the numbers that aren't sizes.
func (b *Batch) readNumbers(it *Item, r *Row) {
	limited := func(c Column, to *float64, low, high float64, expected string) bool {
		if !r.Has(c) {
			return false
		}
		v := r.Number[c]
		if math.IsNaN(v) || v < low || v > high {
			b.fault(it, it.At.Fault(c.Heading(), r.Text[c], expected,
				fmt.Sprintf("%s '%s' is out of range", c.Heading(), r.Text[c])))
			return false
		}
		*to = v
		return true
	}
	var q float64 = 1
	if limited(Quantity, &q, 1, maxQuantity, wholeNumber) && q != math.Trunc(q) {
		b.fault(it, it.At.Fault("quantity", r.Text[Quantity], "a whole number", "a quantity is a whole number of pieces"))
	}
	it.Quantity = int(q)
	const pressures = "more than 0 and at most 100000 Pa; the side goes in sign"
	limited(TestPa, &it.TestPa, 1, maxPa, pressures)
	if r.has&seldom == 0 {
		return
	}
	limited(DesignPa, &it.DesignPa, 1, maxPa, pressures)
	limited(OperatingPa, &it.OperatingPa, 1, maxPa, pressures)
	limited(DuctClassPa, &it.DuctClass, 1, maxPa, pressures)
	it.HasEnd = limited(EndMinutes, &it.EndMinutes, 0, terms.MostMinutes, "0 to 10000 minutes")
	it.HasAt = limited(At, &it.AtM, 0, 1e6, "the centre of the spigot from the plant end of its wall, in mm")
	it.HasStated = limited(StatedArea, &it.Stated, 0, 1e6, "an area in m2")
}

// readWords reads the words that aren't about the piece itself.
func (b *Batch) readWords(it *Item, r *Row) {
	bad := func(c Column, expected string) {
		b.fault(it, it.At.Fault(c.Heading(), r.Text[c], expected,
			fmt.Sprintf("%s '%s' isn't understood; use %s", c.Heading(), r.Text[c], expected)))
	}
	var ok bool
	if it.Scope, ok = b.scope.of(r.Text[Scope], terms.ParseScope); !ok {
		bad(Scope, "in, out or through")
	}
	if it.Joint, ok = b.joint.of(r.Text[Joint], terms.ParseJoint); !ok {
		bad(Joint, "flanged, slip or welded")
	}
	if it.Sign, ok = b.sign.of(r.Text[Sign], terms.ParseSign); !ok {
		bad(Sign, "positive or negative")
	}
	number := func(s string) (float64, bool) {
		v, err := strconv.ParseFloat(s, 64)
		return v, err == nil && !math.IsNaN(v)
	}
	if it.Blank, ok = terms.ParseBlank(r.Text[BlankMinutes], number); !ok {
		bad(BlankMinutes, "a number of minutes, no, must, or must and a number")
	}
}

// times is what a row of a batch says of when it can be tested.
type times struct {
	line          int32
	ready, closed string // as typed
}

// readTimes keeps from when and until when the row can be tested: whether it
// can be understood depends on the rows before.
func (b *Batch) readTimes(r *Row) {
	if r.Text[Ready] != "" || r.Text[Closed] != "" {
		b.times = append(b.times, times{int32(len(b.book.Lines) - 1), strings.Clone(r.Text[Ready]), strings.Clone(r.Text[Closed])})
	}
}

// lately is what words were understood as: most words of a column stand on many
// rows, often one below the other, and many columns have two words mostly.
type lately[T any] struct {
	last, before understood[T]
	met          map[string]T
}

// understood is a word and what it is, if that is known.
type understood[T any] struct {
	word  string
	is    T
	known bool
}

// mostMet is the number of words from which they are forgotten.
const mostMet = 4096

// of understands a word, by read where it is met for the first time.
func (l *lately[T]) of(word string, read func(string) (T, bool)) (T, bool) {
	if l.last.known && word == l.last.word {
		return l.last.is, true
	}
	l.last, l.before = l.before, l.last
	if l.last.known && word == l.last.word {
		return l.last.is, true
	}
	x := &l.last
	if x.is, x.known = l.met[word]; x.known {
		x.word = word
		return x.is, true
	}
	x.word = strings.Clone(word) // it may be part of a long text
	if x.is, x.known = read(x.word); x.known {
		if l.met == nil || len(l.met) > mostMet {
			l.met = map[string]T{}
		}
		l.met[x.word] = x.is
	}
	return x.is, x.known
}

// described is what a description says of a piece.
type described struct {
	kind  fittings.Kind
	style fittings.Style
	shape fittings.Shape
}

func parseDescription(s string) (d described, ok bool) {
	d.kind, d.style, d.shape, ok = fittings.ParseDescription(s)
	return d, ok
}
