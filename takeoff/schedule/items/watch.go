package items

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/answered"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

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
	if again || unsure && !s.Fixed && t.Lex.Counts(s.Typed) {
		t.Refuse(s, "quantity", fmt.Sprintf("'%s' seems to say how many there are, and isn't a known heading, so each row from row %d on counts as one piece; write quantity, how many pieces the row stands for in all, or take the column out", s.Typed, t.HeadRow+1))
		return
	}
	units := s.Verdict == headings.Asks && s.Ask.Units() // or how many
	remarks, keeps := t.remarksHead(s), ""
	if !remarks { // else looked at as such
		keeps = t.keepsOf(s, unsure || s.Verdict == headings.Asks)
	}
	s.Watch = columns.Watch{Turns: t.ofRadii(s), Keeps: keeps, Remarks: remarks, Counts: (unsure || units || s.Verdict == headings.Asks && s.Ask.Describes()) && !many && !s.Fixed && !s.Answers, Units: unsure || units, Least: 1000, Several: unsure && wording.HeadsMany(s.Typed), TotalIn: t.totalIn(s), Revises: t.Revises(i)}
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
	}
	return keeps
}

// initials are headings under which a letter or a sign says that a row doesn't count: E of new
// and existing, D of added and deleted, O of additions and omissions (common practice, no source).
var initials = map[string]string{"existing/new": "e", "new/existing": "e", "exist/new": "e", "new/exist": "e", "e/n": "e", "n/e": "e", "change": "d", "a/d": "d", "add/omit": "o", "a/o": "o", "+/-": "-"}

// plainHead is a heading in small letters, without spaces, points and apostrophes.
func plainHead(typed string) string {
	return strings.Map(func(r rune) rune {
		if r == ' ' || r == '.' || r == '\'' { // the last one guards a formula
			return -1
		}
		return unicode.ToLower(r)
	}, typed)
}

// ofRadii reports a heading of radii, which only fittings have.
func (t *Reader) ofRadii(s *columns.Spec) bool {
	h := t.Lex.Read(s.Typed)
	return h.Verdict == headings.Asks && h.Ask.Radii()
}

// remarksHead reports a heading of remarks.
func (t *Reader) remarksHead(s *columns.Spec) bool {
	h := t.Lex.Read(s.Typed)
	return h.Verdict == headings.Known && h.Column == takeoff.Note
}
