package sampling

import (
	"fmt"
	"slices"

	"blankoff/planner/units"
)

// Check judges somebody else's pick: whether every name is a planned section,
// whether the share and every quota is reached, whether the pick is
// representative. The pick is measured whatever is wrong with it, names unknown
// or given twice left aside; if the sections or what is asked of them are at
// fault it is empty. That a pick was drawn at random can't be seen from it; a
// note says so, or that it is what the seed draws.
func Check(sections []Section, ids []string, a Ask) (Pick, []Problem) {
	sorted, err := ready(sections, a)
	if err != nil {
		faults, _ := err.(Problems)
		return Pick{}, faults
	}
	problems := known(sorted, ids)
	planned := map[string]bool{}
	for _, s := range sorted {
		planned[s.ID] = true
	}
	var of []string
	for _, id := range ids {
		if planned[id] {
			of = append(of, id)
		}
	}
	p := judge(sorted, set(of), a)
	p.IDs, p.Seed = ordered(of), a.Seed
	short := shortOf(p, a.Units)
	problems = append(problems, short...)
	for _, flag := range p.Representative.Flags {
		problems = append(problems, Problem{"the pick", flag, ""})
	}
	if !a.asks() {
		p.Notes = append(p.Notes, "no share was asked for, so nothing says whether enough is picked; whether these were drawn at random can't be seen from them")
		return p, problems
	}
	if len(short) == 0 {
		p.Notes = append(p.Notes, spare(sorted, p, a)...)
	}
	drawn := ordered(draw(sorted, nil, a))
	if slices.Equal(drawn, p.IDs) {
		p.Notes = append(p.Notes, fmt.Sprintf("these are the sections that seed %d draws", a.Seed))
	} else {
		p.Notes = append(p.Notes, fmt.Sprintf("seed %d draws others: whether these were drawn at random can't be seen from them", a.Seed))
	}
	return p, problems
}

// parts are all that something may be asked of.
func (p Pick) parts() []Part {
	return slices.Concat([]Part{p.All}, p.Of, p.Quotas)
}

// shortOf names every part of which too little was picked.
func shortOf(p Pick, u units.System) Problems {
	q := p.By.quantity()
	var out Problems
	for _, part := range p.parts() {
		if part.met() {
			continue
		}
		cure := fmt.Sprintf("test %s %s more of it", figure(u.Of(q, part.Short)), u.Unit(q))
		if p.By != ByArea {
			cure = fmt.Sprintf("test %s %s of %s more of it", figure(u.Of(q, part.Short)), u.Unit(q), p.By)
		}
		if part.Asked == 100 {
			cure = fmt.Sprintf("test the %s left of it", count(part.Sections-part.Taken, "section"))
		}
		out = append(out, Problem{part.Name, fmt.Sprintf("%s %% by %s is picked (%s of %s %s) where %s %% is asked for",
			figure(part.Share), p.By, figure(u.Of(q, part.Picked)), figure(u.Of(q, part.Whole)), u.Unit(q), figure(part.Asked)), cure})
	}
	return out
}

// spare names a section without which all would still be met: the pick is more
// than a section over what was asked.
func spare(sorted []Section, p Pick, a Ask) []string {
	for _, id := range p.IDs {
		fewer := set(p.IDs)
		delete(fewer, id)
		if len(shortOf(judge(sorted, fewer, a), a.Units)) == 0 {
			return []string{"more is picked than asked for: without " + id + " every share would still be met"}
		}
	}
	return nil
}
