package settled

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// sidesAB takes the columns A and B, as on drawings of pieces, for the sides of the
// section, and C and D for those of the other end, where nothing else is headed width or
// height.
func (t *Reading) sidesAB() {
	a, b := t.lettered("a"), t.lettered("b")
	if a == nil || b == nil || a.Fixed || b.Fixed || t.Maps(takeoff.DimColumn(fittings.Height)) {
		return
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		if s != b && s.Used && (s.Verdict == headings.Sizes || s.Verdict == headings.Known && s.To() == takeoff.DimColumn(fittings.Width)) {
			return
		}
	}
	if at := slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Typed == a.Typed }); at >= 0 && t.Peek().Share(at, quantity.Combined) > 0 { // those of both ends
		t.TakeForSize(a, headings.OwnSize)
		t.TakeForSize(b, headings.SecondSize)
		t.Note("columns '%s' and '%s' are read as the sizes of both ends", a.Typed, b.Typed)
		return
	}
	sides := []*columns.Spec{a, b}
	if c, d := t.lettered("c"), t.lettered("d"); c != nil && d != nil && !c.Fixed && !d.Fixed && !t.Maps(takeoff.DimColumn(fittings.Width2)) {
		sides = append(sides, c, d)
	}
	for i, s := range sides {
		d := [...]fittings.Dim{fittings.Width, fittings.Height, fittings.Width2, fittings.Height2}[i]
		h := headings.Heading{Typed: s.Typed, Unit: s.Heading.Unit, Said: s.Heading.Said, Verdict: headings.Known, Column: takeoff.DimColumn(d)}
		if words := headings.Tokens(s.Typed); !h.Said && len(words) > 1 {
			h.Unit, h.Said = quantity.UnitOf(words[len(words)-1])
		}
		if !h.Said || h.Unit.Measure != takeoff.Lengths {
			h.Unit, h.Said = quantity.Default(takeoff.Lengths), false
		}
		s.Set(&t.Reading, h)
	}
	t.Note("columns '%s' and '%s' are read as width and height", a.Typed, b.Typed)
	if len(sides) > 2 {
		t.Note("columns '%s' and '%s' are read as width and height of the other end", sides[2].Typed, sides[3].Typed)
	}
}

// lettered is the column headed by a letter, by itself or behind a word for a side.
func (t *Reading) lettered(letter string) *columns.Spec {
	for i := range t.Specs {
		words := headings.Tokens(t.Specs[i].Typed)
		if n := len(words); n > 1 {
			if u, ok := quantity.UnitOf(words[n-1]); ok && u.Measure == takeoff.Lengths {
				words = words[:n-1]
			}
		}
		n := len(words)
		if n > 0 && words[n-1] == letter && (n == 1 || n == 2 && slices.Contains(sideWords, words[0])) {
			return &t.Specs[i]
		}
	}
	return nil
}

// sizeInCells takes a heading of sizes with one or two blank ones behind it for a size
// over several cells: 600 | 400, 600 | x | 400.
func (t *Reading) sizeInCells() {
	for i := 0; i+2 < len(t.Specs); i++ {
		s := &t.Specs[i]
		if !s.Used || s.Verdict != headings.Sizes || !t.blankHead(i+1) {
			continue
		}
		b := t.Peek()
		if len(b.Columns[i]) > 0 && len(b.Columns[i+1]) > 0 && b.Share(i, celltext.IsFigure) == 1 && b.Share(i+1, celltext.IsFigure) == 1 && !t.blankHead(i+2) { // 600 | 400
			s.Paired = true
			t.Specs[i+1].Verdict = headings.Unknown
			t.Note("column '%s' is read over two cells: width and height", s.Typed)
			continue
		}
		if !t.blankHead(i + 2) {
			continue
		}
		cross := func(c string) bool { return strings.ContainsAny(c, "xX×*") && len(c) < 3 }
		if len(b.Columns[i+1]) == 0 || b.Share(i+1, cross) < 1 || b.Share(i+2, celltext.IsFigure) < 1 {
			continue
		}
		s.Parted = i + 1
		for k := i + 1; k < i+3; k++ {
			t.Specs[k].Verdict = headings.Unknown
		}
		t.Note("column '%s' is read over three cells: width, x, height", s.Typed)
	}
}

// blankHead reports a column that isn't used, over which nothing stands.
func (t *Reading) blankHead(i int) bool {
	return !t.Specs[i].Used && !slices.ContainsFunc(t.Heads, func(cells []string) bool { return celltext.At(cells, i) != "" })
}

// depthByCells takes a bare D beside a width for the depth, where rows give both: a piece
// has no width and a diameter, and no height.
func (t *Reading) depthByCells(s *columns.Spec) bool {
	b := t.Peek()
	width, d := -1, -1
	for i := range t.Specs {
		switch x := &t.Specs[i]; {
		case x == s:
			d = i
		case x.Used && x.Verdict == headings.Known && x.To() == takeoff.DimColumn(fittings.Width):
			width = i
		}
	}
	if width < 0 || len(b.Cells) == 0 {
		return false
	}
	both := 0
	for _, cells := range b.Cells {
		w, depth := celltext.At(cells, width) != "" && !celltext.MeansNothing(celltext.At(cells, width)), celltext.At(cells, d) != "" && !celltext.MeansNothing(celltext.At(cells, d))
		if depth && !w {
			return false
		}
		if depth {
			both++
		}
	}
	if both == 0 {
		return false
	}
	h := s.Heading
	h.Column = takeoff.DimColumn(fittings.Height)
	s.Set(&t.Reading, h)
	s.Settled = true
	t.Note("column '%s' is read as height_mm, as each row that has it has a width too", s.Typed)
	return true
}

// lengthOfRun takes a column of total lengths or running metres for the length, where
// nothing says how many pieces there are.
func (t *Reading) lengthOfRun() {
	if t.Maps(takeoff.Quantity) || t.Maps(takeoff.DimColumn(fittings.Length)) || t.unitsInCells() {
		return
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Verdict == headings.Misfit && !s.Fixed && (s.Heading.Column == takeoff.Quantity || s.Heading.Column == takeoff.Run) && s.Heading.Unit.Measure == takeoff.Lengths {
			h := s.Heading
			h.Verdict, h.Column = headings.Known, takeoff.DimColumn(fittings.Length)
			s.Set(&t.Reading, h)
			t.Note("column '%s' is read as length_mm, in %s", s.Typed, h.Unit.Name)
			return
		}
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Verdict != headings.Asks || s.Fixed || !s.Ask.Runs() {
			continue
		}
		h := s.Heading
		h.Verdict, h.Column = headings.Known, takeoff.DimColumn(fittings.Length)
		if words := headings.Tokens(s.Typed); !h.Said {
			h.Unit = quantity.Default(takeoff.Lengths)
			for k := range words {
				if u, ok := quantity.UnitOf(strings.Join(words[k:], "")); ok && u.Measure == takeoff.Lengths {
					h.Unit, h.Said = u, true
					break
				}
			}
			if slices.Contains(runningMetres, headings.Squash(s.Typed)) {
				h.Unit, _ = quantity.UnitOf("m")
				h.Said = true
			}
		}
		s.Set(&t.Reading, h)
		s.Settled = true
		t.Note("column '%s' is read as length_mm, as no column says how many there are", s.Typed)
		return
	}
}

// unitsInCells reports two headings that are units of length only, as metres and millimetres:
// each has a part of the figure.
func (t *Reading) unitsInCells() bool {
	n := 0
	for i := range t.Specs {
		if u, ok := quantity.UnitOf(t.Specs[i].Typed); ok && u.Measure == takeoff.Lengths && !t.Specs[i].Used {
			n++
		}
	}
	return n > 1
}

// runningMetres are short for metres of a run, in several languages (from memory, unverified).
var runningMetres = []string{"lm", "ml", "rmt", "lfm", "lfdm", "laufmeter", "laufendemeter", "runningm", "metros", "metroslineales", "metreslineaires", "lopmeter", "strekkendemeter", "strekkendemeters"}

// frenchSides takes a small l for the width (largeur) where a large L stands beside it for
// the length, or lg does, and nothing else is the width.
func (t *Reading) frenchSides() {
	small, others := -1, 0
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Fixed || s.Verdict != headings.Known || s.To() != takeoff.DimColumn(fittings.Length) {
			continue
		}
		if words := headings.Tokens(s.Typed); len(words) > 0 && words[0] == "l" && (small < 0 && (s.Typed[0] == 'l' || others == 0) || small >= 0 && s.Typed[0] == 'l' && t.Specs[small].Typed[0] == 'L') {
			if small >= 0 { // L, l: the large one is the length
				others++
			}
			small = i
		} else {
			others++
		}
	}
	if small < 0 || others != 1 || t.Maps(takeoff.DimColumn(fittings.Width)) || !t.Maps(takeoff.DimColumn(fittings.Height)) {
		return
	}
	s := &t.Specs[small]
	h := s.Heading
	h.Column = takeoff.DimColumn(fittings.Width)
	s.Set(&t.Reading, h)
	s.Settled = true
	t.Note("column '%s' is read as width_mm, as another is the length", s.Typed)
}

// swedishPlan takes plan for the level where the other headings are Swedish.
func (t *Reading) swedishPlan() {
	swedish := slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		return slices.ContainsFunc(headings.Tokens(s.Typed), func(w string) bool { return slices.Contains(swedishWords, w) })
	})
	for i := range t.Specs {
		if s := &t.Specs[i]; swedish && s.Verdict == headings.Asks && headings.Squash(s.Typed) == "plan" && !t.Maps(takeoff.Level) {
			t.TakeFor(s, takeoff.Level)
			s.Settled = false
		}
	}
}

// swedishWords are headings that no schedule in another language has.
var swedishWords = []string{"bredd", "hojd", "langd", "antal", "littera", "benamning"}
