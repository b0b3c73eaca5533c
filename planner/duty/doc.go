// Package duty says how everything is tested and where a test section has to
// end.
//
// Settle gives every row its duty: system, scheme, class, test pressure, sign. A
// row's own value wins, a flag fills what is empty, neither is a fault. A test
// pressure above a known ceiling is a fault too. Mark takes the duties to the
// pieces of a network, bars the joints that can't be blanked, and marks those at
// which a section has to end: where the duty changes, where must or a person's
// own cut says so, and round what is in no test. Where a section has to end at a
// joint that can't be blanked, what hangs together there is left outside and the
// cures are named.
//
// Nothing is divided here; that is package divide.
package duty
