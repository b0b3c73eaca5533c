package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"github.com/spf13/cobra"

	"blankoff/planner/report/show"
	"blankoff/planner/report/text"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
	"blankoff/takeoff/schedule/told"
)

func newInspect() *cobra.Command {
	var o doorOptions
	var out string
	c := &cobra.Command{
		Use:   "inspect SCHEDULE",
		Short: "Show how each column, unit and row of a schedule is understood",
		Long: `inspect reads a schedule and computes nothing. It shows for each sheet where the
headings are, what each column is read as and in which unit, which columns
aren't used and why, and what each row was taken for. With -o it writes that as
a map file: edit it, and give it with --map to fix the reading for good.

` + exitRows,
		Example: `  blankoff inspect schedule.xlsx
  blankoff inspect schedule.xlsx -o office.toml
  blankoff takeoff schedule.xlsx --map office.toml`,
		Args: oneSchedule,
		RunE: func(c *cobra.Command, args []string) error {
			return runInspect(args[0], &o, out, screenOf(c))
		},
	}
	o.readFlags(c)
	c.Flags().StringVarP(&out, "out", "o", "", "write the reading as a map `FILE` (TOML)")
	return c
}

func runInspect(path string, o *doorOptions, out string, s *screen) error {
	defer s.done()
	if err := o.settle(); err != nil {
		return err
	}
	var faults []takeoff.Fault
	rows := 0
	info, err := o.set.Read(path, func(r *takeoff.Row) error {
		if len(r.Faults) > 0 {
			rows++
		}
		faults = append(faults, r.Faults...)
		return nil
	})
	if err != nil {
		return err
	}
	faults = append(info.Faults, faults...)
	if err := text.Faults(s.faults, faults); err != nil {
		return err
	}
	s.done()
	if err := emphasised(s.answer, func(w io.Writer) error { return inspected(w, &info, rows) }); err != nil {
		return err
	}
	if out != "" {
		if err := writeTo(out, append(o.inputs(), path), s.answer, s.talk, info.Map().Write); err != nil {
			return err
		}
	}
	if len(faults) > 0 {
		return errPartly
	}
	return nil
}

// inspected writes how a schedule was understood.
func inspected(w io.Writer, info *schedule.Info, faulty int) error {
	b := &strings.Builder{}
	fmt.Fprintf(b, "%s: %s read, %d with cells that can't be used\n", info.File, show.Count(info.RowsRead, "row"), faulty)
	if info.Encoding != "" {
		sign := map[string]string{"\t": "tabs", ";": "semicolons", ",": "commas", "|": "bars"}[info.Separator]
		fmt.Fprintf(b, "text in %s, cells parted by %s, a %s for decimals\n", info.Encoding, sign, info.Decimal)
	}
	for _, s := range info.Sheets {
		fmt.Fprintln(b)
		inspectedSheet(b, s)
	}
	if len(info.Notes) > 0 {
		fmt.Fprintln(b, "\nNotes")
		for _, n := range info.Notes {
			fmt.Fprintf(b, "  %s\n", n)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func inspectedSheet(b *strings.Builder, s *told.Sheet) {
	name := "Sheet"
	if s.Name != "" {
		name += " '" + s.Name + "'"
	}
	if s.Hidden {
		name += " (hidden)"
	}
	switch n := len(s.Headings); {
	case n == 0:
		fmt.Fprintf(b, "%s: no headings, passed over\n", name)
		return
	case s.Headings[0] == 0:
		fmt.Fprintf(b, "%s: without headings, by the map\n", name)
	case n == 2:
		fmt.Fprintf(b, "%s: headings in rows %d and %d\n", name, s.Headings[0], s.Headings[1])
	default:
		fmt.Fprintf(b, "%s: headings in row %d\n", name, s.Headings[0])
	}
	tw := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	fmt.Fprintln(tw, "  column\theading\tread as\tunit\twhy")
	for _, c := range s.Columns {
		reads, why := c.Reads, c.Why
		if reads == "" {
			reads = "not used"
		}
		if c.Hidden {
			why = strings.TrimPrefix(why+"; hidden", "; ")
		}
		fmt.Fprintf(tw, "  %s\t%s\t%s\t%s\t%s\n", c.Letter, c.Typed, reads, c.Unit, why)
	}
	tw.Flush()
	fmt.Fprintln(tw, "  rows\ttaken for\tthe first")
	for class, x := range s.Classes {
		if x.Count > 0 {
			fmt.Fprintf(tw, "  %d\t%s\trow %d: %s\n", x.Count, told.RowClass(class), x.First, x.Text)
		}
	}
	tw.Flush()
}
