package xlsx

import (
	"strconv"

	"blankoff/fittings"
	"blankoff/planner/report"
	"blankoff/planner/report/live"
	"blankoff/planner/units"
	"blankoff/takeoff"
)

// stretch is the area of a stretch of a row's pieces as a formula, and what it
// gives, m2: on the basis, or exactly. "" where there is none.
func (l *links) stretch(p *report.Piece, exact bool) (text string, m2 float64) {
	it := p.Item
	if it == nil || l.row[it] == 0 {
		return "", 0
	}
	one, each, whole, all := "one m2", it.Each, "area m2", it.Area
	if exact && l.basis {
		one, each = "one exact m2", it.EachExact
	}
	if exact {
		whole, all = "exact m2", it.Exact
	}
	switch {
	case p.From <= 1 && p.To >= p.Of:
		return l.cell(whole, it), all
	case it.SideBySide():
		n := p.To - p.From + 1
		return times(n, l.cell(one, it)), float64(n) * each
	case it.Piece.Kind != fittings.Straight || it.Length() == 0:
		return "", 0
	}
	from, start := l.lengthOf(it, p.From-1, p.Of)
	to, end := l.lengthOf(it, p.To, p.Of)
	if from != "" {
		to = "(" + to + "-(" + from + "))"
	} else {
		to = "(" + to + ")"
	}
	text = l.cell(one, it) + "*" + to + "/" + l.cell("length_mm", it)
	m2 = each * (end - start) / it.Length()
	if it.CutExact > 0 && (exact || it.Cut > 0) {
		cut, gone := l.openingsIn(it, start, end)
		text, m2 = text+cut, m2-gone
	}
	return text, m2
}

// openingsIn takes off the openings that lie between two places of a straight.
func (l *links) openingsIn(it *takeoff.Item, start, end float64) (text string, m2 float64) {
	for _, kid := range l.kids[it] {
		now, cell := l.opening(kid)
		if kid.Piece.Kind != fittings.Spigot || now == 0 {
			continue
		}
		wide := 0.0
		if len(kid.Ends) > 0 {
			wide = kid.Ends[0].Width
			if kid.Ends[0].Shape == fittings.Circular {
				wide = kid.Ends[0].Diameter
			}
		}
		if wide == 0 {
			continue
		}
		share := (min(end, kid.AtM+wide/2) - max(start, kid.AtM-wide/2)) / wide
		switch {
		case share < 1e-9:
		case share > 1-1e-9:
			text, m2 = text+"-"+cell, m2+now
		default:
			text, m2 = text+"-"+number(share)+"*"+cell, m2+now*share
		}
	}
	return text, m2
}

// opening is what a row takes out of the wall that it hangs on, m2, all of its
// pieces, and the cell that says so; a figure where the row has no cell.
func (l *links) opening(kid *takeoff.Item) (now float64, cell string) {
	now = l.openingNow(kid)
	if l.row[kid] == 0 {
		return now, l.figure(units.Area, now)
	}
	return now, l.cell(openingHead, kid)
}

func (l *links) openingNow(kid *takeoff.Item) float64 {
	host := l.host(kid)
	switch {
	case host == nil:
	case kid.Piece.Kind == fittings.Spigot:
		return kid.OpeningExact * float64(kid.Quantity)
	case host.Piece.Kind == fittings.Plenum && len(kid.Ends) > 0:
		return l.outerFace(kid.Ends[0].CrossSection) * float64(kid.Quantity)
	}
	return 0
}

// outerFace is the face of an end by the sizes of its outside.
func (l *links) outerFace(c fittings.CrossSection) float64 {
	for _, side := range []*float64{&c.Width, &c.Height, &c.Diameter} {
		if *side > 0 {
			*side += 2 * l.sheet / 1000
		}
	}
	return c.FaceArea()
}

// sizeText is the size of an end as people write it: "600 x 400", "dia 315",
// "525 x 150 oval", and "600 x 400 x 1200" with the cell of a length; "" where it
// can't follow.
func (l *links) sizeText(it *takeoff.Item, role fittings.EndRole, long string, here bool) string {
	s, ok := live.End(it, role)
	if !ok {
		return ""
	}
	side := func(e *live.Expr) string {
		if text := l.text(e, it, nil, here); text != "" {
			return l.roundedSize(text)
		}
		ok = false
		return ""
	}
	var text string
	if s.Shape == fittings.Circular {
		text = `"dia "&` + side(s.Diameter) + l.across()
	} else {
		text = side(s.Width) + `&" x "&` + side(s.Height)
		if long != "" {
			text += `&" x "&` + l.roundedSize(long)
		}
		text += l.across()
		if s.Shape == fittings.FlatOval {
			text += `&" oval"`
		}
	}
	if !ok {
		return ""
	}
	return text
}

// number writes a figure for a formula.
func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
