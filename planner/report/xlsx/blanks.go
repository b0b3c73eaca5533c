package xlsx

import (
	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// cuts writes the joints that are blanked on both sides.
func cuts(b *book, v *report.Plan) error {
	return b.sheet("cuts", []column{
		{head: "cut", width: 5, kind: whole}, {head: "joint", width: 30}, {head: "size", width: 12}, {head: "minutes", width: 9, kind: whole},
		{head: "why", width: 15}, {head: "sections", width: 11}, {head: "level", width: 9}, {head: "place", width: 17}, {head: "drawing", width: 9}, {head: "joint closed", width: 8, kind: box}, {head: "checked", width: 9, kind: box},
		{head: "nearer the plant", width: 22, screen: true}, {head: "its piece", width: 8, kind: whole, screen: true},
		{head: "further", width: 22, screen: true}, {head: "its piece", width: 8, kind: whole, screen: true},
	}, func(row func(...any) error) error {
		for i := range v.Cuts {
			c := &v.Cuts[i]
			a, z := c.Between[0], c.Between[1]
			if err := row(i+1, c.At, c.Text, c.Minutes, or(c.Why, "planned"), c.Parts[0]+" | "+c.Parts[1], c.Level, c.Place, c.Drawing, nil, nil, a.Tag, a.Piece, z.Tag, z.Piece); err != nil {
				return err
			}
		}
		return nil
	})
}

// blanks writes every blank of every test, with boxes to tick.
func blanks(b *book, v *report.Plan) error {
	return b.sheet("blanks", []column{
		{head: "section", width: 9}, {head: "no.", width: 5, kind: whole}, {head: "cut", width: 5, kind: whole}, {head: "at", width: 31}, {head: "size", width: 12}, {head: "why", width: 10},
		{head: "level", width: 9}, {head: "place", width: 16}, {head: "drawing", width: 9}, {head: "test Pa", width: 7, kind: plain}, {head: "force N", width: 7, kind: whole},
		{head: "fitted", width: 7, kind: box}, {head: "removed", width: 9, kind: box}, {head: "minutes", width: 9, kind: whole, screen: true},
	}, func(row func(...any) error) error {
		for i := range v.Sections {
			s := &v.Sections[i]
			for k := range s.Blanks {
				bl := &s.Blanks[k]
				var cut any
				if bl.Cut > 0 {
					cut = bl.Cut
				}
				if err := row(first(s.ID, k), k+1, cut, bl.At, bl.Text, bl.Why, bl.Level, bl.Place, bl.Drawing, s.TestPa, bl.Force, nil, nil, bl.Minutes); err != nil {
					return err
				}
			}
		}
		return nil
	})
}

// sizes writes the blanks by size: fits are labour, makes, the most in use at
// once, are what has to be made.
func sizes(b *book, v *report.Plan) error {
	return b.sheet("blanks by size", []column{
		{head: "size", width: 26}, {head: "shape", width: 14}, {head: "fits", width: 10, kind: whole}, {head: "makes", width: 10, kind: whole}, {head: "cuts", width: 10, kind: whole},
		{head: "open ends", width: 10, kind: whole}, {head: "scope", width: 10, kind: whole},
		{head: "up to N", width: 10, kind: whole}, {head: "minutes", width: 10, kind: whole},
	}, func(row func(...any) error) error {
		all := show.Sizes(v)
		for _, s := range all {
			if err := row(s.Text, s.Shape, s.Fits(), s.Makes, s.Cuts, s.OpenEnds, s.Scope, s.MostForce, s.Minutes); err != nil {
				return err
			}
		}
		t := show.AllSizes(all)
		return row(total("all"), nil, t.Fits(), t.Makes, t.Cuts, t.OpenEnds, t.Scope, t.MostForce, t.Minutes)
	})
}
