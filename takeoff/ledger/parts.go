package ledger

import (
	"fmt"
	"math"

	"blankoff/fittings"
	"blankoff/takeoff/terms"
)

// mostParts is how many rows below one are looked at whether they are parts of it.
const mostParts = 200

// CheckParts refuses a row whose parts follow it, by their numbers, and come to the same area:
// 1 before 1.1 and 1.2. They would be counted twice.
func (b *Book) CheckParts() {
	for i := range b.Lines {
		l := &b.Lines[i]
		if l.Refused || l.Revision != 0 && b.checkRevised(i) || i+2 >= len(b.Lines) {
			continue
		}
		switch next := &b.Lines[i+1]; {
		case l.FromLength > 0 || l.Area <= 0:
		case next.TagLength > l.TagLength && l.TagLength > 0 && numbered(b.TagOf(next), b.TagOf(l)) > 0:
			b.checkParts(i, func(p *Line) int { return numbered(b.TagOf(p), b.TagOf(l)) })
		case next.Level != l.Level && b.Names[l.Level] != "" && numbered(b.Names[next.Level], b.Names[l.Level]) > 0:
			b.checkParts(i, func(p *Line) int { return numbered(b.Names[p.Level], b.Names[l.Level]) })
		}
	}
}

// checkParts refuses row i if its parts come to its area; depth is how far a row below is
// down from it: 0 for one that is no part.
func (b *Book) checkParts(i int, depth func(*Line) int) {
	l := &b.Lines[i]
	parts, several, last, sum := 0, false, i, 0.0
	for k := i + 1; k < len(b.Lines) && k <= i+mostParts; k++ {
		p := &b.Lines[k]
		d := depth(p)
		if d == 0 || p.Sheet != l.Sheet {
			break
		}
		if last = k; d == 1 && !p.Refused {
			parts, sum, several = parts+1, sum+p.Area, p.Quantity > l.Quantity
		}
	}
	if parts < 2 && !several || !near(sum, l.Area) && !near(sum*float64(l.Quantity), l.Area) {
		return
	}
	which := fmt.Sprintf("rows %d to %d seem to be the parts of this row by their numbers, and come to its area", b.Lines[i+1].Row, b.Lines[last].Row)
	if last == i+1 {
		which = fmt.Sprintf("row %d seems to be the parts of this row by its number, and comes to its area", b.Lines[last].Row)
	}
	b.Refuse(i, "tag", string(b.TagOf(l)), "each piece once", which+"; take the row out, or its parts")
}

// CheckSums refuses straights that are as long as those of the same size right above them
// together: without a tag, where most rows have one; where none has, if all of two sizes and more
// end in one.
func (b *Book) CheckSums() {
	switch n := len(b.Lines); {
	case b.bare == 0:
	case 3*b.bare <= n:
		for i := range b.Lines {
			if l := &b.Lines[i]; l.TagLength == 0 && !l.Refused && l.Kind == fittings.Straight {
				if from := b.sameAbove(i, true); i-from > 2 && b.sumsAbove(from, i) {
					b.refuseSum(from, i)
				}
			}
		}
	case b.bare == n && n <= mostBare:
		b.checkRuns()
	}
}

// sameAbove is the first of the rows right above a row that are straights of its size, with a tag
// or without.
func (b *Book) sameAbove(i int, tagged bool) int {
	l, from := &b.Lines[i], i
	for ; from > 0 && from > i-mostParts; from-- {
		p := &b.Lines[from-1]
		if p.Refused || p.Kind != l.Kind || p.Sheet != l.Sheet || p.Roles != l.Roles || p.Faces != l.Faces || p.TagLength > 0 != tagged || p.Quantity == 0 {
			break
		}
	}
	return from
}

// sumsAbove reports a row that is as long as rows above it together: by length times quantity, or
// by both as they stand.
func (b *Book) sumsAbove(from, i int) bool {
	var all, lengths float64
	var pieces int32
	for k := from; k < i; k++ {
		p := &b.Lines[k]
		all, lengths, pieces = all+p.Length*float64(p.Quantity), lengths+p.Length, pieces+p.Quantity
	}
	l := &b.Lines[i]
	same := func(a, b float64) bool { return math.Abs(a-b) < 5e-4 }
	return same(l.Length*float64(l.Quantity), all) || l.Quantity == pieces && (same(l.Length, all) || same(l.Length, lengths))
}

// checkRuns refuses the last row of each size, where rows of a size stand together and the last
// sums up the others, of all sizes with more than two rows, and of two sizes at least.
func (b *Book) checkRuns() {
	var sums [][2]int
	for i := range b.Lines {
		l := &b.Lines[i]
		if i+1 < len(b.Lines) && b.sameAbove(i+1, false) <= i || l.Refused || l.Kind != fittings.Straight {
			continue
		}
		from := b.sameAbove(i, false)
		if i-from < 2 {
			continue
		}
		if !b.sumsAbove(from, i) {
			return
		}
		sums = append(sums, [2]int{from, i})
	}
	if len(sums) < 2 {
		return
	}
	for _, x := range sums {
		b.refuseSum(x[0], x[1])
	}
}

func (b *Book) refuseSum(from, i int) {
	b.Refuse(i, "tag", string(b.TagOf(&b.Lines[i])), "each piece once",
		fmt.Sprintf("this row is as long as rows %d to %d together, and of the same size, so it may be their total; take it out, or leave its kind and size empty", b.Lines[from].Row, b.Lines[i-1].Row))
}

// near reports areas that are the same but for rounding.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-4*b }

// checkRevised refuses a row whose tag is that of another with a revision behind it: D2 rev B
// beside D2. It reports whether it does.
func (b *Book) checkRevised(i int) bool {
	l := &b.Lines[i]
	tag := string(b.TagOf(l))
	base, ok := terms.RevisedTag(tag)
	if !ok {
		return false
	}
	at, ok := b.Find(base)
	if !ok || b.Lines[at].Sheet != l.Sheet {
		return false
	}
	b.Refuse(i, "tag", tag, "each piece in one revision",
		fmt.Sprintf("tag '%s' seems to be a revision of '%s' on row %d, so one may take the place of the other; take out what doesn't hold", tag, base, b.Lines[at].Row))
	return true
}

// numbered is how many numbers a tag has behind those of another: 1 for 1.2, 1-2 or 1b behind
// 1 and for A2 behind A, 2 for 1.2.3.
func numbered[text string | []byte](tag, of text) int {
	n := len(of)
	if n == 0 || len(tag) <= n || len(tag) > n+12 || string(tag[:n]) != string(of) {
		return 0
	}
	rest := tag[n:]
	switch c, last := rest[0], of[n-1]; {
	case (c == '.' || c == '-' || c == '/') && len(rest) > 1 && isFigure(rest[1]):
		deep := 1
		for i := 1; i < len(rest); i++ {
			if rest[i] == c {
				deep++
			}
		}
		return deep
	case isFigure(last) && !isFigure(c) && (c|0x20) >= 'a' && (c|0x20) <= 'z' && len(rest) == 1, !isFigure(last) && isFigure(c):
		return 1
	}
	return 0
}

func isFigure(c byte) bool { return c >= '0' && c <= '9' }
