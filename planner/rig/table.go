package rig

import (
	"errors"
	"fmt"
	"math"

	"blankoff/planner/tightness"
	"blankoff/planner/units"
)

// TableOf says what a table of windows is to cover.
type TableOf struct {
	Scheme *tightness.Scheme
	// Classes as typed; none: those the scheme lists.
	Classes []string
	// PressuresPa are magnitudes, Pa, more than 0; none: the scheme's usual ones.
	PressuresPa []float64
	Sign        tightness.Sign
	Headroom    float64 // 1 or more
	// Shapes; none: all.
	Shapes []tightness.Shape
	// DuctClassPa is the pressure the duct is built for, Pa; 0: not stated.
	DuctClassPa float64
	Units       units.System // of the figures in sentences
}

// Row is the windows of one class at one pressure in one shape of duct.
type Row struct {
	Class      string
	Shape      tightness.Shape
	PressurePa float64
	LimitPerM2 float64      // L/s per m2
	Areas      []AreaWindow // m2, ascending; none: nothing can be judged, see Reason
	// Permitted says whether the class and the duct allow the pressure. A row
	// that isn't permitted still has its figures, which are arithmetic only.
	Permitted bool
	Ceiling   tightness.Ceiling
	// State is "not permitted: at most 500 Pa", what must be stated first, or
	// empty where the pressure is permitted.
	State string
	// Reason says why there are no areas; empty otherwise.
	Reason string
}

// Table draws up the windows of a rig by class, then pressure, then shape. A
// class whose figure isn't meant for a shape has no row for it. The error
// joins everything wrong with what was asked.
func (r *Rig) Table(of TableOf) ([]Row, error) {
	if of.Scheme == nil {
		return nil, errors.New("no tightness scheme given: expected one of the schemes built in or a scheme file")
	}
	classes, pressures, err := of.wanted()
	if err != nil {
		return nil, err
	}
	shapes := of.Shapes
	if len(shapes) == 0 {
		shapes = tightness.Shapes()
	}
	var rows []Row
	for _, c := range classes {
		for _, pa := range pressures {
			for _, shape := range shapes {
				if ok, _ := of.Scheme.Covers(c, shape); ok {
					rows = append(rows, r.row(of, c, pa, shape))
				}
			}
		}
	}
	return rows, nil
}

// wanted turns what was typed into classes and pressures.
func (of TableOf) wanted() (classes []tightness.Class, pressures []float64, err error) {
	var faults []error
	classes, pressures = of.Scheme.Classes(), of.PressuresPa
	if len(of.Classes) > 0 {
		classes = nil
	}
	for _, name := range of.Classes {
		c, err := of.Scheme.Class(name)
		if err != nil {
			faults = append(faults, err)
		}
		classes = append(classes, c)
	}
	if len(pressures) == 0 {
		pressures, _, _ = of.Scheme.UsualPressures(of.Sign)
	}
	if len(pressures) == 0 {
		faults = append(faults, fmt.Errorf("scheme %s has no usual %s test pressures: say which pressures", of.Scheme.Name, of.Sign))
	}
	for _, pa := range pressures {
		if !(pa > 0) || math.IsInf(pa, 0) {
			faults = append(faults, fmt.Errorf("test pressure %s Pa isn't usable: expected a magnitude above 0, its sign given apart", plain(pa)))
		}
	}
	if !(of.Headroom >= 1) || math.IsInf(of.Headroom, 0) {
		faults = append(faults, fmt.Errorf("headroom %s isn't usable: expected 1 or more", plain(of.Headroom)))
	}
	if of.Sign != tightness.Positive && of.Sign != tightness.Negative {
		faults = append(faults, fmt.Errorf("%q is not a sign of pressure: write positive or negative", of.Sign))
	}
	return classes, pressures, errors.Join(faults...)
}

func (r *Rig) row(of TableOf, c tightness.Class, pa float64, shape tightness.Shape) Row {
	limit := of.Scheme.Limit(c, pa)
	row := Row{Class: c.Name, Shape: shape, PressurePa: pa, LimitPerM2: limit, Areas: r.AreaWindows(limit, pa, of.Headroom)}
	row.Ceiling = of.Scheme.CeilingIn(of.Units.PressureWords, c, shape, of.Sign, of.DuctClassPa)
	row.Permitted, row.State = row.Ceiling.Permits(pa)
	if len(row.Areas) == 0 {
		row.Reason = r.nothing(pa, of.Headroom, of.Units)
	}
	return row
}
