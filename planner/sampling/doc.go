// Package sampling chooses which of the planned sections are tested where a
// contract asks for a share of the ductwork and not for all of it, judges a
// choice that somebody else has made, and says how likely such a sample is to
// find a fault.
//
// The choice is made among whole planned sections: ductwork that is in no
// section can't be drawn, and a share is met by sections, so it is over by less
// than the last section drawn for it.
//
// # How sections are drawn
//
// The sections are put in the natural order of their names (S2 before S10) and
// shuffled by [Generator], which anybody can redo from the printed seed. The
// order in which the sections were handed over changes nothing. Down the
// shuffled list sections are taken for each quota in turn until it is met, then
// for the share itself; what a quota took counts towards the share. Every
// section is as likely to stand first as any other: the draw is not weighted by
// area. A section that measures nothing in the measure asked for (no joint
// length, say) is drawn only where all is asked for.
//
// A second share after a failure goes on down the same list, unless another
// seed is given. Whoever has the seed can foresee it.
//
// # What isn't claimed
//
// A chance of detection says how likely it is that at least one bad section is
// among those tested, if bad sections lie anywhere with equal likelihood and a
// test always finds a bad section. Faults of one fitter or one gasket lie
// together, so the true chance is lower as a rule. It says nothing about the
// leakage of what isn't tested.
//
// A sample is called representative when its joint length over its area, its
// share of straights and its mains, branches, shapes, systems and classes are
// like those of the whole. The band of joint length over area is as reported by
// the German association of duct makers; how far a share of area may stray
// ([StrayShare]) is a setting of this program, without a source.
//
// The regimes of [Presets] are starting points with their source and how sure
// it is. Most were read in other people's words. None replaces the contract, and
// the text of a standard isn't claimed where nobody read it.
package sampling
