// Package planner divides ductwork into test sections that a rig can judge.
//
// The whole program on one line:
//
//	schedule file -> rows -> items -> takeoff -> network -> sections -> plan -> writers
//
// What Make does, in order:
//
//  1. Package duty settles how each row is tested: scheme, class, test
//     pressure, sign. A row's own value wins, a flag fills what is empty,
//     neither is a fault.
//  2. It holds the test pressure against every known ceiling.
//  3. It marks the joints where a section has to end: changes of system, class,
//     pressure or sign, must, level or stage where asked for, a person's own
//     cuts. Where such a joint can't be blanked, what hangs together there is
//     left outside and the cures are named.
//  4. Package divide divides each remaining stretch of the network into the
//     best sections (package partition), in whole mm2, and holds the result
//     against the true areas again.
//  5. This package lists sections, cuts, blanks, what is outside and why, and
//     the balance; judges each section with its readings and cures; and says
//     what was proved. JudgeCuts sets a person's own cuts beside the best plan.
//
// Nothing here prints: notes and faults are values beside the numbers.
package planner
