package report

import (
	"fmt"
	"math"
	"strings"

	"blankoff/planner/effect"
	"blankoff/takeoff"
	"blankoff/takeoff/audit"
)

// ownRows is the reason of a sum that follows from its rows.
const ownRows = "the sum of what its rows state"

// words says in one or two sentences why figures differ.
func (o *Reason) words() string {
	if len(o.Causes) == 0 {
		if o.Sure == "" {
			return ""
		}
		return "No single cause was found: none of the usual ones, alone or in pairs, gives the stated figures."
	}
	c := &o.Causes[0]
	it := "It gives"
	if len(c.Keys) > 1 {
		it = "Together they give"
	}
	fits := fmt.Sprintf(it+" %d of %d figures within their rounding", c.Hits, c.Of)
	if n := c.Tells; n < c.Hits {
		fits += fmt.Sprintf(", %d of them figures that differ from those worked out", n)
	}
	switch {
	case len(o.Causes) > 1 && sameHits(o.Causes):
		return fmt.Sprintf("The figures can't tell between %s; each gives %d of %d figures within their rounding.", several(len(o.Causes)+o.More), c.Hits, c.Of)
	case len(o.Causes) > 1:
		return fmt.Sprintf("The figures can't tell for sure between %s.", several(len(o.Causes)+o.More))
	case o.Sure == string(audit.Certain):
		nothing := "nothing else"
		if len(o.Alike) > 0 {
			nothing = "nothing giving other figures"
		}
		return fmt.Sprintf("%s: %s. %s, and %s that was tried, alone or in pairs, comes near.", gives(c, "gives", "give"), c.Text, fits, nothing) + o.alike()
	}
	return fmt.Sprintf("%s: %s. %s.", gives(c, "most likely gives", "most likely give"), c.Text, fits) + o.alike()
}

// alike names rules that these figures can't tell from the cause.
func (o *Reason) alike() string {
	const most = 3
	n := len(o.Alike)
	if n == 0 {
		return ""
	}
	more := ""
	if n > most {
		more = fmt.Sprintf("; and %d more", n-most)
	}
	return fmt.Sprintf(" What does the same to every stated figure, and could be told from it only by rows that state no area: %s%s.", strings.Join(o.Alike[:min(most, n)], "; "), more)
}

// gives begins a sentence about a cause or two.
func gives(c *Cause, one, two string) string {
	if len(c.Keys) > 1 {
		return "Two causes together " + two + " the figures"
	}
	return "One cause " + one + " the figures"
}

func several(n int) string { return fmt.Sprintf("%d causes", n) }

func sameHits(list []Cause) bool {
	for i := range list {
		if list[i].Hits != list[0].Hits {
			return false
		}
	}
	return true
}

// resultSentence is the result in one sentence.
func (v *Check) resultSentence() string {
	c := &v.Counts
	if c.Stated == 0 {
		return "No area is stated, so there is nothing to check."
	}
	figures := fmt.Sprintf("%d stated figures", c.Stated)
	var parts []string
	for _, p := range []struct {
		n    int
		word string
	}{{c.Agree, "agree%s to the last digit"}, {c.Within, "lie%s within %g %%"}, {c.Differ, "differ%s by more"}, {c.NoArea, "belong%s to rows that can't be measured"}} {
		if p.n == 0 {
			continue
		}
		s := ""
		if p.n == 1 {
			s = "s"
		}
		word := fmt.Sprintf(strings.Replace(p.word, "%g %%", fmt.Sprintf("%g %%%%", v.Tolerance), 1), s)
		if p.word[0] == 'd' && c.Within == 0 {
			word += fmt.Sprintf(" than %g %%", v.Tolerance)
		}
		parts = append(parts, fmt.Sprintf("%d %s", p.n, word))
	}
	if len(parts) == 1 && c.Stated > 1 {
		return fmt.Sprintf("All %d stated figures%s.", c.Stated, parts[0][strings.Index(parts[0], " "):])
	}
	if c.Stated == 1 {
		return "The one stated figure" + parts[0][1:] + "."
	}
	return "Of " + figures + " " + joinAnd(parts) + "."
}

func joinAnd(parts []string) string {
	if n := len(parts); n > 1 {
		return strings.Join(parts[:n-1], ", ") + " and " + parts[n-1]
	}
	return strings.Join(parts, "")
}

// frenchFlag sets a stated area beside the flat rule of French practice, where
// the flow is known and the two are a factor of two or more apart.
func frenchFlag(g *audit.Group) string {
	if g.Flow <= 0 {
		return ""
	}
	rule := effect.FrenchRule(g.Flow)
	const far = 2
	if r := g.Area / rule; r < far && r > 1.0/far {
		return ""
	}
	return fmt.Sprintf("%.0f m2 would go with a flow of %.0f m3/h by the flat rule of French practice (180 m2 per m3/s): a coarse rule, and only a flag", rule, g.Flow*3.6)
}

// askFor lists what to ask for next.
func (v *Check) askFor(r *audit.Result) []string {
	var out []string
	switch {
	case len(v.Reason.Causes) == 1:
		out = append(out, "Please tell us whether the areas were worked out in this way: "+v.Reason.Causes[0].Text+"; and if so, send a corrected list.")
	case len(v.Reason.Causes) > 1:
		out = append(out, "Please tell us by which rule, and on which sizes, the areas were measured; the figures alone don't tell.")
	case v.Reason.Sure != "":
		out = append(out, "Please send the working of the figures that differ, with the rule of measurement and the sizes it starts from.")
	}
	open, single := v.apart()
	if len(single) > 0 {
		out = append(out, "Please look at these single figures: "+someNames(single)+".")
	}
	if len(open) > 0 && v.Reason.Sure != string(audit.NoCause) {
		out = append(out, "Please send the working of "+someNames(open)+", for which we have found no explanation.")
	}
	if v.Counts.NoArea > 0 {
		rows, they := "the row", "it stands"
		if v.Counts.NoArea > 1 {
			rows, they = fmt.Sprintf("the %d rows", v.Counts.NoArea), "they stand"
		}
		out = append(out, "Please complete the sizes of "+rows+" that can't be measured as "+they+".")
	}
	if n := len(r.Unstated); n > 0 {
		out = append(out, v.askUnstated(n))
	}
	if n := len(v.StatedFaults()); n > 0 {
		out = append(out, fmt.Sprintf("Please correct %s of %s that couldn't be used.", counted(n, "line"), v.StatedFile.File))
	}
	for i := range v.Effects {
		if m := v.Effects[i].Missing; m != "" {
			out = append(out, "Please state the class and the test pressure: without them the limit can't be given.")
			break
		}
	}
	if out == nil {
		return []string{}
	}
	return out
}

// apart names the rows that nothing explains, and the rows and sums that differ for
// a reason of their own.
func (v *Check) apart() (open, single []string) {
	for i := range v.Rows {
		switch x := &v.Rows[i]; {
		case x.Verdict == string(audit.Differs) && x.Reason == "":
			open = append(open, x.Name)
		case x.Verdict == string(audit.Differs) && !ByCause(x.Reason):
			single = append(single, x.Name)
		}
	}
	for i := range v.Sums {
		if x := &v.Sums[i]; x.Verdict == string(audit.Differs) && !ByCause(x.Reason) && x.Reason != ownRows {
			single = append(single, x.By+" "+x.Name)
		}
	}
	return open, single
}

// askUnstated asks about the n rows that state no area.
func (v *Check) askUnstated(n int) string {
	var names []string
	for i := range v.Unstated {
		names = append(names, v.Unstated[i].Name)
	}
	state, one, are := "state", "one for each", "they aren't"
	if n == 1 {
		state, one, are = "states", "one", "it isn't"
	}
	return fmt.Sprintf("%s (%s) %s no area; worked out: %.2f m2. Please state %s, or say that %s part of the test.", counted(n, "row"), fewNames(names, 3), state, v.Compared.Missed, one, are)
}

// StatedFaults are the lines of the list of sums that couldn't be used.
func (v *Check) StatedFaults() []takeoff.Fault {
	var out []takeoff.Fault
	for i := range v.Faults {
		if v.StatedFile != nil && v.Faults[i].File == v.StatedFile.File {
			out = append(out, v.Faults[i])
		}
	}
	return out
}

// someNames are the first names of a list.
func someNames(names []string) string { return fewNames(names, 8) }

func fewNames(names []string, most int) string {
	const letters = 24
	for i, n := range names {
		if r := []rune(n); len(r) > letters {
			names[i] = string(r[:letters-1]) + "…"
		}
	}
	if len(names) > most {
		return strings.Join(names[:most], ", ") + fmt.Sprintf(" and %d more", len(names)-most)
	}
	return joinAnd(names)
}

// About names the part that an effect is of: "system SA2".
func (e *CheckEffect) About() string {
	switch {
	case e.By == "schedule":
		return "the whole schedule"
	case e.Name == "" && e.Unstated == 0 && !e.Others:
		return "everything stated"
	}
	name := e.By + " " + e.Name
	if e.Name == "" {
		name = "rows without a " + e.By
	}
	if e.Unstated > 0 {
		name += fmt.Sprintf(" (%d of %d)", e.Rows, e.Rows+e.Unstated)
		if e.Name != "" {
			name = strings.TrimSuffix(name, ")") + " rows)"
		}
	}
	return name
}

// Sentences say what the stated area does to the test.
func (e *CheckEffect) Sentences() []string {
	if e.Missing != "" {
		return []string{"The limit can't be given: " + e.Missing + "."}
	}
	var out []string
	switch {
	case e.Favours == "":
		out = append(out, "The difference in area makes no difference to speak of to the limit.")
	case e.Proves == e.Class:
		out = append(out, "The stated area is "+e.Favours+". A test that passes at the limit of the stated area proves class "+e.Class+" all the same.")
	case e.Proves == "":
		out = append(out, "The stated area is "+e.Favours+". A test that passes just at the limit of the stated area would prove no class of scheme "+e.Scheme+", where class "+e.Class+" is asked for.")
	default:
		out = append(out, "The stated area is "+e.Favours+". A test that passes just at the limit of the stated area would prove class "+e.Proves+", where class "+e.Class+" is asked for.")
	}
	if e.Reading > 0 {
		word := map[bool]string{true: "passes", false: "fails"}
		text := fmt.Sprintf("The reading of %g L/s %s on the stated area and %s on the area worked out", e.Reading, word[e.PassStated], word[e.Pass])
		if e.PassStated == e.Pass {
			text = fmt.Sprintf("The reading of %g L/s %s on either area", e.Reading, word[e.Pass])
		}
		out = append(out, text+fmt.Sprintf("; it passes on any area of %.2f m2 and more.", up(e.BreakEven)))
	}
	return out
}

// up rounds an area up to 0.01 m2, so that the area shown is enough.
func up(m2 float64) float64 { return math.Ceil(m2*100-1e-9) / 100 }
