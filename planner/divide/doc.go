// Package divide divides ductwork into test sections.
//
// Patches finds the stretches of a network inside which any joint that can be
// blanked may be cut, with the areas that a rig can judge there. Divide finds
// the best sections of one: it states the patch in whole numbers for package
// partition, holds the answer against the true areas, keeps sections to pieces
// that are up together, and evens them out where that costs nothing.
//
// Where the bounds lie is settled before, in package duty; what the sections
// come to is said afterwards, in package planner.
package divide
