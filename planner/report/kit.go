package report

import (
	"fmt"
	"sort"
	"strings"

	"blankoff/planner"
	"blankoff/planner/job"
	"blankoff/planner/rig"
	"blankoff/planner/units"
	"blankoff/takeoff/terms"
)

// KitLine is one thing to have on site. What isn't worked out from the plan is
// common practice, no source, where none is named.
type KitLine struct {
	Group  string `json:"group"`
	What   string `json:"what"`
	Number int    `json:"number"` // 0: as needed
	Why    string `json:"why"`
}

// KitBlank is how many blanks of a size are needed.
type KitBlank struct {
	Size  string
	Fits  int // in all tests
	Makes int // in use at once
}

// spareFrom is the number of fits above which a size has a spare: an assumption,
// no source.
const spareFrom = 4

// AddKit lists what the tests need: the sections that have a place in the
// programme, and their blanks by size.
func (v *Plan) AddKit(p *planner.Plan, j job.Job, blanks []KitBlank) {
	k := &kit{v: v, sections: v.ToTest()}
	if len(k.sections) == 0 {
		v.Kit = []KitLine{}
		return
	}
	k.rigs(p)
	k.hoses(p)
	k.blanks(p, blanks)
	k.access(j)
	k.site(j)
	v.Kit = k.lines
}

// kit gathers lines.
type kit struct {
	v        *Plan
	sections []Section
	lines    []KitLine
}

func (k *kit) add(group, what string, number int, why string) {
	k.lines = append(k.lines, KitLine{group, what, number, why})
}

// rigs lists the rigs with the ranges that are used, and what proves them.
func (k *kit) rigs(p *planner.Plan) {
	used, unread := map[[2]string]int{}, 0
	suction := 0
	for i := range k.sections {
		s := &k.sections[i]
		if s.Range == "" {
			unread++
		}
		used[[2]string{s.Rig, s.Range}]++
		if s.Sign == "negative" {
			suction++
		}
	}
	for _, r := range p.Settings.Rigs {
		var ranges []string
		for _, one := range r.Ranges {
			if n := used[[2]string{r.Name, one.Name}]; n > 0 {
				ranges = append(ranges, fmt.Sprintf("%s for %s", one.Name, count(n, "section")))
			}
		}
		if len(ranges) > 0 {
			k.add("rig", r.Name, 1, "ranges "+strings.Join(ranges, ", "))
			k.add("rig", "certificates of calibration of "+r.Name+", flow and pressure", 2, "in date on every day of the tests; a copy goes with the records")
		}
	}
	if unread > 0 {
		k.add("rig", "another rig or range", 0, count(unread, "section")+" can't be judged with those of the plan; the plan names the cures")
	}
	if suction > 0 {
		k.add("rig", "the hose on the suction side", 0, count(suction, "section")+" tested at negative pressure")
	}
	k.add("rig", "zero of both instruments, and the rig's own leak blanked off at test pressure", 0, "checked before the first section of every day and written down")
}

// hoses lists the ways between rig and duct.
func (k *kit) hoses(p *planner.Plan) {
	var widths []string
	for _, r := range p.Settings.Rigs {
		for i := range r.Ranges {
			if h := r.Ranges[i].Hose; h != nil {
				widths = once(widths, hoseText(h, p.Settings.Units))
			}
		}
	}
	text := "its length and diameter aren't in the rig file: what it costs in pressure isn't counted"
	if len(widths) > 0 {
		text = strings.Join(widths, "; ") + ", as the rig file says; a longer or narrower one holds less pressure"
	}
	k.add("connection", "air hose with clamps", 1, text+"; short, straight, strapped at both ends")
	plates := map[string]int{}
	for i := range k.sections {
		if s := &k.sections[i]; s.RigFace != "" {
			plates[s.RigFace]++
		}
	}
	for _, size := range natural(plates) {
		k.add("connection", "adapter plate "+size+" for the hose", 1, "takes the place of a blank in "+count(plates[size], "section"))
	}
	k.add("connection", "tapping tube, fittings and plugs for test holes", 1, "kept apart from the air connection: each section says where the pressure is read")
	air := "20 C and 101 325 Pa"
	if p.Settings.Units == units.US {
		air = "68 F and 29.92 in. Hg" // the same air
	}
	k.add("connection", "thermometer and barometer", 2, "to turn a flow into reference air, "+air+", where that is asked for: write down both and say which figure is given")
}

func hoseText(h *rig.Hose, u units.System) string {
	return fmt.Sprintf("%s %s of %s %s", u.Figure(units.Length, h.LengthM, 4), u.Unit(units.Length), u.Figure(units.Size, h.DiameterM, 4), u.Unit(units.Size))
}

// natural lists the keys of a count in their natural order.
func natural(m map[string]int) []string {
	out := make([]string, 0, len(m))
	for key := range m {
		out = append(out, key)
	}
	sort.Slice(out, func(a, b int) bool {
		if terms.NaturalLess(out[a], out[b]) != terms.NaturalLess(out[b], out[a]) {
			return terms.NaturalLess(out[a], out[b])
		}
		return out[a] < out[b]
	})
	return out
}

// blanks lists the blanks by size with spares, and what holds them.
func (k *kit) blanks(p *planner.Plan, blanks []KitBlank) {
	fits := 0
	for _, b := range blanks {
		fits += b.Fits
		k.add("blanks", "blank "+b.Size, b.Makes, fmt.Sprintf("%s in all tests, at most %d at once", count(b.Fits, "fit"), b.Makes))
	}
	for _, b := range blanks {
		if b.Fits > spareFrom {
			k.add("blanks", "spare blank "+b.Size, 1, fmt.Sprintf("fitted more than %d times (assumption, no source)", spareFrom))
		}
	}
	if k.v.Programme != nil && k.v.Programme.AtLeast {
		k.add("blanks", "blanks of the groupings", 0, "not known: their rows name no neighbours; count the ends on the drawing")
	}
	if p.Settings.SlipJoints == "bladder" {
		k.add("blanks", "bladders with pump and gauge", 0, "slip joints are blanked with them; no one stands in front of one under pressure")
	}
	known := count(fits, "fit")
	if k.v.Programme != nil && k.v.Programme.AtLeast {
		known = strings.TrimPrefix(known+" and those of the groupings", "0 fits and ")
	}
	k.add("blanks", "gaskets, bolts or clamps, and sealant for the blanks", 0, known+"; film and tape alone don't hold (German association of duct makers, as reported)")
	k.add("blanks", "sealant of the kind that the ductwork has, and gaskets", 0, "for repairs; the job's curing time comes before a retest")
	k.add("blanks", "tags with the section's name, one to a blank", fits, "so that none is left in: count them out and in")
}

// access lists the ways up to the blanks, level by level.
func (k *kit) access(j job.Job) {
	at, minutes := map[string]int{}, j.Prices.Access
	for i := range k.sections {
		for _, b := range k.sections[i].Blanks {
			at[b.Level]++
		}
	}
	for _, level := range natural(at) {
		where := level
		if where == "" {
			where = "a level that the schedule doesn't say"
		}
		why := count(at[level], "blank") + " to fit and take off: ladders, towers or platforms as the site's rules ask"
		if m := minutes[level]; m > 0 {
			why += fmt.Sprintf("; %g min more for each in the job file", m)
		}
		k.add("access", "way up on "+where, 0, why)
	}
}

// site lists what the site gives, and the papers.
func (k *kit) site(j job.Job) {
	k.add("leaks", "soap solution, brush, lamp and mirror", 1, "to find leaks while the pressure is held; mark them before anything is sealed")
	k.add("leaks", "smoke", 0, "only once whoever holds the fire alarm has agreed")
	k.add("power", "supply at every place of the rig, with the plug that fits", 1, "over a residual-current device (30 mA), or at the reduced voltage that the site asks for")
	k.add("power", "lighting at the rig and at the blanks", 0, "risers, shafts and ceilings before lights are in")
	k.add("papers", "cards of the sections, and the marked drawings", len(k.sections), "one to a section; write the readings on them")
	if o := k.v.Programme; j.Witness != "" && o != nil {
		k.add("papers", "notice to the witness", len(o.Stays), j.Witness+"; the programme says by when")
	}
}
