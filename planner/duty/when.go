package duty

import (
	"fmt"
	"math"

	"blankoff/takeoff"
	"blankoff/takeoff/terms"
)

// When is when a piece or a section can be tested: from ready, when all of it is
// up, until closed, when the first of it is hidden. Both are days
// since 1970-01-01, or the numbers of the schedule, with its own text beside
// them: "" where it says nothing, and then the day is infinite.
type When struct {
	Ready, Closed         float64
	ReadyText, ClosedText string
}

// Always is a time without bounds: minus to plus infinity, no texts.
func Always() When { return When{Ready: math.Inf(-1), Closed: math.Inf(1)} }

// With narrows a time by that of a row: the later ready, the earlier closed.
func (s When) With(it *takeoff.Item) When {
	if m := it.Ready; m.Given && m.Value > s.Ready {
		s.Ready, s.ReadyText = m.Value, m.Text
	}
	if m := it.Closed; m.Given && m.Value < s.Closed {
		s.Closed, s.ClosedText = m.Value, m.Text
	}
	return s
}

// Empty reports whether there is no such time: it is closed before it is ready.
// Both on one day isn't empty.
func (s When) Empty() bool { return s.Ready > s.Closed }

// apart says that two rows are never up at one time, or "".
func apart(a, b *takeoff.Item) string {
	if s := Always().With(a).With(b); s.Empty() {
		return fmt.Sprintf("one is closed on %s, the other ready on %s", s.ClosedText, s.ReadyText)
	}
	return ""
}

// onTerms refuses a day that the schedule's times can't be held against.
func onTerms(t *takeoff.Takeoff, on terms.Moment) error {
	same, timed := t.Tells(on)
	switch {
	case !on.Given:
		return nil
	case !timed:
		return fmt.Errorf("day %s: no row says when it is ready or closed; fill in one of the two headings, or plan without a day", on.Text)
	case !same:
		return fmt.Errorf("day %s: the schedule tells times in another way; write a date where it has dates, a number where it has numbers", on.Text)
	}
	return nil
}

// await leaves out a row that isn't up on the day of the plan. That is no fault.
// A row of a firm section stays in it: a pass isn't void because of a date.
func (d *Rows) await(i int, it *takeoff.Item) {
	on := d.set.On
	if _, bad := d.refused[i]; bad || d.set.Planned[it.Name()] || !on.Given || !it.Ready.Given || it.Ready.Value <= on.Value {
		return
	}
	d.refused[i] = "not up on " + on.Text + "; ready on " + it.Ready.Text
	d.waiting[i] = true
}
