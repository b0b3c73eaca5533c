package risk

import (
	"embed"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"blankoff/planner/tightness"
)

//go:embed data/*.toml
var data embed.FS

// presets fixes the order in which built-in priors are listed.
var presets = []string{"pre-tested", "witnessed-first", "good", "gasketed", "half-fail", "no-habit"}

// Prior is what is supposed of the job before anything is tested.
type Prior struct {
	Name          string
	Title         string
	Median        float64 // of leak over limit
	Spread        float64 // geometric standard deviation of a section taken by itself, above 1
	JobShare      float64 // of the variance of ln r, common to all sections: their correlation
	Retest        float64 // chance that a retest passes; not used where RetestMedian is given
	RetestMedian  float64 // median of leak over limit after resealing; 0: Retest is used
	Most          int     // retests of a section
	SearchMinutes float64 // by the crew, for each test that fails
	Abortive      float64 // chance of a visit
	WaitingHours  float64 // mean of a visit
	Refit         bool    // the blanks of a section are fitted again for its retest
	Widen         bool    // a sample that fails is widened
	Weight        float64 // sections that the prior counts for beside past results
	Figures       []Figure
	lows, highs   map[string]float64
	basis         map[string]string
	past          *Past
}

// Figure is one figure of a prior and where it comes from.
type Figure struct {
	Key   string `json:"key"`
	What  string `json:"what"`
	Value string `json:"value"`
	Basis string `json:"basis"`
}

// Assumption marks a figure that nobody has published.
const Assumption = "assumption, no source"

// Presets lists the built-in priors.
func Presets() []string { return append([]string(nil), presets...) }

// Default is the prior where none is asked for.
func Default() (*Prior, error) { return Preset(presets[0]) }

// Preset finds a built-in prior.
func Preset(name string) (*Prior, error) {
	for _, p := range presets {
		if strings.EqualFold(p, name) {
			f, err := data.Open("data/" + p + ".toml")
			if err != nil {
				return nil, fmt.Errorf("built-in prior: %w", err)
			}
			return load(f, p, Assumption)
		}
	}
	return nil, fmt.Errorf("%q is no prior: expected one of %s, or a file of your own", name, strings.Join(presets, ", "))
}

// Load reads a prior of the user's own (TOML); what it leaves out is as in the
// default. name is the file's. The error is a [tightness.Faults].
func Load(r io.Reader, name string) (*Prior, error) { return load(r, name, "prior file") }

// term is a figure to be read.
type term struct {
	key, what, unit string
	to              *float64
	low, most       float64
	want            string
}

func (p *Prior) terms() []term {
	return []term{
		{"median", "median of leak over limit", "", &p.Median, 0.001, 1000, "a ratio, 0.001 to 1000"},
		{"spread", "spread of leak over limit (geometric standard deviation)", "", &p.Spread, 1.001, 20, "a factor, 1.001 to 20"},
		{"job_share", "share of its variance that is the job's", "", &p.JobShare, 0, 1, "a share, 0 to 1"},
		{"retest_pass", "chance that a retest passes", "", &p.Retest, 0, 1, "a chance, 0 to 1"},
		{"retest_median", "median of leak over limit after resealing", "", &p.RetestMedian, 0.001, 1000, "a ratio, 0.001 to 1000"},
		{"search_minutes", "search for leaks after a failed test", " min", &p.SearchMinutes, 0, 10000, "minutes, 0 to 10000"},
		{"abortive_chance", "chance that a visit is abortive", "", &p.Abortive, 0, 0.9, "a chance, 0 to 0.9"},
		{"waiting_hours", "mean of waiting in a visit", " h", &p.WaitingHours, 0, 1000, "hours, 0 to 1000"},
		{"weight", "sections that the prior counts for beside past results", "", &p.Weight, 0.1, 1e6, "sections, 0.1 to 1000000"},
	}
}

// supposed is the part of a prior that has no preset of its own.
func supposed() *Prior {
	return &Prior{
		Median: 0.6, Spread: 2, JobShare: 0.3, Retest: 0.85, Most: 3, SearchMinutes: 45, Abortive: 0.05, WaitingHours: 1, Refit: true, Widen: true, Weight: 10,
		lows: map[string]float64{}, highs: map[string]float64{}, basis: map[string]string{},
	}
}

func load(r io.Reader, name, basis string) (*Prior, error) {
	t, err := tightness.ReadTable(r, name)
	if err != nil {
		return nil, err
	}
	p := supposed()
	keys := []string{"name", "title", "retests_most", "refit_blanks", "widen_sample", "basis", "low", "high"}
	for _, w := range p.terms() {
		keys = append(keys, w.key)
	}
	t.Only(keys...)
	p.Name, p.Title = t.Text("name"), t.Text("title")
	if p.Name == "" {
		p.Name = name
	}
	for _, w := range p.terms() {
		if v, ok := t.Number(w.key, w.low, w.most, w.want); ok {
			*w.to = v
			p.basis[w.key] = basis
		}
	}
	if t.Has("retest_pass") && t.Has("retest_median") {
		t.Problem("retest_median", "two words on the same thing", "retest_pass or retest_median, one of the two")
	}
	if v, ok := t.Whole("retests_most", 1, 20, "a whole number from 1 to 20"); ok {
		p.Most, p.basis["retests_most"] = int(v), basis
	}
	if t.Has("refit_blanks") {
		p.Refit, p.basis["refit_blanks"] = t.Truth("refit_blanks"), basis
	}
	if t.Has("widen_sample") {
		p.Widen, p.basis["widen_sample"] = t.Truth("widen_sample"), basis
	}
	if b := t.Table("basis"); b != nil {
		for _, key := range b.Keys() {
			p.basis[key] = b.Text(key)
		}
	}
	p.lows, p.highs = bounds(t.Table("low")), bounds(t.Table("high"))
	if err := t.Err(); err != nil {
		return nil, err
	}
	p.figure()
	return p, nil
}

func bounds(t *tightness.Table) map[string]float64 {
	out := map[string]float64{}
	if t == nil {
		return out
	}
	for _, key := range t.Keys() {
		if v, ok := t.Number(key, 0, 1e9, "a number, 0 or more"); ok {
			out[key] = v
		}
	}
	return out
}

// figure lists the figures with where each comes from.
func (p *Prior) figure() {
	p.Figures = nil
	add := func(key, what, value string) {
		basis := p.basis[key]
		if basis == "" {
			basis = Assumption
		}
		p.Figures = append(p.Figures, Figure{key, what, value, basis})
	}
	for _, w := range p.terms() {
		switch {
		case w.key == "retest_median" && p.RetestMedian == 0, w.key == "retest_pass" && p.RetestMedian > 0:
		case w.key == "weight" && p.past == nil:
		default:
			add(w.key, w.what, short(*w.to)+w.unit)
		}
	}
	add("retests_most", "retests of a section, then it is handed back", strconv.Itoa(p.Most))
	add("refit_blanks", "its blanks are fitted again for a retest", yes(p.Refit))
	add("widen_sample", "a sample that fails is widened", yes(p.Widen))
}

func yes(v bool) string {
	if v {
		return "yes"
	}
	return "no"
}

// short writes a number with three digits.
func short(v float64) string {
	if v >= 1000 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'g', 3, 64)
}

// sigmas are the standard deviations of ln r: of all, of the job's term and of
// the section's.
func (p *Prior) sigmas() (all, job, section float64) {
	all = math.Log(p.Spread)
	return all, all * math.Sqrt(p.JobShare), all * math.Sqrt(1-p.JobShare)
}

// Shifted is the prior of the same ductwork against a limit that is smaller by a
// factor.
func (p *Prior) Shifted(factor float64) *Prior {
	o := *p
	o.Median *= factor
	if o.RetestMedian > 0 {
		o.RetestMedian *= factor
	}
	return &o
}
