package headings

import (
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// Question is a name with more than one reading: it is asked about.
type Question struct {
	names   string             // the first is its name in the files of words
	Write   string             // what to write instead
	Why     string             // empty: more than one meaning
	Settled [][]takeoff.Column // with all columns of one of these mapped, the question is idle
}

// Describes reports the question about descriptions and types, which may be the
// kind.
func (q *Question) Describes() bool { return strings.HasPrefix(q.names, "type,") }

// Units reports the question about units in a column of their own.
func (q *Question) Units() bool { return strings.HasPrefix(q.names, "unit,") }

// Items reports the question about items and references, which may be the kind too.
func (q *Question) Items() bool { return strings.HasPrefix(q.names, "item,") }

// OnAreas reports the question about areas, which may be of each piece or of all.
func (q *Question) OnAreas() bool { return strings.HasPrefix(q.names, "area,") }

// Sections reports the question about sections, which may be sizes or names.
func (q *Question) Sections() bool { return strings.HasPrefix(q.names, "section") }

// Lengths reports the question about L x H, which may be a length or a width.
func (q *Question) Lengths() bool { return q.names == lengthFirst }

// Counts reports the question about numbers, which may be how many or names.
func (q *Question) Counts() bool { return strings.HasPrefix(q.names, "no,") }

// Runs reports the question about lengths of runs, which may be of all pieces together.
func (q *Question) Runs() bool { return strings.HasPrefix(q.names, "total length") }

// Radii reports the question about radii, which only fittings have.
func (q *Question) Radii() bool { return strings.HasPrefix(q.names, "radius") }

// Plans reports the question about plans, which bears on no area.
func (q *Question) Plans() bool { return q.names == "plan" }

// Pressures reports the question about pressures.
func (q *Question) Pressures() bool { return strings.HasPrefix(q.names, "pressure,") }

// Seals reports the question about the class of seals, which bears on no area.
func (q *Question) Seals() bool { return strings.HasPrefix(q.names, "seal class") }

var sized = [][]takeoff.Column{{takeoff.DimColumn(fittings.Width), takeoff.DimColumn(fittings.Height)}, {takeoff.DimColumn(fittings.Diameter)}}

// The questions about headings of a whole cross-section.
const (
	heightFirst = "h x w"
	lengthFirst = "l x h"
	threeSizes  = "w x h x l"
	outerSize   = "external size"
)

var questions = []Question{
	{heightFirst, "size with the width first (600x400), or width_mm and height_mm", "puts the height before the width", sized},
	{lengthFirst, "size (width x height), width_mm and height_mm, or length_mm", "may hold a length or a width", sized},
	{threeSizes, "size (600x400) and length_mm", "holds three figures", sized},
	{outerSize, "width_mm and height_mm, or diameter_mm, of the metal without its insulation", "may be over the insulation", sized},
	{"pressure, static pressure, pressure rating, rating, duct pressure, system pressure, p",
		"test_pa (what the section is held at), design_pa (the most that it works at), operating_pa (what it works at on the mean) or duct_class_pa (what the duct is built for)", "", nil},
	{"section", "size (600x400, Ø315), width_mm and height_mm, or diameter_mm", "", sized},
	{"plan", "level or drawing", "", [][]takeoff.Column{{takeoff.Level}, {takeoff.Drawing}}},
	{"radius, bend radius, r, rad", "radius_mm (to the centre line) or throat_mm (inside)", "",
		[][]takeoff.Column{{takeoff.DimColumn(fittings.Radius)}, {takeoff.DimColumn(fittings.Throat)}}},
	{"area, surface area, duct area, total area, sheet area, metal area",
		"stated_area_m2 (a figure to check) or area_m2 (given instead of sizes)", "", nil},
	{"type, duct type, description, desc", "kind (straight, bend, tee and so on), style or note", "", [][]takeoff.Column{{takeoff.Kind}}},
	{"no, nr, number, each, pieces", "quantity (how many), or tag (what it is called)", "",
		[][]takeoff.Column{{takeoff.Quantity}}},
	{"item, ref, reference, code", "tag, kind, quantity or drawing", "",
		[][]takeoff.Column{{takeoff.Tag, takeoff.Quantity}, {takeoff.Tag, takeoff.Kind}, {takeoff.Kind, takeoff.Quantity}}},
	{"total length, overall length, run length", "length_mm (of each piece) with quantity", "", [][]takeoff.Column{{takeoff.DimColumn(fittings.Length)}}},
	{"to, connects to, connected to, connection, upstream, downstream, fed from, feeds, previous, next",
		"from (the tag of the next piece towards the plant, whichever way the air flows)", "", [][]takeoff.Column{{takeoff.From}}},
	{"seal class", "class (air-tightness class), which says how much may leak", "isn't how tight the duct is", [][]takeoff.Column{{takeoff.Class}}},
	{"duct class, construction class", "class (air-tightness class) or duct_class_pa (what the duct is built for)", "",
		[][]takeoff.Column{{takeoff.Class, takeoff.DuctClassPa}}},
	{"unit, units, uom", "the unit in each heading, as width_in", "would change what the numbers mean", nil},
	{"test", "test_pa, or scope (in, out, through)", "", [][]takeoff.Column{{takeoff.TestPa}}},
}
