package headings

import (
	"slices"
	"strings"
	"unicode"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/quantity"
)

// across settles a heading of a whole cross-section that says which figure comes
// first: "W x H", "Size (B x H)", "WxH/Ø", "Outlet W x H". All of its words have
// to be known. One with the height first, or with a length, is asked about.
func (l *Lexicon) across(h *Heading, words []string) bool {
	of, plain := NoSize, false
	if !slices.ContainsFunc(words, func(w string) bool { return strings.Contains(w, "x") }) {
		return false // most headings
	}
	for i := 0; i < len(words); {
		n := 0
		for k := min(9, len(words)-i); k > 0 && n == 0; k-- {
			name := strings.Join(words[i:i+k], "")
			sides, asks := l.sidesOf(name)
			m, known := l.meanings[name]
			size := map[string]SizeOf{"main": OwnSize, "branch": BranchSize, "2": SecondSize}[l.over[name]]
			if known && m.size != NoSize {
				size = m.size
			}
			switch {
			case asks != nil && (of == NoSize || of == OwnSize) && l.withLength(name):
				of, plain, n = LongSize, true, k
			case asks != nil && of == NoSize && l.lengthFirst(name):
				of, plain, n, h.Foremost = LongSize, true, k, true
			case asks != nil:
				h.Verdict, h.Ask = Asks, asks
				return true
			case sides != NoSize && (of == NoSize || of == sides || sides == OwnSize):
				of, plain, n = max(of, sides), true, k
			case i == 0 && size != NoSize:
				of, n = size, k
			case plain && size == OwnSize, known && isDiameter(m.column), i > 0 && k == 1 && joiners[name]:
				n = k
			}
		}
		if n == 0 {
			return false
		}
		i += n
	}
	if !plain {
		return false
	}
	h.Verdict, h.Size = Sizes, of
	if h.Said && h.Unit.Measure != takeoff.Lengths {
		h.Verdict, h.Column = Misfit, takeoff.DimColumn(fittings.Width)
	}
	return true
}

// joiners are the words between what a cell may hold: "W x H or Ø".
var joiners = map[string]bool{"or": true, "and": true, "oder": true, "bzw": true, "und": true, "resp": true, "ou": true, "et": true,
	"of": true, "en": true, "eller": true, "och": true, "o": true, "y": true, "e": true}

func isDiameter(c takeoff.Column) bool {
	d, ok := c.Dim()
	return ok && (d == fittings.Diameter || d == fittings.Diameter2 || d == fittings.BranchDiameter)
}

// sidesOf finds whose cross-section a name with an x says, or what has to be
// asked about it.
func (l *Lexicon) sidesOf(name string) (of SizeOf, asks *Question) {
	if strings.Count(name, "x") > 3 {
		return NoSize, nil
	}
	for i := 1; i < len(name)-1; i++ {
		if name[i] != 'x' {
			continue
		}
		first, a := l.dimOf(name[:i])
		second, b := l.dimOf(name[i+1:])
		if name[i+1:] == "d" && first == fittings.Width { // beside a width, the depth
			second, b = fittings.Height, true
		}
		switch pair := [2]fittings.Dim{first, second}; {
		case a && strings.Contains(name[i+1:], "x"):
			if of, more := l.sidesOf(name[i+1:]); of != NoSize || more != nil {
				return NoSize, l.asked[Squash(threeSizes)]
			}
		case !a || !b:
		case pair == [2]fittings.Dim{fittings.Width, fittings.Height}:
			return OwnSize, nil
		case pair == [2]fittings.Dim{fittings.Width2, fittings.Height2}:
			return SecondSize, nil
		case pair == [2]fittings.Dim{fittings.BranchWidth, fittings.BranchHeight}:
			return BranchSize, nil
		case first == fittings.Length || second == fittings.Length:
			return NoSize, l.asked[Squash(lengthFirst)]
		case second == fittings.Width || second == fittings.Width2 || second == fittings.BranchWidth:
			return NoSize, l.asked[Squash(heightFirst)]
		}
	}
	return NoSize, nil
}

// withLength reports a name of a width, a height and a length, in this order.
func (l *Lexicon) withLength(name string) bool {
	return l.inOrder(name, fittings.Width, fittings.Height, fittings.Length)
}

// lengthFirst reports a name of a length, a width and a height, in this order, as offices
// write boxes: L x B x H.
func (l *Lexicon) lengthFirst(name string) bool {
	return l.inOrder(name, fittings.Length, fittings.Width, fittings.Height)
}

// inOrder reports a name of three sizes in an order.
func (l *Lexicon) inOrder(name string, order ...fittings.Dim) bool {
	parts := strings.Split(name, "x")
	if len(parts) != len(order) {
		return false
	}
	for i, want := range order {
		d, ok := l.dimOf(parts[i])
		if parts[i] == "d" && i > 0 && order[i-1] == fittings.Width { // behind a width, the depth
			d = fittings.Height
		}
		if !ok || d != want {
			return false
		}
	}
	return true
}

// dimOf finds the size that a name stands for.
func (l *Lexicon) dimOf(name string) (fittings.Dim, bool) {
	m, ok := l.meanings[name]
	if !ok || m.size != NoSize || m.unitNeeded {
		return 0, false
	}
	return m.column.Dim()
}

// joins reports a sign between two words, as in W × H.
func joins(rs []rune, i int) bool {
	before, after := i-1, i+1
	for before >= 0 && rs[before] == ' ' {
		before--
	}
	for after < len(rs) && rs[after] == ' ' {
		after++
	}
	word := func(k int) bool {
		return k >= 0 && k < len(rs) && (unicode.IsLetter(rs[k]) || unicode.IsDigit(rs[k]) || rs[k] == ')' || rs[k] == ']')
	}
	return word(before) && word(after)
}

// unitOnce keeps the last of the units that stand on both sides of an x: "Size (mm
// x mm)", "W (mm) x H (mm)". It is nil where there are none.
func unitOnce(words []string) []string {
	n := len(words)
	if n < 2 {
		return nil
	}
	u := words[n-1]
	if half := len(u) / 2; half > 0 && len(u)%2 == 1 && u[half] == 'x' && u[:half] == u[half+1:] {
		return append(words[:n-1:n-1], u[:half])
	}
	if _, ok := quantity.UnitOf(u); !ok {
		return nil
	}
	for i := n - 2; i > 1; i-- {
		if words[i] != "x" || words[i-1] != u {
			continue
		}
		if i == n-2 {
			return append(words[:i-1:i-1], u)
		}
		return append(words[:i-1:i-1], words[i:]...)
	}
	return nil
}

// Neighbours looks at the headings of a row together: what one of them may have
// meant isn't suggested where another column is headed so. The next best is, or
// the heading is marked as taken.
func (l *Lexicon) Neighbours(hs []Heading) {
	taken := make([]bool, takeoff.NumColumns)
	for _, h := range hs {
		if h.Verdict == Known {
			taken[h.Column] = true
		}
	}
	for i, h := range hs {
		if h.Verdict != Near || !taken[h.Column] {
			continue
		}
		if next := l.find(h.Typed, taken); next.Verdict == Near {
			hs[i] = next
		} else {
			hs[i].Taken = true
		}
	}
}

// bothTongues settles a heading that says the same twice, as in two languages: Breite / Width
// (mm), Länge (Length). Each part has to be known by itself, and to mean the same.
func (l *Lexicon) bothTongues(h *Heading) bool {
	parts := strings.FieldsFunc(h.Typed, func(r rune) bool { return r == '/' || r == '|' || r == '\n' || r == '(' || r == '[' })
	if len(parts) < 2 || len(parts) > 4 {
		return false
	}
	var found []Heading
	var u quantity.Unit
	said := false
	for _, part := range parts {
		part = strings.Trim(part, " )]-–")
		words := Tokens(part)
		if len(words) == 0 {
			return false
		}
		if x, ok := quantity.UnitOf(strings.Join(words, "")); ok && len(found) > 0 && part == strings.ToLower(part) {
			if said && x != u {
				return false
			}
			u, said = x, true
			continue
		}
		one := Heading{Typed: part}
		if _, ok := l.settle(&one, words); !ok || one.Verdict != Known && one.Verdict != Sizes && one.Verdict != Asks {
			return false
		}
		if one.Said && one.Verdict != Asks && !strings.Contains(part, "_") {
			if said && one.Unit != u {
				return false
			}
			u, said = one.Unit, true
		}
		found = append(found, one)
	}
	if found = answered(found); !alike(found) {
		return false
	}
	first := found[0]
	if said && first.Verdict != Asks {
		if first.Verdict == Known && !takes(first.Column, u) || first.Verdict == Sizes && u.Measure != quantity.Millimetre.Measure {
			return false
		}
		first.Unit, first.Said = u, true
	}
	first.Typed = h.Typed
	*h = first
	return true
}

// answered gives names with more than one reading that of the one beside them that answers their
// question: Number / Stück, Item / Pos, Description / Bauteil.
func answered(found []Heading) []Heading {
	at := slices.IndexFunc(found, func(h Heading) bool { return h.Verdict == Known })
	if at < 0 {
		return found
	}
	sure := found[at]
	for i, h := range found {
		if h.Verdict != Asks {
			continue
		}
		switch q := h.Ask; {
		case (q.Counts() || q.Units()) && sure.Column == takeoff.Quantity,
			(q.Counts() || q.Items()) && sure.Column == takeoff.Tag,
			(q.Describes() || q.Items()) && sure.Column == takeoff.Kind,
			q.Items() && sure.Column == takeoff.Drawing:
			found[i] = sure
		}
	}
	return found
}

// alike reports two headings and more that mean the same.
func alike(found []Heading) bool {
	for _, x := range found {
		if first := &found[0]; x.Verdict != first.Verdict || x.Column != first.Column || x.Size != first.Size || x.Ask != first.Ask {
			return false
		}
	}
	return len(found) > 1
}
