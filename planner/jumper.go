package planner

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// mostJoined is how many sections one jumper hose is taken to join.
const mostJoined = 5

// pairUp joins like sections under range by jumper hoses, each section once, so
// that all of the hoses could be used: those of one level first, then any.
func (p *Plan) pairUp() {
	p.joined = map[int][]int{}
	for _, sameLevel := range []bool{true, false} {
		for i := range p.Sections {
			s := &p.Sections[i]
			if !s.State.Under() || s.Grouping || s.Area <= 0 || p.joined[i] != nil {
				continue
			}
			if group := p.joinWith(i, sameLevel); group != nil {
				for _, k := range group {
					p.joined[k] = group
				}
			}
		}
	}
}

// joinWith finds sections that are in range together with section i: the one
// that alone suffices, else the next few, or none.
func (p *Plan) joinWith(i int, sameLevel bool) []int {
	s := &p.Sections[i]
	low, high := s.next()
	if math.IsInf(low, 1) {
		return nil
	}
	var free []int
	for k := i + 1; k < len(p.Sections); k++ {
		o := &p.Sections[k]
		if o.State.Under() && !o.Grouping && o.Area > 0 && p.joined[k] == nil && s.like(o) && (!sameLevel || slices.Equal(o.Levels, s.Levels)) {
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
	return fmt.Sprintf("a jumper hose to %s: together %.1f m2 in one test, which saves %s", strings.Join(names, " and "), sum, p.saved(len(group)-1, 0))
}
