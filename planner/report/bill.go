package report

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"

	"blankoff/planner"
	"blankoff/planner/job"
	"blankoff/planner/price"
	"blankoff/planner/price/risk"
	"blankoff/planner/units"
	"blankoff/takeoff"
)

// Bill is a priced plan, ready to be written. Its JSON form is a contract like
// that of [Plan]. Money in whole minor units.
type Bill struct {
	Schedule    takeoff.Schedule `json:"schedule"`
	Fingerprint Fingerprint      `json:"fingerprint"`
	Job         *Job             `json:"job,omitempty"`
	Settings    Settings         `json:"settings"`
	RatesName   string           `json:"rates"`
	Counts      Counts           `json:"quantities"`
	*price.Bill
	ValidDays   int             `json:"valid_days"` // 0: not stated
	Risk        *Risk           `json:"risk,omitempty"`
	Comparison  []PriceVariant  `json:"comparison"`
	Assumptions []string        `json:"assumptions"`
	Exclusions  []string        `json:"exclusions"`
	Look        []string        `json:"look"`                       // what has to be settled before it is sent
	Nothing     string          `json:"nothing_to_price,omitempty"` // why there is no test
	Faults      []takeoff.Fault `json:"faults"`
	plan        *Plan
	tests       []price.Test
}

// Fingerprint tells one bill from another: the same schedule, settings and
// rates give the same one, whatever the files are called.
type Fingerprint struct {
	Schedule string `json:"schedule_sha256"`
	Settings string `json:"settings_sha256"`
	Whole    string `json:"sha256"` // of both
}

// Short is the first letters of the whole.
func (f Fingerprint) Short() string { return f.Whole[:min(16, len(f.Whole))] }

// FingerprintOf makes a fingerprint of a schedule's sum and everything else that
// the bill hangs on.
func FingerprintOf(schedule string, parts ...[]byte) Fingerprint {
	h := sha256.New()
	for _, p := range parts {
		fmt.Fprintf(h, "%d\n", len(p))
		h.Write(p)
	}
	f := Fingerprint{Schedule: schedule, Settings: hex.EncodeToString(h.Sum(nil))}
	whole := sha256.Sum256([]byte(f.Schedule + "\n" + f.Settings))
	f.Whole = hex.EncodeToString(whole[:])
	return f
}

// Counts are what a bill counts, from the plan.
type Counts struct {
	Tests     int     `json:"tests"`
	Planned   int     `json:"sections_planned"` // before a sample is taken
	Visits    int     `json:"visits"`
	Days      int     `json:"days"`
	Crew      int     `json:"crew"`
	CrewDays  int     `json:"crew_days"`
	Area      float64 `json:"area_m2"`
	Hours     float64 `json:"hours"` // tests, blanking and moving
	Fits      int     `json:"fits"`
	Makes     int     `json:"makes"`
	Groupings int     `json:"groupings"` // tests whose inner blanks aren't known
	Least     bool    `json:"at_least"`
}

// Risk is what the job may come to.
type Risk struct {
	Prior     string        `json:"prior"`
	Title     string        `json:"title"`
	Figures   []risk.Figure `json:"figures"`
	Past      *risk.Past    `json:"past_results,omitempty"`
	Outcome   *risk.Outcome `json:"outcome"`
	Enough    float64       `json:"chance_within_total"` // that the total of the bill is enough
	EnoughErr float64       `json:"chance_within_total_error"`
	LeverRuns int           `json:"lever_runs"`
	LeverBase float64       `json:"lever_base_minor"` // P80
	Levers    []risk.Lever  `json:"levers"`
	Unpriced  []string      `json:"not_priced"` // what would cost money in the risk and has no rate
}

// PriceAsk is what a plan is priced with.
type PriceAsk struct {
	Told        job.Job
	Ahead       bool
	Headroom    float64
	Sample      SampleAsk
	Rates       *price.Rates
	Prior       *risk.Prior
	Runs        int
	Seed        uint64
	Levers      int
	Fingerprint Fingerprint
}

// priced is one plan priced.
type priced struct {
	work *price.Work
	job  *risk.Job
	bill *price.Bill
	out  *risk.Outcome
}

// priceOf prices a plan and runs its risk.
func priceOf(v *Plan, p *planner.Plan, a *PriceAsk, prior *risk.Prior, ownBlanks bool) (*priced, error) {
	o := &priced{work: v.Work(a.Ahead, a.Told.Programme)}
	o.work.OwnBlanks = ownBlanks
	o.job = &risk.Job{Work: o.work, Rates: a.Rates, Headroom: a.Headroom}
	var err error
	if o.job.Later, err = v.widened(p, a.Sample, o.work.Sizes); err != nil {
		return nil, err
	}
	if o.bill, err = price.Make(o.work, a.Rates, prior.ExpectedRetests(len(o.work.Tests))); err != nil {
		return nil, err
	}
	o.out, err = risk.Simulate(o.job, prior, a.Runs, a.Seed)
	return o, err
}

// OfBill prices a plan and builds the view of its bill.
func OfBill(v *Plan, p *planner.Plan, a PriceAsk) (*Bill, error) {
	o, err := priceOf(v, p, &a, a.Prior, false)
	if err != nil {
		return nil, err
	}
	b := &Bill{
		Schedule: v.Schedule, Fingerprint: a.Fingerprint, Job: v.Job, Settings: v.Settings, RatesName: a.Rates.Name, Bill: o.bill,
		ValidDays: a.Rates.ValidDays, Comparison: []PriceVariant{}, Faults: v.Faults, plan: v, tests: o.work.Tests,
	}
	b.Counts, b.Nothing = countsOf(v, o.work, o.bill), v.Nothing()
	if b.Nothing != "" {
		b.terms(&a)
		return b, nil
	}
	if b.Risk, err = riskOf(o, &a); err != nil {
		return nil, err
	}
	b.terms(&a)
	return b, nil
}

func countsOf(v *Plan, w *price.Work, bill *price.Bill) Counts {
	lay := bill.Programme
	c := Counts{
		Tests: len(w.Tests), Planned: len(v.Sections), Visits: price.Stays(lay), Days: len(lay.Days), Crew: w.Set.Crew, CrewDays: lay.CrewDays(),
		Area: price.Area(w.Tests), Hours: lay.Total() / 60, Groupings: w.Groupings(),
	}
	c.Least = c.Groupings > 0
	for _, n := range w.Fits(w.Tests) {
		c.Fits += n
	}
	for _, n := range w.Needs() {
		c.Makes += n
	}
	return c
}

// riskOf builds the view of the risk.
func riskOf(o *priced, a *PriceAsk) (*Risk, error) {
	r := &Risk{Prior: a.Prior.Name, Title: a.Prior.Title, Figures: a.Prior.Figures, Past: a.Prior.Past(), Outcome: o.out, LeverRuns: risk.LeverRuns, Levers: []risk.Lever{}, Unpriced: []string{}}
	r.Enough, r.EnoughErr = o.out.Within(o.bill.Total)
	for _, x := range []struct{ key, what string }{
		{"retest", "retests"}, {"mobilisation", "visits more"}, {"crew_day", "days more"}, {"waiting_hour", "waiting"}, {"abortive_visit", "abortive visits"},
	} {
		if _, ok := a.Rates.Unit[x.key]; !ok {
			r.Unpriced = append(r.Unpriced, x.what+" ("+x.key+")")
		}
	}
	var err error
	if a.Levers > 0 {
		r.Levers, r.LeverBase, err = risk.Levers(o.job, a.Prior, a.Seed, a.Levers)
	}
	return r, err
}

// PriceVariant is what the bill comes to under other assumptions.
type PriceVariant struct {
	Name       string      `json:"name"`
	Tests      int         `json:"tests"`
	Visits     int         `json:"visits"`
	Days       int         `json:"days"`
	Area       float64     `json:"area_m2"`
	Untested   float64     `json:"not_tested_m2"`
	UnderRange int         `json:"under_range"`
	OverRange  int         `json:"over_range"`
	Total      price.Money `json:"total_minor"`
	Difference price.Money `json:"difference_minor"` // of the total, against the first
	P80        float64     `json:"p80_minor"`
	P90        float64     `json:"p90_minor"`
	NotPriced  int         `json:"lines_not_priced"`
	Note       string      `json:"note"`
	Why        string      `json:"why,omitempty"` // why there is no price
}

// PriceCase is a plan to be set beside the bill.
type PriceCase struct {
	Name      string
	View      *Plan
	Plan      *planner.Plan
	Sample    SampleAsk
	OwnBlanks bool
	Shift     float64 // of leak over limit: the same ductwork against a smaller limit; 0: none
	Earlier   bool    // an earlier revision of the schedule
	Note      string
	Why       string // why there is no plan
}

// AddCases prices plans under other assumptions. The first is the bill's own.
func (b *Bill) AddCases(cases []PriceCase, a PriceAsk) error {
	for i := range cases {
		c := &cases[i]
		o := PriceVariant{Name: c.Name, Note: c.Note, Why: c.Why}
		if c.Why == "" {
			a.Sample = c.Sample
			prior := a.Prior
			if c.Shift > 0 {
				prior = prior.Shifted(c.Shift)
			}
			x, err := priceOf(c.View, c.Plan, &a, prior, c.OwnBlanks)
			if err != nil {
				return err
			}
			o.fill(c.View, x)
			if len(b.Comparison) > 0 {
				o.Difference = o.Total - b.Comparison[0].Total
			}
			o.addNote(b, c, x)
		}
		b.Comparison = append(b.Comparison, o)
	}
	return nil
}

// addNote says what makes a variant another thing than the bill.
func (o *PriceVariant) addNote(b *Bill, c *PriceCase, x *priced) {
	var notes []string
	if x.work.Groupings() > 0 && b.Counts.Groupings == 0 {
		notes = append(notes, "a grouping, whose blanks aren't in it")
	}
	if first := b.Comparison; c.Earlier && len(first) > 0 {
		notes = append(notes, fmt.Sprintf("since then %s, %s, %+.2f m2, %s", more(first[0].Tests-o.Tests, "test"), more(first[0].Days-o.Days, "day"), first[0].Area-o.Area, signed(b.Currency, -o.Difference)))
	}
	if o.Note != "" {
		notes = append([]string{o.Note}, notes...)
	}
	o.Note = strings.Join(notes, "; ")
}

func (o *PriceVariant) fill(v *Plan, x *priced) {
	n := countsOf(v, x.work, x.bill)
	o.Tests, o.Visits, o.Days, o.Area, o.Untested = n.Tests, n.Visits, n.Days, n.Area, v.TakeoffM2-n.Area
	for _, s := range v.ToTest() {
		if s.UnderRange {
			o.UnderRange++
		}
		if s.OverRange {
			o.OverRange++
		}
	}
	o.Total, o.P80, o.P90, o.NotPriced = x.bill.Total, x.out.Money[1].Value, x.out.Money[2].Value, len(x.bill.NotPriced)
}

// more writes so many things more, or less: "+1 test", "-2 days".
func more(n int, word string) string { return fmt.Sprintf("%+d %s", n, units.Many(n, word)) }

// signed writes an amount with its sign.
func signed(c price.Currency, m price.Money) string {
	if m < 0 {
		return c.Text(m)
	}
	return "+" + c.Text(m)
}

// TestAreas are the areas of the tests, in the order of the unit prices.
func (b *Bill) TestAreas() []price.Quantity {
	var out []price.Quantity
	for i := range b.tests {
		q, _ := price.Measured(b.tests[i].Area)
		out = append(out, q)
	}
	return out
}
