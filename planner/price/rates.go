package price

import (
	"io"
	"math"
	"strings"

	"blankoff/planner/tightness"
)

// Rates is a rates file. Every rate may be missing.
type Rates struct {
	Name        string
	Currency    Currency
	Unit        map[string]Money // rates of [rates], by key
	Hire        []Hire
	Blanks      []BlankRate // in the order of the file: the first that fits a size is its
	Girth       *GirthRate  // for sizes that none of Blanks fits
	Markup      int64       // hundredths of a percent
	Minimum     Money       // of the job; 0: none
	MinimumTrip Money       // of every visit; 0: none
	ValidDays   int         // 0: not stated
	Allowances  Allowances
	Provisional []Provisional
	Assumptions []string // the user's own, for the quotation
	Exclusions  []string
}

// Hire is what a rig costs on site.
type Hire struct {
	Rig      string // "" any rig that has no rates of its own
	Day      *Money // a day on site
	Delivery *Money // a visit
}

// BlankRate is for blanks up to a size.
type BlankRate struct {
	UpTo      float64 // longer side or diameter, mm
	Shape     string  // "" any
	Make, Fit *Money
}

// GirthRate is base + per metre of girth.
type GirthRate struct {
	MakeBase, MakePerMetre, FitBase, FitPerMetre *Money
}

// Allowances are quantities that no plan knows.
type Allowances struct {
	RetestsExpected bool   // as many as the risk part expects
	RetestsPercent  *int64 // of the tests, in hundredths of a percent
	WaitingHours    Quantity
	AbortiveVisits  Quantity
	OvertimeHours   Quantity
	Blanks          *BlankAllowance
}

// BlankAllowance is for the blanks of groupings, which no plan knows.
type BlankAllowance struct {
	Fits, Makes Quantity
	Fit, Make   *Money
}

// Provisional is a sum that the user puts in.
type Provisional struct {
	What   string
	Amount Money
}

const (
	mostMoney   = 1_000_000_000_000
	wantMoney   = "whole minor units (cents, say), 0 to 1000000000000, without a point"
	wantPercent = "a percentage with at most two decimals, 0 to 1000"
	wantHours   = "hours with at most two decimals, 0 to 100000"
	wantCount   = "a number with at most two decimals, 0 to 100000"
)

// Load reads a rates file (TOML); name is the file's and appears in faults.
// Every fault is found in one go. The error is a [tightness.Faults].
func Load(r io.Reader, name string) (*Rates, error) {
	t, err := tightness.ReadTable(r, name)
	if err != nil {
		return nil, err
	}
	t.Only("name", "currency", "symbol", "minor_digits", "markup_percent", "minimum_charge", "minimum_a_visit", "valid_days",
		"rates", "hire", "blank", "blank_girth", "allowances", "provisional", "assumptions", "exclusions")
	o := &Rates{Name: t.Text("name"), Unit: map[string]Money{}, Assumptions: t.Texts("assumptions"), Exclusions: t.Texts("exclusions")}
	o.readCurrency(t)
	if v, ok := hundredths(t, "markup_percent", 1000, wantPercent); ok {
		o.Markup = v
	}
	o.Minimum, o.MinimumTrip = value(money(t, "minimum_charge")), value(money(t, "minimum_a_visit"))
	if v, ok := t.Whole("valid_days", 1, 3650, "days, a whole number from 1 to 3650"); ok {
		o.ValidDays = int(v)
	}
	o.readUnit(t.Table("rates"))
	for _, h := range t.Tables("hire") {
		o.readHire(h)
	}
	for _, b := range t.Tables("blank") {
		o.readBlank(b)
	}
	o.readGirth(t.Table("blank_girth"))
	o.readAllowances(t.Table("allowances"))
	for _, p := range t.Tables("provisional") {
		p.Only("what", "amount")
		p.Require("what", "what the sum is for")
		p.Require("amount", wantMoney)
		o.Provisional = append(o.Provisional, Provisional{p.Text("what"), value(money(p, "amount"))})
	}
	if err := t.Err(); err != nil {
		return nil, err
	}
	return o, nil
}

func (o *Rates) readCurrency(t *tightness.Table) {
	const want = "the currency's code of three capital letters (ISO 4217)"
	t.Require("currency", want)
	t.Require("minor_digits", "the digits after the point: 0, 2 or 3")
	o.Currency.Code, o.Currency.Symbol = t.Text("currency"), t.Text("symbol")
	if c := o.Currency.Code; c != "" && (len(c) != 3 || strings.Trim(c, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "") {
		t.Fault("currency", want)
	}
	if len([]rune(o.Currency.Symbol)) > 5 {
		t.Fault("symbol", "at most five letters")
	}
	if v, ok := t.Whole("minor_digits", 0, 3, "the digits after the point: 0, 2 or 3"); ok {
		if v == 1 {
			t.Fault("minor_digits", "the digits after the point: 0, 2 or 3")
		}
		o.Currency.Digits = int(v)
	}
}

func (o *Rates) readUnit(t *tightness.Table) {
	if t == nil {
		return
	}
	keys := make([]string, len(units))
	for i, u := range units {
		keys[i] = u.key
	}
	t.Only(keys...)
	for _, key := range keys {
		if m := money(t, key); m != nil {
			o.Unit[key] = *m
		}
	}
}

func (o *Rates) readHire(t *tightness.Table) {
	t.Only("rig", "day", "delivery")
	h := Hire{Rig: t.Text("rig"), Day: money(t, "day"), Delivery: money(t, "delivery")}
	for _, other := range o.Hire {
		if other.Rig == h.Rig {
			t.Problem("rig", "named twice", "one [[hire]] for each rig")
		}
	}
	o.Hire = append(o.Hire, h)
}

func (o *Rates) readBlank(t *tightness.Table) {
	const shapes = `"rectangular", "circular" or "flat-oval", or no shape for all`
	t.Only("up_to_mm", "shape", "make", "fit")
	b := BlankRate{UpTo: math.Inf(1), Shape: t.Text("shape"), Make: money(t, "make"), Fit: money(t, "fit")}
	if v, ok := t.Number("up_to_mm", 1, 100000, "the longer side or the diameter in mm, 1 to 100000; leave it out for all sizes"); ok {
		b.UpTo = v
	}
	switch b.Shape {
	case "", "rectangular", "circular", "flat-oval":
	default:
		t.Fault("shape", shapes)
	}
	if !t.Has("make") && !t.Has("fit") {
		t.Problem("make", "missing, and so is fit", "at least one of the two")
	}
	for _, other := range o.Blanks {
		if (other.Shape == "" || other.Shape == b.Shape) && other.UpTo >= b.UpTo {
			t.Problem("up_to_mm", "never comes to it: an earlier [[blank]] takes these sizes", "the smaller sizes first")
			break
		}
	}
	o.Blanks = append(o.Blanks, b)
}

func (o *Rates) readGirth(t *tightness.Table) {
	if t == nil {
		return
	}
	t.Only("make_base", "make_per_metre", "fit_base", "fit_per_metre")
	o.Girth = &GirthRate{money(t, "make_base"), money(t, "make_per_metre"), money(t, "fit_base"), money(t, "fit_per_metre")}
}

func (o *Rates) readAllowances(t *tightness.Table) {
	if t == nil {
		return
	}
	t.Only("retests", "retests_percent", "waiting_hours", "abortive_visits", "overtime_hours", "blank_fits", "blank_makes", "blank_fit", "blank_make")
	a := &o.Allowances
	if t.Has("retests") {
		if a.RetestsExpected = t.Text("retests") == "expected"; !a.RetestsExpected {
			t.Fault("retests", `"expected", or a share of the tests in retests_percent`)
		}
	}
	if v, ok := hundredths(t, "retests_percent", 1000, wantPercent); ok {
		a.RetestsPercent = &v
		if a.RetestsExpected {
			t.Problem("retests_percent", "two words on the same thing", "retests or retests_percent, one of the two")
		}
	}
	for _, w := range []struct {
		key, want string
		to        *Quantity
	}{{"waiting_hours", wantHours, &a.WaitingHours}, {"abortive_visits", wantCount, &a.AbortiveVisits}, {"overtime_hours", wantHours, &a.OvertimeHours}} {
		if v, ok := hundredths(t, w.key, 100000, w.want); ok {
			*w.to = Quantity(v)
		}
	}
	if t.Has("blank_fits") || t.Has("blank_makes") {
		b := &BlankAllowance{Fit: money(t, "blank_fit"), Make: money(t, "blank_make")}
		fits, _ := hundredths(t, "blank_fits", 100000, wantCount)
		makes, _ := hundredths(t, "blank_makes", 100000, wantCount)
		b.Fits, b.Makes, a.Blanks = Quantity(fits), Quantity(makes), b
	}
}

// money reads whole minor units; nil where there are none.
func money(t *tightness.Table, key string) *Money {
	v, ok := t.Whole(key, 0, mostMoney, wantMoney)
	if !ok {
		return nil
	}
	m := Money(v)
	return &m
}

func value(m *Money) Money {
	if m == nil {
		return 0
	}
	return *m
}

// hundredths reads a number with at most two decimals.
func hundredths(t *tightness.Table, key string, most float64, want string) (int64, bool) {
	v, ok := t.Number(key, 0, most, want)
	if !ok {
		return 0, false
	}
	h := math.Round(v * hundred)
	if math.Abs(v*hundred-h) > 1e-6 {
		t.Fault(key, want)
		return 0, false
	}
	return int64(h), true
}
