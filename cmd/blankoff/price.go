package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"blankoff/planner"
	"blankoff/planner/price"
	"blankoff/planner/price/risk"
	"blankoff/planner/report"
	"blankoff/planner/report/jsonout"
	"blankoff/planner/report/text"
	"blankoff/planner/report/xlsx"
	"blankoff/takeoff/schedule/source"
)

// priceOptions are the flags of price.
type priceOptions struct {
	*planOptions
	rates, prior, results, revision string
	otherRigs                       []string
	runs                            int
	beside                          bool
}

func newPrice() *cobra.Command {
	o := &priceOptions{planOptions: newPlanOptions()}
	c := &cobra.Command{
		Use:   "price SCHEDULE --rig RIG.toml --rates RATES.toml",
		Short: "Price the tests of a plan by your own rates, with what failures may cost",
		Long: `price plans the schedule as plan does and puts your own rates to its quantities:
visits, person days, hire, tests, blanks made and fitted by size. It gives a
bill, unit prices, what retests and return visits may add (P50, P80, P90 of
money and of days), the figures that move the total most, other assumptions
side by side, and assumptions and exclusions to paste into a quotation. Money
is counted in whole minor units of the currency in the rates file.

` + exitPrice,
		Example: `  blankoff price schedule.csv --rig rig.toml --rates rates.toml
  blankoff price schedule.csv --rig rig.toml --rates rates.toml --job job.toml -o bill
  blankoff price new.csv --revision old.csv --rig rig.toml --rates rates.toml --sample 25`,
		Args: oneSchedule,
		RunE: func(c *cobra.Command, args []string) error {
			o.given(c)
			return runPrice(args[0], o, screenOf(c))
		},
	}
	o.flags(c)
	onlySI(c)
	f := c.Flags()
	f.StringVar(&o.rates, "rates", "", "your rates, `FILE` (TOML): money in whole minor units of any currency")
	f.StringVar(&o.prior, "prior", risk.Presets()[0], "what is supposed of leaks before the tests: "+strings.Join(risk.Presets(), ", ")+", or a `FILE` of your own (TOML)")
	f.StringVar(&o.results, "results", "", "your own past results, `FILE` (CSV: area_m2, class, leak_over_limit, passed_first_time, job): they update the prior")
	f.StringVar(&o.revision, "revision", "", "an earlier `SCHEDULE` to set beside this one")
	f.StringArrayVar(&o.otherRigs, "other-rig", nil, "rig `FILE` to set beside the plan's, alone; several: once for each")
	f.IntVar(&o.runs, "runs", risk.Runs, "runs of the simulation")
	f.BoolVar(&o.beside, "compare", true, "set other assumptions beside the bill")
	f.Lookup("seed").Usage = "of the random draw and of the simulation; it is printed, and the same seed gives the same"
	f.Lookup("out").Usage = "write the bill into folder `DIR`"
	return c
}

// leverCount is how many levers are named.
const leverCount = 5

func runPrice(path string, o *priceOptions, s *screen) error {
	defer s.done()
	ask, notes, err := o.settlePrice()
	if err != nil {
		return err
	}
	input := append(append(o.files(), path, o.revision), o.measure.door.inputs()...)
	if err := o.measure.door.apart(o.out, input); err != nil {
		return err
	}
	t, p, v, err := o.planned(path, notes, s)
	if err != nil {
		return err
	}
	if err := o.measure.door.writeRefused(path, t, input, s.talk); err != nil {
		return err
	}
	if ask.Fingerprint, err = o.fingerprint(v, ask); err != nil {
		return err
	}
	s.say("pricing")
	b, err := report.OfBill(v, p, *ask)
	if err != nil {
		return err
	}
	if o.beside {
		cases, err := o.cases(path, v, p, s)
		if err != nil {
			return err
		}
		s.say("pricing")
		if err := b.AddCases(cases, *ask); err != nil {
			return err
		}
	}
	if o.out != "" {
		if err := writePack(o.out, input, s.told(billPack(b)), s.talk); err != nil {
			return err
		}
	}
	s.done()
	return o.answer(b, p, s)
}

func (o *priceOptions) answer(b *report.Bill, p *planner.Plan, s *screen) (err error) {
	if o.format == "json" {
		err = jsonout.Write(s.answer, b)
	} else {
		err = emphasised(s.answer, func(w io.Writer) error { return text.Bill(w, b) })
	}
	if err == nil && (p.Partly() || len(b.NotPriced) > 0) {
		return errPartly
	}
	return err
}

// billPack is the documents of price -o.
func billPack(b *report.Bill) []document {
	return []document{
		{"bill.json", func(w io.Writer) error { return jsonout.Write(w, b) }},
		{"bill.xlsx", func(w io.Writer) error { return xlsx.Bill(w, b) }},
		{"risk.xlsx", func(w io.Writer) error { return xlsx.Risk(w, b) }},
		{"terms.txt", func(w io.Writer) error { return text.Terms(w, b) }},
	}
}

// settlePrice checks the flags and reads the rates and what is supposed.
func (o *priceOptions) settlePrice() (*report.PriceAsk, []string, error) {
	if err := refuseUnits(o.measure.units, "a bill counts m2", "leave --units out; the plan's own pack takes it"); err != nil {
		return nil, nil, err
	}
	if o.rates == "" {
		return nil, nil, misuse{hint{errors.New("no rates given"), "give --rates and a rates file; examples/estimator has one to start from"}}
	}
	if o.runs < 100 || o.runs > 1_000_000 {
		return nil, nil, misuse{fmt.Errorf("--runs %d: expected 100 to 1000000", o.runs)}
	}
	notes, err := o.settle()
	if err != nil {
		return nil, nil, err
	}
	a := &report.PriceAsk{Told: o.told, Ahead: o.set.Ahead, Headroom: o.set.Headroom, Sample: o.sample.ask, Runs: o.runs, Seed: o.sample.ask.Seed, Levers: leverCount}
	if a.Rates, err = fromFile("rates file", o.rates, func(r io.Reader) (*price.Rates, error) { return price.Load(r, o.rates) }); err != nil {
		return nil, nil, err
	}
	if a.Prior, err = o.readPrior(); err != nil {
		return nil, nil, err
	}
	return a, notes, nil
}

// readPrior finds a built-in prior, or reads a file where the name is that of
// one, and updates it by past results.
func (o *priceOptions) readPrior() (*risk.Prior, error) {
	p, err := risk.Preset(o.prior)
	if err != nil {
		if !strings.HasSuffix(o.prior, ".toml") && !exists(o.prior) {
			return nil, misuse{err}
		}
		p, err = fromFile("prior file", o.prior, func(r io.Reader) (*risk.Prior, error) { return risk.Load(r, o.prior) })
	}
	if err != nil || o.results == "" {
		return p, err
	}
	data, err := readInput("results file", o.results, mostCuts)
	if err != nil {
		return nil, err
	}
	return risk.Update(p, bytes.NewReader(data), o.results)
}

// fromFile reads a settings file.
func fromFile[T any](what, path string, read func(io.Reader) (T, error)) (T, error) {
	f, err := readSettings(what, path)
	if err != nil {
		var none T
		return none, err
	}
	return read(f)
}

// files are the files that the bill hangs on beside the schedules.
func (o *priceOptions) files() []string {
	list := []string{o.rates, o.prior, o.results, o.job, o.cuts, o.keep, o.measure.basis, o.set.Scheme, o.sample.regime}
	return append(append(list, o.rigs...), o.otherRigs...)
}

// fingerprint sums up everything that the bill hangs on: the files by what is in
// them, and the settings.
func (o *priceOptions) fingerprint(v *report.Plan, a *report.PriceAsk) (report.Fingerprint, error) {
	parts := [][]byte{[]byte("price 1")} // to be counted up when the same files come to another bill
	for _, path := range append(o.files(), o.revision) {
		data := []byte(path) // the name of something built in, or nothing
		if st, err := os.Stat(path); err == nil && !st.Mode().IsRegular() {
			return report.Fingerprint{}, fmt.Errorf("%s isn't a plain file, and a bill names the files that it is made from; save it as one", path)
		} else if err == nil {
			if data, err = source.Load(path); err != nil {
				return report.Fingerprint{}, err
			}
		}
		parts = append(parts, data)
	}
	settings, err := json.Marshal([]any{v.Settings, a.Told, a.Sample, a.Runs, o.beside, o.set.SignGiven, o.set.SchemeGiven})
	return report.FingerprintOf(v.Schedule.SHA256, append(parts, settings)...), err
}
