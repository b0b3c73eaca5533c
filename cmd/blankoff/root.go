package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
)

// Exit codes; scripts rely on them.
const (
	exitDone   = 0
	exitFailed = 1 // nothing was written
	exitMisuse = 2 // the command line can't be meant
	exitPartly = 3 // done, but something is refused, under or over range, void, or only a grouping
)

// What the help says of them: of a command that is done or not, that reads rows,
// that plans, that prices, and of all together.
const (
	exitPlain = `Exit codes:
  0  done
  1  failed; nothing was written
  2  misuse of the command line
`
	exitRows = exitPlain + `  3  done, but rows were refused; the output names each
`
	exitPlan = exitPlain + `  3  done, but rows were refused, a section is under or over range, a passed one
     is void, or part is only a grouping; the output names each
`
	exitPrice = exitPlain + `  3  done, but rows were refused, a section is under or over range, a passed one
     is void, part is only a grouping, or a line of the bill has no rate; the
     output names each
`
	exitAll = exitPlain + `  3  done, but rows were refused, a section is under or over range, a passed one
     is void, part is only a grouping, a stated area differs (check), or a line
     of the bill has no rate (price); the output names each
`
)

// misuse is an error of the command line.
type misuse struct{ error }

func (m misuse) Unwrap() error { return m.error }

// hint is an error with a line on what to do next.
type hint struct {
	error
	next string
}

func (h hint) Unwrap() error { return h.error }

// errPartly says that the work was done, but not all of it.
var errPartly = errors.New("done in part")

// run carries out one command line and returns its exit code.
func run(args []string, stdout, stderr io.Writer) int {
	stderr = &calm{out: stderr}
	root := newRoot()
	root.SetArgs(args)
	root.SetOut(stdout)
	root.SetErr(stderr)
	helped := checkedHelp(root)
	err := root.Execute()
	if err == nil {
		err = helped()
	}
	var m misuse
	switch {
	case err == nil:
		return exitDone
	case errors.Is(err, errPartly):
		return exitPartly
	}
	fmt.Fprintf(stderr, "blankoff: %v\n", err)
	var h hint
	if errors.As(err, &h) {
		fmt.Fprintf(stderr, "  %s\n", h.next)
	}
	if errors.As(err, &m) {
		return exitMisuse
	}
	return exitFailed
}

func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:   "blankoff",
		Short: "Plan ductwork leakage tests: areas, sections that the rig can judge, blanks",
		Long: `blankoff reads a schedule of ductwork (CSV, XLSX or ODS), works out the outside
surface area of every piece, and divides the ductwork into test sections that
fit the rig's measuring range for the chosen tightness class.

` + exitAll,
		Example: `  blankoff template -o start.xlsx
  blankoff takeoff schedule.csv
  blankoff plan schedule.csv --rig rig.toml --class B --test-pressure 500 -o pack`,
		SilenceErrors: true,
		SilenceUsage:  true,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 0 {
				return misuse{hint{fmt.Errorf("there is no command %q", args[0]), "blankoff --help lists the commands"}}
			}
			return nil
		},
		RunE: func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	root.SetFlagErrorFunc(func(c *cobra.Command, err error) error {
		return misuse{hint{flagTrouble(err), c.CommandPath() + " --help lists the flags"}}
	})
	addVersion(root)
	root.PersistentFlags().Bool("quiet", false, "say nothing beside the answer but faults and errors")
	root.AddCommand(newTakeoff(), newPlan(), newCompare(), newCheck(), newPrice(), newWindow(), newKinds(), newTemplate(), newInspect(), newManual())
	completeWords(root)
	return root
}

// oneSchedule asks for exactly one schedule file.
func oneSchedule(c *cobra.Command, args []string) error {
	if len(args) != 1 {
		return misuse{hint{fmt.Errorf("expected one schedule file, got %d", len(args)), "usage: " + c.UseLine()}}
	}
	return nil
}

// noArgs refuses stray words.
func noArgs(c *cobra.Command, args []string) error {
	if len(args) > 0 {
		return misuse{hint{fmt.Errorf("%q isn't expected here", args[0]), "usage: " + c.UseLine()}}
	}
	return nil
}

// oneOf refuses a flag value that isn't in the list.
func oneOf(flag, value string, allowed ...string) error {
	for _, a := range allowed {
		if value == a {
			return nil
		}
	}
	return misuse{fmt.Errorf("--%s %q: expected one of %s", flag, value, strings.Join(allowed, ", "))}
}
