package audit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/terms"
	"blankoff/takeoff/totals"
)

// Section is a test section: which rows, or how much of each, lie in it.
type Section struct {
	ID    string
	Spans []Span
}

// Span is a row in a section, by its tag, and the share of it that lies there.
type Span struct {
	Tag string
	Of  float64 // 0 to 1
}

// Group is a stated sum beside the one worked out.
type Group struct {
	takeoff.StatedTotal
	System   string
	Rounding float64 // m2; with what rows rounded one by one may add up to
	Worked   float64 // worked out, m2
	Verdict  Verdict
	Rows     int
	Items    []int   // rows in it
	Of       float64 // what is stated in the rows, m2; 0: none

	Under float64 // what the named cause makes of it, m2
	Fits  bool
	Own   bool   // it's the sum of what the rows state
	Slips []Slip // what else the sum may be
	all   []share
}

// Difference is stated less worked out, m2.
func (g *Group) Difference() float64 { return g.StatedTotal.Area - g.Worked }

// Far is the verdict of a sum that names no part of the schedule.
const unknownPart = "%s '%s' isn't in the %s; write it as there"

// other is another sum that a stated one may be.
type other struct {
	key, words string
	shares     []share
	factor     float64
	bits       float64
}

// groupsOf finds the rows of every stated sum. A sum of what isn't there is a
// fault.
func groupsOf(t *takeoff.Takeoff, totals []takeoff.StatedTotal, sections []Section, tolerance float64) (list []Group, faults []takeoff.Fault) {
	for _, s := range totals {
		g := Group{StatedTotal: s}
		switch s.By {
		case "section":
			g.all = sharesOfSection(t, sections, s.Name)
		default:
			g.all = sharesOfSystem(t, s.Name)
			if len(g.all) == 0 && isWhole(s.Name) {
				g.all = sharesOfSystem(t, "")
				g.By = "schedule"
			}
		}
		if len(g.all) == 0 {
			where := map[string]string{"section": "plan"}[s.By]
			if where == "" {
				where = "schedule"
			}
			faults = append(faults, s.At.Fault(s.By, s.Name, "a "+s.By+" of the "+where, fmt.Sprintf(unknownPart, s.By, s.Name, where)))
			continue
		}
		g.settle(t, tolerance)
		list = append(list, g)
	}
	return list, faults
}

// isWhole reports a name that people write for everything.
func isWhole(name string) bool {
	switch strings.ToLower(strings.TrimSpace(name)) {
	case "", "all", "total", "sum", "whole", "schedule":
		return true
	}
	return false
}

func (g *Group) settle(t *takeoff.Takeoff, tolerance float64) {
	var sum totals.Sum
	for _, s := range g.all {
		it := &t.Items[s.item]
		sum.Add(it.Area * s.of)
		if g.Items = append(g.Items, s.item); g.System == "" {
			g.System = it.System
		}
		if it.HasStated {
			g.Of += it.Stated * s.of
		}
	}
	g.Rows, g.Worked = len(g.all), sum.Value()
	half := HalfUnit(g.Text, g.StatedTotal.Area)
	// Rows are often rounded before they are added: to 0.01 m2, say. Their errors
	// add up as the root of their number.
	const row = 0.005
	g.Rounding = half + math.Min(half, row)*math.Sqrt(float64(g.Rows))
	g.Verdict = verdict(g.StatedTotal.Area, g.Worked, g.Rounding, tolerance)
}

// counted reports a row that counts in a sum.
func counted(it *takeoff.Item) bool { return !it.Refused && it.Scope == terms.In }

// sharesOfSystem is the rows of a system; "" is everything.
func sharesOfSystem(t *takeoff.Takeoff, system string) []share {
	var list []share
	for i := range t.Items {
		if it := &t.Items[i]; counted(it) && (system == "" || it.System == system) {
			list = append(list, share{i, 1})
		}
	}
	return list
}

func sharesOfSection(t *takeoff.Takeoff, sections []Section, id string) []share {
	at := map[string]int{}
	for i := range t.Items {
		at[t.Items[i].Name()] = i
	}
	for _, s := range sections {
		if s.ID != id {
			continue
		}
		var list []share
		for _, p := range s.Spans {
			if i, ok := at[p.Tag]; ok && counted(&t.Items[i]) {
				list = append(list, share{i, p.Of})
			}
		}
		return list
	}
	return nil
}

// othersOf are the sums that the figure of a group may be instead.
func othersOf(t *takeoff.Takeoff, g *Group) []other {
	systems := systemsOf(t)
	named := len(systems) > 1
	list := []other{{"counted-twice", "everything counted twice", g.all, 2, 4}}
	if g.By == "section" {
		words := "the area of the whole schedule"
		if g.System != "" {
			words = "the area of the whole system " + g.System
		}
		list = append(list, other{"whole-for-section", words, sharesOfSystem(t, g.System), 1, 2})
	}
	if named && g.By != "schedule" {
		if len(systems) > 2 {
			list = append(list, other{"whole-schedule", "the area of all systems", sharesOfSystem(t, ""), 1, 3})
		}
		for _, s := range systems {
			if s == g.System || s == "" {
				continue
			}
			list = append(list, other{"systems-added", "systems " + g.System + " and " + s + " added", append(slices.Clone(g.all), sharesOfSystem(t, s)...), 1, 3 + math.Log2(float64(len(systems)))})
		}
	}
	return list
}

func systemsOf(t *takeoff.Takeoff) []string {
	var list []string
	for i := range t.Items {
		if it := &t.Items[i]; counted(it) && !slices.Contains(list, it.System) {
			list = append(list, it.System)
		}
	}
	return list
}

// otherCost is the least that has to be supposed for a sum to be another one.
func (f *finder) otherCost(list []made, x *target) float64 {
	cost := x.bits
	for _, o := range x.others {
		if v, ok := f.predict(list, o.shares); ok && o.bits < cost && within(v*o.factor, x.stated, x.rounding) {
			cost = o.bits
		}
	}
	return cost
}

// explainSums tells for every sum whether the cause gives it, and what else it
// may be.
func (f *finder) explainSums(groups []Group, cause *Cause) {
	var made []made
	if cause != nil {
		made = cause.guess.made
	}
	for k := range groups {
		g := &groups[k]
		v, ok := f.predict(made, g.all)
		if !ok {
			v = g.Worked
		}
		stated := g.StatedTotal.Area
		g.Under, g.Fits = v, within(v, stated, g.Rounding)
		if g.Own = g.Of > 0 && within(g.Of, stated, g.Rounding); g.Own || g.Fits || g.Verdict == Agrees {
			continue
		}
		for _, o := range othersOf(f.t, g) {
			v, ok := f.predict(made, o.shares)
			if s, all := statedSum(f.t, o.shares); all && within(s*o.factor, stated, g.Rounding) {
				v, ok = s, true
			}
			if ok && within(v*o.factor, stated, g.Rounding) {
				g.Slips = append(g.Slips, Slip{o.key, o.words, v * o.factor})
			}
		}
		if len(g.Slips) == 0 {
			g.Slips = f.oneRowTooMany(g, made)
		}
	}
}

// statedSum is what rows state together, if each states an area.
func statedSum(t *takeoff.Takeoff, shares []share) (sum float64, all bool) {
	for _, s := range shares {
		it := &t.Items[s.item]
		if !it.HasStated {
			return 0, false
		}
		sum += it.Stated * s.of
	}
	return sum, true
}

// oneRowTooMany looks for a single row that was left out of a sum or counted
// twice. Only where one row alone does it is it told.
func (f *finder) oneRowTooMany(g *Group, made []made) []Slip {
	var found []Slip
	for _, s := range g.all {
		v, ok := f.predict(made, []share{s})
		if !ok || v < 4*g.Rounding {
			continue
		}
		name := f.t.Items[s.item].Name()
		switch stated := g.StatedTotal.Area; {
		case within(g.Under+v, stated, g.Rounding):
			found = append(found, Slip{"row-twice", "row " + name + " counted twice", g.Under + v})
		case within(g.Under-v, stated, g.Rounding):
			found = append(found, Slip{"row-missing", "row " + name + " left out", g.Under - v})
		}
	}
	if len(found) != 1 {
		return nil
	}
	return found
}
