// Package takeoff turns the rows of a schedule into items: what each is, its
// exact outside area and its area on a measuring basis, what it hangs on, and
// what is wrong with it.
//
// The steps, in the order in which they run:
//
//  1. Add reads a row: words, numbers, sizes; a piece that hangs on nobody's
//     wall is measured at once.
//  2. Finish resolves who hangs on whom (from, ^, run, joins), measures the
//     spigots now that their walls are known, takes every opening off the wall
//     it is cut in, and sums.
//
// The measuring bases are files in bases/, each with its source and how sure it is;
// which kinds a switch touches is in fittings.Switches. The exact area stands
// beside that of the basis everywhere. A basis moves no joint and no end.
//
// A row with a fault is refused: it counts in RowsRefused, its area counts
// nowhere, and it stays among the items only because others may hang on it.
package takeoff
