package programme

import "sort"

// Packed looks for fewer days: tests of each visit in another order, the longest
// first, each put on the first day that has room for it, with the longer way to it
// taken as its move. It returns the tests by day where that takes fewer days than
// the order given, else nothing. That no order takes fewer still isn't claimed.
func (p *Programme) Packed() [][]string {
	var all [][]string
	for from := 0; from < len(p.Slots); {
		to := from + 1
		for to < len(p.Slots) && p.Slots[to].Visit == p.Slots[from].Visit {
			to++
		}
		all = append(all, p.pack(p.Slots[from:to])...)
		from = to
	}
	if len(all) >= len(p.Days) {
		return nil
	}
	return all
}

// pack puts the tests of one visit on days.
func (p *Programme) pack(slots []Slot) (days [][]string) {
	need := func(s *Slot) float64 { return s.Cuts + s.Ends + p.Settings.TestMinutes }
	order := make([]int, len(slots))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return need(&slots[order[a]]) > need(&slots[order[b]]) })
	move := max(p.Settings.Move, p.Settings.MoveLevel)
	var used []float64
	for _, i := range order {
		n := need(&slots[i])
		at := 0
		for at < len(days) && used[at]+move+n > p.Settings.DayMinutes+slack {
			at++
		}
		if at == len(days) {
			days, used = append(days, nil), append(used, 0)
			if n > p.Settings.DayMinutes+slack { // it takes more than a day by itself
				for rest := n - p.Settings.DayMinutes; rest > slack; rest -= p.Settings.DayMinutes {
					days, used = append(days, nil), append(used, p.Settings.DayMinutes)
				}
				used[at] = p.Settings.DayMinutes
				days[at] = append(days[at], slots[i].ID)
				continue
			}
		} else {
			n += move
		}
		days[at], used[at] = append(days[at], slots[i].ID), used[at]+n
	}
	return days
}
