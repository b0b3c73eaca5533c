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

// Entitled is what a line that names the rows below it adds to Line.Named.
const Entitled = 16

// Rows that stand a second time in the same order are a list that was pasted twice from so many
// on: with their tags, and without. Common practice, no source.
const (
	leastPasted = 3
	leastBare   = 5
)

// mostBare is how many rows without tags are looked at.
const mostBare = 50_000

// Pair is a row, and an earlier one that is the same as it stands.
type Pair struct{ Row, First int32 }

// Pasted parts rows, each with the first one of its tag, into runs that are the same as they
// stand, in the same order, with no line between them and those that names them.
func (b *Book) Pasted(pairs []Pair) (runs [][]Pair) { return b.pasted(pairs, leastPasted) }

func (b *Book) pasted(pairs []Pair, least int) (runs [][]Pair) {
	var titles []int32
	for i, n := 0, 0; i < len(pairs); i += max(n, 1) {
		for n = 0; i+n < len(pairs) && b.once(pairs[i+n]) && (n == 0 || pairs[i+n] == Pair{pairs[i+n-1].Row + 1, pairs[i+n-1].First + 1}); n++ {
		}
		if n < least {
			continue
		}
		if titles == nil {
			titles = b.titles()
		}
		if titles[pairs[i].Row] == titles[pairs[i].First] {
			runs = append(runs, pairs[i:i+n])
		}
	}
	return runs
}

// titles counts for each line the lines so far that name those below them.
func (b *Book) titles() []int32 {
	out := make([]int32, len(b.Lines))
	for i := 1; i < len(out); i++ {
		if out[i] = out[i-1]; b.Lines[i].Named/Entitled != b.Lines[i-1].Named/Entitled {
			out[i]++
		}
	}
	return out
}

// once reports rows that are the same as they stand, by their marks and by all that is known of them.
func (b *Book) once(p Pair) bool {
	l, o := &b.Lines[p.Row], &b.Lines[p.First]
	return l.Mark == o.Mark && l.Sheet == o.Sheet && madeOf(l, true) == madeOf(o, true) && l.Quantity == o.Quantity && l.Area == o.Area && l.System == o.System && l.Level == o.Level
}

// PastedText says what a run is.
func (b *Book) PastedText(run []Pair) string {
	n := len(run) - 1
	return fmt.Sprintf("rows %d to %d are rows %d to %d once more, as they stand, and may be pasted twice; take them out, or say by system or level that they are others",
		b.Lines[run[0].Row].Row, b.Lines[run[n].Row].Row, b.Lines[run[0].First].Row, b.Lines[run[n].First].Row)
}

// CheckPasted refuses rows without tags that stand a second time in the same order, where no row
// has a tag.
func (b *Book) CheckPasted() {
	if b.tags.used > 0 || len(b.Lines) > mostBare || len(b.Lines) < 2*leastBare {
		return
	}
	type key struct {
		made
		quantity, sheet int32
		mark            uint8
	}
	firsts, pairs := map[key]int32{}, []Pair(nil)
	for i := range b.Lines {
		l := &b.Lines[i]
		k := key{madeOf(l, true), l.Quantity, l.Sheet, l.Mark}
		if first, met := firsts[k]; met && !l.Refused {
			pairs = append(pairs, Pair{int32(i), first})
		} else if !met {
			firsts[k] = int32(i)
		}
	}
	for _, run := range b.pasted(pairs, leastBare) {
		for _, p := range run {
			b.Refuse(int(p.Row), "", "", "each piece once", b.PastedText(run))
		}
	}
}
