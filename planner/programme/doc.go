// Package programme lays the tests of a plan out in time: what each takes and
// on what, how they fill working days and visits, when notice is to be given,
// and when a section that failed can be tested again.
//
// Minutes throughout. A test of so many minutes holds its set-up and its hold;
// blanking and moving to it come on top. No test is begun that can't be finished
// on the same day, unless it is longer than a day by itself.
package programme
