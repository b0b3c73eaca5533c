package rig

import (
	"fmt"
	"io"
	"path"
	"strings"

	"blankoff/planner/tightness"
)

// Bounds of what a rig file may hold; beyond them a unit has slipped.
const (
	maxFlow     = 100_000 // L/s
	maxPressure = 100_000 // Pa
	maxHose     = 1000    // m
	maxBore     = 5000    // mm
	maxFriction = 1
)

const (
	expectedFlow     = "a flow in L/s, 0 to 100000"
	expectedMax      = "a flow in L/s, more than min_l_s and up to 100000"
	expectedPercent  = "a percentage of the reading, 0 or more and below 100"
	expectedPressure = "a pressure in Pa, 0 to 100000"
	expectedLength   = "a length in m, 0 to 1000"
	expectedBore     = "a bore in mm, 1 to 5000"
	expectedFriction = "a Darcy friction factor, more than 0 and up to 1"
)

var rangeKeys = []string{"name", "min_l_s", "max_l_s", "accuracy_percent", "accuracy_l_s", "own_leak_l_s", "fan", "hose"}

// loader reads one rig file and gathers what was assumed.
type loader struct{ notes []Note }

// Load reads a rig file (TOML); name is the file's and appears in faults.
// Every fault is found in one go: unknown keys, values of the wrong type or
// out of range, a range that ends before it begins, that has the name of
// another or of which nothing is left when guarded by its own error, a fan
// curve out of order. The error is a [tightness.Faults]. The notes say what
// was left out and what is assumed for it.
func Load(r io.Reader, name string) (*Rig, []Note, error) {
	t, err := tightness.ReadTable(r, name)
	if err != nil {
		return nil, nil, err
	}
	t.Only("name", "range")
	var l loader
	rig := &Rig{Name: t.Text("name")}
	if !t.Has("name") {
		rig.Name = strings.TrimSuffix(path.Base(strings.ReplaceAll(name, `\`, "/")), ".toml")
		l.note("", "name", fmt.Sprintf("the rig has no name: called %q after its file", rig.Name))
	}
	t.Require("range", "at least one [[range]]")
	taken := map[string]bool{}
	for i, one := range t.Tables("range") {
		rig.Ranges = append(rig.Ranges, l.measuringRange(one, i+1, taken))
	}
	if err := t.Err(); err != nil {
		return nil, nil, err
	}
	return rig, l.notes, nil
}

func (l *loader) note(in, key, text string) {
	l.notes = append(l.notes, Note{Range: in, Key: key, Text: text})
}

func (l *loader) measuringRange(t *tightness.Table, number int, taken map[string]bool) Range {
	r := Range{Name: t.Text("name")}
	if r.Name != "" {
		t.At = fmt.Sprintf("range %q", r.Name)
	} else if !t.Has("name") {
		r.Name = fmt.Sprintf("range %d", number)
		l.note(r.Name, "name", fmt.Sprintf("the range has no name: called %q", r.Name))
	}
	if taken[r.Name] {
		t.Fault("name", "a name that no other range has")
	}
	taken[r.Name] = true
	t.Only(rangeKeys...)
	t.Require("min_l_s", expectedFlow)
	t.Require("max_l_s", expectedMax)
	var haveMin, haveMax bool
	r.MinLS, haveMin = t.Number("min_l_s", 0, maxFlow, expectedFlow)
	r.MaxLS, haveMax = t.Number("max_l_s", 0, maxFlow, expectedMax)
	sound := l.accuracy(t, &r)
	switch {
	case !haveMin || !haveMax:
	case r.MinLS >= r.MaxLS:
		t.Fault("max_l_s", fmt.Sprintf("a flow in L/s, more than min_l_s = %s", plain(r.MinLS)))
	case sound:
		checkGuarded(t, r)
	}
	if haveMin && r.MinLS == 0 {
		l.note(r.Name, "min_l_s", "the range is said to read from 0 L/s: state the least flow that it can be trusted with")
	}
	l.fan(t, &r)
	l.hose(t, &r)
	return r
}

// accuracy reads what guards the range. sound is false if any of it is wrong.
func (l *loader) accuracy(t *tightness.Table, r *Range) (sound bool) {
	percent, okP := t.Number("accuracy_percent", 0, 99.999, expectedPercent)
	fixed, okF := t.Number("accuracy_l_s", 0, maxFlow, expectedFlow)
	leak, okL := t.Number("own_leak_l_s", 0, maxFlow, expectedFlow)
	r.AccuracyPercent, r.AccuracyLS, r.OwnLeakLS = percent, fixed, leak
	if !t.Has("accuracy_percent") && !t.Has("accuracy_l_s") {
		l.note(r.Name, "accuracy_percent", "no accuracy stated: every reading is taken as exact")
	}
	if !t.Has("own_leak_l_s") {
		l.note(r.Name, "own_leak_l_s", "the rig's own leakage isn't stated: taken as 0")
	}
	return okP == t.Has("accuracy_percent") && okF == t.Has("accuracy_l_s") && okL == t.Has("own_leak_l_s")
}

// checkGuarded refuses a range of which its own error leaves nothing.
func checkGuarded(t *tightness.Table, r Range) {
	if low, high := r.guarded(); low >= high {
		t.Problem("max_l_s", fmt.Sprintf("nothing is left of the range once it is guarded: it would read from %s (min and its error) to %s L/s (max less its error and own leak)",
			plain(low), plain(high)), "a wider range, or smaller accuracy and own leak")
	}
}

func (l *loader) fan(t *tightness.Table, r *Range) {
	for i, p := range t.Tables("fan") {
		p.At = fmt.Sprintf("%s, fan point %d", t.At, i+1)
		p.Only("pressure_pa", "flow_l_s")
		p.Require("pressure_pa", expectedPressure)
		p.Require("flow_l_s", expectedFlow)
		pressure, okP := p.Number("pressure_pa", 0, maxPressure, expectedPressure)
		flow, okF := p.Number("flow_l_s", 0, maxFlow, expectedFlow)
		if n := len(r.Fan); n > 0 {
			before := r.Fan[n-1]
			if okP && pressure <= before.PressurePa {
				p.Fault("pressure_pa", fmt.Sprintf("more than %s Pa, that of the point before: pressures ascend", plain(before.PressurePa)))
			}
			if okF && flow > before.FlowLS {
				p.Fault("flow_l_s", fmt.Sprintf("at most %s L/s, that of the point before: a fan delivers no more against a higher pressure", plain(before.FlowLS)))
			}
		}
		if okP && okF {
			r.Fan = append(r.Fan, FanPoint{PressurePa: pressure, FlowLS: flow})
		}
	}
	if !t.Has("fan") {
		l.note(r.Name, "fan", "fan not checked: no fan curve in the rig file")
	}
}

func (l *loader) hose(t *tightness.Table, r *Range) {
	h := t.Table("hose")
	if h == nil {
		return
	}
	h.At = t.At + ", hose"
	h.Only("length_m", "diameter_mm", "friction")
	h.Require("length_m", expectedLength)
	h.Require("diameter_mm", expectedBore)
	hose := &Hose{Friction: defaultFriction}
	hose.LengthM, _ = h.Number("length_m", 0, maxHose, expectedLength)
	bore, _ := h.Number("diameter_mm", 1, maxBore, expectedBore)
	hose.DiameterM = bore / 1000
	if v, ok := h.Number("friction", 1e-4, maxFriction, expectedFriction); ok {
		hose.Friction = v
	} else if !h.Has("friction") {
		l.note(r.Name, "hose", fmt.Sprintf("hose friction factor taken as %s, assumption, no source", plain(defaultFriction)))
	}
	r.Hose = hose
	if !t.Has("fan") {
		l.note(r.Name, "hose", "the hose isn't used: without a fan curve there is nothing to set its loss against")
	}
}
