// Package job reads a job file: what a plan needs to know of the job besides
// its schedule and the rig. That is what heads every page, the prices of
// blanking, and how the tests fill the days.
package job

import (
	"io"
	"slices"
	"sort"

	"blankoff/planner/network"
	"blankoff/planner/programme"
	"blankoff/planner/tightness"
	"blankoff/takeoff/terms"
)

// Job is a job file. Every figure has a default; the file replaces it.
type Job struct {
	Project   string
	Client    string
	Reference string
	Revision  string // of the drawings
	Clause    string // of the specification that asks for the tests
	Decision  string // rule by which a reading at the limit is judged, agreed before the test
	Witness   string
	Letter    Letter    // of check
	Register  []Drawing // in the natural order of their numbers
	Prices    network.Prices
	Ahead     bool               // a test is made ready while the one before it runs
	Programme programme.Settings // but for the minutes of a test, which aren't the file's
	own       []string           // keys that the file gives
}

// Drawing is an entry of the register of drawings.
type Drawing struct {
	Number string
	Title  string // or revision: as the file says
}

// Own reports whether the file gives a figure itself, by its key.
func (j *Job) Own(key string) bool { return slices.Contains(j.own, key) }

// Defaults are those of network.DefaultPrices and of programme.Defaults.
func Defaults() Job {
	return Job{Prices: network.DefaultPrices(), Programme: programme.Defaults()}
}

const minutes = "minutes, 0 to 10000"

// Load reads a job file (TOML); name is the file's and appears in faults. Every
// fault is found in one go.
func Load(r io.Reader, name string) (Job, error) {
	j := Defaults()
	t, err := tightness.ReadTable(r, name)
	if err != nil {
		return j, err
	}
	t.Only("project", "client", "reference", "revision", "clause", "decision", "hold", "witness", "notice_days", "register", "programme", "prices", "access", "letter")
	for _, w := range []struct {
		key string
		to  *string
	}{
		{"project", &j.Project}, {"client", &j.Client}, {"reference", &j.Reference}, {"revision", &j.Revision},
		{"clause", &j.Clause}, {"decision", &j.Decision}, {"witness", &j.Witness},
	} {
		*w.to = t.Text(w.key)
	}
	j.numbers(t, []number{{"hold", &j.Programme.Hold, 1, 1000, "minutes, 1 to 1000, for which the pressure is held"}})
	j.wholes(t, []whole{{"notice_days", &j.Programme.NoticeDays, 0, 365, "calendar days, a whole number from 0 to 365"}})
	if t.Has("register") {
		j.readRegister(t.Table("register"))
	}
	if t.Has("programme") {
		j.readProgramme(t.Table("programme"))
	}
	if t.Has("prices") {
		j.readPrices(t.Table("prices"))
	}
	if t.Has("letter") {
		j.readLetter(t.Table("letter"))
	}
	if t.Has("access") {
		j.readAccess(t.Table("access"))
	}
	return j, t.Err()
}

// number is a figure to be read, with its bounds.
type number struct {
	key       string
	to        *float64
	low, most float64
	want      string
}

// numbers reads figures of a table; nil where it isn't one.
func (j *Job) numbers(t *tightness.Table, list []number) {
	for _, w := range list {
		if v, ok := t.Number(w.key, w.low, w.most, w.want); ok {
			*w.to = v
			j.own = append(j.own, w.key)
		}
	}
}

// whole is a whole number to be read.
type whole struct {
	key       string
	to        *int
	low, most float64
	want      string
}

func (j *Job) wholes(t *tightness.Table, list []whole) {
	for _, w := range list {
		v, ok := t.Number(w.key, w.low, w.most, w.want)
		switch {
		case ok && v != float64(int(v)):
			t.Fault(w.key, w.want)
		case ok:
			*w.to = int(v)
			j.own = append(j.own, w.key)
		}
	}
}

// readRegister reads drawings: the keys are their numbers.
func (j *Job) readRegister(t *tightness.Table) {
	if t == nil {
		return
	}
	for _, number := range t.Keys() {
		j.Register = append(j.Register, Drawing{number, t.Text(number)})
	}
	sort.SliceStable(j.Register, func(a, b int) bool { return terms.NaturalLess(j.Register[a].Number, j.Register[b].Number) })
}

func (j *Job) readProgramme(t *tightness.Table) {
	if t == nil {
		return
	}
	t.Only("day_minutes", "set_up", "move", "move_level", "crew", "cure_hours", "ahead")
	p := &j.Programme
	j.numbers(t, []number{
		{"day_minutes", &p.DayMinutes, 60, 1440, "minutes of work in a day, 60 to 1440"},
		{"set_up", &p.SetUp, 0, 10000, minutes}, {"move", &p.Move, 0, 10000, minutes}, {"move_level", &p.MoveLevel, 0, 10000, minutes},
		{"cure_hours", &p.CureHours, 0, 1000, "hours, 0 to 1000"},
	})
	j.wholes(t, []whole{{"crew", &p.Crew, 1, 100, "people, a whole number from 1 to 100"}})
	j.Ahead = t.Truth("ahead")
}

func (j *Job) readPrices(t *tightness.Table) {
	if t == nil {
		return
	}
	t.Only("cut_base", "cut_per_metre", "end_base", "end_per_metre", "natural")
	p := &j.Prices
	j.numbers(t, []number{
		{"cut_base", &p.CutBase, 0, 10000, minutes}, {"cut_per_metre", &p.CutPerMetre, 0, 10000, minutes},
		{"end_base", &p.EndBase, 0, 10000, minutes}, {"end_per_metre", &p.EndPerMetre, 0, 10000, minutes},
		{"natural", &p.Natural, 0, 1, "a share from 0 to 1 of a cut's price"},
	})
}

// readAccess reads minutes by level: the keys are the schedule's own words.
func (j *Job) readAccess(t *tightness.Table) {
	j.Prices.Access = map[string]float64{}
	if t == nil {
		return
	}
	for _, level := range t.Keys() {
		if v, ok := t.Number(level, 0, 10000, minutes); ok {
			j.Prices.Access[level] = v
		}
	}
}
