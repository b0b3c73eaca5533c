package takeoff

import (
	"fmt"
	"strings"

	"blankoff/fittings"
)

// sideEnds are the names after a slash in from.
var sideEnds = map[string]fittings.EndRole{
	"branch": fittings.BranchEnd, "branch1": fittings.BranchEnd, "branch2": fittings.BranchEnd2,
	"far": fittings.FarEnd,
}

// hang is a claim by a row to hang on an end of another.
type hang struct {
	item int
	role fittings.EndRole
}

// join resolves who hangs on whom.
func (t *Takeoff) join() {
	taken := map[hang]int{}
	lastInRun := map[string]int{}
	assumed := 0
	for i := range t.Items {
		it := &t.Items[i]
		from, value := it.From, it.From
		host, role, named := -1, fittings.PlantEnd, false
		runKey := ""
		if it.Run != "" {
			runKey = it.System + "\x00" + it.Run
		}
		switch {
		case from == "" && runKey != "":
			if last, ok := lastInRun[runKey]; ok {
				host, value = last, "run "+it.Run
				assumed++
			}
		case from != "":
			var f *Fault
			if host, role, named, f = t.resolve(i, "from", from); f != nil {
				t.fault(i, *f)
			}
		}
		if runKey != "" {
			lastInRun[runKey] = i
		}
		if host >= 0 {
			t.hangOn(i, host, role, named, value, taken)
		}
	}
	t.breakLoops()
	t.closeRings(taken)
	t.checkQuantities()
	t.checkPositions()
	if assumed > 0 {
		t.Notes = append(t.Notes, fmt.Sprintf("%d rows without `from` were joined to the row before them in the same run", assumed))
	}
}

// resolve finds the row that a reference names, and the end of it, if one is
// named. An exact tag comes before a side end.
func (t *Takeoff) resolve(i int, heading, ref string) (host int, role fittings.EndRole, named bool, f *Fault) {
	it := &t.Items[i]
	fault := func(expected, message string) (int, fittings.EndRole, bool, *Fault) {
		f := it.At.Fault(heading, ref, expected, message)
		return -1, 0, false, &f
	}
	tag := ref
	host, ok := t.find(i, tag)
	if !ok {
		if k := strings.LastIndexByte(ref, '/'); k > 0 {
			if r, isEnd := sideEnds[fold(ref[k+1:])]; isEnd {
				tag = strings.TrimSpace(ref[:k])
				host, ok = t.find(i, tag)
				role, named = r, true
			}
		}
	}
	switch {
	case !ok && ref == "^":
		return fault("a row above", "there is no row above this one to join to")
	case !ok:
		return fault("the tag of a row, ^, or a tag and /branch", fmt.Sprintf("no row has the tag '%s'; correct it or add the row", tag))
	case host == i:
		return fault("another row", fmt.Sprintf("%s names itself; name the next piece towards the plant", it.Name()))
	case t.double[tag]:
		return fault("a tag that stands once", fmt.Sprintf("tag '%s' stands on several rows, so it isn't clear which is meant", tag))
	}
	return host, role, named, nil
}

// find looks a tag up; ^ is the row above on the same sheet.
func (t *Takeoff) find(i int, tag string) (int, bool) {
	if tag == "^" {
		return i - 1, i > 0 && t.Items[i-1].At.Sheet == t.Items[i].At.Sheet
	}
	j, ok := t.byTag[tag]
	return j, ok
}

// hangOn hangs row i on an end of host, or says why it can't.
func (t *Takeoff) hangOn(i, host int, role fittings.EndRole, named bool, value string, taken map[hang]int) {
	it, h := &t.Items[i], &t.Items[host]
	bad := func(expected, message string) {
		t.fault(i, it.At.Fault("from", value, expected, message))
	}
	switch {
	case h.SideBySide():
		bad("a row with quantity 1", fmt.Sprintf("%s is %d pieces side by side, so nothing can hang on it; write a row for each", h.Name(), h.Quantity))
		return
	case it.Piece.Kind == fittings.Spigot:
		if named || !carriesSpigots(h) {
			bad("the straight, tee or plenum in whose wall it sits", fmt.Sprintf("a spigot sits in the side wall of a straight, a tee or a plenum, not on %s", value))
			return
		}
		role = fittings.PlantEnd
	case h.Piece.Kind == fittings.Plenum && !named:
		role = fittings.PlantEnd
	default:
		if !named {
			role = fittings.FarEnd
		}
		if _, ok := h.End(role); !ok && !unknownEnds(h) {
			bad("an end that "+h.Name()+" has: "+endNames(h), fmt.Sprintf("%s has no %s to join to", h.Name(), role))
			return
		}
		if first, ok := taken[hang{host, role}]; ok {
			bad("an end with nothing on it", fmt.Sprintf("the %s of %s already carries %s; name a side end, or add the tee or spigot", role, h.Name(), t.Items[first].Name()))
			return
		}
		taken[hang{host, role}] = i
	}
	it.Parent, it.ParentEnd = host, role
	h.childCount++
}

// carriesSpigots reports whether a spigot may sit in the piece's wall. Of a row
// whose kind wasn't understood nothing is known, so nothing is held against it.
func carriesSpigots(h *Item) bool {
	switch h.Piece.Kind {
	case fittings.Straight, fittings.Tee, fittings.Plenum:
		return true
	case fittings.NoKind:
		return h.Refused
	}
	return false
}

// unknownEnds reports whether the ends of a piece aren't known: its row was
// refused, its area was given without sizes, or it is a spigot that is measured
// once its wall is known.
func unknownEnds(h *Item) bool {
	return len(h.Ends) == 0 && h.Piece.Kind != fittings.Cap
}

func endNames(h *Item) string {
	var names []string
	for _, e := range h.Ends {
		if e.Role != fittings.PlantEnd {
			names = append(names, h.Name()+"/"+strings.TrimSuffix(e.Role.String(), " end"))
		}
	}
	if len(names) == 0 {
		return "none but its plant end"
	}
	return strings.Join(names, ", ")
}

// breakLoops refuses rows that lead back to themselves.
func (t *Takeoff) breakLoops() {
	const (
		unseen = iota
		onPath
		done
	)
	state := make([]uint8, len(t.Items))
	for i := range t.Items {
		var path []int
		j := i
		for j >= 0 && state[j] == unseen {
			state[j] = onPath
			path = append(path, j)
			j = t.Items[j].Parent
		}
		if j >= 0 && state[j] == onPath {
			t.refuseLoop(path, j)
		}
		for _, k := range path {
			state[k] = done
		}
	}
}

// refuseLoop refuses the rows of path from the one where it closes.
func (t *Takeoff) refuseLoop(path []int, first int) {
	at := 0
	for path[at] != first {
		at++
	}
	var names []string
	for _, k := range path[at:] {
		names = append(names, t.Items[k].Name())
	}
	const most = 6
	if len(names) > most {
		names = append(names[:most:most], fmt.Sprintf("(%d more)", len(names)-most))
	}
	chain := strings.Join(append(names, names[0]), " > ")
	for _, k := range path[at:] {
		it := &t.Items[k]
		t.fault(k, it.At.Fault("from", it.From, "the next piece towards the plant",
			"these rows lead in a circle and never reach the plant: "+chain+"; for a ring main use joins"))
	}
	for _, k := range path[at:] {
		it := &t.Items[k]
		t.Items[it.Parent].childCount--
		it.Parent = -1
	}
}
