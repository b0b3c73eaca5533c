package settled

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/answered"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/terms"
)

// byCells settles headings with more than one reading by what stands under them.
func (t *Reading) byCells() {
	open := slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		return !s.Fixed && (s.Verdict == headings.Asks || s.Used && (s.To() == takeoff.Scope || s.To() == takeoff.Sign || s.To() == takeoff.Quantity))
	})
	fixed := t.ByMap.Fixes(t.Place.Sheet)
	again := (open || !fixed) && t.settledBefore()
	unsized := !fixed && !t.Sized() && !t.Maps(columns.Own[1])
	if !open && !unsized && (t.Maps(takeoff.Kind) || fixed) {
		return
	}
	b := t.Peek()
	if b.Rows == 0 {
		return
	}
	if !again {
		t.unitsByCells(b)
		t.kindByCells(b)
		t.shapeByCells(b)
		t.scopeByCells(b)
		t.signByCells(b)
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Verdict != headings.Asks || s.Fixed {
			continue
		}
		s.Empty = len(b.Columns[i]) == 0
		s.Worded = !s.Empty && b.Share(i, celltext.IsFigure) == 0 && b.Share(i, celltext.IsSize) == 0
		s.Figures = !s.Empty && b.Share(i, celltext.IsFigure) == 1
		sizes := s.Ask.Sections() && s.Heading.Said && s.Heading.Unit.Measure == takeoff.Lengths || b.Share(i, celltext.IsSize) == 1
		if (s.Ask.Sections() || s.Ask.Lengths() && t.Maps(takeoff.DimColumn(fittings.Length))) && !again && !t.Sized() && sizes {
			t.TakeForSize(s, headings.OwnSize)
			t.Note("column '%s' is read as size, as its cells hold sizes", s.Typed)
		}
	}
	if unsized && !again {
		t.sizesByCells(b)
	}
	if !again {
		t.numbersByCells(b)
		t.tagByCells(b)
	}
}

// signByCells leaves out a column headed sign, of which each cell is letters of somebody's name.
func (t *Reading) signByCells(b columns.Beneath) {
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Fixed || s.Verdict != headings.Known || s.To() != takeoff.Sign || len(b.Columns[i]) == 0 || b.Share(i, t.namesSign) > 0 || b.Share(i, initials) < 1 {
			continue
		}
		s.Used, s.Verdict, s.Settled = false, headings.Unknown, true
	}
}

func (t *Reading) namesSign(cell string) bool {
	_, known := t.Lex.Exact(takeoff.Sign, cell)
	_, ok := terms.ParseSign(cell)
	return known || ok
}

// initials reports two or three letters as of a name: AB, J.K., mh.
func initials(cell string) bool {
	letters := strings.NewReplacer(".", "", " ", "", "/", "").Replace(cell)
	return len(letters) > 1 && len(letters) < 4 && !strings.ContainsFunc(letters, func(r rune) bool { return !unicode.IsLetter(r) })
}

// sizesByCells takes the one column of an unknown heading whose cells all hold a whole
// cross-section for the size, where nothing else gives it.
func (t *Reading) sizesByCells(b columns.Beneath) {
	at := -1
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Used || s.Fixed || s.Verdict != headings.Unknown && s.Verdict != headings.Near || s.Typed == "" || len(b.Columns[i]) < 2 || b.Share(i, celltext.IsSize) < 1 {
			continue
		}
		if at >= 0 {
			return
		}
		at = i
	}
	if at < 0 || t.Sized() {
		return
	}
	t.TakeForSize(&t.Specs[at], headings.OwnSize)
	t.Note("column '%s' is read as size, as its cells hold sizes and no other column gives any", t.Specs[at].Typed)
}

// settledBefore takes columns for what the file said they are of which these rows were
// refused. It reports whether this is such a file.
func (t *Reading) settledBefore() (again bool) {
	for i := range t.Specs {
		typed := t.Specs[i].Typed
		again = again || strings.HasPrefix(typed, columns.AddedMark)
		list, ok := strings.CutPrefix(typed, columns.SettledMark)
		if !ok {
			continue
		}
		for _, pair := range strings.Split(strings.TrimSuffix(list, "]"), ", ") {
			letter, name, _ := strings.Cut(pair, " ")
			at, lettered := mapping.Number(letter)
			c, of, known := headings.Canonical(name)
			if lettered && name == "-" && at < len(t.Specs) {
				t.Specs[at].Used, t.Specs[at].Verdict = false, headings.Unknown
			}
			if !lettered || !known || at >= len(t.Specs) || t.Specs[at].Verdict == headings.Known || t.Specs[at].Verdict == headings.Sizes && of != headings.NoSize {
				continue
			}
			if t.Specs[at].Typed == "" {
				t.Specs[at].Typed = "column " + letter
			}
			if s := &t.Specs[at]; of == headings.NoSize {
				t.TakeFor(s, c)
			} else {
				t.TakeForSize(s, of)
			}
		}
	}
	return again
}

// scopeByCells leaves out a column headed scope that says what is supplied, and not what
// is tested.
func (t *Reading) scopeByCells(b columns.Beneath) {
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Fixed || s.Verdict != headings.Known || s.To() != takeoff.Scope || len(b.Columns[i]) == 0 || b.Share(i, t.namesScope) > 0 || b.Share(i, celltext.OfWords) < 1 {
			continue
		}
		s.Used, s.Verdict, s.Settled = false, headings.Unknown, true
	}
}

func (t *Reading) namesScope(cell string) bool {
	_, known := t.Lex.Exact(takeoff.Scope, cell)
	return known || terms.KnownScope(cell) || t.Lex.Struck(cell)
}

// kindByCells takes the kinds from the one of several columns of descriptions, types,
// items or marks whose cells name kinds. Two that name other kinds are asked about.
func (t *Reading) kindByCells(b columns.Beneath) {
	if t.Maps(takeoff.Kind) {
		return
	}
	var found []int
	asked := 0
	for i := range t.Specs {
		s := &t.Specs[i]
		share := b.Share(i, t.Kinds().NamesKind)
		switch describes := s.Verdict == headings.Asks && s.Ask.Describes(); {
		case s.Fixed:
			continue
		case describes || s.Verdict == headings.Asks && s.Ask.Items():
			asked++
			s.Kindless = share == 0 && len(b.Columns[i]) > 0
			if share >= 0.5 {
				found = append(found, i)
			}
		case share == 1 && (s.Used && s.Verdict == headings.Known && (s.To() == takeoff.Tag || s.To() == takeoff.Style) || s.Verdict == headings.Unknown && described.Describer(s.Typed)):
			found = append(found, i)
		}
	}
	if len(found) == 0 {
		found = t.unknownKinds(b)
	}
	switch {
	case len(found) == 0, len(found) == 1 && asked == 1 && t.Specs[found[0]].Verdict == headings.Asks && t.Specs[found[0]].Ask.Describes(): // a column alone is taken anyway
		return
	case len(found) > 1 && !t.sameKinds(b, found):
		a, c := &t.Specs[found[0]], &t.Specs[found[1]]
		t.Refuse(a, "one column of kinds", fmt.Sprintf("'%s' and '%s' both name kinds of pieces, and not the same; head the one that counts kind, and the other note", a.Typed, c.Typed))
		for _, i := range found {
			t.Specs[i].Used, t.Specs[i].Verdict, t.Specs[i].Settled = false, headings.Unknown, true
		}
		return
	}
	s := &t.Specs[found[0]]
	if s.Typed == "" {
		s.Typed = "column " + mapping.Letter(found[0])
		t.TakeFor(s, takeoff.Kind)
		t.Note("%s has no heading and is read as kind, as its cells name kinds of pieces", s.Typed)
		return
	}
	t.TakeFor(s, takeoff.Kind)
	t.Note("column '%s' is read as kind, as its cells name kinds of pieces", s.Typed)
}

// mostNameKinds reports cells of which nine in ten name kinds, or all but one of three and more.
func (t *Reading) mostNameKinds(cells []string) bool {
	named, rows := 0, len(cells)
	for _, c := range cells {
		switch kinds := t.Kinds(); {
		case kinds.NamesPiece(c):
			named++
		case kinds.Lex.Apart(c) || answered.OfOtherTrade(c): // a grille among ducts
			rows--
		}
	}
	return named > 0 && 10*named >= 9*rows || named > 1 && named == rows-1
}

// unknownKinds are the columns of headings that aren't known, or of none, of whose cells
// nine in ten name kinds; and of those asked about whose cells are all words as spiral, where
// no column names others.
func (t *Reading) unknownKinds(b columns.Beneath) (found []int) {
	for i := range t.Specs {
		s := &t.Specs[i]
		switch {
		case s.Fixed:
		case s.Verdict == headings.Unknown || s.Verdict == headings.Near || s.Verdict == headings.Blank || s.Used && s.Verdict == headings.Known && s.To() == takeoff.Class:
			if t.mostNameKinds(b.Columns[i]) && 10*len(b.Columns[i]) >= 9*b.Rows && !described.OfNeighbours(s.Typed) && !described.OfColours(s.Typed) {
				found = append(found, i)
			}
		case s.Verdict == headings.Asks && (s.Ask.Items() || s.Ask.Describes()) && (b.Share(i, t.Kinds().RoundKind) == 1 || (s.Ask.Items() || b.Share(i, t.Kinds().NamesKind) == 0) && t.mostNameKinds(b.Columns[i])):
			found = append(found, i)
		}
	}
	return found
}

// IsList reports the only heading of a list of one column, of which most rows say what a
// straight is, with its size and its length: Straight duct 600x400x1500. Those aren't in a file
// of refused rows.
func (t *Reading) IsList(hs []headings.Heading) bool {
	at := slices.IndexFunc(hs, func(h headings.Heading) bool { return h.Verdict != headings.Blank })
	added := func(h headings.Heading) bool { return strings.HasPrefix(h.Typed, columns.AddedMark) }
	if t.Below == nil || at < 0 || slices.ContainsFunc(hs[at+1:], func(h headings.Heading) bool { return h.Verdict != headings.Blank && !added(h) }) {
		return false
	}
	if h := hs[at]; !(h.Verdict == headings.Asks && (h.Ask.Describes() || h.Ask.Items()) || h.Verdict == headings.Known && h.Column == takeoff.Kind) {
		return false
	}
	if slices.ContainsFunc(hs[at+1:], added) {
		return true
	}
	rows, whole := t.Below(columns.MostBelow), 0
	for _, cells := range rows {
		if len(celltext.Filled(cells)) > 1 {
			return false
		}
		if t.Kinds().Whole(celltext.At(cells, at)) {
			whole++
		}
	}
	return whole > 1 && 2*whole > len(rows)
}

// sameKinds reports that the columns name the same kind on every row that was looked at.
func (t *Reading) sameKinds(b columns.Beneath, columns []int) bool {
	for _, row := range b.Cells {
		kind := fittings.NoKind
		for _, i := range columns {
			if i >= len(row) || celltext.Trim(row[i]) == "" {
				continue
			}
			k := t.Kinds().KindIn(celltext.Trim(row[i]))
			if kind != fittings.NoKind && k != fittings.NoKind && k != kind {
				return false
			}
			kind = max(kind, k)
		}
	}
	return true
}
