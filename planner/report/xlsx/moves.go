package xlsx

import (
	"fmt"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// moves writes the order of the tests and the way of every blank through them.
func moves(b *book, v *report.Plan) error {
	m := v.Blanking
	if m == nil {
		return nil
	}
	return b.sheet("moves", []column{
		{head: "size", width: 16, kind: sized}, {head: "no.", width: 5, kind: whole}, {head: "step", width: 5, kind: whole}, {head: "section", width: 9},
		{head: "at", width: 60}, {head: "how", width: 7}, {head: "done", width: 7, kind: box},
	}, func(row func(...any) error) error {
		for i := range m.Moving {
			x := &m.Moving[i]
			for k, s := range x.Steps {
				if err := row(first(x.Text, k), x.No, k+1, s.Section, s.At, s.How, nil); err != nil {
					return err
				}
			}
		}
		text := fmt.Sprintf("%s; %s. Order: %s; %s", show.Needs(m), show.Ways(m), show.Names(m.Order, ", ", 40, 0), show.OrderWorth(m))
		return row(total("all"), nil, nil, nil, text, nil, nil)
	})
}

// untested writes the joints of the cuts, which no test covers.
func untested(b *book, v *report.Plan) error {
	u := v.Untested
	if u == nil {
		return nil
	}
	return b.sheet("untested joints", []column{
		{head: "cut", width: 5, kind: whole}, {head: "joint", width: 30}, {head: "size", width: 12, kind: sized}, {head: "m", width: 7, kind: metres2},
		{head: "could be tested in", width: 10}, {head: "with", width: 26}, {head: "blanks more", width: 8, kind: whole}, {head: "minutes more", width: 9, kind: whole},
		{head: "m2 twice", width: 9, kind: squareM2}, {head: "or why not", width: 30},
	}, func(row func(...any) error) error {
		for i := range u.List {
			j := &u.List[i]
			if j.Section == "" {
				if err := row(j.Cut, j.At, or(j.Shown, j.Size), j.Metres, nil, nil, nil, nil, nil, j.Why); err != nil {
					return err
				}
				continue
			}
			if err := row(j.Cut, j.At, or(j.Shown, j.Size), j.Metres, j.Section, strings.Join(j.Takes, ", "), j.Blanks, j.Minutes, j.Area, nil); err != nil {
				return err
			}
		}
		return row(total("all"), show.Count(u.Joints, "joint"), nil, u.Metres, u.Overlaps, nil, u.Blanks, u.Minutes, u.Area, nil)
	})
}
