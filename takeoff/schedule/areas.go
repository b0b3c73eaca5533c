package schedule

import (
	"fmt"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/wording"
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
			if is = wording.Name(t.Lex, text); len(t.areas) > mostMet || t.areas == nil {
				t.areas = map[string]int{}
			}
			t.areas[strings.Clone(text)] = is
		}
		switch is {
		case wording.IsSum:
			r.Faults = append(r.Faults, t.Place.Fault(c.Heading(), celltext.Shorten(text), "a row of a piece",
				fmt.Sprintf("'%s' seems to be a total, and the row has the sizes of a piece; take the sizes out, or name the %s", celltext.Shorten(text), c.Heading())))
		case wording.IsSeveral:
			if r.Number[takeoff.Quantity] > 1 || c == takeoff.System && wording.NumberList.MatchString(text) { // they may be all of them
				continue
			}
			r.Faults = append(r.Faults, t.Place.Fault(c.Heading(), celltext.Shorten(text), "one "+c.Heading(),
				fmt.Sprintf("'%s' seems to name several, and the row may count for each; write a row for each, or how many under quantity", celltext.Shorten(text))))
		}
	}
}

// mostMet is how many names are remembered.
const mostMet = 4096

// doubtfulNames reports that the chunk has met a name that may be no name of a system or
// level: its rows are looked at one by one then.
func (c *chunk) doubtfulNames() bool {
	names := c.batch.Names()
	if c.named > len(names) { // they were forgotten meanwhile
		c.named = 0
	}
	doubtful := false
	for _, name := range names[c.named:] {
		doubtful = doubtful || wording.Name(c.table.Lex, name) != wording.IsName
	}
	c.named = len(names)
	return doubtful
}
