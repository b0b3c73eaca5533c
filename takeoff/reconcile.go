package takeoff

import (
	"fmt"
	"math"
	"strings"

	"blankoff/fittings"
)

// agrees is the share by which a total of a schedule may differ from the sum of
// its rows and still be called the same: such totals are sums of rounded areas.
const agrees = 0.005

// mostTotals is how many rows of totals are told one by one.
const mostTotals = 200

// reconcile holds every row of totals against the rows above it: those since the
// total before, since the last sub-heading, and all of its sheet. The nearest
// is told with both figures.
func (t *Takeoff) reconcile() {
	if len(t.Schedule.TotalRows) == 0 {
		return
	}
	sums := t.runningSums()
	for i, x := range t.Schedule.TotalRows {
		if i == mostTotals {
			t.Notes = append(t.Notes, fmt.Sprintf("%d more rows of totals are no pieces either; they aren't held against the rows above them", len(t.Schedule.TotalRows)-i))
			return
		}
		name := "a row of totals"
		if x.Label != "" {
			name = "'" + x.Label + "'"
		}
		name = fmt.Sprintf("%s: %s is a total and no piece", strings.TrimPrefix(x.At.String(), x.At.File+", "), name)
		if said := sums.against(x); said != "" {
			name += "; " + said
		}
		t.Notes = append(t.Notes, name)
	}
}

// against compares a total with the sums that it may be, or says nothing where
// it gives no figure.
func (s runningSums) against(x TotalRow) string {
	if x.AreaText == "" && x.Quantity == 0 {
		return ""
	}
	best, off := "", math.Inf(1)
	for _, from := range x.Since {
		area, pieces, refused := s.above(from, x.Before)
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
			said = append(said, compared(pieceCount(x.Quantity), fmt.Sprint(pieces), pieces == x.Quantity))
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

// runningSums are the sums over the rows of the file up to each.
type runningSums struct {
	area            []float64 // m2
	pieces, refused []int
}

// runningSums sums all rows, whatever their scope.
func (t *Takeoff) runningSums() runningSums {
	n := len(t.lines)
	s := runningSums{make([]float64, n+1), make([]int, n+1), make([]int, n+1)}
	var area Sum
	for i := range t.lines {
		l := &t.lines[i]
		area.Add(l.area)
		s.area[i+1], s.pieces[i+1], s.refused[i+1] = area.Value(), s.pieces[i]+int(l.quantity), s.refused[i]
		switch {
		case l.refused && l.kind == fittings.NoKind: // it may be no piece
			s.pieces[i+1] = s.pieces[i]
			s.refused[i+1]++
		case l.refused:
			s.refused[i+1]++
		}
	}
	return s
}

// above sums the rows of the file from one to another.
func (s runningSums) above(from, to int) (area float64, pieces, refused int) {
	to = min(to, len(s.area)-1)
	from = min(from, to)
	return s.area[to] - s.area[from], s.pieces[to] - s.pieces[from], s.refused[to] - s.refused[from]
}

func pieceCount(n int) string {
	if n == 1 {
		return "1 piece"
	}
	return fmt.Sprintf("%d pieces", n)
}
