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

// parseUnits reads that flag.
func parseUnits(name string) (units.System, error) {
	u, ok := units.Parse(name)
	if !ok {
		return u, misuse{fmt.Errorf("--units %q: expected si or us", name)}
	}
	return u, nil
}
