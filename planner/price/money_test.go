package price_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"blankoff/planner/price"
)

func TestText(t *testing.T) {
	for _, tt := range []struct {
		m      price.Money
		digits int
		want   string
	}{
		{0, 2, "0.00"}, {5, 2, "0.05"}, {-5, 2, "-0.05"}, {123456789, 2, "1 234 567.89"}, {100000, 2, "1 000.00"},
		{999, 0, "999"}, {1000, 0, "1 000"}, {1000, 3, "1.000"}, {7, 3, "0.007"},
		{math.MinInt64, 2, "-92 233 720 368 547 758.08"},
	} {
		if got := (price.Currency{Code: "XTS", Digits: tt.digits}).Text(tt.m); got != tt.want {
			t.Errorf("%d with %d digits: %q, want %q", tt.m, tt.digits, got, tt.want)
		}
	}
}

// Halves go away from zero, once.
func TestAmount(t *testing.T) {
	for _, tt := range []struct {
		q    price.Quantity // hundredths
		rate price.Money
		want price.Money
	}{
		{100, 5500, 5500}, {162, 9500, 15390}, {1, 50, 1}, {1, 49, 0}, {3, 50, 2}, {-1, 50, -1}, {250, 1, 3}, {249, 1, 2}, {40732, 865, 352332},
	} {
		if got, err := price.Amount(tt.q, tt.rate); err != nil || got != tt.want {
			t.Errorf("%s x %d = %d (%v), want %d", tt.q.Text(), tt.rate, got, err, tt.want)
		}
	}
	if _, err := price.Amount(math.MaxInt64, 1000); err == nil {
		t.Error("an amount that doesn't fit was taken")
	}
}

// TestAmountAgainstRationals sets amounts beside fractions of any length.
func TestAmountAgainstRationals(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	half := big.NewRat(1, 2)
	for range 20000 {
		q, rate := r.Int64N(1<<uint(1+r.IntN(40)))-1<<20, r.Int64N(1<<uint(1+r.IntN(40)))
		exact := big.NewRat(q, 100)
		exact.Mul(exact, new(big.Rat).SetInt64(rate))
		sign := exact.Sign()
		exact.Abs(exact).Add(exact, half)
		want := new(big.Int).Quo(exact.Num(), exact.Denom())
		if sign < 0 {
			want.Neg(want)
		}
		got, err := price.Amount(price.Quantity(q), price.Money(rate))
		if fits := want.IsInt64(); fits != (err == nil) || fits && int64(got) != want.Int64() {
			t.Fatalf("%d hundredths x %d = %d (%v), want %s", q, rate, got, err, want)
		}
	}
}

// TestShare: the parts add up, each is less than one unit from its exact share,
// and nobody with a larger remainder is passed over.
func TestShare(t *testing.T) {
	if got := price.Share(100, []int64{1, 1, 1}); got[0] != 34 || got[1] != 33 || got[2] != 33 {
		t.Errorf("100 in three: %v", got)
	}
	// 10 by 5 : 3 : 1 is 5.56, 3.33, 1.11: the unit left goes to the first.
	if got := price.Share(10, []int64{5, 3, 1}); got[0] != 6 || got[1] != 3 || got[2] != 1 {
		t.Errorf("10 by 5, 3, 1: %v", got)
	}
	if price.Share(10, []int64{0, 0}) != nil || price.Share(10, nil) != nil {
		t.Error("a total was shared out over nothing")
	}
	r := rand.New(rand.NewPCG(5, 6))
	for range 5000 {
		total := price.Money(r.Int64N(1<<uint(1+r.IntN(50)))) - 1<<10
		weights := make([]int64, 1+r.IntN(30))
		var all int64
		for i := range weights {
			weights[i] = r.Int64N(100000)
			all += weights[i]
		}
		if all == 0 {
			continue
		}
		sum := price.Money(0)
		for i, part := range price.Share(total, weights) {
			sum += part
			exact := float64(total) * float64(weights[i]) / float64(all)
			if math.Abs(float64(part)-exact) > 1+1e-9*math.Abs(exact) {
				t.Fatalf("share %d of %d is %d, exactly %g", i, total, part, exact)
			}
		}
		if sum != total {
			t.Fatalf("the shares of %d come to %d", total, sum)
		}
	}
}
