package settled

import (
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/terms"
)

// byCells settles headings with more than one reading by what stands under them.
func (t *Reading) byCells() {
	open := slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		return !s.Fixed && (s.Verdict == headings.Asks || s.Used && (s.To() == takeoff.Scope || s.To() == takeoff.Quantity))
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
	}
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Verdict != headings.Asks || s.Fixed {
			continue
		}
		s.Empty = len(b.Columns[i]) == 0
		s.Worded = !s.Empty && b.Share(i, celltext.IsFigure) == 0 && b.Share(i, celltext.IsSize) == 0
		s.Figures = !s.Empty && b.Share(i, celltext.IsFigure) == 1
		if s.Ask.Sections() && !again && !t.Sized() && b.Share(i, celltext.IsSize) == 1 {
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

// sizesByCells takes the one column of an unknown heading whose cells all hold a whole
// cross-section for the size, where nothing else gives it.
func (t *Reading) sizesByCells(b columns.Beneath) {
	at := -1
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Used || s.Fixed || s.Verdict != headings.Unknown || s.Typed == "" || len(b.Columns[i]) < 2 || b.Share(i, celltext.IsSize) < 1 {
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
