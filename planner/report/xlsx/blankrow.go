package xlsx

import (
	"fmt"
	"math"
	"strconv"

	"blankoff/fittings"
	"blankoff/planner/report"
	"blankoff/planner/report/live"
	"blankoff/planner/report/show"
)

// blankRow is a row of the sheet blanks being written; c is its columns.
type blankRow struct {
	l  *links
	b  *report.Blank
	c  map[string]string
	pa string // column of the test pressure on the sheet sections
	at int
}

func (r *blankRow) here(head string) string { return r.c[head] + strconv.Itoa(r.at) }

// size is the size of an end as a text that follows its row, a rectangle with its
// longer side first.
func (l *links) size(end report.EndOf, f report.Face) any {
	now := f.Text
	if end.Item == nil || l.row[end.Item] == 0 {
		return now
	}
	text := l.sizeText(end.Item, end.Role, "", false)
	if s, ok := live.End(end.Item, end.Role); ok && text != "" && s.Shape == fittings.Rectangular {
		w, h := l.text(s.Width, end.Item, nil, false), l.text(s.Height, end.Item, nil, false)
		text = l.roundedSize("MAX("+w+","+h+")") + `&" x "&` + l.roundedSize("MIN("+w+","+h+")") + l.across()
	}
	if text == "" {
		return now
	}
	return formula{text, now}
}

// force is the test pressure on the opening.
func (r *blankRow) force(pa float64) any {
	return follows(r.here("test Pa")+"*"+r.here("opening m2")+r.l.push(), pa*areaOf(r.b.Face), r.b.Force)
}

// areaOf is the area of an opening given in mm, m2.
func areaOf(f report.Face) float64 {
	switch f.Shape {
	case "circular":
		return math.Pi / 4 * f.Diameter * f.Diameter / 1e6
	case "flat-oval":
		return (math.Pi/4*f.Height*f.Height + f.Height*(f.Width-f.Height)) / 1e6
	}
	return f.Width * f.Height / 1e6
}

// measures are the sizes of the opening and its area.
func (r *blankRow) measures() []any {
	f := &r.b.Face
	sides, ok := live.Sides{}, false
	if it := r.b.End.Item; it != nil {
		sides, ok = live.End(it, r.b.End.Role)
	}
	side := func(e *live.Expr, now float64) any {
		if now == 0 {
			return nil
		}
		if ok {
			if text := r.l.text(e, r.b.End.Item, nil, false); text != "" {
				return formula{text, now}
			}
		}
		return input{now}
	}
	w, h, d := r.here("width mm"), r.here("height mm"), r.here("diameter mm")
	sq := strconv.Itoa(r.l.inLength() * r.l.inLength())
	var area any
	switch {
	case f.Shape == "circular":
		area = formula{fmt.Sprintf("PI()/4*%s^2/%s", d, sq), areaOf(*f)}
	case f.Shape == "flat-oval":
		area = formula{fmt.Sprintf("(PI()/4*%s^2+%s*(%s-%s))/%s", h, h, w, h, sq), areaOf(*f)}
	case f.Width > 0 && f.Height > 0:
		area = formula{fmt.Sprintf("%s*%s/%s", w, h, sq), areaOf(*f)}
	}
	return []any{side(sides.Width, f.Width), side(sides.Height, f.Height), side(sides.Diameter, f.Diameter), area}
}

// sizeRows are the rows of the sheet blanks by size being written; c is the
// columns of the sheet blanks, here its own.
type sizeRows struct {
	l       *links
	c, here map[string]string
	last    int // row of the sheet blanks
	at      int // the row before
	sizes   int // listed
}

func (r *sizeRows) range1(head string) string {
	return fmt.Sprintf("blanks!$%s$2:$%s$%d", r.c[head], r.c[head], r.last)
}

// mostCounted is how many comparisons the counts may take; above it they are
// figures.
const mostCounted = 20e6

// cells counts the blanks of one size on the sheet blanks.
func (r *sizeRows) cells(s *show.Size) []any {
	key := fmt.Sprintf("$A%d", r.at)
	make1 := r.range1("size")
	count := func(why string, now int) any {
		return formula{fmt.Sprintf(`COUNTIFS(%s,%s,%s,%s)`, make1, key, r.range1("why"), why), now}
	}
	c := r.here
	scope := formula{fmt.Sprintf("COUNTIF(%s,%s)-%s%d-%s%d", make1, key, c["cuts"], r.at, c["open ends"], r.at), s.Scope}
	force := formula{fmt.Sprintf("SUMPRODUCT(MAX((%s=%s)*%s))", make1, key, r.range1("force N")), s.MostForce}
	cells := []any{s.Text, s.Shape, formula{fmt.Sprintf("SUM(%s%d:%s%d)", c["cuts"], r.at, c["scope"], r.at), s.Fits()},
		count(`"cut"`, s.Cuts), count(`"open end"`, s.OpenEnds), scope, s.Makes, force,
		formula{fmt.Sprintf("SUMIF(%s,%s,%s)", make1, key, r.range1("minutes")), s.Minutes}}
	if float64(r.last)*float64(r.sizes) > mostCounted || r.l.large() {
		for i := range cells {
			if f, ok := cells[i].(formula); ok {
				cells[i] = f.now
			}
		}
	}
	return cells
}

// changed counts the blanks whose size was changed to one that isn't listed.
func (r *sizeRows) changed() []any {
	r.at++
	cell := func(head, all string) any {
		return formula{fmt.Sprintf("%s-SUM(%s)", all, r.column(head, r.at-1)), 0}
	}
	why := r.range1("why")
	c := r.here
	count := func(what string) string { return fmt.Sprintf(`COUNTIF(%s,"%s")`, why, what) }
	return []any{"other sizes, after a change", nil,
		formula{fmt.Sprintf("SUM(%s%d:%s%d)", c["cuts"], r.at, c["scope"], r.at), 0},
		cell("cuts", count("cut")), cell("open ends", count("open end")), cell("scope", fmt.Sprintf("ROWS(%s)-%s-%s", why, count("cut"), count("open end"))),
		nil, nil, cell("minutes", "SUM("+r.range1("minutes")+")")}
}

// column is the rows of a column, down to one.
func (r *sizeRows) column(head string, to int) string {
	return rangeOf("", r.here[head], [2]int{2, to})
}

// sum is the last row.
func (r *sizeRows) sum(t *show.Size) []any {
	if r.at == 1 || r.l.large() {
		return []any{total("all"), nil, t.Fits(), t.Cuts, t.OpenEnds, t.Scope, nil, t.MostForce, t.Minutes}
	}
	add := func(head string, now any) any { return formula{"SUM(" + r.column(head, r.at) + ")", now} }
	return []any{total("all"), nil, add("fits", t.Fits()), add("cuts", t.Cuts), add("open ends", t.OpenEnds), add("scope", t.Scope), nil,
		formula{"MAX(" + r.range1("force N") + ")", t.MostForce}, add("minutes", t.Minutes)}
}
