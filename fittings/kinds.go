package fittings

import "slices"

// KindInfo is what a person needs to know to enter one kind of piece.
type KindInfo struct {
	Kind        Kind
	Name        string   // canonical name
	Aliases     []string // other words of the trade, accepted for the same kind
	Styles      []Style  // the first is the default; none where the kind has no styles
	Shapes      []Shape  // of the piece, or of a branch's main
	Needs       []string // sizes needed, by canonical heading; one line a shape or style
	Takes       []string // sizes that may be given
	Formula     string   // of the exact area
	Source      string   // of the formula
	Example     string   // a row: heading=value pairs
	ExampleArea float64  // the example's exact area, m2
	Doc         string   // one or two sentences
}

// Kinds lists every kind in a fixed order, that of the constants. The caller may
// change what it gets.
func Kinds() []KindInfo { return slices.Clone(kinds[:]) }

// Info gives what Kinds says of k, and whether k is a kind.
func (k Kind) Info() (KindInfo, bool) {
	if k == NoKind || int(k) > len(kinds) {
		return KindInfo{}, false
	}
	return kinds[k-1], true
}

var (
	allShapes   = []Shape{Rectangular, Circular, FlatOval}
	ownSection  = "rectangular or flat-oval: width_mm, height_mm; circular: diameter_mm"
	branchNeeds = "branch: branch_diameter_mm, or branch_width_mm and branch_height_mm; and branch_length_mm"
	branchTakes = []string{"shape2", "branch_angle_deg (or angle_deg)", "branch_shift_mm"}
	branchStyle = []Style{StraightSided, Conical, Shoe}
)

// kinds is in the order of the constants of Kind.
var kinds = [...]KindInfo{
	{Kind: Straight, Name: "straight",
		Aliases: []string{"duct", "straight duct", "duct run", "straight length", "tube"},
		Shapes:  allShapes,
		Needs:   []string{ownSection, "length_mm"},
		Formula: "girth x length", Source: "mensuration; flat-oval girth: ASHRAE Fundamentals 2021 ch. 21 eq. 28",
		Example: "kind=straight, width_mm=600, height_mm=400, length_mm=1500", ExampleArea: 3.0,
		Doc: "A straight duct. A long one is several pieces."},
	{Kind: Bend, Name: "bend",
		Aliases: []string{"elbow", "ell", "knee"},
		Styles:  []Style{RadiusStyle, Mitred, Gored, SquareThroat, SquareHeel}, Shapes: allShapes,
		Needs: []string{ownSection, "angle_deg", "radius, gored, square heel: radius_mm (centre line) or throat_mm",
			"gored: gores"},
		Takes:   []string{"plane", "legs_mm", "radius, rectangular: width2_mm (plane width) or height2_mm (plane height)"},
		Formula: "girth x centre-line length; square heel and reducing: cheeks + heel + throat",
		Source:  "Pappus for arcs, truncated prisms for mitres, mensuration for square heels",
		Example: "kind=bend, width_mm=600, height_mm=400, throat_mm=100, angle_deg=90", ExampleArea: 1.256637,
		Doc: "A change of direction. Mitred, square throat and square heel bends have legs along the throat only if legs_mm says so."},
	{Kind: Reducer, Name: "reducer",
		Aliases: []string{"taper", "reduction", "increaser", "enlarger", "expander", "concentric reducer"},
		Shapes:  allShapes,
		Needs: []string{"circular: diameter_mm, diameter2_mm",
			"rectangular or flat-oval: width_mm, height_mm, width2_mm, height2_mm", "length_mm"},
		Takes:   []string{"offset_mm", "offset2_mm"},
		Formula: "plane trapezoids and oblique cones between parallel ends",
		Source:  "mensuration: the developable sheet between two parallel ends",
		Example: "kind=reducer, diameter_mm=500, diameter2_mm=315, length_mm=300", ExampleArea: 0.401901,
		Doc: "A change of size. Ends are parallel and not turned; offsets shift the far end's centre along width and height."},
	{Kind: Transition, Name: "transition",
		Aliases: []string{"square-to-round", "round-to-square", "rectangular-to-round", "round-to-rectangular", "rect-to-round",
			"round-to-rect", "transformation", "transformation piece", "change of shape"},
		Shapes: allShapes,
		Needs: []string{"near end: " + ownSection,
			"far end: width2_mm, height2_mm or diameter2_mm (shape2 where they leave a doubt)", "length_mm"},
		Takes:   []string{"shape2", "offset_mm", "offset2_mm"},
		Formula: "plane triangles and trapezoids, and oblique cones at the corners",
		Source:  "mensuration: the developable sheet between two parallel ends (as it is cut and rolled)",
		Example: "kind=transition, width_mm=600, height_mm=400, diameter2_mm=400, length_mm=500", ExampleArea: 0.827899,
		Doc: "A change of shape, developable: rulings join points with parallel tangents. A sheet ruled otherwise is another shape, about 2 % apart."},
	{Kind: Offset, Name: "offset",
		Aliases: []string{"set", "swan neck", "s-bend", "ogee", "jog", "dog-leg", "double set"},
		Styles:  []Style{RadiusStyle, Mitred, StraightSided}, Shapes: allShapes,
		Needs:   []string{ownSection, "length_mm (face to face along the axis)", "offset_mm"},
		Takes:   []string{"plane", "legs_mm", "radius: radius_mm or throat_mm (else two equal arcs with nothing between)"},
		Formula: "girth x centre-line length; straight: four faces or a sheared cylinder",
		Source:  "Pappus for arcs, truncated prisms for mitres, complete elliptic integral for a sheared cylinder",
		Example: "kind=offset, style=straight, width_mm=600, height_mm=400, length_mm=800, offset_mm=300", ExampleArea: 1.643520,
		Doc: "A parallel shift of the duct. The shift lies in the plane, that of the width by default."},
	{Kind: Tee, Name: "tee",
		Aliases: []string{"t", "t-piece", "tee piece", "branch piece"},
		Styles:  branchStyle, Shapes: allShapes,
		Needs:   []string{"main: " + ownSection, "length_mm (of the main)", branchNeeds, "conical, shoe: entry_mm"},
		Takes:   branchTakes,
		Formula: "main - opening + branch", Source: "intersection of cylinders by complete elliptic integrals; mensuration on flat walls",
		Example:     "kind=tee, width_mm=600, height_mm=400, length_mm=800, branch_width_mm=300, branch_height_mm=300, branch_length_mm=150",
		ExampleArea: 1.690000,
		Doc:         "A main with one branch. branch_length_mm is measured along the branch's axis from the main's wall; branch_angle_deg is 90 where not given."},
	{Kind: Cross, Name: "cross",
		Aliases: []string{"cross piece", "four-way", "4-way", "double tee", "x-piece"},
		Styles:  branchStyle, Shapes: allShapes,
		Needs:   []string{"main: " + ownSection, "length_mm (of the main)", branchNeeds + " (both alike)", "conical, shoe: entry_mm"},
		Takes:   branchTakes,
		Formula: "main - 2 openings + 2 branches", Source: "as a tee",
		Example:     "kind=cross, diameter_mm=500, length_mm=600, branch_diameter_mm=250, branch_length_mm=100",
		ExampleArea: 1.023816,
		Doc:         "A main with two like branches opposite one another."},
	{Kind: Spigot, Name: "spigot",
		Aliases: []string{"collar", "take-off", "tap", "stub", "saddle", "branch spigot", "saddle branch", "spin-in"},
		Styles:  branchStyle, Shapes: allShapes,
		Needs: []string{"branch_diameter_mm, or branch_width_mm and branch_height_mm; and branch_length_mm",
			"or its own " + ownSection + ", with length_mm as the collar", "from (the straight, tee or plenum it sits on)",
			"conical, shoe: entry_mm"},
		Takes:   branchTakes,
		Formula: "branch to the wall; the opening is taken off the wall's piece", Source: "as a tee",
		Example:     "kind=spigot, branch_diameter_mm=200, branch_length_mm=80, from=a plenum",
		ExampleArea: 0.050265,
		Doc:         "A branch on a side wall. Its opening comes off the piece that it is cut in."},
	{Kind: Breeches, Name: "breeches",
		Aliases: []string{"breeching", "trousers", "trouser piece", "bullhead", "bullhead tee", "twin bend"},
		Shapes:  []Shape{Rectangular, Circular},
		Needs: []string{"circular: diameter_mm, branch_diameter_mm, length_mm, offset_mm (of each leg)",
			"rectangular (two radius bends of half the width): width_mm, height_mm, angle_deg, radius_mm or throat_mm"},
		Takes:   []string{"plane", "legs_mm"},
		Formula: "circular: two oblique frusta, each on its own side of the middle; rectangular: two radius bends",
		Source:  "own derivation checked against a mesh; Pappus",
		Example: "kind=breeches, diameter_mm=400, branch_diameter_mm=315, length_mm=500, offset_mm=250", ExampleArea: 0.897954,
		Doc: "A main that divides into two like legs. Its ends are the plant end, branch and branch2."},
	{Kind: Cap, Name: "cap",
		Aliases: []string{"end cap", "stop end", "end plate", "blank end", "dead end"},
		Styles:  []Style{Flat, Dished}, Shapes: allShapes,
		Needs:   []string{ownSection, "dished (circular): rise_mm"},
		Formula: "face area; dished: pi (d^2/4 + rise^2)", Source: "mensuration; flat-oval face: ASHRAE Fundamentals 2021 ch. 21 eq. 27",
		Example: "kind=cap, diameter_mm=315", ExampleArea: 0.077931,
		Doc: "A permanent end. Its skirt slips inside the duct and adds nothing."},
	{Kind: Plenum, Name: "plenum",
		Aliases: []string{"plenum box", "box", "chamber", "plenum chamber"},
		Shapes:  []Shape{Rectangular},
		Needs:   []string{"width_mm, height_mm, length_mm"},
		Formula: "2 (w h + w l + h l)", Source: "mensuration",
		Example: "kind=plenum, width_mm=1000, height_mm=800, length_mm=500", ExampleArea: 3.400000,
		Doc: "A box of six faces. What joins it is taken off by the takeoff, which knows who joins."},
	{Kind: Flexible, Name: "flexible",
		Aliases: []string{"flex", "flexible duct", "flexible hose", "flexible connector", "flexible connection"},
		Shapes:  allShapes,
		Needs:   []string{ownSection, "length_mm (extended)"},
		Formula: "girth x extended length", Source: "mensuration; corrugation ignored",
		Example: "kind=flexible, diameter_mm=200, length_mm=1000", ExampleArea: 0.628319,
		Doc: "A flexible duct, measured as a smooth tube at its extended length."},
	{Kind: Inline, Name: "inline",
		Aliases: []string{"in-line", "in-line component", "damper", "volume control damper", "volume damper", "vcd", "fire damper", "fd", "smoke damper", "fire and smoke damper", "fsd", "attenuator",
			"sound attenuator", "silencer", "duct heater", "access piece"},
		Shapes:  allShapes,
		Needs:   []string{ownSection, "length_mm"},
		Formula: "girth x length", Source: "mensuration; measured through on its duct size",
		Example: "kind=inline, width_mm=500, height_mm=300, length_mm=200", ExampleArea: 0.320000,
		Doc: "A damper, attenuator or the like, measured through on the size of its ends."},
}
