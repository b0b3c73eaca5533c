package report

import (
	"math"
	"slices"

	"blankoff/fittings"
	"blankoff/planner"
	"blankoff/planner/sampling"
)

// Sample is which of the planned sections are tested where a share is asked for.
type Sample struct {
	Percent  float64      `json:"percent"`
	By       string       `json:"by"` // area, length, joint length
	Unit     string       `json:"unit"`
	PerClass bool         `json:"per_class"`
	Seed     uint64       `json:"seed"`
	IDs      []string     `json:"sections"`
	Share    float64      `json:"share_percent"` // reached
	Parts    []SamplePart `json:"by_class"`
	Detect   []Detection  `json:"chances"`
	Earlier  []string     `json:"tested_before"`
	Checked  bool         `json:"somebody_elses"` // somebody else's pick, checked
	Problems []string     `json:"problems"`       // of somebody else's pick
	Regime   *Regime      `json:"regime,omitempty"`
	Flags    []string     `json:"flags"` // why it may not be representative
	Notes    []string     `json:"notes"`
}

// SamplePart is the share of one class.
type SamplePart struct {
	Name     string  `json:"name"`
	Sections int     `json:"sections"`
	Taken    int     `json:"taken"`
	Share    float64 `json:"share_percent"`
	Asked    float64 `json:"asked_percent"` // 0: nothing was asked of this part by itself
}

// Detection is the chance that the sample holds a bad section, if so many are.
type Detection struct {
	BadPercent float64 `json:"bad_percent"`
	Bad        int     `json:"bad_sections"`
	Chance     float64 `json:"chance"` // 0 to 1
}

// Regime is what a rule of some country or contract asks for.
type Regime struct {
	Name      string   `json:"name"`
	Title     string   `json:"title"`
	When      string   `json:"when"`
	Who       string   `json:"who"`
	OnFailure string   `json:"on_failure"`
	Source    string   `json:"source"`
	Sureness  string   `json:"sureness"`
	Notes     []string `json:"notes"`
}

// SampleAsk is what is asked of a sample: a share, drawn; or somebody else's
// pick, checked; or, after a failure, what comes on top of what was tested.
type SampleAsk struct {
	sampling.Ask
	Regime *sampling.Preset
	Picked []string // somebody else's pick
	Tested []string // tested before, of which one failed
}

// AddSample adds a sample of a plan's sections to its view. The error says what
// was wrong with what was asked.
func (v *Plan) AddSample(p *planner.Plan, a SampleAsk) error {
	var pick sampling.Pick
	var problems []sampling.Problem
	var err error
	sections := sampled(p)
	a.Ask.Units = p.Settings.Units
	switch {
	case len(a.Picked) > 0:
		if err = sampling.Unknown(sections, a.Picked); err != nil {
			return err
		}
		pick, problems = sampling.Check(sections, a.Picked, a.Ask)
	case len(a.Tested) > 0:
		pick, _, err = sampling.Escalate(sections, a.Tested, a.Ask)
	default:
		pick, err = sampling.Choose(sections, a.Ask)
	}
	if err != nil {
		return err
	}
	s := &Sample{Percent: a.Percent, By: a.By.String(), Unit: a.By.Unit(), PerClass: a.PerClass, Seed: a.Seed,
		IDs: list(pick.IDs), Earlier: list(pick.Earlier), Checked: len(a.Picked) > 0, Share: finite(pick.Share),
		Parts: []SamplePart{}, Detect: []Detection{}, Problems: []string{}, Flags: list(pick.Representative.Flags), Notes: list(pick.Notes)}
	s.addParts(&pick)
	for _, d := range pick.Detect {
		s.Detect = append(s.Detect, Detection{d.Bad * 100, d.Sections, finite(d.Chance)})
	}
	for _, one := range problems {
		s.Problems = append(s.Problems, one.Error())
	}
	if r := a.Regime; r != nil {
		s.Regime = &Regime{r.Name, r.Title, r.When, r.Who, r.OnFailure, r.Source, r.Sureness, list(r.Notes)}
	}
	if v.whole == nil {
		v.whole = v.Blanking
	}
	v.Sample = s
	v.follow(p)
	return nil
}

// addParts lists the classes and the quotas that there is something of, each name
// once: with what was asked of it, if anything was.
func (s *Sample) addParts(pick *sampling.Pick) {
	quotas := map[string]bool{}
	for _, q := range pick.Quotas {
		quotas[q.Name] = true
	}
	for _, part := range slices.Concat(pick.Of, pick.Quotas) {
		if part.Sections == 0 || part.Asked == 0 && quotas[part.Name] {
			continue
		}
		s.Parts = append(s.Parts, SamplePart{part.Name, part.Sections, part.Taken, finite(part.Share), part.Asked})
	}
	if len(s.IDs)+len(s.Earlier) == 0 {
		s.Flags = []string{} // nothing has no likeness
	}
}

// finite makes 0 of what couldn't be worked out, because JSON has no word for it.
func finite(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return v
}

// sampled turns a plan's sections to what a sample is drawn from.
func sampled(p *planner.Plan) []sampling.Section {
	var out []sampling.Section
	for i := range p.Sections {
		s := &p.Sections[i]
		o := sampling.Section{ID: s.ID, Class: s.Class.Name, System: s.System, Area: s.Area, JointLength: s.JointLength}
		shapes := map[string]float64{}
		for _, sp := range p.Spans(s) {
			it := &p.Takeoff.Items[sp.Item]
			shapes[it.Piece.Shape.String()] += sp.Area
			if it.Piece.Kind == fittings.Straight {
				o.Straights += sp.Area
				o.Length += it.Length() * float64(it.Quantity) * float64(sp.To-sp.From+1) / float64(max(sp.Of, 1))
			} else {
				o.Fittings += sp.Area
			}
			o.Main = o.Main || it.Parent < 0
		}
		for _, shape := range []string{"rectangular", "circular", "flat-oval"} {
			if o.Shape == "" || shapes[shape] > shapes[o.Shape] {
				o.Shape = shape
			}
		}
		out = append(out, o)
	}
	return out
}
