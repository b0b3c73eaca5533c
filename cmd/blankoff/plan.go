package main

import (
	"io"

	"github.com/spf13/cobra"

	"blankoff/planner"
	"blankoff/planner/report"
	"blankoff/planner/report/csvout"
	"blankoff/planner/report/html"
	"blankoff/planner/report/jsonout"
	"blankoff/planner/report/pdf"
	"blankoff/planner/report/show"
	"blankoff/planner/report/text"
	"blankoff/planner/report/xlsx"
	"blankoff/takeoff"
)

func newPlan() *cobra.Command {
	o := newPlanOptions()
	c := &cobra.Command{
		Use:   "plan SCHEDULE --rig RIG.toml",
		Short: "Divide the ductwork into test sections that the rig can judge",
		Long: `plan measures a schedule, divides the ductwork into connected test sections
whose permitted leakage the rig can read, and lists where to blank off. The plan
has the fewest sections over range, then the fewest under range, then the fewest
tests, then the least blanking time (--aim time: the least time in all), and
says how that is known.

` + exitPlan,
		Example: `  blankoff plan schedule.csv --rig rig.toml --class B --test-pressure 500
  blankoff plan schedule.xlsx --rig rig.toml --aim time -o plan-pack`,
		Args: oneSchedule,
		RunE: func(c *cobra.Command, args []string) error {
			o.given(c)
			return runPlan(args[0], o, screenOf(c))
		},
	}
	o.flags(c)
	return c
}

// make plans, keeping to an earlier plan or around a person's own cuts where
// they are given, and builds the view. Without a plan the error says why; with
// one it says that nothing is left to plan.
func (o *planOptions) make(t *takeoff.Takeoff, notes []string) (*planner.Plan, *report.Plan, error) {
	cuts, cutFaults, err := readCuts(o.cuts)
	if err != nil {
		return nil, nil, err
	}
	o.set.OwnCuts = cuts
	old, err := readOld(o.keep)
	if err != nil {
		return nil, nil, err
	}
	plan := planner.Make
	switch {
	case old != nil:
		plan = func(t *takeoff.Takeoff, set planner.Settings) (*planner.Plan, error) {
			return planner.Keep(t, set, *old)
		}
	case o.cuts != "":
		plan = planner.JudgeCuts
	}
	p, err := plan(t, o.set)
	if p == nil { // a setting can't be used
		return nil, nil, misuse{err}
	}
	p.Notes, p.Faults = append(p.Notes, notes...), append(p.Faults, cutFaults...)
	view := report.Brief
	switch {
	case o.out != "":
		view = report.Of
	case o.format != "json":
		view = report.Short
	}
	v := view(p)
	if old != nil {
		v.AddKept(p, *old)
	}
	if o.sample.wanted() && err == nil {
		if err := v.AddSample(p, o.sample.ask); err != nil {
			return nil, nil, misuse{err}
		}
	}
	o.addJob(p, v)
	return p, v, err
}

// addJob adds what the job file says, how the tests fill the days, and what they
// need.
func (o *planOptions) addJob(p *planner.Plan, v *report.Plan) {
	if o.job != "" {
		v.AddJob(o.told)
	}
	makes := map[report.Face]int{}
	var order []string
	if b := v.Blanking; b != nil {
		order = b.Order
		for i := range b.Sizes {
			makes[b.Sizes[i].Face] = b.Sizes[i].Makes
		}
	}
	v.AddProgramme(o.told, order)
	var sizes []report.KitBlank
	for _, s := range show.BySize(v.ToTest()) {
		sizes = append(sizes, report.KitBlank{Size: s.Text, Fits: s.Fits(), Makes: max(1, makes[s.Face])})
	}
	v.AddKit(p, o.told, sizes)
}

// planned reads a schedule and plans it. Its faults are told here.
func (o *planOptions) planned(path string, notes []string, s *screen) (*takeoff.Takeoff, *planner.Plan, *report.Plan, error) {
	t, err := readTakeoff(path, &o.measure, s.progress)
	if err != nil {
		return nil, nil, nil, err
	}
	if err := planner.Oversize(t); err != nil {
		return nil, nil, nil, err
	}
	o.set.Progress = s.planning
	p, v, err := o.make(t, notes)
	if p == nil {
		return nil, nil, nil, err
	}
	if e := text.Faults(s.faults, v.Faults); e != nil {
		return nil, nil, nil, e
	}
	return t, p, v, err
}

// inputs are the files that the command reads.
func (o *planOptions) inputs(path string) []string {
	list := []string{path, o.job, o.cuts, o.keep, o.measure.basis, o.set.Scheme, o.sample.regime}
	return append(append(list, o.rigs...), o.measure.door.inputs()...)
}

func runPlan(path string, o *planOptions, s *screen) error {
	defer s.done()
	notes, err := o.settle()
	if err != nil {
		return err
	}
	input := o.inputs(path)
	if err := o.measure.door.apart(o.out, input); err != nil {
		return err
	}
	t, p, v, err := o.planned(path, notes, s)
	if err != nil {
		return err
	}
	if err := o.measure.door.writeRefused(path, t, input, s.talk); err != nil {
		return err
	}
	if o.out != "" {
		pack := planPack(v)
		if d, ok, err := o.measure.door.refusedDocument(path, t); err != nil {
			return err
		} else if ok {
			pack = append(pack, d)
		}
		if err := writePack(o.out, input, s.told(pack), s.talk); err != nil {
			return err
		}
	}
	s.done()
	if o.format == "json" {
		err = jsonout.Write(s.answer, v)
	} else {
		err = emphasised(s.answer, func(w io.Writer) error { return text.Plan(w, v) })
	}
	if err != nil {
		return err
	}
	if p.Partly() {
		return errPartly
	}
	return nil
}

// planPack is the documents of plan -o.
func planPack(v *report.Plan) []document {
	pack := []document{
		{"plan.json", func(w io.Writer) error { return jsonout.Write(w, v) }},
		{"plan.xlsx", func(w io.Writer) error { return xlsx.Plan(w, v) }},
		{"plan.html", func(w io.Writer) error { return html.Plan(w, v) }},
		{"cards.pdf", func(w io.Writer) error { return pdf.Cards(w, v) }},
		{"sections.csv", func(w io.Writer) error { return csvout.Sections(w, v) }},
		{"cuts.csv", func(w io.Writer) error { return csvout.Cuts(w, v) }},
		{"blanks.csv", func(w io.Writer) error { return csvout.Blanks(w, v) }},
		{"moves.csv", func(w io.Writer) error { return csvout.Moves(w, v) }},
		{"programme.csv", func(w io.Writer) error { return csvout.Programme(w, v) }},
		{"kit.csv", func(w io.Writer) error { return csvout.Kit(w, v) }},
		{"balance.csv", func(w io.Writer) error { return csvout.Balance(w, v) }},
	}
	if v.Sample != nil {
		pack = append(pack, document{"sample.csv", func(w io.Writer) error { return csvout.Sample(w, v) }})
	}
	return pack
}
