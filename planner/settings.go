package planner

import (
	"fmt"
	"slices"

	"blankoff/fittings"
	"blankoff/planner/network"
	"blankoff/planner/partition"
	"blankoff/planner/rig"
	"blankoff/planner/tightness"
	"blankoff/takeoff"
)

// Settings are what a plan is made for.
type Settings struct {
	Rigs        rig.Fleet         // at least one
	Scheme      string            // for rows without one
	Own         *tightness.Scheme // a scheme of the user's own, found by its name
	SchemeGiven bool              // Scheme was asked for, not only the default
	Class       string            // for rows without one; "" none
	TestPa      float64           // for rows without one, Pa; 0 none
	Sign        string            // for rows without one: positive or negative
	DuctClass   float64           // pressure class of the duct, for rows that don't state it, Pa; 0 not stated
	SignGiven   bool              // Sign was asked for, not only the default
	Aim         partition.Aim
	TestMinutes float64 // price of one test, minutes
	MinArea     float64 // m2; a smaller section counts as under range
	MaxArea     float64 // m2; 0 none
	Headroom    float64 // how many times its limit a section may leak and still be read, >= 1
	HoldBoth    bool    // hold the exact area as well as that on the basis
	SlipJoints  string  // open or bladder: they may be blanked; made-up: they can't be
	// PressureRule is how rows without a test pressure get one: "" by TestPa
	// alone, design by the highest usual step of the scheme that the design
	// pressure and the ceilings allow.
	PressureRule string
	OwnCuts      []OwnCut // joints that a person wants cut
	onlyOwn      bool     // and no others
	By           string   // "", level or stage: sections end at its changes
	Prices       network.Prices
}

// Defaults are the settings of a plan when nothing is said.
func Defaults() Settings {
	return Settings{Scheme: "EN", Sign: "positive", TestMinutes: 90, Headroom: 1.5, SlipJoints: "open", Prices: network.DefaultPrices()}
}

// duty is how a piece is tested. Two pieces may share a section only if their
// duties and systems are equal.
type duty struct {
	system string
	scheme string
	class  tightness.Class
	pa     float64
	sign   tightness.Sign
	by     string // level or stage, where sections have to end at its changes
}

// duties settles the duty of every item and refuses those that have none.
type duties struct {
	set     Settings
	of      []duty                       // by item
	schemes map[string]*tightness.Scheme // by the name as typed
	byName  map[string]*tightness.Scheme
	faults  []takeoff.Fault
	refused map[int]string // item: why, in a few words
	kept    map[string]int // rows whose own value differs from a flag, by flag
	filled  map[string]int // rows that a flag filled
	// defaultSign counts the rows whose sign nobody gave.
	defaultSign int
	classNotes  map[string]int // classes that went by the shape, with the rows concerned
	ceilings    map[string]int // notes on unknown ceilings, with the rows concerned
}

func newDuties(t *takeoff.Takeoff, set Settings) (*duties, error) {
	d := &duties{
		set: set, of: make([]duty, len(t.Items)),
		schemes: map[string]*tightness.Scheme{}, byName: map[string]*tightness.Scheme{}, refused: map[int]string{},
		kept: map[string]int{}, filled: map[string]int{}, classNotes: map[string]int{}, ceilings: map[string]int{},
	}
	if _, err := d.scheme(set.Scheme); err != nil {
		return nil, err
	}
	if s := d.schemes[set.Scheme]; set.Class != "" {
		if _, _, err := s.ClassFor(set.Class, tightness.Rectangular); err != nil && !anyOwnScheme(t) {
			return nil, err
		}
	}
	asked := 0
	for i := range t.Items {
		if it := &t.Items[i]; !it.Refused && it.Scope != takeoff.Out {
			asked++
			d.settle(i, it)
		}
	}
	d.onceForAll(asked, t.Schedule.File)
	return d, nil
}

// onceForAll says it once where the same thing is missing on every row.
func (d *duties) onceForAll(asked int, file string) {
	for _, w := range []struct{ heading, expected, message string }{
		{"class", "a class on every row, or --class", "no row has a class and --class isn't given; the specification says which, e.g. --class B"},
		{"test_pa", "a test pressure on every row, or --test-pressure", "no row has a test pressure and --test-pressure isn't given; the specification says which (400 Pa is often used), e.g. --test-pressure 400"},
	} {
		missing := func(f takeoff.Fault) bool { return f.Heading == w.heading && f.Value == "" }
		n := 0
		for _, f := range d.faults {
			if missing(f) {
				n++
			}
		}
		if n < asked || asked == 0 {
			continue
		}
		d.faults = slices.DeleteFunc(d.faults, missing)
		d.faults = append([]takeoff.Fault{{File: file, Heading: w.heading, Expected: w.expected, Message: w.message}}, d.faults...)
	}
}

func anyOwnScheme(t *takeoff.Takeoff) bool {
	for i := range t.Items {
		if t.Items[i].Scheme != "" {
			return true
		}
	}
	return false
}

func (d *duties) scheme(name string) (*tightness.Scheme, error) {
	if s, ok := d.schemes[name]; ok {
		return s, nil
	}
	var s *tightness.Scheme
	var err error
	if own := d.set.Own; own != nil && sameWord(name, own.Name) {
		s = own
	} else {
		s, err = tightness.Lookup(name)
	}
	if err == nil {
		d.schemes[name], d.byName[s.Name] = s, s
	}
	return s, err
}

// settle finds the duty of one item.
func (d *duties) settle(i int, it *takeoff.Item) {
	refuse := func(heading, value, expected, message, why string) {
		d.faults = append(d.faults, it.At.Fault(heading, value, expected, message))
		d.refused[i] = why
	}
	o := duty{system: it.System}
	name := d.pick("--scheme", it.Scheme, d.set.Scheme)
	s, err := d.scheme(name)
	if err != nil {
		refuse("scheme", it.Scheme, "a scheme", err.Error(), "scheme not known")
		return
	}
	o.scheme = s.Name
	class := d.pick("--class", it.Class, d.set.Class)
	if through := it.Scope == takeoff.Through; class == "" && through {
		// it has what the piece has that it hangs on
	} else if class == "" {
		refuse("class", "", "a class of scheme "+s.Name, "no class on this row and no --class; add one of the two", "no class")
	} else if o.class, err = d.classOf(s, class, it); err != nil {
		refuse("class", class, "a class of scheme "+s.Name, err.Error(), "class not known")
	} else if ok, why := s.Covers(o.class, tightness.Shape(it.Piece.Shape.String())); !ok && it.Piece.Shape != fittings.NoShape {
		refuse("class", class, "a class for this shape", why, "class not for this shape")
	}
	o.sign = tightness.Sign(d.pick("--sign", it.Sign, d.set.Sign))
	if it.Sign == "" && !d.set.SignGiven {
		d.defaultSign++
	}
	o.pa = it.TestPa
	if d.set.TestPa > 0 {
		if o.pa == 0 {
			o.pa = d.set.TestPa
			d.filled["--test-pressure"]++
		} else if o.pa != d.set.TestPa {
			d.kept["--test-pressure"]++
		}
	}
	if o.pa == 0 && d.set.PressureRule == "design" && it.DesignPa > 0 {
		o.pa = d.byDesign(it, s, o)
	}
	if o.pa == 0 && it.Scope != takeoff.Through {
		refuse("test_pa", "", "a test pressure in Pa", "no test pressure on this row and no --test-pressure; 400 Pa is often used, but it is for the specification to say", "no test pressure")
	}
	d.of[i] = o
	if _, bad := d.refused[i]; !bad && o.pa > 0 && o.class.K > 0 {
		d.holdCeilings(i, it, s, o)
	}
}

// byDesign is the highest usual step of the scheme that the row's design
// pressure and its ceilings allow, Pa; 0 if none is.
func (d *duties) byDesign(it *takeoff.Item, s *tightness.Scheme, o duty) float64 {
	steps, _, _ := s.UsualPressures(o.sign)
	best := 0.0
	for _, pa := range steps {
		if ok, _ := s.Ceiling(o.class, shapeOf(it), o.sign, ductClass(it, d.set)).Permits(pa); ok && pa <= it.DesignPa {
			best = max(best, pa)
		}
	}
	return best
}

// classOf finds the class of an item, which may go by its shape.
func (d *duties) classOf(s *tightness.Scheme, name string, it *takeoff.Item) (tightness.Class, error) {
	c, note, err := s.ClassFor(name, shapeOf(it))
	if note != "" {
		d.classNotes[note]++
	}
	return c, err
}

// pick is a row's own value, or the flag's where it has none.
func (d *duties) pick(flag, own, given string) string {
	switch {
	case own == "":
		if given != "" && d.asked(flag) {
			d.filled[flag]++
		}
		return given
	case given != "" && !sameWord(own, given) && d.asked(flag):
		d.kept[flag]++
	}
	return own
}

// asked reports whether a flag was given and isn't only the default.
func (d *duties) asked(flag string) bool {
	switch flag {
	case "--sign":
		return d.set.SignGiven
	case "--scheme":
		return d.set.SchemeGiven
	}
	return true
}

// holdCeilings refuses a test pressure above what the row, its duct or its
// class allows.
func (d *duties) holdCeilings(i int, it *takeoff.Item, s *tightness.Scheme, o duty) {
	value := fmt.Sprintf("%.5g", o.pa)
	refuse := func(most float64, why string) {
		d.faults = append(d.faults, it.At.Fault("test_pa", value, fmt.Sprintf("at most %g Pa", most),
			fmt.Sprintf("a test at %.5g Pa is above the ceiling: %s; lower the test pressure", o.pa, why)))
		d.refused[i] = fmt.Sprintf("test pressure above the ceiling of %g Pa", most)
	}
	if it.DesignPa > 0 && o.pa > it.DesignPa*(1+1e-9) {
		refuse(it.DesignPa, fmt.Sprintf("the design pressure is %g Pa", it.DesignPa))
		return
	}
	if it.Piece.Shape == fittings.NoShape {
		return
	}
	c := s.Ceiling(o.class, shapeOf(it), o.sign, ductClass(it, d.set))
	ok, reason := c.Permits(o.pa)
	switch {
	case !ok && c.Known:
		refuse(c.Pa, c.Reason)
	case !ok:
		refuse(c.Highest, reason)
	case !c.Known:
		d.ceilings[c.Reason]++
	}
}

// ductClass is the pressure class of an item's duct, Pa; 0 where nobody stated
// it.
func ductClass(it *takeoff.Item, set Settings) float64 {
	if it.DuctClass > 0 {
		return it.DuctClass
	}
	return set.DuctClass
}
