package programme_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"blankoff/planner/programme"
	"blankoff/takeoff/terms"
)

func moment(t testing.TB, s string) terms.Moment {
	t.Helper()
	m, ok := terms.ParseMoment(s)
	if !ok {
		t.Fatalf("%q is no moment", s)
	}
	return m
}

// Worked out by hand: 90 min in place, 10 min to move on a level, 20 to another,
// 420 min a day.
//
//	A  30 + 90            = 120, day 1 to 120
//	B  10 + 50 + 90       = 150, to 270
//	C  20 + 40 + 90       = 150, to 420: just fits
//	D  10 + 5 + 90        = 105, day 2
func TestDaysByHand(t *testing.T) {
	p := programme.Make([]programme.Test{
		{ID: "A", Level: "L1", Cuts: 10, Ends: 20}, {ID: "B", Level: "L1", Cuts: 50}, {ID: "C", Level: "L2", Ends: 40}, {ID: "D", Level: "L2", Ends: 5},
	}, make([]programme.Visit, 1), programme.Defaults())
	if len(p.Days) != 2 || p.Days[0].Minutes != 420 || p.Days[1].Minutes != 105 || p.CrewDays() != 4 {
		t.Fatalf("%+v", p.Days)
	}
	if p.Test != 360 || p.Cuts != 60 || p.Ends != 65 || p.Moving != 40 || p.Total() != 525 {
		t.Errorf("%g + %g + %g + %g = %g", p.Test, p.Cuts, p.Ends, p.Moving, p.Total())
	}
	if s := p.Stays[0]; s.Days != 2 || s.First.Given || s.Notice.Given || p.Days[0].On.Given {
		t.Errorf("no dates are known, and %+v", s)
	}
}

// Notice ten calendar days before 2026-03-04 is 2026-02-22; what fails on the
// second day and cures for 50 h, begun days counted whole, is tested on
// 2026-03-08 at the earliest.
func TestDates(t *testing.T) {
	set := programme.Defaults()
	set.NoticeDays, set.CureHours = 10, 50
	visits := []programme.Visit{{Earliest: moment(t, "2026-03-04"), Latest: moment(t, "2026-03-04")}, {Earliest: moment(t, "7"), Latest: moment(t, "9")}}
	tests := []programme.Test{
		{ID: "A", Ends: 300, Closed: moment(t, "2026-03-04")}, {ID: "B", Ends: 300, Closed: moment(t, "2026-03-04")}, {ID: "C", Visit: 1, Closed: moment(t, "7")},
	}
	p := programme.Make(tests, visits, set)
	if s := p.Stays[0]; s.Days != 2 || s.First.Text != "2026-03-04" || s.Notice.Text != "2026-02-22" || s.Begin.Text != "2026-03-03" {
		t.Errorf("%+v", s)
	}
	if d := p.Days[1]; d.On.Text != "2026-03-05" || d.Retest.Text != "2026-03-08" {
		t.Errorf("%+v", d)
	}
	if p.Slots[0].Late || !p.Slots[1].Late {
		t.Error("B comes a day after it is hidden, A doesn't")
	}
	if !p.Slots[0].Once || p.Slots[2].Once {
		t.Error("A is hidden before it could cure; of C nobody knows")
	}
	// Numbers may be stages: nothing is added to them.
	if s := p.Stays[1]; s.First.Text != "7" || s.Notice.Given || s.Begin.Given || p.Days[2].On.Given || p.Slots[2].Late || p.Slots[2].Move != 0 {
		t.Errorf("%+v, %+v", s, p.Days[2])
	}
}

// Where only the last day is told, notice is counted from the last day on which
// to begin: two days of work before it is hidden on 2026-03-04 begin on the 3rd.
func TestOnlyTheLastDay(t *testing.T) {
	set := programme.Defaults()
	set.NoticeDays = 3
	p := programme.Make([]programme.Test{{ID: "A", Ends: 300}, {ID: "B", Ends: 300}}, []programme.Visit{{Latest: moment(t, "2026-03-04")}}, set)
	if s := p.Stays[0]; s.First.Given || s.Begin.Text != "2026-03-03" || s.Notice.Text != "2026-02-28" || p.Days[0].On.Given {
		t.Errorf("%+v", s)
	}
}

// A test longer than a day goes on on the next ones, and only such a test does.
func TestLongerThanADay(t *testing.T) {
	p := programme.Make([]programme.Test{{ID: "A"}, {ID: "B", Ends: 900}, {ID: "C"}}, make([]programme.Visit, 1), programme.Defaults())
	b := p.Slots[1]
	if b.Day != 2 || b.Last != 4 || p.Slots[2].Day != 4 || len(p.Days) != 4 || p.Days[1].Minutes != 420 {
		t.Errorf("B from day %d to %d, C on day %d of %d", b.Day, b.Last, p.Slots[2].Day, len(p.Days))
	}
}

// TestFewestDays sets the days beside the fewest of every way to part the same
// order into days, and adds all minutes up another way.
func TestFewestDays(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		n := 1 + r.IntN(11)
		tests := make([]programme.Test, n)
		for i := range tests {
			tests[i] = programme.Test{ID: fmt.Sprint(i), Level: fmt.Sprint(r.IntN(2)), Cuts: float64(r.IntN(60)), Ends: float64(r.IntN(200))}
		}
		set := programme.Defaults()
		p := programme.Make(tests, make([]programme.Visit, 1), set)
		fewest := n
		for parted := range 1 << (n - 1) {
			days, used, ok := 1, 0.0, true
			for i, s := range p.Slots {
				if i > 0 && parted>>(i-1)&1 == 1 {
					days, used = days+1, 0
				}
				used += s.Minutes(set.TestMinutes)
				ok = ok && used <= set.DayMinutes
			}
			if ok {
				fewest = min(fewest, days)
			}
		}
		if len(p.Days) != fewest {
			t.Fatalf("%d days, %d are enough: %+v", len(p.Days), fewest, tests)
		}
		sum := 0.0
		for _, d := range p.Days {
			sum += d.Minutes
		}
		if math.Abs(sum-p.Total()) > 1e-6 {
			t.Fatalf("days come to %g min, the parts to %g", sum, p.Total())
		}
	}
}

func TestCheck(t *testing.T) {
	set := programme.Defaults()
	if err := set.Check(); err != nil || set.Rest() != 45 {
		t.Errorf("%v, %g min left", err, set.Rest())
	}
	set.TestMinutes = 44
	if set.Check() == nil {
		t.Error("30 min of set-up and 15 of hold in a test of 44 min")
	}
	for _, key := range []string{"day_minutes", "set_up", "move", "move_level", "crew", "cure_hours", "hold"} {
		if programme.Basis(key) == "" {
			t.Errorf("nothing is said of where %s comes from", key)
		}
	}
}
