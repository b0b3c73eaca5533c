package takeoff

import (
	"fmt"
	"math"
	"math/bits"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff/terms"
)

// line is what joining, openings, faults and sums need of a row. A schedule of a
// million rows has one for each, so it is small and holds no pointers; the rules
// work on lines only, whether Items are kept beside them or not.
type line struct {
	text     int // where its tag, and then its from, begin in the ledger's text
	tag      uint32
	from     uint32 // their lengths
	row      int32
	sheet    int32 // in the ledger's list
	system   int32
	level    int32 // in the ledger's list of names
	quantity int32
	parent   int32 // -1 for none
	ringWith int32 // -1 for none
	children int32
	far      int32    // item that its far end carries, -1 for none
	more     int32    // in the ledger's list of what few rows have, -1 for none
	faces    [4]int32 // of the ends that it has, in their order, in the ledger's list

	length, area, exact, joint float64 // m, m2, m2, m

	kind      fittings.Kind
	shape     fittings.Shape
	typed     fittings.Shape // before it was measured
	scope     terms.Scope
	roles     uint8 // a bit for each end that it has
	parentEnd fittings.EndRole
	ringEnd   fittings.EndRole
	notes     uint8 // before it was measured
	refused   bool
	given     bool // the area was given
	assumed   bool // its sizes are in a unit that nobody stated
}

// more is what few rows have.
type more struct {
	line          int32          // whose it is
	piece         fittings.Piece // of spigots and plenums
	at            float64        // m; see hasAt
	hasAt         bool
	run, joins    string
	opening       float64 // of a spigot in its wall, exact, m2
	cut, cutExact float64 // openings taken off, m2
}

// face is a cross-section that ends have, with what is worked out once for all.
type face struct {
	fittings.CrossSection
	note string         // that it isn't of a series
	size int32          // its text among the sizes of the totals; -1: not asked for yet
	both []fittings.End // of a piece with this section at both ends, which is most; shared, so never written
}

// sheet is a sheet of a file; a text file has one without a name.
type sheet struct{ file, name string }

// ledger is the lines of a takeoff, or of a batch of rows.
type ledger struct {
	lines  []line
	text   []byte // tags and references
	more   []more
	sheets []sheet
	names  []string
	faces  []face

	straights, short int // straights of some length, and those of hardly any
	narrow           int // pieces that may be in another unit
	several          int // rows of a quantity over 1

	sheetOf map[sheet]int32
	nameOf  map[string]int32
	lately  [4]int32 // names asked for, in turn
	next    int      // in lately
	faceOf  map[fittings.CrossSection]int32
	faced   [64]int32 // faces asked for lately, plus one; see spot
}

func newLedger() ledger {
	return ledger{sheetOf: map[sheet]int32{}, nameOf: map[string]int32{}, faceOf: map[fittings.CrossSection]int32{}}
}

// mostFiled is the number of names and faces from which a ledger that is reset
// forgets them.
const mostFiled = 4096

// reset empties the ledger for use again. What is filed once for many rows stays.
func (g *ledger) reset() {
	g.lines, g.text, g.more = g.lines[:0], g.text[:0], g.more[:0]
	g.straights, g.short, g.narrow, g.several = 0, 0, 0, 0
	if len(g.faces)+len(g.names) > mostFiled {
		g.sheets, g.names, g.faces = nil, nil, nil
		clear(g.sheetOf)
		clear(g.nameOf)
		clear(g.faceOf)
	}
}

// add puts the lines of another ledger after those that it has, and says where
// they begin.
func (g *ledger) add(o *ledger) (first int) {
	first, text, rest := len(g.lines), len(g.text), int32(len(g.more))
	sheets, names, faces := g.filed(o)
	g.text = append(g.text, o.text...)
	g.more = append(g.more, o.more...)
	g.lines = append(g.lines, o.lines...)
	g.straights, g.short, g.narrow, g.several = g.straights+o.straights, g.short+o.short, g.narrow+o.narrow, g.several+o.several
	for i := first; i < len(g.lines); i++ {
		l := &g.lines[i]
		l.text += text
		l.sheet, l.system, l.level = sheets[l.sheet], names[l.system], names[l.level]
		if l.more >= 0 {
			l.more += rest
			g.more[l.more].line = int32(i)
		}
		for e := range l.faces {
			if l.roles>>e != 0 {
				l.faces[e] = faces[l.faces[e]]
			}
		}
	}
	return first
}

// filed is where the ledger has what another has filed.
func (g *ledger) filed(o *ledger) (sheets, names, faces []int32) {
	for _, p := range o.sheets {
		sheets = append(sheets, g.fileSheet(p))
	}
	for _, s := range o.names {
		names = append(names, g.name(s))
	}
	for _, f := range o.faces {
		faces = append(faces, g.face(f.CrossSection, func(fittings.CrossSection) string { return f.note }))
	}
	return sheets, names, faces
}

// fileSheet files the sheet on which a row stands.
func (g *ledger) fileSheet(p sheet) int32 {
	if n := len(g.sheets); n > 0 && g.sheets[n-1] == p {
		return int32(n - 1)
	}
	k, ok := g.sheetOf[p]
	if !ok {
		k = int32(len(g.sheets))
		g.sheets, g.sheetOf[p] = append(g.sheets, p), k
	}
	return k
}

// name files the name of a system or level.
func (g *ledger) name(s string) int32 {
	for _, k := range g.lately {
		if int(k) < len(g.names) && g.names[k] == s {
			return k
		}
	}
	k, ok := g.nameOf[s]
	if !ok {
		s = strings.Clone(s) // it may be part of a long text, which would be kept for it
		k = int32(len(g.names))
		g.names = append(g.names, s)
		g.nameOf[s] = k
	}
	g.lately[g.next] = k
	g.next = (g.next + 1) % len(g.lately)
	return k
}

// face files a cross-section; made gives its note the first time.
func (g *ledger) face(c fittings.CrossSection, made func(fittings.CrossSection) string) int32 {
	spot := &g.faced[spot(c)]
	if k := int(*spot) - 1; k >= 0 && k < len(g.faces) && g.faces[k].CrossSection == c {
		return int32(k)
	}
	k, ok := g.faceOf[c]
	if !ok {
		k = int32(len(g.faces))
		g.faces = append(g.faces, face{c, made(c), -1, nil})
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

// rest is the line's own place for what few rows have.
func (g *ledger) rest(l *line) *more {
	if l.more < 0 {
		l.more = int32(len(g.more))
		g.more = append(g.more, more{})
	}
	return &g.more[l.more]
}

// nothingMore is that of the rows that have none of it: read, never written.
var nothingMore = &more{}

// seldom is what few rows have, to read.
func (g *ledger) seldom(l *line) *more {
	if l.more < 0 {
		return nothingMore
	}
	return &g.more[l.more]
}

func (g *ledger) tagOf(l *line) []byte  { return g.text[l.text:][:l.tag] }
func (g *ledger) fromOf(l *line) []byte { return g.text[l.text+int(l.tag):][:l.from] }

// nameText is the name of a row.
func (g *ledger) nameText(l *line) string {
	return rowName(string(g.tagOf(l)), g.sheets[l.sheet].name, int(l.row))
}

// rowName is the tag, or the place of a row without one.
func rowName(tag, sheet string, row int) string {
	switch {
	case tag != "":
		return tag
	case sheet != "":
		return fmt.Sprintf("%s row %d", sheet, row)
	}
	return "row " + strconv.Itoa(row)
}

// first is the cross-section of the first end; ok is false where ends aren't
// known.
func (g *ledger) first(l *line) (c fittings.CrossSection, ok bool) {
	if l.roles == 0 {
		return c, false
	}
	return g.faces[l.faces[0]].CrossSection, true
}

// end is the cross-section of an end, and whether the piece has it.
func (g *ledger) end(l *line, r fittings.EndRole) (c fittings.CrossSection, ok bool) {
	if l.roles&(1<<r) == 0 {
		return c, false
	}
	return g.faces[l.faces[bits.OnesCount8(l.roles&(1<<r-1))]].CrossSection, true
}

// ends are the ends of a row.
func (g *ledger) ends(l *line) []fittings.End {
	var out []fittings.End
	for r := fittings.PlantEnd; r <= fittings.BranchEnd2; r++ {
		if c, ok := g.end(l, r); ok {
			out = append(out, fittings.End{Role: r, CrossSection: c})
		}
	}
	return out
}

// setEnds keeps the ends of a row.
func (g *ledger) setEnds(l *line, ends []fittings.End, made func(fittings.CrossSection) string) {
	l.roles = 0
	for k, e := range ends {
		l.roles |= 1 << e.Role
		if k > 0 && e.CrossSection == ends[k-1].CrossSection {
			l.faces[k] = l.faces[k-1]
			continue
		}
		l.faces[k] = g.face(e.CrossSection, made)
	}
}

// sideBySide reports whether a quantity over 1 stands side by side.
func (l *line) sideBySide() bool { return sideBySide(l.kind, int(l.quantity)) }

// loose reports whether nobody is named by the row and nobody names it.
func (l *line) loose() bool { return l.parent < 0 && l.children == 0 && l.ringWith < 0 }

// tally counts a row.
func (g *ledger) tally(l *line) {
	if l.quantity > 1 {
		g.several++
	}
	if g.isNarrow(l) {
		g.narrow++
	}
	if l.kind != fittings.Straight || l.length <= 0 {
		return
	}
	if g.straights++; l.length < shortStraight {
		g.short++
	}
}

// sizeOf is what people call a row by: the section of its first end, or the box of
// a plenum of known sides. What isn't known is empty.
func (g *ledger) sizeOf(l *line) terms.Size {
	if l.kind == fittings.Plenum {
		if z, ok := terms.BoxOf(&g.seldom(l).piece); ok {
			return z
		}
	}
	c, _ := g.first(l)
	return terms.Size{Section: c}
}
