package audit

import (
	"cmp"
	"slices"

	"blankoff/takeoff"
)

// Scope is the part of a list that a cause is supposed for; the zero value is the
// whole list.
type Scope struct {
	By   string // system, shape or kind
	Name string
}

// String is the scope in words: "kind tee", or "" for the whole list.
func (s Scope) String() string {
	if s.By == "" {
		return ""
	}
	return s.By + " " + s.Name
}

func (s Scope) covers(it *takeoff.Item) bool {
	switch s.By {
	case "system":
		return it.System == s.Name
	case "shape":
		return it.Piece.Shape.String() == s.Name
	case "kind":
		return it.Piece.Kind.String() == s.Name
	}
	return true
}

// made is a mistake supposed for a part of the list.
type made struct {
	*Mistake
	scope Scope
}

// share is a row, or the part of one that lies in a section.
type share struct {
	item int
	of   float64
}

// target is a stated figure that has to be explained: a row's, or a sum's.
type target struct {
	shares   []share
	stated   float64
	rounding float64
	area     float64
	bits     float64 // of leaving it unexplained
	others   []other // other sums that were perhaps meant
	agrees   bool
}

// guess is a hypothesis: mistakes made together, and how it does.
type guess struct {
	made   []made
	total  float64 // what has to be supposed + what stays unexplained, bits
	hits   int     // figures that it gives
	wins   int     // of them, those that differ from what is worked out
	losses int     // figures that are right, and would not be under it
	moves  int     // figures that it makes other than what is worked out
}

// holds reports whether a guess gives half of the figures that it moves. One that
// doesn't is met by chance, however many figures there are.
func (g *guess) holds() bool { return 2*g.wins >= g.moves }

func (g *guess) keys() string {
	s := ""
	for _, k := range keysOf(g.mistakes()) {
		s += k + " "
	}
	return s
}

func (g *guess) mistakes() []*Mistake {
	var list []*Mistake
	for _, m := range g.made {
		list = append(list, m.Mistake)
	}
	return list
}

// scopesOf lists the systems, shapes and kinds that are a part of the list, with
// two figures or more.
func scopesOf(t *takeoff.Takeoff, targets []target) []Scope {
	var list []Scope
	for _, by := range []string{"system", "shape", "kind"} {
		count := map[string]int{}
		for _, x := range targets {
			if len(x.shares) != 1 {
				return nil // sums aren't parted
			}
			it := &t.Items[x.shares[0].item]
			count[map[string]string{"system": it.System, "shape": it.Piece.Shape.String(), "kind": it.Piece.Kind.String()}[by]]++
		}
		for name, n := range count {
			if n >= 2 && len(count) > 1 && name != "" {
				list = append(list, Scope{by, name})
			}
		}
	}
	slices.SortFunc(list, func(a, b Scope) int {
		return cmp.Or(cmp.Compare(a.By, b.By), cmp.Compare(a.Name, b.Name))
	})
	return list
}
