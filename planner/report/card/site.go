package card

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// strong is the force on a blank from which it is braced, N: the weight of about
// 50 kg. An assumption, no source.
const strong = 500

// fixing says how a blank is held. Common practice, no source.
func fixing(b *report.Blank) string {
	round := b.Shape == "circular"
	switch {
	case b.Force >= strong && round:
		return "screwed all round, strapped across"
	case b.Force >= strong:
		return "bolted at every hole, braced across"
	case round:
		return "screwed at 4 points, sealed"
	case b.Why == "open end":
		return "clamped all round, sealed"
	}
	return "bolted to the flange, gasket"
}

// checks are ticked before the pressure is raised. Common practice, no source.
func checks(s *report.Section) []string {
	list := []string{
		fmt.Sprintf("all blanks fitted and looked at from outside: %s", show.Blanks(s)),
		"access doors and test holes closed",
		"certificates of flow and pressure in date",
		"rig blanked off: its own leak read and noted",
		"both instruments zeroed before the tubes go on",
	}
	if s.Sign == "negative" {
		list = append(list, "hose on the suction side of the fan, tubes changed over")
	}
	return append(list,
		"pressure tapping away from the air connection",
		"temperature and air pressure read",
		"supply through a 30 mA device or at the site's reduced voltage",
		"nobody in front of a blank; area closed off",
	)
}

// boxes are filled in at every test.
func boxes(u units.System) []string {
	air, pressure := "air, degrees C", "air pressure, hPa"
	if u == units.US {
		air, pressure = "air, degrees F", "air pressure, in. Hg"
	}
	return []string{"pressure reached, " + u.Unit(units.Pressure), "leakage read, " + u.Unit(units.Flow), "held from - to", air, pressure}
}

// kit is filled in once a card: what was measured with. Reports of a test are
// asked for the instruments and their certificates.
func kit() []string {
	return []string{"rig, serial no.", "flow: instrument, serial no., in date until", "pressure: instrument, serial no., in date until"}
}

func signs() []string { return []string{"tested by", "witnessed by", "date"} }

// cautions are the usual ones on a card.
func cautions(s *report.Section, u units.System) []string {
	list := []string{fmt.Sprintf("Never above %s: begin with the fan throttled, raise the pressure slowly, and let it down before touching a blank.", u.Pressure(s.TestPa))}
	if b, ok := show.Largest(s.Blanks); ok && b.Force > 0 {
		list = append(list, fmt.Sprintf("The %s blank is pushed with %s, the weight of %s.", b.Text, u.Force(b.Force), u.Weight(b.Force/9.80665)))
	}
	if s.WidestForce > 0 {
		list = append(list, fmt.Sprintf("A blank on its largest opening, %s, is pushed with %s, the weight of %s; a smaller one with test pressure x area.", s.Widest, u.Force(s.WidestForce), u.Weight(s.WidestForce/9.80665)))
	}
	return append(list, "The specification, local codes and licensed practitioners come first.")
}

// mostBlanks is how many lines of blanks a card has room for.
const mostBlanks = 12

// every lists the openings to close.
func every(v *report.Plan, s *report.Section) []Blank {
	out := make([]Blank, len(s.Blanks))
	rig, tap := false, false // told of one blank only: both sides of a cut may be in one section
	for k := range s.Blanks {
		b := &s.Blanks[k]
		out[k] = Blank{
			Number: strconv.Itoa(k + 1), Size: b.Text, At: b.At, Where: Place(b.Level, b.Place, b.Drawing), Level: b.Level, Place: b.Place, Drawing: b.Drawing, Kind: kind(v, s, k),
			Force: v.Units.Force(b.Force), Fixing: fixing(b),
			Rig: !rig && at(s.RigAt, b.At), Tap: !tap && at(s.TapAt, b.At),
		}
		rig, tap = rig || out[k].Rig, tap || out[k].Tap
	}
	return out
}

// at says whether a place, told with its size and level, is that of a blank.
func at(told, blank string) bool { return told == blank || strings.HasPrefix(told, blank+", ") }

// decided is the job's word for the rule by which a reading at the limit is
// judged: a fact of the test, not of the job.
const decided = "decision"

// site says where the rig and the tapping go, what one end left open would leak,
// and, where a job file says so, how long to hold and how to judge.
func site(v *report.Plan, s *report.Section) []Fact {
	var out []Fact
	for _, f := range []Fact{{RigAt, s.RigAt}, {TapAt, s.TapAt}, {"an open end", s.OpenEnd}} {
		if f.Value != "" {
			out = append(out, f)
		}
	}
	switch p := v.Programme; {
	case v.Job != nil && v.Job.Hold > 0:
		out = append(out, Fact{"hold", fmt.Sprintf("%g min at the test pressure", v.Job.Hold)})
	case p != nil && p.Hold > 0:
		out = append(out, Fact{"hold", fmt.Sprintf("%g min at the test pressure, an assumption: the specification comes first", p.Hold)})
	}
	if v.Job != nil && v.Job.Decision != "" {
		out = append(out, Fact{decided, v.Job.Decision})
	}
	return out
}

// At is the name of a fact, with the number of its blank where it is about one:
// "rig at blank 4".
func (c *Card) At(f Fact) string {
	for i := range c.EveryBlank {
		b := &c.EveryBlank[i]
		if f.Name == RigAt && b.Rig || f.Name == TapAt && b.Tap {
			return f.Name + " blank " + b.Number
		}
	}
	return f.Name
}

// jobOf is the job as the job file says it.
func jobOf(v *report.Plan) []Fact {
	var out []Fact
	for _, l := range v.Job.Lines() {
		if l.Word != decided {
			out = append(out, Fact{l.Word, l.Text})
		}
	}
	return out
}

// OpenEnd is the kind of a blank on an end with nothing on it.
const OpenEnd = "open end"

// Group is the kind without its number: "cut", "end of scope" or "open end".
func (b *Blank) Group() string {
	if strings.HasPrefix(b.Kind, "cut ") {
		return "cut"
	}
	return b.Kind
}

// Spot is the place by itself, or the level where none is said.
func (b *Blank) Spot() string { return or(b.Place, b.Level) }

// kind says what a blank is for: a cut has its number on the drawing, and the
// section beyond it.
func kind(v *report.Plan, s *report.Section, k int) string {
	switch b := &s.Blanks[k]; {
	case b.Cut > 0 && b.Cut <= len(v.Cuts):
		parts := v.Cuts[b.Cut-1].Parts
		beyond := parts[0]
		if beyond == s.ID {
			beyond = parts[1]
		}
		if beyond == s.ID { // a ring that is cut at one joint only
			if slices.ContainsFunc(s.Blanks[:k], func(o report.Blank) bool { return o.Cut == b.Cut }) {
				return fmt.Sprintf("cut %d, 2nd side", b.Cut)
			}
			return fmt.Sprintf("cut %d, 1st side", b.Cut)
		}
		return fmt.Sprintf("cut %d, to %s", b.Cut, beyond)
	case b.Why == "scope":
		return "end of scope"
	}
	return s.Blanks[k].Why
}

// grouped is a list of blanks that has room on a card: where there are too many,
// open ends of one size and fixing stand on one line, then cuts and ends of scope
// too, then the rest is counted.
func grouped(every []Blank) []Blank {
	out := every
	if len(out) > mostBlanks {
		out = together(every, func(b *Blank) bool { return b.Kind == OpenEnd })
	}
	if len(out) > mostBlanks {
		out = together(every, func(*Blank) bool { return true })
	}
	if rest := len(out) - mostBlanks + 1; rest > 1 {
		out = append(out[:mostBlanks-1:mostBlanks-1], Blank{Number: "...", At: fmt.Sprintf("and %d more lines, listed in plan.xlsx", rest)})
	}
	return out
}

// Alike is what blanks on one line have in common.
type Alike struct{ Size, Kind, Force, Fixing string }

// Alike is that of a blank.
func (b *Blank) Alike() Alike { return Alike{b.Size, b.Group(), b.Force, b.Fixing} }

// together puts those blanks of one size, kind and fixing on one line that may
// be.
func together(every []Blank, may func(*Blank) bool) []Blank {
	var lines [][]Blank
	at := map[Alike]int{}
	for i := range every {
		b := &every[i]
		k, ok := at[b.Alike()]
		if !ok || !may(b) {
			k = len(lines)
			lines = append(lines, nil)
			if may(b) {
				at[b.Alike()] = k
			}
		}
		lines[k] = append(lines[k], *b)
	}
	out := make([]Blank, len(lines))
	for k, each := range lines {
		if out[k] = each[0]; len(each) > 1 {
			out[k] = many(each)
		}
	}
	return out
}

// many is a line of blanks that are alike.
func many(each []Blank) Blank {
	b := Blank{Size: each[0].Size, Kind: each[0].Group(), Force: each[0].Force, Fixing: each[0].Fixing, Number: fmt.Sprintf("%d of them", len(each))}
	lead := Lead(each)
	b.At = strings.TrimSpace(lead + " each of")
	for i := range each {
		if i == mostEach {
			b.Each = append(b.Each, fmt.Sprintf("and %d more, listed in plan.xlsx", len(each)-i))
			break
		}
		e := &each[i]
		mark := ""
		switch {
		case e.Rig:
			mark = " (rig)"
		case e.Tap:
			mark = " (tapping)"
		}
		b.Each = append(b.Each, e.Number+" "+Place(strings.TrimSpace(strings.TrimPrefix(e.At, lead)), e.Spot())+mark)
	}
	return b
}

// mostEach is how many blanks a line of many names.
const mostEach = 60

// Lead is how the places of blanks all begin: "free end of", or nothing.
func Lead(each []Blank) string {
	lead, _, ok := strings.Cut(each[0].At, " of ")
	for i := range each {
		ok = ok && strings.HasPrefix(each[i].At, lead+" of ")
	}
	if !ok {
		return ""
	}
	return lead + " of"
}
