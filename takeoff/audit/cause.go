package audit

import (
	"math"
	"slices"
	"strings"
)

// Sureness is how sure a cause is.
type Sureness string

// How sure a cause is. Certain needs that it gives all figures or all but a few,
// that several of them tell, and that nothing else comes near.
const (
	NothingDiffers Sureness = ""
	Certain        Sureness = "certain"
	Likely         Sureness = "likely"
	OneOfThese     Sureness = "one of these"
	NoCause        Sureness = "no single cause found"
)

// Part of a cause: a mistake, and the part of the list that it's made in.
type Part struct {
	Key   string
	Words string
	Scope Scope
}

// Text is the part in words.
func (p Part) Text() string {
	if s := p.Scope.String(); s != "" {
		return p.Words + " (" + s + ")"
	}
	return p.Words
}

// Cause is what the figures may come from: one mistake or two, and how well it
// does.
type Cause struct {
	Parts  []Part
	Hits   int // figures that it gives within their rounding
	Of     int // figures looked at
	Tells  int // figures that it gives and that aren't right
	Breaks int // figures that are right and that it would change
	guess  guess
}

// Text is the cause in words.
func (c *Cause) Text() string {
	var words []string
	for _, p := range c.Parts {
		words = append(words, p.Text())
	}
	return strings.Join(words, ", and ")
}

// Finding is what was found out about figures that differ.
type Finding struct {
	Sure   Sureness
	Causes []Cause // the cause, or those between which the figures can't tell
	More   int     // further ones that aren't listed
	Alike  []Cause // ways that make the same of every figure as one of the causes, and suppose more
	Single bool    // pairs weren't tried: there is too much to add up
}

// Best is the first cause; nil where there is none.
func (f *Finding) Best() *Cause {
	if len(f.Causes) == 0 {
		return nil
	}
	return &f.Causes[0]
}

// Words is what a figure that the cause gives has: the reason of its row.
func (f *Finding) Words() string {
	switch best := f.Best(); {
	case best == nil:
		return ""
	case f.Sure == OneOfThese:
		return "one of the causes"
	case len(best.Parts) > 1:
		return "the two causes"
	}
	return "the cause"
}

// beside is the cause that a single figure is held against.
func (f *Finding) beside() string {
	if f.Sure == OneOfThese {
		return "the first of the causes"
	}
	return f.Words()
}

// mostCauses bounds a list of causes that explain figures as well.
const mostCauses = 6

// find looks for the cause of what differs.
func (f *finder) find() Finding {
	off := 0
	for i := range f.targets {
		if !f.targets[i].agrees {
			off++
		}
	}
	if off == 0 {
		return Finding{}
	}
	list := f.look()
	best := &list[0]
	none := guess{}
	for i := range list {
		if len(list[i].made) == 0 {
			none = list[i]
		}
	}
	best = simpler(list, best)
	if best.total > none.total-better || best.wins == 0 {
		return Finding{Sure: NoCause, Single: f.single}
	}
	gap, rivals, same := f.rivals(list, best)
	out := Finding{Causes: []Cause{f.causeOf(best)}, Single: f.single}
	for _, g := range same {
		out.Alike = append(out.Alike, f.causeOf(g))
	}
	switch {
	case len(rivals) > 0:
		out.Sure = OneOfThese
		for _, r := range rivals {
			out.Causes = append(out.Causes, f.causeOf(r))
		}
		if n := len(out.Causes); n > mostCauses {
			out.Causes, out.More = out.Causes[:mostCauses], n-mostCauses
		}
	case gap >= surely && !f.single && !extended(list, best, len(f.targets)) && f.sure(best, none):
		out.Sure = Certain
	default:
		out.Sure = Likely
	}
	return out
}

// simpler is a part of the best guess that does about as well by itself.
func simpler(list []guess, best *guess) *guess {
	if len(best.made) < 2 {
		return best
	}
	for i := range list {
		if g := &list[i]; len(g.made) == 1 && g.total <= best.total+better && contains(best, g) {
			return g
		}
	}
	return best
}

// extended reports whether a second mistake beside the best guess gives a good part
// of the n figures that it doesn't give by itself. It may be chance, or the other
// half of the cause.
func extended(list []guess, best *guess, n int) bool {
	const part = 0.15
	left := float64(n - best.hits)
	return slices.ContainsFunc(list, func(g guess) bool {
		return len(g.made) > len(best.made) && contains(&g, best) && g.hits > best.hits && float64(g.hits-best.hits) >= part*left
	})
}

// contains reports whether every mistake of g is one of whole's.
func contains(whole, g *guess) bool {
	for _, m := range g.made {
		found := false
		for _, o := range whole.made {
			found = found || o.Key == m.Key
		}
		if !found {
			return false
		}
	}
	return true
}

// rivals are the guesses that lack a part of the best one and do about as well,
// and by how much the next of them does worse. What makes the same of every figure
// as a simpler one has more in it only for what no figure states: it's no rival,
// and is given apart.
func (f *finder) rivals(list []guess, best *guess) (gap float64, rivals, same []*guess) {
	gap = keep
	kinds := []*guess{best}
	for i := range list {
		g := &list[i]
		if len(g.made) == 0 || g.wins == 0 || contains(g, best) || len(best.made) > 1 && contains(best, g) {
			continue
		}
		near := g.total < best.total+better
		if slices.ContainsFunc(kinds, func(k *guess) bool { return f.prior(g.made) > f.prior(k.made)+1e-9 && f.alike(g, k) }) {
			if near {
				same = append(same, g)
			}
			continue
		}
		kinds = append(kinds, g)
		if near {
			rivals = append(rivals, g)
		}
		gap = min(gap, g.total-best.total)
	}
	return gap, rivals, same
}

// alike reports whether two guesses make the same of every figure.
func (f *finder) alike(a, b *guess) bool {
	if a.hits != b.hits || a.wins != b.wins || a.losses != b.losses || a.moves != b.moves {
		return false
	}
	for i := range f.targets {
		x, okX := f.predict(a.made, f.targets[i].shares)
		y, okY := f.predict(b.made, f.targets[i].shares)
		if okX != okY || math.Abs(x-y) > slack*math.Max(1, math.Abs(x)) {
			return false
		}
	}
	return true
}

// sure reports whether the best guess may be called certain: each part of it tells
// on three figures or more, it leaves out few and breaks none.
func (f *finder) sure(best *guess, none guess) bool {
	const telling, few = 3, 0.15
	n := len(f.targets)
	if best.wins < telling || float64(n-best.hits) > few*float64(n) || best.losses > 0 {
		return false
	}
	if len(best.made) == 1 {
		return none.total-best.total >= surely
	}
	for i := range best.made {
		alone, _ := f.try([]made{best.made[i]}, f.targets, 1e300)
		if best.hits-alone.hits < telling {
			return false
		}
	}
	return true
}

func (f *finder) causeOf(g *guess) Cause {
	c := Cause{Hits: g.hits, Of: len(f.targets), Tells: g.wins, Breaks: g.losses, guess: *g}
	for _, m := range g.made {
		c.Parts = append(c.Parts, Part{m.Key, m.Words, m.scope})
	}
	return c
}
