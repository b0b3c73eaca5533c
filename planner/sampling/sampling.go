package sampling

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/planner/units"
)

// Section is a planned section, as far as a choice depends on it.
type Section struct {
	ID, Class, System string
	Area              float64 // m2
	JointLength       float64 // installation joints, m
	Length            float64 // of duct, m
	Straights         float64 // area of straights, m2
	Fittings          float64 // area of fittings, m2
	Main              bool    // mostly main duct; else branches
	Shape             string  // what most of its area is: rectangular, circular, flat-oval
}

// By is the measure of which a share is asked for.
type By uint8

// The measures.
const (
	ByArea        By = iota // m2
	ByLength                // m of duct
	ByJointLength           // m of joints
)

var byNames = []string{"area", "length", "joint length"}

// String names the measure in words.
func (b By) String() string {
	if int(b) < len(byNames) {
		return byNames[b]
	}
	return fmt.Sprintf("measure %d", uint8(b))
}

// quantity is the kind of figure of the measure.
func (b By) quantity() units.Quantity {
	if b == ByArea {
		return units.Area
	}
	return units.Length
}

// Unit is the unit of the measure.
func (b By) Unit() string {
	if b == ByArea {
		return "m2"
	}
	return "m"
}

// ParseBy reads a measure: area, length or joint length, whatever the case,
// spaces, hyphens and underscores.
func ParseBy(s string) (By, error) {
	key := strings.NewReplacer(" ", "", "-", "", "_", "").Replace(strings.ToLower(s))
	for i, name := range byNames {
		if key == strings.ReplaceAll(name, " ", "") {
			return By(i), nil
		}
	}
	return 0, fmt.Errorf("%q is no measure of a share: write area, length or joint length", s)
}

// of is what a section measures.
func (b By) of(s Section) float64 {
	switch b {
	case ByLength:
		return s.Length
	case ByJointLength:
		return s.JointLength
	}
	return s.Area
}

// Run says which part of a system a quota is for.
type Run string

// The parts of a system.
const (
	AnyRun   Run = ""
	Mains    Run = "mains"
	Branches Run = "branches"
)

// Quota asks for a share of the sections that match all that it names.
type Quota struct {
	Percent float64
	Run     Run
	Shape   string // "" any
	Class   string // "" any
	System  string // "" any
}

// Ask is what the contract asks for. With quotas Percent may be 0: then only
// they are asked for.
type Ask struct {
	Percent  float64 // share of the whole, 0 to 100
	By       By
	PerClass bool // every class reaches Percent and the quotas by itself
	Seed     uint64
	Quotas   []Quota
	// Escalated is how many times the sample has been widened after a failure:
	// 0 when it is the first sample that has failed. Only Escalate reads it.
	Escalated int
	Units     units.System // of the figures in sentences
}

// Part is a part of the sections and what was picked of it.
type Part struct {
	Name     string  // "all", "class C", "class C, mains"
	Asked    float64 // percent; 0: nothing was asked of this part by itself
	Share    float64 // percent reached
	Whole    float64 // the measure of all its sections, m2 or m
	Picked   float64 // of those picked
	Short    float64 // by how much the share asked for isn't met; 0: met
	Sections int     // how many there are
	Taken    int     // how many were picked
}

// Pick is a choice of sections and what it comes to. After an escalation every
// figure counts what was tested before as well.
type Pick struct {
	IDs            []string // to be tested, in natural order
	Drawn          []string // the same in the order drawn; empty for somebody else's pick
	Earlier        []string // tested before, in natural order
	By             By
	Share          float64 // percent of the whole, reached
	All            Part    // the whole
	Of             []Part  // each class, in natural order
	Quotas         []Part  // each quota, in the order asked
	Representative Representative
	Seed           uint64
	Detect         []Detection
	Notes          []string // in words; the first says what was chosen among
}

// Problem is one thing wrong: where, what, and what to do about it.
type Problem struct{ Place, Text, Cure string }

func (p Problem) Error() string {
	s := p.Text
	if p.Place != "" {
		s = p.Place + ": " + s
	}
	if p.Cure != "" {
		s += "; " + p.Cure
	}
	return s
}

// Problems are all that is wrong. As an error it prints one a line.
type Problems []Problem

func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i, one := range p {
		lines[i] = one.Error()
	}
	return strings.Join(lines, "\n")
}

// Choose draws sections at random until the share and the quotas are met. The
// same sections and seed give the same pick, in whatever order they come. The
// error is Problems: a section without a name or named twice, a figure that
// can't be, nothing to measure.
func Choose(sections []Section, a Ask) (Pick, error) {
	sorted, err := ready(sections, a)
	if err != nil {
		return Pick{}, err
	}
	drawn := draw(sorted, nil, a)
	p := judge(sorted, set(drawn), a)
	p.Drawn, p.Seed = drawn, a.Seed
	p.IDs = ordered(drawn)
	return p, nil
}

// Escalate widens a sample that has failed: the first time (Ask.Escalated 0) by
// one more share of the whole, drawn from what hasn't been tested, after that by
// everything that is left of what the share and the quotas cover. To widen one
// class only, give the sections of that class. False: nothing is left to test.
func Escalate(sections []Section, tested []string, a Ask) (Pick, bool, error) {
	sorted, err := ready(sections, a)
	if err != nil {
		return Pick{}, false, err
	}
	if faults := known(sorted, tested); len(faults) > 0 {
		return Pick{}, false, faults
	}
	if a.Escalated < 0 {
		return Pick{}, false, Problems{{"escalated", fmt.Sprintf("%d is no number of times", a.Escalated), "write 0 or more"}}
	}
	before := set(tested)
	further := a
	if a.Escalated > 0 {
		further.Percent, further.Quotas = allOf(a)
	}
	drawn := draw(sorted, before, further)
	p := judge(sorted, set(append(slices.Clone(tested), drawn...)), a)
	p.Earlier, p.IDs, p.Drawn, p.Seed = ordered(tested), ordered(drawn), drawn, a.Seed
	switch {
	case len(drawn) == 0:
		p.Notes = append(p.Notes, "nothing is left to test")
	case a.Escalated > 0:
		p.Notes = append(p.Notes, "a widened sample has failed: everything left is to be tested")
	default:
		p.Notes = append(p.Notes, "the sample has failed: one more share is to be tested")
	}
	return p, len(drawn) > 0, nil
}

// allOf turns every share asked for into all of it.
func allOf(a Ask) (percent float64, quotas []Quota) {
	if a.Percent > 0 {
		percent = 100
	}
	for _, q := range a.Quotas {
		if q.Percent > 0 {
			q.Percent = 100
		}
		quotas = append(quotas, q)
	}
	return percent, quotas
}

func ordered(ids []string) []string {
	out := slices.Clone(ids)
	slices.SortFunc(out, byName)
	return slices.Compact(out)
}

func set(ids []string) map[string]bool {
	out := make(map[string]bool, len(ids))
	for _, id := range ids {
		out[id] = true
	}
	return out
}
