package totals

import (
	"fmt"
	"math"
	"strconv"
)

// The usual range of joint length over area, per m: EN 12599 as reported by the
// German association of duct makers. A test section outside it isn't a fair mix
// of straights and fittings.
const (
	LeastJointRatio = 1.0
	MostJointRatio  = 1.5
)

// SeamsApart says what became of longitudinal seams. How many a rectangular
// piece has depends on the width of the sheet that it was made from (one, two or
// four), spiral duct has a seam of any pitch, and a schedule says neither, so
// their length is unknown. A guess would look like a measurement.
const SeamsApart = "longitudinal seams aren't in the joint length, and a schedule doesn't say how many there are"

// JointRatio is the length of the installation joints (m) over the exact area
// (m2), per m; 0 where there is no area.
func JointRatio(length, area float64) float64 {
	if !(area > 0) || math.IsInf(area, 0) {
		return 0
	}
	return length / area
}

// JointFlag says that joints are fewer or more than usual for their area, or "".
// length is in m, area in m2.
func JointFlag(length, area float64) string {
	return JointFlagIn(length, area, perMetre, "m of joint per m2")
}

// perMetre writes a joint ratio with so many decimals, or as many as it takes.
func perMetre(v float64, decimals int) string { return strconv.FormatFloat(v, 'f', decimals, 64) }

// JointFlagIn is JointFlag with its figures in another unit: figure writes a
// ratio (per m) with so many decimals, -1 for as many as it takes.
func JointFlagIn(length, area float64, figure func(perM float64, decimals int) string, unit string) string {
	ratio, side := JointRatio(length, area), ""
	switch {
	case !(area > 0):
		return ""
	case ratio < LeastJointRatio:
		side = "few"
	case ratio > MostJointRatio:
		side = "many"
	default:
		return ""
	}
	return fmt.Sprintf("%s joints for the area: %s %s, usually %s to %s (EN 12599, as reported by the German association of duct makers)",
		side, figure(ratio, 2), unit, figure(LeastJointRatio, -1), figure(MostJointRatio, -1))
}

// JointRatio is that of everything in scope, per m.
func (t *Totals) JointRatio() float64 { return JointRatio(t.JointLength, t.Exact) }

// JointFlag is that of everything in scope, or "".
func (t *Totals) JointFlag() string { return JointFlag(t.JointLength, t.Exact) }
