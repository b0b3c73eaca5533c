package duty

import (
	"fmt"

	"blankoff/planner/network"
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

// Text names the cut as a person would: the two pieces that meet there.
func (c OwnCut) Text() string {
	return "between " + pieceText(c.Tag, c.Piece) + " and " + pieceText(c.Next, c.NextPiece)
}

// YourCut is why a joint is cut that a person asked for, in Zones.Must.
const YourCut = "your cut"

// applyOwn marks the joints that a person wants cut, and refuses those that
// can't be.
func (z *Zones) applyOwn() {
	for _, c := range z.Rows.set.OwnCuts {
		k, expected, trouble := z.findCut(c)
		if trouble == "" && z.Net.Joints[k].Barred != "" {
			expected, trouble = "a joint that can be blanked", fmt.Sprintf("the joint %s can't be blanked (%s)", z.Net.JointText(k), z.Net.Joints[k].Barred)
		}
		if trouble != "" {
			z.Rows.Faults = append(z.Rows.Faults, c.At.Fault("tag", c.TextPlaced, expected, trouble))
			continue
		}
		if z.Must[k] == "" {
			z.Must[k] = YourCut
		}
	}
}

// barOthers bars every joint that isn't among a person's own cuts and needn't be
// cut, so that the division is exactly theirs.
func (z *Zones) barOthers() {
	if !z.Rows.set.OnlyOwn {
		return
	}
	for k := range z.Net.Joints {
		if j := &z.Net.Joints[k]; z.Must[k] == "" && j.Barred == "" && !j.Assumed {
			j.Barred = "not among your cuts"
		}
	}
}

// findCut finds the joint where two pieces meet.
func (z *Zones) findCut(c OwnCut) (joint int, expected, trouble string) {
	ends := [2][]int{z.Net.Find(c.Tag, c.Piece), z.Net.Find(c.Next, c.NextPiece)}
	for i, tag := range [2]string{c.Tag, c.Next} {
		if len(ends[i]) == 0 {
			return -1, "the tag of a row, and a piece that it has", fmt.Sprintf("there is no %s", pieceText(tag, [2]int{c.Piece, c.NextPiece}[i]))
		}
	}
	var found []int
	for k := range z.Net.Joints {
		j := &z.Net.Joints[k]
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
