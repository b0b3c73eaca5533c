package audit

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// Slip is what one row has beside the cause of the whole list.
type Slip struct {
	Key   string
	Words string
	Area  float64 // what it makes of the row, m2
}

// mostSlips bounds those that are listed for a row.
const mostSlips = 3

// oneRow are slips of a single figure, as factors of what it should be.
var oneRow = []struct {
	key, words string
	factor     float64
}{
	{"counted-twice", "counted twice", 2}, {"decimal-point", "the decimal point one place to the right", 10},
	{"decimal-point", "the decimal point one place to the left", 0.1},
	{"decimal-point", "the decimal point two places to the right", 100},
	{"decimal-point", "the decimal point two places to the left", 0.01},
}

// explainRows tells for every figure whether the cause gives it, and looks for
// what it has instead where not.
func (f *finder) explainRows(figures []Figure, found *Finding) {
	var made []made
	if cause := found.cause(); cause != nil {
		made = cause.guess.made
	}
	for k := range figures {
		x := &figures[k]
		if x.Verdict == NoArea {
			continue
		}
		v, ok := f.predict(made, []share{{x.Item, 1}})
		if !ok {
			v = x.Area
		}
		x.Under = v
		if x.Fits = x.holds(v); x.Fits {
			continue
		}
		x.Slips = f.slips(x, made, found.beside())
		x.Outlier = len(x.Slips) == 0 && x.Verdict == Differs
	}
}

// slips are what would give the figure of one row, the simplest first.
func (f *finder) slips(x *Figure, list []made, beside string) []Slip {
	if len(list) > 0 && x.holds(x.Area) {
		return []Slip{{"right", "right as it is: it doesn't have " + beside, x.Area}}
	}
	var out []Slip
	add := func(key, words string, v float64) {
		for _, s := range out {
			if s.Key == key && (s.Words == words || key != "decimal-point") {
				return
			}
		}
		out = append(out, Slip{key, words, v})
	}
	one := []share{{x.Item, 1}}
	for i := range f.list {
		m := &f.list[i]
		alone := []made{{m, Scope{}}}
		if v, ok := f.predict(alone, one); ok && x.holds(v) {
			add(m.Key, m.Words, v)
		}
		if !allGo(list, m) || len(list) == 0 {
			continue
		}
		if v, ok := f.predict(append(append([]made(nil), list...), alone...), one); ok && x.holds(v) {
			add(m.Key, m.Words+", beside "+beside, v)
		}
	}
	for _, base := range []float64{x.Area, x.Under} {
		for _, s := range oneRow {
			if v := base * s.factor; x.holds(v) {
				add(s.key, s.words, v)
			}
		}
		if s, v, ok := swapped(x, f.t.Items[x.Item].StatedText, base); ok {
			add("digits-swapped", s, v)
		}
	}
	if it := &f.t.Items[x.Item]; len(out) == 0 && it.Quantity > 1 {
		if q := x.Stated / x.Area * float64(it.Quantity); math.Abs(q-math.Round(q)) < 1e-9+x.Rounding/x.Area*float64(it.Quantity) && q >= 0.5 && q < 1000 {
			add("other-quantity", "a quantity of "+strconv.Itoa(int(math.Round(q)))+" instead of "+strconv.Itoa(it.Quantity), x.Area/float64(it.Quantity)*math.Round(q))
		}
	}
	// What is said of single pieces before what is said of lists.
	slices.SortStableFunc(out, func(a, b Slip) int { return ofLists(a.Key) - ofLists(b.Key) })
	if x.Rounding > x.Stated/20 && len(out) > mostSlips {
		return nil // too coarse to tell
	}
	return out[:min(len(out), mostSlips)]
}

func ofLists(key string) int {
	if strings.HasPrefix(key, "basis-") || key == "fittings-as-straights" || key == "fittings-out" {
		return 1
	}
	return 0
}

func allGo(list []made, m *Mistake) bool {
	for _, o := range list {
		if !o.goesWith(m) {
			return false
		}
	}
	return true
}

// swapped looks for two digits next to each other in the wrong order.
func swapped(x *Figure, typed string, right float64) (words string, v float64, ok bool) {
	n := number(typed)
	if strings.Trim(n, "0123456789.") != "" {
		return "", 0, false
	}
	for i := 0; i+1 < len(n); i++ {
		k := i + 1
		if n[k] == '.' {
			k++
		}
		if k >= len(n) || n[i] == '.' || n[i] == n[k] {
			continue
		}
		b := []byte(n)
		b[i], b[k] = b[k], b[i]
		meant, err := strconv.ParseFloat(string(b), 64)
		if err == nil && within(right, meant*scaleOf(n, x.Stated), x.Rounding) {
			return "two digits swapped: " + string(b), x.Stated, true
		}
	}
	return "", 0, false
}

func hasLining(it *takeoff.Item) bool {
	v, ok := it.Piece.Sizes.Get(fittings.Lining)
	return ok && v > 0
}
