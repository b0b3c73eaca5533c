// Package ledger keeps the rows of a schedule as lines: small, without pointers, all
// that joining, openings, faults and sums need of a row. What many rows have alike
// (sheets, names, cross-sections) is filed once, what few have is kept apart. A book is
// the ledger of a whole schedule, with its rows to be found by their tags.
package ledger

import (
	"fmt"
	"math"
	"math/bits"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff/terms"
)

// Sheet is a sheet of a file; a text file has one without a name.
type Sheet struct{ File, Name string }

// Ledger is the lines of a takeoff, or of a batch of rows.
type Ledger struct {
	Lines  []Line
	Text   []byte // tags and references
	More   []More
	Sheets []Sheet
	Names  []string
	Faces  []Face

	straights, short int // straights of some length, and those of hardly any
	narrow           int // pieces that may be in another unit
	brief, slight    int // straights as short, and pieces as narrow, as by another unit than is stated
	Several          int // rows of a quantity over 1
	bare             int // rows without a tag

	sheetOf map[Sheet]int32
	nameOf  map[string]int32
	lately  [4]int32 // names asked for, in turn
	next    int      // in lately
	faceOf  map[fittings.CrossSection]int32
	faced   [64]int32 // faces asked for lately, plus one; see spot
	facing  int32     // the one asked for last
	placed  placed
}

// New is an empty ledger.
func New() Ledger {
	return Ledger{sheetOf: map[Sheet]int32{}, nameOf: map[string]int32{}, faceOf: map[fittings.CrossSection]int32{}}
}

// mostFiled is the number of names and faces from which a ledger that is reset
// forgets them.
const mostFiled = 4096

// Reset empties the ledger for use again. What is filed once for many rows stays.
func (g *Ledger) Reset() {
	g.Lines, g.Text, g.More = g.Lines[:0], g.Text[:0], g.More[:0]
	g.straights, g.short, g.narrow, g.Several, g.bare, g.brief, g.slight = 0, 0, 0, 0, 0, 0, 0
	if len(g.Faces)+len(g.Names) > mostFiled {
		g.Sheets, g.Names, g.Faces, g.placed = nil, nil, nil, placed{}
		clear(g.sheetOf)
		clear(g.nameOf)
		clear(g.faceOf)
	}
}

// FileSheet files the sheet on which a row stands.
func (g *Ledger) FileSheet(p Sheet) int32 {
	if n := len(g.Sheets); n > 0 && g.Sheets[n-1] == p {
		return int32(n - 1)
	}
	k, ok := g.sheetOf[p]
	if !ok {
		k = int32(len(g.Sheets))
		g.Sheets, g.sheetOf[p] = append(g.Sheets, p), k
	}
	return k
}

// Begin begins the line of a row.
func (g *Ledger) Begin(row int, on Sheet) *Line {
	g.Lines = append(g.Lines, Line{})
	l := &g.Lines[len(g.Lines)-1]
	l.Row, l.Sheet = int32(row), g.FileSheet(on)
	l.Parent, l.RingWith, l.Far, l.More = -1, -1, -1, -1
	return l
}

// Again is Name where a name may be that of the row above, as most are.
func (g *Ledger) Again(above int32, s string) int32 {
	if int(above) < len(g.Names) && g.Names[above] == s {
		return above
	}
	return g.Name(s)
}

// Name files the name of a system or level.
func (g *Ledger) Name(s string) int32 {
	for _, k := range g.lately {
		if int(k) < len(g.Names) && g.Names[k] == s {
			return k
		}
	}
	k, ok := g.nameOf[s]
	if !ok {
		s = strings.Clone(s) // it may be part of a long text, which would be kept for it
		k = int32(len(g.Names))
		g.Names = append(g.Names, s)
		g.nameOf[s] = k
	}
	g.lately[g.next] = k
	g.next = (g.next + 1) % len(g.lately)
	return k
}

// Face files a cross-section; made gives its note the first time.
func (g *Ledger) Face(c fittings.CrossSection, made func(fittings.CrossSection) string) int32 {
	if k := int(g.facing); k < len(g.Faces) && g.Faces[k].CrossSection == c { // that of the other end, or of the row above
		return g.facing
	}
	g.facing = g.face(c, made)
	return g.facing
}

// face is Face for a cross-section that isn't the last.
func (g *Ledger) face(c fittings.CrossSection, made func(fittings.CrossSection) string) int32 {
	spot := &g.faced[spot(c)]
	if k := int(*spot) - 1; k >= 0 && k < len(g.Faces) && g.Faces[k].CrossSection == c {
		return int32(k)
	}
	k, ok := g.faceOf[c]
	if !ok {
		k = int32(len(g.Faces))
		g.Faces = append(g.Faces, Face{c, made(c), -1, nil})
		g.faceOf[c] = k
	}
	*spot = k + 1
	return k
}

// spot is where a cross-section is looked for first: its bits, mixed.
func spot(c fittings.CrossSection) uint64 {
	const a, b = 0x9e3779b97f4a7c15, 0xc2b2ae3d27d4eb4f // odd numbers without a pattern
	h := (math.Float64bits(c.Width)*a^math.Float64bits(c.Height))*b ^ math.Float64bits(c.Diameter)*a
	return h >> 58
}

// Rest is the line's own place for what few rows have.
func (g *Ledger) Rest(l *Line) *More {
	if l.More < 0 {
		l.More = int32(len(g.More))
		g.More = append(g.More, More{})
	}
	return &g.More[l.More]
}

// nothingMore is that of the rows that have none of it: read, never written.
var nothingMore = &More{}

// Seldom is what few rows have, to read.
func (g *Ledger) Seldom(l *Line) *More {
	if l.More < 0 {
		return nothingMore
	}
	return &g.More[l.More]
}

// TagOf is the tag of a row.
func (g *Ledger) TagOf(l *Line) []byte { return g.Text[l.Text:][:l.TagLength] }

// FromOf is what a row says that it hangs on, as typed.
func (g *Ledger) FromOf(l *Line) []byte { return g.Text[l.Text+int(l.TagLength):][:l.FromLength] }

// NameText is the name of a row.
func (g *Ledger) NameText(l *Line) string {
	return RowName(string(g.TagOf(l)), g.Sheets[l.Sheet].Name, int(l.Row))
}

// RowName is the tag, or the place of a row without one.
func RowName(tag, sheet string, row int) string {
	switch {
	case tag != "":
		return tag
	case sheet != "":
		return fmt.Sprintf("%s row %d", sheet, row)
	}
	return "row " + strconv.Itoa(row)
}

// First is the cross-section of the first end; ok is false where ends aren't
// known.
func (g *Ledger) First(l *Line) (c fittings.CrossSection, ok bool) {
	if l.Roles == 0 {
		return c, false
	}
	return g.Faces[l.Faces[0]].CrossSection, true
}

// End is the cross-section of an end, and whether the piece has it.
func (g *Ledger) End(l *Line, r fittings.EndRole) (c fittings.CrossSection, ok bool) {
	if l.Roles&(1<<r) == 0 {
		return c, false
	}
	return g.Faces[l.Faces[bits.OnesCount8(l.Roles&(1<<r-1))]].CrossSection, true
}

// Ends are the ends of a row.
func (g *Ledger) Ends(l *Line) []fittings.End {
	var out []fittings.End
	for r := fittings.PlantEnd; r <= fittings.BranchEnd2; r++ {
		if c, ok := g.End(l, r); ok {
			out = append(out, fittings.End{Role: r, CrossSection: c})
		}
	}
	return out
}

// SetEnds keeps the ends of a row.
func (g *Ledger) SetEnds(l *Line, ends []fittings.End, made func(fittings.CrossSection) string) {
	l.Roles = 0
	for k, e := range ends {
		l.Roles |= 1 << e.Role
		if k > 0 && e.CrossSection == ends[k-1].CrossSection {
			l.Faces[k] = l.Faces[k-1]
			continue
		}
		l.Faces[k] = g.Face(e.CrossSection, made)
	}
}

// Tally counts a row.
func (g *Ledger) Tally(l *Line) {
	if l.Quantity > 1 {
		g.Several++
	}
	if l.TagLength == 0 {
		g.bare++
	}
	if g.isNarrow(l) {
		g.narrow++
	}
	if l.isBrief() {
		g.brief++
	}
	if g.isSlight(l) {
		g.slight++
	}
	if l.Kind != fittings.Straight || l.Length <= 0 {
		return
	}
	if g.straights++; l.Length < shortStraight {
		g.short++
	}
}

// SizeOf is what people call a row by: the section of its first end, or the box of
// a plenum of known sides. What isn't known is empty.
func (g *Ledger) SizeOf(l *Line) terms.Size {
	if l.Kind == fittings.Plenum {
		if z, ok := terms.BoxOf(&g.Seldom(l).Piece); ok {
			return z
		}
	}
	c, _ := g.First(l)
	return terms.Size{Section: c}
}
