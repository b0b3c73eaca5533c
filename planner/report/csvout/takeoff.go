package csvout

import (
	"io"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
	"blankoff/takeoff/totals"
)

type itemRow struct {
	Row         int     `csv:"row"`
	Sheet       words   `csv:"sheet"`
	State       words   `csv:"state"`
	Tag         words   `csv:"tag"`
	System      words   `csv:"system"`
	Level       words   `csv:"level"`
	Place       words   `csv:"place"`
	Drawing     words   `csv:"drawing"`
	Kind        words   `csv:"kind"`
	Style       words   `csv:"style"`
	Shape       words   `csv:"shape"`
	Size        words   `csv:"size"`
	Quantity    int     `csv:"quantity"`
	Scope       words   `csv:"scope"`
	From        words   `csv:"from"`
	Area        *number `csv:"area_m2"`
	ExactArea   *number `csv:"exact_area_m2"`
	Openings    *number `csv:"openings_m2"`
	JointLength *number `csv:"joint_length_m"`
	Stated      *number `csv:"stated_area_m2"`
	Working     words   `csv:"working"`
	Source      words   `csv:"source"`
	Notes       words   `csv:"notes"`
}

type totalRow struct {
	By          words  `csv:"by"`
	Name        words  `csv:"name"`
	Rows        *int   `csv:"rows"`
	Pieces      *int   `csv:"pieces"`
	Area        number `csv:"area_m2"`
	JointLength number `csv:"joint_length_m"`
}

// Takeoff writes the items, one a row, and after them the refused rows, whose
// notes say why they count nowhere; or, where the view holds totals only, the
// totals: by scope, system, level, shape and size.
func Takeoff(w io.Writer, v *report.Takeoff) error {
	if len(v.Items)+len(v.Refused) == 0 {
		return allTotals(w, v.Units, &v.Totals)
	}
	all := make([]*report.Item, 0, len(v.Items)+len(v.Refused))
	for i := range v.Items {
		all = append(all, &v.Items[i])
	}
	for i := range v.Refused {
		all = append(all, &v.Refused[i])
	}
	k := 0
	return write(w, v.Units, all, func(it **report.Item) itemRow {
		k++
		return rowOf(*it, k > len(v.Items), v.Units)
	})
}

// rowOf is the row of an item. A refused one has no figures.
func rowOf(it *report.Item, refused bool, u units.System) itemRow {
	r := itemRow{
		Row: it.Row, Sheet: words(it.Sheet), State: words(show.ItemState(it, refused)), Tag: words(it.Tag), System: words(it.System), Level: words(it.Level),
		Place: words(it.Place), Drawing: words(it.Drawing), Kind: words(it.Kind), Style: words(it.Style),
		Shape: words(it.Shape), Size: words(show.ItemSize(it)), Quantity: it.Quantity, Scope: words(it.Scope), From: words(it.From),
		Working: words(it.Working), Source: words(it.Source), Notes: joined(it.Notes),
	}
	if it.Stated != nil {
		r.Stated = figure(u, units.Area, *it.Stated)
	}
	if !refused {
		r.Area, r.ExactArea, r.Openings = figure(u, units.Area, it.Area), figure(u, units.Area, it.ExactArea), figure(u, units.Area, it.Cut)
		r.JointLength = figure(u, units.Length, it.JointLength)
	}
	return r
}

func figure(u units.System, q units.Quantity, v float64) *number {
	n := in(u, q, v)
	return &n
}

func allTotals(w io.Writer, u units.System, t *report.Totals) error {
	parts := []report.Part{
		{Of: "scope", Name: "in", Part: totals.Part{Area: t.Area, JointLength: t.JointLength}},
		{Of: "scope", Name: "through", Part: totals.Part{Area: t.Through}},
		{Of: "scope", Name: "out", Part: totals.Part{Area: t.Out}},
	}
	if t.Refused > 0 {
		parts = append(parts, report.Part{Of: "scope", Name: "refused", Part: totals.Part{Area: t.Refused}})
	}
	return write(w, u, append(parts, t.Parts...), func(p *report.Part) totalRow {
		r := totalRow{By: words(p.Of), Name: words(p.Name), Area: in(u, units.Area, p.Area), JointLength: in(u, units.Length, p.JointLength)}
		if p.Of != "scope" {
			r.Rows, r.Pieces = &p.Rows, &p.Pieces
		}
		return r
	})
}
