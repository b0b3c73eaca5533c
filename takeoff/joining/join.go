// Package joining finds out which row of a schedule hangs on which: by tags, by the row
// above, by runs, and where rings close. It refuses what can't be joined, and takes the
// openings that follow from it off their walls.
package joining

import (
	"bytes"
	"fmt"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff/ledger"
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
	*ledger.Book
	taken   map[hang]int32 // what ends but far ones carry
	forward bool           // some row hangs on one further down
	assumed int            // rows joined by their run
}

// Join resolves who hangs on whom, from the references of the rows, and refuses
// those whose references can't be.
func Join(b *ledger.Book) {
	n := joined{Book: b, taken: map[hang]int32{}}
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
	var lost []ledger.Fault
	for i := range n.Lines {
		l := &n.Lines[i]
		host, role, named, byRun := -1, fittings.PlantEnd, false, false
		run := n.Seldom(l).Run
		if run != "" {
			run = n.Names[l.System] + "\x00" + run
		}
		switch {
		case l.FromLength == 0 && run != "":
			if last, ok := lastInRun[run]; ok {
				host, byRun = last, true
				n.assumed++
			}
		case l.FromLength > 0 && n.namesLast(i):
			host = i - 1
		case l.FromLength > 0:
			var f *ledger.Fault
			if host, role, named, f = n.resolve(i, "from", string(n.FromOf(l))); f != nil {
				lost = append(lost, *f)
			}
		}
		found = found || l.FromLength > 0 && host >= 0
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
		n.Note(note)
	}
}

// lostHosts refuses rows that name a row which isn't there. Where not one of several
// finds its row, the column is about something else: rooms, plant, nodes.
func (n *joined) lostHosts(lost []ledger.Fault, found bool) {
	if len(lost) > 1 && !found {
		n.Note(fmt.Sprintf("from: not one of %d rows names the tag of another, so the column isn't used; the first names '%s'", len(lost), lost[0].Value))
		return
	}
	for _, f := range lost {
		n.RefuseFor(f)
	}
}

// namesLast reports whether row i hangs on the row before it, as most do, by a
// tag that stands once.
func (n *joined) namesLast(i int) bool {
	if i == 0 {
		return false
	}
	tag := n.TagOf(&n.Lines[i-1])
	return bytes.Equal(n.FromOf(&n.Lines[i]), tag) && string(tag) != "^" && !n.IsDouble(tag)
}

// resolve finds the row that a reference names, and the end of it, if one is
// named. An exact tag comes before a side end.
func (n *joined) resolve(i int, heading, ref string) (host int, role fittings.EndRole, named bool, f *ledger.Fault) {
	l := &n.Lines[i]
	fault := func(expected, message string) (int, fittings.EndRole, bool, *ledger.Fault) {
		return -1, 0, false, &ledger.Fault{Line: i, Heading: heading, Value: ref, Expected: expected, Message: message}
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
		return fault("another row", fmt.Sprintf("%s names itself; name the next piece towards the plant", n.NameText(l)))
	case n.IsDouble([]byte(tag)):
		return fault("a tag that stands once", fmt.Sprintf("tag '%s' stands on several rows, so it isn't clear which is meant", tag))
	}
	return host, role, named, nil
}

// find looks a tag up; ^ is the row above on the same sheet.
func (n *joined) find(i int, tag string) (int, bool) {
	if tag == "^" {
		return i - 1, i > 0 && n.Sheets[n.Lines[i-1].Sheet].Name == n.Sheets[n.Lines[i].Sheet].Name
	}
	return n.Book.Find(tag)
}

// carries is the row that an end carries already.
func (n *joined) carries(h hang) (int, bool) {
	if h.role == fittings.FarEnd {
		far := n.Lines[h.item].Far
		return int(far), far >= 0
	}
	i, ok := n.taken[h]
	return int(i), ok
}

// load puts row i on an end.
func (n *joined) load(h hang, i int) {
	if h.role == fittings.FarEnd {
		n.Lines[h.item].Far = int32(i)
		return
	}
	n.taken[h] = int32(i)
}

// hangOn hangs row i on an end of host, or says why it can'n.
func (n *joined) hangOn(i, host int, role fittings.EndRole, named, byRun bool) {
	l, h := &n.Lines[i], &n.Lines[host]
	value := func() string {
		if byRun {
			return "run " + n.Seldom(l).Run
		}
		return string(n.FromOf(l))
	}
	bad := func(expected, message string) {
		n.Refuse(i, "from", value(), expected, message)
	}
	switch {
	case h.SideBySide():
		bad("a row with quantity 1", fmt.Sprintf("%s is %d pieces side by side, so nothing can hang on it; write a row for each", n.NameText(h), h.Quantity))
		return
	case l.Kind == fittings.Spigot:
		if named || !h.CarriesSpigots() {
			bad("the straight, tee or plenum in whose wall it sits", fmt.Sprintf("a spigot sits in the side wall of a straight, a tee or a plenum, not on %s", value()))
			return
		}
		role = fittings.PlantEnd
	case h.Kind == fittings.Plenum && !named:
		role = fittings.PlantEnd
	default:
		if !named {
			role = fittings.FarEnd
		}
		if h.Roles&(1<<role) == 0 && !h.UnknownEnds() {
			bad("an end that "+n.NameText(h)+" has: "+n.endNames(h), fmt.Sprintf("%s has no %s to join to", n.NameText(h), role))
			return
		}
		if first, ok := n.carries(hang{host, role}); ok {
			bad("an end with nothing on it", fmt.Sprintf("the %s of %s already carries %s; name a side end, or add the tee or spigot", role, n.NameText(h), n.NameText(&n.Lines[first])))
			return
		}
		n.load(hang{host, role}, i)
	}
	l.Parent, l.ParentEnd = int32(host), role
	n.forward = n.forward || host > i
	h.Children++
}

func (n *joined) endNames(h *ledger.Line) string {
	var names []string
	for _, e := range n.Ends(h) {
		if e.Role != fittings.PlantEnd {
			names = append(names, n.NameText(h)+"/"+strings.TrimSuffix(e.Role.String(), " end"))
		}
	}
	if len(names) == 0 {
		return "none but its plant end"
	}
	return strings.Join(names, ", ")
}
