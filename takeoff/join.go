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

// join resolves who hangs on whom.
func (t *Takeoff) join() {
	lastInRun := map[string]int{}
	assumed, found := 0, false
	var lost []Fault
	var of []int
	for i := range t.lines {
		l := &t.lines[i]
		host, role, named, byRun := -1, fittings.PlantEnd, false, false
		run := t.seldom(l).run
		if run != "" {
			run = t.names[l.system] + "\x00" + run
		}
		switch {
		case l.from == 0 && run != "":
			if last, ok := lastInRun[run]; ok {
				host, byRun = last, true
				assumed++
			}
		case l.from > 0 && t.namesLast(i):
			host = i - 1
		case l.from > 0:
			var f *Fault
			if host, role, named, f = t.resolve(i, "from", string(t.fromOf(l))); f != nil {
				lost, of = append(lost, *f), append(of, i)
			}
		}
		found = found || l.from > 0 && host >= 0
		if run != "" {
			lastInRun[run] = i
		}
		if host >= 0 {
			t.hangOn(i, host, role, named, byRun)
		}
	}
	t.lostHosts(lost, of, found)
	t.breakLoops()
	t.closeRings()
	t.checkQuantities()
	t.checkPositions()
	if assumed > 0 {
		note := "1 row without `from` was joined to the row before it in the same run"
		if assumed > 1 {
			note = fmt.Sprintf("%d rows without `from` were joined to the row before them in the same run", assumed)
		}
		t.Notes = append(t.Notes, note)
	}
}

// lostHosts refuses rows that name a row which isn't there. Where not one of several
// finds its row, the column is about something else: rooms, plant, nodes.
func (t *Takeoff) lostHosts(lost []Fault, of []int, found bool) {
	if len(lost) > 2 && !found {
		t.Notes = append(t.Notes, fmt.Sprintf("from: not one of %d rows names the tag of another, so the column isn't used; the first names '%s'", len(lost), lost[0].Value))
		return
	}
	for k, f := range lost {
		t.fault(of[k], f)
	}
}

// namesLast reports whether row i hangs on the row before it, as most do, by a
// tag that stands once.
func (t *Takeoff) namesLast(i int) bool {
	if i == 0 {
		return false
	}
	tag := t.tagOf(&t.lines[i-1])
	return bytes.Equal(t.fromOf(&t.lines[i]), tag) && string(tag) != "^" && !t.double[string(tag)]
}

// resolve finds the row that a reference names, and the end of it, if one is
// named. An exact tag comes before a side end.
func (t *Takeoff) resolve(i int, heading, ref string) (host int, role fittings.EndRole, named bool, f *Fault) {
	l := &t.lines[i]
	fault := func(expected, message string) (int, fittings.EndRole, bool, *Fault) {
		f := t.at(l).Fault(heading, ref, expected, message)
		return -1, 0, false, &f
	}
	tag := ref
	host, ok := t.find(i, tag)
	if !ok {
		if k := strings.LastIndexByte(ref, '/'); k > 0 {
			if r, isEnd := sideEnds[terms.Fold(ref[k+1:])]; isEnd {
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
		return fault("another row", fmt.Sprintf("%s names itself; name the next piece towards the plant", t.nameText(l)))
	case t.double[tag]:
		return fault("a tag that stands once", fmt.Sprintf("tag '%s' stands on several rows, so it isn't clear which is meant", tag))
	}
	return host, role, named, nil
}

// find looks a tag up; ^ is the row above on the same sheet.
func (t *Takeoff) find(i int, tag string) (int, bool) {
	if tag == "^" {
		return i - 1, i > 0 && t.places[t.lines[i-1].place].Sheet == t.places[t.lines[i].place].Sheet
	}
	return t.tags.find(&t.ledger, []byte(tag))
}

// carries is the row that an end carries already.
func (t *Takeoff) carries(h hang) (int, bool) {
	if h.role == fittings.FarEnd {
		far := t.lines[h.item].far
		return int(far), far >= 0
	}
	i, ok := t.taken[h]
	return int(i), ok
}

// load puts row i on an end.
func (t *Takeoff) load(h hang, i int) {
	if h.role == fittings.FarEnd {
		t.lines[h.item].far = int32(i)
		return
	}
	t.taken[h] = int32(i)
}

// hangOn hangs row i on an end of host, or says why it can't.
func (t *Takeoff) hangOn(i, host int, role fittings.EndRole, named, byRun bool) {
	l, h := &t.lines[i], &t.lines[host]
	value := func() string {
		if byRun {
			return "run " + t.seldom(l).run
		}
		return string(t.fromOf(l))
	}
	bad := func(expected, message string) {
		t.fault(i, t.at(l).Fault("from", value(), expected, message))
	}
	switch {
	case h.sideBySide():
		bad("a row with quantity 1", fmt.Sprintf("%s is %d pieces side by side, so nothing can hang on it; write a row for each", t.nameText(h), h.quantity))
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
			bad("an end that "+t.nameText(h)+" has: "+t.endNames(h), fmt.Sprintf("%s has no %s to join to", t.nameText(h), role))
			return
		}
		if first, ok := t.carries(hang{host, role}); ok {
			bad("an end with nothing on it", fmt.Sprintf("the %s of %s already carries %s; name a side end, or add the tee or spigot", role, t.nameText(h), t.nameText(&t.lines[first])))
			return
		}
		t.load(hang{host, role}, i)
	}
	l.parent, l.parentEnd = int32(host), role
	t.forward = t.forward || host > i
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

func (t *Takeoff) endNames(h *line) string {
	var names []string
	for _, e := range t.ends(h) {
		if e.Role != fittings.PlantEnd {
			names = append(names, t.nameText(h)+"/"+strings.TrimSuffix(e.Role.String(), " end"))
		}
	}
	if len(names) == 0 {
		return "none but its plant end"
	}
	return strings.Join(names, ", ")
}

// breakLoops refuses rows that lead back to themselves.
func (t *Takeoff) breakLoops() {
	if !t.forward {
		return
	}
	const (
		unseen = iota
		onPath
		done
	)
	state := make([]uint8, len(t.lines))
	var path []int
	for i := range t.lines {
		path = path[:0]
		j := i
		for j >= 0 && state[j] == unseen {
			state[j] = onPath
			path = append(path, j)
			j = int(t.lines[j].parent)
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
		names = append(names, t.nameText(&t.lines[k]))
	}
	const most = 6
	if len(names) > most {
		names = append(names[:most:most], fmt.Sprintf("(%d more)", len(names)-most))
	}
	chain := strings.Join(append(names, names[0]), " > ")
	for _, k := range path[at:] {
		l := &t.lines[k]
		t.fault(k, t.at(l).Fault("from", string(t.fromOf(l)), "the next piece towards the plant",
			"these rows lead in a circle and never reach the plant: "+chain+"; for a ring main use joins"))
	}
	for _, k := range path[at:] {
		l := &t.lines[k]
		t.lines[l.parent].children--
		l.parent = -1
	}
}
