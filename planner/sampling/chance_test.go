package sampling_test

import (
	"math"
	"math/big"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat/combin"

	"blankoff/planner/sampling"
)

// exactChance counts subsets in whole numbers: sum over j >= 1 of
// C(bad, j) C(total-bad, picked-j) / C(total, picked).
func exactChance(total, bad, picked int) float64 {
	sum := new(big.Int)
	for j := 1; j <= min(bad, picked); j++ {
		if picked-j > total-bad {
			continue
		}
		a := new(big.Int).Binomial(int64(bad), int64(j))
		sum.Add(sum, a.Mul(a, new(big.Int).Binomial(int64(total-bad), int64(picked-j))))
	}
	f, _ := new(big.Rat).SetFrac(sum, new(big.Int).Binomial(int64(total), int64(picked))).Float64()
	return f
}

// TestChanceIsHypergeometric holds every case of up to 40 sections, and larger
// ones, against an exact sum and against gonum's logarithms of binomials (gonum
// has no hypergeometric distribution).
func TestChanceIsHypergeometric(t *testing.T) {
	check := func(total, bad, picked int) {
		got, want := sampling.Chance(total, bad, picked), exactChance(total, bad, picked)
		if math.Abs(got-want) > 1e-13*max(want, 1e-3) {
			t.Fatalf("%d of which %d bad, %d picked: %.17g, exactly %.17g", total, bad, picked, got, want)
		}
		if picked <= total-bad {
			log := combin.LogGeneralizedBinomial(float64(total-bad), float64(picked)) - combin.LogGeneralizedBinomial(float64(total), float64(picked))
			if math.Abs(got-(1-math.Exp(log))) > 1e-9 {
				t.Fatalf("%d of which %d bad, %d picked: %g, gonum %g", total, bad, picked, got, 1-math.Exp(log))
			}
		}
	}
	for total := range 41 {
		for bad := range total + 1 {
			for picked := range total + 1 {
				check(total, bad, picked)
			}
		}
	}
	check(1000, 1, 1)
	check(1000, 300, 12)
	check(3000, 3, 2900)
}

// TestChanceAgainstSciPy holds the chance against hypergeom.sf(0, total, bad,
// picked) of SciPy 1.10.1.
func TestChanceAgainstSciPy(t *testing.T) {
	for _, c := range []struct {
		total, bad, picked int
		want               float64
	}{
		{9, 1, 1, 0.111111111111111}, {9, 2, 3, 0.583333333333333}, {12, 3, 4, 0.745454545454545},
		{20, 2, 2, 0.194736842105263}, {20, 4, 5, 0.718266253869969}, {37, 11, 6, 0.900967143614202},
		{60, 6, 12, 0.754882823657625}, {100, 10, 10, 0.669523788913275}, {100, 20, 10, 0.904883727569212},
		{100, 30, 20, 0.999697967115023}, {250, 25, 25, 0.937794992895374}, {1000, 100, 20, 0.880998081475208},
		{1000, 300, 12, 0.986548318757838}, {3000, 3, 2900, 0.999964030705365},
	} {
		if got := sampling.Chance(c.total, c.bad, c.picked); math.Abs(got-c.want) > 1e-11 {
			t.Errorf("%d of which %d bad, %d picked: %.15g, SciPy %.15g", c.total, c.bad, c.picked, got, c.want)
		}
	}
}

// TestChanceOfLargeJobs derives the figures quoted in the trade, 49 % for 3
// sections and 83 % for 8 with 20 % bad: they are 1 - 0.8^n, sections drawn
// with replacement, which is where a very large job goes. Small jobs do better.
func TestChanceOfLargeJobs(t *testing.T) {
	for picked, quoted := range map[int]float64{3: 0.49, 8: 0.83} {
		large := sampling.Chance(1_000_000, 200_000, picked)
		if math.Abs(large-quoted) > 0.005 {
			t.Errorf("%d sections of a large job: %.4f, quoted %.2f", picked, large, quoted)
		}
		if small := sampling.Chance(20, 4, picked); small <= large {
			t.Errorf("%d sections of twenty: %.4f isn't above %.4f", picked, small, large)
		}
	}
}

func TestChanceThatCannotBe(t *testing.T) {
	for _, c := range [][3]int{{-1, 0, 0}, {5, 6, 1}, {5, 1, 6}, {5, -1, 1}, {5, 1, -1}} {
		if v := sampling.Chance(c[0], c[1], c[2]); !math.IsNaN(v) {
			t.Errorf("%v: %g", c, v)
		}
	}
}

// TestChanceByDrawing plays the draw itself: how often does a pick of 3 of 12
// hold one of 2 bad sections? Within four standard errors of the chance.
func TestChanceByDrawing(t *testing.T) {
	list := equal(12)
	const draws = 20_000
	found := 0
	for seed := range uint64(draws) {
		p := choose(t, list, sampling.Ask{Percent: 25, Seed: seed})
		if slices.Contains(p.IDs, "1") || slices.Contains(p.IDs, "2") {
			found++
		}
	}
	want := sampling.Chance(12, 2, 3)
	if got := float64(found) / draws; math.Abs(got-want) > 4*math.Sqrt(want*(1-want)/draws) {
		t.Errorf("%g of the draws find a bad one, chance %g", got, want)
	}
}
