package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"blankoff/planner"
	"blankoff/planner/report"
	"blankoff/planner/report/jsonout"
	"blankoff/planner/report/text"
	"blankoff/planner/whatif"
	"blankoff/takeoff"
)

func newCompare() *cobra.Command {
	o := newPlanOptions()
	var a whatif.Asked
	c := &cobra.Command{
		Use:   "compare SCHEDULE --rig RIG.toml",
		Short: "Set plans under other assumptions side by side",
		Long: `compare plans the schedule as plan does, and again with each of several rigs
alone, one class tighter, at other test pressures and headrooms, without cuts
inside straights, and with a person's own cuts, and sets what they come to side
by side in one table. Without a wish it tries headrooms of 1, 1.5 and 3, one
class tighter and straights in one piece.

` + exitPlan,
		Example: `  blankoff compare schedule.csv --rig rig.toml --class B --test-pressure 400
  blankoff compare schedule.csv --rig own.toml --rig hired.toml --headrooms 1,3
  blankoff compare schedule.csv --rig rig.toml --pressures 300,600 --tighter`,
		Args: oneSchedule,
		RunE: func(c *cobra.Command, args []string) error {
			o.given(c)
			if err := onlyPlan(c); err != nil {
				return err
			}
			if !a.Tighter && !a.Whole && len(a.PressuresPa)+len(a.Headrooms) == 0 && o.cuts == "" {
				a.Headrooms, a.Tighter, a.Whole = []float64{1, 1.5, 3}, true, true
			}
			return runCompare(args[0], o, a, screenOf(c))
		},
	}
	o.flags(c)
	f := c.Flags()
	for _, name := range planOnly {
		f.MarkHidden(name)
	}
	f.Float64SliceVar(&a.PressuresPa, "pressures", nil, "also with every row tested at these, `PA`, separated by commas")
	f.Float64SliceVar(&a.Headrooms, "headrooms", nil, "also with these `HEADROOMS`, separated by commas")
	f.Lookup("pressures").DefValue, f.Lookup("headrooms").DefValue = "", "" // none
	f.BoolVar(&a.Tighter, "tighter", false, "also with every row one class tighter")
	f.BoolVar(&a.Whole, "whole-straights", false, "also without cuts inside straights")
	return c
}

// planOnly are the options of plan that compare doesn't take: it writes no pack,
// keeps to no earlier plan and draws no sample.
var planOnly = []string{"out", "keep", "sample", "sample-by", "sample-per-class", "seed", "regime", "picked", "after-failure"}

// onlyPlan refuses options that only plan takes.
func onlyPlan(c *cobra.Command) error {
	var given []string
	for _, name := range planOnly {
		if c.Flags().Changed(name) {
			given = append(given, "--"+name)
		}
	}
	if len(given) == 0 {
		return nil
	}
	return misuse{fmt.Errorf("compare writes no pack, keeps to no earlier plan and draws no sample: leave out %s, or use plan", strings.Join(given, ", "))}
}

// checkAsked refuses wishes that can't be meant.
func checkAsked(a whatif.Asked) error {
	for _, h := range a.Headrooms {
		if !(h >= 1 && h <= 100) {
			return misuse{errors.New("--headrooms: expected numbers from 1 to 100")}
		}
	}
	for _, pa := range a.PressuresPa {
		if !(pa > 0 && pa <= 100000) {
			return misuse{errors.New("--pressures: expected more than 0 and at most 100000 Pa")}
		}
	}
	return nil
}

func runCompare(path string, o *planOptions, a whatif.Asked, s *screen) error {
	defer s.done()
	if _, err := o.settle(); err != nil {
		return err
	}
	if err := checkAsked(a); err != nil {
		return err
	}
	cuts, faults, err := readCuts(o.cuts)
	if err != nil {
		return err
	}
	if err := text.Faults(s.faults, faults); err != nil {
		return err
	}
	a.OwnCuts = cuts
	o.set.Progress = s.planning
	if err := o.measure.door.apart("", o.inputs(path)); err != nil {
		return err
	}
	var first *takeoff.Takeoff
	list, err := whatif.Run(o.base(path, &first, s), a)
	if err != nil {
		return err
	}
	if err := text.Faults(s.faults, list[0].Plan.Faults); err != nil {
		return err
	}
	if err := o.measure.door.writeRefused(path, first, o.inputs(path), s.talk); err != nil {
		return err
	}
	s.done()
	return o.compared(list, s)
}

// base is what the variants start from; the takeoff that is read first is kept.
func (o *planOptions) base(path string, first **takeoff.Takeoff, s *screen) whatif.Base {
	read := func(pieceLength float64) (*takeoff.Takeoff, error) {
		options, err := o.measure.settle()
		if err != nil {
			return nil, err
		}
		options.PieceLength = pieceLength
		t, err := measured(path, &o.measure.door, options, s.progress)
		if *first == nil {
			*first = t
		}
		if err == nil {
			err = planner.Oversize(t)
		}
		return t, err
	}
	return whatif.Base{Settings: o.set, PieceLength: o.measure.pieceLength, Read: read}
}

// compared writes the variants side by side.
func (o *planOptions) compared(list []whatif.Variant, s *screen) (err error) {
	v := report.OfVariants(list)
	if o.format == "json" {
		err = jsonout.Write(s.answer, v)
	} else {
		err = emphasised(s.answer, func(w io.Writer) error { return text.Compare(w, v) })
	}
	if err == nil && list[0].Plan.Partly() {
		return errPartly
	}
	return err
}
