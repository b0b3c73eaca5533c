package xlsx

import (
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// notes writes everything that is said in words, one row each.
func notes(b *book, v *report.Plan) error {
	return b.sheet("notes", []column{
		{head: "what", width: 14, kind: ticked}, {head: "about", width: 26}, {head: "m2", width: 9, kind: hundred}, {head: "text", width: 80},
	}, func(row func(...any) error) error {
		for _, part := range []func(*report.Plan, func(...any) error) error{troubleNotes, faultNotes, leftNotes, plainNotes} {
			if err := part(v, row); err != nil {
				return err
			}
		}
		return nil
	})
}

// troubleNotes are the sections that the rig can't judge.
func troubleNotes(v *report.Plan, row func(...any) error) error {
	for _, over := range []bool{true, false} {
		for i := range v.Sections {
			s := &v.Sections[i]
			if s.OverRange != over || !over && !s.UnderRange {
				continue
			}
			if err := row(show.State(s), s.ID, s.Area, s.Reason); err != nil {
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

func faultNotes(v *report.Plan, row func(...any) error) error {
	for _, f := range show.Gather(v.Faults) {
		if err := row("fault", f.Place(), nil, f.Text()); err != nil {
			return err
		}
	}
	return nil
}

// leftNotes are the pieces in no section.
func leftNotes(v *report.Plan, row func(...any) error) error {
	for i := range v.Outside {
		p := &v.Outside[i]
		if err := row("outside", show.Span(p), p.Area, p.Reason); err != nil {
			return err
		}
	}
	for i := range v.OutOfScope {
		p := &v.OutOfScope[i]
		if err := row("out of scope", show.Span(p), p.Own, p.Reason); err != nil {
			return err
		}
	}
	return nil
}

func plainNotes(v *report.Plan, row func(...any) error) error {
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
	}{{"mismatch", v.Mismatches}, {"note", v.Notes}, {"proof", v.Proof.Sentences}, {"take care", v.Cautions}} {
		for _, t := range part.texts {
			if err := row(part.what, nil, nil, t); err != nil {
				return err
			}
		}
	}
	a := &v.Balance
	for _, line := range []struct {
		about string
		m2    any
	}{{"takeoff", a.Takeoff}, {"in sections", a.Sections}, {"outside", a.Outside}, {"difference", given(show.Difference(a.Difference))}} {
		if err := row("balance", line.about, line.m2); err != nil {
			return err
		}
	}
	return nil
}
