package main

import (
	"errors"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"blankoff/planner/report"
	"blankoff/planner/report/jsonout"
	"blankoff/planner/report/text"
	"blankoff/planner/rig"
	"blankoff/planner/tightness"
)

type windowOptions struct {
	rigs                 []string
	scheme, sign, format string
	units                string
	classes              []string
	pressures            []float64
	headroom, ductClass  float64
}

func newWindow() *cobra.Command {
	o := windowOptions{scheme: "EN", sign: "positive", format: "table", headroom: 1.5}
	c := &cobra.Command{
		Use:   "window --rig RIG.toml",
		Short: "Show the areas that a rig can judge at each class and pressure",
		Long: `window shows, for each class and test pressure, the smallest and the largest
section that the rig can judge: its accuracy guards both ends of each measuring
range, and the section may leak headroom times its limit and still be read.

` + exitPlain,
		Example: `  blankoff window --rig rig.toml
  blankoff window --rig rig.toml --class B,C --test-pressure 400,1000
  blankoff window --rig rig.toml --scheme US --class 6 --test-pressure 500`,
		Args: noArgs,
		RunE: func(c *cobra.Command, _ []string) error { return runWindow(o, c.OutOrStdout()) },
	}
	f := c.Flags()
	f.StringArrayVar(&o.rigs, "rig", nil, "rig `FILE` (TOML), one")
	f.StringVar(&o.scheme, "scheme", o.scheme, "tightness scheme: "+strings.Join(tightness.Names(), ", ")+", or a `FILE` of your own (TOML)")
	f.StringVar(&o.sign, "sign", o.sign, "positive or negative")
	f.StringSliceVar(&o.classes, "class", nil, "classes, separated by commas (default: the scheme's)")
	f.Float64SliceVar(&o.pressures, "test-pressure", nil, "test pressures in `PA`, separated by commas (default: the scheme's usual ones)")
	f.Lookup("test-pressure").DefValue = "" // said
	f.Float64Var(&o.headroom, "headroom", o.headroom, "how many times its limit a section may leak and still be read")
	f.Float64Var(&o.ductClass, "duct-class", 0, "pressure that the duct is built for, `PA` (default: not stated)")
	unitsFlag(c, &o.units)
	f.StringVar(&o.format, "format", o.format, "table or json")
	return c
}

func runWindow(o windowOptions, stdout io.Writer) error {
	if err := oneOf("format", o.format, "table", "json"); err != nil {
		return err
	}
	u, err := parseUnits(o.units)
	if err != nil {
		return err
	}
	if len(o.rigs) > 1 {
		return misuse{hint{errors.New("a window is of one rig, and several were given"), "run it once for each; blankoff plan takes several"}}
	}
	r, notes, err := readRig(strings.Join(o.rigs, ""))
	if err != nil {
		return err
	}
	s, err := readScheme(o.scheme)
	if err != nil {
		return err
	}
	sign, err := tightness.ParseSign(o.sign)
	if err != nil {
		return misuse{err}
	}
	if o.ductClass < 0 {
		return misuse{errors.New("--duct-class: expected more than 0 Pa")}
	}
	of := rig.TableOf{Scheme: s, Classes: o.classes, PressuresPa: o.pressures, Sign: sign, Headroom: o.headroom, DuctClassPa: o.ductClass, Units: u}
	rows, err := r.Table(of)
	if err != nil {
		return misuse{err}
	}
	v := report.OfWindows(r, of, rows, notes)
	if o.format == "json" {
		return jsonout.Write(stdout, v)
	}
	return text.Windows(stdout, v)
}
