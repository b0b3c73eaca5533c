package schedule

import (
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// aliases lists what a heading may say for a column, besides its canonical
// heading, in English as spoken on both sides of the Atlantic. A unit may
// follow any of them. Common practice, no source.
var aliases = [takeoff.NumColumns]string{
	takeoff.Tag:         "tag, tags, tag no, tag number, id, mark, piece mark, piece, piece no, piece number, piece tag, item no, item number, item tag",
	takeoff.System:      "system, duct system, air system, ventilation system, system name, system no, system ref, sys",
	takeoff.Level:       "level, floor, storey, story, floor level",
	takeoff.PlaceOnSite: "place, location, room, room no, room name",
	takeoff.Drawing:     "drawing, drawing no, drawing number, drawing ref, dwg, dwg no",
	takeoff.Kind:        "kind, fitting, fitting type, fitting kind, piece type, piece kind, item type, component, component type",
	takeoff.Style:       "style, fitting style",
	takeoff.Shape:       "shape, duct shape, section shape, profile",
	takeoff.Quantity:    "quantity, quantities, qty, q'ty, quant, amount, nos, no off, nr off, number off, number of, no of, count, pcs",
	takeoff.Note:        "note, notes, remark, remarks, comment, comments",
	takeoff.Plane:       "plane, bend plane, plane of bend",
	takeoff.Shape2:      "shape2, second shape, branch shape",
	takeoff.SizeIs:      "size is, sizes are",
	takeoff.StatedArea:  "stated area, area stated, claimed area, area claimed, quoted area, billed area",
	takeoff.From:        "from, from tag, from piece, parent",
	takeoff.Joins:       "joins, also joins",
	takeoff.Run:         "run, run name, run no, duct run",
	takeoff.At:          "at, distance from plant end",
	takeoff.Joint:       "joint, joints, joint type, jointing",
	takeoff.Scheme:      "scheme, leakage standard, test standard",
	takeoff.Class:       "class, tightness class, air tightness class, leakage class, leak class",
	takeoff.TestPa:      "test pressure, leakage test pressure, leak test pressure, air test pressure",
	takeoff.DesignPa:    "design pressure, design static pressure",
	takeoff.OperatingPa: "operating pressure, mean operating pressure, working pressure",
	takeoff.DuctClassPa: "pressure class, duct pressure class, duct class pressure, construction pressure class",
	takeoff.Sign:        "sign, pressure sign, test sign",
	takeoff.Scope:       "scope, test scope",
	takeoff.Stage:       "stage, work stage, construction stage",
	takeoff.Ready:       "ready, ready date, ready on, ready by",
	takeoff.Closed:      "closed, closed date, closed on, closed by",
	takeoff.Group:       "group, test group",
}

// sizeAliases is the same for the sizes, by canonical name without its unit.
var sizeAliases = map[string]string{
	"width":           "w, wd, duct width, w1, width1, main width, major, major axis",
	"height":          "h, ht, hgt, depth, duct height, duct depth, h1, height1, main height, minor, minor axis",
	"diameter":        "d, dia, diam, ø, duct diameter, duct dia, d1, dia1, diam1, diameter1, main diameter, main dia, round diameter",
	"length":          "l, len, lgth, duct length, piece length, length each",
	"angle":           "bend angle, degrees, deg",
	"radius":          "centre line radius, center line radius, cl radius, clr, mean radius",
	"throat":          "throat radius, inside radius, inner radius, internal radius",
	"legs":            "leg, straight legs, leg length",
	"gores":           "no of gores, number of gores, segments, no of segments, number of segments",
	"width2":          "w2, second width",
	"height2":         "h2, depth2, second height",
	"diameter2":       "d2, dia2, diam2, ø2, second diameter",
	"offset":          "offset1, offset shift",
	"branch_width":    "branch w, width of branch",
	"branch_height":   "branch h, branch depth, height of branch",
	"branch_diameter": "branch d, branch dia, branch diam, branch ø, diameter of branch",
	"branch_length":   "branch l, branch len, collar length, length of branch",
	"branch_angle":    "angle of branch",
	"branch_shift":    "branch offset",
	"entry":           "shoe entry",
	"rise":            "dish rise",
	"lining":          "lining thickness, liner thickness, internal lining",
	"area":            "given area",
}

// unitNeeded lists names that mean the column only where a unit follows.
var unitNeeded = map[string]takeoff.Column{
	"test": takeoff.TestPa, "design": takeoff.DesignPa, "duct class": takeoff.DuctClassPa,
	"blank": takeoff.BlankMinutes, "blanking": takeoff.BlankMinutes, "blanking time": takeoff.BlankMinutes,
	"end": takeoff.EndMinutes, "end cap": takeoff.EndMinutes, "end capping": takeoff.EndMinutes,
	"area": takeoff.DimColumn(fittings.GivenArea), "radius": takeoff.DimColumn(fittings.Radius),
}

// question is a name with more than one reading: it is asked about.
type question struct {
	names   string
	ask     string             // what to write instead
	why     string             // empty: more than one meaning
	settled [][]takeoff.Column // with all columns of one of these mapped, the question is idle
}

var sized = [][]takeoff.Column{{takeoff.DimColumn(fittings.Width), takeoff.DimColumn(fittings.Height)}, {takeoff.DimColumn(fittings.Diameter)}}

var questions = []question{
	{"pressure, static pressure, pressure rating, rating, duct pressure, system pressure, p",
		"test_pa (what the section is held at), design_pa (the most that it works at), operating_pa (what it works at on the mean) or duct_class_pa (what the duct is built for)", "", nil},
	{"size, sizes, dimension, dimensions, dims, dim, section, cross section, duct size, section size",
		"width_mm and height_mm, or diameter_mm, each in a column of its own", "", sized},
	{"branch size, branch", "branch_width_mm and branch_height_mm, or branch_diameter_mm", "",
		[][]takeoff.Column{{takeoff.DimColumn(fittings.BranchWidth)}, {takeoff.DimColumn(fittings.BranchDiameter)}}},
	{"radius, bend radius, r, rad", "radius_mm (to the centre line) or throat_mm (inside)", "",
		[][]takeoff.Column{{takeoff.DimColumn(fittings.Radius)}, {takeoff.DimColumn(fittings.Throat)}}},
	{"area, surface area, duct area, total area, sheet area, metal area",
		"stated_area_m2 (a figure to check) or area_m2 (given instead of sizes)", "", nil},
	{"type, duct type, description, desc", "kind (straight, bend, tee and so on), style or note", "", [][]takeoff.Column{{takeoff.Kind}}},
	{"no, nr, number, off, each, pieces, no of pieces", "quantity (how many), or tag (what it is called)", "",
		[][]takeoff.Column{{takeoff.Quantity}}},
	{"item, ref, reference, code", "tag, kind, quantity or drawing", "",
		[][]takeoff.Column{{takeoff.Tag, takeoff.Quantity}, {takeoff.Tag, takeoff.Kind}}},
	{"total length, overall length, run length", "length_mm (of each piece) with quantity", "", [][]takeoff.Column{{takeoff.DimColumn(fittings.Length)}}},
	{"to, connects to, connected to, connection, upstream, downstream, fed from, feeds, previous, next",
		"from (the tag of the next piece towards the plant, whichever way the air flows)", "", [][]takeoff.Column{{takeoff.From}}},
	{"seal class", "class (air-tightness class), which says how much may leak", "isn't how tight the duct is", [][]takeoff.Column{{takeoff.Class}}},
	{"duct class, construction class", "class (air-tightness class) or duct_class_pa (what the duct is built for)", "",
		[][]takeoff.Column{{takeoff.Class, takeoff.DuctClassPa}}},
	{"unit, units, uom", "the unit in each heading, as width_in", "would change what the numbers mean", nil},
	{"test", "test_pa, or scope (in, out, through)", "", [][]takeoff.Column{{takeoff.TestPa}}},
}

// unused lists common columns that mean nothing here, though some are spelt
// nearly as a known one.
const unused = `weight, mass, unit weight, gauge, thickness, material, finish, insulation, supplier, cost, price, rate, total,
	velocity, flow, airflow, air flow, date, revision, rev, status, state, by, zone, sheet, site, perimeter, girth, volume,
	line, plan, slope, wind, air, name, category, page, hours, labour, labor, light, date ready, project, client, quality`

// meaning is what a name stands for.
type meaning struct {
	column     takeoff.Column
	unitNeeded bool
}

var (
	meanings   = map[string]meaning{}   // by squashed name
	asked      = map[string]*question{} // by squashed name
	unusedName = map[string]struct{}{}  // by squashed name
	nearNames  []nearName               // in the order of columns
)

// nearName is a name that a misspelt heading may have meant.
type nearName struct {
	name   string
	column takeoff.Column
}

func init() {
	for c := range takeoff.NumColumns {
		names := aliases[c]
		stem := c.Heading()
		if _, ok := c.Dim(); ok || c == takeoff.StatedArea || c == takeoff.At {
			stem = strings.TrimSuffix(strings.TrimSuffix(strings.TrimSuffix(stem, "_mm"), "_m2"), "_deg")
			names = sizeAliases[stem] + ", " + names
		}
		addName(c.Heading(), c)
		if stem != "area" && stem != "radius" {
			addName(stem, c)
		}
		for name := range strings.SplitSeq(names, ",") {
			addName(name, c)
		}
	}
	for name, c := range unitNeeded {
		meanings[squash(name)] = meaning{c, true}
	}
	for i := range questions {
		for name := range strings.SplitSeq(questions[i].names, ",") {
			asked[squash(name)] = &questions[i]
		}
	}
	for name := range strings.SplitSeq(unused, ",") {
		unusedName[squash(name)] = struct{}{}
	}
}

func addName(name string, c takeoff.Column) {
	key := squash(name)
	if _, known := meanings[key]; known || key == "" {
		return
	}
	meanings[key] = meaning{column: c}
	if len(key) >= 4 {
		nearNames = append(nearNames, nearName{key, c})
	}
}

// squash is a name without what is free in it.
func squash(name string) string { return strings.Join(tokens(name), "") }
