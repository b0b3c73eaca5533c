package report

import (
	"fmt"
	"slices"

	"blankoff/planner"
)

// noteVoid says on every section with pieces of one that is void that it has to be
// tested anew.
func (v *Plan) noteVoid(p *planner.Plan, old planner.Old) {
	for _, x := range v.Kept.Void {
		var of []planner.OldSpan
		for i := range old.Sections {
			if old.Sections[i].ID == x.ID {
				of = old.Sections[i].Spans
			}
		}
		for i := range v.Sections {
			s := &v.Sections[i]
			if slices.ContainsFunc(p.Spans(&p.Sections[i]), func(sp planner.Span) bool { return isOf(pieceOf(p, sp), of) }) {
				s.Notes = append(s.Notes, fmt.Sprintf("has pieces of %s, which is VOID (%s before): %s, %s; test this section, whatever was read there", x.ID, x.Status, x.Piece, x.Why))
			}
		}
	}
}

// isOf reports a stretch that has pieces of one of these. Of a straight that is made
// in another number of pieces nobody knows which they were.
func isOf(is Piece, spans []planner.OldSpan) bool {
	return slices.ContainsFunc(spans, func(o planner.OldSpan) bool {
		return o.Tag == is.Tag && (o.Of != is.Of || o.From <= is.To && is.From <= o.To)
	})
}

// Voids says which firm sections a change has made void, or nothing.
func (v *Plan) Voids() []string {
	var out []string
	if v.Kept == nil {
		return nil
	}
	for _, x := range v.Kept.Void {
		out = append(out, fmt.Sprintf("%s (%s) is VOID: %s, %s", x.ID, x.Status, x.Piece, x.Why))
	}
	return out
}
