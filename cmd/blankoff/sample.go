package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"blankoff/planner/report"
	"blankoff/planner/sampling"
)

// sampleOptions are the flags of a sample of the planned sections.
type sampleOptions struct {
	ask                        report.SampleAsk
	by, regime, picked, tested string
	given                      func(flag string) bool
}

func (o *sampleOptions) flags(c *cobra.Command) {
	f := c.Flags()
	o.given = f.Changed
	f.Float64Var(&o.ask.Percent, "sample", 0, "draw this share of the sections at random, `PERCENT`")
	f.StringVar(&o.by, "sample-by", "area", "the share is of area, length or joint length")
	f.BoolVar(&o.ask.PerClass, "sample-per-class", false, "every class reaches the share by itself")
	f.Uint64Var(&o.ask.Seed, "seed", 1, "of the random draw; it is printed, and the same seed gives the same sample")
	f.StringVar(&o.regime, "regime", "", "sample as this regime asks: "+sampling.Names()+", or a `FILE` of your own (TOML)")
	f.StringVar(&o.picked, "picked", "", "check somebody else's pick, `SECTIONS` separated by commas")
	f.StringVar(&o.tested, "after-failure", "", "what is to be tested after one of these `SECTIONS` failed")
}

// wanted reports whether anything was asked of a sample.
func (o *sampleOptions) wanted() bool {
	return o.ask.Percent > 0 || o.ask.Regime != nil || len(o.ask.Picked) > 0
}

// settle turns the flags into what is asked; a flag that is given comes before
// the regime.
func (o *sampleOptions) settle() error {
	by, err := sampling.ParseBy(o.by)
	if err != nil {
		return misuse{err}
	}
	if p := o.ask.Percent; !(p >= 0 && p <= 100) {
		return misuse{fmt.Errorf("--sample %g: expected 0 to 100 percent", p)}
	}
	o.ask.By = by
	if o.regime != "" {
		r, err := readRegime(o.regime)
		if err != nil {
			return err
		}
		own := o.ask.Ask
		o.ask.Ask, o.ask.Regime = r.Ask, &r
		o.ask.Seed = own.Seed
		if o.given("sample") {
			o.ask.Percent = own.Percent
		}
		if o.given("sample-by") {
			o.ask.By = own.By
		}
		if o.given("sample-per-class") {
			o.ask.PerClass = own.PerClass
		}
	}
	o.ask.Picked, o.ask.Tested = sectionList(o.picked), sectionList(o.tested)
	switch {
	case len(o.ask.Picked) > 0 && len(o.ask.Tested) > 0:
		return misuse{errors.New("--picked checks a pick and --after-failure widens one; give one of the two")}
	case len(o.ask.Tested) > 0 && !o.wanted():
		return misuse{hint{errors.New("--after-failure needs to know the share"), "add --sample or --regime"}}
	}
	return nil
}

func sectionList(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ' ' })
}

// readRegime finds a built-in regime, or reads a file where the name is that of
// one.
func readRegime(name string) (sampling.Preset, error) {
	p, err := sampling.Lookup(name)
	if err == nil {
		return p, nil
	}
	if !strings.HasSuffix(name, ".toml") && !exists(name) {
		return p, misuse{err}
	}
	f, err := readSettings("regime file", name)
	if err != nil {
		return p, err
	}
	return sampling.Load(f, name)
}
