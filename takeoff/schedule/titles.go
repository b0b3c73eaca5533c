package schedule

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/headrow"
	"blankoff/takeoff/schedule/told"
)

// titleBelow takes the only cell of a row for the title of the table whose headings
// stand below it.
func (t *table) titleBelow(number int, cells []string, text string) {
	t.entitle(number, text)
	if t.titled = true; t.uncounted(number, cells, text) {
		return
	}
	t.told.Add("titles of tables among the rows passed over, the first '%s'", celltext.Shorten(text), number)
	t.Look.Kept = append(t.Look.Kept, number)
	t.Look.Class(told.RemarkRow, number, cells)
}

// entitle takes a line for the name of the rows below it, up to the next such line: what
// it says of their shape, their kind, their unit and how many times they are there.
func (t *table) entitle(number int, text string) {
	f := &t.Search
	f.Texts = append(slices.DeleteFunc(f.Texts, func(x headrow.Line) bool { return x.Among }), headrow.Line{Row: number, Text: text, Among: true})
	t.over.doubt = doubt{}
	t.doubtSubheading(number, text)
	t.doubtMany(number, text)
	t.tellShape()
	t.tellKind()
}

// headedBy takes the system and the level from lines right above the headings that give
// them as sub-headings do: System: S1, Level 2.
func (t *table) headedBy() {
	t.sheetNamed()
	texts := t.Search.Texts
	for _, x := range texts[max(0, len(texts)-3):] {
		words := headings.Tokens(x.Text)
		before, after, colon := strings.Cut(x.Text, ":")
		if len(words) > 6 || strings.Contains(after, ":") || !colon && (len(words) > 3 || !strings.ContainsAny(x.Text, "0123456789")) {
			continue
		}
		if p, rest := t.Lex.Place(x.Text); len(p) == 1 && (!colon || rest != x.Text && len(headings.Tokens(before)) < 3) {
			switch p[0] {
			case "system":
				t.over.met, t.over.text[0], t.over.outer = true, rest, max(t.over.outer, 1)
			case "level":
				t.over.met, t.over.text[1] = true, rest
				if t.over.outer == 0 {
					t.over.outer = 2
				}
			}
		}
	}
}

// sheetNamed takes the system or the level from the name of the sheet, where no column
// gives it: Level 2, Supply.
func (t *table) sheetNamed() {
	words := headings.Tokens(t.Place.Sheet)
	if len(words) == 0 || len(words) > 3 {
		return
	}
	p, _ := t.Lex.Place(t.Place.Sheet)
	if len(p) != 1 {
		return
	}
	for i, c := range subColumns {
		if p[0] == c.Heading() && !t.Maps(c) {
			t.over.met, t.over.sheet[i] = true, t.Place.Sheet
		}
	}
}

// tellKind finds out what kind all pieces are of, where no column says it and a title, or
// the name of the sheet, does: Rectangular ducts, Bends.
func (t *table) tellKind() {
	t.kindTold, t.kindSays = "", ""
	if t.noKind = !t.Maps(takeoff.Kind); !t.noKind || slices.ContainsFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.To() == takeoff.DimColumn(fittings.GivenArea) }) {
		return
	}
	texts := []string{t.Place.Sheet}
	for _, x := range t.Search.Texts {
		if x.Among { // it ends what stands above
			texts = nil
		}
		texts = append(texts, x.Text)
	}
	for _, text := range slices.Backward(texts[max(0, len(texts)-8):]) {
		for _, part := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("-–:;,()|/", r) }) {
			if w := t.Kinds().TitleKind(celltext.Trim(part)); w != "" {
				t.kindTold, t.kindSays = w, celltext.Shorten(celltext.Trim(text))
				return
			}
		}
	}
}

// nameKind gives a row the kind that its title says, or asks for it.
func (t *table) nameKind(r *takeoff.Row) {
	if r.Text[takeoff.Kind] != "" || r.Refused(takeoff.Kind) {
		return
	}
	if t.kindTold == "" {
		r.Refuse(takeoff.Kind, t.Place.Fault(takeoff.Kind.Heading(), "", "a column of kinds",
			"no column says what kind of piece this is; add a column kind (straight, bend, reducer and so on), or write it above the table, as Straight ducts"))
		return
	}
	r.Text[takeoff.Kind], t.loud = t.kindTold, false
	t.told.Add("kinds that no column gives, from '%s'", t.kindSays, r.At.Row)
}
