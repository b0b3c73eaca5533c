// Package effect says what a wrong area does to a leakage test: to the limit, to
// the class that the test proves, and to whom it favours.
package effect

import (
	"errors"
	"fmt"
	"math"
	"strconv"

	"blankoff/planner/tightness"
	"blankoff/takeoff"
	"blankoff/takeoff/terms"
)

// Duty is how a part is tested.
type Duty struct {
	Scheme *tightness.Scheme
	Class  tightness.Class
	Pa     float64 // test pressure, Pa, a magnitude
	Sign   string  // positive or negative
}

// Flags are what holds for rows that don't say it themselves.
type Flags struct {
	Scheme      *tightness.Scheme
	Class, Sign string
	Pa          float64 // 0: not given
}

// DutyOf finds how some rows are tested. All have to be tested alike; the error
// says what isn't known, or what differs.
func DutyOf(t *takeoff.Takeoff, rows []int, f Flags) (Duty, error) {
	d := Duty{Scheme: f.Scheme, Sign: f.Sign}
	class := ""
	for k, i := range rows {
		it := &t.Items[i]
		if it.Scope != terms.In {
			continue
		}
		s, c, pa, sign := f.Scheme, or(it.Class, f.Class), it.TestPa, or(it.Sign, f.Sign)
		if it.Scheme != "" {
			own, err := tightness.Lookup(it.Scheme)
			if err != nil {
				return Duty{}, err
			}
			s = own
		}
		if pa == 0 {
			pa = f.Pa
		}
		switch {
		case c == "":
			return Duty{}, errors.New("no class: give --class, or a class on every row")
		case pa == 0:
			return Duty{}, errors.New("no test pressure: give --test-pressure, or test_pa on every row")
		case k == 0:
			d, class = Duty{Scheme: s, Pa: pa, Sign: sign}, c
		case d.Scheme != s || class != c:
			return Duty{}, fmt.Errorf("its rows have several classes, %s and %s among them", class, c)
		case d.Pa != pa:
			return Duty{}, fmt.Errorf("its rows have several test pressures, %g and %g Pa among them", d.Pa, pa)
		}
	}
	if d.Scheme == nil || class == "" {
		return Duty{}, errors.New("none of its rows is in scope")
	}
	shape := tightness.Rectangular
	if len(rows) > 0 {
		shape = tightness.Shape(or(t.Items[rows[0]].Piece.Shape.String(), string(shape)))
	}
	found, _, err := d.Scheme.ClassFor(class, shape)
	d.Class = found
	return d, err
}

func or(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// Effect is what a stated area does to a test.
type Effect struct {
	Duty
	PerM2       float64 // limit, L/s per m2
	Stated      float64 // m2
	True        float64 // m2
	Ratio       float64 // stated / true
	LimitStated float64 // L/s
	LimitTrue   float64 // L/s
	// Proves is the tightest class that a pass at the limit of the stated area
	// proves on the true one; "" is none of the scheme's.
	Proves    string
	Reading   float64 // L/s; 0: none
	BreakEven float64 // m2: the least area at which the reading passes
}

// Of works out what a stated area does. Areas are m2, over 0; reading is L/s, 0
// for none.
//
// A part that passes just so leaks f x stated. On the true area that is
// f x stated / true per m2, so it proves the class whose k is at least
// k x stated / true. A reading q passes down to an area of q / f.
func Of(d Duty, stated, worked, reading float64) Effect {
	per := d.Scheme.Limit(d.Class, d.Pa)
	e := Effect{Duty: d, PerM2: per, Stated: stated, True: worked, Ratio: stated / worked, LimitStated: per * stated, LimitTrue: per * worked, Reading: reading}
	if reading > 0 {
		e.BreakEven = reading / per
	}
	if e.Proves = proves(d, e.Ratio); math.Abs(e.Ratio-1) <= negligible {
		e.Proves = d.Class.Name
	}
	return e
}

// negligible is a share by which an area may be off without a word on the class
// that it proves: less than the uncertainty of any reading. An assumption.
const negligible = 0.01

// proves is the tightest class whose k covers that of d times a ratio.
func proves(d Duty, ratio float64) string {
	const slack = 1 + 1e-9
	k := d.Class.K * ratio
	if n, err := strconv.ParseFloat(d.Class.Name, 64); d.Scheme.Numbered && err == nil {
		return strconv.FormatFloat(math.Ceil(n*ratio*10/slack)/10, 'f', -1, 64)
	}
	name, least := "", math.Inf(1)
	for _, c := range d.Scheme.Classes() {
		if c.Shape != "" && d.Class.Shape != "" && c.Shape != d.Class.Shape {
			continue
		}
		if c.K*slack >= k && c.K < least {
			name, least = c.Name, c.K
		}
	}
	return name
}

// Passes reports whether the reading is within the limit of an area.
func (e *Effect) Passes(area float64) bool { return e.Reading <= e.PerM2*area }

// Favours says in whose favour the stated area is: "whoever has to pass", their
// "opposite", or "" where it makes no difference to speak of, by a share.
func (e *Effect) Favours(tolerance float64) string {
	switch {
	case e.Ratio > 1+tolerance:
		return "in favour of whoever has to pass"
	case e.Ratio < 1-tolerance:
		return "against whoever has to pass"
	}
	return ""
}

// FrenchRule is the area that French practice accepts as a flat estimate, m2, for
// a network's greatest flow, L/s: 180 m2 per m3/s, which is 0.05 m2 per m3/h.
//
// Source: answers of Cerema to testers on sampling (2015). A coarse rule: a flag,
// never a correction.
func FrenchRule(flow float64) float64 { return 180 * flow / 1000 }
