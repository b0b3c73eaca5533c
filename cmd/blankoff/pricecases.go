package main

import (
	"fmt"
	"path/filepath"

	"blankoff/planner"
	"blankoff/planner/report"
	"blankoff/planner/rig"
	"blankoff/planner/whatif"
	"blankoff/takeoff"
)

// shares are the samples that are set beside a bill, percent.
var shares = []float64{10, 25, 100}

// cases are what is set beside a bill: itself, samples, one class tighter, each
// rig alone, other rigs, the client's own blanks, and an earlier revision.
func (o *priceOptions) cases(path string, v *report.Plan, p *planner.Plan, s *screen) ([]report.PriceCase, error) {
	own := report.PriceCase{Name: "as asked", View: v, Plan: p, Sample: o.sample.ask}
	if v.Sample == nil {
		own.Name = "as asked, all tested"
	}
	list := []report.PriceCase{own}
	for _, percent := range shares {
		c := o.share(p, percent)
		if percent < 100 || v.Sample != nil {
			list = append(list, c)
		}
	}
	client := own
	client.Name, client.OwnBlanks, client.Note = "client's own blanks", true, "blanks made, fitted and taken off by others: neither their money nor their time is in it"
	if o.keep != "" { // the others would be planned without keeping to it
		list[0].Note = "other classes, rigs and revisions aren't set beside it: they would be planned without keeping to the earlier plan"
		return append(list, client), nil
	}
	list, err := o.others(path, v, list, s)
	if err != nil {
		return nil, err
	}
	list = append(list, client)
	if o.revision != "" {
		old := o.only(o.revision, o.set, s, "revision "+filepath.Base(o.revision))
		old.Earlier = true
		list = append(list, old)
	}
	return list, nil
}

// others adds plans of the same schedule under other assumptions.
func (o *priceOptions) others(path string, v *report.Plan, list []report.PriceCase, s *screen) ([]report.PriceCase, error) {
	others, err := whatif.Run(o.base(path, o.set, s), whatif.Asked{Tighter: true})
	if err != nil {
		return nil, err
	}
	for _, x := range others[1:] {
		c := o.caseOf(x)
		list = append(list, c)
		if x.Name == "one class tighter" && c.Why == "" && len(c.View.Sections) > 0 {
			list[len(list)-1].Note = "as if it were built to the tighter class"
			c.Name, c.Shift = "one class tighter, built no better", tighterBy(v, c.View)
			c.Note = fmt.Sprintf("the same leaks against limits %.3g times smaller", c.Shift)
			list = append(list, c)
		}
	}
	for _, file := range o.otherRigs {
		r, _, err := readRig(file)
		if err != nil {
			return nil, err
		}
		set := o.set
		set.Rigs = rig.Fleet{r}
		list = append(list, o.only(path, set, s, "rig "+r.Name+" instead"))
	}
	return list, nil
}

// base is what plans under other assumptions start from.
func (o *priceOptions) base(path string, set planner.Settings, s *screen) whatif.Base {
	return whatif.Base{Settings: set, PieceLength: o.measure.pieceLength, Read: func(pieceLength float64) (*takeoff.Takeoff, error) {
		options, err := o.measure.settle()
		if err != nil {
			return nil, err
		}
		options.PieceLength = pieceLength
		return measured(path, &o.measure.door, options, s.progress)
	}}
}

// only plans one schedule with its settings.
func (o *priceOptions) only(path string, set planner.Settings, s *screen, name string) report.PriceCase {
	b := o.base(path, set, s)
	t, err := b.Read(b.PieceLength)
	if err != nil {
		return report.PriceCase{Name: name, Why: err.Error()}
	}
	p, err := planner.Make(t, set)
	x := whatif.Variant{Name: name, Plan: p}
	if err != nil {
		x.Plan, x.Why = nil, err.Error()
	}
	return o.caseOf(x)
}

// caseOf makes the view of a plan, with the sample that is asked for.
func (o *priceOptions) caseOf(x whatif.Variant) report.PriceCase {
	c := report.PriceCase{Name: x.Name, Plan: x.Plan, Why: x.Why, Sample: o.sample.ask}
	if x.Plan == nil {
		return c
	}
	c.View = report.Of(x.Plan)
	if o.sample.wanted() {
		if err := c.View.AddSample(x.Plan, o.sample.ask); err != nil {
			c.Why = err.Error()
			return c
		}
	}
	o.addJob(x.Plan, c.View)
	return c
}

// share is the bill's own plan with another sample.
func (o *priceOptions) share(p *planner.Plan, percent float64) report.PriceCase {
	c := report.PriceCase{Name: fmt.Sprintf("sample of %g %%", percent), View: report.Of(p), Plan: p}
	if percent == 100 {
		c.Name = "all tested"
	} else {
		c.Sample.Percent, c.Sample.By, c.Sample.Seed = percent, o.sample.ask.By, o.sample.ask.Seed
		if err := c.View.AddSample(p, c.Sample); err != nil {
			c.Why = err.Error()
			return c
		}
	}
	o.addJob(p, c.View)
	return c
}

// tighterBy is how many times smaller the limits of one view are than those of
// another, by m2.
func tighterBy(v, tighter *report.Plan) float64 {
	perM2 := func(v *report.Plan) float64 {
		limit, area := 0.0, 0.0
		for i := range v.Sections {
			limit, area = limit+v.Sections[i].Limit, area+v.Sections[i].Area
		}
		return limit / area
	}
	return perM2(v) / perM2(tighter)
}
