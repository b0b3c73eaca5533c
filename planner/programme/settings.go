package programme

import "fmt"

// Settings are what the programme is laid out with. Every default is an
// assumption unless [Basis] names a source.
type Settings struct {
	TestMinutes float64 // whole time of one test in place: set-up, raising pressure, steadying, hold, reading, letting down
	SetUp       float64 // of that, setting the rig up
	Hold        float64 // and holding the pressure
	Move        float64 // from one test to the next on the same level
	MoveLevel   float64 // where the level changes
	DayMinutes  float64 // of work on site in a day
	Crew        int     // people
	CureHours   float64 // from resealing to the next test
	NoticeDays  int     // calendar days from notice to visit; 0: not stated
}

// Defaults are the settings when nothing is said.
func Defaults() Settings {
	return Settings{TestMinutes: 90, SetUp: 30, Hold: 15, Move: 10, MoveLevel: 20, DayMinutes: 420, Crew: 2, CureHours: 48}
}

// Rest is what a test's minutes leave for raising the pressure, steadying,
// reading and letting down; negative where set-up and hold don't fit in.
func (s Settings) Rest() float64 { return s.TestMinutes - s.SetUp - s.Hold }

// Check refuses a set-up and a hold that don't fit in the minutes of a test.
func (s Settings) Check() error {
	if s.Rest() < 0 {
		return fmt.Errorf("a test of %g min has no room for a set-up of %g and a hold of %g; expected %g min or more", s.TestMinutes, s.SetUp, s.Hold, s.SetUp+s.Hold)
	}
	return nil
}

// assumption marks a default that nobody has published.
const assumption = "assumption, no source"

// Basis says where the default of a figure comes from. The keys are those of
// the job file.
func Basis(key string) string {
	switch key {
	case "set_up":
		return "a Polish testing firm's note on durations gives 30 min to set up, 15 to 30 to the first reading, about 60 to the test and 15 to 30 to strip (second-hand)"
	case "hold":
		return assumption + "; " + Holds
	case "crew":
		return assumption + ": one at the rig, one who looks for leaks"
	case "cure_hours":
		return "at least 48 h before pressure testing, and 24 h for a water-based mastic to dry, as reported from sealant data sheets (second-hand); longer in cold or damp, less where only a gasket or a cap is put right"
	}
	return assumption
}

// Holds says which practices hold how long.
const Holds = "5 min is usual (common practice, no source); 15 min, then off to zero, up again and read again, in method statements of the UK kind (second-hand); 30 min in one of the US kind (second-hand)"
