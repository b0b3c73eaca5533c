package duty

import (
	"fmt"
	"math"

	"blankoff/fittings"
	"blankoff/planner/tightness"
	"blankoff/planner/units"
	"blankoff/takeoff"
	"blankoff/takeoff/terms"
)

// holdCeilings refuses a test pressure above what the row, its duct or its
// class allows.
func (d *Rows) holdCeilings(i int, it *takeoff.Item, s *tightness.Scheme, o Duty) {
	refuse := func(most float64, why string) {
		value := fmt.Sprintf("%.5g", o.Pa)
		d.Faults = append(d.Faults, it.At.Fault("test_pa", value, fmt.Sprintf("at most %g Pa", most),
			fmt.Sprintf("a test at %.5g Pa is above the ceiling: %s; lower the test pressure", o.Pa, why)))
		d.refused[i] = "test pressure above the ceiling of " + d.set.Units.Pressure(most)
	}
	if it.DesignPa > 0 && o.Pa > it.DesignPa*(1+1e-9) {
		refuse(it.DesignPa, fmt.Sprintf("the design pressure is %g Pa", it.DesignPa))
		return
	}
	if it.Piece.Shape == fittings.NoShape {
		return
	}
	c := d.ceiling(it, s, o)
	if ok, _ := c.Permits(o.Pa); !ok { // a fault stays in the units of the schedule
		set := d.set
		set.Units = units.SI
		c = set.Ceiling(it, s, o.Class, o.Sign)
	}
	ok, reason := c.Permits(o.Pa)
	switch {
	case !ok && c.Known:
		refuse(c.Pa, c.Reason)
	case !ok:
		refuse(c.Highest, reason)
	case !c.Known:
		d.Ceilings[c.Reason]++
	}
}

// ceilingKey is what a ceiling depends on.
type ceilingKey struct {
	scheme *tightness.Scheme
	class  tightness.Class
	shape  fittings.Shape
	sign   tightness.Sign
	built  float64
}

// ceiling is Settings.Ceiling, asked once for all rows that are alike.
func (d *Rows) ceiling(it *takeoff.Item, s *tightness.Scheme, o Duty) tightness.Ceiling {
	key := ceilingKey{s, o.Class, it.Piece.Shape, o.Sign, it.DuctClass}
	c, ok := d.ceilings[key]
	if !ok {
		c = d.set.Ceiling(it, s, o.Class, o.Sign)
		d.ceilings[key] = c
	}
	return c
}

// Ceiling is the ceiling of a scheme on the test pressure of an item, in a class
// and of a sign, by the item's shape and the pressure class of its duct: its
// own, or that of the settings where the row states none. The item's design
// pressure isn't in it.
func (s Settings) Ceiling(it *takeoff.Item, scheme *tightness.Scheme, class tightness.Class, sign tightness.Sign) tightness.Ceiling {
	built := it.DuctClass // Pa; 0 where nobody stated it
	if built <= 0 {
		built = s.DuctClass
	}
	return scheme.CeilingIn(s.Units.PressureWords, class, shapeOf(it), sign, built)
}

// byDesign is the highest usual step of the scheme that the row's design
// pressure and its ceilings allow, Pa; 0 if none is.
func (d *Rows) byDesign(it *takeoff.Item, s *tightness.Scheme, o Duty) float64 {
	steps, _, _ := s.UsualPressures(o.Sign)
	best := 0.0
	for _, pa := range steps {
		if ok, _ := d.set.Ceiling(it, s, o.Class, o.Sign).Permits(pa); ok && pa <= it.DesignPa {
			best = max(best, pa)
		}
	}
	return best
}

// systemSign is what a mean operating pressure is taken over.
type systemSign struct {
	system string
	sign   tightness.Sign
}

// meanOperating takes the mean of the operating pressures of each system and
// sign, weighed by area, to the whole Pa. A test at the mean operating pressure
// of the part tested is what EN 12599 asks, as cited by the trade; the parts
// aren't known before the plan, so the system stands for them. Rows that state
// no operating pressure, or are out of the test, have no weight.
func (d *Rows) meanOperating() {
	area, sum := map[systemSign]float64{}, map[systemSign]float64{}
	for i := range d.items {
		it := &d.items[i]
		if it.Refused || it.Scope != terms.In || it.OperatingPa == 0 {
			continue
		}
		k := systemSign{d.systemOf(it), d.signOf(it)}
		area[k] += it.Area
		sum[k] += it.Area * it.OperatingPa
	}
	d.operating = map[systemSign]float64{}
	for k, a := range area {
		if a > 0 {
			d.operating[k] = math.Round(sum[k] / a)
		}
	}
}

// signOf is a row's own sign, or that of the settings.
func (d *Rows) signOf(it *takeoff.Item) tightness.Sign {
	if it.Sign != "" {
		return tightness.Sign(it.Sign)
	}
	return tightness.Sign(d.set.Sign)
}

// systemOf is the system of a row, or of the nearest row towards the plant that
// names one.
func (d *Rows) systemOf(it *takeoff.Item) string {
	for range d.items {
		if it.System != "" || it.Parent < 0 {
			break
		}
		it = &d.items[it.Parent]
	}
	return it.System
}

func shapeOf(it *takeoff.Item) tightness.Shape {
	return tightness.Shape(it.Piece.Shape.String())
}
