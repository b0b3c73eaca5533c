package sampling

import "math"

// Detection is the chance that a sample finds a fault.
type Detection struct {
	Bad      float64 // share of the sections supposed to be bad, 0 to 1
	Sections int     // how many that is, to the nearest whole section, at least 1
	Chance   float64 // that at least one of them is in the sample, 0 to 1
}

// supposed are the shares of bad sections that a chance is given for.
var supposed = []float64{0.1, 0.2, 0.3}

// Chance is the chance that at least one of bad sections is among those picked
// out of total, each set of that many equally likely: the hypergeometric
// 1 - C(total-bad, picked) / C(total, picked), without replacement. From 0 to 1;
// NaN where the counts can't be (negative, or more than there are).
func Chance(total, bad, picked int) float64 {
	if total < 0 || bad < 0 || picked < 0 || bad > total || picked > total {
		return math.NaN()
	}
	few, many := min(bad, picked), max(bad, picked)
	// Place the few one by one: each misses the many. In logarithms, so that a
	// small chance doesn't drown in 1 minus nearly 1.
	var missed float64
	for i := range few {
		if many >= total-i {
			return 1
		}
		missed += math.Log1p(-float64(many) / float64(total-i))
	}
	return max(0, -math.Expm1(missed))
}

// detect gives the chances for a sample of so many sections.
func detect(total, picked int) []Detection {
	var out []Detection
	for _, share := range supposed {
		bad := min(total, max(1, int(math.Round(share*float64(total)+1e-9))))
		out = append(out, Detection{share, bad, Chance(total, bad, picked)})
	}
	return out
}
