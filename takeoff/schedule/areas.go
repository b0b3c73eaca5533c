package schedule

import (
	"fmt"
	"strconv"
	"strings"

	"blankoff/takeoff"
)

// doubtAreas refuses a row whose system, level or place is a total, or names several.
func (t *table) doubtAreas(r *takeoff.Row) {
	clean := true
	for _, c := range [...]takeoff.Column{takeoff.System, takeoff.Level, takeoff.PlaceOnSite} {
		text := r.Text[c]
		switch {
		case text == "" || len(text) > maxTitle || strings.ContainsAny(text[:1], "@=+-"):
		case c != takeoff.PlaceOnSite && t.lex.Total(text):
			clean = false
			r.Faults = append(r.Faults, t.place.Fault(c.Heading(), shorten(text), "a row of a piece",
				fmt.Sprintf("'%s' seems to be a total, and the row has the sizes of a piece; take the sizes out, or name the %s", shorten(text), c.Heading())))
		case c == takeoff.Level && severalNumbers(text) && r.Number[takeoff.Quantity] <= 1, c != takeoff.PlaceOnSite && severalLevels.MatchString(text), r.Number[takeoff.Quantity] <= 1 && many.MatchString(text):
			clean = false
			r.Faults = append(r.Faults, t.place.Fault(c.Heading(), shorten(text), "one "+c.Heading(),
				fmt.Sprintf("'%s' seems to name several, and the row may count for each; write a row for each, or how many under quantity", shorten(text))))
		}
	}
	if clean {
		t.areas = [3]string{r.Text[takeoff.System], r.Text[takeoff.Level], r.Text[takeoff.PlaceOnSite]}
	}
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

// maxTitle is the length of a text that is looked at for what it says.
const maxTitle = 80
