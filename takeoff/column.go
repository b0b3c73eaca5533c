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
	OperatingPa
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
	TestPa: {"test_pa", Pressure}, DesignPa: {"design_pa", Pressure}, OperatingPa: {"operating_pa", Pressure},
	DuctClassPa: {"duct_class_pa", Pressure}, Sign: {"sign", Text}, Scope: {"scope", Text},
	Stage: {"stage", Text}, Ready: {"ready", Text}, Closed: {"closed", Text},
	Group: {"group", Text},
}

// measures of the sizes, by their unit.
var measures = map[fittings.Unit]Measure{
	fittings.Metre: Lengths, fittings.Degree: Degrees,
	fittings.Count: Count, fittings.SquareMetre: Areas,
}

// Heading is the canonical heading of a column.
func (c Column) Heading() string {
	if d, ok := c.Dim(); ok {
		return d.Heading()
	}
	if c < NumColumns {
		return words[c].heading
	}
	return ""
}

// Measure says what a number in the column counts.
func (c Column) Measure() Measure {
	if d, ok := c.Dim(); ok {
		return measures[d.Unit()]
	}
	if c < NumColumns {
		return words[c].measure
	}
	return Text
}
