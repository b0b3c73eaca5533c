package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"blankoff/fittings"
	"blankoff/planner/report/text"
)

func newKinds() *cobra.Command {
	return &cobra.Command{
		Use:   "kinds [KIND]",
		Short: "List every kind of piece, the columns it needs and its other names",
		Long:  "kinds lists every kind of piece that a schedule may hold; with a name, all there\nis to know about one.\n\n" + exitText,
		Example: `  blankoff kinds
  blankoff kinds bend`,
		RunE: func(c *cobra.Command, args []string) error {
			return runKinds(args, c.OutOrStdout())
		},
	}
}

func runKinds(args []string, stdout io.Writer) error {
	if len(args) == 0 {
		return text.Kinds(stdout, fittings.Kinds())
	}
	k, ok := fittings.ParseKind(strings.Join(args, " "))
	if !ok {
		return misuse{hint{fmt.Errorf("%q isn't a kind of piece", strings.Join(args, " ")), "blankoff kinds lists them with their other names"}}
	}
	info, _ := k.Info()
	return text.Kind(stdout, info)
}
