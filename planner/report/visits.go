package report

import (
	"math"

	"blankoff/planner"
	"blankoff/planner/visits"
	"blankoff/takeoff/terms"
)

// Visits is when the sections can be tested. Days are as the schedule writes
// them; "" is any day.
type Visits struct {
	Now    []string `json:"now"`    // on the day of the plan
	Later  []string `json:"later"`  // agreed earlier, and not all of it is up yet
	Missed []string `json:"missed"` // hidden before the day of the plan, or never up together
	Done   []string `json:"done"`   // tested or passed, as the earlier plan says
	First  string   `json:"first"`  // the section still to be tested that is hidden first
	Closed string   `json:"closed"` // and when
	List   []Visit  `json:"visits"` // the fewest; the missed have none
}

// Visit is one visit to the site.
type Visit struct {
	Earliest string   `json:"earliest"` // all of its sections are up from this day
	Latest   string   `json:"latest"`   // the first of them is hidden after it
	Sections []string `json:"sections"`
}

// visitsOf works out when the sections can be tested, those of a sample where
// there is one; nil where the schedule doesn't tell.
func visitsOf(p *planner.Plan, only *Sample) *Visits {
	v := &Visits{Now: []string{}, Later: []string{}, Missed: []string{}, Done: []string{}, List: []Visit{}}
	on, from := p.Settings.On, math.Inf(-1)
	if on.Given {
		from = on.Value
	}
	timed, takes, first := on.Given, only.takes(), math.Inf(1)
	var windows []visits.Window
	var open []*planner.Section
	for i := range p.Sections {
		s := &p.Sections[i]
		timed = timed || s.Ready != "" || s.Closed != ""
		switch {
		case s.Status == "passed" || s.Status == "tested":
			v.Done = append(v.Done, s.ID)
			continue
		case !takes(s.ID):
			continue
		}
		w := visits.Window{Ready: day(s.Ready, math.Inf(-1)), Closed: day(s.Closed, math.Inf(1))}
		windows, open = append(windows, w), append(open, s)
		switch {
		case math.Max(w.Ready, from) > w.Closed:
			continue // among the missed
		case on.Given && w.Ready > from:
			v.Later = append(v.Later, s.ID)
		case on.Given:
			v.Now = append(v.Now, s.ID)
		}
		if w.Closed < first {
			first, v.First, v.Closed = w.Closed, s.ID, s.Closed
		}
	}
	if !timed {
		return nil
	}
	list, missed := visits.Least(windows, from)
	for _, i := range missed {
		v.Missed = append(v.Missed, open[i].ID)
	}
	for _, x := range list {
		one := Visit{Sections: []string{}}
		if x.Earliest == from {
			one.Earliest = on.Text
		}
		one.addAll(open, windows, x)
		v.List = append(v.List, one)
	}
	return v
}

// takes says whether a section may be among the tests: of a sample only what it
// takes.
func (s *Sample) takes() func(id string) bool {
	if s == nil {
		return func(string) bool { return true }
	}
	drawn := map[string]bool{}
	see(drawn, s.IDs)
	return func(id string) bool { return drawn[id] }
}

// addAll adds the sections of a visit.
func (o *Visit) addAll(open []*planner.Section, windows []visits.Window, x visits.Visit) {
	for _, i := range x.Tests {
		o.add(open[i], windows[i], x)
	}
}

// add adds a section to a visit, and the visit's days where they are the
// section's.
func (o *Visit) add(s *planner.Section, w visits.Window, x visits.Visit) {
	o.Sections = append(o.Sections, s.ID)
	if w.Ready == x.Earliest {
		o.Earliest = s.Ready
	}
	if w.Closed == x.Latest {
		o.Latest = s.Closed
	}
}

// day is the day that a text of the schedule tells, or otherwise.
func day(text string, otherwise float64) float64 {
	if m, ok := terms.ParseMoment(text); ok && m.Given {
		return m.Value
	}
	return otherwise
}
