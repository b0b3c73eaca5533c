package csvout

import (
	"io"

	"blankoff/planner/report"
	"blankoff/takeoff"
)

type itemRow struct {
	Row         int     `csv:"row"`
	Sheet       words   `csv:"sheet"`
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
	Area        number  `csv:"area_m2"`
	ExactArea   number  `csv:"exact_area_m2"`
	Openings    number  `csv:"openings_m2"`
	JointLength number  `csv:"joint_length_m"`
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

// Takeoff writes the items, one a row; or, where the view holds totals only,
// the totals: by scope, system, level, shape and size.
func Takeoff(w io.Writer, v *report.Takeoff) error {
	if len(v.Items) == 0 {
		return totals(w, &v.Totals)
	}
	return write(w, v.Items, func(it *report.Item) itemRow {
		return itemRow{
			Row: it.Row, Sheet: words(it.Sheet), Tag: words(it.Tag), System: words(it.System), Level: words(it.Level),
			Place: words(it.Place), Drawing: words(it.Drawing), Kind: words(it.Kind), Style: words(it.Style),
			Shape: words(it.Shape), Size: words(it.Size), Quantity: it.Quantity, Scope: words(it.Scope), From: words(it.From),
			Area: number(it.Area), ExactArea: number(it.ExactArea), Openings: number(it.Cut), JointLength: number(it.JointLength),
			Stated: (*number)(it.Stated), Working: words(it.Working), Source: words(it.Source), Notes: joined(it.Notes),
		}
	})
}

func totals(w io.Writer, t *report.Totals) error {
	parts := []report.Part{
		{Of: "scope", Name: "in", Part: takeoff.Part{Area: t.Area, JointLength: t.JointLength}},
		{Of: "scope", Name: "through", Part: takeoff.Part{Area: t.Through}},
		{Of: "scope", Name: "out", Part: takeoff.Part{Area: t.Out}},
	}
	return write(w, append(parts, t.Parts...), func(p *report.Part) totalRow {
		r := totalRow{By: words(p.Of), Name: words(p.Name), Area: number(p.Area), JointLength: number(p.JointLength)}
		if p.Of != "scope" {
			r.Rows, r.Pieces = &p.Rows, &p.Pieces
		}
		return r
	})
}
