package measuring

import (
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff/ledger"
)

// Gauge measures pieces one after the other: most are like some before.
type Gauge struct {
	Rule
	faces *ledger.Ledger
	quiet bool                                    // nothing is noted
	alike map[fittings.Piece]fittings.Measurement // of fittings measured before
}

// NewGauge is a gauge that files cross-sections among the faces of a ledger. A quiet
// one notes nothing.
func NewGauge(r Rule, faces *ledger.Ledger, quiet bool) Gauge {
	return Gauge{Rule: r, faces: faces, quiet: quiet, alike: map[fittings.Piece]fittings.Measurement{}}
}

// mostAlike is the number of fittings from which a gauge forgets them.
const mostAlike = 4096

// Reset makes ready for further pieces.
func (g *Gauge) Reset() {
	if len(g.alike) > mostAlike {
		clear(g.alike)
	}
}

// Measure measures a piece at the sizes that its row gives. A fitting that is like one
// before isn't measured again; a straight is measured faster than it is found.
func (g *Gauge) Measure(p *fittings.Piece) (fittings.Measurement, []fittings.Problem) {
	if c, area, ok := fittings.PlainStraight(p); ok {
		f := &g.faces.Faces[g.faces.Face(c, g.SeriesNote)]
		if f.Both == nil {
			f.Both = fittings.Through(c)
		}
		return fittings.Measurement{Area: area, Ends: f.Both}, nil
	}
	m, known := g.alike[*p]
	if known {
		return m, nil
	}
	m, problems := fittings.MeasureIn(p, g.Written)
	if len(problems) == 0 {
		g.alike[*p] = m
	}
	return m, problems
}

// SeriesNote is the note on a cross-section that isn't of the standard sizes.
func (g *Gauge) SeriesNote(c fittings.CrossSection) string {
	if g.quiet {
		return ""
	}
	return fittings.SeriesNoteIn(c, g.Written)
}

// NoteSeries adds to the notes on a piece those on ends that aren't of the standard
// sizes, each once. Sizes grown by a lining aren't those that anybody ordered.
func (g *Gauge) NoteSeries(notes []string, p *fittings.Piece, ends []fittings.End) []string {
	if v, _ := p.Sizes.Get(fittings.Lining); v > 0 || g.quiet {
		return notes
	}
	before := len(notes)
	for _, e := range ends {
		note := g.faces.Faces[g.faces.Face(e.CrossSection, g.SeriesNote)].Note
		if note != "" && !slices.Contains(notes[before:], note) {
			notes = append(notes, note)
		}
	}
	return notes
}
