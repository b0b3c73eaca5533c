package report

import (
	"blankoff/planner/units"
	"blankoff/planner/whatif"
	"blankoff/takeoff"
)

// Compare sets variants of one plan side by side.
type Compare struct {
	Schedule takeoff.Schedule `json:"schedule"`
	Settings Settings         `json:"settings"` // of the plan as asked
	Variants []Variant        `json:"variants"`
	Units    units.System     `json:"units,omitzero"`
}

// Variant is what one set of assumptions comes to.
type Variant struct {
	Name string `json:"name"`
	Score
	Cuts           int     `json:"cuts"`
	Blanks         int     `json:"blanks"`           // ends closed in all tests together
	UntestedJoints float64 `json:"untested_joint_m"` // of the cuts: closed after the tests and never tested, m
	EndMinutes     float64 `json:"end_minutes"`
	Sections       float64 `json:"sections_m2"`
	Outside        float64 `json:"outside_m2"`
	Proof          string  `json:"proof"`
	Refused        int     `json:"rows_refused"`
	Why            string  `json:"why,omitempty"` // why there is no plan
}

// OfVariants builds the view of a comparison.
func OfVariants(list []whatif.Variant) *Compare {
	v := &Compare{Variants: []Variant{}}
	for _, x := range list {
		o := Variant{Name: x.Name, Why: x.Why}
		if p := x.Plan; p != nil {
			pr := proofOf(p)
			o.Score, o.EndMinutes, o.Proof = pr.Score, pr.EndMinutes, pr.Kind
			o.Cuts, o.Sections, o.Outside = len(p.Cuts), p.Balance.Sections, p.Balance.Outside
			o.Refused = p.Takeoff.Schedule.RowsRefused + p.RefusedRows
			for i := range p.Sections {
				o.Blanks += len(p.Sections[i].Blanks)
			}
			for _, c := range p.Cuts {
				o.UntestedJoints += c.Face.Girth()
			}
			if len(v.Variants) == 0 {
				v.Settings = settingsOf(p)
			}
			v.Schedule, v.Units = p.Takeoff.Schedule, p.Settings.Units
		}
		v.Variants = append(v.Variants, o)
	}
	return v
}
