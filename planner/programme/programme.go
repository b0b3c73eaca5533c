package programme

import (
	"math"

	"blankoff/takeoff/terms"
)

// Test is one test to be laid out. Tests come in the order in which they are
// made, those of one visit together.
type Test struct {
	ID     string
	Level  string       // where the rig stands
	Cuts   float64      // minutes of blanking its sides of the cuts
	Ends   float64      // and of capping its open ends and its bounds
	Visit  int          // number in the list of visits
	Closed terms.Moment // the last day on which it can be tested
}

// Visit is when a visit can be made.
type Visit struct {
	Earliest, Latest terms.Moment
}

// Slot is a test in its place.
type Slot struct {
	Test
	Move float64 // to it from the test before, minutes; none to the first of a visit
	Day  int     // on which it begins, from 1
	Last int     // on which it ends: another day only where it is longer than a day
	Late bool    // the days of its visit run on until after it is hidden
	Once bool    // it is hidden before it could be tested again, were it to fail
}

// Minutes are all of a test in its place, of so many minutes in place.
func (s *Slot) Minutes(test float64) float64 { return s.Move + s.Cuts + s.Ends + test }

// Day is a day of work.
type Day struct {
	Number  int // from 1, over all visits
	Visit   int
	Tests   []int // slots that begin or go on on it
	Minutes float64
	On      terms.Moment // where the visit has a date and days follow each other
	Retest  terms.Moment // earliest day for what failed on it and was resealed
}

// Stay is a visit laid out.
type Stay struct {
	Days   int
	First  terms.Moment // its first day at the earliest
	Begin  terms.Moment // its first day at the latest, before anything of it is hidden
	Notice terms.Moment // to be given by then; not given without a date or notice days
}

// Programme is the tests laid out.
type Programme struct {
	Settings Settings
	Slots    []Slot
	Days     []Day
	Stays    []Stay // by visit
	Test     float64
	Cuts     float64
	Ends     float64
	Moving   float64
}

// Total is all minutes: tests, blanking and moving.
func (p *Programme) Total() float64 { return p.Test + p.Cuts + p.Ends + p.Moving }

// CrewDays are the days of all people together.
func (p *Programme) CrewDays() int { return len(p.Days) * p.Settings.Crew }

// Make lays tests out over working days, in the order given. Every visit begins
// a new day; within it a test is begun on the day if it can be finished on it,
// else on the next. Days of a visit are taken to follow each other.
func Make(tests []Test, visits []Visit, set Settings) *Programme {
	p := &Programme{Settings: set, Stays: make([]Stay, len(visits))}
	for i, t := range tests {
		s := Slot{Test: t}
		first := i == 0 || tests[i-1].Visit != t.Visit
		if !first {
			s.Move = set.Move
			if tests[i-1].Level != t.Level {
				s.Move = set.MoveLevel
			}
		}
		p.Test, p.Cuts, p.Ends, p.Moving = p.Test+set.TestMinutes, p.Cuts+s.Cuts, p.Ends+s.Ends, p.Moving+s.Move
		p.place(s, first)
	}
	for v := range p.Stays {
		p.dateVisit(v, visits[v])
	}
	for i := range p.Slots {
		s := &p.Slots[i]
		d := &p.Days[s.Last-1]
		s.Late = d.On.Given && s.Closed.Given && d.On.Value > s.Closed.Value
		s.Once = d.Retest.Given && s.Closed.Given && d.Retest.Value > s.Closed.Value
	}
	return p
}

// slack forgives the noise of adding minutes up.
const slack = 1e-9

// place puts a test on the last day or on new ones.
func (p *Programme) place(s Slot, first bool) {
	need, day := s.Minutes(p.Settings.TestMinutes), p.Settings.DayMinutes
	if first || p.Days[len(p.Days)-1].Minutes+need > day+slack {
		p.open(s.Visit)
	}
	s.Day = len(p.Days)
	for {
		d := &p.Days[len(p.Days)-1]
		now := math.Min(need, day-d.Minutes)
		d.Tests, d.Minutes = append(d.Tests, len(p.Slots)), d.Minutes+now
		if need -= now; need <= slack {
			break
		}
		p.open(s.Visit)
	}
	s.Last = len(p.Days)
	p.Slots = append(p.Slots, s)
}

func (p *Programme) open(visit int) {
	p.Days = append(p.Days, Day{Number: len(p.Days) + 1, Visit: visit})
	p.Stays[visit].Days++
}

// dateVisit dates a visit and its days, as far as its own days are dates.
func (p *Programme) dateVisit(v int, when Visit) {
	s := &p.Stays[v]
	s.First = when.Earliest
	_, dated := when.Earliest.Later(0)
	s.Begin, _ = when.Latest.Later(1 - max(1, s.Days))
	if first := when.Earliest; p.Settings.NoticeDays > 0 {
		if !dated {
			first = s.Begin
		}
		s.Notice, _ = first.Later(-p.Settings.NoticeDays)
	}
	if !dated {
		return
	}
	cure, n := int(math.Ceil(p.Settings.CureHours/24)), 0
	for i := range p.Days {
		if d := &p.Days[i]; d.Visit == v {
			d.On, _ = when.Earliest.Later(n)
			d.Retest, _ = d.On.Later(cure)
			n++
		}
	}
}
