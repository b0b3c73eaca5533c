package items

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/answered"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
)

// unused looks at a cell of a column that isn't used.
func (t *Reader) unused(r *takeoff.Row, i int, s *columns.Spec, cell string) {
	if t.unheaded(i, s); t.Straights {
		if t.seeFitting(cell, s.Typed+"-"); s.Watch.Turns {
			t.fitted = s.Typed // only fittings have one
		}
	}
	if s.Waits {
		t.AskLate(s)
	}
	w := &s.Watch
	if w.Several {
		t.seeSeveral(s, cell)
	}
	switch {
	case w.Again:
		t.again = totalLength{s, cell}
		return
	case w.TotalIn.Name != "":
		t.total = totalLength{s, cell}
	}
	if w.Revises {
		r.Revision = answered.RevisionMark(cell)
	}
	if cell[len(cell)-1] == '/' && t.timesing(r, s, cell) {
		return
	}
	if w.Remarks {
		t.others = append(t.others, otherNote{s.Typed, cell})
	}
	if w.Keeps != "" && cell != s.AsIs && t.struck(r, i, s, cell) {
		return
	}
	if len(cell) < 20 && !celltext.Digit(cell[0]) && cell != s.Last.From {
		if t.Lex.Sums(cell) {
			t.others = append(t.others, otherNote{nameAt(s, i), cell})
			return
		}
		unit := w.Units && t.unitBeside(r, s, cell)
		if shape := t.shapeBeside(r, s, cell); !unit && !shape && !(s.OfUnits && t.LengthAt > 0) {
			s.Last.From = cell
		}
	}
	if s.Verdict == headings.Blank {
		t.underNone(i, s, cell)
	}
	if w.Counts && cell != s.Typed { // headings again
		w.See(cell)
	}
}

// struck refuses a row whose cell says that it doesn't count, and reports whether it does.
func (t *Reader) struck(r *takeoff.Row, i int, s *columns.Spec, cell string) bool {
	if t.asAbove(cell, s.Watch.Struck) || t.strikes(s, cell) {
		s.Watch.Struck = t.Place.Row
		t.says(r, s, i, cell)
		return true
	}
	if quantity.Above(cell, takeoff.Text) == "" {
		s.AsIs = cell
	}
	return false
}

// underNone takes note of a cell under no heading.
func (t *Reader) underNone(i int, s *columns.Spec, cell string) {
	if len(cell) < 20 && !celltext.Digit(cell[0]) && (t.saysOf(cell).Of&(wording.OfMany|wording.OfCounts) != 0 || t.Lex.Counts(cell)) {
		t.others = append(t.others, otherNote{nameAt(s, i), cell})
	}
	if len(t.strays) < headrow.MostTitle {
		t.strays = append(t.strays, cell)
	}
	t.secondFigure(i, s, cell)
}

// secondFigure finds fault, once, with figures under no heading right behind a length or
// a count: a heading may be merged over both.
func (t *Reader) secondFigure(i int, s *columns.Spec, cell string) {
	if i == 0 || s.Own || s.Answers || !celltext.Digit(cell[0]) {
		return
	}
	before := &t.Specs[i-1]
	if !before.Used || before.Measure != takeoff.Lengths && before.Measure != takeoff.Count || strings.ContainsFunc(cell, unicode.IsLetter) {
		return
	}
	s.Own, s.Watch.Counts = true, false
	t.Found.Faults = append(t.Found.Faults, t.Place.Fault(before.Typed, celltext.Shorten(cell), "one figure under a heading",
		fmt.Sprintf("'%s' stands behind '%s' under no heading and isn't read; give it a heading, or put both into one cell, as 5'-6\"", celltext.Shorten(cell), before.Typed)))
}

// strikes reports a cell that says its row doesn't count.
func (t *Reader) strikes(s *columns.Spec, cell string) bool {
	if s.Parties == "supplied" && answered.Theirs(cell) || s.Parties == "trade" && answered.OfOtherTrade(cell) && !answered.OfTrade(cell) {
		return true
	}
	no := slices.Contains(wording.Noes, strings.ToLower(cell))
	switch s.Watch.Keeps {
	case "answered":
		return answered.SaysNo(cell, s.Ticked) || t.Lex.Struck(cell) || celltext.MeansNothing(cell) && answered.PlusMinus(s.Typed)
	case "altered", "added", "times", "dated", "replaces":
		return answered.Turns(s.Watch.Keeps, cell) || t.Lex.Struck(cell) || len(cell) == 1 && strings.EqualFold(cell, initials[plainHead(s.Typed)])
	case "struck":
		return !no
	case "marked":
		return len(cell) < 5 && slices.Contains(wording.Yeses, strings.ToLower(cell))
	case "named":
		return t.Lex.StruckName(cell)
	case "kept":
		return no || t.Lex.Struck(cell)
	case "e", "d", "o", "-", "out", "cr", "ded", "deduct":
		return strings.EqualFold(cell, s.Watch.Keeps) || t.Lex.Struck(cell)
	}
	of := t.saysOf(cell).Of
	return t.Lex.Struck(cell) || of&wording.OfOut != 0 || of&wording.OfSum != 0 && headings.SumWord(cell) || of&wording.OfDoubt != 0 && (s.Verdict == headings.Blank || t.Lex.Keeps(s.Typed) == "status")
}

// strike refuses a row of which something says that it doesn't count.
func (t *Reader) strike(r *takeoff.Row, heading, cell string) {
	short := celltext.Shorten(cell)
	r.Faults = append(r.Faults, t.Place.Fault(heading, short, "a row that counts",
		fmt.Sprintf("'%s' seems to say that the row doesn't count; take the row out, write out under scope, or reword it", short)))
}

// unitBeside refuses a row beside whose sizes another unit stands than that in which
// they would be read, and reports whether one does.
func (t *Reader) unitBeside(r *takeoff.Row, s *columns.Spec, cell string) bool {
	u, ok := quantity.UnitOf(cell)
	if s.OfUnits && !ok {
		u, ok = wording.UnitWord(cell)
	}
	if s.Verdict != headings.Asks && cell[0] >= 'A' && cell[0] <= 'Z' && celltext.Digit(cell[len(cell)-1]) { // M1 is a mark
		return false
	}
	other := func(x columns.Spec) bool { return x.Used && x.Measure == takeoff.Lengths && x.Column.Unit != u }
	if t.UnitsAt > 0 && s == &t.Specs[t.UnitsAt] && ok && (u.Name == "m" || u == quantity.Foot) && !t.lengthFilled { // the quantity is the length
		return false
	}
	if !ok && s.OfUnits && t.Lex.Uncounted(cell) {
		r.Faults = append(r.Faults, t.Place.Fault(s.Typed, cell, "pieces",
			fmt.Sprintf("'%s' in '%s' isn't a count of single pieces; write how many pieces there are under quantity", celltext.Shorten(cell), s.Typed)))
		return true
	}
	if ok && (s.Verdict == headings.Asks || s.OfUnits && t.LengthAt > 0) && (u.Measure == takeoff.Areas || u.Measure == takeoff.Lengths && slices.ContainsFunc(t.Specs, other)) {
		r.Faults = append(r.Faults, t.Place.Fault(s.Typed, cell, "pieces",
			fmt.Sprintf("'%s' in '%s' may be the unit of the sizes or of the quantity; write the unit in each heading, and quantity as pieces", cell, s.Typed)))
		return true
	}
	if !ok || u.Measure != takeoff.Lengths || len(cell) == 1 && cell != "m" {
		return false
	}
	for i := range t.Specs {
		if x := &t.Specs[i]; x.Used && !x.Said && x.Measure == takeoff.Lengths && x.Column.Unit != u {
			r.Faults = append(r.Faults, t.Place.Fault(s.Typed, cell, "the unit in each heading",
				fmt.Sprintf("'%s' in '%s' may be the unit of the sizes, and '%s' is read in %s; write the unit in each heading, as width_%s", cell, s.Typed, x.Typed, x.Column.Unit.Name, x.Column.Unit.Name)))
			return true
		}
	}
	return false
}

// shapeBeside refuses a row beside which a shape stands that nobody reads, and reports
// whether one does.
func (t *Reader) shapeBeside(r *takeoff.Row, s *columns.Spec, cell string) bool {
	if t.Maps(takeoff.Shape) {
		return false
	}
	word, ok := t.Lex.Exact(takeoff.Shape, cell)
	if !ok {
		word = cell
	}
	shape, ok := fittings.ParseShape(word)
	if ok = ok && shape == fittings.FlatOval; ok {
		r.Faults = append(r.Faults, t.Place.Fault(s.Typed, celltext.Shorten(cell), "shape as the heading",
			fmt.Sprintf("'%s' in '%s' seems to be the shape of the piece; write shape as the heading, or take it out", celltext.Shorten(cell), s.Typed)))
	}
	return ok
}

// WatchUnused finds out what the columns that aren't used may say.
func (t *Reader) WatchUnused() {
	many := t.Maps(takeoff.Quantity) && !t.EmptyCounts()
	t.counted = slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		return s.Used && s.Verdict == headings.Known && s.To() == takeoff.Quantity && !strings.EqualFold(s.Typed, takeoff.Quantity.Heading()) // where empty is one
	})
	t.watched = 0
	t.BeforeText()
	t.findNamed()
	t.seeMissing()
	t.seeEven()
	t.watchMoved()
	t.both = both{may: t.Maps(columns.Own[0]) && t.Maps(columns.Own[1]) && t.Maps(columns.Own[2])}
	for i := range t.Specs {
		t.watch(i, many)
	}
}

// watch finds out what a column may say if it isn't used. many: another says how many pieces
// there are.
func (t *Reader) watch(i int, many bool) {
	s := &t.Specs[i]
	s.Watch = columns.Watch{}
	if s.Used || strings.HasPrefix(s.Typed, columns.AddedMark) {
		return
	}
	words := headings.Tokens(s.Typed)
	if len(words) == 1 && words[0] == "x" && i > 0 && i+1 < len(t.Specs) && t.Specs[i-1].Used && t.Specs[i-1].Measure == takeoff.Lengths && t.Specs[i+1].Used && t.Specs[i+1].Measure == takeoff.Lengths { // between width and height
		return
	}
	known := slices.ContainsFunc(words, func(w string) bool { return t.Lex.Unused(w) && !t.Lex.Total(w) }) && !t.LaterCount(s.Typed)
	unsure := (s.Verdict == headings.Unknown || s.Verdict == headings.Blank) && (!s.Heading.Said || s.Heading.Unit.Measure == takeoff.Count) && !known
	if u, ok := columns.UnitOnly(s.Typed); unsure && !s.Fixed && ok && u.Measure == takeoff.Lengths {
		t.Refuse(s, "what it is of, with the unit", fmt.Sprintf("'%s' names a unit only, so the column isn't used; write what it is of, or put both figures into one cell, as 5'-6\"", s.Typed))
		return
	}
	again, same := t.CountsAgain(s)
	if again && same {
		s.Watch = columns.Watch{Again: true}
		return
	}
	if (again || unsure && !s.Fixed && t.Lex.Counts(s.Typed) && !t.NoCount(i)) && !t.countsElse(i) {
		t.Refuse(s, "quantity", fmt.Sprintf("'%s' seems to say how many there are, and isn't a known heading, so each row from row %d on counts as one piece; write quantity, how many pieces the row stands for in all, or take the column out", s.Typed, t.HeadRow+1))
		return
	}
	units := s.Verdict == headings.Asks && s.Ask.Units() // or how many
	remarks, keeps := t.remarksHead(s), ""
	if !remarks { // else looked at as such
		keeps = t.keepsOf(s, unsure || s.Verdict == headings.Asks)
	}
	s.Watch = columns.Watch{Turns: t.ofRadii(i), Keeps: keeps, Remarks: remarks, Counts: (unsure || units || s.Verdict == headings.Asks && s.Ask.Describes()) && !many && !s.Fixed && !s.Answers && !wording.OtherUnit.MatchString(s.Typed) && !t.ofLevels(s.Typed), Units: unsure || units, Least: 1000, Several: unsure && wording.HeadsMany(s.Typed), TotalIn: t.totalIn(s), Revises: t.Revises(i)}
}

// keepsOf is how the cells of a column may say that rows don't count; open: its heading doesn't
// say what it holds.
func (t *Reader) keepsOf(s *columns.Spec, open bool) string {
	keeps := t.Lex.Keeps(s.Typed)
	if keeps == "" && open {
		keeps = "status"
	}
	switch turns := answered.HeadTurns(t.Lex, s.Typed); {
	case keeps != "" && keeps != "status":
	case turns != "":
		keeps = turns
	case keeps == "status" && initials[plainHead(s.Typed)] != "":
		keeps = initials[plainHead(s.Typed)]
	case s.Answers:
		keeps = "answered"
	case keeps == "" && s.Parties != "":
		keeps = "status"
	}
	return keeps
}

// initials are headings under which a letter or a sign says that a row doesn't count: E of new
// and existing, D of added and deleted, O of additions and omissions (common practice, no source).
var initials = map[string]string{"existing/new": "e", "new/existing": "e", "exist/new": "e", "new/exist": "e", "e/n": "e", "n/e": "e", "change": "d", "a/d": "d", "add/omit": "o", "a/o": "o", "+/-": "-", "in/out": "out", "out/in": "out", "cr/dr": "cr", "dr/cr": "cr", "add/ded": "ded", "add/deduct": "deduct"}

// plainHead is a heading in small letters, without spaces, points and apostrophes.
func plainHead(typed string) string {
	return strings.Map(func(r rune) rune {
		if r == ' ' || r == '.' || r == '\'' { // the last one guards a formula
			return -1
		}
		return unicode.ToLower(r)
	}, typed)
}

// ofRadii reports a column headed radii, which only fittings have, whose cells don't number the
// rows.
func (t *Reader) ofRadii(i int) bool {
	h := t.Lex.Read(t.Specs[i].Typed)
	return h.Verdict == headings.Asks && h.Ask.Radii() && !t.NumbersAll(t.Peek(), i)
}

// remarksHead reports a heading of remarks.
func (t *Reader) remarksHead(s *columns.Spec) bool {
	h := t.Lex.Read(s.Typed)
	return (h.Verdict == headings.Known || h.Verdict == headings.Near) && h.Column == takeoff.Note
}
