package units

import (
	"strconv"
	"strings"
)

// LimitDecimals is the number of decimals of a limit in any unit: one from 100
// on, two from 1 on, three below; four below 0.1.
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

// Cut writes a limit of 0 or more (Flow or PerArea) in this system, cut off at
// its decimals, so that what is read is never more than what is permitted.
func (u System) Cut(q Quantity, v float64) string {
	x := u.Turn(q, v)
	return Down(x, LimitDecimals(x))
}

// Turn is [System.Of] for a figure that is to be cut off: the noise of turning it
// is rounded away, past the twelfth digit, so that 10 cfm isn't cut to 9.99.
func (u System) Turn(q Quantity, v float64) float64 {
	x := u.Of(q, v)
	if u == SI {
		return x
	}
	if y, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 12, 64), 64); err == nil {
		return y
	}
	return x
}

// CutAt is [System.Cut] at so many decimals, whatever the magnitude.
func (u System) CutAt(q Quantity, v float64, decimals int) string {
	return Down(u.Turn(q, v), decimals)
}

// Down writes a number of 0 or more cut off at so many decimals. It cuts the
// shortest decimal that means the number, so 12.3 stays 12.30 and
// 12.299999999999999 becomes 12.29.
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
