package xlsx

import (
	"fmt"
	"math"
	"strconv"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// sectionRow is a row of the sheet sections being written; c is its columns.
type sectionRow struct {
	l *links
	s *report.Section
	i int
	c map[string]string
}

func (r sectionRow) here(head string) string { return r.c[head] + strconv.Itoa(r.i+2) }

// open marks what the figures of a section follow; a view made by hand has
// nothing to follow it with.
func (r sectionRow) open(v any) any {
	if len(r.l.v.Rigs) == 0 {
		return v
	}
	return input{v}
}

// area is the sum of the section's pieces, which follow one another.
func (r sectionRow) area() any {
	sum := 0.0
	for i := range r.s.Pieces {
		sum += r.s.Pieces[i].Area
	}
	return r.sumOf("counted m2", sum, r.s.Area)
}

func (r sectionRow) exact() any {
	sum := 0.0
	for i := range r.s.Pieces {
		sum += r.s.Pieces[i].Exact
	}
	return r.sumOf("exact m2", sum, r.s.ExactArea)
}

func (r sectionRow) sumOf(head string, gives, now float64) any {
	if r.l.pieces[r.i][0] == 0 {
		return now
	}
	return follows("SUM("+rangeOf("pieces", r.l.onPieces[head], r.l.pieces[r.i])+")", gives, now)
}

// perM2 is k p^n.
func (r sectionRow) perM2() any {
	gives := math.NaN()
	for _, s := range r.l.v.Schemes {
		if s.Name != r.s.Scheme {
			continue
		}
		if c, err := s.Class(r.s.Class); err == nil {
			gives = s.Limit(c, r.s.TestPa)
		}
	}
	return follows(r.l.settings.limitPerM2(r.s.Scheme, r.c, r.i+2), gives, r.s.LimitPerM2)
}

// limit is the limit per m2 times the area that the section is held to.
func (r sectionRow) limit() any {
	area, held := r.here("area m2"), r.s.Area
	if r.l.v.Settings.HoldBoth {
		held = math.Min(held, r.s.ExactArea)
		area = fmt.Sprintf("IF(hold_both=1,MIN(%s,%s),%s)", area, r.here("exact area m2"), area)
	}
	return follows(r.here("limit L/s per m2")+"*"+area+perArea(r.l.v.Units), r.s.LimitPerM2*held, r.s.Limit)
}

// cutOff is the limit cut off at its decimals.
func (r sectionRow) cutOff() any {
	q := r.here("limit L/s, all digits")
	if r.l.v.Units != units.SI {
		q = "ROUND(" + q + ",9)" // the noise of turning it isn't cut off
	}
	return formula{fmt.Sprintf("ROUNDDOWN(%s,IF(%s>=100,1,IF(%s>=1,2,IF(%s>=0.1,3,4))))", q, q, q, q), permitted(r.s.Limit)}
}

func (r sectionRow) state() any {
	if len(r.l.v.Rigs) == 0 {
		return state(r.s)
	}
	text, now := fmt.Sprintf("windows!%s%d", r.l.onWindows["state"], r.i+2), stateNow(r.l.v, r.s)
	if r.s.Grouping {
		text, now = text+`&", grouping"`, now+", grouping"
	}
	return formula{text, now}
}

func (r sectionRow) toSet() any {
	now := show.Range(r.l.v, r.s)
	if len(r.l.v.Rigs) == 0 {
		return now
	}
	return formula{fmt.Sprintf(`windows!%s%d&""`, r.l.onWindows["range to set"], r.i+2), now}
}

// largest is the blank with the greatest force on it.
func (r sectionRow) largest() (face, force any) {
	l, ok := show.Largest(r.s.Blanks)
	if !ok {
		return nil, nil
	}
	c := r.l.onBlanks
	if r.l.blanks[r.i][0] == 0 {
		return l.Text, l.Force
	}
	forces := rangeOf("blanks", c["force N"], r.l.blanks[r.i])
	return formula{fmt.Sprintf("INDEX(%s,MATCH(MAX(%s),%s,0))", rangeOf("blanks", c["size"], r.l.blanks[r.i]), forces, forces), l.Text},
		formula{"MAX(" + forces + ")", l.Force}
}
