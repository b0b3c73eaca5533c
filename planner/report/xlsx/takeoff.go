package xlsx

import (
	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// takeoffSheet writes the items with their working, and after them the refused
// rows with what is wrong.
func takeoffSheet(b *book, v *report.Plan) error {
	return b.sheet("takeoff", []column{
		{head: "row", width: 5, kind: whole}, {head: "state", width: 9}, {head: "tag", width: 12}, {head: "system", width: 10}, {head: "level", width: 9}, {head: "kind", width: 10},
		{head: "style", width: 9}, {head: "size", width: 12}, {head: "qty", width: 5, kind: whole}, {head: "scope", width: 8},
		{head: "area m2", width: 8, kind: hundred}, {head: "exact m2", width: 8, kind: hundred}, {head: "joints m", width: 8, kind: hundred}, {head: "working, or why refused", width: 36},
		{head: "shape", width: 13, screen: true}, {head: "from", width: 16, screen: true}, {head: "openings taken off m2", width: 12, kind: full, screen: true},
		{head: "stated area m2", width: 11, kind: hundred, screen: true}, {head: "sheet", width: 14, screen: true}, {head: "place", width: 18, screen: true},
		{head: "drawing", width: 18, screen: true}, {head: "source", width: 50, screen: true}, {head: "notes", width: 50, screen: true},
	}, func(row func(...any) error) error {
		if v.Takeoff == nil {
			return nil
		}
		for i := range v.Takeoff.Items {
			if err := row(itemCells(&v.Takeoff.Items[i], false)...); err != nil {
				return err
			}
		}
		for i := range v.Takeoff.Refused {
			if err := row(itemCells(&v.Takeoff.Refused[i], true)...); err != nil {
				return err
			}
		}
		return nil
	})
}

// itemCells is the row of an item. A refused one has no figures.
func itemCells(it *report.Item, refused bool) []any {
	var stated any
	if it.Stated != nil {
		stated = *it.Stated
	}
	state := show.ItemState(it, refused)
	if refused {
		return []any{it.Row, bold(state), it.Tag, it.System, it.Level, it.Kind, it.Style, it.Size, it.Quantity, it.Scope, nil, nil, nil, lines(it.Notes),
			it.Shape, it.From, nil, stated, it.Sheet, it.Place, it.Drawing}
	}
	return []any{it.Row, state, it.Tag, it.System, it.Level, it.Kind, it.Style, it.Size, it.Quantity, it.Scope, it.Area, it.ExactArea, it.JointLength, it.Working,
		it.Shape, it.From, it.Cut, stated, it.Sheet, it.Place, it.Drawing, it.Source, lines(it.Notes)}
}
