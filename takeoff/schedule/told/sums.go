package told

import (
	"fmt"
	"hash/fnv"
	"math"
	"regexp"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
)

// stretch is a row with a length: the mark of its kind and its cross-section, and how long all its
// pieces are together, m.
type stretch struct {
	mark   uint32
	length float64
}

// markRun takes a row into the lengths of its sheet by kind and cross-section, h so far of
// these.
func (p *pieces) markRun(r *takeoff.Row, mark uint32) {
	c := takeoff.DimColumn(fittings.Length)
	if !r.Has(c) {
		return
	}
	many := 1.0
	if r.Has(takeoff.Quantity) {
		many = r.Number[takeoff.Quantity]
	}
	p.runs = append(p.runs, stretch{mark, many * r.Number[c]})
}

// markTag is the mark of a tag by itself.
func markTag(tag string) uint32 {
	h := fnv.New32a()
	h.Write([]byte(tag))
	return h.Sum32()
}

// lengthsBy are the lengths of sheets by kind and cross-section. once reports that each of
// them stands on one row only, as in a list that sums up.
func lengthsBy(sheets ...*Sheet) (by map[uint32]float64, once bool) {
	by, once = map[uint32]float64{}, true
	for _, s := range sheets {
		for _, x := range s.marks.runs {
			_, known := by[x.mark]
			once = once && !known
			by[x.mark] += x.length
		}
	}
	return by, once
}

// leastSums is of how many cross-sections a sheet has to give the lengths of another, and
// sumsRound by how much they may differ, m, as they may be rounded. Common practice, no source.
const (
	leastSums = 3
	sumsRound = 0.006
)

// sumsUp reports that lengths are those of others by cross-section, all of them.
func sumsUp(by, of map[uint32]float64) bool {
	if len(by) < leastSums || len(by) != len(of) {
		return false
	}
	for mark, length := range by {
		if other, ok := of[mark]; !ok || math.Abs(other-length) > sumsRound {
			return false
		}
	}
	return true
}

// mostSummed is how many sheets are held against each other.
const mostSummed = 100

// sumsOf finds the sheet, or all others, of which s gives the lengths by cross-section; "" where
// it doesn't, or where both are of places of their own.
func sumsOf(lex *headings.Lexicon, read []*Sheet, s *Sheet) string {
	by, once := lengthsBy(s)
	if !once || len(by) < leastSums || len(read) > mostSummed {
		return ""
	}
	var others []*Sheet
	before := true
	for _, o := range read {
		if before = before && o != s; o == s || nameOf(lex, s.Name).apart(nameOf(lex, o.Name)) || o.Mapped {
			continue
		}
		others = append(others, o)
		if of, single := lengthsBy(o); sumsUp(by, of) && (!single || before && !slices.Equal(s.marks.bare, o.marks.bare)) {
			return fmt.Sprintf("sheet '%s'", o.Name)
		}
	}
	if of, _ := lengthsBy(others...); len(others) > 1 && sumsUp(by, of) {
		return "the other sheets"
	}
	return ""
}

// lastOf parts the last letter or figures off the name of a sheet: L2 | B.
var lastOf = regexp.MustCompile(`^(.+?)[\s._(-]+([A-Za-z]|\d{1,2})\)?$`)

// revisedBy finds the sheet of which s seems to be an earlier revision: their names differ in
// a letter or figures at the end, a line on one of them names that as its revision, and most
// tags of s stand on it too.
func revisedBy(read []*Sheet, s *Sheet) *Sheet {
	m := lastOf.FindStringSubmatch(s.Name)
	if m == nil {
		return nil
	}
	for _, o := range read {
		x := lastOf.FindStringSubmatch(o.Name)
		if x == nil || o == s || x[1] != m[1] || len(x[2]) < len(m[2]) || len(x[2]) == len(m[2]) && strings.ToUpper(x[2]) <= strings.ToUpper(m[2]) {
			continue
		}
		if (o.says(x[2]) || s.says(m[2])) && sharesTags(s, o) {
			return o
		}
	}
	return nil
}

// says reports a line of the sheet that names a revision.
func (s *Sheet) says(rev string) bool {
	return slices.ContainsFunc(append(slices.Clip(s.Titles), s.Lines...), func(text string) bool {
		for _, m := range revisionLine.FindAllStringSubmatch(text, -1) {
			if strings.EqualFold(m[1], rev) {
				return true
			}
		}
		return false
	})
}

// revisionLine names a revision in seven languages (from memory, unverified).
var revisionLine = regexp.MustCompile(`(?i)\b(?:rev(?:ision|isione|isión|idering)?|index|indice|índice|ind|stand|ausgabe|issue|version|versione|versión|utgåva|uitgave|wijziging|ändring)[\s.:_-]*([a-z]|\d{1,2})\b`)

// sharesTags reports that more than half of the tags of a sheet stand on another.
func sharesTags(s, o *Sheet) bool {
	slices.Sort(o.marks.tags)
	both := 0
	for _, m := range s.marks.tags {
		if _, ok := slices.BinarySearch(o.marks.tags, m); ok {
			both++
		}
	}
	return 2*both > len(s.marks.tags)
}

// mostLinesSaid is how many remarks of a sheet are kept.
const mostLinesSaid = 20

// Say keeps a remark among the rows.
func (s *Sheet) Say(text string) {
	if s.Among && len(s.Lines) < mostLinesSaid {
		s.Lines = append(s.Lines, text)
	}
}

// A sheet is another again, of a later month or stage, where so many rows and so great a share of
// them have its tags and cross-sections. Common practice, no source.
const (
	leastRemade = 5
	mostlyAgain = 0.8
)

// remakes finds the sheet before s, of no other place, of which s has most tags with their
// cross-sections, of several sorts, though not the very rows.
func remakes(lex *headings.Lexicon, read []*Sheet, s *Sheet) *Sheet {
	name := nameOf(lex, s.Name)
	for _, o := range read {
		if o == s {
			return nil
		}
		if o.rows == s.rows || len(s.marks.named) < leastRemade || len(o.marks.named) < leastRemade || (name.place || nameOf(lex, o.Name).place || name.apart(nameOf(lex, o.Name))) && !(dated.MatchString(s.Name) && dated.MatchString(o.Name)) {
			continue
		}
		slices.Sort(o.marks.named)
		both := 0
		for _, m := range s.marks.named {
			if _, ok := slices.BinarySearch(o.marks.named, m); ok {
				both++
			}
		}
		if float64(both) >= mostlyAgain*float64(min(len(s.marks.named), len(o.marks.named))) && sections(s) > 2 {
			return o
		}
	}
	return nil
}

// dated is the name of a sheet that is a day or a month.
var dated = regexp.MustCompile(`^\W*(?:20\d\d[-._ ]\d{1,2}|\d{1,2}[-._ ]\d{1,2}(?:[-._ ]\d{2,4})?)`)

// sections is how many cross-sections the rows of a sheet have.
func sections(s *Sheet) int {
	by, _ := lengthsBy(s)
	return len(by)
}
