// Package show holds what the writers must show alike: limits, which are never
// rounded up, names of stretches of pieces, the state of a section, and the
// blanks counted by size.
package show

import (
	"strconv"

	"blankoff/planner/units"
)

// LimitDecimals is the number of decimals of a limit in any unit; see
// [units.LimitDecimals].
func LimitDecimals(q float64) int { return units.LimitDecimals(q) }

// Limit writes a limit in L/s or L/s per m2 cut off at its decimals, so that
// what is read is never more than what is permitted.
func Limit(q float64) string { return units.SI.Cut(units.Flow, q) }

// Down writes a number of 0 or more cut off at so many decimals.
func Down(v float64, decimals int) string { return units.Down(v, decimals) }

// LimitValue is a limit cut off in the same way, as a number.
func LimitValue(q float64) float64 {
	v, err := strconv.ParseFloat(Limit(q), 64)
	if err != nil {
		return q
	}
	return v
}
