package xlsx

import (
	"strconv"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// sections writes one row a section, and the sum.
func sections(b *book, v *report.Plan) error {
	return b.sheet("sections", []column{
		{head: "section", width: 9}, {head: "system", width: 12}, {head: "levels", width: 16},
		{head: "scheme", width: 9}, {head: "class", width: 7}, {head: "test Pa", width: 7, kind: plain}, {head: "sign", width: 9},
		{head: "area m2", width: 9, kind: hundred}, {head: "limit L/s, cut off", width: 9, kind: limits}, {head: "range to set", width: 8},
		{head: "state", width: 16}, {head: "blanks", width: 8, kind: whole}, {head: "largest blank", width: 12}, {head: "force on it N", width: 8, kind: whole},
		{head: "limit L/s, all digits", width: 14, kind: full, screen: true}, {head: "limit L/s per m2", width: 12, kind: limits, screen: true},
		{head: "exact area m2", width: 10, kind: hundred, screen: true}, {head: "joints m", width: 10, kind: hundred, screen: true}, {head: "grouping", width: 11, screen: true}, {head: "all levels", width: 24, screen: true}, {head: "places", width: 34, screen: true}, {head: "drawings", width: 30, screen: true},
		{head: "why", width: 40, screen: true}, {head: "cure", width: 60, screen: true}, {head: "notes", width: 40, screen: true},
	}, func(row func(...any) error) error {
		area := 0.0
		for i := range v.Sections {
			s := &v.Sections[i]
			area += s.Area
			var face, force any
			if l, ok := show.Largest(s.Blanks); ok {
				face, force = l.Text, l.Force
			}
			grouping := ""
			if s.Grouping {
				grouping = "grouping"
			}
			err := row(s.ID, s.System, show.Names(s.Levels, ", ", 3, 18), s.Scheme, s.Class, s.TestPa, s.Sign,
				s.Area, permitted(s.Limit), show.Range(v, s), state(s), known(show.Blanks(s)), face, force,
				s.Limit, permitted(s.LimitPerM2), s.ExactArea, s.JointLength, grouping, lines(s.Levels), lines(s.Places), lines(s.Drawings), s.Reason, lines(s.Cures), lines(s.Notes))
			if err != nil {
				return err
			}
		}
		return row(total(show.Count(v.Proof.Tests, "test")), nil, nil, nil, nil, nil, nil, area, nil, nil, nil, known(fits(v)))
	})
}

// state is a section's state, bold where the rig can't judge it.
func state(s *report.Section) any {
	flag := show.Flag(s)
	switch {
	case s.UnderRange || s.OverRange:
		return bold(flag)
	case flag == "":
		return show.State(s)
	}
	return show.State(s) + ", " + flag
}

// known is a number as such, and any other text as it is.
func known(text string) any {
	if n, err := strconv.Atoi(text); err == nil {
		return n
	}
	return text
}

// fits is how many blanks are fitted in all tests; those in groupings aren't
// known.
func fits(v *report.Plan) string {
	sizes := show.AllSizes(show.BySize(v.Sections))
	switch n := sizes.Fits(); {
	case show.Groupings(v) == "":
		return strconv.Itoa(n)
	case n == 0:
		return "?"
	default:
		return strconv.Itoa(n) + "+?"
	}
}

// outOfRange writes the sections that the rig can't judge, one line a cure; there
// is no such sheet where the rig can judge all.
func outOfRange(b *book, v *report.Plan) error {
	var out []*report.Section
	for _, over := range []bool{true, false} {
		for i := range v.Sections {
			if s := &v.Sections[i]; s.OverRange == over && (over || s.UnderRange) {
				out = append(out, s)
			}
		}
	}
	if len(out) == 0 {
		return nil
	}
	return b.sheet("out of range", []column{
		{head: "section", width: 9}, {head: "system", width: 12}, {head: "state", width: 16}, {head: "area m2", width: 9, kind: hundred},
		{head: "limit L/s, cut off", width: 9, kind: limits}, {head: "why", width: 30}, {head: "cure", width: 52},
	}, func(row func(...any) error) error {
		for _, s := range out {
			cures := s.Cures
			if len(cures) == 0 {
				cures = []string{"none known"}
			}
			for k, c := range cures {
				var err error
				if k == 0 {
					err = row(start(s.ID), s.System, state(s), s.Area, permitted(s.Limit), s.Reason, c)
				} else {
					err = row(s.ID, nil, nil, nil, nil, nil, c)
				}
				if err != nil {
					return err
				}
			}
		}
		return nil
	})
}

// readings writes what each reading would mean in each section's test.
func readings(b *book, v *report.Plan) error {
	if len(v.Sections) == 0 {
		return nil
	}
	return b.sheet("readings", []column{
		{head: "section", width: 9}, {head: "test pressure Pa", width: 9, kind: plain}, {head: "limit L/s, cut off", width: 9, kind: limits}, {head: "range to set", width: 14},
		{head: "ready", width: 11}, {head: "closed", width: 11}, {head: "what a reading means", width: 70},
	}, func(row func(...any) error) error {
		for i := range v.Sections {
			s := &v.Sections[i]
			for k, text := range s.Readings {
				var err error
				if k == 0 {
					err = row(start(s.ID), s.TestPa, permitted(s.Limit), show.Range(v, s), s.Ready, s.Closed, text)
				} else {
					err = row(s.ID, nil, nil, nil, nil, nil, text)
				}
				if err != nil {
					return err
				}
			}
		}
		return nil
	})
}

// first is a section's name, with a rule above where the section begins.
func first(id string, k int) any {
	if k == 0 {
		return start(id)
	}
	return id
}

// lines joins the words of a cell.
func lines(words []string) string { return strings.Join(words, "; ") }

// pieces writes the pieces of every section.
func pieces(b *book, v *report.Plan) error {
	return b.sheet("pieces", []column{
		{head: "section", width: 9}, {head: "tag", width: 16}, {head: "from piece", width: 7, kind: whole}, {head: "to piece", width: 7, kind: whole},
		{head: "of", width: 5, kind: whole}, {head: "kind", width: 11}, {head: "size", width: 14}, {head: "level", width: 10}, {head: "place", width: 22}, {head: "drawing", width: 10},
		{head: "counted m2", width: 10, kind: hundred}, {head: "row of schedule", width: 10, kind: whole},
		{head: "outside area m2", width: 11, kind: hundred, screen: true},
	}, func(row func(...any) error) error {
		for i := range v.Sections {
			s := &v.Sections[i]
			for k := range s.Pieces {
				p := &s.Pieces[k]
				if err := row(first(s.ID, k), p.Tag, p.From, p.To, p.Of, p.Kind, p.Size, p.Level, p.Place, p.Drawing, p.Area, p.Row, p.Own); err != nil {
					return err
				}
			}
		}
		return nil
	})
}
