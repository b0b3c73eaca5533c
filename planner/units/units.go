// Package units turns figures to the units that a reader asked for, and is the
// one place that says with how many digits each kind of figure is shown. Inside
// the program every figure is in one unit per kind; only what people read is
// turned: tables, and the sentences that hold figures.
package units

import (
	"strings"

	"blankoff/planner/tightness"
)

// System is a set of units. The zero value is SI.
type System uint8

// The systems.
const (
	SI System = iota // m2, L/s, Pa, m, mm, N, kg
	US               // ft2, cfm, in. w.g., ft, in, lbf, lb
)

// Parse reads the name of a system as the command line writes it: si or us.
func Parse(name string) (System, bool) {
	for s, word := range names {
		if word == name {
			return System(s), true
		}
	}
	return SI, false
}

var names = [...]string{SI: "si", US: "us"}

// String is the name as the command line writes it.
func (u System) String() string { return names[u] }

// MarshalText is the name, for JSON.
func (u System) MarshalText() ([]byte, error) { return []byte(u.String()), nil }

// Quantity is a kind of figure.
type Quantity uint8

// The quantities, with the unit in which the program holds each.
const (
	Area       Quantity = iota // m2
	Flow                       // leakage, L/s
	PerArea                    // leakage per area, L/s per m2
	Pressure                   // Pa
	Length                     // of duct, of joints, m
	Size                       // of a cross-section, of sheet, m
	Force                      // N
	Weight                     // kg
	JointRatio                 // joint length over area, m per m2
	quantities
)

// Exact by definition, NIST SP 811 (2008) appendix B (from memory): the foot is
// 0.3048 m, the inch 25.4 mm, the avoirdupois pound 0.45359237 kg; standard
// gravity is 9.80665 m/s2. The conventional inch of water, cfm and ft2 are those
// of the tightness schemes.
const (
	foot    = 0.3048 // m
	inch    = 0.0254 // m
	pound   = 0.45359237
	gravity = 9.80665 // m/s2, a pound of force is that of a pound's weight
)

// Of [quantities]: how the US writes it, how a heading of a CSV file writes it,
// and how much one of it is in the unit of the program. The same for SI; only a
// size is shown in another unit than it is held in.
var table = [2][quantities]struct {
	unit, heading string
	one           float64
}{
	SI: {
		Area: {"m2", "m2", 1}, Flow: {"L/s", "l_s", 1}, PerArea: {"L/s per m2", "l_s_m2", 1}, Pressure: {"Pa", "pa", 1},
		Length: {"m", "m", 1}, Size: {"mm", "mm", 1e-3}, Force: {"N", "n", 1}, Weight: {"kg", "kg", 1}, JointRatio: {"m of joint per m2", "per_m", 1},
	},
	US: {
		Area: {"ft2", "ft2", tightness.SquareFootM2}, Flow: {"cfm", "cfm", tightness.CfmLS},
		PerArea:  {"cfm per 100 ft2", "cfm_100ft2", tightness.CfmLS / (100 * tightness.SquareFootM2)},
		Pressure: {"in. w.g.", "in_wg", tightness.InchWaterPa}, Length: {"ft", "ft", foot}, Size: {"in", "in", inch},
		Force: {"lbf", "lbf", pound * gravity}, Weight: {"lb", "lb", pound}, JointRatio: {"ft of joint per ft2", "per_ft", 1 / foot},
	},
}

// Unit is the unit as a text writes it: "ft2".
func (u System) Unit(q Quantity) string { return table[u][q].unit }

// Heading is the unit as the heading of a column of a CSV file writes it:
// "in_wg".
func (u System) Heading(q Quantity) string { return table[u][q].heading }

// Rename turns the unit at the end of a heading of SI, such as area_m2, to this
// system: area_ft2. Other headings stay.
func (u System) Rename(heading string) string {
	best, stem := Quantity(0), ""
	for q := range quantities { // the longest ending is the unit: limit_l_s_m2
		if s, ok := strings.CutSuffix(heading, "_"+SI.Heading(q)); ok && (stem == "" || len(s) < len(stem)) {
			best, stem = q, s
		}
	}
	if stem == "" {
		return heading
	}
	return stem + "_" + u.Heading(best)
}

// Of turns a figure of the program to this system. A size comes in m and turns
// to mm or inches.
func (u System) Of(q Quantity, v float64) float64 {
	if u == SI && q != Size {
		return v
	}
	return v / table[u][q].one
}

// Back turns a figure of this system to that of the program.
func (u System) Back(q Quantity, v float64) float64 { return v * table[u][q].one }
