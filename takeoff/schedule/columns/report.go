package columns

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// AddedMark begins the headings of columns that were added to a file of refused
// rows.
const AddedMark = "refused: "

// CommaMark at the end of a heading says that decimals are written with a comma,
// in a file whose few rows don't show it.
const CommaMark = "(decimals with a comma)"

// Report turns what was found in the heading row into faults and notes.
func (t *Reading) Report() {
	for i := range t.Specs {
		s := &t.Specs[i]
		canonical := s.To().Heading()
		switch s.Verdict {
		case headings.Known:
			t.noteReading(s)
		case headings.Near:
			if s.Taken {
				t.Refuse(s, "a heading of its own", fmt.Sprintf("'%s' isn't a known heading, so the column isn't used; another column is %s already, so rename it for what it holds or take it out", s.Typed, canonical))
				continue
			}
			t.Refuse(s, canonical, fmt.Sprintf("'%s' isn't a known heading, so the column isn't used; did you mean %s? rename it if so", s.Typed, canonical))
		case headings.Misfit:
			t.Refuse(s, canonical, fmt.Sprintf("'%s' says %s, which doesn't fit, so the column isn't used; write %s", s.Typed, s.Heading.Unit.Name, canonical))
		case headings.Asks:
			t.question(s)
		case headings.Unknown:
			if of := t.later(s.Typed); of != "" {
				t.Refuse(s, "one column for "+of, fmt.Sprintf("'%s' may take the place of '%s', so it is asked which counts; take the other out", s.Typed, of))
				continue
			}
			if s.Meant != "" {
				t.Note("column '%s' isn't used; rename it %s if that is what it holds", s.Typed, s.Meant)
				continue
			}
			t.Note("column '%s' isn't used", s.Typed)
		}
	}
}

// LaterCount reports a heading of quantities of some revision, where no column is headed
// so without: Qty rev A.
func (t *Reading) LaterCount(typed string) bool {
	words := headings.Tokens(typed)
	rest := slices.DeleteFunc(slices.Clone(words), func(w string) bool {
		return slices.Contains(LaterWords, w) || len(words) > 1 && (len(w) == 1 || w[0] >= '0' && w[0] <= '9')
	})
	return len(rest) > 0 && len(rest) < len(words) && t.Quantity(rest) && !t.Maps(takeoff.Quantity)
}

// Quantity reports words that head a column of quantities.
func (t *Reading) Quantity(words []string) bool {
	h := t.Lex.Read(strings.Join(words, " "))
	return h.Verdict == headings.Known && h.Column == takeoff.Quantity
}

// LaterWords say of a heading that its figures are newer ones, in seven languages (from
// memory, unverified).
var LaterWords = []string{"rev", "revised", "revision", "new", "actual", "final", "corrected", "latest", "built", "as", "measured", "site", "neu", "geandert", "aktuell", "revisee", "nouveau", "nouvelle", "nieuw", "gewijzigd", "ny", "nytt", "nuevo", "nueva", "nuovo", "nuova"}

// later gives the column that is used whose figures another heading may put newer ones
// for: Qty rev B, New width.
func (t *Reading) later(typed string) string {
	words := headings.Tokens(typed)
	if !slices.ContainsFunc(words, func(w string) bool { return slices.Contains(LaterWords, w) }) {
		return ""
	}
	rest := slices.DeleteFunc(words, func(w string) bool {
		_, unit := quantity.UnitOf(w)
		return slices.Contains(LaterWords, w) || unit || len(words) > 2 && len(w) == 1 // rev B (mm)
	})
	if len(rest) == 0 {
		return ""
	}
	h := t.Lex.Read(strings.Join(rest, " "))
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Used && (h.Verdict == headings.Known && s.Verdict == headings.Known && s.To() == h.Column && s.Measure != takeoff.Text || h.Verdict == headings.Sizes && s.Verdict == headings.Sizes && s.Size == h.Size) {
			return s.Typed
		}
		if s.Used && h.Verdict == headings.Sizes && h.Size == headings.OwnSize && s.Verdict == headings.Known && slices.Contains(Own[:], s.To()) {
			return s.Typed
		}
	}
	return ""
}

// noteReading says how a heading with two readings was read, where it names a
// unit and so counts as the canonical one, but isn't written like it.
func (t *Reading) noteReading(s *Spec) {
	if !s.Used || s.Fixed || strings.EqualFold(s.Typed, s.To().Heading()) {
		return
	}
	words := headings.Tokens(s.Typed)
	switch {
	case len(words) == 0: // signs only
	case words[0] == "radius":
		t.Note("column '%s' is read as radius_mm, to the centre line; write throat_mm for the inside radius", s.Typed)
	case len(words) > 1 && words[1] == "side" && s.Measure == takeoff.Lengths:
		t.Note("column '%s' is read as %s", s.Typed, s.To().Heading())
	case words[0] == "area" && s.To() == takeoff.DimColumn(fittings.GivenArea):
		t.Note("column '%s' is read as area_m2, areas given instead of sizes; write stated_area_m2 for figures to check", s.Typed)
	}
}

// question asks about a heading with more than one reading.
func (t *Reading) question(s *Spec) {
	for _, columns := range s.Ask.Settled {
		if !slices.ContainsFunc(columns, func(c takeoff.Column) bool { return !t.Maps(c) }) {
			t.Note("column '%s' isn't used", s.Typed)
			return
		}
	}
	switch {
	case s.Ask.Units(): // its cells are looked at
		t.Note("column '%s' isn't used, but for units that aren't of pieces", s.Typed)
		return
	case s.Empty: // until a cell is filled
		s.Waits = true
		return
	case s.Worded && (s.Ask.OnAreas() || s.Ask.Pressures() || s.Ask.Sections() && t.Sized()):
		t.Note("column '%s' isn't used, as its cells hold words; to use them, write %s", s.Typed, s.Ask.Write)
		return
	case s.Ask.Plans():
		t.Note("column '%s' isn't used; to use it, write %s", s.Typed, s.Ask.Write)
		return
	case s.Ask.Seals():
		t.Note("column '%s' isn't used, as it doesn't say how much may leak; class is the air-tightness class", s.Typed)
		return
	}
	t.ask(s)
}

// ask asks about a heading with more than one reading.
func (t *Reading) ask(s *Spec) {
	why := s.Ask.Why
	if why == "" {
		why = "has more than one meaning"
	}
	t.Refuse(s, s.Ask.Write, fmt.Sprintf("'%s' %s, so the column isn't used; write %s", s.Typed, why, s.Ask.Write))
}
