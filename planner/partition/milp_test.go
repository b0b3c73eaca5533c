package partition

import (
	"encoding/json"
	"os"
	"testing"
)

// milpAnswer is what a general MILP solver proved of one tree.
type milpAnswer struct {
	Tree    string
	Nodes   int
	Aim     string
	Proved  bool
	Over    int
	Under   int
	Tests   int
	Minutes int64
	Total   int64 // for aim time
}

// milpTrees are the confirmed trees that the MILP solver was given.
func milpTrees(t testing.TB) []confirmed {
	t.Helper()
	var out []confirmed
	for _, c := range readConfirmed(t, "medium.json") {
		if len(c.Parent) <= 200 {
			out = append(out, c)
		}
	}
	return out
}

var milpAims = map[string]Aim{"tests": Tests, "time": Time}

// Every tree of up to 200 nodes has the score that the MILP solver proved, for
// both aims.
func TestSolveAgreesWithMILP(t *testing.T) {
	text, err := os.ReadFile("../../testdata/milp/results.json")
	if err != nil {
		t.Fatal(err)
	}
	var results struct{ Answers []milpAnswer }
	if err := json.Unmarshal(text, &results); err != nil {
		t.Fatal(err)
	}
	trees := map[string]confirmed{}
	for _, c := range milpTrees(t) {
		trees[c.Name] = c
	}
	done := map[string]bool{}
	for _, a := range results.Answers {
		c, ok := trees[a.Tree]
		if !ok || !a.Proved || done[a.Tree+a.Aim] {
			t.Errorf("%s, aim %s: known %v, proved %v, once %v", a.Tree, a.Aim, ok, a.Proved, !done[a.Tree+a.Aim])
			continue
		}
		done[a.Tree+a.Aim] = true
		s := mustSolve(t, c.problem(milpAims[a.Aim]))
		total := int64(s.Score.Tests)*c.SectionCost + s.Score.Minutes
		same := s.Score.Over == a.Over && s.Score.Under == a.Under
		if a.Aim == "time" {
			same = same && total == a.Total
		} else {
			same = same && s.Score.Tests == a.Tests && s.Score.Minutes == a.Minutes
		}
		if !same || !s.Exhaustive {
			t.Errorf("%s: %+v, total %d, exhaustive %v; MILP %+v", a.Tree, s.Score, total, s.Exhaustive, a)
		}
	}
	if len(trees) != 48 || len(done) != 2*len(trees) {
		t.Errorf("%d answers for both aims of %d trees, want 96 and 48", len(done), len(trees))
	}
}

// BenchmarkMILPTrees solves the trees that the MILP solver was given and
// reports their scores. The script beside the solver's results runs it, so that
// both are timed in one run.
func BenchmarkMILPTrees(b *testing.B) {
	for _, c := range milpTrees(b) {
		b.Run(c.Name, func(b *testing.B) {
			for _, name := range []string{"tests", "time"} {
				p := c.problem(milpAims[name])
				b.Run(name, func(b *testing.B) {
					var s Solution
					for b.Loop() {
						var err error
						if s, err = Solve(p); err != nil {
							b.Fatal(err)
						}
					}
					b.ReportMetric(float64(s.Score.Over), "over")
					b.ReportMetric(float64(s.Score.Under), "under")
					b.ReportMetric(float64(s.Score.Tests), "tests")
					b.ReportMetric(float64(s.Score.Minutes), "minutes")
					b.ReportMetric(float64(int64(s.Score.Tests)*c.SectionCost+s.Score.Minutes), "total")
				})
			}
		})
	}
}
