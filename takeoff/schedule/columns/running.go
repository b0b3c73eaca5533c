package columns

import "blankoff/takeoff/schedule/celltext"

// leastRising is how many lengths have to follow each other to show that they rise.
const leastRising = 3

// LengthsRise reports lengths of which each is larger than the one above it, as far as rows
// below the headings are looked at.
func (t *Reading) LengthsRise() bool {
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || !s.IsLength() {
			continue
		}
		n, last := 0, 0.0
		for _, cells := range t.Peek().Cells {
			v, trouble := s.Number(celltext.At(cells, i))
			if trouble != "" {
				continue
			}
			if v <= last {
				return false
			}
			n, last = n+1, v
		}
		return n >= leastRising
	}
	return false
}
