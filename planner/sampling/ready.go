package sampling

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/planner/tightness"
)

// most is beyond any building: m or m2 of one section. Above it a unit slipped.
const most = 1e9

// ready checks the sections and what is asked of them, and hands the sections
// back in natural order. The error is Problems.
func ready(sections []Section, a Ask) ([]Section, error) {
	sorted := slices.Clone(sections)
	slices.SortFunc(sorted, func(x, y Section) int { return byName(x.ID, y.ID) })
	faults := a.faults()
	if len(sorted) == 0 {
		faults = append(faults, Problem{"", "there are no planned sections to choose among", "plan the sections first"})
	}
	var whole float64
	for i, s := range sorted {
		switch {
		case strings.TrimSpace(s.ID) == "":
			faults = append(faults, Problem{"section", "it has no name", "give every section one"})
		case i > 0 && sorted[i-1].ID == s.ID:
			faults = append(faults, Problem{"section " + s.ID, "the name is given twice", "give every section its own"})
		}
		faults = append(faults, s.faults()...)
		whole += a.By.of(s)
	}
	if len(faults) == 0 && whole == 0 && a.asks() {
		faults = append(faults, Problem{"sections", fmt.Sprintf("no section has a %s: no share of it can be drawn", a.By), "ask by another measure, or fill it in"})
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return sorted, nil
}

func (s Section) faults() Problems {
	var out Problems
	for _, f := range []struct {
		name  string
		value float64
	}{{"area", s.Area}, {"joint length", s.JointLength}, {"length", s.Length}, {"straights", s.Straights}, {"fittings", s.Fittings}} {
		if !(f.value >= 0 && f.value <= most) {
			out = append(out, Problem{"section " + s.ID, fmt.Sprintf("%s %g can't be", f.name, f.value), "0 to 1e9 m or m2"})
		}
	}
	return out
}

// asks says whether anything is asked for.
func (a Ask) asks() bool {
	return a.Percent > 0 || slices.ContainsFunc(a.Quotas, func(q Quota) bool { return q.Percent > 0 })
}

func (a Ask) faults() Problems {
	var out Problems
	percent := func(place string, v float64) {
		if !(v >= 0 && v <= 100) {
			out = append(out, Problem{place, fmt.Sprintf("%g %% can't be asked for", v), "0 to 100 %"})
		}
	}
	percent("share", a.Percent)
	if int(a.By) >= len(byNames) {
		out = append(out, Problem{"share", fmt.Sprintf("%s is unknown", a.By), "area, length or joint length"})
	}
	for i, q := range a.Quotas {
		place := fmt.Sprintf("quota %d", i+1)
		percent(place, q.Percent)
		selects := q
		selects.Percent = 0
		switch {
		case selects == (Quota{}):
			out = append(out, Problem{place, "it names no part of the ductwork", "name mains or branches, a shape, a class or a system, or ask for a share of the whole"})
		case q.Run != AnyRun && q.Run != Mains && q.Run != Branches:
			out = append(out, Problem{place, fmt.Sprintf("run %q is unknown", q.Run), "mains or branches"})
		case q.Shape != "" && !slices.Contains(tightness.Shapes(), tightness.Shape(q.Shape)):
			out = append(out, Problem{place, fmt.Sprintf("shape %q is unknown", q.Shape), "rectangular, circular or flat-oval"})
		}
	}
	return out
}

// Unknown finds the names that are no section's. The error is Problems.
func Unknown(sections []Section, ids []string) error {
	sorted := slices.Clone(sections)
	slices.SortFunc(sorted, func(x, y Section) int { return byName(x.ID, y.ID) })
	faults := slices.DeleteFunc(known(sorted, ids), func(p Problem) bool { return p.Text != noSection })
	if len(faults) == 0 {
		return nil
	}
	return faults
}

const noSection = "it isn't among the planned sections"

// mostNamed is how many sections are named where one that isn't there is asked
// for.
const mostNamed = 40

// there names the sections that there are.
func there(sorted []Section) string {
	var names []string
	for _, s := range sorted[:min(mostNamed, len(sorted))] {
		names = append(names, s.ID)
	}
	text := "expected one of " + strings.Join(names, ", ")
	if n := len(sorted) - mostNamed; n > 0 {
		text += fmt.Sprintf(" and %d more", n)
	}
	return text
}

// known finds the names that are no planned section's, or given twice.
func known(sorted []Section, ids []string) Problems {
	names := map[string]bool{}
	for _, s := range sorted {
		names[s.ID] = true
	}
	seen := map[string]bool{}
	var out Problems
	for _, id := range ids {
		switch {
		case !names[id]:
			out = append(out, Problem{fmt.Sprintf("section %q", id), noSection, there(sorted)})
		case seen[id]:
			out = append(out, Problem{"section " + id, "it is named twice", "name it once: it counts once"})
		}
		seen[id] = true
	}
	return out
}
