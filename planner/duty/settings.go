package duty

import (
	"errors"
	"fmt"

	"blankoff/planner/network"
	"blankoff/planner/partition"
	"blankoff/planner/rig"
	"blankoff/planner/tightness"
	"blankoff/planner/units"
	"blankoff/takeoff/terms"
)

// Settings are what a plan is made for.
type Settings struct {
	Rigs        rig.Fleet         // at least one
	Scheme      string            // for rows without one
	Own         *tightness.Scheme // a scheme of the user's own, found by its name
	SchemeGiven bool              // Scheme was asked for, not only the default
	Class       string            // for rows without one; "" none
	TestPa      float64           // for rows without one, Pa; 0 none
	Sign        string            // for rows without one: positive or negative
	DuctClass   float64           // pressure class of the duct, for rows that don't state it, Pa; 0 not stated
	SignGiven   bool              // Sign was asked for, not only the default
	Aim         partition.Aim
	TestMinutes float64 // price of one test, minutes
	MinArea     float64 // m2; a smaller section counts as under range
	MaxArea     float64 // m2; 0 none
	Headroom    float64 // how many times its limit a section may leak and still be read, >= 1
	HoldBoth    bool    // hold the exact area as well as that on the basis
	SlipJoints  string  // open or bladder: they may be blanked; made-up: they can't be
	// PressureRule is how rows without a test pressure get one: "" by TestPa
	// alone, design by the highest usual step of the scheme that the design
	// pressure and the ceilings allow, operating by the mean operating pressure of
	// the system.
	PressureRule string
	OwnCuts      []OwnCut        // joints that a person wants cut
	OnlyOwn      bool            // and no others
	Planned      map[string]bool // names of rows in a firm section, which are planned whatever the day
	Kept         []KeptSection   // of an earlier plan, held fast
	Old          []KeptSection   // all of an earlier plan: a section of the same pieces has the same id
	NextID       int             // first number of an id that is free; 0: no earlier plan
	By           string          // "", level or stage: sections end at its changes
	Ahead        bool            // a test is made ready while the one before it runs
	On           terms.Moment    // the day on which the tests are planned: what isn't up by then is left out
	Prices       network.Prices
	// Progress, where there is one, is told what is being divided: the system, and
	// which of how many stretches.
	Progress func(system string, stretch, of int)
	Units    units.System // of the figures in sentences
}

// Defaults are the settings of a plan when nothing is said.
func Defaults() Settings {
	return Settings{Scheme: "EN", Sign: "positive", TestMinutes: 90, Headroom: 1.5, SlipJoints: "open", Prices: network.DefaultPrices()}
}

// Check refuses settings that can't be meant; the error says which, and what
// was expected.
func (s Settings) Check() error {
	switch {
	case len(s.Rigs) == 0:
		return errors.New("a plan needs a rig: give --rig and a rig file")
	case !(s.Headroom >= 1 && s.Headroom <= 100):
		return fmt.Errorf("headroom %g: expected 1 to 100, how many times its limit a section may leak and still be read", s.Headroom)
	case !(s.MinArea >= 0 && s.MinArea <= 1e9 && s.MaxArea >= 0 && s.MaxArea <= 1e9) || s.MaxArea > 0 && s.MaxArea < s.MinArea:
		return fmt.Errorf("least area %g and greatest area %g m2: expected 0 or more, the greatest not below the least", s.MinArea, s.MaxArea)
	case !(s.TestMinutes >= 0 && s.TestMinutes <= 10000):
		return fmt.Errorf("test minutes %g: expected 0 to 10000", s.TestMinutes)
	case !(s.DuctClass >= 0 && s.DuctClass <= 100000):
		return fmt.Errorf("duct class %g: expected more than 0 and at most 100000 Pa", s.DuctClass)
	case !(s.TestPa >= 0 && s.TestPa <= 100000):
		return fmt.Errorf("test pressure %g: expected more than 0 and at most 100000 Pa, with the side in --sign", s.TestPa)
	case s.SlipJoints != "open" && s.SlipJoints != "bladder" && s.SlipJoints != "made-up":
		return fmt.Errorf("slip joints %q: expected open, bladder or made-up", s.SlipJoints)
	case s.PressureRule != "" && s.PressureRule != "design" && s.PressureRule != "operating":
		return fmt.Errorf("pressure rule %q: expected design or operating", s.PressureRule)
	case s.By != "" && s.By != "level" && s.By != "stage":
		return fmt.Errorf("by %q: expected level or stage", s.By)
	}
	return nil
}
