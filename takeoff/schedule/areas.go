package schedule

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"blankoff/takeoff"
)

// doubtAreas refuses a row whose system or level is a total, or names several.
func (t *table) doubtAreas(r *takeoff.Row) {
	for _, c := range subColumns {
		text := r.Text[c]
		if text == "" {
			continue
		}
		is, met := t.areas[text]
		if !met {
			if is = t.doubtfulArea(text); len(t.areas) > mostMet || t.areas == nil {
				t.areas = map[string]int{}
			}
			t.areas[strings.Clone(text)] = is
		}
		switch is {
		case isSum:
			r.Faults = append(r.Faults, t.place.Fault(c.Heading(), shorten(text), "a row of a piece",
				fmt.Sprintf("'%s' seems to be a total, and the row has the sizes of a piece; take the sizes out, or name the %s", shorten(text), c.Heading())))
		case isSeveral:
			if r.Number[takeoff.Quantity] > 1 || c == takeoff.System && numberList.MatchString(text) { // they may be all of them
				continue
			}
			r.Faults = append(r.Faults, t.place.Fault(c.Heading(), shorten(text), "one "+c.Heading(),
				fmt.Sprintf("'%s' seems to name several, and the row may count for each; write a row for each, or how many under quantity", shorten(text))))
		}
	}
}

// mostMet is how many names are remembered.
const mostMet = 4096

// What the name of a system or level may be.
const (
	isName = iota
	isSum
	isSeveral
)

// doubtfulArea finds out what the name of a system or level may be.
func (t *table) doubtfulArea(text string) int {
	switch {
	case text == "" || len(text) > maxTitle || strings.ContainsAny(text[:1], "@=+-"):
	case t.lex.Total(text):
		return isSum
	case severalLevels.MatchString(text), severalNumbers(text), many.MatchString(text):
		return isSeveral
	}
	return isName
}

// doubtfulNames reports that the chunk has met a name that may be no name of a system or
// level: its rows are looked at one by one then.
func (c *chunk) doubtfulNames() bool {
	names := c.batch.Names()
	if c.named > len(names) { // they were forgotten meanwhile
		c.named = 0
	}
	doubtful := false
	for _, name := range names[c.named:] {
		doubtful = doubtful || c.table.doubtfulArea(name) != isName
	}
	c.named = len(names)
	return doubtful
}

// severalNumbers reports a list or a range of levels without a word: 1-5, 2, 3, 4.
func severalNumbers(text string) bool {
	if !numberList.MatchString(text) {
		return false
	}
	last := -1
	for _, figures := range strings.FieldsFunc(text, func(r rune) bool { return r < '0' || r > '9' }) {
		n, _ := strconv.Atoi(figures)
		if n <= last || len(figures) > 1 && figures[0] == '0' {
			return false
		}
		last = n
	}
	return true
}

// mayCount reports a place that manyAt may find to stand for several: most don't.
func mayCount(text string) bool {
	if len(text) > maxTitle {
		return false
	}
	for i := range len(text) {
		if c := text[i] | 0x20; c == 'x' || c == 'y' || text[i] == "×"[0] {
			return true
		}
	}
	return false
}

// manyAt is a place that stands for several.
var manyAt = regexp.MustCompile(`(?i)\btyp(?:ical)?\b.*\d|(?:^|[\s(])[x×]\s*[2-9]\b`)

// maxTitle is the length of a text that is looked at for what it says.
const maxTitle = 80
