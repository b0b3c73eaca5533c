package takeoff

import "blankoff/fittings"

// Column is a canonical column of the schedule.
type Column uint8

// The columns, in the order in which a template lists them.
const (
	Tag Column = iota
	System
	Level
	PlaceOnSite
	Drawing
	Kind
	Style
	Shape
	Quantity
	Note
	Plane
	firstDim // the sizes follow fittings.Dim one for one
)

// The columns after the sizes.
const (
	Shape2 = firstDim + Column(fittings.NumDims) + iota
	SizeIs
	StatedArea
	From
	Joins
	Run
	At
	Joint
	BlankMinutes
	EndMinutes
	Scheme
	Class
	TestPa
	DesignPa
	DuctClassPa
	Sign
	Scope
	Stage
	Ready
	Closed
	Group
	NumColumns
)

// DimColumn is the column of a size.
func DimColumn(d fittings.Dim) Column { return firstDim + Column(d) }

// Dim is the size that a column holds, and whether it holds one.
func (c Column) Dim() (fittings.Dim, bool) {
	if c >= firstDim && c < Shape2 {
		return fittings.Dim(c - firstDim), true
	}
	return 0, false
}

// Measure is what the number in a column counts, so that the door knows into
// what to turn it.
type Measure uint8

// The measures, with the unit inside the program.
const (
	Text     Measure = iota // no number
	Lengths                 // m; the heading says mm
	Degrees                 // degrees
	Count                   // whole number
	Areas                   // m2
	Pressure                // Pa
	Minutes                 // minutes
)

var words = [...]struct {
	heading string
	measure Measure
}{
	Tag: {"tag", Text}, System: {"system", Text}, Level: {"level", Text},
	PlaceOnSite: {"place", Text}, Drawing: {"drawing", Text}, Kind: {"kind", Text},
	Style: {"style", Text}, Shape: {"shape", Text}, Quantity: {"quantity", Count},
	Note: {"note", Text}, Plane: {"plane", Text}, Shape2: {"shape2", Text},
	SizeIs: {"size_is", Text}, StatedArea: {"stated_area_m2", Areas},
	From: {"from", Text}, Joins: {"joins", Text}, Run: {"run", Text},
	At: {"at_mm", Lengths}, Joint: {"joint", Text}, BlankMinutes: {"blank_minutes", Text},
	EndMinutes: {"end_minutes", Minutes}, Scheme: {"scheme", Text}, Class: {"class", Text},
	TestPa: {"test_pa", Pressure}, DesignPa: {"design_pa", Pressure},
	DuctClassPa: {"duct_class_pa", Pressure}, Sign: {"sign", Text}, Scope: {"scope", Text},
	Stage: {"stage", Text}, Ready: {"ready", Text}, Closed: {"closed", Text},
	Group: {"group", Text},
}

var dims = [fittings.NumDims]struct {
	heading string
	measure Measure
}{
	fittings.Width: {"width_mm", Lengths}, fittings.Height: {"height_mm", Lengths},
	fittings.Diameter: {"diameter_mm", Lengths}, fittings.Length: {"length_mm", Lengths},
	fittings.Angle: {"angle_deg", Degrees}, fittings.Radius: {"radius_mm", Lengths},
	fittings.Throat: {"throat_mm", Lengths}, fittings.Legs: {"legs_mm", Lengths},
	fittings.Gores: {"gores", Count}, fittings.Width2: {"width2_mm", Lengths},
	fittings.Height2: {"height2_mm", Lengths}, fittings.Diameter2: {"diameter2_mm", Lengths},
	fittings.OffsetShift: {"offset_mm", Lengths}, fittings.OffsetShift2: {"offset2_mm", Lengths},
	fittings.BranchWidth: {"branch_width_mm", Lengths}, fittings.BranchHeight: {"branch_height_mm", Lengths},
	fittings.BranchDiameter: {"branch_diameter_mm", Lengths}, fittings.BranchLength: {"branch_length_mm", Lengths},
	fittings.BranchAngle: {"branch_angle_deg", Degrees}, fittings.BranchShift: {"branch_shift_mm", Lengths},
	fittings.Entry: {"entry_mm", Lengths}, fittings.Rise: {"rise_mm", Lengths},
	fittings.Lining: {"lining_mm", Lengths}, fittings.GivenArea: {"area_m2", Areas},
}

// Heading is the canonical heading of a column.
func (c Column) Heading() string {
	if d, ok := c.Dim(); ok {
		return dims[d].heading
	}
	if c < NumColumns {
		return words[c].heading
	}
	return ""
}

// Measure says what a number in the column counts.
func (c Column) Measure() Measure {
	if d, ok := c.Dim(); ok {
		return dims[d].measure
	}
	if c < NumColumns {
		return words[c].measure
	}
	return Text
}
