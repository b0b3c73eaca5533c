package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"blankoff/planner"
	"blankoff/planner/job"
	"blankoff/planner/partition"
	"blankoff/planner/tightness"
	"blankoff/takeoff/terms"
)

// planOptions are the flags of the commands that plan.
type planOptions struct {
	rigs                  []string
	aim, format, out, job string
	cuts, keep            string
	on                    string
	pressureGiven         bool
	told                  job.Job // the job file, or what goes without one
	sample                sampleOptions
	measure               measureOptions
	set                   planner.Settings
}

func newPlanOptions() *planOptions {
	return &planOptions{set: planner.Defaults(), told: job.Defaults()}
}

// flags puts the flags on a command.
func (o *planOptions) flags(c *cobra.Command) {
	f := c.Flags()
	f.StringArrayVar(&o.rigs, "rig", nil, "rig `FILE` (TOML): measuring ranges, accuracy, fan curve; several rigs: once for each")
	f.StringVar(&o.cuts, "cuts", "", "your own cuts, `FILE` (CSV: tag, piece, next_tag, next_piece): judged, and completed in the best way")
	f.StringVar(&o.keep, "keep", "", "keep to an earlier plan, its plan.json `FILE`: sections with the status agreed, tested or passed stay, and as few others move as can")
	f.StringVar(&o.job, "job", "", "job `FILE` (TOML): what heads the pages, hold, notice, the programme of a day, prices of blanking in minutes, access by level")
	f.StringVar(&o.set.Scheme, "scheme", o.set.Scheme, "tightness scheme of rows that name none: "+strings.Join(tightness.Names(), ", ")+", or a `FILE` of your own (TOML)")
	f.StringVar(&o.set.Class, "class", "", "tightness class of rows that have none")
	f.Float64Var(&o.set.TestPa, "test-pressure", 0, "test pressure of rows that have none, `PA`")
	f.StringVar(&o.set.Sign, "sign", o.set.Sign, "positive or negative, for rows that don't say")
	f.Float64Var(&o.set.DuctClass, "duct-class", 0, "pressure class of duct on rows that don't state it, `PA`")
	f.StringVar(&o.aim, "aim", "tests", "tests (fewest) or time (least in all)")
	f.Float64Var(&o.set.TestMinutes, "test-minutes", o.set.TestMinutes, "time of one test in place, `MIN`, its set-up and hold in it: an assumption to be replaced by your own")
	f.Float64Var(&o.set.MinArea, "min-area", 0, "a section smaller than this counts as under range, `M2`")
	f.Float64Var(&o.set.MaxArea, "max-area", 0, "no section larger than this, `M2`")
	f.Float64Var(&o.set.Headroom, "headroom", o.set.Headroom, "how many times its limit a section may leak and still be read, an assumption to be replaced by your own")
	o.measure.flags(c)
	o.measure.door.refusedFlag(c)
	f.BoolVar(&o.set.HoldBoth, "hold-both", false, "hold sections to the exact area as well as to the basis: the larger at the rig's upper end, the smaller at its lower end and for the limit")
	f.StringVar(&o.set.SlipJoints, "slip-joints", o.set.SlipJoints, "open or bladder: they may be blanked; made-up: they can't")
	f.StringVar(&o.set.PressureRule, "pressure-rule", "", "for rows without a test pressure: design, the highest usual step that their design_pa allows; or operating, the mean operating_pa of their system")
	f.StringVar(&o.set.By, "by", "", "end sections at every change of this: level or stage")
	f.StringVar(&o.on, "on", "", "the `DAY` of the plan, as the schedule writes days: what isn't up by then is left out, and what can be tested on it is named")
	o.sample.flags(c)
	f.StringVar(&o.format, "format", "table", "table or json")
	f.StringVarP(&o.out, "out", "o", "", "write the plan pack into folder `DIR`")
}

// given notes which flags were given and aren't only the default.
func (o *planOptions) given(c *cobra.Command) {
	o.set.SignGiven, o.set.SchemeGiven = c.Flags().Changed("sign"), c.Flags().Changed("scheme")
	o.pressureGiven = c.Flags().Changed("test-pressure")
}

// settle checks the flags and reads the rig.
func (o *planOptions) settle() ([]string, error) {
	if err := oneOf("format", o.format, "table", "json"); err != nil {
		return nil, err
	}
	if err := oneOf("aim", o.aim, "tests", "time"); err != nil {
		return nil, err
	}
	if err := oneOf("by", o.set.By, "", "level", "stage"); err != nil {
		return nil, err
	}
	if err := o.sample.settle(); err != nil {
		return nil, err
	}
	var err error
	if o.set.Units, err = parseUnits(o.measure.units); err != nil {
		return nil, err
	}
	sign, ok := terms.ParseSign(o.set.Sign)
	if !ok || sign == "" {
		return nil, misuse{fmt.Errorf("--sign %q: expected positive or negative", o.set.Sign)}
	}
	o.set.Sign = sign
	on, ok := terms.ParseMoment(o.on)
	if !ok {
		return nil, misuse{fmt.Errorf("--on %q: expected a date as 2026-03-14, or the number of a day or stage", o.on)}
	}
	o.set.On = on
	if o.aim == "time" {
		o.set.Aim = partition.Time
	}
	if o.pressureGiven && !(o.set.TestPa > 0) {
		return nil, misuse{fmt.Errorf("--test-pressure %g: expected more than 0 Pa; the side goes in --sign", o.set.TestPa)}
	}
	if o.keep != "" && o.cuts != "" {
		return nil, misuse{errors.New("--keep and --cuts say two things of where to cut; give one of the two")}
	}
	if o.set.HoldBoth && o.measure.basis == "exact" {
		return nil, misuse{hint{errors.New("--hold-both holds the exact area beside another basis, and none was given"), "add --basis"}}
	}
	notes, err := o.readFiles()
	if err != nil {
		return nil, err
	}
	if err := o.set.Check(); err != nil {
		return nil, misuse{err}
	}
	return notes, nil
}

// readFiles reads the scheme, the job and the rigs that the flags name.
func (o *planOptions) readFiles() (notes []string, err error) {
	s, err := readScheme(o.set.Scheme)
	if err != nil {
		return nil, err
	}
	o.set.Scheme, o.set.Own = s.Name, s
	if o.job != "" {
		j, err := readJob(o.job)
		if err != nil {
			return nil, err
		}
		o.told, o.set.Prices, o.set.Ahead = j, j.Prices, j.Ahead
		if err := o.checkTimes(); err != nil {
			return nil, err
		}
	}
	if len(o.rigs) == 0 {
		o.rigs = []string{""}
	}
	for _, path := range o.rigs {
		r, said, err := readRig(path)
		if err != nil {
			return nil, err
		}
		o.set.Rigs, notes = append(o.set.Rigs, r), append(notes, said...)
	}
	for i, r := range o.set.Rigs {
		for _, other := range o.set.Rigs[:i] {
			if r.Name == other.Name {
				return nil, misuse{hint{fmt.Errorf("two rigs are called %q", r.Name), "give each its own name in its file, so that the plan can say which is meant"}}
			}
		}
	}
	return notes, nil
}

// checkTimes refuses a set-up or a hold of the job file that has no room in a
// test.
func (o *planOptions) checkTimes() error {
	p := o.told.Programme
	p.TestMinutes = o.set.TestMinutes
	if err := p.Check(); err != nil && (o.told.Own("set_up") || o.told.Own("hold")) {
		return misuse{hint{fmt.Errorf("job file %s: %w", o.job, err), fmt.Sprintf("give --test-minutes %g or more, or mend set_up and hold in the job file", p.SetUp+p.Hold)}}
	}
	return nil
}
