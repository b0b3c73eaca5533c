package described

import "blankoff/fittings"

// ReducerStyle reads a style that no reducer has: it says nothing of the sizes, as
// concentric and conical, or that the far end is shifted.
func (k Kinds) ReducerStyle(style string) (known, shifted bool) {
	if eccentric.MatchString(style) {
		return true, true
	}
	s, is := fittings.ParseStyle(style)
	return is && s == fittings.Conical || !is && k.Lex.OfNoSize(style), false
}
