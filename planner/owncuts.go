package planner

import (
	"fmt"

	"blankoff/planner/network"
	"blankoff/planner/partition"
	"blankoff/takeoff"
)

// OwnCut is a joint that a person wants to cut, by the two pieces that meet
// there. A piece of 0 isn't stated.
type OwnCut struct {
	At         takeoff.Place
	Tag, Next  string // the nearer to the plant may come first or second
	Piece      int
	NextPiece  int
	TextPlaced string // as typed, for faults
}

// Judged is what a person's own cuts come to.
type Judged struct {
	Given     int // cuts that could be used
	AsGiven   partition.Score
	Completed partition.Score
	Best      partition.Score
	// Added are the cuts that were added to complete the person's own; Dropped
	// and Instead are what the best plan does without and has instead.
	Added, Dropped, Instead []string
}

// JudgeCuts plans with a person's own cuts, completed in the best way where they
// leave something to be divided, and sets them beside the best plan.
func JudgeCuts(t *takeoff.Takeoff, set Settings) (*Plan, error) {
	p, err := Make(t, set)
	if err != nil {
		return p, err
	}
	only, free := set, set
	only.onlyOwn, free.OwnCuts = true, nil
	as, err := Make(t, only)
	if err != nil {
		return p, err
	}
	best, err := Make(t, free)
	if err != nil {
		return p, err
	}
	j := &Judged{AsGiven: as.Proof.Score, Completed: p.Proof.Score, Best: best.Proof.Score}
	own, inPlan, inBest := map[int]bool{}, map[int]bool{}, map[int]bool{}
	for _, c := range best.Cuts {
		inBest[c.Joint] = true
	}
	for _, c := range p.Cuts {
		inPlan[c.Joint] = true
		if own[c.Joint] = c.Why == ownCut; own[c.Joint] {
			j.Given++
		}
		switch text := p.Network.JointText(c.Joint); {
		case c.Why == "":
			j.Added = append(j.Added, text)
		case own[c.Joint] && !inBest[c.Joint]:
			j.Dropped = append(j.Dropped, text)
		}
	}
	for _, c := range best.Cuts {
		if !inPlan[c.Joint] {
			j.Instead = append(j.Instead, best.Network.JointText(c.Joint))
		}
	}
	p.Judged = j
	return p, nil
}

// ownCut is why a joint is cut that a person asked for.
const ownCut = "your cut"

// applyOwn marks the joints that a person wants cut, and refuses those that
// can't be.
func (z *zoning) applyOwn() {
	for _, c := range z.d.set.OwnCuts {
		k, expected, trouble := z.findCut(c)
		if trouble == "" && z.net.Joints[k].Barred != "" {
			expected, trouble = "a joint that can be blanked", fmt.Sprintf("the joint %s can't be blanked (%s)", z.net.JointText(k), z.net.Joints[k].Barred)
		}
		if trouble != "" {
			z.d.faults = append(z.d.faults, c.At.Fault("tag", c.TextPlaced, expected, trouble))
			continue
		}
		if z.must[k] == "" {
			z.must[k] = ownCut
		}
	}
}

// barOthers bars every joint that isn't among a person's own cuts and needn't be
// cut, so that the division is exactly theirs.
func (z *zoning) barOthers() {
	if !z.d.set.onlyOwn {
		return
	}
	for k := range z.net.Joints {
		if j := &z.net.Joints[k]; z.must[k] == "" && j.Barred == "" && !j.Assumed {
			j.Barred = "not among your cuts"
		}
	}
}

// findCut finds the joint where two pieces meet.
func (z *zoning) findCut(c OwnCut) (joint int, expected, trouble string) {
	ends := [2][]int{z.net.Find(c.Tag, c.Piece), z.net.Find(c.Next, c.NextPiece)}
	for i, tag := range [2]string{c.Tag, c.Next} {
		if len(ends[i]) == 0 {
			return -1, "the tag of a row, and a piece that it has", fmt.Sprintf("there is no %s", pieceText(tag, [2]int{c.Piece, c.NextPiece}[i]))
		}
	}
	var found []int
	for k := range z.net.Joints {
		j := &z.net.Joints[k]
		if !j.Assumed && (meets(j, ends[0], ends[1]) || meets(j, ends[1], ends[0])) {
			found = append(found, k)
		}
	}
	switch {
	case len(found) == 0:
		return -1, "two pieces that meet", fmt.Sprintf("%s and %s don't meet", pieceText(c.Tag, c.Piece), pieceText(c.Next, c.NextPiece))
	case len(found) > 1 && c.Tag == c.Next:
		return -1, "the piece on each side of the joint", fmt.Sprintf("%s has several joints inside; give piece and next_piece", c.Tag)
	}
	return found[0], "", ""
}

func meets(j *network.Joint, a, b []int) bool {
	in := func(list []int, v int) bool {
		for _, x := range list {
			if x == v {
				return true
			}
		}
		return false
	}
	return j.A != j.B && in(a, j.A) && in(b, j.B)
}

func pieceText(tag string, piece int) string {
	if piece == 0 {
		return "'" + tag + "'"
	}
	return fmt.Sprintf("'%s' piece %d", tag, piece)
}
