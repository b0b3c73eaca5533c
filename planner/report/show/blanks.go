package show

import (
	"sort"

	"blankoff/planner/report"
	"blankoff/takeoff/terms"
)

// Size is how many blanks of one size a plan needs.
type Size struct {
	report.Face
	Cuts, OpenEnds, Scope int     // fits, in all tests together
	Makes                 int     // the most in use at once, in the tests still to be made
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
		for _, b := range sections[i].Blanks {
			face := report.Upright(b.Face)
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
			s.Minutes += b.Minutes
			s.MostForce = max(s.MostForce, b.Force)
		}
	}
	sort.SliceStable(sizes, func(i, j int) bool { return terms.NaturalLess(sizes[i].Text, sizes[j].Text) })
	return sizes
}

// Sizes is BySize of the sections that are tested, with what has to be made of
// each size.
func Sizes(v *report.Plan) []Size {
	sizes := BySize(v.ToTest())
	if v.Blanking == nil {
		return sizes
	}
	makes := map[report.Face]int{}
	for _, s := range v.Blanking.Sizes {
		makes[s.Face] = s.Makes
	}
	for i := range sizes {
		sizes[i].Makes = makes[sizes[i].Face]
	}
	return sizes
}

// AllSizes adds the sizes up; MostForce is the greatest of any.
func AllSizes(sizes []Size) Size {
	var all Size
	for _, s := range sizes {
		all.Cuts, all.OpenEnds, all.Scope = all.Cuts+s.Cuts, all.OpenEnds+s.OpenEnds, all.Scope+s.Scope
		all.Minutes += s.Minutes
		all.Makes, all.MostForce = all.Makes+s.Makes, max(all.MostForce, s.MostForce)
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
