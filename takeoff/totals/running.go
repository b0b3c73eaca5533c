package totals

import (
	"fmt"
	"math"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff/ledger"
)

// agrees is the share by which a total of a schedule may differ from the sum of
// its rows and still be called the same: such totals are sums of rounded areas.
const agrees = 0.005

// Given is what a row of totals gives, and which rows it may sum up: those of the file
// from one of Since up to Before, or where it stands above them, from Before up to one of Below.
type Given struct {
	Before   int
	Since    [3]int
	Below    [2]int  // 0: it stands below them
	Area     float64 // m2; see AreaText
	AreaText string  // as typed; empty: it gives none
	Quantity int     // 0: it gives none
	Whole    bool    // it is of all pieces, and each row says how many it is
}

// ranges are the rows of the file that the row may sum up, from one to before another.
func (x *Given) ranges() [][2]int {
	if x.Below[1] > 0 {
		return [][2]int{{x.Before, x.Below[0]}, {x.Before, x.Below[1]}}
	}
	return [][2]int{{x.Since[0], x.Before}, {x.Since[1], x.Before}, {x.Since[2], x.Before}}
}

// Against compares what a row of totals gives with the sums that it may be, and tells
// the nearest with both figures. It says nothing where the row gives no figure.
func (s Running) Against(x Given) string {
	if x.AreaText == "" && x.Quantity == 0 {
		return ""
	}
	best, off := "", math.Inf(1)
	where := "above"
	if x.Below[1] > 0 {
		where = "below"
	}
	for _, of := range x.ranges() {
		area, pieces, refused := s.between(of[0], of[1])
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
			said = append(said, compared(where, fmt.Sprintf("%s m2", figure(x.Area)), fmt.Sprintf("%s m2", figure(area)), d <= agrees*math.Max(area, x.Area)))
		}
		if x.Quantity != 0 {
			said = append(said, compared(where, pieceCount(x.Quantity), fmt.Sprint(pieces), pieces == x.Quantity))
		}
		best = strings.Join(said, "; ")
		if refused > 0 {
			best += fmt.Sprintf(" (refused among them: %d)", refused)
		}
	}
	return best
}

// nearly is the share by which a total may differ from what its rows come to by other rules
// of measuring. Common practice, no source.
const nearly = 0.4

// Strange reports an area that no sum of the rows above comes near to, of a row that isn't
// called a total: it may be a piece of which the kind is missing.
func (s Running) Strange(x Given) bool {
	for _, of := range x.ranges() {
		area, _, refused := s.between(of[0], of[1])
		if refused > 0 || math.Abs(area-x.Area) <= nearly*math.Max(area, x.Area) {
			return false
		}
	}
	return x.Area > 0
}

// Doubt says why the rows may be other than those that a total is of: it is that of the rows
// which aren't hidden, or it is of all pieces and counts others. It says nothing where some sum
// agrees, or where rows were refused.
func (s Running) Doubt(x Given) string {
	sums := append(x.ranges(), [2]int{0, x.Before})
	nearest, pieces := math.MaxInt, 0
	for _, of := range sums {
		area, n, refused := s.between(of[0], of[1])
		if refused > 0 || x.is(area, n) {
			return ""
		}
		if off := max(n-x.Quantity, x.Quantity-n); off < nearest {
			nearest, pieces = off, n
		}
	}
	for _, of := range sums {
		if s.unseen == nil {
			break
		}
		area, n, _ := s.between(of[0], of[1])
		if out, m, _ := s.unseen.between(of[0], of[1]); m > 0 && x.is(area-out, n-m) {
			return fmt.Sprintf("it is the total of the rows that aren't hidden, and the hidden ones come to %s more; take them out, or show them and correct the total", pieceCount(m))
		}
	}
	if !x.Whole || x.Quantity == 0 || x.AreaText != "" {
		return ""
	}
	return fmt.Sprintf("it gives %s, and the rows come to %d; a row may be missing, or count twice: correct the rows or the total", pieceCount(x.Quantity), pieces)
}

// is reports sums that are those of the row, as far as it gives any.
func (x *Given) is(area float64, pieces int) bool {
	if x.AreaText != "" {
		return math.Abs(area-x.Area) <= agrees*math.Max(area, x.Area)
	}
	return pieces == x.Quantity
}

func compared(where, given, found string, same bool) string {
	if same {
		return fmt.Sprintf("it gives %s, the rows %s come to %s: they agree", given, where, found)
	}
	return fmt.Sprintf("it gives %s, but the rows %s come to %s: they differ", given, where, found)
}

// figure writes an area to a hundredth of a m2.
func figure(v float64) string { return fmt.Sprintf("%.2f", v) }

// Running are the sums over the rows of the file up to each.
type Running struct {
	area            []float64 // m2
	pieces, refused []int
	unseen          *Running // of the rows that are hidden; nil: none are
}

// RunningOf sums all rows, whatever their scope. hidden reports rows that are; nil: none are.
func RunningOf(g *ledger.Ledger, hidden func(*ledger.Line) bool) Running {
	s := runningOf(g, func(*ledger.Line) bool { return true })
	if hidden != nil {
		unseen := runningOf(g, hidden)
		s.unseen = &unseen
	}
	return s
}

// runningOf sums some of the rows.
func runningOf(g *ledger.Ledger, some func(*ledger.Line) bool) Running {
	n := len(g.Lines)
	s := Running{area: make([]float64, n+1), pieces: make([]int, n+1), refused: make([]int, n+1)}
	var area Sum
	for i := range g.Lines {
		l := &g.Lines[i]
		if !some(l) {
			s.area[i+1], s.pieces[i+1], s.refused[i+1] = s.area[i], s.pieces[i], s.refused[i]
			continue
		}
		area.Add(l.Area)
		s.area[i+1], s.pieces[i+1], s.refused[i+1] = area.Value(), s.pieces[i]+int(l.Quantity), s.refused[i]
		switch {
		case l.Refused && l.Kind == fittings.NoKind: // it may be no piece
			s.pieces[i+1] = s.pieces[i]
			s.refused[i+1]++
		case l.Refused:
			s.refused[i+1]++
		}
	}
	return s
}

// between sums the rows of the file from one to another.
func (s Running) between(from, to int) (area float64, pieces, refused int) {
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
