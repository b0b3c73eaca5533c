// Package audit holds the areas that somebody else states against those worked
// out, and looks for the reason why they differ.
//
// The steps, in the order in which they run:
//
//  1. Each stated figure is set beside the one worked out. The digits as typed
//     tell how it was rounded.
//  2. The known mistakes, alone and in pairs, are tried on the whole list at
//     once, or on a system, a shape or a kind of it. What a row's figure would
//     have been is worked out from its piece anew, with the openings that are
//     cut in it.
//  3. A cause is weighed by what it leaves unexplained and by how much has to be
//     supposed; the simplest that does it is named, with how well it does, and
//     with every other that does it as well.
//  4. What single rows have beside that is looked for row by row.
//
// Nothing here knows of classes, pressures or tests.
package audit
