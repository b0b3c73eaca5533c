package xlsx

import (
	"fmt"
	"slices"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// cuts writes the joints that are blanked on both sides.
func cuts(b *book, v *report.Plan) error {
	sides, spent, columns := show.Sides(v), v.TestedMinutes(), []column{
		{head: "cut", width: 5, kind: whole}, {head: "joint", width: 30}, {head: "size", width: 12, kind: sized}, {head: "minutes", width: 9, kind: minutes},
		{head: "why", width: 15}, {head: "sections", width: 11}, {head: "level", width: 9}, {head: "place", width: 17}, {head: "drawing", width: 9}, {head: "joint closed", width: 8, kind: box}, {head: "checked", width: 9, kind: box},
		{head: "nearer the plant", width: 22, screen: true}, {head: "its piece", width: 8, kind: whole, screen: true},
		{head: "further", width: 22, screen: true}, {head: "its piece", width: 8, kind: whole, screen: true},
	}
	all := b.follow.tested.All()
	if !all {
		columns = slices.Insert(columns, 6, column{head: "blank off", width: 10})
	}
	return b.sheet("cuts", columns, func(row func(...any) error) error {
		for i := range v.Cuts {
			c := &v.Cuts[i]
			a, z := c.Between[0], c.Between[1]
			cells := []any{i + 1, c.At, b.follow.size(c.End, c.Face), spent(c), or(c.Why, "planned"), c.Parts[0] + " | " + c.Parts[1], c.Level, c.Place, c.Drawing, nil, nil, a.Tag, a.Piece, z.Tag, z.Piece}
			if !all {
				cells = slices.Insert(cells, 6, any(or(sides(c), "both sides")))
			}
			if err := row(cells...); err != nil {
				return err
			}
		}
		return nil
	})
}

// blankColumns are the columns of the sheet blanks.
func blankColumns() []column {
	return []column{
		{head: "section", width: 9}, {head: "no.", width: 5, kind: whole}, {head: "cut", width: 5, kind: whole}, {head: "at", width: 31}, {head: "size", width: 12, kind: sized}, {head: "why", width: 10},
		{head: "level", width: 9}, {head: "place", width: 16}, {head: "drawing", width: 9}, {head: "test Pa", width: 9, kind: pascals}, {head: "force N", width: 9, kind: newtons},
		{head: "fitted", width: 7, kind: box}, {head: "removed", width: 9, kind: box}, {head: "minutes", width: 10, kind: minutes, screen: true},
		{head: "width mm", width: 10, kind: millimetres, screen: true}, {head: "height mm", width: 10, kind: millimetres, screen: true}, {head: "diameter mm", width: 11, kind: millimetres, screen: true},
		{head: "opening m2", width: 13, kind: squareMFull, screen: true},
	}
}

// blanks writes every blank of every test, with boxes to tick.
func blanks(b *book, v *report.Plan) error {
	r := blankRow{l: b.follow, c: b.follow.onBlanks, pa: b.follow.onSections["test Pa"]}
	return b.sheet("blanks", blankColumns(), func(row func(...any) error) error {
		r.at = 1
		for i := range v.Sections {
			s := &v.Sections[i]
			if s.NotTested != "" {
				continue
			}
			for k := range s.Blanks {
				bl := &s.Blanks[k]
				r.at++
				r.b = bl
				var cut any
				if bl.Cut > 0 {
					cut = bl.Cut
				}
				cells := []any{first(s.ID, k), k + 1, cut, bl.At, b.follow.size(bl.End, bl.Face), bl.Why, bl.Level, bl.Place, bl.Drawing,
					formula{fmt.Sprintf("sections!%s%d", r.pa, i+2), s.TestPa}, r.force(s.TestPa), nil, nil, bl.Minutes}
				if err := row(append(cells, r.measures()...)...); err != nil {
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
	columns := []column{
		{head: "size", width: 26}, {head: "shape", width: 14}, {head: "fits", width: 10, kind: whole}, {head: "cuts", width: 10, kind: whole},
		{head: "open ends", width: 10, kind: whole}, {head: "scope", width: 10, kind: whole}, {head: "makes, as planned", width: 12, kind: whole},
		{head: "up to N", width: 11, kind: newtons}, {head: "minutes", width: 11, kind: minutes},
	}
	return b.sheet("blanks by size", columns, func(row func(...any) error) error {
		all := show.Sizes(v)
		r := sizeRows{l: b.follow, c: b.follow.onBlanks, here: letters(columns), last: 1, at: 1, sizes: len(all)}
		for i := range v.Sections {
			if v.Sections[i].NotTested == "" {
				r.last += len(v.Sections[i].Blanks)
			}
		}
		for i := range all {
			r.at++
			if err := row(r.cells(&all[i])...); err != nil {
				return err
			}
		}
		t := show.AllSizes(all)
		if len(all) > 0 && !b.follow.large() {
			if err := row(r.changed()...); err != nil {
				return err
			}
		}
		return row(r.sum(&t)...)
	})
}
