package audit

import (
	"fmt"
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff/bases"
)

// slot is the part of a measurement that a mistake is made in. Two mistakes in
// one slot can't be made at once.
type slot uint16

const (
	slotSizes   slot = 1 << iota // inside of lining, outside of insulation
	slotRound                    // radius and diameter
	slotOval                     // shape of a flat oval
	slotFormula                  // girth x length
	slotBends                    // switches of a basis
	slotTapers
	slotBranches
	slotOpenings
	slotCaps
	slotInline
	slotEnds
	slotCount // quantity
	slotUnit
	slotBasis = slotBends | slotTapers | slotBranches | slotOpenings | slotCaps | slotInline
)

// Mistake is a known way in which areas come out wrong, or are measured by
// another rule.
type Mistake struct {
	Key   string // short, for scripts: "half-girth"
	Words string // for sentences: "half the girth, a + b, taken for the girth"
	slot  slot
	bits  float64 // what has to be supposed beside the mistake itself, as a thickness
	apply func(*way)
}

// way is a way of working out areas: the right one with mistakes made in it.
type way struct {
	lining   bool    // less the lining that the row gives
	grow     float64 // added to every size across, m
	round    float64 // times every diameter
	oval     ovalAs
	basis    fittings.Basis
	face     bool // the cross-section
	straight bool // fittings as straights
	without  bool // fittings left out
	half     bool // half the girth of rectangular pieces
	ends     endsCounted
	once     bool    // quantity left out
	sizes    float64 // times every size; a given area stays
	across   float64 // times every size across
	times    float64 // times every figure
}

type ovalAs uint8

const (
	asOval ovalAs = iota
	asRectangle
	asMajorCircle
	asMinorCircle
	asMeanCircle
)

type endsCounted uint8

const (
	noEnds   endsCounted = iota
	allEnds              // both faces of every piece
	openEnds             // those with nothing on them
)

// right is the way without mistakes, on a basis.
func right(basis *fittings.Basis) way {
	w := way{round: 1, sizes: 1, across: 1, times: 1}
	if basis != nil {
		w.basis = *basis
	}
	return w
}

// sqft is a square foot in m2: 0.3048 m squared, exactly.
const sqft = 0.09290304

func times(f float64) func(*way) { return func(w *way) { w.times *= f } }

// mistakes lists the known mistakes. lined says that some row gives its lining.
func mistakes(basis *fittings.Basis, lined bool) []Mistake {
	list := []Mistake{
		{"cross-section", "the cross-section taken for the surface", slotFormula | slotEnds | slotBasis, 0, func(w *way) { w.face = true }},
		{"half-girth", "half the girth of rectangular pieces, a + b instead of 2 (a + b)", slotFormula, 0, func(w *way) { w.half = true }},
		{"ft2-for-m2", "square feet given as m2", slotUnit, 0, times(1 / sqft)},
		{"m2-for-ft2", "m2 turned into m2 once more, as if they were square feet", slotUnit, 0, times(sqft)},
		{"cm-for-mm", "sizes in mm read as cm", slotUnit, 0, func(w *way) { w.sizes = 10 }},
		{"inch-for-mm", "sizes in mm read as inches", slotUnit, 0, func(w *way) { w.sizes = 25.4 }},
		{"cm-across", "widths, heights and diameters in mm read as cm", slotUnit, 1, func(w *way) { w.across = 10 }},
		{"inch-across", "widths, heights and diameters in mm read as inches", slotUnit, 1, func(w *way) { w.across = 25.4 }},
		{"radius-for-diameter", "the radius put in the place of the diameter", slotRound, 0, func(w *way) { w.round = 0.5 }},
		{"diameter-for-radius", "the diameter put in the place of the radius", slotRound, 0, func(w *way) { w.round = 2 }},
		{"fittings-out", "fittings left out, straight and flexible duct only", slotFormula | slotBasis, 0.25, func(w *way) { w.without = true }},
		{"fittings-as-straights", "fittings counted as straights: girth of the plant end x length, openings left in", slotFormula | slotBasis, 0.25, func(w *way) { w.straight = true }},
		{"ends-counted", "the end faces of every piece counted", slotEnds, 0, func(w *way) { w.ends = allEnds }},
		{"open-ends-counted", "blanks on the open ends counted", slotEnds, 1, func(w *way) { w.ends = openEnds }},
		{"oval-as-rectangle", "flat oval measured as a rectangle", slotOval, 0, func(w *way) { w.oval = asRectangle }},
		{"oval-as-circle", "flat oval measured as a circle of its major axis", slotOval, 0, func(w *way) { w.oval = asMajorCircle }},
		{"oval-as-minor-circle", "flat oval measured as a circle of its minor axis", slotOval, 1, func(w *way) { w.oval = asMinorCircle }},
		{"oval-as-mean-circle", "flat oval measured as a circle of the mean of its axes", slotOval, 1, func(w *way) { w.oval = asMeanCircle }},
		{"quantity-missed", "the quantity missed: one of each row", slotCount, 0, func(w *way) { w.once = true }},
	}
	list = append(list, linings(lined)...)
	return append(append(list, switchMistakes(basis)...), basisMistakes(basis)...)
}

// linings are sizes taken inside a lining or outside an insulation. What the
// schedule doesn't say has to be supposed: usual thicknesses, common practice, no
// source.
func linings(lined bool) []Mistake {
	var list []Mistake
	if lined {
		list = append(list, Mistake{"inside-lining", "measured inside the lining", slotSizes, 0, func(w *way) { w.lining = true }})
	} else {
		for _, mm := range []float64{13, 25, 30, 40, 50} {
			list = append(list, Mistake{fmt.Sprintf("inside-lining-%g", mm), fmt.Sprintf("measured inside a lining of %g mm that the schedule doesn't list", mm), slotSizes, 2, func(w *way) { w.grow = -2 * mm / 1000 }})
		}
	}
	for _, mm := range []float64{20, 25, 30, 40, 50, 60, 75, 80, 100} {
		list = append(list, Mistake{fmt.Sprintf("outside-insulation-%g", mm), fmt.Sprintf("measured outside %g mm of insulation", mm), slotSizes, 2, func(w *way) { w.grow = 2 * mm / 1000 }})
	}
	return list
}

// switchMistakes are single choices of a measuring basis. Whoever counts by them
// leaves the others exact.
func switchMistakes(basis *fittings.Basis) []Mistake {
	var list []Mistake
	add := func(key, words string, s slot, change func(*fittings.Basis)) {
		now := fittings.Basis{}
		if basis != nil {
			now = *basis
		}
		then := now
		if change(&then); then != now {
			list = append(list, Mistake{key, words, s, 0, func(w *way) { change(&w.basis) }})
		}
	}
	taper := func(g fittings.TaperGirth, l fittings.TaperLength) func(*fittings.Basis) {
		return func(b *fittings.Basis) { b.TaperGirth, b.TaperLength = g, l }
	}
	add("larger-end", "tapers by their larger end, along the axis", slotTapers, taper(fittings.LargerGirth, fittings.Axial))
	add("larger-end-slant", "tapers by their larger end, along the slant", slotTapers, taper(fittings.LargerGirth, fittings.Slant))
	add("mean-girth", "tapers by their mean girth, along the axis", slotTapers, taper(fittings.MeanGirth, fittings.Axial))
	add("outer-edge", "bends along their outer edge", slotBends, func(b *fittings.Basis) { b.BendLength = fittings.OuterEdge })
	add("to-intersection", "bends to where their axes meet", slotBends, func(b *fittings.Basis) { b.BendLength = fittings.ToIntersection })
	add("branch-from-axis", "branches from the main's axis", slotBranches, func(b *fittings.Basis) { b.BranchFrom = fittings.FromAxis })
	add("branch-from-face", "branches from the main's face", slotBranches, func(b *fittings.Basis) { b.BranchFrom = fittings.FromFace })
	add("openings-kept", "openings not taken off", slotOpenings, func(b *fittings.Basis) { b.Openings = fittings.Kept })
	add("caps-out", "permanent caps left out", slotCaps, func(b *fittings.Basis) { b.Caps = fittings.CapsOut })
	add("inline-out", "dampers and other in-line pieces left out", slotInline, func(b *fittings.Basis) { b.Inlines = fittings.Excluded })
	return list
}

// basisMistakes are the other named bases, each as a whole.
func basisMistakes(basis *fittings.Basis) []Mistake {
	var list []Mistake
	for _, b := range bases.BuiltIn() {
		if same := basis.Exact() && b.Exact() || basis != nil && b.Name == basis.Name; same {
			continue
		}
		list = append(list, Mistake{"basis-" + b.Name, "measured on the basis " + b.Name, slotBasis, 0.5, func(w *way) { w.basis = b }})
	}
	return list
}

// goesWith reports whether two mistakes can be made at once.
func (m *Mistake) goesWith(o *Mistake) bool { return m.Key != o.Key && m.slot&o.slot == 0 }

// keysOf names mistakes for scripts.
func keysOf(list []*Mistake) []string {
	var keys []string
	for _, m := range list {
		keys = append(keys, m.Key)
	}
	slices.Sort(keys)
	return keys
}
