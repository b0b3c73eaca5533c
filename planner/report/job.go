package report

import (
	"sort"
	"strings"

	"blankoff/planner/job"
	"blankoff/takeoff/terms"
)

// Job is what heads every page, as the job file says.
type Job struct {
	Project    string     `json:"project"`
	Client     string     `json:"client"`
	Reference  string     `json:"reference"`
	Revision   string     `json:"revision"` // of the drawings
	Clause     string     `json:"clause"`   // of the specification
	Decision   string     `json:"decision"` // rule by which a reading at the limit is judged
	Hold       float64    `json:"hold_minutes"`
	Witness    string     `json:"witness"`
	NoticeDays int        `json:"notice_days"`
	Register   []Drawing  `json:"register"`
	Missing    []string   `json:"not_in_register"` // drawings that the schedule names
	Letter     job.Letter `json:"-"`
}

// Drawing is an entry of the register of drawings.
type Drawing struct {
	Number string `json:"drawing"`
	Title  string `json:"title"`
	Pieces int    `json:"rows"` // of the schedule that name it
}

// Line is a word and what is said of it.
type Line struct{ Word, Text string }

// Lines are what heads a page, as far as it is said.
func (j *Job) Lines() []Line {
	if j == nil {
		return nil
	}
	var out []Line
	for _, l := range []Line{
		{"project", j.Project}, {"client", j.Client}, {"reference", j.Reference}, {"drawings", mark("revision ", j.Revision)},
		{"clause", j.Clause}, {"decision", j.Decision}, {"witness", j.Witness},
	} {
		if l.Text != "" {
			out = append(out, l)
		}
	}
	return out
}

// Head is one line that heads a page: project, reference and revision.
func (j *Job) Head() string {
	if j == nil {
		return ""
	}
	var parts []string
	for _, text := range []string{j.Project, j.Reference, mark("drawings rev. ", j.Revision), mark("clause ", j.Clause)} {
		if text != "" {
			parts = append(parts, text)
		}
	}
	return strings.Join(parts, ", ")
}

// mark puts a word before a text, if there is any.
func mark(word, text string) string {
	if text == "" {
		return ""
	}
	return word + text
}

// headOf is what heads the pages of a job.
func headOf(j job.Job) *Job {
	return &Job{
		Project: j.Project, Client: j.Client, Reference: j.Reference, Revision: j.Revision, Clause: j.Clause, Decision: j.Decision,
		Hold: j.Programme.Hold, Witness: j.Witness, NoticeDays: j.Programme.NoticeDays, Register: []Drawing{}, Missing: []string{}, Letter: j.Letter,
	}
}

// AddJob puts the job at the head of a plan's view, and holds its register of
// drawings against those that the schedule names.
func (v *Plan) AddJob(j job.Job) {
	v.Job = headOf(j)
	at := map[string]int{}
	for i, d := range j.Register {
		at[d.Number] = i
		v.Job.Register = append(v.Job.Register, Drawing{Number: d.Number, Title: d.Title})
	}
	if len(j.Register) == 0 {
		return
	}
	for i := range v.Takeoff.All {
		switch k, ok := at[v.Takeoff.All[i].Drawing]; {
		case ok:
			v.Job.Register[k].Pieces++
		default:
			v.Job.Missing = once(v.Job.Missing, v.Takeoff.All[i].Drawing)
		}
	}
	sort.SliceStable(v.Job.Missing, func(a, b int) bool { return terms.NaturalLess(v.Job.Missing[a], v.Job.Missing[b]) })
	if len(v.Job.Missing) > 0 {
		v.Notes = append(v.Notes, "drawings that the schedule names and the register of the job file doesn't: "+strings.Join(v.Job.Missing, ", "))
	}
	var idle []string
	for _, d := range v.Job.Register {
		if d.Pieces == 0 {
			idle = append(idle, d.Number)
		}
	}
	if len(idle) > 0 {
		v.Notes = append(v.Notes, "drawings of the register that no row of the schedule names: "+strings.Join(idle, ", "))
	}
}
