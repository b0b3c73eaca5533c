// Package live writes areas as formulas over the sizes of a schedule, so that a
// workbook can follow a change of size. A formula is a tree that is worked out
// here as well, by the figures that a row has: one that doesn't give the area of
// the takeoff isn't used, so that a formula is never wrong.
//
// The formulas are those of package fittings, each with its source there. Pieces
// whose area is an integral without a closed form have none.
package live
