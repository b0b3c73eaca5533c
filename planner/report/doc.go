// Package report builds the one view of a takeoff or a plan that every writer
// renders. Nothing is rounded here; units are those of the contract (m2, L/s,
// Pa, N, mm). The subpackages only render it, each in its own form.
package report
