package totals

import "math"

// Sum adds up areas and lengths with the rounding error carried along, so that
// the parts of a large schedule add up to the whole to 1e-9 in whatever order.
//
// Source: Neumaier, ZAMM 54 (1974) 39-51 (from memory, unverified).
type Sum struct{ sum, rest float64 }

// Add adds v.
func (s *Sum) Add(v float64) {
	t := s.sum + v
	if math.Abs(s.sum) >= math.Abs(v) {
		s.rest += (s.sum - t) + v
	} else {
		s.rest += (v - t) + s.sum
	}
	s.sum = t
}

// Value is the sum.
func (s *Sum) Value() float64 { return s.sum + s.rest }
