package blanking

// How says how a blank comes to its place.
type How string

// The ways.
const (
	Fit  How = "fit"  // for the first time, from the store
	Turn How = "turn" // it stays at its joint and is turned to the other side
	Move How = "move" // from another place
)

// Step is one fit: the test and the blank of it, by their numbers in the lists.
type Step struct {
	Test, Blank int
	How         How
}

// Track is the way of one blank through the tests.
type Track struct {
	Size  int
	No    int // among those of its size, from 1
	Steps []Step
}

// moving follows every blank. Of those that are free the one with the lowest
// number is taken; so as many numbers are used as are in use at once at most.
func moving(tests []Test, order []int, sizes int, ahead bool) []Track {
	of := make([][]Track, sizes)
	held := map[Blank][]int{} // by size and place: the blanks there in the test before
	free := newStore(sizes, ahead)
	for at, t := range order {
		free.reach(at)
		now := map[Blank][]int{}
		take := func(k, no int, how How) {
			b := tests[t].Blanks[k]
			of[b.Size][no].Steps = append(of[b.Size][no].Steps, Step{t, k, how})
			free.take(b.Size, no)
			now[b] = append(now[b], no)
		}
		var rest []int
		for k, b := range tests[t].Blanks {
			if list := held[b]; len(list) > 0 {
				held[b] = list[1:]
				take(k, list[0], Turn)
				continue
			}
			rest = append(rest, k)
		}
		for _, k := range rest {
			size := tests[t].Blanks[k].Size
			no, how := free.lowest(size), Move
			if no == len(of[size]) {
				how = Fit
				of[size] = append(of[size], Track{Size: size, No: no + 1})
			}
			take(k, no, how)
		}
		held = now
	}
	var out []Track
	for _, list := range of {
		out = append(out, list...)
	}
	return out
}
