package xlsx

import (
	"fmt"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// sections writes one row a section.
func sections(b *book, v *report.Plan) error {
	return b.sheet("sections", []column{
		{head: "section", width: 12}, {head: "system", width: 13}, {head: "levels", width: 13}, {head: "places", width: 22},
		{head: "scheme", width: 9}, {head: "class", width: 8}, {head: "test pressure Pa", width: 10, kind: plain}, {head: "sign", width: 10},
		{head: "area m2", width: 10, kind: hundred}, {head: "limit L/s, cut off", width: 10, kind: limits}, {head: "range to set", width: 11},
		{head: "state", width: 15}, {head: "blanks", width: 9, kind: whole}, {head: "largest blank", width: 15}, {head: "force on it N", width: 10, kind: whole},
		{head: "limit L/s, all digits", width: 14, kind: full, screen: true}, {head: "limit L/s per m2", width: 12, kind: limits, screen: true},
		{head: "exact area m2", width: 10, kind: hundred, screen: true}, {head: "joints m", width: 10, kind: hundred, screen: true}, {head: "grouping", width: 11, screen: true}, {head: "all levels", width: 24, kind: line, screen: true}, {head: "all places", width: 34, kind: line, screen: true}, {head: "drawings", width: 30, kind: line, screen: true},
		{head: "why out of range", width: 40, screen: true}, {head: "what would help", width: 60, screen: true}, {head: "notes", width: 40, screen: true},
	}, func(row func(...any) error) error {
		for i := range v.Sections {
			s := &v.Sections[i]
			var state any = show.State(s)
			if s.UnderRange || s.OverRange {
				state = bold(strings.ToUpper(show.State(s)))
			}
			var face, force any
			if l, ok := show.Largest(s.Blanks); ok {
				face, force = l.Text, l.Force
			}
			grouping := ""
			if s.Grouping {
				grouping = "grouping"
			}
			err := row(s.ID, s.System, few(s.Levels, 2), few(s.Places, 2), s.Scheme, s.Class, s.TestPa, s.Sign,
				s.Area, permitted(s.Limit), s.Range, state, len(s.Blanks), face, force,
				s.Limit, permitted(s.LimitPerM2), s.ExactArea, s.JointLength, grouping, lines(s.Levels), lines(s.Places), lines(s.Drawings), s.Reason, strings.Join(s.Cures, "; "), strings.Join(s.Notes, "; "))
			if err != nil {
				return err
			}
		}
		return nil
	})
}

// first is a section's name, bold where the section begins.
func first(id string, k int) any {
	if k == 0 {
		return bold(id)
	}
	return id
}

// few joins the first words of a list and says how many more there are.
func few(words []string, n int) string {
	if len(words) <= n {
		return lines(words)
	}
	return fmt.Sprintf("%s +%d", lines(words[:n-1]), len(words)-n+1)
}

// lines joins the words of a cell.
func lines(words []string) string { return strings.Join(words, "; ") }

// pieces writes the pieces of every section.
func pieces(b *book, v *report.Plan) error {
	return b.sheet("pieces", []column{
		{head: "section", width: 12}, {head: "tag", width: 24}, {head: "from piece", width: 9, kind: whole}, {head: "to piece", width: 9, kind: whole},
		{head: "of", width: 7, kind: whole}, {head: "kind", width: 13}, {head: "size", width: 18}, {head: "level", width: 12},
		{head: "counted m2", width: 11, kind: hundred}, {head: "row of schedule", width: 11, kind: whole},
		{head: "outside area m2", width: 11, kind: hundred, screen: true},
	}, func(row func(...any) error) error {
		for i := range v.Sections {
			s := &v.Sections[i]
			for k := range s.Pieces {
				p := &s.Pieces[k]
				if err := row(first(s.ID, k), p.Tag, p.From, p.To, p.Of, p.Kind, p.Size, p.Level, p.Area, p.Row, p.Own); err != nil {
					return err
				}
			}
		}
		return nil
	})
}

// cuts writes the joints that are blanked on both sides.
func cuts(b *book, v *report.Plan) error {
	return b.sheet("cuts", []column{
		{head: "cut", width: 7, kind: whole}, {head: "joint", width: 50}, {head: "size", width: 16}, {head: "minutes", width: 10, kind: tenth},
		{head: "why", width: 26}, {head: "sections", width: 12}, {head: "level", width: 10}, {head: "place", width: 20, kind: line}, {head: "joint closed", width: 10, kind: box}, {head: "checked", width: 10, kind: box},
		{head: "nearer the plant", width: 22, screen: true}, {head: "its piece", width: 8, kind: whole, screen: true},
		{head: "further", width: 22, screen: true}, {head: "its piece", width: 8, kind: whole, screen: true},
	}, func(row func(...any) error) error {
		for i := range v.Cuts {
			c := &v.Cuts[i]
			a, z := c.Between[0], c.Between[1]
			if err := row(i+1, c.At, c.Text, c.Minutes, or(c.Why, "planned"), c.Parts[0]+" | "+c.Parts[1], c.Level, c.Place, nil, nil, a.Tag, a.Piece, z.Tag, z.Piece); err != nil {
				return err
			}
		}
		return nil
	})
}

// blanks writes every blank of every test, with boxes to tick.
func blanks(b *book, v *report.Plan) error {
	return b.sheet("blanks", []column{
		{head: "section", width: 12}, {head: "no.", width: 7, kind: whole}, {head: "at", width: 52}, {head: "size", width: 16}, {head: "why", width: 11},
		{head: "level", width: 12}, {head: "place", width: 24, kind: line}, {head: "drawing", width: 12, kind: line}, {head: "test pressure Pa", width: 11, kind: plain}, {head: "force N", width: 9, kind: whole},
		{head: "minutes", width: 10, kind: tenth}, {head: "fitted", width: 9, kind: box}, {head: "removed", width: 10, kind: box},
	}, func(row func(...any) error) error {
		for i := range v.Sections {
			s := &v.Sections[i]
			for k := range s.Blanks {
				bl := &s.Blanks[k]
				if err := row(first(s.ID, k), k+1, bl.At, bl.Text, bl.Why, bl.Level, bl.Place, bl.Drawing, s.TestPa, bl.Force, bl.Minutes); err != nil {
					return err
				}
			}
		}
		return nil
	})
}

// sizes writes the blanks by size: fits are labour, the most in one test is
// what has to be made where one test follows the other.
func sizes(b *book, v *report.Plan) error {
	return b.sheet("blanks by size", []column{
		{head: "size", width: 26}, {head: "shape", width: 14}, {head: "fits in all tests", width: 12, kind: whole}, {head: "of them at cuts", width: 11, kind: whole},
		{head: "at open ends", width: 11, kind: whole}, {head: "at bounds of the scope", width: 13, kind: whole}, {head: "most in one test", width: 11, kind: whole},
		{head: "greatest force N", width: 11, kind: whole}, {head: "minutes in all", width: 11, kind: tenth},
	}, func(row func(...any) error) error {
		all := show.BySize(v.Sections)
		for _, s := range all {
			if err := row(s.Text, s.Shape, s.Fits(), s.Cuts, s.OpenEnds, s.Scope, s.Together, s.MostForce, s.Minutes); err != nil {
				return err
			}
		}
		t := show.AllSizes(all)
		return row(bold("all sizes"), nil, t.Fits(), t.Cuts, t.OpenEnds, t.Scope, nil, t.MostForce, t.Minutes)
	})
}

// takeoffSheet writes the items with their working.
func takeoffSheet(b *book, v *report.Plan) error {
	return b.sheet("takeoff", []column{
		{head: "row", width: 7, kind: whole}, {head: "tag", width: 18}, {head: "system", width: 12}, {head: "level", width: 10}, {head: "kind", width: 11},
		{head: "style", width: 10}, {head: "size", width: 15}, {head: "qty", width: 7, kind: whole}, {head: "scope", width: 9},
		{head: "area m2", width: 10, kind: hundred}, {head: "exact m2", width: 10, kind: hundred}, {head: "joints m", width: 10, kind: hundred}, {head: "working", width: 50},
		{head: "shape", width: 13, screen: true}, {head: "from", width: 16, screen: true}, {head: "openings taken off m2", width: 12, kind: full, screen: true},
		{head: "stated area m2", width: 11, kind: hundred, screen: true}, {head: "sheet", width: 14, kind: line, screen: true}, {head: "place", width: 18, kind: line, screen: true},
		{head: "drawing", width: 18, kind: line, screen: true}, {head: "source", width: 50, kind: line, screen: true}, {head: "notes", width: 50, screen: true},
	}, func(row func(...any) error) error {
		if v.Takeoff == nil {
			return nil
		}
		for i := range v.Takeoff.Items {
			it := &v.Takeoff.Items[i]
			var stated any
			if it.Stated != nil {
				stated = *it.Stated
			}
			err := row(it.Row, it.Tag, it.System, it.Level, it.Kind, it.Style, it.Size, it.Quantity, it.Scope, it.Area, it.ExactArea, it.JointLength, it.Working,
				it.Shape, it.From, it.Cut, stated, it.Sheet, it.Place, it.Drawing, it.Source, strings.Join(it.Notes, "; "))
			if err != nil {
				return err
			}
		}
		return nil
	})
}
