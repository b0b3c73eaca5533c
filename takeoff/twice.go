package takeoff

import (
	"fmt"
	"slices"

	"blankoff/takeoff/ledger"
)

// twice is a row whose tag stands on an earlier one already.
type twice struct{ row, first int32 }

// manyTwice is the share of rows with a tag that stands twice from which tags name runs
// or types of pieces, or begin anew on each sheet, and not a piece each; a slip of the
// pen is one among many. Common practice, no source.
const manyTwice = 0.1

// claimTag files the row under its tag; a tag may stand once where rows are joined by
// their tags. As long as none is, it is kept for the end.
func (t *Takeoff) claimTag(i int, hash uint32) {
	l := &t.book.Lines[i]
	if m := t.book.Seldom(l); !t.joined && (l.FromLength > 0 || m.Run != "" || m.Joins != "") {
		t.oneTagEach()
	}
	if l.TagLength > 0 {
		t.tagged++
	}
	first, taken := t.book.FileTag(i, hash)
	switch {
	case !taken:
	case t.joined:
		t.tagTwice(twice{int32(i), int32(first)})
	default:
		t.twice = append(t.twice, twice{int32(i), int32(first)})
		if same(l, &t.book.Lines[first]) {
			t.alike++
		}
		if t.alike > mostFaults { // no schedule
			t.oneTagEach()
		}
	}
}

// oneTagEach refuses the rows with the tag of an earlier one, here and from now on.
func (t *Takeoff) oneTagEach() {
	t.joined = true
	for _, x := range t.twice {
		t.refuseTwice(x)
	}
	t.twice = nil
}

// tagTwice is the fault of a tag that stands on an earlier row.
func (t *Takeoff) tagTwice(x twice) {
	l := &t.book.Lines[x.row]
	tag := string(t.book.TagOf(l))
	t.fault(int(x.row), t.at(l).Fault("tag", tag, "a tag of its own",
		fmt.Sprintf("tag '%s' already stands on %s; give one of the two another tag", tag, t.rowText(&t.book.Lines[x.first], l.Sheet))))
}

// refuseTwice refuses a row that was measured before its tag was doubted.
func (t *Takeoff) refuseTwice(x twice) {
	t.tagTwice(x)
	t.unmeasure(int(x.row))
}

// settleTwice decides on rows with the tag of an earlier one, where no row is joined to
// another. A few are slips, and so are pieces that are the same in everything; else the
// tags name runs, or begin anew on each sheet, and each row is a piece of its own, named
// by its row too.
func (t *Takeoff) settleTwice() {
	if len(t.twice) == 0 {
		return
	}
	slips := float64(len(t.twice)) < manyTwice*float64(t.tagged)
	runs := len(t.twice) > 4 && 2*len(t.twice) >= t.tagged
	each, pasted := t.revised(), t.pasted()
	kept := 0
	var example string
	for _, x := range t.twice {
		l, first := &t.book.Lines[x.row], &t.book.Lines[x.first]
		if slips || !runs && same(l, first) {
			t.refuseTwice(x)
			continue
		}
		if why := pasted[x.row]; why != "" {
			t.fault(int(x.row), t.at(l).Fault("tag", string(t.book.TagOf(l)), "each piece once", why))
			t.unmeasure(int(x.row))
			continue
		}
		if each[x.first] && l.Kind == first.Kind {
			t.refuseRevised(x)
			continue
		}
		tag := string(t.book.TagOf(l))
		if kept++; kept == 1 {
			example = fmt.Sprintf("'%s' on %s and row %d", tag, t.rowText(first, l.Sheet), l.Row)
		}
		name := fmt.Sprintf("%s (row %d)", tag, l.Row)
		if l.Sheet != first.Sheet {
			name = fmt.Sprintf("%s (%s, row %d)", tag, t.book.Sheets[l.Sheet].Name, l.Row)
		}
		t.book.Rename(int(x.row), name)
		if !t.options.TotalsOnly {
			t.Items[x.row].Tag = name
		}
	}
	if kept > 0 {
		t.Notes = append(t.Notes, fmt.Sprintf("tags that stand on earlier rows too: %d, as %s; as no row is joined to another, each row is taken for pieces of its own and named by its row", kept, example))
	}
	t.twice = nil
}

// pasted finds the rows that stand a second time, in the same order, and says so of each.
func (t *Takeoff) pasted() map[int32]string {
	var pairs []ledger.Pair
	for _, x := range t.twice {
		pairs = append(pairs, ledger.Pair{Row: x.row, First: x.first})
	}
	rows := map[int32]string{}
	for _, run := range t.book.Pasted(pairs) {
		for _, p := range run {
			rows[p.Row] = t.book.PastedText(run)
		}
	}
	return rows
}

// revised finds the rows whose tags stand on later ones, each in a revision of its own: two in
// the same one are those of a run.
func (t *Takeoff) revised() map[int32]bool {
	var marks map[int32][]uint16
	for _, x := range t.twice {
		l, first := &t.book.Lines[x.row], &t.book.Lines[x.first]
		if l.Revision == 0 && first.Revision == 0 {
			continue
		}
		if marks == nil {
			marks = map[int32][]uint16{}
		}
		if marks[x.first] == nil {
			marks[x.first] = []uint16{first.Revision}
		}
		marks[x.first] = append(marks[x.first], l.Revision)
	}
	each := make(map[int32]bool, len(marks))
	for first, of := range marks {
		slices.Sort(of)
		each[first] = len(slices.Compact(of)) == len(of)
	}
	return each
}

// refuseRevised refuses a row with the tag of an earlier one in another revision.
func (t *Takeoff) refuseRevised(x twice) {
	l := &t.book.Lines[x.row]
	tag := string(t.book.TagOf(l))
	t.fault(int(x.row), t.at(l).Fault("tag", tag, "each piece in one revision",
		fmt.Sprintf("tag '%s' stands on %s too, in another revision or variant, so one may take the place of the other; take out what doesn't hold, or give one of the two another tag", tag, t.rowText(&t.book.Lines[x.first], l.Sheet))))
	t.unmeasure(int(x.row))
}

// same reports rows of one sheet that give the same piece, as often.
func same(a, b *ledger.Line) bool {
	return a.Sheet == b.Sheet && a.Kind == b.Kind && a.Shape == b.Shape && a.Faces == b.Faces && a.Length == b.Length && a.Quantity == b.Quantity && a.Area == b.Area
}
