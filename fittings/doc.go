// Package fittings measures pieces of ductwork: straights and every kind of
// fitting, rectangular, circular and flat-oval.
//
// A Piece says what a piece is and how big. Measure gives the exact area of its
// outside surface as a shell of zero thickness on the given dimensions, with
// open ends not counted, the ends at which it can be joined, and what was wrong
// when it can't be measured. Working gives the same area in figures that a
// person can redo.
//
// The package is pure: no files, no printing. Every length is in metres, every
// area in m2, every angle in degrees.
package fittings
