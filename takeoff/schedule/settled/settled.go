package settled

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// quantityUnits finds the column that says what quantities are counted in, as in a bill,
// where a row gives no length: a quantity in m is the length of a straight.
func (t *Reading) quantityUnits() {
	t.UnitsAt, t.LengthAt = 0, 0
	bill := t.Maps(takeoff.Quantity)
	for i := range t.Specs {
		s := &t.Specs[i]
		h := s.Heading
		if s.Fixed && !s.Used { // a map says that it isn't used
			if h = t.Lex.Read(s.Typed); h.Verdict == headings.Known && h.Column == takeoff.Quantity { // ud, of units
				h = t.Lex.Read("unit")
			}
		}
		if s.OfUnits = h.Verdict == headings.Asks && h.Ask.Units(); s.OfUnits && i > 0 && bill {
			t.UnitsAt = i
			t.LengthAt = max(0, slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.IsLength() }))
		}
	}
}

// describedKinds takes the kinds from the one column of descriptions or types
// where no column is headed as the kind: each of its words still has to be
// understood.
func (t *Reading) describedKinds() {
	var found, items []*columns.Spec
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Used && s.Verdict == headings.Known && s.To() == takeoff.Kind {
			if !s.Fixed && !t.OfRefused() {
				t.codesForTag(s)
			}
			return
		}
		if s.Verdict == headings.Asks && s.Ask.Describes() {
			found = append(found, s)
		}
		if s.Verdict == headings.Asks && s.Ask.Items() && !s.Kindless {
			items = append(items, s)
		}
	}
	if len(found) == 0 {
		found = items
	}
	if len(found) != 1 || t.codesForTag(found[0]) {
		return
	}
	t.TakeFor(found[0], takeoff.Kind)
	found[0].Settled = len(items) > 0 // else the heading says it
	t.Note("column '%s' is read as kind, as no other column is headed so", found[0].Typed)
}

// codesForTag takes a column of descriptions for the tags where each cell is a code of its own and
// none names a kind: K001 under Teil.
func (t *Reading) codesForTag(s *columns.Spec) bool {
	at := slices.IndexFunc(t.Specs, func(x columns.Spec) bool { return x.Typed == s.Typed })
	cells := t.Peek().Columns[at]
	code := func(c string) bool {
		return celltext.HasDigit(c) && len(strings.Fields(c)) == 1 && !celltext.IsSize(c) && t.Kinds().KindIn(c) == fittings.NoKind && !described.FittingCode(c)
	}
	if t.Maps(takeoff.Tag) || len(cells) < 3 || strings.EqualFold(s.Typed, takeoff.Kind.Heading()) || slices.ContainsFunc(cells, func(c string) bool { return !code(c) }) || len(slices.Compact(slices.Sorted(slices.Values(cells)))) < len(cells) {
		return false
	}
	t.TakeFor(s, takeoff.Tag)
	s.Settled = true
	t.Note("column '%s' is read as tag, as each of its cells is another and none names a kind", s.Typed)
	return true
}

// radiusBesideThroat takes the one column of radii for those to the centre line where another
// is of inside radii.
func (t *Reading) radiusBesideThroat() {
	if !t.Maps(takeoff.DimColumn(fittings.Throat)) || t.Maps(takeoff.DimColumn(fittings.Radius)) {
		return
	}
	radii := func(s columns.Spec) bool { return s.Verdict == headings.Asks && s.Ask.Radii() }
	at := slices.IndexFunc(t.Specs, radii)
	if at < 0 || slices.ContainsFunc(t.Specs[at+1:], radii) || t.Specs[at].Fixed {
		return
	}
	t.TakeFor(&t.Specs[at], takeoff.DimColumn(fittings.Radius))
	t.Specs[at].Settled = false // the headings say it
	t.Note("column '%s' is read as radius_mm, to the centre line, as another column gives the inside radius", t.Specs[at].Typed)
}

// spanishWords are headings that no French schedule has.
var spanishWords = []string{"ancho", "anchura", "alto", "altura", "longitud", "largo", "tipo", "cantidad", "pieza", "conducto"}

// spanishName takes nombre for a name where the other headings are Spanish, and not for
// the French how many.
func (t *Reading) spanishName() {
	spanish := slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		return slices.ContainsFunc(headings.Tokens(s.Typed), func(w string) bool { return slices.Contains(spanishWords, w) })
	})
	for i := range t.Specs {
		if s := &t.Specs[i]; spanish && s.Used && !s.Fixed && s.Verdict == headings.Known && headings.Squash(s.Typed) == "nombre" {
			s.Used, s.Verdict = false, headings.Unknown
		}
	}
}

// areaBesideSizes takes a column headed area, with a unit, for figures to check
// where the sizes are given too: nothing says that its areas are of each and not
// of the whole row, and sizes give the area anyway.
func (t *Reading) areaBesideSizes() {
	long := func(s columns.Spec) bool { return s.Used && s.Verdict == headings.Sizes && s.Size == headings.LongSize }
	sized := slices.ContainsFunc(t.Specs, long) || t.Maps(takeoff.DimColumn(fittings.Length)) && slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		return s.Used && (s.Verdict == headings.Sizes || s.To() == takeoff.DimColumn(fittings.Width) || s.To() == takeoff.DimColumn(fittings.Diameter))
	})
	if !sized {
		return
	}
	stated := t.Maps(takeoff.StatedArea)
	t.areaOfAll()
	for i := range t.Specs {
		s := &t.Specs[i]
		asked := s.Verdict == headings.Asks && s.Ask.OnAreas() && (s.Heading.Said && s.Heading.Unit.Measure == takeoff.Areas || s.Figures && t.metric())
		named := s.Used && s.Verdict == headings.Known && s.To() == takeoff.DimColumn(fittings.GivenArea) &&
			!strings.EqualFold(s.Typed, s.To().Heading()) && slices.Index(headings.Tokens(s.Typed), "area") == 0
		if s.Fixed || asked && stated || !asked && !named {
			continue
		}
		if stated {
			t.Refuse(s, "stated_area_m2 or area_m2", "'"+s.Typed+"' stands beside sizes and a stated area, so it isn't used; write area_m2 if it gives the area of each instead of the sizes")
			continue
		}
		said := s.Heading.Said
		t.TakeFor(s, takeoff.StatedArea)
		s.Settled = !said
		t.Note("column '%s' is read as stated_area_m2, figures to check, as the sizes are there too; write area_m2 for areas of each, given instead of sizes", s.Typed)
	}
}

// areaOfAll leaves out a column of areas of each piece where another gives those of
// whole rows, which are what a stated area is held against.
func (t *Reading) areaOfAll() {
	total, each := -1, -1
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Fixed || !(s.Verdict == headings.Asks && s.Ask.OnAreas()) && !(s.Used && s.Verdict == headings.Known && s.To() == takeoff.DimColumn(fittings.GivenArea)) {
			continue
		}
		switch whole := slices.ContainsFunc(headings.Tokens(s.Typed), func(w string) bool { return t.Lex.Total(w) || slices.Contains(wholes, w) }); {
		case whole && total >= 0, !whole && each >= 0:
			return
		case whole:
			total = i
		default:
			each = i
		}
	}
	if total < 0 || each < 0 {
		return
	}
	t.Specs[each].Used, t.Specs[each].Verdict = false, headings.Unknown
}

// wholes are more words for a sum in a heading (from memory, unverified).
var wholes = []string{"gesamtflache", "totale", "totales", "totala", "totaal", "totaux"}

// metric reports sizes in mm, cm or m.
func (t *Reading) metric() bool {
	return !slices.ContainsFunc(t.Specs, func(s columns.Spec) bool {
		return s.Used && s.Measure == takeoff.Lengths && (s.Column.Unit == quantity.Inch || s.Column.Unit == quantity.Foot)
	})
}

// refuseTwins refuses columns that mean the same; of several note columns the
// first is used.
func (t *Reading) refuseTwins() {
	at := t.alike()
	for c, twins := range at {
		switch {
		case len(twins) < 2:
		case c == int(takeoff.Tag) && !t.Maps(takeoff.From) && !t.Specs[twins[0]].Fixed:
			t.leaveOut(twins[1:], "column '%s' is another for tags and isn't used")
		case c == int(takeoff.Note):
			t.leaveOut(twins[1:], "column '%s' is a second note column and isn't used")
		default:
			t.refuseAll(c, twins)
		}
	}
}

// alike lists the columns that mean each of ours, and behind these the whole
// cross-sections.
func (t *Reading) alike() (at [takeoff.NumColumns + 4][]int) {
	for i := range t.Specs {
		s := &t.Specs[i]
		switch {
		case s.Used && s.Verdict == headings.Sizes:
			size := int(takeoff.NumColumns) + int(s.Size)
			if s.Size == headings.LongSize {
				size = int(takeoff.NumColumns) + int(headings.OwnSize)
			}
			at[size] = append(at[size], i)
		case s.Used:
			at[s.To()] = append(at[s.To()], i)
		}
	}
	return at
}

// leaveOut takes columns out of use, with a note.
func (t *Reading) leaveOut(columns []int, format string) {
	for _, i := range columns {
		t.Specs[i].Used = false
		t.Note(format, t.Specs[i].Typed)
	}
}

// refuseAll refuses columns that mean the same.
func (t *Reading) refuseAll(c int, twins []int) {
	name := "the size"
	if c < int(takeoff.NumColumns) {
		name = takeoff.Column(c).Heading()
	}
	names := make([]string, len(twins))
	for k, i := range twins {
		names[k] = fmt.Sprintf("'%s' (column %d)", t.Specs[i].Typed, i+1)
	}
	t.Refuse(&t.Specs[twins[0]], "one column for "+name,
		strings.Join(names, " and ")+" both mean "+name+", so none of them is used; rename or remove all but one")
	for _, i := range twins[1:] {
		t.Specs[i].Used = false
	}
}

// RefuseBoth refuses a row of two tables that stand side by side.
func (t *Reading) RefuseBoth(r *takeoff.Row) {
	r.Refuse(takeoff.Kind, t.Place.Fault("", t.Twice, "one table on a sheet",
		fmt.Sprintf("'%s' and other headings stand there twice: two tables are side by side, so neither is read; put the second one below the first, or on a sheet of its own", t.Twice)))
}

// twoTables finds headings that stand there twice with others: two tables side by side, of
// which neither is read.
func (t *Reading) twoTables() {
	twins, first := 0, ""
	at := t.alike()
	for c, x := range at {
		if len(x) == 2 && c != int(takeoff.Note) && t.Specs[x[0]].Typed == t.Specs[x[1]].Typed && !t.Specs[x[0]].Fixed {
			if twins++; first == "" {
				first = t.Specs[x[0]].Typed
			}
		}
	}
	if t.TwoTables = twins > 2; !t.TwoTables {
		return
	}
	t.Twice = first
	for i := range t.Specs {
		t.Specs[i].Used, t.Specs[i].Verdict = false, headings.Unknown
	}
}

// doubtDepth refuses a bare D beside a width without a height: it may be the
// depth.
func (t *Reading) doubtDepth() {
	wide, high := takeoff.DimColumn(fittings.Width), takeoff.DimColumn(fittings.Height)
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Fixed || !bareD(s.Typed) || !t.Maps(wide) || t.Maps(high) {
			continue
		}
		if !t.depthByCells(s) {
			t.Refuse(s, "height_mm or diameter_mm",
				"'"+s.Typed+"' may be the depth or the diameter, so it isn't used; rename it height_mm or diameter_mm")
		}
	}
}

// bareD reports a heading that says no more than a D: D, D1 (mm), Size / D.
func bareD(typed string) bool {
	d := false
	for _, w := range headings.Tokens(typed) {
		switch _, unit := quantity.UnitOf(w); {
		case w == "d" || w == "d1":
			d = true
		case !unit && w != "size" && w != "duct" && w != "section":
			return false
		}
	}
	return d
}
