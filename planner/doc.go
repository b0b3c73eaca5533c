// Package planner divides ductwork into test sections that a rig can judge.
//
// The whole program on one line:
//
//	schedule file -> rows -> items -> takeoff -> network -> sections -> plan -> writers
//
// What Make does, in order:
//
//  1. Settle how each row is tested: scheme, class, test pressure, sign. A
//     row's own value wins, a flag fills what is empty, neither is a fault.
//  2. Hold the test pressure against every known ceiling.
//  3. Mark the joints where a section has to end: changes of system, class,
//     pressure or sign, must, level or stage where asked for. Where such a
//     joint can't be blanked, what hangs together there is left outside and
//     the cures are named.
//  4. Divide each remaining network into the best sections (package partition),
//     in whole mm2, and hold the result against the true areas again.
//  5. List sections, cuts, blanks, what is outside and why, and the balance.
//
// Nothing here prints: notes and faults are values beside the numbers.
package planner
