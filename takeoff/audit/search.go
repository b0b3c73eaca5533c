package audit

import (
	"cmp"
	"math"
	"slices"

	"blankoff/takeoff"
	"blankoff/takeoff/totals"
)

// Bits by which one hypothesis has to do better than another. A bit is a factor
// of two in odds: 3 bits are 8 to 1, 12 bits 4,000 to 1.
const (
	better  = 3
	surely  = 12
	keep    = surely + 2
	ofPair  = 2 // a pair is rarer than two single ones
	ofScope = 2
)

// finder looks for the cause of differences.
type finder struct {
	*measurer
	right   way
	list    []Mistake
	scopes  []Scope // parts of the list
	targets []target
	seen    []target // those that are looked at first: all, or a sample
	best    float64  // total of the best guess so far
	kept    map[string]guess
	known   map[measure]float64 // NaN: can't be measured so
	single  bool                // there is too much to add up for pairs to be tried
}

// measure is a row with one mistake or two, or none, made in it.
type measure struct {
	item int
	a, b *Mistake
}

// mostSeen bounds the figures that every hypothesis is tried on; those that do
// well are tried on all.
const mostSeen = 240

// mostAdded bounds the rows of sums for which pairs are tried.
const mostAdded = 3000

func newFinder(m *measurer, targets []target) *finder {
	lined := slices.ContainsFunc(m.t.Items, func(it takeoff.Item) bool { return hasLining(&it) })
	f := &finder{measurer: m, right: right(m.t.Basis()), list: mistakes(m.t.Basis(), lined), targets: targets, seen: targets, kept: map[string]guess{}, known: map[measure]float64{}}
	if n := len(targets); n > mostSeen {
		f.seen = nil
		for k := range mostSeen {
			f.seen = append(f.seen, targets[k*n/mostSeen])
		}
	}
	f.scopes = scopesOf(m.t, targets)
	rows := 0
	for i := range f.seen {
		rows += len(f.seen[i].shares)
	}
	f.single = rows > mostAdded
	return f
}

// prior is what has to be supposed for a guess, bits.
func (f *finder) prior(list []made) float64 {
	sum := 0.0
	for _, m := range list {
		sum += math.Log2(float64(len(f.list))) + m.bits
		if m.scope.By != "" {
			sum += math.Log2(float64(len(f.scopes))) + ofScope
		}
	}
	if len(list) > 1 {
		sum += ofPair
	}
	return sum
}

// row is what a guess makes of one row.
func (f *finder) row(list []made, item int) (float64, bool) {
	key := measure{item: item}
	for _, m := range list {
		switch {
		case !m.scope.covers(&f.t.Items[item]):
		case key.a == nil:
			key.a = m.Mistake
		case key.b == nil:
			key.b = m.Mistake
		default: // three are never tried on a list
			return f.anew(list, item)
		}
	}
	v, ok := f.known[key]
	if !ok {
		if v, ok = f.anew(list, item); !ok {
			v = math.NaN()
		}
		f.known[key] = v
	}
	return v, !math.IsNaN(v)
}

// anew measures a row in the way of a guess.
func (f *finder) anew(list []made, item int) (float64, bool) {
	w := f.right
	for _, m := range list {
		if m.scope.covers(&f.t.Items[item]) {
			m.apply(&w)
		}
	}
	return f.area(item, &w)
}

// predict is what a guess makes of a figure.
func (f *finder) predict(list []made, shares []share) (float64, bool) {
	var sum totals.Sum
	for _, s := range shares {
		v, ok := f.row(list, s.item)
		if !ok {
			return 0, false
		}
		sum.Add(v * s.of)
	}
	return sum.Value(), true
}

// try weighs a guess on some targets; it gives up once it's worse than bound.
func (f *finder) try(list []made, targets []target, bound float64) (guess, bool) {
	g := guess{made: list, total: f.prior(list)}
	scale := float64(len(f.targets)) / float64(max(1, len(targets)))
	if scale > 1 {
		bound = g.total + (bound-g.total)/scale
	}
	for i := range targets {
		x := &targets[i]
		v, ok := f.predict(list, x.shares)
		cost := x.bits
		if ok && !within(v, x.area, x.rounding) {
			g.moves++
		}
		switch {
		case ok && within(v, x.stated, x.rounding), !ok && x.agrees:
			cost = 0
		case len(x.others) > 0:
			cost = f.otherCost(list, x)
		}
		switch {
		case cost < x.bits:
			g.hits++
			if !x.agrees {
				g.wins++
			}
		case x.agrees:
			g.losses++
		}
		if g.total += cost; g.total > bound {
			return g, false
		}
	}
	if scale > 1 {
		p := f.prior(list)
		g.total = p + (g.total-p)*scale
	}
	return g, true
}

// offer tries a guess and keeps it if it may be the one or a rival.
func (f *finder) offer(list []made) {
	if g, ok := f.try(list, f.seen, f.best+keep); ok {
		f.take(g)
	}
}

func (f *finder) take(g guess) {
	if !g.holds() {
		return
	}
	f.best = math.Min(f.best, g.total)
	key := g.keys()
	if old, ok := f.kept[key]; !ok || g.total < old.total-1e-9 {
		f.kept[key] = g
	}
}

// look tries every hypothesis and gives those that do about as well as the best,
// the best first. The first is nothing but chance: no mistake at all.
func (f *finder) look() []guess {
	none, _ := f.try(nil, f.seen, math.Inf(1))
	f.best = none.total
	f.take(none)
	singles := f.singles()
	if f.single {
		return f.ranked()
	}
	f.pairs(Scope{})
	f.extend(singles)
	if left := f.best; len(f.scopes) > 0 && left > none.total/2 {
		for _, s := range f.scopes {
			f.pairs(s)
		}
	}
	return f.ranked()
}

// singles tries every mistake alone, on the whole list and on its parts, and
// gives those that do best.
func (f *finder) singles() []guess {
	var all []guess
	for i := range f.list {
		whole, _ := f.try([]made{{&f.list[i], Scope{}}}, f.seen, math.Inf(1))
		f.take(whole)
		all = append(all, whole)
		for _, s := range f.scopes {
			if g, ok := f.try([]made{{&f.list[i], s}}, f.seen, f.best+keep+100); ok && g.wins > 0 && g.total < whole.total {
				f.take(g)
				all = append(all, g)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b guess) int { return cmp.Compare(a.total, b.total) })
	const most = 10
	return all[:min(most, len(all))]
}

// pairs tries every two mistakes at once on a part of the list.
func (f *finder) pairs(s Scope) {
	for i := range f.list {
		for k := range f.list[:i] {
			if a, b := &f.list[k], &f.list[i]; a.goesWith(b) {
				f.offer([]made{{a, s}, {b, s}})
			}
		}
	}
}

// extend adds to single mistakes that do well a second one on a part of the list.
func (f *finder) extend(singles []guess) {
	for _, g := range singles {
		if g.wins == 0 {
			continue
		}
		for i := range f.list {
			m := &f.list[i]
			if !m.goesWith(g.made[0].Mistake) {
				continue
			}
			for _, s := range append([]Scope{{}}, f.scopes...) {
				if g.made[0].scope == s && s == (Scope{}) {
					continue // tried already
				}
				f.offer([]made{g.made[0], {m, s}})
			}
		}
	}
}

// ranked is what was kept, weighed on all figures, the best first.
func (f *finder) ranked() []guess {
	var list []guess
	for _, g := range f.kept {
		if g.total > f.best+keep && len(g.made) > 1 {
			continue
		}
		if len(f.seen) < len(f.targets) {
			g, _ = f.try(g.made, f.targets, math.Inf(1))
		}
		list = append(list, g)
	}
	slices.SortFunc(list, func(a, b guess) int {
		return cmp.Or(cmp.Compare(math.Round(a.total*1e6), math.Round(b.total*1e6)), cmp.Compare(len(a.made), len(b.made)), cmp.Compare(a.keys(), b.keys()))
	})
	return list
}
