package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"blankoff/fittings"
	"blankoff/planner/report"
	"blankoff/takeoff"
	"blankoff/takeoff/bases"
)

// measureOptions are the flags of how areas are measured, the same on every
// command.
type measureOptions struct {
	basis              string
	sheet, pieceLength float64
	units              string
	totals             bool // no items are wanted
	door               doorOptions
}

func (o *measureOptions) flags(c *cobra.Command) {
	f := c.Flags()
	unitsFlag(c, &o.units)
	o.door.readFlags(c)
	f.StringVar(&o.basis, "basis", "exact", "rule by which area is measured: "+basisNames()+", or a `FILE` of your own (TOML)")
	f.Float64Var(&o.sheet, "sheet", 0, "sheet thickness to add to every size across, `MM`")
	f.Float64Var(&o.pieceLength, "piece-length", 0, "length into which straights are made, `M` (default 1.5 rectangular, 3 circular and flat-oval)")
}

func basisNames() string {
	var names []string
	for _, b := range bases.BuiltIn() {
		names = append(names, b.Name)
	}
	return strings.Join(names, ", ")
}

// settle turns the flags into the settings of a takeoff.
func (o *measureOptions) settle() (takeoff.Options, error) {
	if m := o.pieceLength; m != 0 && !(m >= 0.1 && m <= 100) {
		return takeoff.Options{}, misuse{hint{errors.New("--piece-length: expected 0.1 to 100 m"), "leave it out for 1.5 m rectangular, 3 m circular and flat-oval"}}
	}
	b, err := o.readBasis()
	if err != nil {
		return takeoff.Options{}, err
	}
	u, err := parseUnits(o.units)
	if err != nil {
		return takeoff.Options{}, err
	}
	options := takeoff.Options{PieceLength: o.pieceLength, Basis: b, Sheet: o.sheet / 1000, TotalsOnly: o.totals, Written: report.Written(u)}
	if err := o.door.settle(); err != nil {
		return takeoff.Options{}, err
	}
	if wrong := options.Check(); wrong != "" {
		return takeoff.Options{}, misuse{fmt.Errorf("%s", wrong)}
	}
	return options, nil
}

// readBasis finds a built-in basis, or reads a file where the name looks like
// one or is one.
func (o *measureOptions) readBasis() (*fittings.Basis, error) {
	b, err := bases.Lookup(o.basis)
	if err == nil {
		return b, nil
	}
	if !strings.HasSuffix(o.basis, ".toml") && !exists(o.basis) {
		return nil, misuse{err}
	}
	f, err := readSettings("basis file", o.basis)
	if err != nil {
		return nil, err
	}
	return bases.Load(f, o.basis)
}
