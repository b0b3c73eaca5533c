package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
	words "blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/schedule/refused"
	"blankoff/takeoff/schedule/source"
)

// doorOptions are the flags of how a schedule is read, the same on every
// command that reads one.
type doorOptions struct {
	mapFile, words string
	skipHidden     bool
	refused        string

	set  schedule.Options
	info schedule.Info // of the schedule last read
}

// readFlags puts the flags of reading on a command.
func (o *doorOptions) readFlags(c *cobra.Command) {
	f := c.Flags()
	f.StringVar(&o.mapFile, "map", "", "map `FILE` (TOML) that fixes how columns, units and rows are read; blankoff inspect -o writes one")
	f.StringVar(&o.words, "aliases", "", "words `FILE` (CSV: list, what they stand for, words) that adds to the words of schedules or replaces them")
	f.BoolVar(&o.skipHidden, "skip-hidden", false, "leave hidden rows and sheets of a workbook out")
}

// refusedFlag puts the flag for refused rows on a command.
func (o *doorOptions) refusedFlag(c *cobra.Command) {
	c.Flags().StringVar(&o.refused, "refused", "", "write the refused rows to `FILE` (CSV or XLSX) in the layout of the schedule, with the reasons beside them, to mend and read again")
}

// settle reads the files that the flags name.
func (o *doorOptions) settle() error {
	o.set = schedule.Options{SkipHidden: o.skipHidden}
	if ext := filepath.Ext(o.refused); o.refused != "" && !strings.EqualFold(ext, ".csv") && !strings.EqualFold(ext, ".tsv") && !strings.EqualFold(ext, ".xlsx") {
		return misuse{hint{fmt.Errorf("--refused %q: the name says no form", o.refused), "give a name that ends in .csv or .xlsx"}}
	}
	if o.mapFile != "" {
		f, err := readSettings("map file", o.mapFile)
		if err != nil {
			return err
		}
		if o.set.Map, err = mapping.Read(o.mapFile, f); err != nil {
			return err
		}
	}
	if o.words == "" {
		return nil
	}
	data, err := readInput("words file", o.words, mostCuts)
	if err != nil {
		return err
	}
	all, err := words.BuiltIn()
	if err == nil {
		o.set.Words, err = all.With(o.words, bytes.NewReader(data))
	}
	return err
}

// inputs are the files that the flags name.
func (o *doorOptions) inputs() []string { return []string{o.mapFile, o.words} }

// nothing is the error of a schedule of which no row could be used. What was noted
// of it may say why: it goes with the faults.
func (o *doorOptions) nothing(t *takeoff.Takeoff, faults io.Writer) error {
	for _, n := range t.Notes {
		fmt.Fprintf(faults, "note: %s\n", n)
	}
	return errors.New("no row could be used; the faults above say what to mend")
}

// refusedDocument is the refused rows as a file of a pack, named by its form;
// ok is false where there are none.
func (o *doorOptions) refusedDocument(path string, t *takeoff.Takeoff) (d document, ok bool, err error) {
	rows := refused.Of(t, &o.info, o.set)
	if rows.Count() == 0 {
		return document{}, false, nil
	}
	data, err := source.Load(path)
	if err != nil {
		return document{}, false, err
	}
	if rows.Workbook() {
		return document{"refused.xlsx", func(w io.Writer) error { return rows.XLSX(w, data) }}, true, nil
	}
	return document{"refused.csv", func(w io.Writer) error { return rows.CSV(w, data) }}, true, nil
}

// apart refuses a file of refused rows that is an input, the answer of the command,
// or lies in the folder of its pack.
func (o *doorOptions) apart(out string, input []string) error {
	if o.refused == "" {
		return nil
	}
	if err := notAnInput(o.refused, input); err != nil {
		return err
	}
	if out == "" || out == "-" {
		return nil
	}
	if isInput(o.refused, []string{out}) || filepath.Clean(o.refused) == filepath.Clean(out) {
		return misuse{hint{fmt.Errorf("-o and --refused both name %s", o.refused), "give two names"}}
	}
	if isInput(filepath.Dir(o.refused), []string{out}) || filepath.Clean(filepath.Dir(o.refused)) == filepath.Clean(out) {
		return misuse{hint{fmt.Errorf("--refused %s lies in the pack, which holds the refused rows by itself", o.refused), "leave --refused out, or name a place of its own"}}
	}
	return nil
}

// writeRefused writes the refused rows where they were asked for.
func (o *doorOptions) writeRefused(path string, t *takeoff.Takeoff, input []string, talk io.Writer) error {
	if o.refused == "" {
		return nil
	}
	rows := refused.Of(t, &o.info, o.set)
	if rows.Count() == 0 {
		fmt.Fprintf(talk, "no row was refused, so %s isn't written\n", o.refused)
		return nil
	}
	data, err := source.Load(path)
	if err != nil {
		return err
	}
	write := rows.CSV
	if strings.EqualFold(filepath.Ext(o.refused), ".xlsx") {
		write = rows.XLSX
	}
	return writeTo(o.refused, input, io.Discard, talk, func(w io.Writer) error { return write(w, data) })
}
