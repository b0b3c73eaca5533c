// Package text renders a takeoff, a plan, faults and windows as plain text for
// a terminal. It works nothing out beyond rounding and sums over what is shown.
//
// Areas are rounded to 0.01 m2 and forces to whole N; limits are cut off, never
// rounded up, so that a printed limit is never more than the permitted leakage.
// No line is wider than 110 columns.
package text
