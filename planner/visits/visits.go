// Package visits finds the fewest visits to a site at which every test can be
// made between the day on which its section is up and the day on which the
// section is hidden.
package visits

import (
	"math"
	"sort"
)

// Window is when one test can be made: from the day Ready until the day Closed,
// both included; infinite where nothing is said.
type Window struct {
	Ready, Closed float64
}

// Visit is one visit: its tests, by their numbers in the list of windows, the
// earliest day on which all of them can be made, and the last.
type Visit struct {
	Earliest, Latest float64
	Tests            []int
}

// Least finds the fewest visits, none before the day from (minus infinity: any
// day), at which every test can be made, and the tests for which no day is
// left. A visit is put off until a section would be hidden, takes with it
// whatever is up by then, and is then moved as early as its tests allow; among
// windows on a line no plan has fewer. A visit takes as many tests as there are.
func Least(windows []Window, from float64) (list []Visit, missed []int) {
	var order []int
	for i, w := range windows {
		if math.Max(w.Ready, from) > w.Closed {
			missed = append(missed, i)
			continue
		}
		order = append(order, i)
	}
	sort.SliceStable(order, func(a, b int) bool { return windows[order[a]].Closed < windows[order[b]].Closed })
	for len(order) > 0 {
		v := Visit{Earliest: from, Latest: windows[order[0]].Closed}
		var rest []int
		for _, i := range order {
			if windows[i].Ready > v.Latest {
				rest = append(rest, i)
				continue
			}
			v.Earliest = math.Max(v.Earliest, windows[i].Ready)
			v.Tests = append(v.Tests, i)
		}
		sort.Ints(v.Tests)
		list, order = append(list, v), rest
	}
	return list, missed
}
