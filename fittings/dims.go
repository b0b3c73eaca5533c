package fittings

// Unit is the unit of a size inside the program.
type Unit uint8

// The units of sizes. A schedule gives Metre sizes in mm.
const (
	Metre Unit = iota
	Degree
	Count
	SquareMetre
)

// String gives the unit as it is written.
func (u Unit) String() string {
	return [...]string{"m", "degrees", "pieces", "m2"}[u]
}

// limits is what a size may be: its canonical heading, its unit, and its least
// and greatest value inside the program.
type limits struct {
	heading    string
	unit       Unit
	min, max   float64
	wholeCount bool
}

// Limits on sizes. They are wide enough for any duct that is made and narrow
// enough to catch a slip of unit. Common practice, no source.
const (
	leastSide = 0.001 // m
	mostSide  = 20.0  // m
	mostRun   = 1000.0
	mostArea  = 1e6 // m2
	leastArea = 1e-6
	mostGores = 60
)

var dims = [NumDims]limits{
	Width:          {"width_mm", Metre, leastSide, mostSide, false},
	Height:         {"height_mm", Metre, leastSide, mostSide, false},
	Diameter:       {"diameter_mm", Metre, leastSide, mostSide, false},
	Length:         {"length_mm", Metre, leastSide, mostRun, false},
	Angle:          {"angle_deg", Degree, 0.01, 180, false},
	Radius:         {"radius_mm", Metre, leastSide / 2, mostRun, false},
	Throat:         {"throat_mm", Metre, 0, mostRun, false},
	Legs:           {"legs_mm", Metre, 0, mostRun, false},
	Gores:          {"gores", Count, 2, mostGores, true},
	Width2:         {"width2_mm", Metre, leastSide, mostSide, false},
	Height2:        {"height2_mm", Metre, leastSide, mostSide, false},
	Diameter2:      {"diameter2_mm", Metre, leastSide, mostSide, false},
	OffsetShift:    {"offset_mm", Metre, -mostRun, mostRun, false},
	OffsetShift2:   {"offset2_mm", Metre, -mostRun, mostRun, false},
	BranchWidth:    {"branch_width_mm", Metre, leastSide, mostSide, false},
	BranchHeight:   {"branch_height_mm", Metre, leastSide, mostSide, false},
	BranchDiameter: {"branch_diameter_mm", Metre, leastSide, mostSide, false},
	BranchLength:   {"branch_length_mm", Metre, leastSide, mostRun, false},
	BranchAngle:    {"branch_angle_deg", Degree, 1, 179, false},
	BranchShift:    {"branch_shift_mm", Metre, -mostSide, mostSide, false},
	Entry:          {"entry_mm", Metre, leastSide, mostSide, false},
	Rise:           {"rise_mm", Metre, leastSide, mostSide, false},
	Lining:         {"lining_mm", Metre, 0, 1, false},
	GivenArea:      {"area_m2", SquareMetre, leastArea, mostArea, false},
}

// Heading is the canonical heading of the size's column in a schedule, or ""
// when d isn't a size.
func (d Dim) Heading() string {
	if d >= NumDims {
		return ""
	}
	return dims[d].heading
}

// Unit is the unit that the size has inside the program; a Metre size is in mm
// in a schedule's canonical column.
func (d Dim) Unit() Unit {
	if d >= NumDims {
		return Count
	}
	return dims[d].unit
}

// ParseDim finds the size that a canonical heading names.
func ParseDim(heading string) (Dim, bool) {
	for d := range NumDims {
		if dims[d].heading == heading {
			return d, true
		}
	}
	return NumDims, false
}
