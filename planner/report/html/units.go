package html

import (
	"fmt"

	"blankoff/planner/report"
	"blankoff/planner/units"
)

// shown gives the page's figures in the units that were asked for.
type shown struct{ units.System }

// Area, Flow, Force and Length are bare figures; the units stand in the headings.
// A flow is a limit and is cut off.
func (u shown) Area(m2 float64) string  { return u.Fixed(units.Area, m2) }
func (u shown) Flow(ls float64) string  { return u.Cut(units.Flow, ls) }
func (u shown) Force(n float64) string  { return u.Fixed(units.Force, n) }
func (u shown) Length(m float64) string { return fmt.Sprintf("%.1f", u.Of(units.Length, m)) }

// AreaUnit and the like are the units of the same.
func (u shown) AreaUnit() string   { return u.Unit(units.Area) }
func (u shown) FlowUnit() string   { return u.Unit(units.Flow) }
func (u shown) ForceUnit() string  { return u.Unit(units.Force) }
func (u shown) LengthUnit() string { return u.Unit(units.Length) }

// About says what a section is tested at.
func (u shown) About(s *report.Section) string {
	sign := "positive"
	if s.Sign == "negative" {
		sign = "negative"
	}
	return fmt.Sprintf("class %s, %s %s", s.Class, u.Pressure(s.TestPa), sign)
}
