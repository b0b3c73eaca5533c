package report

import (
	"sort"

	"blankoff/fittings"
	"blankoff/planner"
	"blankoff/planner/blanking"
	"blankoff/planner/units"
	"blankoff/takeoff/terms"
)

// Blanking is the blanks as work and as material, in the tests still to be made:
// fits, every end in every test; makes, the most of one size in use at once; and
// the order of tests in which the fewest have to be made, then moved.
type Blanking struct {
	Ahead  bool     `json:"ahead"` // a test is made ready while the one before it runs
	Order  []string `json:"order"`
	Fits   int      `json:"fits"`
	Makes  int      `json:"makes"`
	Moves  int      `json:"moves"`
	Turned int      `json:"turned"` // fits without a move: the blank stays at its joint
	// LeastMakes is a number below which no order goes; LeastMoves likewise, for
	// orders that need no more blanks than this one.
	LeastMakes int          `json:"least_makes"`
	LeastMoves int          `json:"least_moves"`
	Proved     bool         `json:"proved"`
	Sizes      []BlankSize  `json:"sizes"`
	Moving     []BlankMoves `json:"moving"`
	Groupings  []string     `json:"groupings"` // sections whose inner blanks aren't known; not in the order
	LeftOut    []string     `json:"left_out"`  // sections that aren't tested; each says why
}

// BlankSize is the blanks of one size; a rectangular one is named upright.
type BlankSize struct {
	Face
	Fits  int `json:"fits"`
	Makes int `json:"makes"`
}

// BlankMoves is the way of one blank through the tests.
type BlankMoves struct {
	Face
	No    int         `json:"no"` // among those of its size
	Steps []BlankStep `json:"steps"`
}

// BlankStep is one fit of a blank.
type BlankStep struct {
	Section string `json:"section"`
	At      string `json:"at"`
	How     string `json:"how"` // fit (from the store), turn or move
}

// Upright turns a rectangular opening so that its longer side comes first, as its
// text has it: one blank serves both ways round.
func Upright(f Face) Face {
	if f.Shape == "rectangular" && f.Width < f.Height {
		f.Width, f.Height = f.Height, f.Width
	}
	return f
}

// store is the blanks of a plan, numbered by size. One whose size isn't known
// serves at no other place.
type store struct {
	units  units.System
	faces  []Face // by size
	number map[sizeKey]int
	place  int // the last that was given to an end that is no joint
}

type sizeKey struct {
	Face
	place int // 0 where the size is known
}

// blankingOf finds the order of the tests still to be made; nil where there is
// none whose blanks are known.
func blankingOf(p *planner.Plan, plan *Plan) *Blanking {
	v := &Blanking{Ahead: p.Settings.Ahead, Order: []string{}, Sizes: []BlankSize{}, Moving: []BlankMoves{}, Groupings: []string{}, LeftOut: []string{}}
	visit := visitNumbers(plan.Visits)
	s := store{units: p.Settings.Units, number: map[sizeKey]int{}, place: len(p.Network.Joints)}
	var tests []blanking.Test
	var of []*planner.Section
	for i := range p.Sections {
		sec := &p.Sections[i]
		switch {
		case plan.Sections[i].NotTested != "":
			v.LeftOut = append(v.LeftOut, sec.ID)
			continue
		case sec.Grouping:
			v.Groupings = append(v.Groupings, sec.ID)
			continue
		}
		tests, of = append(tests, s.test(sec, visit[sec.ID])), append(of, sec)
	}
	if len(tests) == 0 {
		return nil
	}
	best := blanking.Least(tests, v.Ahead)
	v.Fits, v.Makes, v.Moves, v.Turned = best.Fits, best.Made(), best.Moves, best.Turned
	v.LeastMakes, v.LeastMoves, v.Proved = best.LeastMakes, best.LeastMoves, best.Proved
	for _, k := range best.Order {
		v.Order = append(v.Order, of[k].ID)
	}
	v.addSizes(s.faces, best.Moving)
	v.addMoving(s.faces, best.Moving, of)
	return v
}

// visitNumbers is the visit of every section that has one.
func visitNumbers(when *Visits) map[string]int {
	of := map[string]int{}
	if when != nil {
		for k, x := range when.List {
			for _, id := range x.Sections {
				of[id] = k
			}
		}
	}
	return of
}

// test is a section's blanks by size and place.
func (s *store) test(sec *planner.Section, visit int) blanking.Test {
	t := blanking.Test{Visit: visit}
	for _, b := range sec.Blanks {
		place := b.Joint
		if place < 0 {
			s.place++
			place = s.place
		}
		key := sizeKey{Face: Upright(faceOf(b.Face, s.units))}
		if b.Face.Shape == fittings.NoShape {
			key.place = place + 1
		}
		size, ok := s.number[key]
		if !ok {
			size = len(s.faces)
			s.number[key], s.faces = size, append(s.faces, key.Face)
		}
		t.Blanks = append(t.Blanks, blanking.Blank{Size: size, Place: place})
	}
	return t
}

// addSizes counts fits and makes by size, in the natural order of the sizes.
func (v *Blanking) addSizes(faces []Face, tracks []blanking.Track) {
	at := map[Face]int{}
	for _, x := range tracks {
		f := faces[x.Size]
		k, ok := at[f]
		if !ok {
			k = len(v.Sizes)
			at[f], v.Sizes = k, append(v.Sizes, BlankSize{Face: f})
		}
		v.Sizes[k].Makes++
		v.Sizes[k].Fits += len(x.Steps)
	}
	sort.SliceStable(v.Sizes, func(i, j int) bool { return terms.NaturalLess(v.Sizes[i].Text, v.Sizes[j].Text) })
}

// addMoving names the places through which every blank goes.
func (v *Blanking) addMoving(faces []Face, tracks []blanking.Track, of []*planner.Section) {
	for _, x := range tracks {
		one := BlankMoves{Face: faces[x.Size]}
		for _, step := range x.Steps {
			one.Steps = append(one.Steps, BlankStep{of[step.Test].ID, of[step.Test].Blanks[step.Blank].At, string(step.How)})
		}
		v.Moving = append(v.Moving, one)
	}
	sort.SliceStable(v.Moving, func(i, j int) bool { return terms.NaturalLess(v.Moving[i].Text, v.Moving[j].Text) })
	for k := range v.Moving {
		v.Moving[k].No = 1
		if k > 0 && v.Moving[k].Face == v.Moving[k-1].Face {
			v.Moving[k].No = v.Moving[k-1].No + 1
		}
	}
}
