package units

import (
	"math"
	"strconv"
	"strings"
)

// Area writes an area for a table or a sentence, "84.57 m2", "910.3 ft2".
func (u System) Area(m2 float64) string { return u.withUnit(Area, u.Fixed(Area, m2)) }

// Flow writes a leakage, L/s, to four digits: "12.3 L/s". For limits see
// [System.Limit].
func (u System) Flow(ls float64) string { return u.Text(Flow, ls, 4) }

// Limit writes a permitted leakage, L/s, cut off: "12.29 L/s".
func (u System) Limit(ls float64) string { return u.withUnit(Flow, u.Cut(Flow, ls)) }

// LimitPerArea writes a permitted leakage per area, L/s per m2, cut off.
func (u System) LimitPerArea(f float64) string { return u.withUnit(PerArea, u.Cut(PerArea, f)) }

// Pressure writes a pressure, Pa: "500 Pa", "2.01 in. w.g.".
func (u System) Pressure(pa float64) string { return u.Text(Pressure, pa, -1) }

// PressureWords are the figure and the unit of a pressure, Pa, apart: the words
// of the ceilings of a tightness scheme.
func (u System) PressureWords(pa float64) (figure, unit string) {
	return u.Figure(Pressure, pa, 7), u.Unit(Pressure)
}

// Length writes a length of duct, m, to a tenth: "6.0 m", "19.7 ft".
func (u System) Length(m float64) string { return u.withUnit(Length, u.Fixed(Length, m)) }

// Force writes a force, N: "240 N", "54.0 lbf".
func (u System) Force(n float64) string { return u.withUnit(Force, u.Fixed(Force, n)) }

// Weight writes a weight, kg.
func (u System) Weight(kg float64) string { return u.withUnit(Weight, u.Fixed(Weight, kg)) }

// Thickness writes a size, m, with its unit: "0.8 mm", "0.0315 in".
func (u System) Thickness(m float64) string {
	if u == SI {
		return u.withUnit(Size, strconv.FormatFloat(m*1000, 'g', -1, 64))
	}
	return u.withUnit(Size, trim(significant(u.Of(Size, m), 3)))
}

func (u System) withUnit(q Quantity, figure string) string { return figure + " " + u.Unit(q) }

// Text writes a figure with its unit for a sentence; see [System.Figure].
func (u System) Text(q Quantity, v float64, digits int) string {
	return u.withUnit(q, u.Figure(q, v, digits))
}

// Figure writes a figure for a sentence. In SI it has as many digits as asked
// for, -1 for as many as it takes; in US units so many as mean something there.
// Round figures of US units stay round: 2 in. w.g., not 2.00.
func (u System) Figure(q Quantity, v float64, digits int) string {
	if u == SI {
		return strconv.FormatFloat(u.Of(q, v), 'g', digits, 64)
	}
	x := u.Of(q, v)
	if s, ok := round(x); ok {
		return s
	}
	if q == Flow || q == PerArea || q == JointRatio {
		return significant(x, 4)
	}
	return u.Fixed(q, v)
}

// Fixed writes a figure for a column of a table, with the decimals of its kind:
// areas 2 (1 in ft2 from 100 on), lengths 1, forces none (1 in lbf below 100),
// pressures as many as it takes in Pa and 3 in in. w.g. (4 below 0.1).
func (u System) Fixed(q Quantity, v float64) string {
	x := u.Of(q, v)
	if q == Pressure && u == SI {
		return strconv.FormatFloat(math.Round(x*1e6)/1e6, 'f', -1, 64)
	}
	if q == Size {
		return u.size(v)
	}
	if q == Pressure {
		if s, ok := round(x); ok {
			return s
		}
	}
	if q == Force || q == Weight {
		x = halvesUp(x, u.Decimals(q, x))
	}
	return Plain(x, u.Decimals(q, x))
}

// Decimals is the number of decimals with which a figure x, already in the units
// of the system, is shown in a table.
func (u System) Decimals(q Quantity, x float64) int {
	x = math.Abs(x)
	switch q {
	case Area:
		if u == US && x >= 100 {
			return 1
		}
		return 2
	case Pressure:
		switch {
		case x >= 0.1: // 1.61 in. w.g. would be above 400 Pa
			return 3
		}
		return 4
	case Length:
		return 1
	case Force, Weight:
		if u == US && x < 100 {
			return 1
		}
		return 0
	case Flow, PerArea:
		return LimitDecimals(x)
	}
	return 2
}

// Ratio writes a joint length over area, per m, without its unit: so many
// decimals, -1 for as many as it takes; three in US units.
func (u System) Ratio(perM float64, decimals int) string {
	if u == US {
		decimals = 3
	}
	return strconv.FormatFloat(u.Of(JointRatio, perM), 'f', decimals, 64)
}

// PerGirth writes a price per m of girth: "10 per metre", "3.05 per foot".
func (u System) PerGirth(price float64) string {
	if u == SI {
		return strconv.FormatFloat(price, 'g', -1, 64) + " per metre"
	}
	return trim(Plain(price*foot, 2)) + " per foot"
}

// Plain writes a number with so many decimals, and nought without a sign.
func Plain(x float64, decimals int) string {
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// halvesUp rounds as a spreadsheet does, halves away from zero.
func halvesUp(x float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	return math.Round(x*scale) / scale
}

// round writes a figure that has at most four decimals but for the noise of
// turning it, as short as it is.
func round(x float64) (string, bool) {
	near := math.Round(x*1e4) / 1e4
	if math.Abs(x-near) > 1e-9*math.Max(1, math.Abs(x)) {
		return "", false
	}
	return trim(Plain(near, 4)), true
}

// significant writes a figure to so many digits, without an exponent.
func significant(x float64, digits int) string {
	if x == 0 || math.IsInf(x, 0) || math.IsNaN(x) {
		return strconv.FormatFloat(x, 'f', -1, 64)
	}
	return Plain(x, max(0, digits-1-int(math.Floor(math.Log10(math.Abs(x))))))
}

// trim takes noughts off the end of a decimal.
func trim(s string) string {
	if !strings.Contains(s, ".") {
		return s
	}
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}
