package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"blankoff/takeoff/schedule/template"
)

func newTemplate() *cobra.Command {
	var out string
	c := &cobra.Command{
		Use:   "template -o FILE.xlsx",
		Short: "Write a workbook to start a schedule from",
		Long: `template writes a workbook with every heading, drop-down lists for the words
that have one, a few example rows to delete, and a sheet of instructions.

` + exitPlain,
		Example: `  blankoff template -o start.xlsx
  blankoff template --quiet -o tower/north.xlsx`,
		Args: noArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if out == "" {
				return misuse{hint{errors.New("no file given"), "usage: " + c.UseLine()}}
			}
			if !strings.EqualFold(filepath.Ext(out), ".xlsx") {
				return misuse{hint{fmt.Errorf("%s: the template is a workbook", out), "give a name that ends in .xlsx"}}
			}
			if exists(out) {
				return hint{fmt.Errorf("%s is there already and is left as it is", out), "choose another name, or move it away first"}
			}
			s := screenOf(c)
			defer s.done()
			err := writeFile(out, nil, func(w io.Writer) error { return template.Write(w) })
			if err == nil {
				fmt.Fprintf(s.talk, "wrote %s; fill it in and run: blankoff takeoff %s\n", out, out)
			}
			return err
		},
	}
	c.Flags().StringVarP(&out, "out", "o", "", "workbook to write, `FILE`")
	return c
}
