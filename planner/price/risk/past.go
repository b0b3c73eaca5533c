package risk

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/gocarina/gocsv"

	"blankoff/planner/tightness"
)

// Past is what the firm's own past results say.
type Past struct {
	Results int      `json:"results"`
	Ratios  int      `json:"with_a_leak"`  // results with leak over limit
	Jobs    int      `json:"jobs"`         // 0: the file doesn't say which belong together
	Counts  float64  `json:"count_for"`    // sections, those of one job counting for less
	Median  float64  `json:"median"`       // of the results
	Spread  float64  `json:"spread"`       // of the results; 0: fewer than two
	Passed  int      `json:"passed_first"` // of all results
	Before  Figures  `json:"before"`       // the prior
	After   Figures  `json:"after"`        // updated
	Method  string   `json:"method"`
	Notes   []string `json:"notes"`
}

// Figures are median, spread and the chance that a section fails.
type Figures struct {
	Median float64 `json:"median"`
	Spread float64 `json:"spread"`
	Fail   float64 `json:"chance_that_a_section_fails"`
}

// result is a line of the file. Cells are read as text and understood here, so
// that a slip isn't taken for a 0.
type result struct {
	Area   string `csv:"area_m2"`
	Class  string `csv:"class"`
	Leak   string `csv:"leak_over_limit"`
	Passed string `csv:"passed_first_time"`
	Job    string `csv:"job"`
}

var headings = []string{"area_m2", "class", "leak_over_limit", "passed_first_time", "job"}

// sample is what the file holds.
type sample struct {
	logs        []float64
	jobs        map[string]int
	results     int
	passed      int
	withoutAJob bool
	faults      tightness.Faults
}

// Update reads past results (CSV: area_m2, class, leak_over_limit,
// passed_first_time, and job if it is known) and updates a prior by them; name is
// the file's. Every fault is found in one go.
func Update(p *Prior, r io.Reader, name string) (*Prior, error) {
	rows, err := readResults(r, name)
	if err != nil {
		return nil, err
	}
	s := sample{jobs: map[string]int{}}
	for i, row := range rows {
		s.take(row, name, i+2)
	}
	if len(s.faults) > 0 {
		return nil, s.faults
	}
	return p.learn(&s), nil
}

func readResults(r io.Reader, name string) ([]result, error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return nil, fmt.Errorf("results file %s: %w", name, err)
	}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	head, err := csv.NewReader(bytes.NewReader(text)).Read()
	if err != nil {
		return nil, fmt.Errorf("results file %s has no heading row; expected %s", name, strings.Join(headings, ", "))
	}
	for i := range head {
		head[i] = strings.TrimSpace(head[i])
		if !slices.Contains(headings, head[i]) {
			return nil, fmt.Errorf("results file %s: heading %q isn't known; expected %s", name, head[i], strings.Join(headings, ", "))
		}
	}
	for _, must := range headings[:4] {
		if !slices.Contains(head, must) {
			return nil, fmt.Errorf("results file %s has no heading %s; expected %s, and job where it is known", name, must, strings.Join(headings[:4], ", "))
		}
	}
	var rows []result
	if err := gocsv.UnmarshalBytes(text, &rows); err != nil {
		return nil, fmt.Errorf("results file %s: %w; expected a CSV with the headings %s", name, err, strings.Join(headings, ", "))
	}
	if len(rows) == 0 {
		return nil, fmt.Errorf("results file %s has no results; leave --results out", name)
	}
	return rows, nil
}

// take understands one result.
func (s *sample) take(row result, name string, line int) {
	fault := func(key, value, want string) {
		s.faults = append(s.faults, tightness.Fault{File: name, At: fmt.Sprintf("row %d", line), Key: key, Value: strconv.Quote(value), Expected: want})
	}
	if v, err := strconv.ParseFloat(strings.TrimSpace(row.Area), 64); err != nil || !(v > 0 && v < 1e6) {
		fault("area_m2", row.Area, "m2, more than 0")
	}
	passed, known := truth(row.Passed)
	if !known {
		fault("passed_first_time", row.Passed, "yes or no")
		return
	}
	if leak := strings.TrimSpace(row.Leak); leak != "" {
		v, err := strconv.ParseFloat(leak, 64)
		switch {
		case err != nil || !(v >= 0.0001 && v <= 10000):
			fault("leak_over_limit", row.Leak, "a ratio from 0.0001 to 10000, of the first test; nothing where it isn't known")
			return
		case v > 1 == passed:
			fault("leak_over_limit", row.Leak, "at most 1 where passed_first_time says yes, more where it says no")
			return
		}
		s.logs = append(s.logs, math.Log(v))
		job := strings.TrimSpace(row.Job)
		s.withoutAJob = s.withoutAJob || job == ""
		s.jobs[job]++
	}
	s.results++
	if passed {
		s.passed++
	}
}

func truth(s string) (yes, known bool) {
	switch strings.ToLower(strings.TrimSpace(s)) {
	case "yes", "y", "true", "1":
		return true, true
	case "no", "n", "false", "0":
		return false, true
	}
	return false, false
}

// method says how a prior is updated.
const method = "ln(leak over limit) normal with unknown mean and variance (normal-inverse-gamma): mean = (w m + n x) / (w + n), variance = (w s^2 + SS + w n / (w + n) (x - m)^2) / (w + n); w is what the prior counts for, n the results, those of one job of k counting for k / (1 + (k - 1) job_share) together (design effect)"

// learn updates a prior.
func (p *Prior) learn(s *sample) *Prior {
	o := *p
	past := &Past{Results: s.results, Ratios: len(s.logs), Passed: s.passed, Before: p.figures(), Method: method, Notes: []string{}}
	o.past = past
	if len(s.logs) == 0 {
		past.Notes = append(past.Notes, "no result gives its leak over limit: the prior stays as it is")
		past.After = o.figures()
		return &o
	}
	n := float64(len(s.logs))
	past.Counts = n
	if !s.withoutAJob {
		past.Jobs, past.Counts = len(s.jobs), 0
		for _, job := range sortedKeys(s.jobs) {
			k := float64(s.jobs[job])
			past.Counts += k / (1 + (k-1)*p.JobShare)
		}
	} else {
		past.Notes = append(past.Notes, "the results don't all say which job they are of: each is taken as a job of its own, which trusts them more than sections of a few jobs deserve")
	}
	mean, ss := 0.0, 0.0
	for _, x := range s.logs {
		mean += x / n
	}
	for _, x := range s.logs {
		ss += (x - mean) * (x - mean)
	}
	past.Median = math.Exp(mean)
	if n > 1 {
		past.Spread = math.Exp(math.Sqrt(ss / (n - 1)))
	}
	w, count, m, sigma := p.Weight, past.Counts, math.Log(p.Median), math.Log(p.Spread)
	o.Median = math.Exp((w*m + count*mean) / (w + count))
	o.Spread = max(1.001, math.Exp(math.Sqrt((w*sigma*sigma+ss*count/n+w*count/(w+count)*(mean-m)*(mean-m))/(w+count))))
	past.After = o.figures()
	o.basis = map[string]string{}
	for k, v := range p.basis {
		o.basis[k] = v
	}
	for _, key := range []string{"median", "spread"} {
		was := p.basis[key]
		if was == "" {
			was = Assumption
		}
		o.basis[key] = fmt.Sprintf("%s, updated by %d results of the firm's own", was, len(s.logs))
	}
	o.figure()
	return &o
}

func (p *Prior) figures() Figures { return Figures{p.Median, p.Spread, p.Fail()} }

// Past is what past results said; nil without any.
func (p *Prior) Past() *Past { return p.past }

func sortedKeys(m map[string]int) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}
