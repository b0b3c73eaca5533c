package fittings

import "strings"

// BendLength says how a basis measures the length of a bend, and of an offset
// made of arcs or mitres.
type BendLength uint8

// The lengths of a bend. The centre line gives the exact area of every bend of
// constant section.
const (
	CentreLine     BendLength = iota
	OuterEdge                 // along the heel
	ToIntersection            // to where the centre lines meet
)

// TaperGirth says which girth a basis takes where the ends of a piece differ.
type TaperGirth uint8

// The girths of a taper. Faces means the true faces, developed: the exact area.
const (
	Faces TaperGirth = iota
	MeanGirth
	LargerGirth
)

// TaperLength says how a basis measures the length of a taper.
type TaperLength uint8

// The lengths of a taper. Slant is the largest true slant; with Faces each face
// has its own.
const (
	Slant TaperLength = iota
	Axial
)

// BranchFrom says where a branch begins.
type BranchFrom uint8

// Where a branch begins: at the curve in which it meets the main (exact), at the
// main's face (its crown, if round), or at the main's axis.
const (
	FromSaddle BranchFrom = iota
	FromFace
	FromAxis
)

// Openings says what becomes of an opening cut in a wall.
type Openings uint8

// An opening is deducted from its wall (exact), or kept.
const (
	Deducted Openings = iota
	Kept
)

// Caps says whether permanent caps count.
type Caps uint8

// Caps are in (exact) or out.
const (
	CapsIn Caps = iota
	CapsOut
)

// Inlines says whether the duct is measured through an in-line piece.
type Inlines uint8

// An in-line piece is measured through (exact) or excluded.
const (
	MeasuredThrough Inlines = iota
	Excluded
)

// Basis is a rule by which area is measured: seven switches that don't depend on
// one another, but for Faces, which goes with Slant only. The zero value of each
// switch is the exact one.
type Basis struct {
	Name     string // as it's asked for and printed
	About    string // one sentence for the reader
	Source   string
	Sureness string // how well the source is known: read, second-hand, from memory, derived, not stated

	BendLength  BendLength
	TaperGirth  TaperGirth
	TaperLength TaperLength
	BranchFrom  BranchFrom
	Openings    Openings
	Caps        Caps
	Inlines     Inlines
}

// Switch is one switch of a basis, for reading and printing it.
type Switch struct {
	Key     string   // in a basis file
	Words   []string // its choices; the first is the exact one
	Touches string   // which kinds it touches, and how
}

// switches is in the order of choices.
var switches = [...]Switch{
	{"bend_length", []string{"centre line", "outer edge", "to the intersection"},
		"bends, rectangular breeches, radius and mitred offsets: girth x this length. By the centre line a square-heel or reducing bend is counted by its true faces if taper_girth is faces"},
	{"taper_girth", []string{"faces", "mean", "larger"},
		"reducers, transitions, straight-sided offsets, circular breeches, square-heel and reducing bends: the girth that is multiplied by the length. A conical branch that doesn't begin at its saddle takes it too; faces means the mean where a length other than the true one is taken"},
	{"taper_length", []string{"slant", "axial"},
		"reducers, transitions, straight-sided offsets, circular breeches: the largest true slant, or along the axis"},
	{"branch_from", []string{"saddle", "face", "axis"},
		"tees, crosses, spigots: the branch's true surface, or its girth by its length from the main's face or axis. A plenum has no axis: its face is taken. A shoe is counted without its extra entry"},
	{"opening", []string{"deducted", "kept"},
		"tees, crosses, and every wall that a spigot is cut in; plenums, and whatever opens into them"},
	{"caps", []string{"in", "out"}, "permanent caps; never a blank, which is no duct"},
	{"inline", []string{"through", "excluded"},
		"dampers, attenuators and other in-line pieces; a flexible counts on every basis"},
}

// Switches lists the switches of a basis in a fixed order. No basis touches a
// straight, a flexible, the faces of a plenum or a given area.
func Switches() []Switch { return append([]Switch(nil), switches[:]...) }

// choices is every switch of the basis, in the order of Switches.
func (b *Basis) choices() [len(switches)]*uint8 {
	return [...]*uint8{(*uint8)(&b.BendLength), (*uint8)(&b.TaperGirth), (*uint8)(&b.TaperLength),
		(*uint8)(&b.BranchFrom), (*uint8)(&b.Openings), (*uint8)(&b.Caps), (*uint8)(&b.Inlines)}
}

// Set sets the switch of the given key to the choice that word names, whatever
// the case, spaces and punctuation. It reports whether there is such a choice.
func (b *Basis) Set(key, word string) bool {
	for i, s := range switches {
		if s.Key != key {
			continue
		}
		for choice, w := range s.Words {
			if plain(w) == plain(word) {
				*b.choices()[i] = uint8(choice)
				return true
			}
		}
	}
	return false
}

// Choice is the word for what the switch of the given key is set to, or "" where
// there is no such switch or choice.
func (b *Basis) Choice(key string) string {
	for i, s := range switches {
		if choice := int(*b.choices()[i]); s.Key == key && choice < len(s.Words) {
			return s.Words[choice]
		}
	}
	return ""
}

// Exact reports whether every switch is at its exact choice, so that areas are
// those of Measure. No basis at all is exact too.
func (b *Basis) Exact() bool {
	if b == nil {
		return true
	}
	for _, choice := range b.choices() {
		if *choice != 0 {
			return false
		}
	}
	return true
}

// Check says in one sentence what is wrong with a combination of switches, or ""
// where it means something. Faces go with slant only: a true face has no axial
// length. AreaOn takes faces as they are in any case.
func (b *Basis) Check() string {
	for i, choice := range b.choices() {
		if int(*choice) >= len(switches[i].Words) {
			return switches[i].Key + " has no such choice: " + strings.Join(switches[i].Words, ", ")
		}
	}
	if b.TaperGirth == Faces && b.TaperLength == Axial {
		return "taper_girth faces goes with taper_length slant only: a true face has no axial length; say mean or larger, or slant"
	}
	return ""
}

// String is the basis in one sentence: "bend_length outer edge, taper_girth
// larger, ...".
func (b *Basis) String() string {
	if b == nil {
		b = &Basis{}
	}
	words := make([]string, len(switches))
	for i, s := range switches {
		words[i] = strings.ReplaceAll(s.Key, "_", " ") + " " + b.Choice(s.Key)
	}
	return strings.Join(words, ", ")
}
