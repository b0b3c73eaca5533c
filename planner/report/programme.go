package report

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/planner/job"
	"blankoff/planner/programme"
	"blankoff/takeoff/terms"
)

// Programme is the tests laid out over days and visits. Minutes, but for the
// hours of curing; days as the schedule writes them, "" where they aren't known.
type Programme struct {
	TestMinutes float64         `json:"test_minutes"` // of one test in place
	SetUp       float64         `json:"set_up_minutes"`
	Hold        float64         `json:"hold_minutes"`
	Rest        float64         `json:"rest_minutes"` // raising pressure, steadying, reading, letting down
	Parted      bool            `json:"parted"`       // a test has room for its set-up and its hold
	AtLeast     bool            `json:"at_least"`     // the blanks of groupings aren't known and aren't in it
	Tests       float64         `json:"tests_minutes"`
	Cuts        float64         `json:"cuts_minutes"` // blanking the cuts' sides
	Ends        float64         `json:"ends_minutes"` // capping open ends and bounds of the scope
	Moving      float64         `json:"moving_minutes"`
	Total       float64         `json:"total_minutes"`
	Days        int             `json:"days"`
	Crew        int             `json:"crew"`
	CrewDays    int             `json:"crew_days"`
	TestsADay   float64         `json:"tests_a_day"`
	CureHours   float64         `json:"cure_hours"`
	NoticeDays  int             `json:"notice_days"`
	Slots       []Slot          `json:"tests"`
	DayList     []ProgrammeDay  `json:"day_list"`
	Stays       []ProgrammeStay `json:"visits"`
	Left        []LeftTest      `json:"not_in_programme"`
	Flags       []string        `json:"flags"`
	Figures     []Figure        `json:"figures"` // what it was laid out with, and where each comes from
}

// Slot is one test in its place.
type Slot struct {
	Section string  `json:"section"`
	Visit   int     `json:"visit"` // from 1
	Day     int     `json:"day"`   // from 1, over all visits
	LastDay int     `json:"last_day"`
	On      string  `json:"on"`
	Level   string  `json:"level"` // of the rig
	Move    float64 `json:"moving_minutes"`
	Cuts    float64 `json:"cuts_minutes"`
	Ends    float64 `json:"ends_minutes"`
	SetUp   float64 `json:"set_up_minutes"`
	Hold    float64 `json:"hold_minutes"`
	Rest    float64 `json:"rest_minutes"`
	Minutes float64 `json:"minutes"`
	Retest  string  `json:"retest_from"` // if it fails and is resealed on the day
}

// ProgrammeDay is one day of work.
type ProgrammeDay struct {
	Day      int      `json:"day"`
	Visit    int      `json:"visit"`
	On       string   `json:"on"`
	Minutes  float64  `json:"minutes"`
	Sections []string `json:"sections"`
	Retest   string   `json:"retest_from"`
}

// ProgrammeStay is one visit.
type ProgrammeStay struct {
	Visit  int    `json:"visit"`
	Tests  int    `json:"tests"`
	Days   int    `json:"days"`
	First  string `json:"first_day"`
	Latest string `json:"latest"`   // the first of its sections is hidden after it
	Begin  string `json:"begin_by"` // so that its days end by then
	Notice string `json:"notice_by"`
}

// LeftTest is a section without a place in the programme.
type LeftTest struct {
	Section string `json:"section"`
	Why     string `json:"why"`
}

// Figure is what the programme was laid out with.
type Figure struct {
	What  string `json:"what"`
	Value string `json:"value"`
	Basis string `json:"basis"`
}

// AddProgramme lays the tests out in an order of section ids; nil: the plan's
// own. Tests of one visit stay together, visits in their order. Sections that are
// done, that no day is left for, or that a sample doesn't take have no place.
func (v *Plan) AddProgramme(j job.Job, order []string) {
	set := j.Programme
	set.TestMinutes = v.Settings.TestMinutes
	o := &Programme{Parted: set.Check() == nil, Slots: []Slot{}, DayList: []ProgrammeDay{}, Stays: []ProgrammeStay{}, Left: []LeftTest{}, Flags: []string{}}
	v.Programme = o
	tests, stays := v.testsInOrder(order)
	p := programme.Make(tests, stays, set)
	o.TestMinutes, o.Rest = set.TestMinutes, set.TestMinutes
	if o.Parted {
		o.SetUp, o.Hold, o.Rest = set.SetUp, set.Hold, set.Rest()
	}
	o.Tests, o.Cuts, o.Ends, o.Moving, o.Total = p.Test, p.Cuts, p.Ends, p.Moving, p.Total()
	o.Days, o.Crew, o.CrewDays, o.CureHours, o.NoticeDays = len(p.Days), set.Crew, p.CrewDays(), set.CureHours, set.NoticeDays
	if o.Days > 0 {
		o.TestsADay = float64(len(tests)) / float64(o.Days)
	}
	o.addDays(p)
	o.addStays(p, stays)
	for _, s := range v.ToTest() {
		o.AtLeast = o.AtLeast || s.Grouping
	}
	o.flag(p)
	o.Figures = figures(&j, set)
}

// testsInOrder lists the tests to be laid out and the visits, and notes what is
// left out.
func (v *Plan) testsInOrder(order []string) ([]programme.Test, []programme.Visit) {
	stays, visit := v.stays()
	place := map[string]int{}
	for i := range v.Sections {
		place[v.Sections[i].ID] = len(order) + i
	}
	for i, id := range order {
		place[id] = i
	}
	tests := make([]programme.Test, 0, len(v.Sections))
	for i := range v.Sections {
		s := &v.Sections[i]
		if s.NotTested != "" {
			v.Programme.Left = append(v.Programme.Left, LeftTest{s.ID, s.NotTested})
			continue
		}
		t := programme.Test{ID: s.ID, Level: s.RigLevel, Visit: visit[s.ID]}
		t.Closed, _ = terms.ParseMoment(s.Closed)
		for k := range s.Blanks {
			if b := &s.Blanks[k]; b.Why == "cut" {
				t.Cuts += b.Minutes
			} else {
				t.Ends += b.Minutes
			}
		}
		tests = append(tests, t)
	}
	slices.SortStableFunc(tests, func(a, b programme.Test) int {
		if a.Visit != b.Visit {
			return a.Visit - b.Visit
		}
		return place[a.ID] - place[b.ID]
	})
	return tests, stays
}

// stays are the visits, and which of them each section belongs to; one without
// days where the schedule tells none.
func (v *Plan) stays() (list []programme.Visit, visit map[string]int) {
	visit = map[string]int{}
	if v.Visits == nil {
		return make([]programme.Visit, 1), visit
	}
	for i, x := range v.Visits.List {
		var one programme.Visit
		one.Earliest, _ = terms.ParseMoment(x.Earliest)
		one.Latest, _ = terms.ParseMoment(x.Latest)
		list = append(list, one)
		for _, id := range x.Sections {
			visit[id] = i
		}
	}
	return list, visit
}

func (o *Programme) addDays(p *programme.Programme) {
	o.DayList = slices.Grow(o.DayList, len(p.Days))
	for i := range p.Days {
		d := &p.Days[i]
		one := ProgrammeDay{Day: d.Number, Visit: d.Visit + 1, On: d.On.Text, Minutes: d.Minutes, Sections: []string{}, Retest: d.Retest.Text}
		for _, k := range d.Tests {
			one.Sections = append(one.Sections, p.Slots[k].ID)
		}
		o.DayList = append(o.DayList, one)
	}
	o.Slots = slices.Grow(o.Slots, len(p.Slots))
	for i := range p.Slots {
		s := &p.Slots[i]
		o.Slots = append(o.Slots, Slot{
			Section: s.ID, Visit: s.Visit + 1, Day: s.Day, LastDay: s.Last, On: p.Days[s.Day-1].On.Text, Level: s.Level, Move: s.Move, Cuts: s.Cuts, Ends: s.Ends,
			SetUp: o.SetUp, Hold: o.Hold, Rest: o.Rest, Minutes: s.Minutes(o.TestMinutes), Retest: p.Days[s.Last-1].Retest.Text,
		})
	}
}

func (o *Programme) addStays(p *programme.Programme, stays []programme.Visit) {
	for i := range p.Stays {
		s := &p.Stays[i]
		one := ProgrammeStay{Visit: i + 1, Days: s.Days, First: s.First.Text, Latest: stays[i].Latest.Text, Begin: s.Begin.Text, Notice: s.Notice.Text}
		for k := range p.Slots {
			if p.Slots[k].Visit == i {
				one.Tests++
			}
		}
		if one.Tests > 0 || len(p.Stays) == 1 {
			o.Stays = append(o.Stays, one)
		}
	}
}

// flag says what a reader of the programme has to settle.
func (o *Programme) flag(p *programme.Programme) {
	if days := p.Packed(); days != nil {
		var text []string
		for _, d := range days {
			text = append(text, strings.Join(d, ", "))
		}
		o.Flags = append(o.Flags, fmt.Sprintf("in another order the tests fit into %s: %s; the order here needs the fewest blanks, and then moves the fewest", count(len(days), "day"), strings.Join(text, " | ")))
	}
	var late, only []string
	for i := range p.Slots {
		s := &p.Slots[i]
		if s.Last > s.Day {
			o.Flags = append(o.Flags, fmt.Sprintf("%s takes %.0f min, longer than a day of %g: it goes on on the next; cap its ends beforehand, or with more people", s.ID, s.Minutes(o.TestMinutes), p.Settings.DayMinutes))
		}
		if s.Late {
			late = append(late, s.ID)
		} else if s.Once {
			only = append(only, s.ID)
		}
	}
	if len(late) > 0 {
		o.Flags = append(o.Flags, "the days of its visit run past the day on which it is hidden: "+strings.Join(late, ", ")+"; begin with what is up before the rest, add a crew, or have it closed later")
	}
	if len(only) > 0 {
		o.Flags = append(o.Flags, "hidden before they could cure and be tested again, were they to fail: "+strings.Join(only, ", ")+"; test them as soon as they are up, in a visit of their own if need be, or have them closed later")
	}
	if o.AtLeast {
		o.Flags = append(o.Flags, "the blanks of groupings aren't known, so the time of fitting them isn't in it")
	}
	if !o.Parted {
		o.Flags = append(o.Flags, fmt.Sprintf("%g min of a test have no room for a set-up of %g and a hold of %g min, so the parts of a test aren't told apart; raise --test-minutes, or put your own set_up and hold in a job file", o.TestMinutes, p.Settings.SetUp, p.Settings.Hold))
	}
}
