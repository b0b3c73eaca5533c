package xlsx

import (
	"blankoff/fittings"
	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

const openingHead = "opening in its wall m2"

// takeoffColumns are the columns of the sheet takeoff: those that are printed,
// then those that the area is worked out from.
func takeoffColumns(l *links) []column {
	columns := []column{
		{head: "row", width: 5, kind: whole}, {head: "state", width: 9}, {head: "tag", width: 12}, {head: "system", width: 10}, {head: "level", width: 9}, {head: "kind", width: 10},
		{head: "style", width: 9}, {head: "size", width: 12, kind: sized}, {head: "qty", width: 5, kind: whole}, {head: "scope", width: 8},
		{head: "area m2", width: 11, kind: squareM}, {head: "exact m2", width: 11, kind: squareM}, {head: "joints m", width: 10, kind: metres}, {head: "working, or why refused", width: 36},
		{head: "shape", width: 13, screen: true}, {head: "from", width: 16, screen: true},
		{head: "how the area follows", width: 32, screen: true}, {head: "one m2", width: 14, kind: squareMFull, screen: true},
	}
	if l.basis {
		columns = append(columns, column{head: "one exact m2", width: 14, kind: squareMFull, screen: true})
	}
	columns = append(columns, column{head: openingHead, width: 14, kind: squareMFull, screen: true}, column{head: "openings taken off m2", width: 12, kind: squareMFull, screen: true})
	for _, d := range l.dims {
		k := plain
		switch d.Unit() {
		case fittings.Metre:
			k = millimetres
		case fittings.Degree:
			k = degrees
		case fittings.SquareMetre:
			k = squareMPlain
		}
		columns = append(columns, column{head: d.Heading(), width: max(11, 1.3*float64(len(d.Heading()))), kind: k, screen: true})
	}
	return append(columns, column{head: "stated area m2", width: 11, kind: squareM, screen: true}, column{head: "sheet", width: 14, screen: true}, column{head: "place", width: 18, screen: true},
		column{head: "drawing", width: 18, screen: true}, column{head: "source", width: 50, screen: true}, column{head: "notes", width: 50, screen: true})
}

// takeoffSheet writes the items with their working, and after them the refused
// rows with what is wrong.
func takeoffSheet(b *book, v *report.Plan) error {
	return b.sheet("takeoff", takeoffColumns(b.follow), func(row func(...any) error) error {
		if v.Takeoff == nil {
			return nil
		}
		for i := range v.Takeoff.Items {
			if err := row(itemCells(b.follow, &v.Takeoff.Items[i], false)...); err != nil {
				return err
			}
		}
		for i := range v.Takeoff.Refused {
			if err := row(itemCells(b.follow, &v.Takeoff.Refused[i], true)...); err != nil {
				return err
			}
		}
		return nil
	})
}

// itemCells is the row of an item. A refused one has no figures.
func itemCells(l *links, it *report.Item, refused bool) []any {
	r := itemRow{l: l, it: it, m: it.Measured}
	if refused {
		r.m = nil
	}
	var stated any
	if it.Stated != nil {
		stated = *it.Stated
	}
	cells := []any{it.Row, show.ItemState(it, refused), it.Tag, it.System, it.Level, it.Kind, it.Style, r.size(), r.quantity(), it.Scope}
	if refused {
		cells[1] = bold(show.ItemState(it, refused))
		cells = append(cells, nil, nil, nil, lines(it.Notes), it.Shape, it.From)
		cells = append(cells, make([]any, len(takeoffColumns(l))-len(cells)-6)...)
		return append(cells, stated, it.Sheet, it.Place, it.Drawing)
	}
	cells = append(cells, r.area(), r.exact(), r.joints(), it.Working, it.Shape, it.From)
	cells = append(cells, r.measured()...)
	return append(cells, stated, it.Sheet, it.Place, it.Drawing, it.Source, lines(it.Notes))
}
