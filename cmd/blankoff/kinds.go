package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"blankoff/fittings"
	"blankoff/planner/report/svg"
	"blankoff/planner/report/text"
)

// kindsFlags are the flags of kinds.
type kindsFlags struct{ style, out string }

func newKinds() *cobra.Command {
	var f kindsFlags
	c := &cobra.Command{
		Use:   "kinds [KIND] [--style STYLE] [-o FILE.svg]",
		Short: "List every kind of piece, or draw one with its columns, formula and working",
		Long: `kinds lists every kind of piece that a schedule may hold. With a name it tells
all of one kind: a drawing with a letter for each size, the columns that the
letters stand for, the formula and its source, and an example worked out in
figures. With -o the drawing is written to scale as an SVG file, for a browser
or a printer, instead.

` + exitPlain,
		Example: `  blankoff kinds
  blankoff kinds bend
  blankoff kinds bend --style mitred
  blankoff kinds reducer -o reducer.svg`,
		RunE: func(c *cobra.Command, args []string) error {
			return runKinds(strings.Join(args, " "), f, screenOf(c))
		},
	}
	c.Flags().StringVar(&f.style, "style", "", "draw this `STYLE` (default: the kind's first)")
	c.Flags().StringVarP(&f.out, "out", "o", "", "write the drawing to `FILE.svg`")
	return c
}

func runKinds(name string, f kindsFlags, s *screen) error {
	defer s.done()
	if name == "" {
		if f != (kindsFlags{}) {
			return misuse{hint{errors.New("say which kind to draw"), "for instance: blankoff kinds bend --style mitred -o bend.svg"}}
		}
		return text.Kinds(s.answer, fittings.Kinds())
	}
	k, ok := fittings.ParseKind(name)
	if !ok {
		return misuse{hint{fmt.Errorf("%q isn't a kind of piece", name), "blankoff kinds lists them with their other names"}}
	}
	info, _ := k.Info()
	style, err := styleOf(info, f.style)
	if err != nil {
		return err
	}
	if f.out == "" {
		return text.KindStyle(s.answer, info, style)
	}
	if !strings.EqualFold(filepath.Ext(f.out), ".svg") {
		return misuse{hint{fmt.Errorf("-o %q: a drawing is written as .svg", f.out), "give a name that ends in .svg"}}
	}
	wrote := "wrote"
	if exists(f.out) {
		wrote = "wrote over"
	}
	if err := writeFile(f.out, nil, func(w io.Writer) error { return svg.Kind(w, info, style) }); err != nil {
		return err
	}
	fmt.Fprintf(s.talk, "%s %s\n", wrote, f.out)
	return nil
}

// styleOf finds the style that a word names among those of a kind.
func styleOf(k fittings.KindInfo, word string) (fittings.Style, error) {
	if word == "" {
		return fittings.NoStyle, nil
	}
	style, known := fittings.ParseStyle(word)
	names := make([]string, len(k.Styles))
	for i, s := range k.Styles {
		if names[i] = s.String(); known && s == style {
			return style, nil
		}
	}
	expected := "a " + k.Name + " has no styles; leave --style out"
	if len(names) > 0 {
		expected = "expected one of " + strings.Join(names, ", ")
	}
	return fittings.NoStyle, misuse{hint{fmt.Errorf("--style %q isn't a style of a %s", word, k.Name), expected}}
}
