package sampling

import (
	"fmt"
	"slices"
	"strconv"

	"blankoff/planner/units"
)

// judge says what a set of sections comes to.
func judge(sorted []Section, picked map[string]bool, a Ask) Pick {
	p := Pick{By: a.By}
	all := need{name: "all"}
	if !a.PerClass {
		all.percent = a.Percent
	}
	p.All = part(sorted, picked, a.By, all)
	p.Share = p.All.Share
	for _, class := range classes(sorted) {
		of := need{name: className(class), class: class, within: true}
		if a.PerClass {
			of.percent = a.Percent
		}
		p.Of = append(p.Of, part(sorted, picked, a.By, of))
	}
	for _, n := range needs(sorted, a) {
		if n.quota != (Quota{}) {
			p.Quotas = append(p.Quotas, part(sorted, picked, a.By, n))
		}
	}
	p.Representative = represent(sorted, picked, a.Units)
	p.Detect = detect(p.All.Sections, p.All.Taken)
	p.Notes = notes(sorted, p, a)
	return p
}

// part measures what was picked of the sections that a need covers.
func part(sorted []Section, picked map[string]bool, by By, n need) Part {
	p := Part{Name: n.name, Asked: n.percent}
	missing := false
	for _, s := range sorted {
		if !n.covers(s) {
			continue
		}
		p.Sections++
		p.Whole += by.of(s)
		if picked[s.ID] {
			p.Taken++
			p.Picked += by.of(s)
		} else {
			missing = true
		}
	}
	if p.Whole > 0 {
		p.Share = 100 * p.Picked / p.Whole
	}
	if n.percent < 100 && !n.met(p.Picked, p.Whole) || n.percent == 100 && missing {
		p.Short = max(0, n.percent/100*p.Whole-p.Picked)
	}
	return p
}

// met says whether all that was asked of a part is there.
func (p Part) met() bool {
	return p.Short == 0 && (p.Asked < 100 || p.Taken == p.Sections)
}

func notes(sorted []Section, p Pick, a Ask) []string {
	out := []string{fmt.Sprintf("chosen among the %s, whole: ductwork that is in no section can't be drawn",
		count(len(sorted), "planned section"))}
	empty, uncovered := 0, 0
	list := needs(sorted, a)
	for _, s := range sorted {
		if a.By.of(s) == 0 {
			empty++
		}
		asked := false
		for _, n := range list {
			asked = asked || n.percent > 0 && n.covers(s)
		}
		if !asked {
			uncovered++
		}
	}
	if empty > 0 {
		out = append(out, fmt.Sprintf("%s no %s: drawn only where all is asked for", has(empty), a.By))
	}
	if uncovered > 0 && a.asks() {
		out = append(out, fmt.Sprintf("nothing is asked of %s: no share or quota covers them", count(uncovered, "section")))
	}
	for _, q := range a.Quotas {
		n := need{quota: q}
		if !slices.ContainsFunc(sorted, n.covers) {
			out = append(out, "no section is "+q.name(n)+": that quota asks for nothing")
		}
	}
	if n := len(p.Detect); n > 0 && p.All.Taken > 0 && p.All.Taken < p.All.Sections {
		d := p.Detect[0]
		out = append(out, fmt.Sprintf("if %s of %d were bad, this sample would miss every bad one with a chance of %.0f %%",
			count(d.Sections, "section"), p.All.Sections, 100*(1-d.Chance)))
	}
	return out
}

func count(n int, what string) string { return units.Count(n, what) }

func has(n int) string {
	if n == 1 {
		return "1 section has"
	}
	return fmt.Sprintf("%d sections have", n)
}

// figure writes a number for a message, to six digits.
func figure(v float64) string {
	if v >= 1e6 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'g', 6, 64)
}
