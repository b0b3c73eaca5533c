// Package show holds what the writers must show alike: limits, which are never
// rounded up, names of stretches of pieces, the state of a section, and the
// blanks counted by size.
package show

import (
	"strconv"
	"strings"
)

// LimitDecimals is the number of decimals of a limit, in L/s or L/s per m2:
// one from 100 on, two from 1 on, three below; four below 0.1.
func LimitDecimals(q float64) int {
	switch {
	case q >= 100:
		return 1
	case q >= 1:
		return 2
	case q >= 0.1:
		return 3
	}
	return 4
}

// Limit writes a limit cut off at its decimals, so that what is read is never
// more than what is permitted. It cuts the shortest decimal that means the
// number, so 12.3 stays 12.30 and 12.299999999999999 becomes 12.29.
func Limit(q float64) string { return Down(q, LimitDecimals(q)) }

// Down writes a number of 0 or more cut off at so many decimals.
func Down(v float64, decimals int) string {
	whole, rest, _ := strings.Cut(strconv.FormatFloat(v, 'f', -1, 64), ".")
	if decimals == 0 || strings.Trim(whole, "0123456789") != "" {
		return whole
	}
	if len(rest) < decimals {
		rest += strings.Repeat("0", decimals-len(rest))
	}
	return whole + "." + rest[:decimals]
}

// LimitValue is a limit cut off in the same way, as a number.
func LimitValue(q float64) float64 {
	v, err := strconv.ParseFloat(Limit(q), 64)
	if err != nil {
		return q
	}
	return v
}
