package planner

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"blankoff/planner/tightness"
)

// mostJoined is how many sections one jumper hose is taken to join.
const mostJoined = 5

// pairUp joins like sections under range by jumper hoses, each section once, so
// that all of the hoses could be used: those of one level first, then any.
func (p *Plan) pairUp() {
	p.joined = map[int][]int{}
	alike := p.alike()
	for _, sameLevel := range []bool{true, false} {
		for i := range p.Sections {
			s := &p.Sections[i]
			if !s.State.Under() || s.Grouping || s.Area <= 0 || p.joined[i] != nil {
				continue
			}
			if group := p.joinWith(i, alike[s.key()], sameLevel); group != nil {
				for _, k := range group {
					p.joined[k] = group
				}
			}
		}
	}
}

// mostSeen is how many sections further on are looked at for a hose: it has to
// reach.
const mostSeen = 40

// sectionKey is what sections that are tested alike have in common.
type sectionKey struct {
	system, scheme, class string
	pa                    float64
	sign                  tightness.Sign
}

func (s *Section) key() sectionKey {
	return sectionKey{s.System, s.Scheme.Name, s.Class.Name, s.TestPa, s.Sign}
}

// alike lists the sections under range that a hose could join, by what they have
// in common.
func (p *Plan) alike() map[sectionKey][]int {
	m := map[sectionKey][]int{}
	for i := range p.Sections {
		if s := &p.Sections[i]; s.State.Under() && !s.Grouping && s.Area > 0 {
			m[s.key()] = append(m[s.key()], i)
		}
	}
	return m
}

// joinWith finds sections that are in range together with section i: the one
// that alone suffices, else the next few, or none.
func (p *Plan) joinWith(i int, alike []int, sameLevel bool) []int {
	s := &p.Sections[i]
	low, high := s.next()
	if math.IsInf(low, 1) {
		return nil
	}
	var free []int
	at, _ := slices.BinarySearch(alike, i+1)
	for _, k := range alike[at:min(at+mostSeen, len(alike))] {
		if p.joined[k] == nil && (!sameLevel || slices.Equal(p.Sections[k].Levels, s.Levels)) {
			free = append(free, k)
		}
	}
	for _, k := range free {
		if a := s.Area + p.Sections[k].Area; a >= low && a <= high {
			return []int{i, k}
		}
	}
	group, sum := []int{i}, s.Area
	for _, k := range free {
		if len(group) == mostJoined || sum+p.Sections[k].Area > high {
			continue
		}
		group, sum = append(group, k), sum+p.Sections[k].Area
		if sum >= low {
			return group
		}
	}
	return nil
}

// next is the first window above the section's area, m2; infinite if none is.
func (s *Section) next() (low, high float64) {
	for _, w := range s.Windows {
		if w.Low > s.Area {
			return w.Low, w.High
		}
	}
	return math.Inf(1), 0
}

// saved is what fewer tests and a cut less are worth.
func (p *Plan) saved(tests int, minutes float64) string {
	return fmt.Sprintf("%.0f min (%s)", float64(tests)*p.Settings.TestMinutes+minutes, plural(tests, "test"))
}

// jumperCure says which sections a jumper hose would join with section i, and
// where they are if that is on other levels.
func (p *Plan) jumperCure(i int) string {
	group := p.joined[i]
	if group == nil {
		return ""
	}
	s, sum := &p.Sections[i], 0.0
	var names []string
	for _, k := range group {
		o := &p.Sections[k]
		sum += o.Area
		if k == i {
			continue
		}
		name := o.ID
		if !slices.Equal(o.Levels, s.Levels) {
			name += " (" + strings.Join(o.Levels, ", ") + ")"
		}
		names = append(names, name)
	}
	return fmt.Sprintf("a jumper hose to %s: together %s in one test, which saves %s", strings.Join(names, " and "), p.tenths(sum), p.saved(len(group)-1, 0))
}
