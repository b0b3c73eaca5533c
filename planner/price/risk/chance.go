package risk

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// given is the chances of a section once the job's term is known.
type given struct {
	first, // that it fails
	unheld, // that it leaks more than the headroom
	again float64 // that a retest fails
}

var normal = distuv.UnitNormal

// at is the chances where the job's term is z of its standard deviations.
func (p *Prior) at(z, headroom float64) given {
	_, job, section := p.sigmas()
	above := func(median, bound float64) float64 {
		d := math.Log(median/bound) + job*z
		if section == 0 {
			if d > 0 {
				return 1
			}
			return 0
		}
		return normal.CDF(d / section)
	}
	g := given{first: above(p.Median, 1), again: 1 - p.Retest}
	g.unheld = above(p.Median, max(1, headroom))
	if p.RetestMedian > 0 {
		g.again = above(p.RetestMedian, 1)
	}
	return g
}

// Fail is the chance that a section fails at first: exact, whatever the share of
// the job.
func (p *Prior) Fail() float64 {
	all, _, _ := p.sigmas()
	return normal.CDF(math.Log(p.Median) / all)
}

// Unheld is the chance that a section leaks more than its headroom.
func (p *Prior) Unheld(headroom float64) float64 {
	all, _, _ := p.sigmas()
	return normal.CDF(math.Log(p.Median/max(1, headroom)) / all)
}

// overJob is the mean of f over the job's term. The sum of evenly spaced values
// times the density is exact to many digits for smooth f.
func (p *Prior) overJob(f func(g given) float64) float64 {
	if p.JobShare == 0 {
		return f(p.at(0, 1))
	}
	const reach, steps = 8.0, 1600
	sum, all := 0.0, 0.0
	for k := range steps + 1 {
		z := -reach + 2*reach*float64(k)/steps
		w := normal.Prob(z)
		sum, all = sum+w*f(p.at(z, 1)), all+w
	}
	return sum / all
}

// ExpectedRetests is the number of retests expected of n sections, exact: each
// that fails has one, each that fails again another, up to Most.
func (p *Prior) ExpectedRetests(n int) float64 {
	return float64(n) * p.overJob(func(g given) float64 {
		sum, term := 0.0, g.first
		for range p.Most {
			sum, term = sum+term, term*g.again
		}
		return sum
	})
}

// Failures is the chances that 0, 1, ... n of n sections fail at first, exact:
// binomial once the job's term is known.
func (p *Prior) Failures(n int) []float64 {
	out := make([]float64, n+1)
	for k := range out {
		out[k] = p.overJob(func(g given) float64 { return binomial(n, k, g.first) })
	}
	return out
}

// None is the chance that none of n sections fails at first.
func (p *Prior) None(n int) float64 {
	return p.overJob(func(g given) float64 { return math.Pow(1-g.first, float64(n)) })
}

func binomial(n, k int, p float64) float64 {
	if p <= 0 || p >= 1 { // sure, one way or the other
		if k == n && p >= 1 || k == 0 && p <= 0 {
			return 1
		}
		return 0
	}
	return distuv.Binomial{N: float64(n), P: p}.Prob(float64(k))
}
