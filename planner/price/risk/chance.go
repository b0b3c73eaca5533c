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

// weighed is the chances at one value of the job's term, and its weight.
type weighed struct {
	given
	weight float64
}

// overJob is the chances over the job's term, the weights coming to 1. A sum of
// evenly spaced values times the density is exact to many digits for smooth
// functions.
func (p *Prior) overJob() []weighed {
	if p.JobShare == 0 {
		return []weighed{{p.at(0, 1), 1}}
	}
	const reach, steps = 8.0, 1600
	out, all := make([]weighed, steps+1), 0.0
	for k := range out {
		z := -reach + 2*reach*float64(k)/steps
		out[k] = weighed{p.at(z, 1), normal.Prob(z)}
		all += out[k].weight
	}
	for k := range out {
		out[k].weight /= all
	}
	return out
}

// ExpectedRetests is the number of retests expected of n sections, exact: each
// that fails has one, each that fails again another, up to Most.
func (p *Prior) ExpectedRetests(n int) float64 {
	sum := 0.0
	for _, g := range p.overJob() {
		term := g.weight * g.first
		for range p.Most {
			sum, term = sum+term, term*g.again
		}
	}
	return float64(n) * sum
}

// Failures is the chances that 0, 1, ... n of n sections fail at first, exact:
// binomial once the job's term is known.
func (p *Prior) Failures(n int) []float64 {
	out := make([]float64, n+1)
	for _, g := range p.overJob() {
		if g.weight < 1e-16 {
			continue
		}
		for k := range out {
			out[k] += g.weight * binomial(n, k, g.first)
		}
	}
	return out
}

// None is the chance that none of n sections fails at first.
func (p *Prior) None(n int) float64 {
	sum := 0.0
	for _, g := range p.overJob() {
		sum += g.weight * math.Pow(1-g.first, float64(n))
	}
	return sum
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
