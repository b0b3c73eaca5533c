package divide

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"blankoff/planner/network"
	"blankoff/planner/partition"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
)

// coming is a random tree of pieces with random days, and its division stated.
func coming(t *testing.T, r *rand.Rand, n int) (*Patch, partition.Problem, *network.Network) {
	t.Helper()
	var b strings.Builder
	b.WriteString("tag,system,kind,width_mm,height_mm,length_mm,from,ready,closed\n")
	p := &Patch{aim: partition.Tests}
	q := partition.Problem{Aim: partition.Tests, Windows: []partition.Window{{Low: 600, High: 4000}}}
	for x := range n {
		parent, from := -1, ""
		if x > 0 {
			parent = r.IntN(min(x, 3))
			from = fmt.Sprintf("A%d", parent)
		}
		ready := r.IntN(8)
		fmt.Fprintf(&b, "A%d,S,plenum,500,500,500,%s,%d,%d\n", x, from, ready, ready+4+r.IntN(8))
		p.Nodes, p.parent = append(p.Nodes, x), append(p.parent, parent)
		q.Parent, q.Weight, q.Price = append(q.Parent, parent), append(q.Weight, int64(100+r.IntN(1500))), append(q.Price, int64(r.IntN(900)))
	}
	tk := takeoff.New(takeoff.Options{})
	info, err := schedule.ReadFrom("test.csv", []byte(b.String()), func(row *takeoff.Row) error { tk.Add(row); return nil })
	if err != nil {
		t.Fatal(err)
	}
	tk.Finish(info.Schedule, info.Faults, info.Notes)
	return p, q, network.Build(tk, network.Prices{})
}

func seeds(n int) (out []uint64) {
	for seed := range n {
		out = append(out, uint64(seed))
	}
	return out
}

// A division of pieces that come and go is only called proved where each of the
// searches behind it was finished, and no division costs less than the bound.
func TestTimedProofUnderAWorkLimit(t *testing.T) {
	proved, found := 0, 0
	for _, seed := range append([]uint64{32180}, seeds(1000)...) { // 32180: a way left aside after a search that wasn't finished
		r := rand.New(rand.NewPCG(seed, 7))
		p, q, net := coming(t, r, 18+r.IntN(12))
		best, err := p.solveTimed(q, net)
		if err != nil || !best.Exhaustive {
			continue
		}
		q.WorkLimit = 1
		sol, err := p.solveTimed(q, net)
		if err != nil {
			t.Fatal(err)
		}
		s := &timedSearch{p: p}
		if sol.Exhaustive {
			proved++
			if s.cheaper(best.Score, sol.Score) {
				t.Errorf("seed %d: %+v is called proved, the best is %+v", seed, sol.Score, best.Score)
			}
			continue
		}
		if found++; s.cheaper(best.Score, sol.Bound) {
			t.Errorf("seed %d: %+v is the bound, the best is %+v", seed, sol.Bound, best.Score)
		}
	}
	if proved == 0 || found == 0 {
		t.Errorf("%d proved, %d found: the limit tries nothing", proved, found)
	}
}
