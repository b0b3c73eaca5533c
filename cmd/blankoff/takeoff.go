package main

import (
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"blankoff/planner/report"
	"blankoff/planner/report/csvout"
	"blankoff/planner/report/jsonout"
	"blankoff/planner/report/text"
)

type takeoffOptions struct {
	measure measureOptions
	totals  bool
	format  string
	out     string
}

func newTakeoff() *cobra.Command {
	var o takeoffOptions
	c := &cobra.Command{
		Use:   "takeoff SCHEDULE",
		Short: "Work out the outside surface area of every piece of a schedule",
		Long: `takeoff reads a schedule (CSV, TSV, XLSX or ODS) and works out the exact outside
surface area of every row, with the working in figures, and the totals by
system, level, shape and size.

` + exitRows,
		Example: `  blankoff takeoff schedule.csv
  blankoff takeoff schedule.xlsx --totals
  blankoff takeoff schedule.csv --format json -o takeoff.json
  blankoff takeoff schedule.csv --basis centre-line`,
		Args: oneSchedule,
		RunE: func(c *cobra.Command, args []string) error {
			return runTakeoff(args[0], o, screenOf(c))
		},
	}
	f := c.Flags()
	o.measure.flags(c)
	o.measure.door.refusedFlag(c)
	f.BoolVar(&o.totals, "totals", false, "totals only, no list of items")
	f.StringVar(&o.format, "format", "", "table, csv or json (default: by the ending of -o, else table)")
	f.StringVarP(&o.out, "out", "o", "", "write to `FILE` instead of the screen")
	return c
}

func runTakeoff(path string, o takeoffOptions, s *screen) error {
	defer s.done()
	if o.format == "" {
		o.format = formatOf(o.out)
	}
	if err := oneOf("format", o.format, "table", "csv", "json"); err != nil {
		return err
	}
	u, err := parseUnits(o.measure.units)
	if err != nil {
		return err
	}
	input := append(o.measure.door.inputs(), path, o.measure.basis)
	if err := o.measure.door.apart(o.out, input); err != nil {
		return err
	}
	o.measure.totals = o.totals
	t, err := readTakeoff(path, &o.measure, s.progress)
	if err != nil {
		return err
	}
	v := report.OfTakeoff(t, !o.totals, u)
	if err := text.Faults(s.faults, v.Faults); err != nil {
		return err
	}
	if err := o.measure.door.writeRefused(path, t, input, s.talk); err != nil {
		return err
	}
	if t.Schedule.RowsUsed+t.Schedule.RowsExcluded-len(t.Schedule.TotalRows)-t.Schedule.RowsLeft == 0 {
		return o.measure.door.nothing(t, s.faults)
	}
	write := map[string]func(io.Writer) error{
		"table": func(w io.Writer) error {
			return emphasised(w, func(w io.Writer) error { return text.Takeoff(w, v) })
		},
		"csv":  func(w io.Writer) error { return csvout.Takeoff(w, v) },
		"json": func(w io.Writer) error { return jsonout.Write(w, v) },
	}[o.format]
	s.done()
	if err := writeTo(o.out, input, s.answer, s.talk, write); err != nil {
		return err
	}
	if len(v.Faults) > 0 {
		return errPartly
	}
	return nil
}

// formatOf is the format that the ending of a file's name asks for.
func formatOf(path string) string {
	switch ext := strings.TrimPrefix(filepath.Ext(path), "."); ext {
	case "csv", "json":
		return ext
	case "", "txt":
		return "table"
	default:
		return ext // refused with what there is
	}
}
