package programme

import "sort"

// Packed looks for fewer days: tests of each visit in another order, the longest
// first, each put on the first day that has room for it, with the longer way to it
// taken as its move, to the first test of a day too. It returns the tests by day where that takes fewer days than
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
	var used filled
	for _, i := range order {
		n := need(&slots[i])
		if len(days) > 0 { // the first test of a visit isn't moved to, those of its other days are
			n += move
		}
		at := used.first(func(minutes float64) bool { return minutes+n <= p.Settings.DayMinutes+slack })
		if at == len(days) {
			days = append(days, nil)
			used.open(0)
			if n > p.Settings.DayMinutes+slack { // it takes more than a day by itself
				for rest := n - p.Settings.DayMinutes; rest > slack; rest -= p.Settings.DayMinutes {
					days = append(days, nil)
					used.open(p.Settings.DayMinutes)
				}
				used.fill(at, p.Settings.DayMinutes)
				days[at] = append(days[at], slots[i].ID)
				continue
			}
		}
		days[at] = append(days[at], slots[i].ID)
		used.fill(at, n)
	}
	return days
}

// filled is the minutes of every day, with the least of stretches of days beside
// them: least[0] is the days themselves, and each list after it has the lesser of
// two neighbours of the one before. So the first day with room is found without
// looking at all that have none.
type filled struct{ least [][]float64 }

// open adds a day with so many minutes.
func (f *filled) open(minutes float64) {
	if len(f.least) == 0 {
		f.least = [][]float64{nil}
	}
	f.least[0] = append(f.least[0], minutes)
	f.update(len(f.least[0]) - 1)
}

// fill adds minutes to a day.
func (f *filled) fill(day int, minutes float64) {
	f.least[0][day] += minutes
	f.update(day)
}

func (f *filled) update(day int) {
	for k := 0; len(f.least[k]) > 1; k++ {
		if k+1 == len(f.least) {
			f.least = append(f.least, nil)
		}
		here, up := f.least[k], &f.least[k+1]
		pair := day &^ 1
		least := here[pair]
		if pair+1 < len(here) {
			least = min(least, here[pair+1])
		}
		if day >>= 1; day == len(*up) {
			*up = append(*up, least)
		} else {
			(*up)[day] = least
		}
	}
}

// first is the first day whose minutes leave room, or the number of days; what has
// room for some minutes has it for fewer.
func (f *filled) first(room func(minutes float64) bool) int {
	top := len(f.least) - 1
	if top < 0 {
		return 0
	}
	if !room(f.least[top][0]) {
		return len(f.least[0])
	}
	at := 0
	for k := top - 1; k >= 0; k-- {
		if at *= 2; !room(f.least[k][at]) {
			at++
		}
	}
	return at
}
