package show

import (
	"sort"
	"strings"

	"blankoff/planner/report"
	"blankoff/takeoff"
)

// Size is how many blanks of one size a plan needs.
type Size struct {
	report.Face
	Cuts, OpenEnds, Scope int     // fits, in all tests together
	Together              int     // the most of them in one test
	Minutes               float64 // of all fits
	MostForce             float64 // N
}

// Fits is the number of times that a blank of the size is fitted.
func (s *Size) Fits() int { return s.Cuts + s.OpenEnds + s.Scope }

// BySize counts the blanks of every size, in the natural order of the sizes.
func BySize(sections []report.Section) []Size {
	at := map[report.Face]int{}
	var sizes []Size
	for i := range sections {
		now := map[int]int{}
		for _, b := range sections[i].Blanks {
			face := Upright(b.Face)
			k, ok := at[face]
			if !ok {
				k = len(sizes)
				at[face] = k
				sizes = append(sizes, Size{Face: face})
			}
			s := &sizes[k]
			switch b.Why {
			case "cut":
				s.Cuts++
			case "open end":
				s.OpenEnds++
			default:
				s.Scope++
			}
			now[k]++
			s.Together = max(s.Together, now[k])
			s.Minutes += b.Minutes
			s.MostForce = max(s.MostForce, b.Force)
		}
	}
	sort.SliceStable(sizes, func(i, j int) bool { return takeoff.NaturalLess(sizes[i].Text, sizes[j].Text) })
	return sizes
}

// Upright turns a rectangular opening so that its longer side comes first: one
// blank serves both ways round.
func Upright(f report.Face) report.Face {
	if f.Shape != "rectangular" || f.Width >= f.Height {
		return f
	}
	f.Width, f.Height = f.Height, f.Width
	if a, b, ok := strings.Cut(f.Text, " x "); ok {
		f.Text = b + " x " + a
	}
	return f
}

// AllSizes adds the sizes up; Together and MostForce are the greatest of any.
func AllSizes(sizes []Size) Size {
	var all Size
	for _, s := range sizes {
		all.Cuts, all.OpenEnds, all.Scope = all.Cuts+s.Cuts, all.OpenEnds+s.OpenEnds, all.Scope+s.Scope
		all.Minutes += s.Minutes
		all.Together, all.MostForce = max(all.Together, s.Together), max(all.MostForce, s.MostForce)
	}
	return all
}

// Largest is the blank of a section with the greatest force on it, and whether
// there is any.
func Largest(blanks []report.Blank) (report.Blank, bool) {
	var most report.Blank
	for i, b := range blanks {
		if i == 0 || b.Force > most.Force {
			most = b
		}
	}
	return most, len(blanks) > 0
}
