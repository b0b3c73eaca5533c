package totals_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"blankoff/takeoff/totals"
)

// TestSum: areas between a mm2 and a km2 add up to what exact arithmetic makes of them,
// and parts to the whole.
func TestSum(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	exact := new(big.Float).SetPrec(500)
	var whole totals.Sum
	var parts [7]totals.Sum
	for i := range 200_000 {
		v := math.Pow(10, r.Float64()*12-6)
		exact.Add(exact, big.NewFloat(v))
		whole.Add(v)
		parts[i%7].Add(v)
	}
	want, _ := exact.Float64()
	if whole.Value() != want {
		t.Errorf("%.12g, exactly %.12g", whole.Value(), want)
	}
	var again totals.Sum
	for _, p := range parts {
		again.Add(p.Value())
	}
	if d := math.Abs(again.Value() - want); d > 1e-12*want {
		t.Errorf("parts add up to %.12g, %g off", again.Value(), d)
	}
}

// TestJointFlag: both ends of the usual range belong to it, and no area has no ratio.
func TestJointFlag(t *testing.T) {
	if totals.JointRatio(3, 0) != 0 || totals.JointFlag(3, 0) != "" || totals.JointFlag(10, 10) != "" || totals.JointFlag(15, 10) != "" {
		t.Error("the ends of the range")
	}
	if totals.JointFlag(9.99, 10) == "" || totals.JointFlag(15.01, 10) == "" {
		t.Error("just outside the range")
	}
}
