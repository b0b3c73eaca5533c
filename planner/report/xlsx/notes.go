package xlsx

import (
	"fmt"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// notes writes everything that is said in words, one row each.
func notes(b *book, v *report.Plan) error {
	return b.sheet("notes", []column{
		{head: "what", width: 14, kind: ticked}, {head: "about", width: 26}, {head: "m2", width: 11, kind: squareM}, {head: "text", width: 80},
	}, func(row func(...any) error) error {
		for _, part := range []func(*links, func(...any) error) error{troubleNotes, faultNotes, leftNotes, plainNotes} {
			if err := part(b.follow, row); err != nil {
				return err
			}
		}
		return nil
	})
}

// troubleNotes are the sections that the rig can't judge.
func troubleNotes(l *links, row func(...any) error) error {
	v := l.v
	for _, over := range []bool{true, false} {
		for i := range v.Sections {
			s := &v.Sections[i]
			if s.OverRange != over || !over && !s.UnderRange {
				continue
			}
			if err := row(show.State(s), s.ID, follows(l.sectionCell("area m2", i), s.Area, s.Area), s.Reason); err != nil {
				return err
			}
			for _, c := range s.Cures {
				if err := row("cure", s.ID, nil, c); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

func faultNotes(l *links, row func(...any) error) error {
	v := l.v
	for _, f := range show.Gather(v.Faults) {
		if err := row("fault", f.Place(), nil, f.Text()); err != nil {
			return err
		}
	}
	return nil
}

// leftNotes are the pieces in no section.
func leftNotes(l *links, row func(...any) error) error {
	v := l.v
	for i := range v.Outside {
		p := &v.Outside[i]
		if err := row("outside", show.Span(p), l.outsideArea(i), p.Reason); err != nil {
			return err
		}
	}
	for i := range v.OutOfScope {
		p := &v.OutOfScope[i]
		text, gives := l.stretch(p, false)
		if err := row("out of scope", show.Span(p), follows(text, gives, p.Own), p.Reason); err != nil {
			return err
		}
	}
	return nil
}

func plainNotes(l *links, row func(...any) error) error {
	v := l.v
	for i := range v.Sections {
		if s := &v.Sections[i]; len(s.Notes) > 0 {
			if err := row("section", s.ID, nil, strings.Join(s.Notes, "; ")); err != nil {
				return err
			}
		}
	}
	for _, part := range []struct {
		what  string
		texts []string
	}{{"mismatch", v.Mismatches}, {"sample", sampleNotes(v)}, {"note", v.Notes}, {"proof", v.Proof.Sentences}, {"take care", v.Cautions}} {
		for _, t := range part.texts {
			if err := row(part.what, nil, nil, t); err != nil {
				return err
			}
		}
	}
	a, t := &v.Balance, l.totals()
	for _, line := range []struct {
		about string
		f     figure
		m2    float64
		kind  kind
	}{{"takeoff", t.takeoff, a.Takeoff, squareM}, {"in sections", t.sections, a.Sections, squareM}, {"outside", t.outside, a.Outside, squareM}, {"difference", t.difference, show.DifferenceIn(v.Units, a.Difference), plain}} {
		if err := row("balance", line.about, line.f.cell(line.m2, line.kind)); err != nil {
			return err
		}
	}
	return nil
}

func sampleNotes(v *report.Plan) []string {
	if v.Sample == nil {
		return nil
	}
	return v.Sample.Notes
}

// outsideArea is the area of a stretch in no section, as the sheet pieces has it.
func (l *links) outsideArea(i int) any {
	m2 := l.v.Outside[i].Area
	if l.outside[0] == 0 {
		return m2
	}
	return formula{fmt.Sprintf("pieces!%s%d", l.onPieces["counted m2"], l.outside[0]+i), m2}
}
