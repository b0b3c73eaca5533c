package planner

import (
	"errors"
	"fmt"
	"runtime"
	"slices"
	"sync/atomic"

	"blankoff/planner/divide"
	"blankoff/planner/duty"
	"blankoff/planner/network"
	"blankoff/takeoff"
)

// Make plans the tests of a takeoff. It fails when a setting can't be used or
// when nothing is left that could be planned; the plan is returned with its
// faults even then.
func Make(t *takeoff.Takeoff, set Settings) (*Plan, error) {
	if err := set.Check(); err != nil {
		return nil, err
	}
	rows, err := duty.Settle(t, set)
	if err != nil {
		return nil, err
	}
	net := network.Build(t, set.Prices)
	net.Lengths = set.Units.Length
	z := duty.Mark(net, rows)
	p := &Plan{Takeoff: t, Network: net, Settings: set, sectionOf: make([]int, len(net.Nodes))}
	for k := range p.sectionOf {
		p.sectionOf[k] = -1
	}
	p.RefusedRows, p.RefusedM2 = rows.Refused() // after the marking, which may refuse more
	p.Faults = append(append(p.Faults, t.Faults...), rows.Faults...)
	list := p.dropUnreadable(divide.Patches(z, set), z)
	if err := p.divide(list); err != nil {
		return nil, err
	}
	p.nameSections()
	p.listCuts(z)
	p.listBlanks()
	p.listOutside()
	p.judge()
	p.prove(list)
	p.writeNotes(z)
	p.weigh()
	p.tryAlone()
	if len(p.Sections) == 0 {
		return p, errors.New("nothing is left to plan: " + p.whyNothing())
	}
	return p, nil
}

// whyNothing says why no section could be made.
func (p *Plan) whyNothing() string {
	if len(p.Faults) > 0 {
		return plural2(len(p.Faults), "fault, listed with its cure", "faults, listed with their cures")
	}
	for _, s := range p.Outside {
		return s.Reason
	}
	return "no row is in scope"
}

// dropUnreadable leaves outside what no range of the rig can read.
func (p *Plan) dropUnreadable(list []divide.Patch, z *duty.Zones) []divide.Patch {
	kept := list[:0]
	for _, q := range list {
		if q.Readable() {
			kept = append(kept, q)
			continue
		}
		v := p.Settings.Rigs.Judge(0, q.Duty.Pa, p.Settings.Headroom)
		why := v.Reason(p.Settings.Units)
		for _, k := range q.Nodes {
			z.Net.Nodes[k].State = network.Outside
			z.Net.Nodes[k].Reason = why
		}
		p.Notes = append(p.Notes, fmt.Sprintf("nothing at %s can be tested: %s; use another rig, or another pressure if the specifier agrees", p.Settings.Units.Pressure(q.Duty.Pa), why))
	}
	z.EndOutside()
	return kept
}

// divide solves every patch and makes its sections.
func (p *Plan) divide(list []divide.Patch) error {
	each := divideAll(list, p.Settings, p.Network)
	for i := range list {
		q := &list[i]
		if tell := p.Settings.Progress; tell != nil {
			tell(q.Duty.System, i+1, len(list))
		}
		if err := <-each[i]; err != nil {
			return err
		}
		first, many := len(p.Sections), make([]int, len(q.Solution.State))
		for _, part := range q.Solution.Part {
			many[part]++
		}
		if more := len(many); len(p.Sections)+more > cap(p.Sections) {
			p.Sections = slices.Grow(p.Sections, max(more, len(p.Sections))) // twice the room: a section is large
		}
		for part := range q.Solution.State {
			s := newSection(q)
			s.Nodes = make([]int, 0, many[part])
			p.Sections = append(p.Sections, s)
		}
		for x, k := range q.Nodes {
			s := first + q.Solution.Part[x]
			p.sectionOf[k] = s
			p.Sections[s].Nodes = append(p.Sections[s].Nodes, k)
		}
	}
	return nil
}

// divideAll divides the patches on all cores, each by itself: no answer depends
// on another, so that they are the same in whatever order they come. It gives what
// became of each; work that nobody waits for any more is left after an error.
func divideAll(list []divide.Patch, set Settings, net *network.Network) []chan error {
	each := make([]chan error, len(list))
	for i := range each {
		each[i] = make(chan error, 1)
	}
	var next atomic.Int64
	var failed atomic.Bool
	for range min(runtime.GOMAXPROCS(0), len(list)) {
		go func() {
			for i := int(next.Add(1)) - 1; i < len(list) && !failed.Load(); i = int(next.Add(1)) - 1 {
				err := list[i].Divide(set, net)
				if err != nil {
					failed.Store(true)
				}
				each[i] <- err
			}
		}()
	}
	return each
}

// tryAlone plans with each of several rigs alone, so that the reader sees which
// of them is needed.
func (p *Plan) tryAlone() {
	if len(p.Settings.Rigs) < 2 || p.Settings.OnlyOwn {
		return
	}
	for _, r := range p.Settings.Rigs {
		set := p.Settings
		set.Rigs = set.Rigs[:0:0]
		set.Rigs = append(set.Rigs, r)
		alone := RigAlone{Rig: r.Name}
		if o, err := Make(p.Takeoff, set); err == nil {
			alone.Score, alone.Left = o.Proof.Score, o.Balance.Outside
		} else {
			alone.Left = p.Balance.Takeoff
		}
		p.Alone = append(p.Alone, alone)
	}
}
