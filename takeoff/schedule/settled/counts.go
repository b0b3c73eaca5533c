package settled

import (
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
)

// mostLacking is the share of the rows that may lack a quantity where each of the others has
// one: of more, nobody would think that they were forgotten. Common practice, no source.
const mostLacking = 0.2

// countsByCells finds out whether an empty quantity may stand for one: not where a 1 is
// written out on other rows, and (nearly) all rows have a figure, several of them others.
func (t *Reading) countsByCells() {
	t.NoneEmpty = false
	at := slices.IndexFunc(t.Specs, func(s columns.Spec) bool {
		return s.Used && s.Verdict == headings.Known && s.To() == takeoff.Quantity && !strings.EqualFold(s.Typed, takeoff.Quantity.Heading()) // where empty is one
	})
	if at < 0 || t.UnitsAt > 0 || t.OfRefused() {
		return
	}
	ones, more, none := 0, 0, 0
	for _, cells := range t.Peek().Cells {
		if !t.sizedRow(cells) {
			continue
		}
		switch n, whole := celltext.Count(celltext.At(cells, at)); {
		case celltext.At(cells, at) == "":
			none++
		case whole && n == 1:
			ones++
		default:
			more++
		}
	}
	t.NoneEmpty = more > 0 && ones > 0 && ones >= none && (none < 2 || float64(none) <= mostLacking*float64(none+ones+more))
}

// sizedRow reports a row with a figure under a size.
func (t *Reading) sizedRow(cells []string) bool {
	for i := range min(len(cells), len(t.Specs)) {
		if s := &t.Specs[i]; s.Used && s.Measure == takeoff.Lengths && celltext.HasDigit(cells[i]) {
			return true
		}
	}
	return false
}
