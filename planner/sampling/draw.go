package sampling

import (
	"cmp"
	"math/bits"
	"math/rand/v2"
	"slices"
	"strings"
)

// Generator is the source of every draw: the permuted congruential generator
// PCG-DXSM with 128 bits of state (M. O'Neill's PCG family; math/rand/v2's PCG),
// its state started with the seed as the high 64 bits and 0 as the low ones.
//
// A number below n is the high word of the 128-bit product of the next 64-bit
// output and n; an output whose low word is below 2^64 mod n is thrown away, so
// that every number is equally likely. The shuffle goes from the last place to
// the second: place i (from 0) changes with the place drawn below i+1.
type Generator struct{ pcg *rand.PCG }

// NewGenerator starts a generator at a seed.
func NewGenerator(seed uint64) Generator { return Generator{rand.NewPCG(seed, 0)} }

// Below draws a whole number from 0 to n-1; 0 if n is 0.
func (g Generator) Below(n uint64) uint64 {
	if n == 0 {
		return 0
	}
	for reject := -n % n; ; {
		high, low := bits.Mul64(g.pcg.Uint64(), n)
		if low >= reject {
			return high
		}
	}
}

// shuffled is the sections in the order of the draw.
func shuffled(sorted []Section, seed uint64) []Section {
	out := slices.Clone(sorted)
	g := NewGenerator(seed)
	for i := len(out) - 1; i > 0; i-- {
		j := g.Below(uint64(i) + 1)
		out[i], out[j] = out[j], out[i]
	}
	return out
}

// draw takes sections that aren't in before until every need is met by those
// drawn, or none are left. The names are in the order drawn.
func draw(sorted []Section, before map[string]bool, a Ask) []string {
	order := shuffled(sorted, a.Seed)
	taken := map[string]bool{}
	var drawn []string
	for _, n := range needs(sorted, a) {
		var whole, have float64
		for _, s := range sorted {
			if !n.covers(s) {
				continue
			}
			whole += a.By.of(s)
			if taken[s.ID] {
				have += a.By.of(s)
			}
		}
		for _, s := range order {
			if n.met(have, whole) {
				break
			}
			m := a.By.of(s)
			if !n.covers(s) || before[s.ID] || taken[s.ID] || (m == 0 && n.percent < 100) {
				continue
			}
			taken[s.ID] = true
			drawn = append(drawn, s.ID)
			have += m
		}
	}
	return drawn
}

// need is a share of the sections that it covers.
type need struct {
	name    string
	percent float64
	quota   Quota
	class   string
	within  bool // of one class
}

// needs lists what is asked for in the order in which it is drawn: within each
// class, or over all, the quotas and then the share itself.
func needs(sorted []Section, a Ask) []need {
	if !a.PerClass {
		return needsOf(a, need{name: "all"})
	}
	var out []need
	for _, class := range classes(sorted) {
		out = append(out, needsOf(a, need{name: className(class), class: class, within: true})...)
	}
	return out
}

func needsOf(a Ask, of need) []need {
	var out []need
	for _, q := range a.Quotas {
		n := of
		n.quota, n.percent, n.name = q, q.Percent, q.name(of)
		out = append(out, n)
	}
	of.percent = a.Percent
	return append(out, of)
}

func (q Quota) name(of need) string {
	var words []string
	if of.within {
		words = append(words, of.name)
	}
	if q.Class != "" && !(of.within && strings.EqualFold(q.Class, of.class)) {
		words = append(words, className(q.Class))
	}
	for _, w := range []string{string(q.Run), q.Shape} {
		if w != "" {
			words = append(words, w)
		}
	}
	if q.System != "" {
		words = append(words, "system "+q.System)
	}
	return strings.Join(words, ", ")
}

func (n need) covers(s Section) bool {
	q := n.quota
	return (!n.within || s.Class == n.class) &&
		(q.Run == AnyRun || s.Main == (q.Run == Mains)) &&
		(q.Shape == "" || q.Shape == s.Shape) &&
		(q.Class == "" || strings.EqualFold(q.Class, s.Class)) &&
		(q.System == "" || q.System == s.System)
}

// rounding is what sums taken in another order may differ by, as a share of the
// whole.
const rounding = 1e-9

func (n need) met(have, whole float64) bool {
	if n.percent == 100 {
		return false // all of it, those that measure nothing included
	}
	want := n.percent / 100 * whole
	return want == 0 || (have > 0 && have >= want-rounding*whole)
}

func className(class string) string {
	if class == "" {
		return "no class"
	}
	return "class " + class
}

// classes lists the classes there are, in natural order.
func classes(sections []Section) []string {
	return distinct(sections, func(s Section) string { return s.Class })
}

func distinct(sections []Section, of func(Section) string) []string {
	var out []string
	for _, s := range sections {
		out = append(out, of(s))
	}
	return ordered(out)
}

// byName puts names in natural order: runs of digits by their value, all else
// byte by byte, and names alike so far ("S1", "S01") byte by byte throughout.
func byName(a, b string) int {
	x, y := a, b
	for x != "" && y != "" {
		nx, ny := digits(x), digits(y)
		if nx == 0 || ny == 0 {
			if c := cmp.Compare(x[0], y[0]); c != 0 {
				return c
			}
			x, y = x[1:], y[1:]
			continue
		}
		vx, vy := strings.TrimLeft(x[:nx], "0"), strings.TrimLeft(y[:ny], "0")
		if c := cmp.Or(cmp.Compare(len(vx), len(vy)), cmp.Compare(vx, vy)); c != 0 {
			return c
		}
		x, y = x[nx:], y[ny:]
	}
	return cmp.Or(cmp.Compare(len(x), len(y)), cmp.Compare(a, b))
}

func digits(s string) int {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return i
		}
	}
	return len(s)
}
