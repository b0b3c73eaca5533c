package programme

import "sort"

// Packed looks for fewer days: tests of each visit in another order, the longest
// first, each put on the first day that has room for it with the longer way to it,
// once without and once with a way to the first test of a day. What comes out is laid
// out as [Make] does. It returns the tests by day where that takes fewer days than
// the order given, else nothing. That no order takes fewer still isn't claimed.
func (p *Programme) Packed() (days [][]string) {
	fewest := len(p.Days)
	for _, move := range []float64{0, max(p.Settings.Move, p.Settings.MoveLevel)} {
		tests := make([]Test, 0, len(p.Slots))
		for from := 0; from < len(p.Slots); {
			to := from + 1
			for to < len(p.Slots) && p.Slots[to].Visit == p.Slots[from].Visit {
				to++
			}
			tests = append(tests, p.pack(p.Slots[from:to], move)...)
			from = to
		}
		q := Make(tests, make([]Visit, len(p.Stays)), p.Settings)
		if len(q.Days) >= fewest {
			continue
		}
		fewest, days = len(q.Days), nil
		for i := range q.Days {
			var names []string
			for _, k := range q.Days[i].Tests {
				names = append(names, q.Slots[k].ID)
			}
			days = append(days, names)
		}
	}
	return days
}

// pack orders the tests of one visit by the days that they are put on; the first of
// a day but the visit's first is moved to for so many minutes.
func (p *Programme) pack(slots []Slot, first float64) (tests []Test) {
	need := func(s *Slot) float64 { return s.Cuts + s.Ends + p.Settings.TestMinutes }
	order := make([]int, len(slots))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return need(&slots[order[a]]) > need(&slots[order[b]]) })
	day, move := p.Settings.DayMinutes, max(p.Settings.Move, p.Settings.MoveLevel)
	var used filled
	var days [][]int
	for _, i := range order {
		n := need(&slots[i])
		at := used.first(func(minutes float64) bool { return minutes+move+n <= day+slack })
		switch {
		case at < len(days):
			used.fill(at, n+move)
		default:
			if at > 0 {
				n += first
			}
			for ; n > slack || at == len(days); n -= day { // what is more than a day goes on on the next
				days = append(days, nil)
				used.open(min(n, day))
			}
		}
		days[at] = append(days[at], i)
	}
	for _, d := range days {
		for _, i := range d {
			tests = append(tests, slots[i].Test)
		}
	}
	return tests
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
