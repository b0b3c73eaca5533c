// Package card puts together what a section's card says, in the words in which
// every writer prints it: one page a section, to be carried to the duct and
// filled in there. What is asked for and in which order follows what test
// reports of ductwork are asked to hold (EN 12599, EN 12237 and EN 1507 as their
// open previews and the trade report them: project, part tested, area and how it
// was had, class, pressure required and reached, leakage permitted and read,
// instruments, air, result, people and date).
package card

import (
	"fmt"
	"sort"
	"strings"
	"unicode/utf8"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// Fact is a line of a card: what, and its value.
type Fact struct{ Name, Value string }

// Blank is an opening to be closed for the test.
type Blank struct {
	Number          string // "3", or "4 of them" on a line of many
	Size, At, Where string
	Level, Place    string // of Where, as is Drawing
	Drawing         string
	Kind            string // "cut 2, to S05", "end of scope" or "open end"
	Force, Fixing   string
	Rig, Tap        bool     // the air goes in here; the pressure is read here
	Each            []string // of a line of many: number and place of each
}

// Card is one section's page.
type Card struct {
	ID, System, Where string
	Drawings          string
	Number, Of        int    // of the cards
	Section           int    // in the list of the plan's
	Flag              string // UNDER RANGE and the like; empty where nothing is the matter
	Grouping          bool   // blanks between its rows aren't known
	Status            string // passed and the like, of an earlier plan
	Job               []Fact // what the job file says: on every page where there is room for it
	Head              []Fact // on every page
	Big               []Fact // the three figures that have to be read at arm's length
	Facts             []Fact
	Site              []Fact // where rig and tapping go, hold, decision
	Readings          []string
	Trouble           []string // why the rig can't judge it, and the cures
	Pieces            string
	PieceList         []string // all of them, for a writer that finds its own room
	Blanks            []Blank  // one line each, or one of a size where there are many
	EveryBlank        []Blank  // each of them, however many
	Ends, Cuts        int      // of the blanks, open ends and others
	Checks            []string
	Boxes             []string // to be filled in at each test
	Kit               []string // to be filled in once: what was measured with
	Signs             []string
	Notes             []string
	Cautions          []string
	Foot              string
}

// Cure comes before a way to make a section one that the rig can judge.
const Cure = "cure: "

// Names of facts that a writer may put in a place of their own.
const Drawings, RigAt, TapAt = "drawings", "rig at", "tapping at"

// All makes the cards of a plan, one for each section that is tested, in their
// order.
func All(v *report.Plan) []Card {
	out := make([]Card, 0, len(v.Sections))
	for i := range v.Sections {
		if v.Sections[i].NotTested == "" {
			out = append(out, one(v, i))
		}
	}
	for i := range out {
		out[i].Number, out[i].Of = i+1, len(out)
	}
	return out
}

func one(v *report.Plan, i int) Card {
	s, u := &v.Sections[i], v.Units
	c := Card{
		ID: s.ID, System: s.System, Where: where(s), Drawings: show.Names(s.Drawings, ", ", 6, 60), Section: i, Flag: show.Flag(s), Grouping: s.Grouping, Status: s.Status,
		Head: head(v), Readings: sentences(s.Readings), Notes: capitals(s.Notes), Checks: checks(s), Boxes: boxes(v.Units), Kit: kit(), Signs: signs(), Cautions: cautions(s, v.Units), Foot: foot(v),
	}
	c.PieceList = pieces(s)
	c.Pieces = Listed(c.PieceList, func(text string) bool { return utf8.RuneCountInString(text) <= mostPieces })
	c.Big = []Fact{
		{"limit", u.Limit(s.Limit)},
		{"test pressure, " + sign(s), u.Pressure(s.TestPa)},
		{"outside area", u.Area(s.Area)},
	}
	c.Facts, c.Site, c.Job = facts(v, s), site(v, s), jobOf(v)
	if s.Reason != "" {
		c.Trouble = append(c.Trouble, s.Reason)
	}
	for _, t := range s.Cures {
		c.Trouble = append(c.Trouble, Cure+t)
	}
	for k := range s.Blanks {
		if s.Blanks[k].Why == "open end" {
			c.Ends++
		} else {
			c.Cuts++
		}
	}
	c.EveryBlank = every(v, s)
	c.Blanks = grouped(c.EveryBlank)
	return c
}

// where is the levels and the places of a section.
func where(s *report.Section) string {
	text := strings.Join(s.Levels, ", ")
	if p := show.Names(s.Places, "; ", 4, 90); p != "" {
		text = strings.TrimPrefix(text+": "+p, ": ")
	}
	return text
}

// Place joins what is said of a place: level, place, drawing.
func Place(parts ...string) string {
	var said []string
	for _, p := range parts {
		if p != "" {
			said = append(said, p)
		}
	}
	return strings.Join(said, ", ")
}

func sign(s *report.Section) string {
	if s.Sign == "negative" {
		return "negative"
	}
	return "positive"
}

// facts are what a report of the test has to hold, but for the three figures.
func facts(v *report.Plan, s *report.Section) []Fact {
	u := v.Units
	list := []Fact{
		{"class", fmt.Sprintf("%s, scheme %s", s.Class, s.Scheme)},
		{"permitted", u.LimitPerArea(s.LimitPerM2) + " at the test pressure; limits are cut off, never rounded up"},
		{"area measured", basis(v, s)},
		{"range to use", or(show.Range(v, s), "none judges this section")},
		{"joints inside", fmt.Sprintf("%.1f %s", u.Of(units.Length, s.JointLength), u.Unit(units.Length))},
		{Drawings, or(strings.Join(s.Drawings, ", "), "not said in the schedule")},
		{"any area", fmt.Sprintf("a reading passes for any true area down to the reading divided by %s", u.LimitPerArea(s.LimitPerM2))},
	}
	if text := show.Drawn(v); text != "" {
		list = append(list, Fact{"in a sample of", text})
	}
	if s.Ready != "" || s.Closed != "" {
		list = append(list, Fact{"can be tested", fmt.Sprintf("from %s until %s", or(s.Ready, "any day"), or(s.Closed, "no end"))})
	}
	return list
}

func basis(v *report.Plan, s *report.Section) string {
	if v.Settings.Basis == "exact" {
		return "exactly, outside surface of the metal"
	}
	return fmt.Sprintf("on the basis %s; exactly %s", v.Settings.Basis, v.Units.Area(s.ExactArea))
}

func or(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}

// capitals begins every text with a capital.
func capitals(list []string) []string {
	out := make([]string, len(list))
	for i, t := range list {
		if t != "" {
			out[i] = strings.ToUpper(t[:1]) + t[1:]
		}
	}
	return out
}

// sentences begins every reading with a capital and ends it with a stop.
func sentences(list []string) []string {
	var out []string
	for _, t := range list {
		t = strings.TrimSuffix(t, ".")
		out = append(out, strings.ToUpper(t[:1])+t[1:]+".")
	}
	return out
}

// mostPieces is how many letters of a section's pieces a card has room for.
const mostPieces = 620

// pieces names a section's pieces.
func pieces(s *report.Section) []string {
	out := make([]string, len(s.Pieces))
	for i := range s.Pieces {
		out[i] = show.Span(&s.Pieces[i])
	}
	return out
}

// Listed joins names as far as there is room for them, and says how many more
// there are and where: "D1, D2 and 41 more, listed in plan.xlsx". One name is
// always there.
func Listed(names []string, fits func(text string) bool) string {
	if all := strings.Join(names, ", "); len(names) < 2 || fits(all) {
		return all
	}
	text := func(n int) string {
		return strings.Join(names[:n], ", ") + fmt.Sprintf(" and %d more, listed in plan.xlsx", len(names)-n)
	}
	n := sort.Search(len(names)-1, func(i int) bool { return !fits(text(i + 1)) })
	return text(max(1, n))
}

// head is what the page was made from, on every page.
func head(v *report.Plan) []Fact { return []Fact{{"schedule", v.Schedule.File}} }

// foot says what the page was made from.
func foot(v *report.Plan) string {
	sum := v.Schedule.SHA256
	if len(sum) > 16 {
		sum = sum[:16]
	}
	return fmt.Sprintf("blankoff test plan of %s, sha256 %s; rows: %s", v.Schedule.File, sum, show.Rows(&v.Schedule))
}
