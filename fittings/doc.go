// Package fittings measures pieces of ductwork: straights and every kind of
// fitting, rectangular, circular and flat-oval.
//
// A Piece says what a piece is and how big. Measure gives the exact area of its
// outside surface as a shell of zero thickness on the given dimensions, with
// open ends not counted, the ends at which it can be joined, and what was wrong
// when it can't be measured. Working gives the same area in figures that a
// person can redo, Source where the formula comes from, and AreaOn and WorkingOn
// the same on a measuring basis of the trade: MeasureLengths has the girths and
// lengths that a basis chooses from.
//
// The package is pure: no files, no printing. Every length is in metres, every
// area in m2, every angle in degrees. Sizes are those of the metal: lining is
// for the caller to add.
//
// What can't be measured exactly is refused by name, never approximated:
// flat-oval breeches, rectangular breeches other than two radius bends, ends
// that aren't parallel, shoes on a round main, cones off a round main's axis or
// at an angle, dished caps that aren't circular, bends that change both sides.
// area_m2 then gives the area.
//
// It has more than ten files because each family of fittings has one of its own,
// with its formulas beside the reading of its sizes: straight (with caps and
// plenums), bend and bendsheet, taper, offset, branch and opening, breeches. The
// rest is what a piece is (piece, crosssection, dims, kinds, words), how its
// sizes are checked (sizes), how it's measured (measure), by a basis (basis,
// onbasis, lengths), and printed (figures); and the series of standard sizes
// (series). The mathematics of curved sheets is in the subpackage surface.
package fittings
