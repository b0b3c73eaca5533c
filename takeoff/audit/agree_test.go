package audit

import (
	"math"
	"math/rand/v2"
	"testing"

	"blankoff/takeoff/bases"
)

// plantable are the mistakes that the checks make; the others need no piece.
func plantable(lined bool) []string {
	var keys []string
	for _, m := range mistakes(nil, lined) {
		if m.Key != "cm-across" && m.Key != "inch-across" {
			keys = append(keys, m.Key)
		}
	}
	return keys
}

// TestMeasurerIsTakeoffs holds the areas of every row, with no mistake made,
// against the takeoff's.
func TestMeasurerIsTakeoffs(t *testing.T) {
	for seed := range uint64(60) {
		g := &generator{Rand: rand.New(rand.NewPCG(seed, 1))}
		lines := g.schedule(25, seed%3 == 0)
		for _, b := range bases.BuiltIn() {
			tk := measured(t, lines, &b)
			m, w := newMeasurer(tk), right(&b)
			for i := range tk.Items {
				v, ok := m.area(i, &w)
				if it := &tk.Items[i]; !ok || math.Abs(v-it.Area) > 1e-12*math.Max(1, it.Area) {
					t.Fatalf("seed %d, %s on %s: %g, the takeoff has %g", seed, it.Piece.Kind, b.Name, v, it.Area)
				}
			}
		}
	}
}

// TestMistakesByAnotherRoute makes every mistake, alone and in pairs, by typing
// the schedule anew, and holds every row against what the engine makes of it.
func TestMistakesByAnotherRoute(t *testing.T) {
	rows := 0
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 7))
		g := &generator{Rand: r}
		lined := seed%2 == 0
		lines := g.schedule(20, lined)
		f := newFinder(newMeasurer(measured(t, lines, nil)), nil)
		keys := plantable(lined)
		var tries [][]string
		for _, k := range keys {
			tries = append(tries, []string{k})
		}
		for range 60 {
			tries = append(tries, []string{keys[r.IntN(len(keys))], keys[r.IntN(len(keys))]})
		}
		for _, try := range tries {
			made, ok := f.called(try)
			if !ok {
				continue
			}
			want := plant(t, lines, try...)
			for i := range lines {
				got, ok := f.predict(made, []share{{i, 1}})
				if !ok || math.IsNaN(want[i]) {
					if ok != !math.IsNaN(want[i]) && !(ok && mayBeThin(lines[i])) {
						t.Errorf("seed %d, %v, %v: %g %v, by typing %g", seed, try, lines[i], got, ok, want[i])
					}
					continue
				}
				if rows++; math.Abs(got-want[i]) > 1e-6*math.Max(1, math.Abs(want[i])) {
					t.Errorf("seed %d, %v, %v: %g, by typing %g", seed, try, lines[i], got, want[i])
				}
			}
			if t.Failed() {
				return
			}
		}
	}
	t.Logf("%d rows agree", rows)
}

// mayBeThin reports a row that a lining, or a radius, by mistake makes narrower than
// ducts are: typed like that it is refused.
func mayBeThin(l line) bool {
	for h, wide := range map[string]float64{"diameter_mm": 300, "diameter2_mm": 300, "width2_mm": 145, "height2_mm": 145} {
		if v, ok := l.number(h); ok && v < wide {
			return true
		}
	}
	return false
}

// called finds mistakes by their keys, if they can be made at once.
func (f *finder) called(keys []string) ([]made, bool) {
	var list []made
	for i := range f.list { // in the list's own order
		for _, k := range keys {
			if f.list[i].Key == k {
				list = append(list, made{&f.list[i], Scope{}})
			}
		}
	}
	if len(list) != len(keys) || len(list) == 2 && !list[0].goesWith(list[1].Mistake) {
		return nil, false
	}
	return list, true
}
