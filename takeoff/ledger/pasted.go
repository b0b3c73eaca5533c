package ledger

import "fmt"

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

// Pasted finds runs among rows, each with the first one of its tag, that are the same as they
// stand, in the same order, with no line between them and those that names them: all but a few of
// a run, or all rows once more in any order.
func (b *Book) Pasted(pairs []Pair) (runs [][]Pair) {
	if b.wholeAgain(pairs) {
		return [][]Pair{pairs}
	}
	return b.pasted(pairs, leastPasted)
}

// wholeAgain reports rows of which each stands once more below all of them.
func (b *Book) wholeAgain(pairs []Pair) bool {
	if len(pairs) < leastBare || len(pairs) != b.tags.used || 2*len(pairs) != len(b.Lines) {
		return false
	}
	firsts := map[int32]bool{}
	for i, p := range pairs {
		if firsts[p.First] = true; int(p.First) >= len(pairs) || !b.once(p) || len(firsts) != i+1 {
			return false
		}
	}
	titles := b.titles()
	return titles[0] == titles[len(titles)-1]
}

func (b *Book) pasted(pairs []Pair, least int) (runs [][]Pair) {
	var titles []int32
	take := func(run []Pair) {
		if titles == nil {
			titles = b.titles()
		}
		if titles[run[0].Row] == titles[run[0].First] {
			runs = append(runs, run)
		}
	}
	for len(pairs) > 0 {
		n := 1
		for n < len(pairs) && pairs[n] == (Pair{pairs[n-1].Row + 1, pairs[n-1].First + 1}) {
			n++
		}
		run, same := pairs[:n], 0
		for _, p := range run {
			if b.once(p) {
				same++
			}
		}
		if pairs = pairs[n:]; same < least {
			continue
		}
		if 5*same >= 4*n {
			take(run)
			continue
		}
		for k := 0; k < len(run); k++ { // the parts of it that are
			from := k
			for k < len(run) && b.once(run[k]) {
				k++
			}
			if k-from >= least {
				take(run[from:k])
			}
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
	if run[n].First < run[0].First {
		return fmt.Sprintf("rows %d to %d are those above once more, and may be pasted twice; take them out, or say by system or level that they are others", b.Lines[run[0].Row].Row, b.Lines[run[n].Row].Row)
	}
	return fmt.Sprintf("rows %d to %d are rows %d to %d once more, and may be pasted twice; take them out, or say by system or level that they are others",
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
			b.Refuse(int(p.Row), "tag", "", "each piece once", b.PastedText(run))
		}
	}
}
