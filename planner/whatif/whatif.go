// Package whatif plans the same schedule under other assumptions: another rig,
// one class tighter, another pressure, another headroom, straights in one piece,
// a person's own cuts. Each is a whole plan; what they come to stands side by
// side.
package whatif

import (
	"fmt"
	"slices"

	"blankoff/planner"
	"blankoff/planner/rig"
	"blankoff/planner/tightness"
	"blankoff/takeoff"
)

// Base is what every variant starts from. Read measures the schedule afresh for
// a length of pieces (m, 0 by shape), because a plan notes things on its items.
type Base struct {
	Read        func(pieceLength float64) (*takeoff.Takeoff, error)
	Settings    planner.Settings
	PieceLength float64
}

// Asked says which variants are wanted.
type Asked struct {
	PressuresPa []float64 // every row tested at these, as far as ceilings allow
	Headrooms   []float64
	Tighter     bool // every row one class tighter
	Whole       bool // no cuts inside straights
	OwnCuts     []planner.OwnCut
}

// Variant is one set of assumptions and what it comes to.
type Variant struct {
	Name string
	Plan *planner.Plan // nil where no plan could be made
	Why  string        // why not
}

// variant is one change of the base.
type variant struct {
	name  string
	piece float64
	set   func(*planner.Settings)
	rows  func(*takeoff.Takeoff) error
}

// wholeLength is a length of pieces that no straight reaches, m.
const wholeLength = 1e6

// Run plans the base and every variant asked for, in a fixed order. The error is
// that of the base: without it there is nothing to compare with.
func Run(b Base, a Asked) ([]Variant, error) {
	var out []Variant
	for i, v := range b.variants(a) {
		p, err := b.plan(v)
		if i == 0 && err != nil {
			return nil, err
		}
		o := Variant{Name: v.name, Plan: p}
		if err != nil {
			o.Plan, o.Why = nil, err.Error()
		}
		out = append(out, o)
	}
	return out, nil
}

// variants lists the base and the changes asked for.
func (b Base) variants(a Asked) []variant {
	list := []variant{{name: "as asked", piece: b.PieceLength}}
	if rigs := b.Settings.Rigs; len(rigs) > 1 {
		for _, r := range rigs {
			list = append(list, variant{name: "rig " + r.Name + " alone", piece: b.PieceLength,
				set: func(s *planner.Settings) { s.Rigs = rig.Fleet{r} }})
		}
	}
	if a.Tighter {
		list = append(list, variant{name: "one class tighter", piece: b.PieceLength, rows: b.tighten})
	}
	for _, pa := range a.PressuresPa {
		list = append(list, variant{name: "test pressure " + b.Settings.Units.Pressure(pa), piece: b.PieceLength, rows: func(t *takeoff.Takeoff) error {
			for i := range t.Items {
				t.Items[i].TestPa = pa
			}
			return nil
		}})
	}
	for _, h := range a.Headrooms {
		list = append(list, variant{name: fmt.Sprintf("headroom %g", h), piece: b.PieceLength,
			set: func(s *planner.Settings) { s.Headroom = h }})
	}
	if a.Whole {
		list = append(list, variant{name: "no cuts inside straights", piece: wholeLength})
	}
	if len(a.OwnCuts) > 0 {
		list = append(list, variant{name: "own cuts, completed", piece: b.PieceLength,
			set: func(s *planner.Settings) { s.OwnCuts = a.OwnCuts }})
	}
	return list
}

// plan makes one variant's plan.
func (b Base) plan(v variant) (*planner.Plan, error) {
	t, err := b.Read(v.piece)
	if err != nil {
		return nil, err
	}
	if v.rows != nil {
		if err := v.rows(t); err != nil {
			return nil, err
		}
	}
	set := b.Settings
	if v.set != nil {
		v.set(&set)
	}
	return planner.Make(t, set)
}

// tighten puts every row one class tighter: the class of its scheme with the
// next smaller limit. In a scheme of numbers there is no next class.
func (b Base) tighten(t *takeoff.Takeoff) error {
	for i := range t.Items {
		it := &t.Items[i]
		scheme, class := it.Scheme, it.Class
		if scheme == "" {
			scheme = b.Settings.Scheme
		}
		if class == "" {
			class = b.Settings.Class
		}
		s, err := b.scheme(scheme)
		if err != nil || class == "" {
			continue // the plan itself says what is wrong with the row
		}
		c, err := s.Class(class)
		if err != nil {
			continue
		}
		next, ok := tighter(s, c)
		if !ok {
			return fmt.Errorf("class %s of scheme %s is the tightest that there is", c.Name, s.Name)
		}
		it.Class = next.Name
	}
	return nil
}

func (b Base) scheme(name string) (*tightness.Scheme, error) {
	if own := b.Settings.Own; own != nil && own.Name == name {
		return own, nil
	}
	return tightness.Lookup(name)
}

// tighter is the class with the next smaller limit for the same shape.
func tighter(s *tightness.Scheme, c tightness.Class) (tightness.Class, bool) {
	list := s.Classes()
	list = slices.DeleteFunc(list, func(o tightness.Class) bool { return o.K >= c.K*(1-1e-9) || o.Shape != c.Shape })
	if len(list) == 0 {
		return c, false
	}
	return slices.MaxFunc(list, func(a, b tightness.Class) int {
		switch {
		case a.K < b.K:
			return -1
		case a.K > b.K:
			return 1
		}
		return 0
	}), true
}
