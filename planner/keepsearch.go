package planner

import (
	"slices"
	"strconv"
	"strings"

	"blankoff/planner/duty"
	"blankoff/planner/partition"
)

// worse reports whether a has more sections over or under range than b.
func worse(a, b partition.Score) bool {
	return a.Over > b.Over || a.Over == b.Over && a.Under > b.Under
}

// scoreOf is a system's share of the score.
func (p *Plan) scoreOf(system string) partition.Score {
	for _, s := range p.Proof.BySystem {
		if s.System == system {
			return s.Score
		}
	}
	return partition.Score{}
}

// systemOf is the system of the section that a row is in.
func (p *Plan) systemOf(tag string) string {
	for _, k := range p.Network.Find(tag, 0) {
		if s := p.sectionOf[k]; s >= 0 {
			return p.Sections[s].System
		}
	}
	return ""
}

// has reports whether the plan has a section of just these pieces.
func (p *Plan) has(key string) bool {
	if p.keys == nil {
		p.keys = map[string]bool{}
		for i := range p.Sections {
			p.keys[p.keyOf(&p.Sections[i])] = true
		}
	}
	return p.keys[key]
}

// keyOf names what a section is made of, as duty.KeptSection.Key does.
func (p *Plan) keyOf(s *Section) string {
	var k duty.KeptSection
	for _, span := range p.Spans(s) {
		k.Spans = append(k.Spans, duty.KeptSpan{Tag: p.Takeoff.Items[span.Item].Name(), From: span.From, To: span.To})
	}
	return k.Key()
}

// first is the first choice of so many.
func first(size int) []int {
	pick := make([]int, size)
	for i := range pick {
		pick[i] = i
	}
	return pick
}

// next is the choice after pick out of n, or nil.
func next(pick []int, n int) []int {
	for i := len(pick) - 1; i >= 0; i-- {
		if pick[i] < n-len(pick)+i {
			pick[i]++
			for j := i + 1; j < len(pick); j++ {
				pick[j] = pick[j-1] + 1
			}
			return pick
		}
	}
	return nil
}

func without(list []duty.KeptSection, pick []int) []duty.KeptSection {
	var out []duty.KeptSection
	for i, k := range list {
		if !slices.Contains(pick, i) {
			out = append(out, k)
		}
	}
	return out
}

// nextID is the first number that no section of an earlier plan has had.
func nextID(old Old) int {
	most := 0
	for i := range old.Sections {
		if n, err := strconv.Atoi(strings.TrimPrefix(old.Sections[i].ID, "S")); err == nil {
			most = max(most, n)
		}
	}
	return most + 1
}

// tell says what became of the old sections.
func (k *keeper) tell(p *Plan, old Old, void []Void, proved bool) *Kept {
	out := &Kept{Void: void, Proved: proved}
	now := map[string]bool{}
	for i := range p.Sections {
		now[p.Sections[i].ID] = true
	}
	was := map[string]bool{}
	for i := range old.Sections {
		s := &old.Sections[i]
		was[s.ID] = true
		if now[s.ID] {
			out.Stay = append(out.Stay, s.ID)
		} else {
			out.Moved = append(out.Moved, s.ID)
		}
	}
	for i := range p.Sections {
		s := &p.Sections[i]
		if !was[s.ID] {
			out.New = append(out.New, s.ID)
			continue
		}
		for k := range old.Sections {
			if old.Sections[k].ID == s.ID {
				s.Status = old.Sections[k].Status
			}
		}
	}
	return out
}
