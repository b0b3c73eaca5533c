package planner

import (
	"slices"

	"blankoff/planner/duty"
	"blankoff/planner/partition"
	"blankoff/takeoff"
)

// Judged is what a person's own cuts come to.
type Judged struct {
	Given     int // cuts that could be used
	AsGiven   partition.Score
	Completed partition.Score
	Best      partition.Score
	// Added are the cuts that were added to complete the person's own; Dropped
	// and Instead are what the best plan does without and has instead.
	Added, Dropped, Instead []string
	// Change is the smallest change of the person's cuts after which no more
	// sections are out of range than there have to be; nil where none is needed.
	Change *Change
}

// Change is which of a person's cuts to do without, and what it comes to.
type Change struct {
	Without  []string
	Score    partition.Score
	Smallest bool // no change does without fewer
}

// changePlans bounds the plans that are tried for the smallest change, and
// changePieces the pieces in all of them.
const (
	changePlans  = 300
	changePieces = 2_000_000
)

// JudgeCuts plans with a person's own cuts, completed in the best way where they
// leave something to be divided, and sets them beside the best plan.
func JudgeCuts(t *takeoff.Takeoff, set Settings) (*Plan, error) {
	p, err := Make(t, set)
	if err != nil {
		return p, err
	}
	only, free := set, set
	only.OnlyOwn, free.OwnCuts = true, nil
	as, err := Make(t, only)
	if err != nil {
		return p, err
	}
	best, err := Make(t, free)
	if err != nil {
		return p, err
	}
	j := &Judged{AsGiven: as.Proof.Score, Completed: p.Proof.Score, Best: best.Proof.Score}
	j.beside(p, best)
	usable := slices.DeleteFunc(slices.Clone(set.OwnCuts), func(c OwnCut) bool {
		return slices.ContainsFunc(p.Faults, func(f takeoff.Fault) bool { return f.File == c.At.File && f.Row == c.At.Row })
	})
	j.Given = len(usable)
	if !sound(p, best) {
		c := changer{t: t, set: set, best: best, cuts: usable}
		j.Change, err = c.smallest()
	}
	p.Judged = j
	return p, err
}

// beside notes in which cuts the completed plan and the best one differ.
func (j *Judged) beside(p, best *Plan) {
	inPlan, inBest := map[int]bool{}, map[int]bool{}
	for _, c := range best.Cuts {
		inBest[c.Joint] = true
	}
	for _, c := range p.Cuts {
		inPlan[c.Joint] = true
		switch text := p.Network.JointText(c.Joint); {
		case c.Why == "":
			j.Added = append(j.Added, text)
		case c.Why == duty.YourCut && !inBest[c.Joint]:
			j.Dropped = append(j.Dropped, text)
		}
	}
	for _, c := range best.Cuts {
		if !inPlan[c.Joint] {
			j.Instead = append(j.Instead, best.Network.JointText(c.Joint))
		}
	}
}

// sound reports whether a plan has no more sections out of range than the best.
func sound(p, best *Plan) bool {
	return p.Proof.Score.Over == best.Proof.Score.Over && p.Proof.Score.Under == best.Proof.Score.Under
}

// changer looks for the smallest change of a person's cuts.
type changer struct {
	t    *takeoff.Takeoff
	set  Settings
	best *Plan
	cuts []OwnCut

	without []int // what the best change so far does without
	plan    *Plan // and its plan
	tries   int
}

// smallest finds the fewest cuts to do without. Taking the cuts up one by one,
// wherever that is sound, gives a change that can't be made smaller by taking
// one of its cuts back; then every smaller one is tried while the work allows.
func (c *changer) smallest() (*Change, error) {
	c.plan = c.best
	for i := range c.cuts {
		c.without = append(c.without, i)
	}
	for i := range c.cuts {
		if c.spent() {
			break
		}
		if _, err := c.try(slices.DeleteFunc(slices.Clone(c.without), func(k int) bool { return k == i })); err != nil {
			return nil, err
		}
	}
	proved := true
	for n := 1; n < len(c.without); n++ {
		found, all, err := c.each(nil, n)
		if err != nil {
			return nil, err
		}
		if found {
			break
		}
		if proved = all; !all {
			break
		}
	}
	out := &Change{Score: c.plan.Proof.Score, Smallest: proved}
	for _, i := range c.without {
		out.Without = append(out.Without, c.cuts[i].Text())
	}
	return out, nil
}

// each tries every change of n more cuts past those of a list.
func (c *changer) each(list []int, n int) (found, all bool, err error) {
	if n == 0 {
		found, err = c.try(list)
		return found, true, err
	}
	first := 0
	if len(list) > 0 {
		first = list[len(list)-1] + 1
	}
	for i := first; i+n <= len(c.cuts); i++ {
		if c.spent() {
			return false, false, nil
		}
		if found, all, err = c.each(append(list[:len(list):len(list)], i), n-1); err != nil || found || !all {
			return found, all, err
		}
	}
	return false, true, nil
}

func (c *changer) spent() bool {
	return c.tries >= changePlans || c.tries*len(c.best.Network.Nodes) >= changePieces
}

// try plans without some of the cuts, and keeps to that if it is sound.
func (c *changer) try(without []int) (bool, error) {
	c.tries++
	set := c.set
	set.OwnCuts = nil
	for i, cut := range c.cuts {
		if !slices.Contains(without, i) {
			set.OwnCuts = append(set.OwnCuts, cut)
		}
	}
	p, err := Make(c.t, set)
	if err != nil || !sound(p, c.best) {
		return false, err
	}
	c.without, c.plan = without, p
	return true, nil
}
