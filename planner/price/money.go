package price

import (
	"errors"
	"math"
	"math/bits"
	"slices"
	"strconv"
	"strings"
)

// Money is an amount in whole minor units.
type Money int64

// Quantity is a quantity in hundredths, as it is printed.
type Quantity int64

// hundred is the quantity 1.
const hundred = 100

// Of is a whole number as a quantity.
func Of(n int) Quantity { return Quantity(n) * hundred }

// Measured is a quantity of so much, rounded to hundredths, halves away from
// zero; ok is false where it isn't a number of at most 1e12.
func Measured(v float64) (q Quantity, ok bool) {
	if math.IsNaN(v) || math.Abs(v) > 1e12 {
		return 0, false
	}
	return Quantity(math.Round(v * hundred)), true
}

// Value is the quantity as a number.
func (q Quantity) Value() float64 { return float64(q) / hundred }

// Text writes a quantity with two decimals, or none where it is whole.
func (q Quantity) Text() string {
	if q%hundred == 0 {
		return strconv.FormatInt(int64(q/hundred), 10)
	}
	return strconv.FormatFloat(q.Value(), 'f', 2, 64)
}

// Currency is that of the rates file.
type Currency struct {
	Code   string `json:"code"`   // "EUR"
	Symbol string `json:"symbol"` // "" where the file gives none
	Digits int    `json:"minor_digits"`
}

// Text writes an amount in major units, thousands apart: "12 345.67".
func (c Currency) Text(m Money) string {
	sign, v := "", uint64(m)
	if m < 0 {
		sign, v = "-", -v
	}
	digits := strconv.FormatUint(v, 10)
	if n := c.Digits + 1 - len(digits); n > 0 {
		digits = strings.Repeat("0", n) + digits
	}
	whole, rest := digits[:len(digits)-c.Digits], digits[len(digits)-c.Digits:]
	var groups []string
	for len(whole) > 3 {
		groups = append(groups, whole[len(whole)-3:])
		whole = whole[:len(whole)-3]
	}
	groups = append(groups, whole)
	slices.Reverse(groups)
	if rest != "" {
		rest = "." + rest
	}
	return sign + strings.Join(groups, " ") + rest
}

// Full writes an amount with the currency's symbol, or its code where it has
// none.
func (c Currency) Full(m Money) string {
	if c.Symbol != "" {
		return c.Symbol + " " + c.Text(m)
	}
	return c.Code + " " + c.Text(m)
}

// errTooMuch says that an amount doesn't fit.
var errTooMuch = errors.New("an amount is too large to be counted in minor units; check the rates and the quantities")

// scaled is a x b / by, rounded to whole, halves away from zero; by is more
// than 0.
func scaled(a, b, by int64) (int64, error) {
	negative := a < 0 != (b < 0)
	hi, lo := bits.Mul64(magnitude(a), magnitude(b))
	if hi >= uint64(by) {
		return 0, errTooMuch
	}
	q, r := bits.Div64(hi, lo, uint64(by))
	if r >= uint64(by)-r {
		q++
	}
	if q > math.MaxInt64 {
		return 0, errTooMuch
	}
	if negative {
		return -int64(q), nil
	}
	return int64(q), nil
}

func magnitude(v int64) uint64 {
	if v < 0 {
		return -uint64(v)
	}
	return uint64(v)
}

// Amount is quantity x rate in whole minor units, rounded once, halves away from
// zero.
func Amount(q Quantity, rate Money) (Money, error) {
	v, err := scaled(int64(q), int64(rate), hundred)
	return Money(v), err
}

// plus adds amounts.
func plus(a, b Money) (Money, error) {
	sum := a + b
	if (a > 0 && b > 0 && sum <= 0) || (a < 0 && b < 0 && sum >= 0) {
		return 0, errTooMuch
	}
	return sum, nil
}

// Share divides an amount in proportion to weights of 0 or more, so that the
// parts add up to it: each gets its whole minor units, and what is left goes by
// the largest remainders, the first of equal ones first. Without any weight it
// is nil.
func Share(total Money, weights []int64) []Money {
	var all int64
	for _, w := range weights {
		if w < 0 || all > math.MaxInt64-w {
			return nil
		}
		all += w
	}
	if all == 0 {
		return nil
	}
	left, negative := magnitude(int64(total)), total < 0
	parts, rests := make([]Money, len(weights)), make([]uint64, len(weights))
	order := make([]int, len(weights))
	whole := left
	for i, w := range weights {
		hi, lo := bits.Mul64(whole, uint64(w))
		q, r := bits.Div64(hi, lo, uint64(all)) // w is at most all, so it fits
		parts[i], rests[i], order[i] = Money(q), r, i
		left -= q
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch {
		case rests[a] > rests[b]:
			return -1
		case rests[a] < rests[b]:
			return 1
		}
		return 0
	})
	for _, i := range order[:left] {
		parts[i]++
	}
	if negative {
		for i := range parts {
			parts[i] = -parts[i]
		}
	}
	return parts
}

// times is an amount times a factor, rounded to whole, halves away from zero.
func times(m Money, factor float64) Money { return Money(math.Round(float64(m) * factor)) }

func timesAt(m *Money, factor float64) *Money {
	if m == nil {
		return nil
	}
	v := times(*m, factor)
	return &v
}
