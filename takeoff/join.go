package takeoff

import (
	"bytes"
	"fmt"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff/terms"
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

// joined is the rows of a book while they are hung on each other.
type joined struct {
	*book
	taken   map[hang]int32 // what ends but far ones carry
	forward bool           // some row hangs on one further down
	assumed int            // rows joined by their run
}

// join resolves who hangs on whom, from the references of the rows, and refuses
// those whose references can't be.
func join(b *book) {
	n := joined{book: b, taken: map[hang]int32{}}
	n.hangAll()
	n.breakLoops()
	n.closeRings()
	n.checkQuantities()
	n.checkPositions()
	n.noteRuns()
}

// hangAll hangs every row on the one that it names, or that it follows in its run.
func (n *joined) hangAll() {
	lastInRun := map[string]int{}
	found := false
	var lost []wrong
	for i := range n.lines {
		l := &n.lines[i]
		host, role, named, byRun := -1, fittings.PlantEnd, false, false
		run := n.seldom(l).run
		if run != "" {
			run = n.names[l.system] + "\x00" + run
		}
		switch {
		case l.from == 0 && run != "":
			if last, ok := lastInRun[run]; ok {
				host, byRun = last, true
				n.assumed++
			}
		case l.from > 0 && n.namesLast(i):
			host = i - 1
		case l.from > 0:
			var f *wrong
			if host, role, named, f = n.resolve(i, "from", string(n.fromOf(l))); f != nil {
				lost = append(lost, *f)
			}
		}
		found = found || l.from > 0 && host >= 0
		if run != "" {
			lastInRun[run] = i
		}
		if host >= 0 {
			n.hangOn(i, host, role, named, byRun)
		}
	}
	n.lostHosts(lost, found)
}

// noteRuns notes how many rows were joined by their run.
func (n *joined) noteRuns() {
	if n.assumed > 0 {
		note := "1 row without `from` was joined to the row before it in the same run"
		if n.assumed > 1 {
			note = fmt.Sprintf("%d rows without `from` were joined to the row before them in the same run", n.assumed)
		}
		n.note(note)
	}
}

// lostHosts refuses rows that name a row which isn't there. Where not one of several
// finds its row, the column is about something else: rooms, plant, nodes.
func (n *joined) lostHosts(lost []wrong, found bool) {
	if len(lost) > 2 && !found {
		n.note(fmt.Sprintf("from: not one of %d rows names the tag of another, so the column isn't used; the first names '%s'", len(lost), lost[0].value))
		return
	}
	for _, f := range lost {
		n.refuse(f)
	}
}

// namesLast reports whether row i hangs on the row before it, as most do, by a
// tag that stands once.
func (n *joined) namesLast(i int) bool {
	if i == 0 {
		return false
	}
	tag := n.tagOf(&n.lines[i-1])
	return bytes.Equal(n.fromOf(&n.lines[i]), tag) && string(tag) != "^" && !n.isDouble(tag)
}

// resolve finds the row that a reference names, and the end of it, if one is
// named. An exact tag comes before a side end.
func (n *joined) resolve(i int, heading, ref string) (host int, role fittings.EndRole, named bool, f *wrong) {
	l := &n.lines[i]
	fault := func(expected, message string) (int, fittings.EndRole, bool, *wrong) {
		return -1, 0, false, &wrong{i, heading, ref, expected, message}
	}
	tag := ref
	host, ok := n.find(i, tag)
	if !ok {
		if k := strings.LastIndexByte(ref, '/'); k > 0 {
			if r, isEnd := sideEnds[terms.Fold(ref[k+1:])]; isEnd {
				tag = strings.TrimSpace(ref[:k])
				host, ok = n.find(i, tag)
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
		return fault("another row", fmt.Sprintf("%s names itself; name the next piece towards the plant", n.nameText(l)))
	case n.isDouble([]byte(tag)):
		return fault("a tag that stands once", fmt.Sprintf("tag '%s' stands on several rows, so it isn't clear which is meant", tag))
	}
	return host, role, named, nil
}

// find looks a tag up; ^ is the row above on the same sheet.
func (n *joined) find(i int, tag string) (int, bool) {
	if tag == "^" {
		return i - 1, i > 0 && n.sheets[n.lines[i-1].sheet].name == n.sheets[n.lines[i].sheet].name
	}
	return n.book.find(tag)
}

// carries is the row that an end carries already.
func (n *joined) carries(h hang) (int, bool) {
	if h.role == fittings.FarEnd {
		far := n.lines[h.item].far
		return int(far), far >= 0
	}
	i, ok := n.taken[h]
	return int(i), ok
}

// load puts row i on an end.
func (n *joined) load(h hang, i int) {
	if h.role == fittings.FarEnd {
		n.lines[h.item].far = int32(i)
		return
	}
	n.taken[h] = int32(i)
}

// hangOn hangs row i on an end of host, or says why it can'n.
func (n *joined) hangOn(i, host int, role fittings.EndRole, named, byRun bool) {
	l, h := &n.lines[i], &n.lines[host]
	value := func() string {
		if byRun {
			return "run " + n.seldom(l).run
		}
		return string(n.fromOf(l))
	}
	bad := func(expected, message string) {
		n.refuse(wrong{i, "from", value(), expected, message})
	}
	switch {
	case h.sideBySide():
		bad("a row with quantity 1", fmt.Sprintf("%s is %d pieces side by side, so nothing can hang on it; write a row for each", n.nameText(h), h.quantity))
		return
	case l.kind == fittings.Spigot:
		if named || !h.carriesSpigots() {
			bad("the straight, tee or plenum in whose wall it sits", fmt.Sprintf("a spigot sits in the side wall of a straight, a tee or a plenum, not on %s", value()))
			return
		}
		role = fittings.PlantEnd
	case h.kind == fittings.Plenum && !named:
		role = fittings.PlantEnd
	default:
		if !named {
			role = fittings.FarEnd
		}
		if h.roles&(1<<role) == 0 && !h.unknownEnds() {
			bad("an end that "+n.nameText(h)+" has: "+n.endNames(h), fmt.Sprintf("%s has no %s to join to", n.nameText(h), role))
			return
		}
		if first, ok := n.carries(hang{host, role}); ok {
			bad("an end with nothing on it", fmt.Sprintf("the %s of %s already carries %s; name a side end, or add the tee or spigot", role, n.nameText(h), n.nameText(&n.lines[first])))
			return
		}
		n.load(hang{host, role}, i)
	}
	l.parent, l.parentEnd = int32(host), role
	n.forward = n.forward || host > i
	h.children++
}

// carriesSpigots reports whether a spigot may sit in the piece's wall. Of a row
// whose kind wasn't understood nothing is known, so nothing is held against it.
func (h *line) carriesSpigots() bool {
	switch h.kind {
	case fittings.Straight, fittings.Tee, fittings.Plenum:
		return true
	case fittings.NoKind:
		return h.refused
	}
	return false
}

// unknownEnds reports whether the ends of a piece aren't known: its row was
// refused, its area was given without sizes, or it is a spigot that is measured
// once its wall is known.
func (h *line) unknownEnds() bool { return h.roles == 0 && h.kind != fittings.Cap }

func (n *joined) endNames(h *line) string {
	var names []string
	for _, e := range n.ends(h) {
		if e.Role != fittings.PlantEnd {
			names = append(names, n.nameText(h)+"/"+strings.TrimSuffix(e.Role.String(), " end"))
		}
	}
	if len(names) == 0 {
		return "none but its plant end"
	}
	return strings.Join(names, ", ")
}

// breakLoops refuses rows that lead back to themselves.
func (n *joined) breakLoops() {
	if !n.forward {
		return
	}
	const (
		unseen = iota
		onPath
		done
	)
	state := make([]uint8, len(n.lines))
	var path []int
	for i := range n.lines {
		path = path[:0]
		j := i
		for j >= 0 && state[j] == unseen {
			state[j] = onPath
			path = append(path, j)
			j = int(n.lines[j].parent)
		}
		if j >= 0 && state[j] == onPath {
			n.refuseLoop(path, j)
		}
		for _, k := range path {
			state[k] = done
		}
	}
}

// refuseLoop refuses the rows of path from the one where it closes.
func (n *joined) refuseLoop(path []int, first int) {
	at := 0
	for path[at] != first {
		at++
	}
	var names []string
	for _, k := range path[at:] {
		names = append(names, n.nameText(&n.lines[k]))
	}
	const most = 6
	if len(names) > most {
		names = append(names[:most:most], fmt.Sprintf("(%d more)", len(names)-most))
	}
	chain := strings.Join(append(names, names[0]), " > ")
	for _, k := range path[at:] {
		l := &n.lines[k]
		n.refuse(wrong{k, "from", string(n.fromOf(l)), "the next piece towards the plant",
			"these rows lead in a circle and never reach the plant: " + chain + "; for a ring main use joins"})
	}
	for _, k := range path[at:] {
		l := &n.lines[k]
		n.lines[l.parent].children--
		l.parent = -1
	}
}
