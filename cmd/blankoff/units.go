package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"blankoff/planner/units"
)

// unitsFlag puts the flag of the units on a command.
func unitsFlag(c *cobra.Command, value *string) {
	c.Flags().StringVar(value, "units", units.SI.String(), "si, or us: in. w.g., cfm, ft2, ft, in and lbf in tables, CSV and sentences; flags and the figures of JSON stay SI")
}

// onlySI takes the flag of the units off the help of a command that counts in m2,
// as refuseUnits refuses it there.
func onlySI(c *cobra.Command) { _ = c.Flags().MarkHidden("units") }

// refuseUnits says that what is counted or stated in m2 isn't written in US units,
// instead of writing it in SI without a word.
func refuseUnits(name, why, cure string) error {
	u, err := parseUnits(name)
	if err != nil || u == units.SI {
		return err
	}
	return misuse{hint{fmt.Errorf("--units %s: %s", name, why), cure}}
}

// parseUnits reads that flag.
func parseUnits(name string) (units.System, error) {
	u, ok := units.Parse(name)
	if !ok {
		return u, misuse{fmt.Errorf("--units %q: expected si or us", name)}
	}
	return u, nil
}
