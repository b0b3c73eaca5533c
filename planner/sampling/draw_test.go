package sampling_test

import (
	"fmt"
	"math"
	"math/big"
	"testing"

	"blankoff/planner/sampling"
)

// pcg is the documented generator in whole numbers of any size: a 128-bit
// congruential state and the DXSM output (constants of the PCG family).
func pcg(state *big.Int) uint64 {
	number := func(s string) *big.Int { v, _ := new(big.Int).SetString(s, 16); return v }
	state.Mul(state, number("2360ed051fc65da44385df649fccf645"))
	state.Add(state, number("5851f42d4c957f2d14057b7ef767814f"))
	state.And(state, number("ffffffffffffffffffffffffffffffff"))
	hi := new(big.Int).Rsh(state, 64).Uint64()
	lo := new(big.Int).And(state, number("ffffffffffffffff")).Uint64()
	hi ^= hi >> 32
	hi *= 0xda942042e4dd58b5
	hi ^= hi >> 48
	return hi * (lo | 1)
}

// TestGeneratorCanBeRedone draws with another build of what the documentation
// says, without the standard library's generator.
func TestGeneratorCanBeRedone(t *testing.T) {
	for _, seed := range []uint64{0, 1, 7, math.MaxUint64} {
		state := new(big.Int).Lsh(new(big.Int).SetUint64(seed), 64)
		g := sampling.NewGenerator(seed)
		for i := range 500 {
			n := uint64(i + 1)
			if i%5 == 0 {
				n = math.MaxUint64/3*2 + uint64(i) // where a third of the outputs is thrown away
			}
			two64 := new(big.Int).Lsh(big.NewInt(1), 64)
			reject := new(big.Int).Mod(two64, new(big.Int).SetUint64(n))
			for {
				product := new(big.Int).Mul(new(big.Int).SetUint64(pcg(state)), new(big.Int).SetUint64(n))
				want, low := new(big.Int).DivMod(product, two64, new(big.Int))
				if low.Cmp(reject) < 0 {
					continue
				}
				if got := g.Below(n); got != want.Uint64() {
					t.Fatalf("seed %d, number %d: %d, want %d", seed, i, got, want)
				}
				break
			}
		}
	}
	// Pinned: a seed printed today draws the same sections in years.
	if p := choose(t, library(), sampling.Ask{Percent: 25, Seed: 1}); fmt.Sprint(p.Drawn) != pinned {
		t.Errorf("seed 1 draws %v, once %s", p.Drawn, pinned)
	}
}

const pinned = "[S7 S10 S9]"

func TestNamesAreOrderedAsPeopleDo(t *testing.T) {
	var list []sampling.Section
	for _, id := range []string{"S10", "S2", "S1", "S01", "A2-10", "A2-9", "A", "S99999999999999999999999", "S100000000000000000000000", "10", "9"} {
		list = append(list, sampling.Section{ID: id, Area: 10})
	}
	p := choose(t, list, sampling.Ask{Percent: 100})
	want := "[9 10 A A2-9 A2-10 S01 S1 S2 S10 S99999999999999999999999 S100000000000000000000000]"
	if fmt.Sprint(p.IDs) != want {
		t.Errorf("%v, want %s", p.IDs, want)
	}
}
