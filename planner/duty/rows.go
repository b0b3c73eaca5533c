package duty

import (
	"slices"

	"blankoff/fittings"
	"blankoff/planner/tightness"
	"blankoff/takeoff"
	"blankoff/takeoff/terms"
)

// Duty is how a piece is tested. Two pieces may share a section only if their
// duties are equal.
type Duty struct {
	System string
	Scheme string // its own name; see Rows.SchemeOf
	Class  tightness.Class
	Pa     float64 // test pressure, Pa, a magnitude
	Sign   tightness.Sign
	By     string // level or stage, where sections have to end at its changes
}

// Rows is how every row of a takeoff is tested, and what there is to say of
// that. Mark may refuse more rows and add to the faults.
type Rows struct {
	Faults      []takeoff.Fault
	Kept        map[string]int // rows whose own value differs from a flag, by flag
	DefaultSign int            // rows whose sign nobody gave
	ClassNotes  map[string]int // classes that went by the shape, with the rows concerned
	Ceilings    map[string]int // notes on unknown ceilings, with the rows concerned

	set Settings
	of  []int32 // by item: its duty in duties
	duties
	schemes map[string]*tightness.Scheme // by the name as typed
	byName  map[string]*tightness.Scheme
	refused map[int]string // item: why it is in no section, in a few words
	waiting map[int]bool   // of those, rows that only aren't up yet

	ceilings map[ceilingKey]tightness.Ceiling // what was asked once
	classes  map[classKey]classOf

	items     []takeoff.Item
	operating map[systemSign]float64 // mean operating pressures, Pa
}

// Settle finds the duty of every item in scope, and refuses, each with a
// fault, those that have none or whose test pressure is above a ceiling. It
// fails where the scheme or the class of the settings isn't known.
func Settle(t *takeoff.Takeoff, set Settings) (*Rows, error) {
	d := &Rows{
		set: set, items: t.Items, of: make([]int32, len(t.Items)), duties: newDuties(),
		ceilings: map[ceilingKey]tightness.Ceiling{}, classes: map[classKey]classOf{},
		schemes: map[string]*tightness.Scheme{}, byName: map[string]*tightness.Scheme{}, refused: map[int]string{}, waiting: map[int]bool{},
		Kept: map[string]int{}, ClassNotes: map[string]int{}, Ceilings: map[string]int{},
	}
	if _, err := d.scheme(set.Scheme); err != nil {
		return nil, err
	}
	if s := d.schemes[set.Scheme]; set.Class != "" {
		if _, _, err := s.ClassFor(set.Class, tightness.Rectangular); err != nil && !anyOwnScheme(t) {
			return nil, err
		}
	}
	if err := onTerms(t, set.On); err != nil {
		return nil, err
	}
	if set.PressureRule == "operating" {
		d.meanOperating()
	}
	asked := 0
	for i := range t.Items {
		if it := &t.Items[i]; !it.Refused && it.Scope != terms.Out {
			asked++
			d.settle(i, it)
			d.await(i, it)
		}
	}
	d.onceForAll(asked, t.Schedule.File)
	return d, nil
}

// Refused counts the rows that were measured but are refused here, and sums their
// areas, m2.
func (d *Rows) Refused() (rows int, area float64) {
	if len(d.refused) == 0 {
		return 0, 0
	}
	for i := range d.items {
		if d.isRefused(i) {
			rows++
			area += d.items[i].Area
		}
	}
	return rows, area
}

// isRefused reports a row that was measured but is refused here.
func (d *Rows) isRefused(i int) bool { return d.refused[i] != "" && !d.waiting[i] }

// SchemeOf is the scheme of a duty; nil where the duty has none.
func (d *Rows) SchemeOf(o Duty) *tightness.Scheme { return d.byName[o.Scheme] }

// onceForAll says it once where the same thing is missing on every row.
func (d *Rows) onceForAll(asked int, file string) {
	for _, w := range []struct{ heading, expected, message string }{
		{"class", "a class on every row, or --class", "no row has a class and --class isn't given; the specification says which, e.g. --class B"},
		{"test_pa", "a test pressure on every row, or --test-pressure", "no row has a test pressure and --test-pressure isn't given; the specification says which (400 Pa is often used), e.g. --test-pressure 400"},
	} {
		missing := func(f takeoff.Fault) bool { return f.Heading == w.heading && f.Value == "" }
		n := 0
		for _, f := range d.Faults {
			if missing(f) {
				n++
			}
		}
		if n < asked || asked == 0 {
			continue
		}
		d.Faults = slices.DeleteFunc(d.Faults, missing)
		d.Faults = append([]takeoff.Fault{{File: file, Heading: w.heading, Expected: w.expected, Message: w.message}}, d.Faults...)
	}
}

// anyOwnScheme reports whether a row names its own scheme.
func anyOwnScheme(t *takeoff.Takeoff) bool {
	for i := range t.Items {
		if t.Items[i].Scheme != "" {
			return true
		}
	}
	return false
}

// scheme is a scheme by its name as typed, the user's own before those built in.
func (d *Rows) scheme(name string) (*tightness.Scheme, error) {
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
func (d *Rows) settle(i int, it *takeoff.Item) {
	refuse := func(heading, value, expected, message, why string) {
		d.Faults = append(d.Faults, it.At.Fault(heading, value, expected, message))
		d.refused[i] = why
	}
	o := Duty{System: it.System}
	name := d.pick("--scheme", it.Scheme, d.set.Scheme)
	s, err := d.scheme(name)
	if err != nil {
		refuse("scheme", it.Scheme, "a scheme", err.Error(), "scheme not known")
		return
	}
	o.Scheme = s.Name
	class := d.pick("--class", it.Class, d.set.Class)
	if through := it.Scope == terms.Through; class == "" && through {
		// it has what the piece has that it hangs on
	} else if class == "" {
		refuse("class", "", "a class of scheme "+s.Name, "no class on this row and no --class; add one of the two", "no class")
	} else if o.Class, err = d.classOf(s, class, it); err != nil {
		refuse("class", class, "a class of scheme "+s.Name, err.Error(), "class not known")
	} else if ok, why := s.Covers(o.Class, shapeOf(it)); !ok && it.Piece.Shape != fittings.NoShape {
		refuse("class", class, "a class for this shape", why, "class not for this shape")
	}
	o.Sign = tightness.Sign(d.pick("--sign", it.Sign, d.set.Sign))
	if it.Sign == "" && !d.set.SignGiven {
		d.DefaultSign++
	}
	o.Pa = it.TestPa
	if d.set.TestPa > 0 {
		if o.Pa == 0 {
			o.Pa = d.set.TestPa
		} else if o.Pa != d.set.TestPa {
			d.Kept["--test-pressure"]++
		}
	}
	switch {
	case o.Pa > 0:
	case d.set.PressureRule == "design" && it.DesignPa > 0:
		o.Pa = d.byDesign(it, s, o)
	case d.set.PressureRule == "operating":
		o.Pa = d.operating[systemSign{d.systemOf(it), o.Sign}]
	}
	if o.Pa == 0 && it.Scope != terms.Through {
		refuse("test_pa", "", "a test pressure in Pa", "no test pressure on this row and no --test-pressure; 400 Pa is often used, but it is for the specification to say", "no test pressure")
	}
	d.of[i] = d.file(o)
	if _, bad := d.refused[i]; !bad && o.Pa > 0 && o.Class.K > 0 {
		d.holdCeilings(i, it, s, o)
	}
}

// classOf finds the class of an item, which may go by its shape.
func (d *Rows) classOf(s *tightness.Scheme, name string, it *takeoff.Item) (tightness.Class, error) {
	key := classKey{s, name, it.Piece.Shape}
	known, ok := d.classes[key]
	if !ok {
		known.class, known.note, known.err = s.ClassFor(name, shapeOf(it))
		d.classes[key] = known
	}
	if known.note != "" {
		d.ClassNotes[known.note]++
	}
	return known.class, known.err
}

// classKey is what a class is found by.
type classKey struct {
	scheme *tightness.Scheme
	name   string
	shape  fittings.Shape
}

// classOf is the class that was found, or why none was.
type classOf struct {
	class tightness.Class
	note  string
	err   error
}

// pick is a row's own value, or the flag's where it has none.
func (d *Rows) pick(flag, own, given string) string {
	switch {
	case own == "":
		return given
	case given != "" && !sameWord(own, given) && d.asked(flag):
		d.Kept[flag]++
	}
	return own
}

// asked reports whether a flag was given and isn't only the default.
func (d *Rows) asked(flag string) bool {
	switch flag {
	case "--sign":
		return d.set.SignGiven
	case "--scheme":
		return d.set.SchemeGiven
	}
	return true
}
