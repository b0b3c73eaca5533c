package price

import (
	"slices"

	"blankoff/planner/programme"
)

// Size is blanks of one size.
type Size struct {
	Text    string  `json:"size"`
	Shape   string  `json:"shape"`
	Longest float64 `json:"longest_mm"` // longer side or diameter; 0: not known
	Girth   float64 `json:"girth_m"`
	Makes   int     `json:"-"` // the most in use at once in the plan's tests; 0: as the tests show
	Most    int     `json:"-"` // the same were all of its sections tested
}

// Test is one test to be priced.
type Test struct {
	programme.Test
	Area     float64 // m2
	Rig      string
	Fits     []int // blanks by size
	Grouping bool  // its inner blanks aren't known
}

// Work is the tests to be priced, in the order in which they are made.
type Work struct {
	Tests  []Test
	Visits []programme.Visit
	Set    programme.Settings
	Sizes  []Size
	Rigs   []string // of the whole plan: those that no test has are hired for what comes on top
	Ahead  bool     // each test is made ready while the one before it runs
	// OwnBlanks says that the client makes and fits the blanks: they cost neither
	// money nor time.
	OwnBlanks bool
}

// Lay lays the tests out over days.
func (w *Work) Lay() *programme.Programme { return lay(w, w.Tests, w.Visits) }

func lay(w *Work, tests []Test, visits []programme.Visit) *programme.Programme {
	list := make([]programme.Test, len(tests))
	for i := range tests {
		list[i] = tests[i].Test
		if w.OwnBlanks {
			list[i].Cuts, list[i].Ends = 0, 0
		}
	}
	if len(tests) == 0 {
		visits = nil
	}
	return programme.Make(list, visits, w.Set)
}

// Stage lays out tests that come on top as one visit of their own.
func (w *Work) Stage(tests []Test) *programme.Programme {
	list := slices.Clone(tests)
	for i := range list {
		list[i].Visit = 0
	}
	return lay(w, list, make([]programme.Visit, 1))
}

// RigDays is the days on which a rig is on site, and the visits to which it
// comes: in a visit from its first test to its last.
type RigDays struct {
	Rig          string
	Days, Visits int
}

// Hired counts the days of every rig, in the order in which they first come, with
// those of the plan that don't come at all behind them.
func (w *Work) Hired(p *programme.Programme) []RigDays {
	out := Rigs(w.Tests, p)
	for _, name := range w.Rigs {
		if !slices.ContainsFunc(out, func(r RigDays) bool { return r.Rig == name }) {
			out = append(out, RigDays{Rig: name})
		}
	}
	return out
}

// Rigs counts the days of every rig, in the order in which they first come.
func Rigs(tests []Test, p *programme.Programme) []RigDays {
	type stay struct {
		rig   string
		visit int
	}
	first, last := map[stay]int{}, map[stay]int{}
	var stays []stay
	for i := range p.Slots {
		s := stay{tests[i].Rig, p.Slots[i].Visit}
		if s.rig == "" { // no rig can judge it
			continue
		}
		if _, ok := first[s]; !ok {
			first[s] = p.Slots[i].Day
			stays = append(stays, s)
		}
		last[s] = max(last[s], p.Slots[i].Last)
	}
	var out []RigDays
	for _, s := range stays {
		k := slices.IndexFunc(out, func(r RigDays) bool { return r.Rig == s.rig })
		if k < 0 {
			k = len(out)
			out = append(out, RigDays{Rig: s.rig})
		}
		out[k].Days += last[s] - first[s] + 1
		out[k].Visits++
	}
	return out
}

// Fits adds up the fits of tests by size.
func (w *Work) Fits(tests []Test) []int {
	out := make([]int, len(w.Sizes))
	if w.OwnBlanks {
		return out
	}
	for i := range tests {
		for k, n := range tests[i].Fits {
			out[k] += n
		}
	}
	return out
}

// Makes is the most blanks of every size in use at once: in one test, or, where
// each test is made ready while the one before it runs, in two that follow each
// other (what is only turned between them isn't taken off: that many or fewer).
// It never passes what the whole plan needs.
func (w *Work) Makes(tests []Test) []int { return w.makes(tests, func(s *Size) int { return s.Most }) }

// Needs is the same of the plan's own tests, in the order that the plan found.
func (w *Work) Needs() []int { return w.makes(w.Tests, func(s *Size) int { return s.Makes }) }

func (w *Work) makes(tests []Test, most func(*Size) int) []int {
	out := make([]int, len(w.Sizes))
	if w.OwnBlanks {
		return out
	}
	for i := range tests {
		for k, n := range tests[i].Fits {
			if w.Ahead && i > 0 && tests[i-1].Visit == tests[i].Visit {
				n += tests[i-1].Fits[k]
			}
			if m := most(&w.Sizes[k]); m > 0 {
				n = min(n, m)
			}
			out[k] = max(out[k], n)
		}
	}
	return out
}

// Area is the area of tests, m2.
func Area(tests []Test) float64 {
	sum := 0.0
	for i := range tests {
		sum += tests[i].Area
	}
	return sum
}

// Groupings counts the tests whose inner blanks aren't known.
func (w *Work) Groupings() int {
	n := 0
	for i := range w.Tests {
		if w.Tests[i].Grouping {
			n++
		}
	}
	return n
}

// Stays counts the visits that have a test.
func Stays(p *programme.Programme) int {
	n := 0
	for _, s := range p.Stays {
		if s.Days > 0 {
			n++
		}
	}
	return n
}
