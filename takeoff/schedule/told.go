package schedule

import "blankoff/takeoff/schedule/told"

// noteCounts tells what was counted so far.
func (t *table) noteCounts() {
	t.noteWords()
	for _, x := range t.told {
		t.Note("%s", x)
	}
	t.told = nil
	for i, c := range subColumns {
		if n := t.over.rows[i]; n > 0 {
			t.Note("the %s of %s is taken from sub-headings", c.Heading(), told.Plural(n, "row"))
		}
	}
	for i, c := range subColumns {
		if n := t.over.named[i]; n > 0 {
			t.Note("the %s of %s is taken from the name of the sheet", c.Heading(), told.Plural(n, "row"))
		}
	}
	t.over.rows, t.over.named = [2]int{}, [2]int{}
}
