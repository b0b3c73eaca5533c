package schedule

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// watch is what is looked for in a column that isn't used: it may say that a row
// doesn't count, how many there are, or in which unit the sizes are.
type watch struct {
	keeps        string // see Lexicon.Keeps
	counts       bool   // it may hold counts, as far as was seen
	units        bool   // it may hold units
	filled, most int
	least, first int
	last         int
	gaps         bool // its figures don't just follow each other
}

// watchUnused finds out what the columns that aren't used may say.
func (t *table) watchUnused() {
	many := t.maps(takeoff.Quantity)
	t.watched = 0
	t.beforeText()
	for i := range t.specs {
		s := &t.specs[i]
		s.watch = watch{}
		if s.used || strings.HasPrefix(s.Typed, AddedMark) {
			continue
		}
		words := headings.Tokens(s.Typed)
		known := slices.ContainsFunc(words, func(w string) bool { return t.lex.Unused(w) && (len(words) == 1 || !t.lex.Total(w)) })
		unsure := (s.Verdict == headings.Unknown || s.Verdict == headings.Blank) && !s.Heading.Said && !known
		if unsure && !s.fixed && t.lex.Counts(s.Typed) {
			t.refuse(s, "quantity", fmt.Sprintf("'%s' seems to say how many there are, and isn't a known heading; write quantity, how many pieces the row stands for in all, or take the column out", s.Typed))
			continue
		}
		s.watch = watch{keeps: t.lex.Keeps(s.Typed), counts: unsure && !many && !s.fixed, units: unsure, least: 1000}
	}
}

// unused looks at a cell of a column that isn't used.
func (t *table) unused(r *takeoff.Row, i int, s *spec, cell string) {
	t.unheaded(i, s)
	w := &s.watch
	if w.keeps != "" && cell != s.asIs {
		if t.strikes(w.keeps, cell) {
			t.strike(r, s.Typed, cell)
			return
		}
		s.asIs = cell
	}
	if len(cell) < 20 && !digit(cell[0]) && cell != s.last.from {
		unit := w.units && t.unitBeside(r, s, cell)
		if shape := t.shapeBeside(r, s, cell); !unit && !shape {
			s.last.from = cell
		}
	}
	if s.Verdict == headings.Blank {
		t.strays = append(t.strays, cell)
	}
	if !w.counts {
		return
	}
	n, err := strconv.Atoi(cell)
	if err != nil || n < 0 || n > 999 {
		w.counts = false
		return
	}
	w.gaps = w.gaps || w.filled > 0 && n != w.last+1
	if w.filled == 0 {
		w.first = n
	}
	w.filled, w.last, w.most, w.least = w.filled+1, n, max(w.most, n), min(w.least, n)
}

// merge adds what was seen further down.
func (w *watch) merge(below *watch) {
	w.counts = w.counts && below.counts
	if below.filled == 0 {
		return
	}
	if w.filled == 0 {
		w.first = below.first
	}
	w.gaps = w.gaps || below.gaps || w.filled > 0 && below.first != w.last+1
	w.filled, w.last, w.most, w.least = w.filled+below.filled, below.last, max(w.most, below.most), min(w.least, below.least)
}

// strikes reports a cell that says its row doesn't count.
func (t *table) strikes(keeps, cell string) bool {
	no := slices.Contains(noes, strings.ToLower(cell))
	switch keeps {
	case "struck":
		return !no
	case "kept":
		return no || t.lex.Struck(cell)
	}
	return t.lex.Struck(cell)
}

// noes are words for no, in seven languages (from memory, unverified).
var noes = []string{"no", "n", "false", "0", "-", "–", "nein", "falsch", "non", "faux", "nee", "onwaar", "nej", "falskt", "falso"}

// strike refuses a row of which something says that it doesn't count.
func (t *table) strike(r *takeoff.Row, heading, cell string) {
	short := shorten(cell)
	r.Faults = append(r.Faults, t.place.Fault(heading, short, "a row that counts",
		fmt.Sprintf("'%s' seems to say that the row doesn't count; take the row out, write out under scope, or reword it", short)))
}

// unitBeside refuses a row beside whose sizes another unit stands than that in which
// they would be read, and reports whether one does.
func (t *table) unitBeside(r *takeoff.Row, s *spec, cell string) bool {
	u, ok := quantity.UnitOf(cell)
	if !ok || u.Measure != takeoff.Lengths || len(cell) == 1 && cell != "m" {
		return false
	}
	for i := range t.specs {
		if x := &t.specs[i]; x.used && !x.Said && x.Measure == takeoff.Lengths && x.Column.Unit != u {
			r.Faults = append(r.Faults, t.place.Fault(s.Typed, cell, "the unit in each heading",
				fmt.Sprintf("'%s' in '%s' may be the unit of the sizes, and '%s' is read in %s; write the unit in each heading, as width_%s", cell, s.Typed, x.Typed, x.Column.Unit.Name, x.Column.Unit.Name)))
			return true
		}
	}
	return false
}

// shapeBeside refuses a row beside which a shape stands that nobody reads, and reports
// whether one does.
func (t *table) shapeBeside(r *takeoff.Row, s *spec, cell string) bool {
	if t.maps(takeoff.Shape) {
		return false
	}
	word, ok := t.lex.Exact(takeoff.Shape, cell)
	if !ok {
		word = cell
	}
	shape, ok := fittings.ParseShape(word)
	if ok = ok && shape == fittings.FlatOval; ok {
		r.Faults = append(r.Faults, t.place.Fault(s.Typed, shorten(cell), "shape as the heading",
			fmt.Sprintf("'%s' in '%s' seems to be the shape of the piece; write shape as the heading, or take it out", shorten(cell), s.Typed)))
	}
	return ok
}

// toldCounts finds fault with columns that aren't used and seem to hold counts, where
// no column says how many there are.
func (t *table) toldCounts() {
	for i := range t.specs {
		s := &t.specs[i]
		w := &s.watch
		if !w.counts || 2*w.filled < t.watched || w.most < 2 || w.least > 5 || !w.gaps && w.filled > 1 {
			continue
		}
		name := s.Typed
		if name == "" {
			name = fmt.Sprintf("column %d", i+1)
		}
		at := takeoff.Place{File: t.place.File, Sheet: t.place.Sheet, Row: t.headRow}
		t.info.Faults = append(t.info.Faults, at.Fault(name, s.Typed, "quantity, or another heading",
			fmt.Sprintf("'%s' holds whole numbers and no column says how many there are, so every row was taken for one piece; write quantity if that is what it is, or take the column out", name)))
	}
	t.watched = 0
}

// doubtRow refuses a row that may not be what it seems: one struck out, a total with
// the sizes of a piece, or several pieces under one tag.
func (t *table) doubtRow(r *takeoff.Row) {
	if kind := r.Text[takeoff.Kind]; kind != "" && doubtfulKind(kind) {
		r.Faults = append(r.Faults, t.place.Fault(takeoff.Kind.Heading(), shorten(kind), "a kind of piece",
			fmt.Sprintf("'%s' may be struck out or in doubt; write the kind by itself, or take the row out", shorten(kind))))
	}
	t.doubtCells(r)
	if t.loud {
		return
	}
	tag, note := r.Text[takeoff.Tag], r.Text[takeoff.Note]
	if note == "" && plainTag(tag) {
		return // most rows
	}
	switch {
	case tag != "" && (strings.HasPrefix(tag, "~~") || t.lex.StruckWithin(tag) || t.lex.Struck(tag)):
		t.strike(r, takeoff.Tag.Heading(), tag)
	case note != "" && t.lex.Struck(note):
		t.strike(r, takeoff.Note.Heading(), note)
	case tag != "" && t.lex.TotalName(tag), note != "" && tag == "" && t.lex.Total(note):
		word := tag
		if tag == "" {
			word = note
		}
		r.Faults = append(r.Faults, t.place.Fault("", shorten(word), "a piece, or a total without kind and size",
			fmt.Sprintf("'%s' seems to head a total, and the row has the kind and the size of a piece; leave them empty, or take the row out", shorten(word))))
	case note != "" && r.Text[takeoff.Quantity] == "" && manyNoted.MatchString(note):
		r.Faults = append(r.Faults, t.place.Fault(takeoff.Note.Heading(), shorten(note), "how many under quantity",
			fmt.Sprintf("'%s' seems to say how many there are, and the row counts for one; write how many under quantity, or reword it", shorten(note))))
	case r.Number[takeoff.Quantity] <= 1 && severalTags(tag):
		r.Faults = append(r.Faults, t.place.Fault(takeoff.Tag.Heading(), shorten(tag), "one piece, or how many under quantity",
			fmt.Sprintf("'%s' seems to name several pieces, and the row counts for one; write how many under quantity, or a row for each", shorten(tag))))
	}
}

// plainTag reports a tag of letters, figures and dashes that ends in a figure and has
// none but figures behind dashes: it is nothing but a name.
func plainTag(tag string) bool {
	dash := false
	for i := range len(tag) {
		switch c := tag[i]; {
		case digit(c) || c == '.' || c == '_' || c == '/':
			dash = false
		case c == '-':
			dash = true
		case c|0x20 < 'a' || c|0x20 > 'z' || dash:
			return false
		}
	}
	return tag == "" || digit(tag[len(tag)-1])
}

// doubtfulKind reports a kind with signs around it: ~~straight~~, -straight, straight?
func doubtfulKind(kind string) bool {
	return kind[len(kind)-1] == '?' || strings.IndexByte("~-/([?*", kind[0]) >= 0
}

// manyNoted is a remark that says how many: 4 off, x4 typical.
var manyNoted = regexp.MustCompile(`(?i)^\(?(?:[x×]\s*[1-9]\d{0,2}\b|[1-9]\d{0,2}\s*(?:off|no\.?s?|nr|x|×|stk|pcs)\b)`)

// doubtCells refuses a row with a cell that is struck out, sums up others, or is a
// count or a length merged over rows below it.
func (t *table) doubtCells(r *takeoff.Row) {
	used := func(i int) *spec {
		if i < len(t.specs) && t.specs[i].used {
			return &t.specs[i]
		}
		return nil
	}
	for _, i := range t.marked.Struck {
		if s := used(i); s != nil {
			r.Faults = append(r.Faults, t.place.Fault(s.Typed, "", "a row that counts",
				fmt.Sprintf("the cell of '%s' is struck out; take the row out, write out under scope, or take the line through it off", s.Typed)))
			break
		}
	}
	for _, i := range t.marked.Sums {
		if s := used(i); s != nil && s.Measure != takeoff.Text {
			r.Faults = append(r.Faults, t.place.Fault(s.Typed, "", "a figure of one row",
				fmt.Sprintf("the cell of '%s' is a subtotal by its formula, and the row has the kind of a piece; leave kind and size empty, or type the value", s.Typed)))
			break
		}
	}
	for _, i := range t.marked.Over {
		if s := used(i); s != nil && s.doubtful() {
			t.doubtMerged(r, s, r.Text[s.to()])
		}
	}
}

// severalTags reports a tag as A1-A4, A5 to A7 or A20 (x3).
func severalTags(tag string) bool {
	at := 0
	for at < len(tag) && tag[at] != ' ' && tag[at] != '-' && tag[at] != '(' && tag[at] != '.' && tag[at] < 0x80 {
		at++
	}
	if at == 0 || at == len(tag) {
		return false
	}
	if open := strings.IndexByte(tag[at:], '('); open >= 0 {
		in := strings.ToLower(strings.Trim(tag[at+open:], "() "))
		return len(in) > 1 && (in[0] == 'x' && allDigits(in[1:]) || in[len(in)-1] == 'x' && allDigits(in[:len(in)-1]))
	}
	next := at
	for next < len(tag) && (tag[next] == ' ' || tag[next] == '-' || tag[next] == '.') {
		next++
	}
	if next == len(tag) || digit(tag[next]) {
		return false // most tags
	}
	before, from := cutDigits(tag[:at])
	rest := strings.TrimLeft(tag[at:], " -.–…")
	for _, word := range [...]string{"to ", "bis ", "t/m ", "à ", "till ", "al ", "hasta "} {
		rest = strings.TrimPrefix(rest, word)
	}
	if before == "" || from == "" || !strings.HasPrefix(rest, before) {
		return false
	}
	after, to := cutDigits(rest)
	return after == before && len(from) == len(to) && from < to
}

func allDigits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// cutDigits parts the figures at the end of a name from what is before them.
func cutDigits(name string) (before, figures string) {
	n := len(name)
	for n > 0 && digit(name[n-1]) {
		n--
	}
	return name[:n], name[n:]
}
