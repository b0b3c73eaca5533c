package xlsx

import (
	"fmt"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// figure is a figure over other sheets, and what its formula gives.
type figure struct {
	text  string
	gives float64
}

// as is a cell with the figure at the left, if it gives what the view has.
func (f figure) as(now float64, k kind) any {
	if f.text == "" || !near(f.gives, now) {
		return rounded{now, k}
	}
	return formula{f.text, rounded{now, k}}
}

// cell is the same in a column of figures.
func (f figure) cell(now float64, k kind) any {
	switch c := f.as(now, k).(type) {
	case formula:
		return formula{c.text, as{now, k}}
	default:
		return as{now, k}
	}
}

// totals are the sums of a plan over its sheets.
type totals struct {
	tests, tested, sections, outside, takeoff, difference figure
	blanks, force, cuts, minutes, ends                    figure
}

func (l *links) totals() (t totals) {
	v := l.v
	n := len(v.Sections)
	s := l.onSections
	t.sections, t.outside, t.takeoff = figure{"0", 0}, figure{"0", 0}, l.takeoffSum()
	if n > 0 {
		t.tests = figure{"ROWS(" + rangeOf("sections", s["section"], [2]int{2, n + 1}) + ")", float64(n)}
		t.sections = figure{"SUM(" + rangeOf("sections", s["area m2"], [2]int{2, n + 1}) + ")", 0}
	}
	for i := range v.Sections {
		t.sections.gives += v.Sections[i].Area
	}
	t.tested = t.sections
	if !l.tested.All() {
		t.tests = figure{fmt.Sprintf(`COUNTIF(%s,"yes")`, rangeOf("sections", s[toTest], [2]int{2, n + 1})), float64(l.tested.Tests)}
		t.tested = figure{l.testedSum("sections"), l.tested.Area}
	}
	if l.outside[0] > 0 {
		t.outside.text = "SUM(" + rangeOf("pieces", l.onPieces["counted m2"], l.outside) + ")"
	}
	for i := range v.Outside {
		t.outside.gives += v.Outside[i].Area
	}
	if t.takeoff.text != "" {
		t.difference = figure{fmt.Sprintf("ROUND(%s-%s-%s,8)", t.takeoff.text, t.sections.text, t.outside.text), show.DifferenceIn(v.Units, v.Balance.Difference)}
	}
	l.blankTotals(&t)
	l.minuteTotals(&t)
	return t
}

// takeoffSum is what is in scope.
func (l *links) takeoffSum() figure {
	t := l.v.Takeoff
	if t == nil || len(t.Items) == 0 || l.large() {
		return figure{}
	}
	rows := [2]int{2, len(t.Items) + 1}
	f := figure{text: fmt.Sprintf(`SUMIF(%s,"in",%s)`, rangeOf("takeoff", l.at["scope"], rows), rangeOf("takeoff", l.at["area m2"], rows))}
	for i := range t.Items {
		if t.Items[i].Scope == "in" {
			f.gives += t.Items[i].Area
		}
	}
	return f
}

func (l *links) blankTotals(t *totals) {
	c := l.onBlanks
	all := l.allBlanks()
	if all[0] == 0 {
		return
	}
	t.blanks.text = "ROWS(" + rangeOf("blanks", c["why"], all) + ")"
	t.force.text = "MAX(" + rangeOf("blanks", c["force N"], all) + ")"
	t.ends.text = fmt.Sprintf(`SUMIF(%s,"<>cut",%s)`, rangeOf("blanks", c["why"], all), rangeOf("blanks", c["minutes"], all))
	for i := range l.v.Sections {
		if l.v.Sections[i].NotTested != "" {
			continue
		}
		for _, b := range l.v.Sections[i].Blanks {
			t.blanks.gives++
			t.force.gives = max(t.force.gives, b.Force)
			if b.Why != "cut" {
				t.ends.gives += b.Minutes
			}
		}
	}
}

// allBlanks is the rows of the sheet blanks.
func (l *links) allBlanks() (rows [2]int) {
	for _, r := range l.blanks {
		if r[0] > 0 && rows[0] == 0 {
			rows[0] = r[0]
		}
		rows[1] = max(rows[1], r[1])
	}
	return rows
}

func (l *links) minuteTotals(t *totals) {
	t.cuts = figure{"0", 0}
	if n := len(l.v.Cuts); n > 0 {
		t.cuts.text = fmt.Sprintf("SUM(cuts!D2:D%d)", n+1)
	}
	for i := range l.v.Cuts {
		t.cuts.gives += l.v.Cuts[i].Minutes
	}
	if all := l.allBlanks(); !l.tested.All() {
		t.cuts = figure{"0", l.tested.Minutes}
		if all[0] > 0 {
			t.cuts.text = fmt.Sprintf(`SUMIF(%s,"cut",%s)`, rangeOf("blanks", l.onBlanks["why"], all), rangeOf("blanks", l.onBlanks["minutes"], all))
		}
	}
	if t.tests.text != "" {
		t.minutes = figure{t.tests.text + "*test_minutes+" + t.cuts.text, t.tests.gives*l.v.Settings.TestMinutes + t.cuts.gives}
	}
}

// countState counts the sections in a state.
func (l *links) countState(words string, now int) any {
	n := len(l.v.Sections)
	if n == 0 {
		return now
	}
	rows := [2]int{2, n + 1}
	text := fmt.Sprintf(`COUNTIF(%s,"%s")`, rangeOf("sections", l.onSections["state"], rows), words)
	if !l.tested.All() {
		text = fmt.Sprintf(`COUNTIFS(%s,"%s",%s,"yes")`, rangeOf("sections", l.onSections["state"], rows), words, rangeOf("sections", l.onSections[toTest], rows))
	}
	count := 0
	for i := range l.v.Sections {
		if s := &l.v.Sections[i]; s.NotTested != "" {
			continue
		} else if words[0] == 'O' && s.OverRange || words[0] == 'U' && s.UnderRange && !s.OverRange {
			count++
		}
	}
	return figure{text, float64(count)}.as(float64(now), whole)
}

// sectionCell is a cell of a section's row.
func (l *links) sectionCell(head string, i int) string {
	return fmt.Sprintf("sections!%s%d", l.onSections[head], i+2)
}

// asPlanned says whether a section's limit and pressure are still those of the
// plan, so that what was said in words holds.
func (l *links) asPlanned(s *report.Section, i int) any {
	return formula{fmt.Sprintf(`IF(AND(ABS(%s-%s)<=1E-6,%s=%s),"yes","NO, plan again")`,
		l.sectionCell("limit L/s, all digits", i), l.figure(units.Flow, s.Limit), l.sectionCell("test Pa", i), l.figure(units.Pressure, s.TestPa)), "yes"}
}
