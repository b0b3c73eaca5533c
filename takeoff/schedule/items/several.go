package items

import (
	"fmt"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/answered"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
	"blankoff/takeoff/terms"
)

// counted reports that the quantity of a row may be that of all the pieces that it stands
// for: so many, or so many several times over. times is 0 where nobody can tell.
func counted(r *takeoff.Row, times int) bool {
	return times > 0 && pieces(r)%times == 0
}

// doubtAgain refuses a row of which another column says another quantity.
func (t *Reader) doubtAgain(r *takeoff.Row) {
	cell := t.again.cell
	if n, ok := celltext.Count(cell); celltext.MeansNothing(cell) || ok && n == pieces(r) {
		return
	}
	t.doubtCount(r, t.again.of.Typed, cell, "the quantity", "isn't the quantity, and the row counts for %s; correct one, or take the column out")
}

// doubtCount refuses a row that seems to stand for several and doesn't count for them.
func (t *Reader) doubtCount(r *takeoff.Row, heading, cell, expected, trouble string) {
	n := "one"
	if p := pieces(r); p > 1 {
		n = strconv.Itoa(p)
	}
	short := celltext.Shorten(cell)
	r.Faults = append(r.Faults, t.Place.Fault(heading, short, expected, fmt.Sprintf("'%s' "+trouble, short, n)))
}

// areaName is what the name of a system or a level is, and how many it names.
type areaName struct{ is, times int }

// doubtAreas refuses a row whose system or level is a total, names several, or is none.
func (t *Reader) doubtAreas(r *takeoff.Row) {
	for _, c := range SubColumns {
		text := r.Text[c]
		if text == "" {
			continue
		}
		x, met := t.areas[text]
		if !met {
			if x.is, x.times = wording.Name(t.Lex, text); x.is == wording.IsName && wording.AnyLevel(text) && c == takeoff.Level {
				x.is = wording.IsSeveral
			}
			if len(t.areas) > mostMet || t.areas == nil {
				t.areas = map[string]areaName{}
			}
			t.areas[strings.Clone(text)] = x
		}
		switch short := celltext.Shorten(text); x.is {
		case wording.IsSum:
			r.Faults = append(r.Faults, t.Place.Fault(c.Heading(), short, "a row of a piece",
				fmt.Sprintf("'%s' seems to be a total, and the row has the sizes of a piece; take the sizes out, or name the %s", short, c.Heading())))
		case wording.IsSeveral:
			if counted(r, x.times) || c == takeoff.System && wording.NumberList.MatchString(text) { // they may be all of them
				continue
			}
			r.Faults = append(r.Faults, t.Place.Fault(c.Heading(), short, "one "+c.Heading(),
				fmt.Sprintf("'%s' seems to name several, and the row may count for each; write a row for each, or how many under quantity", short)))
		case wording.IsStruck:
			t.strike(r, c.Heading(), text)
		case wording.IsShape:
			r.Faults = append(r.Faults, t.Place.Fault(c.Heading(), short, "the name of a "+c.Heading(),
				fmt.Sprintf("'%s' is a shape and no name of a %s; write it in a column headed shape", short, c.Heading())))
		}
	}
}

// named is a column of names, with the last one that is a name, and those that took a
// closer look.
type named struct {
	takeoff.Column
	last   string
	met    map[string]bool // that they strike
	begins [3]byte         // how one begins that says nothing: no other that begins so does
	begun  bool            // there is one
}

// alike reports a name that begins as one that says nothing.
func (n *named) alike(name string) bool {
	return n.begun && len(name) >= len(n.begins) && name[0] == n.begins[0] && name[1] == n.begins[1] && name[2] == n.begins[2]
}

// namedColumns are the columns of names besides system and level.
var namedColumns = [...]takeoff.Column{takeoff.PlaceOnSite, takeoff.Drawing, takeoff.Stage, takeoff.Group, takeoff.Run}

// findNamed finds those that are used.
func (t *Reader) findNamed() {
	t.named = nil
	for _, c := range namedColumns {
		if t.Maps(c) {
			t.named = append(t.named, named{Column: c})
		}
	}
}

// doubtNamed refuses a row with a name that says that it doesn't count.
func (t *Reader) doubtNamed(r *takeoff.Row) {
	for i := range t.named {
		n := &t.named[i]
		text := r.Text[n.Column]
		switch {
		case text == "" || n.alike(text) || text == n.last:
		case !t.Lex.MayStrike(text):
			if n.last = text; t.Lex.Sums(text) {
				t.doubtSum(r, n.Heading(), text)
				n.last = ""
			} else if len(text) > 2 && len(text) < 200 && !t.Lex.MayTotal(text) {
				n.begins, n.begun = [3]byte([]byte(text[:3])), true
			}
		case n.strikes(t.Lex, text):
			t.strike(r, n.Heading(), text)
		default:
			n.last = text
		}
	}
}

// strikes reports a name that says that its row doesn't count.
func (n *named) strikes(lex *headings.Lexicon, name string) bool {
	is, met := n.met[name]
	if !met {
		is = lex.StruckName(name)
		if n.met == nil || len(n.met) > mostMet {
			n.met = map[string]bool{}
		}
		n.met[strings.Clone(name)] = is
	}
	return is
}

// plainTag is wording.PlainTag for tags of which most are numbered like one before.
func (t *Reader) plainTag(tag string) bool {
	if wording.NumberedLike(tag, t.numbered) {
		return true
	}
	plain := wording.PlainTag(tag)
	if plain {
		t.numbered = tag
	}
	return plain
}

// doubtTag refuses a row whose tag says that it doesn't count, is a total or stands for
// several, and reports whether it does.
func (t *Reader) doubtTag(r *takeoff.Row, tag string) bool {
	if wording.PlainTag(tag) { // or none
		return false
	}
	if _, revised := terms.RevisedTag(tag); revised {
		r.Revision = max(r.Revision, 1)
	}
	if t.Signed == 0 && answered.Signed(tag) {
		t.Signed = r.At.Row
	}
	switch {
	case wording.StruckTag(tag) || strings.EqualFold(strings.TrimSuffix(tag, "."), "e.g") || t.Lex.StruckWithin(tag) || t.Lex.Struck(tag) || t.Lex.StruckEnd(tag):
		t.strike(r, takeoff.Tag.Heading(), tag)
	case strings.ContainsAny(tag, " (") && t.saysOf(tag).Of&wording.OfDoubt != 0:
		t.doubtWord(r, takeoff.Tag.Heading(), tag)
	case t.Lex.TotalName(tag) || len(tag) <= wording.MaxTitle && !strings.ContainsAny(tag[:1], "@=+-") && t.Lex.Total(tag):
		t.doubtSum(r, "", tag)
	case t.BareTags && wording.SetApart(tag):
		short := celltext.Shorten(tag)
		r.Faults = append(r.Faults, t.Place.Fault(takeoff.Tag.Heading(), short, "a tag as the others",
			fmt.Sprintf("'%s' is set apart from the other tags by its signs; if the row doesn't count take it out, or write out under scope, else take the signs off", short)))
	default:
		times, several := wording.TagTimes(tag)
		if !several && r.Text[takeoff.Quantity] == "" && wording.RangeOfNumbers(tag) {
			several = true
		}
		if !several && t.Numbered {
			times = len(wording.SeveralNumbers(tag))
			several = times > 1
		}
		if !several || counted(r, times) {
			return false
		}
		t.doubtCount(r, takeoff.Tag.Heading(), tag, "one piece, or how many under quantity", "seems to name several pieces, and the row counts for %s; write how many under quantity, or a row for each")
	}
	return true
}

// doubtSum refuses a row that something calls a total.
func (t *Reader) doubtSum(r *takeoff.Row, heading, word string) {
	short := celltext.Shorten(word)
	r.Faults = append(r.Faults, t.Place.Fault(heading, short, "a piece, or a total without kind and size",
		fmt.Sprintf("'%s' seems to head a total, and the row has the kind and the size of a piece; leave them empty, or take the row out", short)))
}

// leastLong is a length that some piece has, m: below it figures may have moved.
const leastLong = 0.01

// doubtNone refuses a row without a quantity where the others have one, and a 1 is written
// out. A row that lacks a cell, or its size, is told as such.
func (t *Reader) doubtNone(r *takeoff.Row) {
	sized := r.Has(takeoff.DimColumn(fittings.Width)) && r.Has(takeoff.DimColumn(fittings.Height)) || r.Has(takeoff.DimColumn(fittings.Diameter))
	sized = sized && (!r.Has(length) || r.Number[length] >= leastLong)
	if t.NoneEmpty && r.Text[takeoff.Quantity] == "" && sized && len(r.Faults) == 0 && !(t.even && t.cells < len(t.Specs)) {
		r.Refuse(takeoff.Quantity, t.Place.Fault(takeoff.Quantity.Heading(), "", "how many pieces there are",
			"no quantity, though other rows have one and a single piece has a 1; write how many there are"))
	}
}

// ToldCounts finds fault with columns that aren't used and seem to hold counts, where
// no column says how many there are.
func (t *Reader) ToldCounts() {
	t.toldQuantities()
	t.doubtLast()
	t.toldMoved()
	t.toldBoth()
	for i := range t.Specs {
		s := &t.Specs[i]
		w := &s.Watch
		sure := s.Verdict == headings.Asks && w.Most > 1
		if !w.Counts || w.Filled == 0 || w.Others > w.Filled || !sure && (5*w.Others > w.Filled || 2*w.Filled < t.watched || w.Most < 2 || w.Least > 5 || !w.Gaps && w.Filled > 1 && !t.Maps(takeoff.Tag)) {
			continue
		}
		name := s.Typed
		if name == "" {
			name = fmt.Sprintf("column %d", i+1)
		}
		at := takeoff.Place{File: t.Place.File, Sheet: t.Place.Sheet, Row: t.HeadRow}
		t.Found.Faults = append(t.Found.Faults, at.Fault(name, s.Typed, "quantity, or another heading",
			fmt.Sprintf("'%s' holds whole numbers and no column says how many there are, so every row from row %d on was taken for one piece; write quantity if that is what it is, or take the column out", name, t.HeadRow+1)))
	}
	t.watched = 0
}

// quantified is how many rows say how many pieces they stand for, and how many don't.
type quantified struct{ with, without, first, last int }

func (c *quantified) add(r *takeoff.Row) {
	switch {
	case r.Text[takeoff.Quantity] != "":
		c.with++
	case !r.Refused(takeoff.Quantity):
		c.merge(quantified{0, 1, r.At.Row, r.At.Row})
	}
}

// Uncounted reports a row so far that doesn't say how many pieces it stands for.
func (t *Reader) Uncounted() bool { return t.tallies.without > 0 }

// merge adds what was counted further down.
func (c *quantified) merge(below quantified) {
	if c.without == 0 {
		c.first = below.first
	}
	if below.without > 0 {
		c.last = below.last
	}
	c.with, c.without = c.with+below.with, c.without+below.without
}

// toldQuantities tells of rows without a figure under quantity, where others have one.
func (t *Reader) toldQuantities() {
	c := t.tallies
	t.tallies = quantified{}
	switch {
	case c.with == 0 || c.without == 0:
	case c.without == 1:
		t.Note("1 row has no figure under quantity, and counts as one piece: row %d", c.first)
	default:
		t.Note("%d rows have no figure under quantity, and each counts as one piece: in rows %d to %d", c.without, c.first, c.last)
	}
}
