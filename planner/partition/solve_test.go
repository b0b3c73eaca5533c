package partition

import (
	"math/rand/v2"
	"testing"
)

func TestSolveAgreesWithBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for i := range 6000 {
		p := draw(r, 1+r.IntN(9))
		s, err := Solve(p)
		if err != nil {
			t.Fatalf("case %d: %v\n%+v", i, err, p)
		}
		if err := verify(p, s); err != nil {
			t.Fatalf("case %d: %v\n%+v", i, err, p)
		}
		if want := brute(p); merit(p, s.Score) != merit(p, want) || !s.Exhaustive {
			t.Fatalf("case %d: score %+v exhaustive %v, brute force %+v\n%+v", i, s.Score, s.Exhaustive, want, p)
		}
	}
}
