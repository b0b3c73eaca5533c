package xlsx

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// toTest heads the column that says whether a section is tested, where not all are.
const toTest = "to test"

// sectionColumns are the columns of the sheet sections.
func sectionColumns(l *links) []column {
	list := []column{
		{head: "section", width: 9}, {head: "system", width: 12}, {head: "levels", width: 16},
		{head: "scheme", width: 9}, {head: "class", width: 7}, {head: "test Pa", width: 9, kind: pascals}, {head: "sign", width: 9},
		{head: "area m2", width: 12, kind: squareM}, {head: "limit L/s, cut off", width: 11, kind: flows}, {head: "range to set", width: 8},
		{head: "state", width: 18, alarm: true}, {head: "blanks", width: 8, kind: whole}, {head: "largest blank", width: 12, kind: sized}, {head: "force on it N", width: 9, kind: newtons},
		{head: "limit L/s, all digits", width: 14, kind: flowsFull, screen: true}, {head: "limit L/s per m2", width: 14, kind: perM2, screen: true},
		{head: "exact area m2", width: 12, kind: squareM, screen: true}, {head: "joints m", width: 12, kind: metres, screen: true}, {head: "grouping", width: 11, screen: true}, {head: "all levels", width: 24, screen: true}, {head: "places", width: 34, screen: true}, {head: "drawings", width: 30, screen: true},
		{head: "why", width: 40, screen: true}, {head: "cure", width: 60, screen: true}, {head: "notes", width: 40, screen: true},
	}
	if !l.tested.All() {
		list = slices.Insert(list, toTestAt, column{head: toTest, width: 13})
	}
	return list
}

// toTestAt is where that column stands.
const toTestAt = 11

// withTest puts whether a section is tested into its row.
func (l *links) withTest(s *report.Section, cells []any) []any {
	if l.tested.All() {
		return cells
	}
	said := "yes"
	if s != nil && s.NotTested != "" {
		said = s.NotTested
	}
	var cell any
	if s != nil {
		cell = said
	}
	return slices.Insert(cells, toTestAt, cell)
}

// sections writes one row a section, and the sum.
func sections(b *book, v *report.Plan) error {
	c := b.follow.onSections
	return b.sheet("sections", sectionColumns(b.follow), func(row func(...any) error) error {
		l := b.follow
		for i := range v.Sections {
			s := &v.Sections[i]
			grouping := ""
			if s.Grouping {
				grouping = "grouping"
			}
			r := sectionRow{b.follow, s, i, c}
			face, force := r.largest()
			err := row(l.withTest(s, []any{s.ID, s.System, show.Names(s.Levels, ", ", 3, 18), s.Scheme, r.open(s.Class), r.open(s.TestPa), r.open(s.Sign),
				r.area(), r.cutOff(), r.toSet(), r.state(), known(show.Blanks(s)), face, force,
				r.limit(), r.perM2(), r.exact(), s.JointLength, grouping, lines(s.Levels), lines(s.Places), lines(s.Drawings), s.Reason, lines(s.Cures), lines(s.Notes)})...)
			if err != nil {
				return err
			}
		}
		return row(l.withTest(nil, []any{total(show.Count(l.tested.Tests, "test")), nil, nil, nil, nil, nil, nil, l.testedArea(""), nil, nil, nil, known(fits(v))})...)
	})
}

// testedArea is the area of the sections that are tested; on is the sheet to be
// named.
func (l *links) testedArea(on string) any {
	area, v := 0.0, l.v
	for i := range v.Sections {
		if v.Sections[i].NotTested == "" {
			area += v.Sections[i].Area
		}
	}
	if len(v.Sections) == 0 {
		return area
	}
	return follows(l.testedSum(on), area, area)
}

func (l *links) testedSum(on string) string {
	rows := [2]int{2, len(l.v.Sections) + 1}
	all := rangeOf(on, l.onSections["area m2"], rows)
	if l.tested.All() {
		return "SUM(" + all + ")"
	}
	return fmt.Sprintf(`SUMIF(%s,"yes",%s)`, rangeOf(on, l.onSections[toTest], rows), all)
}

// state is a section's state, bold where the rig can't judge it.
func state(s *report.Section) any {
	flag := show.Flag(s)
	switch {
	case s.UnderRange || s.OverRange:
		return bold(flag)
	case flag == "":
		return show.State(s)
	}
	return show.State(s) + ", " + flag
}

// known is a number as such, and any other text as it is.
func known(text string) any {
	if n, err := strconv.Atoi(text); err == nil {
		return n
	}
	return text
}

// fits is how many blanks are fitted in all tests; those in groupings aren't
// known.
func fits(v *report.Plan) string {
	sizes := show.AllSizes(show.Sizes(v))
	switch n := sizes.Fits(); {
	case show.Groupings(v) == "":
		return strconv.Itoa(n)
	case n == 0:
		return "?"
	default:
		return strconv.Itoa(n) + "+?"
	}
}

// outOfRange writes the sections that the rig can't judge, one line a cure; there
// is no such sheet where the rig can judge all.
func outOfRange(b *book, v *report.Plan) error {
	var out []int
	for _, over := range []bool{true, false} {
		for i := range v.Sections {
			if s := &v.Sections[i]; s.OverRange == over && (over || s.UnderRange) {
				out = append(out, i)
			}
		}
	}
	if len(out) == 0 {
		return nil
	}
	return b.sheet("out of range", []column{
		{head: "section", width: 9}, {head: "system", width: 12}, {head: "state", width: 18, alarm: true}, {head: "area m2", width: 12, kind: squareM},
		{head: "limit L/s, cut off", width: 11, kind: flows}, {head: "why", width: 30}, {head: "cure", width: 50}, {head: "as planned", width: 10},
	}, func(row func(...any) error) error {
		for _, i := range out {
			s := &v.Sections[i]
			cures := s.Cures
			if len(cures) == 0 {
				cures = []string{"none known"}
			}
			for k, c := range cures {
				cells := []any{s.ID, nil, nil, nil, nil, nil, c}
				if k == 0 {
					l := b.follow
					cells = []any{start(s.ID), s.System, l.stateOf(s, i), follows(l.sectionCell("area m2", i), s.Area, s.Area),
						formula{l.sectionCell("limit L/s, cut off", i), permitted(s.Limit)}, show.Why(s), c, l.asPlanned(s, i)}
				}
				if err := row(cells...); err != nil {
					return err
				}
			}
		}
		return row(nil, nil, nil, nil, nil, nil, b.follow.moreOut(len(out)))
	})
}

// moreOut says that other sections are out of range than are listed, once what they
// were planned for is changed.
func (l *links) moreOut(listed int) any {
	states := rangeOf("sections", l.onSections["state"], [2]int{2, len(l.v.Sections) + 1})
	return formula{fmt.Sprintf(`IF(COUNTIF(%[1]s,"OVER RANGE*")+COUNTIF(%[1]s,"UNDER RANGE*")=%[2]d,"","with what was changed, other sections are out of range too; the sheet sections has them, a new plan their cures")`, states, listed), ""}
}

// stateOf is a section's state on another sheet.
func (l *links) stateOf(s *report.Section, i int) any {
	if f, ok := (sectionRow{l: l, s: s, i: i, c: l.onSections}).state().(formula); ok {
		return formula{l.sectionCell("state", i), f.now}
	}
	return state(s)
}

// readings writes what each reading would mean in each section's test.
func readings(b *book, v *report.Plan) error {
	if len(v.Sections) == 0 {
		return nil
	}
	return b.sheet("readings", []column{
		{head: "section", width: 9}, {head: "test pressure Pa", width: 9, kind: pascals}, {head: "limit L/s, cut off", width: 11, kind: flows}, {head: "range to set", width: 14},
		{head: "ready", width: 11}, {head: "closed", width: 11}, {head: "what a reading means", width: 70}, {head: "as planned", width: 10},
	}, func(row func(...any) error) error {
		for i := range v.Sections {
			s := &v.Sections[i]
			if s.NotTested != "" {
				continue
			}
			for k, text := range s.Readings {
				cells := []any{s.ID, nil, nil, nil, nil, nil, text}
				if k == 0 {
					l := b.follow
					cells = []any{start(s.ID), formula{l.sectionCell("test Pa", i), s.TestPa}, formula{l.sectionCell("limit L/s, cut off", i), permitted(s.Limit)},
						formula{l.sectionCell("range to set", i) + `&""`, show.Range(v, s)}, s.Ready, s.Closed, text, l.asPlanned(s, i)}
				}
				if err := row(cells...); err != nil {
					return err
				}
			}
		}
		return nil
	})
}

// first is a section's name, with a rule above where the section begins.
func first(id string, k int) any {
	if k == 0 {
		return start(id)
	}
	return id
}

// lines joins the words of a cell.
func lines(words []string) string { return strings.Join(words, "; ") }
