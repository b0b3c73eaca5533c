package takeoff

import (
	"fmt"
	"math"
	"strings"
)

// agrees is the share by which a total of a schedule may differ from the sum of
// its rows and still be called the same: such totals are sums of rounded areas.
const agrees = 0.005

// reconcile holds every row of totals against the rows above it: those since the
// total before, since the last sub-heading, and all of its sheet. The nearest
// is told with both figures.
func (t *Takeoff) reconcile() {
	for _, x := range t.Schedule.TotalRows {
		name := "a row of totals"
		if x.Label != "" {
			name = "'" + x.Label + "'"
		}
		name = fmt.Sprintf("%s: %s is a total and no piece", strings.TrimPrefix(x.At.String(), x.At.File+", "), name)
		if said := t.against(x); said != "" {
			name += "; " + said
		}
		t.Notes = append(t.Notes, name)
	}
}

// against compares a total with the sums that it may be, or says nothing where
// it gives no figure.
func (t *Takeoff) against(x TotalRow) string {
	if x.AreaText == "" && x.Quantity == 0 {
		return ""
	}
	best, off := "", math.Inf(1)
	for _, from := range x.Since {
		area, pieces, refused := t.above(from, x.Before)
		d := 0.0
		if x.AreaText != "" {
			d = math.Abs(area - x.Area)
		} else {
			d = math.Abs(float64(pieces - x.Quantity))
		}
		if d >= off {
			continue
		}
		off = d
		var said []string
		if x.AreaText != "" {
			said = append(said, compared(fmt.Sprintf("%s m2", figure(x.Area)), fmt.Sprintf("%s m2", figure(area)), d <= agrees*math.Max(area, x.Area)))
		}
		if x.Quantity != 0 {
			said = append(said, compared(fmt.Sprintf("%d pieces", x.Quantity), fmt.Sprint(pieces), pieces == x.Quantity))
		}
		best = strings.Join(said, "; ")
		if refused > 0 {
			best += fmt.Sprintf(" (refused among them: %d)", refused)
		}
	}
	return best
}

func compared(given, found string, same bool) string {
	if same {
		return fmt.Sprintf("it gives %s, the rows above come to %s: they agree", given, found)
	}
	return fmt.Sprintf("it gives %s, but the rows above come to %s: they differ", given, found)
}

// figure writes an area to a hundredth of a m2.
func figure(v float64) string { return fmt.Sprintf("%.2f", v) }

// above sums the rows of the file from one to another, whatever their scope.
func (t *Takeoff) above(from, to int) (area float64, pieces, refused int) {
	var sum Sum
	for i := from; i < min(to, len(t.Items)); i++ {
		it := &t.Items[i]
		sum.Add(it.Area)
		pieces += it.Quantity
		if it.Refused {
			refused++
		}
	}
	return sum.Value(), pieces, refused
}
