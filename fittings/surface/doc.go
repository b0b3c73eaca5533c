// Package surface holds the areas of the curved sheets that ductwork is made
// of, as plain numbers: lofts between two parallel ends, branches that meet a
// round main, cones that meet a round main, and the legs of breeches.
//
// It knows nothing of schedules. Arguments are taken as already checked by the
// caller; lengths are in one unit and areas in its square; angles are in
// radians. Every function is exact: a closed form, a complete elliptic
// integral, or a quadrature held to about 1e-12 of its value.
package surface
