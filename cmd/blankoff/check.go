package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"blankoff/planner/effect"
	"blankoff/planner/keep"
	"blankoff/planner/report"
	"blankoff/planner/report/jsonout"
	"blankoff/planner/report/letter"
	"blankoff/planner/report/text"
	"blankoff/planner/report/xlsx"
	"blankoff/planner/tightness"
	"blankoff/takeoff/audit"
	"blankoff/takeoff/schedule/stated"
	"blankoff/takeoff/terms"
)

// checkOptions are the flags of check.
type checkOptions struct {
	measure           measureOptions
	stated, plan, job string
	scheme, class     string
	sign, format, out string
	pa, reading       float64
	tolerance         float64 // percent
	assumed           bool
}

func newCheck() *cobra.Command {
	o := checkOptions{}
	c := &cobra.Command{
		Use:   "check SCHEDULE",
		Short: "Hold stated areas against those worked out, and say why they differ",
		Long: `check holds the areas that a schedule states for its rows (stated_area_m2), and
those of a list of totals (--stated), against the areas worked out. It names the
most likely reason, alone or in pairs of the usual ones, with how well it gives
the figures; or several, where the figures can't tell; or none. It says what the
difference does to the limit, to the class proved and to a reading, and goes
from the stated total to the one worked out line by line.

` + checkExit,
		Example: `  blankoff check specified.csv
  blankoff check specified.csv --stated totals.csv --class B --test-pressure 400
  blankoff check specified.csv --stated sheets.csv --plan plan-pack/plan.json -o letter`,
		Args: oneSchedule,
		RunE: func(c *cobra.Command, args []string) error {
			o.assumed = !c.Flags().Changed("tolerance")
			return runCheck(args[0], o, screenOf(c))
		},
	}
	o.flags(c)
	return c
}

const checkExit = `Exit codes:
  0  done; every stated area agrees
  1  failed; nothing was written
  2  misuse of the command line
  3  done, but a stated area differs, or rows were refused
`

func (o *checkOptions) flags(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&o.stated, "stated", "", "areas stated for whole systems or sections, `FILE` (CSV or XLSX: system or section, stated_area_m2; flow_m3_h, reading_l_s)")
	f.StringVar(&o.plan, "plan", "", "the plan.json `FILE` that says which rows lie in which section")
	f.Float64Var(&o.tolerance, "tolerance", 100*audit.DefaultTolerance, "share by which a stated area may differ, `PERCENT`, an assumption to be replaced by your own")
	f.StringVar(&o.scheme, "scheme", "EN", "tightness scheme of rows that name none, or a `FILE` of your own (TOML)")
	f.StringVar(&o.class, "class", "", "tightness class of rows that have none")
	f.Float64Var(&o.pa, "test-pressure", 0, "test pressure of rows that have none, `PA`")
	f.StringVar(&o.sign, "sign", "positive", "positive or negative, for rows that don't say")
	f.Float64Var(&o.reading, "reading", 0, "what a test of all that is stated has read, `L/S`")
	f.StringVar(&o.job, "job", "", "job `FILE` (TOML): what heads the letter")
	o.measure.flags(c)
	onlySI(c)
	f.StringVar(&o.format, "format", "table", "table or json")
	f.StringVarP(&o.out, "out", "o", "", "write check.json, check.xlsx and letter.html into folder `DIR`")
}

// settle checks the flags.
func (o *checkOptions) settle() error {
	if err := oneOf("format", o.format, "table", "json"); err != nil {
		return err
	}
	if err := refuseUnits(o.measure.units, "areas are stated in m2 and held against m2", "leave --units out; takeoff gives the areas in ft2"); err != nil {
		return err
	}
	sign, ok := terms.ParseSign(o.sign)
	switch {
	case !ok || sign == "":
		return misuse{fmt.Errorf("--sign %q: expected positive or negative", o.sign)}
	case !(o.tolerance >= 0 && o.tolerance <= 50):
		return misuse{fmt.Errorf("--tolerance %g: expected 0 to 50 %%", o.tolerance)}
	case !(o.pa >= 0 && o.pa <= 100000):
		return misuse{fmt.Errorf("--test-pressure %g: expected more than 0 Pa; the side goes in --sign", o.pa)}
	case !(o.reading >= 0 && o.reading <= 1e6):
		return misuse{fmt.Errorf("--reading %g: expected L/s, more than 0", o.reading)}
	}
	o.sign = sign
	return nil
}

// ask reads what a check is made with.
func (o *checkOptions) ask() (a report.CheckAsk, set audit.Options, err error) {
	a = report.CheckAsk{Tolerance: o.tolerance / 100, Assumed: o.assumed, Reading: o.reading}
	a.Flags = effect.Flags{Class: o.class, Sign: o.sign, Pa: o.pa}
	if a.Flags.Scheme, err = readScheme(o.scheme); err != nil {
		return a, set, err
	}
	if o.class != "" {
		if _, _, err := a.Flags.Scheme.ClassFor(o.class, tightness.Rectangular); err != nil {
			return a, set, misuse{err}
		}
	}
	set.Tolerance = a.Tolerance
	if o.stated != "" {
		totals, err := stated.Read(o.stated)
		if err != nil {
			return a, set, err
		}
		set.Totals, a.Faults, a.Notes = totals.List, totals.Faults, totals.Notes
		a.Stated = &report.StatedFile{File: totals.File, SHA256: totals.SHA256}
	}
	for _, s := range set.Totals {
		if s.By == "section" && o.plan == "" {
			return a, set, misuse{hint{fmt.Errorf("%s states areas of sections", o.stated), "give --plan and the plan.json that says which rows lie in which section"}}
		}
	}
	if set.Sections, err = readSections(o.plan); err != nil || o.job == "" {
		return a, set, err
	}
	j, err := readJob(o.job)
	a.Job = &j
	return a, set, err
}

// readSections reads which rows lie in which section; "" gives none.
func readSections(path string) ([]audit.Section, error) {
	if path == "" {
		return nil, nil
	}
	f, err := readPlanFile(path)
	if err != nil {
		return nil, err
	}
	old, err := keep.Read(f, path)
	if err != nil {
		return nil, err
	}
	whole := map[string]float64{}
	for _, s := range old.Sections {
		for _, p := range s.Spans {
			whole[p.Tag] += p.Own
		}
	}
	for _, p := range old.Rest {
		whole[p.Tag] += p.Own
	}
	var list []audit.Section
	for _, s := range old.Sections {
		o := audit.Section{ID: s.ID}
		for _, p := range s.Spans {
			share := 1.0
			if w := whole[p.Tag]; w > 0 {
				share = p.Own / w
			}
			o.Spans = append(o.Spans, audit.Span{Tag: p.Tag, Of: share})
		}
		list = append(list, o)
	}
	return list, nil
}

func runCheck(path string, o checkOptions, s *screen) error {
	defer s.done()
	if err := o.settle(); err != nil {
		return err
	}
	ask, set, err := o.ask()
	if err != nil {
		return err
	}
	t, err := readTakeoff(path, &o.measure, s.progress)
	if err != nil {
		return err
	}
	s.say("looking for the reason")
	r := audit.Check(t, set)
	v := report.OfCheck(r, ask)
	if err := text.Faults(s.faults, v.Faults); err != nil {
		return err
	}
	switch {
	case t.Schedule.RowsUsed+t.Schedule.RowsExcluded == 0:
		return errors.New("no row could be used; the faults above say what to mend")
	case v.Counts.Stated == 0:
		return hint{errors.New("no area is stated, so there is nothing to check"), "put the stated areas into a column stated_area_m2, or give --stated and a list of totals"}
	}
	input := []string{path, o.stated, o.plan, o.job, o.measure.basis, o.scheme}
	if o.out != "" {
		if err := writePack(o.out, input, s.told(checkPack(v)), s.talk); err != nil {
			return err
		}
	}
	s.done()
	if o.format == "json" {
		err = jsonout.Write(s.answer, v)
	} else {
		err = emphasised(s.answer, func(w io.Writer) error { return text.Check(w, v) })
	}
	if err != nil {
		return err
	}
	if !v.Agrees || len(v.Faults) > 0 {
		return errPartly
	}
	return nil
}

// checkPack is the documents of check -o.
func checkPack(v *report.Check) []document {
	return []document{
		{"check.json", func(w io.Writer) error { return jsonout.Write(w, v) }},
		{"check.xlsx", func(w io.Writer) error { return xlsx.Check(w, v) }},
		{"letter.html", func(w io.Writer) error { return letter.Check(w, v) }},
	}
}
