package fittings

import "math/bits"

// Kind is what a piece is.
type Kind uint8

// The kinds of piece.
const (
	NoKind Kind = iota
	Straight
	Bend
	Reducer    // same shape, other size (alias taper)
	Transition // change of shape
	Offset
	Tee
	Cross
	Spigot // a branch on a side wall
	Breeches
	Cap
	Plenum
	Flexible
	Inline // a damper or attenuator, measured through
)

// Style is how a kind is made. NoStyle means the kind's default.
type Style uint8

// The styles. Which kinds take which style is in Kinds.
const (
	NoStyle       Style = iota
	RadiusStyle         // bend and offset, the default of both
	Mitred              // bend and offset
	Gored               // bend
	SquareThroat        // bend: square throat, radius heel
	SquareHeel          // bend: radius throat, square heel
	StraightSided       // offset; and a plain branch: tee, cross, spigot (their default)
	Conical             // tee, cross, spigot
	Shoe                // tee, cross, spigot
	Flat                // cap, the default
	Dished              // cap
)

// Plane is the side that lies in the plane of a bend or offset.
type Plane uint8

// Width is the default plane.
const (
	PlaneWidth Plane = iota
	PlaneHeight
)

// Dim is a size column of the schedule.
type Dim uint8

// The sizes. Lengths are in m and angles in degrees once they are inside.
const (
	Width Dim = iota
	Height
	Diameter
	Length
	Angle
	Radius // centre line
	Throat // inside radius
	Legs   // straight leg at each end: along the throat of a bend, along the axis of an offset
	Gores  // number of pieces of a gored bend, ends counted
	Width2
	Height2
	Diameter2
	OffsetShift  // shift of centre lines along the width; for an offset, in its plane
	OffsetShift2 // shift of centre lines along the height
	BranchWidth  // along the main
	BranchHeight
	BranchDiameter
	BranchLength // collar beyond the main's wall
	BranchAngle  // degrees; 90 where not given
	BranchShift  // off the main's axis
	Entry        // conical: diameter at the main's crown; shoe: extra entry on one side
	Rise         // of a dished cap
	Lining
	GivenArea // m2, a given area for any kind
	NumDims
)

// Sizes holds the sizes that a row gives. The zero value gives none. A schedule
// has a million rows of few sizes each: those given stand next to each other, in
// the order of their dimensions, and only a row of many has them apart.
type Sizes struct {
	given uint32
	value [few]float64
	all   *[NumDims]float64 // of a row of many; never changed once made, since copies share it
}

// few is the number of sizes that have room in place: those of a transition.
const few = 6

// Set gives size d the value v (m, degrees, m2 or a count).
func (s *Sizes) Set(d Dim, v float64) {
	n := bits.OnesCount32(s.given)
	if s.all == nil && n < few && s.given>>d == 0 { // they come in their order, as a rule
		s.value[n] = v
		s.given |= 1 << d
		return
	}
	if s.all == nil && (s.Has(d) || n < few) {
		at := s.rank(d)
		if !s.Has(d) {
			copy(s.value[at+1:], s.value[at:n])
		}
		s.value[at] = v
		s.given |= 1 << d
		return
	}
	all := new([NumDims]float64)
	for k := range NumDims {
		all[k], _ = s.Get(k)
	}
	all[d] = v
	s.given |= 1 << d
	s.all, s.value = all, [few]float64{}
}

// Get returns size d and whether it was given.
func (s *Sizes) Get(d Dim) (float64, bool) {
	switch {
	case !s.Has(d):
		return 0, false
	case s.all != nil:
		return s.all[d], true
	}
	return s.value[s.rank(d)], true
}

// rank is the number of sizes given before d.
func (s *Sizes) rank(d Dim) int { return bits.OnesCount32(s.given & (1<<d - 1)) }

// GivenOf gives those of some sizes that are given; both are a bit for each.
func (s *Sizes) GivenOf(some uint32) uint32 { return s.given & some }

// of is size d, 0 where it isn't given.
func (s *Sizes) of(d Dim) float64 {
	v, _ := s.Get(d)
	return v
}

// Has reports whether size d was given.
func (s *Sizes) Has(d Dim) bool { return s.given&(1<<d) != 0 }

// Piece is a description of one piece, as a row of the schedule gives it.
type Piece struct {
	Kind   Kind
	Style  Style
	Shape  Shape // of the piece; for a tee, of its main
	Shape2 Shape // other end of a transition; branch of a tee, cross or spigot where sizes leave a doubt
	Plane  Plane
	Sizes  Sizes

	// Wall is the cross-section of the duct in whose side wall a spigot sits.
	// Its zero value means that the wall isn't known; WallFlat means a flat
	// panel of unknown extent (a plenum).
	Wall     CrossSection
	WallFlat bool
}

// EndRole says which end of a piece an End is.
type EndRole uint8

// The roles of ends. Plant is the end towards the plant, whichever way the air
// flows; of a spigot it is the joint to the wall.
const (
	PlantEnd EndRole = iota
	FarEnd
	BranchEnd
	BranchEnd2
)

// String gives the name used after a slash in `from`, and in reports.
func (r EndRole) String() string {
	if r > BranchEnd2 {
		return ""
	}
	return [...]string{"plant end", "far end", "branch", "branch2"}[r]
}

// End is an end of a piece at which it can be joined or blanked.
type End struct {
	Role EndRole
	CrossSection
}

// Measurement is what Measure finds.
type Measurement struct {
	// Area is the exact area of the outside surface in m2. Open ends are not
	// counted. Openings for branches that are part of the piece (tee, cross)
	// are taken out; the opening that a spigot cuts in its wall is in Opening
	// and is taken off the piece that it is cut in, not here. Never negative.
	Area float64
	// Opening is the area that a spigot takes out of the wall it sits in, m2.
	Opening float64
	// Ends lists the ends in the order of EndRole, also where there are
	// problems; an end whose size isn't known has no shape. A cap has only its
	// plant end; breeches have a plant end and two branches; a plenum has none
	// here, because each of its openings is as big as what joins it. A spigot's
	// plant end is the opening in the wall, its far end the free end.
	Ends []End
	// Notes are assumptions and warnings that must reach the reader.
	Notes []string
}

// Problem says why a piece can't be measured: the size or word at fault, what
// was expected and what to do.
type Problem struct {
	Dim      Dim    // the size at fault; NumDims when it is a word or the whole piece
	Word     string // heading of the word at fault (kind, style, shape), or ""
	Expected string // the allowed range or list, with units in mm
	Message  string // one short sentence that says what to do
}
