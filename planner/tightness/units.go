package tightness

import "math"

// Units of the figures, exact by definition.
const (
	footM = 0.3048 // international foot, m, exact (1959 agreement)

	// InchWaterPa is 1 in. w.g., Pa: 25.4 mm of conventional water at
	// 9.80665 Pa each.
	InchWaterPa = 25.4 * 9.80665
	// CfmLS is 1 cubic foot a minute, L/s.
	CfmLS = footM * footM * footM * 1000 / 60
	// SquareFootM2 is 1 ft2, m2.
	SquareFootM2 = footM * footM
)

// The units in which a scheme's file may state k.
const (
	unitLS  = "L/s per m2"
	unitM3S = "m3/s per m2"
	unitM3H = "m3/h per m2"
	unitUS  = "cfm per 100 ft2 at 1 in. w.g."
)

func units() []string { return []string{unitLS, unitM3S, unitM3H, unitUS} }

// kFactor turns a k stated in the unit into L/s per m2 per Pa^n. The US unit
// states the limit at 1 in. w.g., the others at 1 Pa.
func kFactor(unit string, n float64) (float64, bool) {
	switch unit {
	case unitLS:
		return 1, true
	case unitM3S:
		return 1000, true
	case unitM3H:
		return 1 / 3.6, true
	case unitUS:
		return CfmLS / (100 * SquareFootM2) / math.Pow(InchWaterPa, n), true
	}
	return 0, false
}
