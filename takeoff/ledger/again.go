package ledger

import (
	"fmt"

	"blankoff/fittings"
)

// stretch is rows that follow each other with nothing between them, a blank row included.
type stretch struct {
	from, to int // lines
	area     float64
}

// CheckAgain refuses the rows of a stretch that sums up those above it by size, or lists them
// again: the same pieces in other rows, behind a line of words or a blank row.
func (b *Book) CheckAgain() {
	var above, last stretch
	for i := 0; i < len(b.Lines); {
		s := b.stretchAt(i)
		if i = s.to; s.area == 0 && b.Lines[s.from].isLine() {
			continue
		}
		switch {
		case above.area == 0 || b.Lines[above.from].Sheet != b.Lines[s.from].Sheet:
			above = stretch{s.from, s.from, 0}
		case near(s.area, above.area) && b.again(above, s), near(s.area, last.area) && b.again(last, s):
			above, last = stretch{s.to, s.to, 0}, stretch{}
			continue
		}
		above.to, above.area, last = s.to, above.area+s.area, s
	}
}

// stretchAt is the stretch that begins at a line.
func (b *Book) stretchAt(from int) stretch {
	s := stretch{from: from, to: from}
	for ; s.to < len(b.Lines); s.to++ {
		l := &b.Lines[s.to]
		if s.to > from && (l.Row != b.Lines[s.to-1].Row+1 || l.Sheet != b.Lines[s.to-1].Sheet || l.isLine() || b.Lines[s.to-1].isLine()) {
			break
		}
		if !l.Refused {
			s.area += l.Area
		}
	}
	return s
}

// isLine reports a row that holds no piece, as far as is known: a line of words.
func (l *Line) isLine() bool { return l.Refused && l.Kind == fittings.NoKind && l.Roles == 0 }

// made is what a piece is, and how long: 0 where all of one section are summed up.
type made struct {
	kind   fittings.Kind
	roles  uint8
	faces  [4]int32
	length float64
}

// again refuses rows below that are those above once more. It reports whether they are.
func (b *Book) again(above, below stretch) bool {
	if above.to == above.from || below.area == 0 || b.hangs(above) || b.hangs(below) {
		return false
	}
	long, short := above, below
	if above.to-above.from < below.to-below.from {
		long, short = below, above
	}
	if !b.sumsUp(long, short) {
		return false
	}
	what := "sum them up"
	if short.to-short.from == long.to-long.from {
		what, short = "list them again", below
	}
	if short == above {
		above = below
	}
	for k := short.from; k < short.to; k++ {
		if l := &b.Lines[k]; !l.Refused {
			b.Refuse(k, "tag", string(b.TagOf(l)), "each piece once",
				fmt.Sprintf("rows %d to %d come to the same pieces as rows %d to %d, and seem to %s; take them out, or say by system or level that they are others",
					b.Lines[short.from].Row, b.Lines[short.to-1].Row, b.Lines[above.from].Row, b.Lines[above.to-1].Row, what))
		}
	}
	return true
}

// hangs reports a row of a stretch that hangs on another.
func (b *Book) hangs(s stretch) bool {
	for k := s.from; k < s.to; k++ {
		if b.Lines[k].FromLength > 0 {
			return true
		}
	}
	return false
}

// sumsUp reports that the rows of one stretch are those of another summed up: each of them is
// another piece, they come to the same, and belong to no other system or level. They have no tags;
// as they may be so by chance, the others have some, or they are more than two. As many rows as
// the others are right beside them, at least four, without tags and without a line that names
// either.
func (b *Book) sumsUp(long, short stretch) bool {
	n := short.to - short.from
	tags, others := b.tagged(short), b.tagged(long)
	apart := long.to != short.from && short.to != long.from || b.Lines[long.from].Named != b.Lines[short.from].Named
	if same := n == long.to-long.from; same && (n < 4 || others > 0 || apart) || n < 2 || n < 3 && others == 0 || tags > 0 {
		return false
	}
	if !b.within(short, long) {
		return false
	}
	return b.comesTo(long, short, true) || b.comesTo(long, short, false)
}

// tagged counts the rows with a tag.
func (b *Book) tagged(s stretch) (n int) {
	for k := s.from; k < s.to; k++ {
		if b.Lines[k].TagLength > 0 {
			n++
		}
	}
	return n
}

// within reports that the rows name no system or level that those of another stretch don't.
func (b *Book) within(s, of stretch) bool {
	met := map[[2]int32]bool{}
	for k := of.from; k < of.to; k++ {
		l := &b.Lines[k]
		met[[2]int32{0, l.System}], met[[2]int32{1, l.Level}] = true, true
	}
	for k := s.from; k < s.to; k++ {
		l := &b.Lines[k]
		if b.Names[l.System] != "" && !met[[2]int32{0, l.System}] || b.Names[l.Level] != "" && !met[[2]int32{1, l.Level}] {
			return false
		}
	}
	return true
}

// comesTo reports that each row of the short stretch is another piece, and that they come to
// those of the long one: by lengths too, or by sections only.
func (b *Book) comesTo(long, short stretch, lengths bool) bool {
	sums := map[made]float64{}
	for k := short.from; k < short.to; k++ {
		l := &b.Lines[k]
		m := madeOf(l, lengths)
		if _, twice := sums[m]; twice || l.Refused {
			return false
		}
		sums[m] = l.Area
	}
	for k := long.from; k < long.to; k++ {
		l := &b.Lines[k]
		m := madeOf(l, lengths)
		if _, known := sums[m]; !known || l.Refused {
			return false
		}
		sums[m] -= l.Area
	}
	for _, left := range sums {
		if left > 1e-4*short.area || left < -1e-4*short.area {
			return false
		}
	}
	return true
}

func madeOf(l *Line, length bool) made {
	m := made{kind: l.Kind, roles: l.Roles, faces: l.Faces}
	if length {
		m.length = l.Length
	}
	return m
}
