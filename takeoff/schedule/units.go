package schedule

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// sheetUnits takes the unit of sizes that a line above the headings gives, for
// columns that give none. A line that gives several, or two lines that differ,
// leave such columns unusable: nothing says which unit is theirs.
func (t *table) sheetUnits() {
	var u quantity.Unit
	said, doubt, row := "", false, 0
	for _, title := range t.search.texts {
		x, says := statedUnit(t.lex, title.text)
		if !says {
			continue
		}
		doubt = doubt || x.Name == "" || said != "" && x != u
		u, said, row = x, shorten(title.text), title.row
	}
	if said == "" {
		t.doubtTitles()
		return
	}
	if !doubt {
		t.unitAgainst(row, said, u)
	}
	var names []string
	for i := range t.specs {
		s := &t.specs[i]
		if !s.used || s.Said || s.Measure != takeoff.Lengths {
			continue
		}
		names = append(names, "'"+s.Typed+"'")
		if doubt {
			s.used = false
			continue
		}
		s.Column.Unit, s.Said, s.says = u, true, "a line above the headings"
	}
	switch {
	case doubt && len(names) > 0:
		p := t.place
		p.Row = row
		t.info.Faults = append(t.info.Faults, p.Fault("", said, "one unit for all sizes, or one in each heading",
			fmt.Sprintf("'%s' above the headings doesn't say one unit for all sizes, so %s can't be used; write the unit in each heading, as width_mm", said, strings.Join(names, ", "))))
	case len(names) > 0:
		t.note("'%s' above the headings gives the unit of %s", said, strings.Join(names, ", "))
	}
}

// statedUnit finds the unit that a line gives for all sizes: "all dimensions in
// mm". says is true for a line that is about units; u is empty where it names
// none or several.
func statedUnit(lex *headings.Lexicon, text string) (u quantity.Unit, says bool) {
	words := headings.Tokens(text)
	about := false
	for _, w := range words {
		about = about || lex.Dimension(w) || slices.Contains(measures, w)
	}
	if !about || len(words) > 12 {
		return u, false
	}
	several := false
	for i, w := range words {
		x, ok := quantity.UnitOf(w)
		if !ok || x.Measure != takeoff.Lengths || i == 0 || w == "in" && i < len(words)-1 && words[i-1] != "in" {
			continue
		}
		before := words[i-1]
		if !slices.Contains(unitAfter, before) && !(len(words) <= 5 && (lex.Dimension(before) || slices.Contains(measures, before))) {
			continue
		}
		several = several || says && x != u
		u, says = x, true
	}
	if several {
		u = quantity.Unit{}
	}
	return u, says
}

// unitAfter are the words before the unit in a line that gives it for all sizes.
var unitAfter = []string{"in", "en", "i", "as", "are", "and", "or", "und", "et", "y", "e", "och"}

// measures are more words for what a line on units is about, in six languages
// (from memory, unverified).
var measures = []string{"angaben", "angabe", "dim", "dims", "sizes", "measurements", "cotes", "misura", "misure", "medida", "medidas", "matt", "matten", "mattenhet", "maten", "masseinheit", "massangabe", "massangaben", "measure", "longueurs", "valeurs", "valores", "acotado"}

// loneUnit is a unit that stands by itself or in brackets.
var loneUnit = regexp.MustCompile(`(?i)^\s*(cm|inch|inches|ft|feet)\.?\s*$|[(\[]\s*(?:in\s+)?(cm|inch|inches|ft|feet)\s*[)\]]|\b(?:in|en|i)\s+(cm|inches|feet)\b`)

// unitBehind is a unit at the end of a sub-heading.
var unitBehind = regexp.MustCompile(`(?i)(?:[-–:,]|\b(?:in|en|i))\s*(cm|inch|inches|ft|feet|metres|meters)\.?\s*$|[(\[]\s*(?:in\s+)?(cm|inch|inches|ft|feet)\s*[)\]]\s*$`)

// doubtSubheading finds fault with a sub-heading that names another unit than that
// in which the rows below it are read.
func (t *table) doubtSubheading(number int, text string) {
	m := unitBehind.FindStringSubmatch(text)
	if m == nil {
		return
	}
	u, ok := quantity.UnitOf(m[1] + m[2])
	for i := range t.specs {
		if s := &t.specs[i]; ok && s.used && s.Measure == takeoff.Lengths && s.Column.Unit == u {
			return
		}
	}
	p, said := takeoff.Place{File: t.place.File, Sheet: t.place.Sheet, Row: number}, shorten(text)
	t.info.Faults = append(t.info.Faults, p.Fault("", said, "the units of the headings",
		fmt.Sprintf("'%s' names a unit in which no column is read; write the unit in the headings, or behind each size", said)))
}

// doubtTitles asks about a line above the headings that names a unit other than
// that in which columns would be read that give none.
func (t *table) doubtTitles() {
	titles := t.search.texts
	if c := t.info.cover; c != nil {
		titles = append(slices.Clip(titles), *c)
	}
	for _, title := range titles {
		m := loneUnit.FindStringSubmatch(title.text)
		if m == nil {
			continue
		}
		u, ok := quantity.UnitOf(m[1] + m[2] + m[3])
		var names []string
		for i := range t.specs {
			if s := &t.specs[i]; ok && s.used && !s.Said && s.Measure == takeoff.Lengths && s.Column.Unit != u {
				names, s.used = append(names, "'"+s.Typed+"'"), false
			}
		}
		if len(names) == 0 {
			continue
		}
		p, said := t.place, shorten(title.text)
		p.Row = title.row
		if title.sheet != "" {
			p.Sheet = title.sheet
		}
		t.info.Faults = append(t.info.Faults, p.Fault("", said, "the unit in each heading",
			fmt.Sprintf("'%s' above the headings names %s, and they name none, so %s can't be used; write the unit in each heading, as width_%s", said, u.Name, strings.Join(names, ", "), u.Name)))
		return
	}
}

// unitAgainst finds fault with a line on units that all headings contradict which
// name one: somebody is wrong by a factor. The headings rule.
func (t *table) unitAgainst(row int, said string, u quantity.Unit) bool {
	var names []string
	in := ""
	for i := range t.specs {
		s := &t.specs[i]
		if !s.used || s.Measure != takeoff.Lengths || s.fixed {
			continue
		}
		if !s.Said || s.Column.Unit == u {
			return false
		}
		names, in = append(names, "'"+s.Typed+"'"), s.Column.Unit.Name
	}
	if len(names) == 0 {
		return false
	}
	p := takeoff.Place{File: t.place.File, Sheet: t.place.Sheet, Row: row}
	t.info.Faults = append(t.info.Faults, p.Fault("", said, "the unit that the headings name, "+in,
		fmt.Sprintf("'%s' says %s, and %s say another unit, in which they are read; correct the line or the headings", said, u.Name, strings.Join(names, ", "))))
	return true
}

// unitBelow deals with a line on units among or below the rows: it mustn't say
// something else than how the rows were read.
func (t *table) unitBelow(number int, cells []string, text string) {
	u, _ := statedUnit(t.lex, text)
	short := shorten(text)
	against := u.Name != "" && t.unitAgainst(number, short, u)
	for i := range t.specs {
		s := &t.specs[i]
		if !against && s.used && s.Measure == takeoff.Lengths && !(s.fixed && s.Said) && !t.lex.Read(s.Typed).Said && s.Column.Unit != u {
			t.info.Faults = append(t.info.Faults, takeoff.Place{File: t.place.File, Sheet: t.place.Sheet, Row: number}.Fault("", short, "the unit that the columns were read in",
				fmt.Sprintf("'%s' stands among the rows, and '%s' is read in %s; write the unit in each heading, as width_mm", short, s.Typed, s.Column.Unit.Name)))
			break
		}
	}
	t.told.add("lines about units among the rows, the first '%s'", short, number)
	t.look.class(RemarkRow, number, cells)
}

// noteUnits says which columns are read in a unit that nobody stated.
func (t *table) noteUnits() {
	for _, m := range [...]takeoff.Measure{takeoff.Lengths, takeoff.Areas, takeoff.Pressure} {
		var names []string
		for _, s := range t.specs {
			if s.used && !s.Said && s.Measure == m {
				names = append(names, "'"+s.Typed+"'")
			}
		}
		if len(names) > 0 {
			t.note("no unit is given for %s: read as %s", strings.Join(names, ", "), quantity.Default(m).Name)
		}
	}
}

// rowsWord writes a list of row numbers in words: "row 4", "rows 1 to 3".
func rowsWord(rows []int) string {
	n := len(rows)
	switch {
	case n == 1:
		return fmt.Sprintf("row %d", rows[0])
	case rows[n-1]-rows[0] == n-1:
		return fmt.Sprintf("rows %d to %d", rows[0], rows[n-1])
	}
	return fmt.Sprintf("%d rows from %d to %d", n, rows[0], rows[n-1])
}

// times writes how often: "once", "12 times".
func times(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}

// tally counts what happens row by row, to be told once at the end.
type tally []*tallied

type tallied struct {
	format, about string
	rows          []int // the first and the last
	count         int
}

// add counts once what format says of about, in a row.
func (y *tally) add(format, about string, row int) {
	i := y.of(format, about)
	if i < 0 {
		i = len(*y)
		*y = append(*y, &tallied{format: format, about: about, rows: []int{row, row}})
	}
	x := (*y)[i]
	x.count++
	x.rows[1] = row
}

// merge adds what was counted further down.
func (y *tally) merge(below tally) {
	for _, x := range below {
		y.add(x.format, x.about, x.rows[0])
		i := y.of(x.format, x.about)
		(*y)[i].count += x.count - 1
		(*y)[i].rows[1] = x.rows[1]
	}
}

// of is where something is counted, or -1.
func (y *tally) of(format, about string) int {
	return slices.IndexFunc(*y, func(x *tallied) bool {
		return x.format == format && (x.about == about || strings.Contains(format, "the first"))
	})
}

// noteCounts tells what was counted so far.
func (t *table) noteCounts() {
	t.noteWords()
	for _, x := range t.told {
		what := x.format
		if x.about != "" {
			what = fmt.Sprintf(x.format, x.about)
		}
		where := fmt.Sprintf("row %d", x.rows[0])
		if x.count > 1 {
			where = fmt.Sprintf("%d, in rows %d to %d", x.count, x.rows[0], x.rows[1])
		}
		t.note("%s: %s", what, where)
	}
	t.told = nil
	for i, c := range subColumns {
		if n := t.over.rows[i]; n > 0 {
			t.note("the %s of %s is taken from sub-headings", c.Heading(), plural(n, "row"))
		}
	}
	t.over.rows = [2]int{}
}

func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
