package main

import (
	"io"
	"os"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"blankoff/planner/report/text"
)

// screen is where a command writes: its answer, its faults, and its talk, which
// --quiet leaves out.
type screen struct {
	answer, faults, talk io.Writer
	*progress
}

// screenOf is the screen of a command.
func screenOf(c *cobra.Command) *screen {
	p := newProgress(c.ErrOrStderr(), isTerminal(c.ErrOrStderr()) && !quiet(c))
	s := &screen{answer: c.OutOrStdout(), faults: p, talk: p, progress: p}
	if quiet(c) {
		s.talk = io.Discard
	}
	return s
}

// quiet reports whether --quiet was given.
func quiet(c *cobra.Command) bool {
	q, _ := c.Flags().GetBool("quiet")
	return q
}

// isTerminal reports whether a writer is a terminal.
func isTerminal(w io.Writer) bool {
	switch w := w.(type) {
	case *os.File:
		return term.IsTerminal(int(w.Fd()))
	case interface{ IsTerminal() bool }:
		return w.IsTerminal()
	}
	return false
}

// takesBold reports whether a writer is a terminal that takes bold text, and
// whoever sits at it hasn't asked for none.
func takesBold(w io.Writer) bool {
	return isTerminal(w) && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
}

// emphasised writes a text, on a terminal that takes it with its headings in bold.
func emphasised(w io.Writer, write func(io.Writer) error) error {
	if !takesBold(w) {
		return write(&calm{out: w})
	}
	b := text.NewBold(w)
	if err := write(&calm{out: b}); err != nil {
		return err
	}
	return b.Close()
}
