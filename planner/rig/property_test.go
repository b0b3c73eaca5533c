package rig

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// random makes rigs of one to four ranges, some with fans and hoses.
func random(rng *rand.Rand) *Rig {
	r := &Rig{Name: "random"}
	for i := range 1 + rng.IntN(4) {
		low := math.Exp(rng.Float64()*6 - 1) // 0.4 to 150
		one := Range{
			Name: fmt.Sprintf("r%d", i), MinLS: low, MaxLS: low * (1.5 + 14*rng.Float64()),
			AccuracyPercent: 6 * rng.Float64(), AccuracyLS: low * 0.2 * rng.Float64(), OwnLeakLS: low * 0.1 * rng.Float64(),
		}
		if rng.IntN(2) == 0 {
			q, pa := one.MaxLS*(0.7+0.6*rng.Float64()), 50+300*rng.Float64()
			for range 2 + rng.IntN(3) {
				one.Fan = append(one.Fan, FanPoint{pa, q})
				pa, q = pa+100+900*rng.Float64(), q*(0.4+0.55*rng.Float64())
			}
			if rng.IntN(2) == 0 {
				one.Hose = &Hose{LengthM: 1 + 9*rng.Float64(), DiameterM: 0.05 + 0.1*rng.Float64(), Friction: 0.03}
			}
		}
		r.Ranges = append(r.Ranges, one)
	}
	return r
}

// reads is the definition, word for word: the reading q can be trusted on some
// range, and the fan can hold it there. No windows are involved.
func reads(r *Rig, q, pa float64) bool {
	for _, one := range r.Ranges {
		trusted := q >= one.MinLS+one.Err(one.MinLS) && q <= one.MaxLS-one.Err(one.MaxLS)-one.OwnLeakLS
		if trusted && pushes(one, q, pa) {
			return true
		}
	}
	return false
}

// pushes asks the curve the other way round from the program: at which
// pressure does the fan deliver q, and is that enough for duct and hose?
func pushes(one Range, q, pa float64) bool {
	if len(one.Fan) == 0 {
		return true
	}
	if one.Hose != nil {
		v := q / 1000 / (math.Pi * one.Hose.DiameterM * one.Hose.DiameterM / 4)
		pa += (one.Hose.Friction*one.Hose.LengthM/one.Hose.DiameterM + 1.5) * 0.6 * v * v
	}
	last := one.Fan[len(one.Fan)-1]
	if q <= last.FlowLS {
		return pa <= last.PressurePa
	}
	for i := len(one.Fan) - 2; i >= 0; i-- {
		a, b := one.Fan[i], one.Fan[i+1]
		if q <= a.FlowLS {
			return pa <= a.PressurePa+(a.FlowLS-q)/(a.FlowLS-b.FlowLS)*(b.PressurePa-a.PressurePa)
		}
	}
	return false
}

// judgedByScan is rule 3 by brute force: q and everything up to q x headroom
// can be read. The places where a hole could hide are looked at too.
func judgedByScan(r *Rig, q, pa, headroom float64) bool {
	top := q * headroom
	for i := range 401 {
		if !reads(r, q+(top-q)*float64(i)/400, pa) {
			return false
		}
	}
	for _, one := range r.Ranges {
		_, high, ok := one.readable(pa)
		if x := high + 1e-7; ok && x > q && x < top && !reads(r, x, pa) {
			return false
		}
	}
	return true
}

// scanEdge says whether q is too near an end of a range to be told by a scan.
func scanEdge(r *Rig, q, pa, headroom float64) bool {
	for _, one := range r.Ranges {
		low, high, _ := one.readable(pa)
		for _, end := range []float64{low, high, high / headroom} {
			if math.Abs(q-end) < 1e-6*math.Max(1, q) {
				return true
			}
		}
	}
	return false
}

func TestWindowsAgainstBruteForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	judged, gaps := 0, 0
	for range 150 {
		r := random(rng)
		pa, headroom := 100+1500*rng.Float64(), 1+2*rng.Float64()
		for q := 0.3; q < 3000; q *= 1.07 {
			if scanEdge(r, q, pa, headroom) {
				continue
			}
			v := r.Judge(q, pa, headroom)
			want := judgedByScan(r, q, pa, headroom)
			if (v.State == In) != want {
				t.Fatalf("%+v\nlimit %g at %g Pa, headroom %g: %+v, the scan says %v", r, q, pa, headroom, v, want)
			}
			if name, ok := r.RangeFor(q, pa, headroom); ok != want || name != v.Range {
				t.Fatalf("limit %g: RangeFor says %q %v, Judge %+v", q, name, ok, v)
			}
			if want {
				judged++
			}
			if v.State == Gap {
				gaps++
			}
			checkSides(t, r, v, q, pa, headroom)
		}
	}
	if judged < 500 || gaps < 50 {
		t.Errorf("a scan that shows little: %d judged, %d gaps", judged, gaps)
	}
}

// checkSides holds the three ways of not being judged to their meaning: which
// way lies a window, where a larger or a smaller section would help.
func checkSides(t *testing.T, r *Rig, v Verdict, q, pa, headroom float64) {
	t.Helper()
	if v.State == In {
		return
	}
	windows := r.FlowWindows(pa, headroom)
	above, below := false, false
	for _, w := range windows {
		above = above || w.Low > q
		below = below || w.High < q
	}
	want := Over
	switch {
	case above && below:
		want = Gap
	case above:
		want = Under
	}
	if v.State != want {
		t.Fatalf("limit %g among %+v: got %s, want %s", q, windows, v.State, want)
	}
}

// covered is how much of the flows from 0 to 10000 L/s is in a window.
func covered(r *Rig, pa, headroom float64) (sum float64) {
	for _, w := range r.FlowWindows(pa, headroom) {
		sum += w.High - w.Low
	}
	return sum
}

// inside says whether every window of a lies in one of b.
func inside(a, b []FlowWindow) bool {
	for _, w := range a {
		if !within(b, w.Low) || !within(b, w.High) {
			return false
		}
	}
	return true
}

func TestWindowsShrink(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	worse := map[string]func(*Range){
		"accuracy of reading": func(r *Range) { r.AccuracyPercent += 1 },
		"fixed accuracy":      func(r *Range) { r.AccuracyLS += 0.2 },
		"own leakage":         func(r *Range) { r.OwnLeakLS += 0.3 },
		"a higher minimum":    func(r *Range) { r.MinLS *= 1.1 },
		"a lower maximum":     func(r *Range) { r.MaxLS *= 0.95 },
		"a weaker fan": func(r *Range) {
			for i := range r.Fan {
				r.Fan[i].FlowLS *= 0.9
			}
		},
		"a longer hose": func(r *Range) {
			if r.Hose != nil {
				r.Hose.LengthM += 5
			}
		},
	}
	for range 200 {
		r := random(rng)
		pa, headroom := 100+1500*rng.Float64(), 1+rng.Float64()
		before, wide := r.FlowWindows(pa, headroom), covered(r, pa, headroom)
		if narrow := r.FlowWindows(pa, headroom*1.2); !inside(narrow, before) {
			t.Fatalf("more headroom: %+v becomes %+v", before, narrow)
		}
		for what, change := range worse {
			state := *r
			state.Ranges = nil
			for _, one := range r.Ranges {
				one.Fan = append([]FanPoint(nil), one.Fan...)
				if one.Hose != nil {
					h := *one.Hose
					one.Hose = &h
				}
				change(&one)
				state.Ranges = append(state.Ranges, one)
			}
			after := state.FlowWindows(pa, headroom)
			if !inside(after, before) || covered(&state, pa, headroom) > wide+1e-9 {
				t.Fatalf("%s: %+v becomes %+v", what, before, after)
			}
		}
	}
}

// One range cut in two that overlap, or reordered, judges the same areas.
func TestSplittingARangeChangesNothing(t *testing.T) {
	whole := &Rig{Ranges: []Range{{Name: "all", MinLS: 1.4, MaxLS: 180, AccuracyLS: 0.4, OwnLeakLS: 0.2, Fan: curve()}}}
	for _, cut := range [][2]float64{{30, 40}, {5, 90}, {2, 3.5}, {1.4, 100}} {
		lower, upper := whole.Ranges[0], whole.Ranges[0]
		lower.Name, lower.MaxLS = "lower", cut[1]
		upper.Name, upper.MinLS = "upper", cut[0]
		for _, ranges := range [][]Range{{lower, upper}, {upper, lower}} {
			split := &Rig{Ranges: ranges}
			for _, pa := range []float64{150, 400, 1000, 1900} {
				for _, h := range []float64{1, 1.5, 3} {
					want, got := whole.AreaWindows(0.31, pa, h), split.AreaWindows(0.31, pa, h)
					if len(want) != 1 || len(got) != 1 || got[0].Low != want[0].Low || got[0].High != want[0].High {
						t.Errorf("cut at %v, %g Pa, headroom %g: got %+v, want %+v", cut, pa, h, got, want)
					}
				}
			}
		}
	}
}

// A limit twice as large halves the areas.
func TestAreasGoInverselyWithTheLimit(t *testing.T) {
	r := twoRanges()
	one, two := r.AreaWindows(0.2, 400, 1.5), r.AreaWindows(0.4, 400, 1.5)
	for i := range one {
		if !near(one[i].Low, 2*two[i].Low) || !near(one[i].High, 2*two[i].High) {
			t.Errorf("window %d: %+v against %+v", i, one[i], two[i])
		}
	}
}

func BenchmarkJudgeThroughFanAndHose(b *testing.B) {
	r := twoRanges()
	for i := range r.Ranges {
		r.Ranges[i].Fan, r.Ranges[i].Hose = curve(), &Hose{LengthM: 5, DiameterM: 0.1, Friction: 0.03}
	}
	for b.Loop() {
		r.Judge(40, 1000, 1.5)
	}
}
