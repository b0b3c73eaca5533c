package takeoff

import (
	"fmt"
	"sort"
	"strings"

	"blankoff/fittings"
)

// shortStraight is a length under which a straight is hardly made, m; in a
// schedule where most straights are shorter, metres were taken for mm. Common
// practice, no source.
const shortStraight = 0.05

// checkLengths refuses straights whose lengths look like metres read as mm. One
// sliver among many is left alone: models of real buildings hold them.
func (t *Takeoff) checkLengths() {
	straights, short := 0, 0
	odd := func(it *Item) bool { return it.Length() > 0 && it.Length() < shortStraight }
	for i := range t.Items {
		if it := &t.Items[i]; it.Piece.Kind == fittings.Straight && it.Length() > 0 {
			straights++
			if odd(it) {
				short++
			}
		}
	}
	if 2*short <= straights {
		t.noteSlivers()
		return
	}
	for i := range t.Items {
		if it := &t.Items[i]; it.Piece.Kind == fittings.Straight && odd(it) {
			t.fault(i, it.At.Fault("length_mm", fmt.Sprintf("%g", it.Length()*1000), "a length in mm",
				fmt.Sprintf("a straight of %g mm is hardly made, and most here are as short: if lengths are in m, say so in the heading, as length_m", it.Length()*1000)))
		}
	}
}

// sliver is a length under which a straight among longer ones is looked at twice,
// m: 4.5 may be metres.
const sliver = 0.02

// noteSlivers notes straights so short that their length may be in metres.
func (t *Takeoff) noteSlivers() {
	var names []string
	for i := range t.Items {
		it := &t.Items[i]
		if it.Piece.Kind == fittings.Straight && !it.Refused && it.Length() > 0 && it.Length() < sliver {
			it.Notes = append(it.Notes, fmt.Sprintf("only %g mm long; if that is %g m, write it in mm", it.Length()*1000, it.Length()*1000))
			names = append(names, it.Name())
		}
	}
	if n := len(names); n > 0 {
		more := ""
		if n > 3 {
			names, more = names[:3], fmt.Sprintf(" and %d more", n-3)
		}
		t.Notes = append(t.Notes, fmt.Sprintf("straights of less than %g mm: %s%s; where a length was typed in m, write it in mm", sliver*1000, strings.Join(names, ", "), more))
	}
}

// noteOverlaps notes spigots on one wall whose openings would overlap if they
// sat on the same side.
func (t *Takeoff) noteOverlaps() {
	type reach struct {
		wall, item int
		from, to   float64
	}
	var all []reach
	for i := range t.Items {
		it := &t.Items[i]
		if it.Piece.Kind == fittings.Spigot && it.Parent >= 0 && !it.Refused && it.HasAt {
			half := t.openingLength(it) / 2
			all = append(all, reach{it.Parent, i, it.AtM - half, it.AtM + half})
		}
	}
	sort.SliceStable(all, func(a, b int) bool {
		if all[a].wall != all[b].wall {
			return all[a].wall < all[b].wall
		}
		return all[a].from < all[b].from
	})
	for k := 1; k < len(all); k++ {
		a, b := all[k-1], all[k]
		if a.wall != b.wall || b.from >= a.to-1e-9 {
			continue
		}
		it := &t.Items[b.item]
		it.Notes = append(it.Notes, fmt.Sprintf("overlaps %s along %s; right only if they sit on different sides of it", t.Items[a.item].Name(), t.Items[a.wall].Name()))
	}
}
