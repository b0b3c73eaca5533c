package ledger

import (
	"fmt"

	"blankoff/fittings"
)

// Lengths and sizes that are doubted where most pieces of a sheet are as small, whatever unit
// was stated: 150 x 60 x 40 is in cm. Common practice, no source.
const (
	brief     = 0.25 // m, of a straight
	leastSame = 3    // pieces
	mostOf    = 0.8  // share of the straights of a sheet
)

// isBrief reports a straight of which hardly any list has many.
func (l *Line) isBrief() bool {
	return l.Kind == fittings.Straight && l.Length > 0 && l.Length < brief && !l.Own
}

// isSlight reports a piece of which the stated unit makes one that is narrower than ducts are.
func (g *Ledger) isSlight(l *Line) bool {
	if l.Assumed || l.Given || l.Own || l.Kind == fittings.Flexible || l.Kind == fittings.Spigot {
		return false
	}
	c, ok := g.First(l)
	return ok && max(c.Width, c.Height) < leastWide && c.Diameter < leastRound
}

// few counts pieces of a sheet, and those of them that are in doubt.
type few struct{ all, doubted int }

// most reports that a share of them is.
func (f few) most(share float64) bool {
	return f.doubted >= leastSame && float64(f.doubted) >= share*float64(f.all)
}

// CheckSlight refuses the straights of a sheet of which most are as short, and pieces of
// one where most are as narrow, as they would be with another unit.
func (b *Book) CheckSlight() {
	if b.brief < leastSame && b.slight < leastSame {
		return
	}
	lengths, sizes := make([]few, len(b.Sheets)), make([]few, len(b.Sheets))
	for i := range b.Lines {
		l := &b.Lines[i]
		if l.Refused {
			continue
		}
		if l.Kind == fittings.Straight && l.Length > 0 {
			lengths[l.Sheet].all++
		}
		if l.isBrief() {
			lengths[l.Sheet].doubted++
		}
		if sizes[l.Sheet].all++; b.isSlight(l) {
			sizes[l.Sheet].doubted++
		}
	}
	for i := range b.Lines {
		l := &b.Lines[i]
		switch {
		case l.Refused:
		case b.isSlight(l) && sizes[l.Sheet].most(0.5):
			heading, value := "width_mm", 0.0
			c, _ := b.First(l)
			if value = c.Width; c.Diameter > 0 {
				heading, value = "diameter_mm", c.Diameter
			}
			b.Refuse(i, heading, fmt.Sprintf("%g", value*1000), "a size of a duct",
				"by the unit that the headings state most pieces here would be smaller than ducts are: if sizes are in cm or inches, say so in the headings, as width_cm; if they are right, write the unit behind each size")
		case l.isBrief() && lengths[l.Sheet].most(mostOf):
			says := "by the unit that the headings state"
			if l.Assumed {
				says = "no unit is stated, and in mm"
			}
			b.Refuse(i, "length_mm", fmt.Sprintf("%g", l.Length*1000), "a length of a straight",
				fmt.Sprintf("%s most straights here would be shorter than %g mm: if lengths are in cm or inches, say so in the heading, as length_cm; if they are right, write the unit behind each length", says, brief*1000))
		}
	}
}
