package xlsx

import (
	"blankoff/fittings"
	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

func pieceColumns() []column {
	return []column{
		{head: "section", width: 9}, {head: "tag", width: 16}, {head: "from piece", width: 7, kind: whole}, {head: "to piece", width: 7, kind: whole},
		{head: "of", width: 5, kind: whole}, {head: "kind", width: 11}, {head: "size", width: 14, kind: sized}, {head: "level", width: 10}, {head: "place", width: 22}, {head: "drawing", width: 10},
		{head: "counted m2", width: 11, kind: squareM}, {head: "row of schedule", width: 10, kind: whole},
		{head: "outside area m2", width: 11, kind: squareM, screen: true}, {head: "exact m2", width: 11, kind: squareM, screen: true}, {head: "why in no section", width: 40, screen: true},
	}
}

// pieces writes the pieces of every section, and after them those in scope that
// are in none.
func pieces(b *book, v *report.Plan) error {
	return b.sheet("pieces", pieceColumns(), func(row func(...any) error) error {
		write := func(section any, p *report.Piece) error {
			own, counted, exact := b.follow.areas(p)
			return row(section, p.Tag, p.From, p.To, p.Of, p.Kind, b.follow.pieceSize(p), p.Level, p.Place, p.Drawing, counted, p.Row, own, exact, p.Reason)
		}
		for i := range v.Sections {
			s := &v.Sections[i]
			for k := range s.Pieces {
				if err := write(first(s.ID, k), &s.Pieces[k]); err != nil {
					return err
				}
			}
		}
		for i := range v.Outside {
			if err := write(first("none", i), &v.Outside[i]); err != nil {
				return err
			}
		}
		return nil
	})
}

// areas are the areas of a stretch: its own, what counts of it, and what counts
// of it exactly. What is measured through counts nothing.
func (l *links) areas(p *report.Piece) (own, counted, exact any) {
	text, gives := l.stretch(p, false)
	own, counted, exact = follows(text, gives, p.Own), p.Area, p.Exact
	if p.Area != 0 {
		counted = follows(text, gives, p.Area)
	}
	if p.Exact != 0 {
		exact = follows(l.stretchExact(p))
	}
	return own, counted, exact
}

func (l *links) stretchExact(p *report.Piece) (text string, gives, now float64) {
	text, gives = l.stretch(p, true)
	return text, gives, p.Exact
}

// pieceSize is the size of a row, as the sheet takeoff has it.
func (l *links) pieceSize(p *report.Piece) any {
	now := show.PieceSize(p)
	if p.Item == nil || l.row[p.Item] == 0 {
		return now
	}
	if l.sizeText(p.Item, fittings.PlantEnd, "", false) == "" {
		return now
	}
	return formula{l.cell("size", p.Item), now}
}
