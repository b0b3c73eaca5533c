// Package job reads a job file: what a plan needs to know of the job besides
// its schedule and the rig. So far that is the prices of blanking, in minutes.
package job

import (
	"io"

	"blankoff/planner/network"
	"blankoff/planner/tightness"
)

// Job is a job file. Every figure has a default; the file replaces it.
type Job struct {
	Project string // heads what is written
	Prices  network.Prices
	Ahead   bool // a test is made ready while the one before it runs
}

// Defaults are those of network.DefaultPrices.
func Defaults() Job { return Job{Prices: network.DefaultPrices()} }

const minutes = "minutes, 0 to 10000"

// Load reads a job file (TOML); name is the file's and appears in faults. Every
// fault is found in one go.
func Load(r io.Reader, name string) (Job, error) {
	j := Defaults()
	t, err := tightness.ReadTable(r, name)
	if err != nil {
		return j, err
	}
	t.Only("project", "prices", "access", "programme")
	j.Project = t.Text("project")
	if t.Has("prices") {
		p := t.Table("prices")
		p.Only("cut_base", "cut_per_metre", "end_base", "end_per_metre", "natural")
		for _, w := range []struct {
			key  string
			to   *float64
			most float64
			want string
		}{
			{"cut_base", &j.Prices.CutBase, 10000, minutes}, {"cut_per_metre", &j.Prices.CutPerMetre, 10000, minutes},
			{"end_base", &j.Prices.EndBase, 10000, minutes}, {"end_per_metre", &j.Prices.EndPerMetre, 10000, minutes},
			{"natural", &j.Prices.Natural, 1, "a share from 0 to 1 of a cut's price"},
		} {
			if v, ok := p.Number(w.key, 0, w.most, w.want); ok {
				*w.to = v
			}
		}
	}
	if t.Has("access") {
		readAccess(t.Table("access"), &j)
	}
	if t.Has("programme") {
		p := t.Table("programme")
		p.Only("ahead")
		j.Ahead = p.Truth("ahead")
	}
	return j, t.Err()
}

// readAccess reads minutes by level: the keys are the schedule's own words.
func readAccess(t *tightness.Table, j *Job) {
	j.Prices.Access = map[string]float64{}
	for _, level := range t.Keys() {
		if v, ok := t.Number(level, 0, 10000, minutes); ok {
			j.Prices.Access[level] = v
		}
	}
}
