package xlsx

import (
	"slices"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/planner/report"
	"blankoff/planner/report/live"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
	"blankoff/takeoff"
)

// itemRow is a row of the sheet takeoff being written; m is nil where only the
// figures are known.
type itemRow struct {
	l  *links
	it *report.Item
	m  *takeoff.Item
}

func (r itemRow) here(heading string) string { return r.l.here(heading, r.m) }

// area is one piece times the quantity, less the openings.
func (r itemRow) area() any {
	if r.m == nil {
		return r.it.Area
	}
	return follows(r.here("one m2")+"*"+r.here("qty")+"-"+r.here("openings taken off m2"), r.m.Each*float64(r.m.Quantity)-r.m.Cut, r.it.Area)
}

func (r itemRow) exact() any {
	switch {
	case r.m == nil:
		return r.it.ExactArea
	case !r.l.basis:
		return follows(r.here("area m2"), r.it.Area, r.it.ExactArea)
	}
	cut := "-" + r.here("openings taken off m2")
	if r.m.Cut != r.m.CutExact {
		cut = "-" + r.l.figure(units.Area, r.m.CutExact)
		if text, gives := r.openings(); near(gives, r.m.CutExact) && text != "" {
			cut = "-(" + text + ")"
		}
	}
	return follows(r.here("one exact m2")+"*"+r.here("qty")+cut, r.m.EachExact*float64(r.m.Quantity)-r.m.CutExact, r.it.ExactArea)
}

// joints is the girth at the plant end, once for every piece.
func (r itemRow) joints() any {
	if r.m == nil {
		return r.it.JointLength
	}
	text := r.l.text(live.Girth(r.m), r.m, nil, true)
	if text == "" {
		return r.it.JointLength
	}
	n, pieces := 1, r.here("qty")
	if r.m.Piece.Kind == fittings.Straight {
		n = fittings.NumberOfPieces(r.m.Piece.Shape, r.m.Length(), r.l.pieceLength(r.m))
		pieces += "*MAX(1,ROUNDUP((" + r.here("length_mm") + "-" + r.l.slack() + ")/" + r.l.pieceName(r.m) + ",0))"
	}
	return follows(pieces+"*("+text+")", float64(n*r.m.Quantity)*r.m.Ends[0].Girth(), r.it.JointLength)
}

// quantity may be changed where that moves no cut.
func (r itemRow) quantity() any {
	if r.m == nil || r.l.split[r.m] {
		return r.it.Quantity
	}
	return input{r.it.Quantity}
}

// size is the size of the end towards the plant, as people write it.
func (r itemRow) size() any {
	now := show.ItemSize(r.it)
	if r.m == nil {
		return now
	}
	long := ""
	if r.m.Piece.Kind == fittings.Plenum {
		long = r.here("length_mm")
	}
	if text := r.l.sizeText(r.m, fittings.PlantEnd, long, true); text != "" {
		return formula{text, now}
	}
	return now
}

// measured is what the area is worked out from.
func (r itemRow) measured() []any {
	if r.m == nil {
		return make([]any, len(r.l.dims)+4+boolean(r.l.basis))
	}
	sheet := r.l.sheet
	host := r.l.host(r.m)
	exact, why := live.Area(r.m, host, sheet)
	on, onWhy := exact, why
	if r.l.basis {
		on, onWhy = live.AreaOn(r.m, host, sheet, r.l.v.Takeoff.Rule)
	}
	cell := func(e *live.Expr, now float64) any {
		if text := r.l.text(e, r.m, host, true); text != "" {
			return formula{text, now}
		}
		return now
	}
	var said []string
	say := func(what string, c any, why string) any {
		if _, ok := c.(formula); !ok {
			said = append(said, what+" "+why)
		}
		return c
	}
	cells := []any{nil, say("area", cell(on, r.m.Each), onWhy)}
	if r.l.basis {
		cells = append(cells, say("exact area", cell(exact, r.m.EachExact), why))
	}
	own, open, openWhy := r.opening()
	if own != nil {
		own = say("opening", own, openWhy)
	}
	cells = append(cells, own)
	if r.m.CutExact > 0 && r.m.Cut > 0 {
		text, gives := r.openings()
		cells = append(cells, say("openings taken off", follows(text, gives, r.m.Cut), live.NotFollowed))
	} else {
		cells = append(cells, r.m.Cut)
	}
	cells[0] = strings.Join(said, "; ")
	for _, d := range r.l.dims {
		cells = append(cells, r.dim(d, on, exact, open))
	}
	return cells
}

// dim is a size as the schedule has it; one that a formula hangs on may be
// changed.
func (r itemRow) dim(d fittings.Dim, by ...*live.Expr) any {
	raw, given := live.Raw(r.m, d)
	if !given {
		return nil
	}
	for _, e := range by {
		if e != nil && slices.Contains(e.Vars(), live.Var{Dim: d}) {
			return input{raw}
		}
	}
	return raw
}

// opening is what the row takes out of the wall that it hangs on.
func (r itemRow) opening() (cell any, by *live.Expr, why string) {
	now := r.l.openingNow(r.m)
	if now == 0 {
		return nil, nil, ""
	}
	host := r.l.host(r.m)
	if r.m.Piece.Kind == fittings.Spigot {
		by, why = live.Opening(r.m, host, r.l.sheet)
	} else {
		by, why = live.Face(r.m, fittings.PlantEnd, r.l.sheet), live.NotFollowed
	}
	text := r.l.text(by, r.m, host, true)
	if text == "" {
		return now, nil, why
	}
	return formula{r.here("qty") + "*(" + text + ")", now}, by, ""
}

// openings adds up what is cut in the row: by what hangs on it, and in a plenum
// by what it hangs on. Rows that follow each other are one range.
func (r itemRow) openings() (text string, gives float64) {
	var terms []string
	first, last := 0, 0
	letter := r.l.at[openingHead]
	flush := func() {
		switch {
		case first == 0:
		case first == last:
			terms = append(terms, letter+strconv.Itoa(first))
		default:
			terms = append(terms, "SUM("+rangeOf("", letter, [2]int{first, last})+")")
		}
		first = 0
	}
	for _, kid := range r.l.kids[r.m] {
		now := r.l.openingNow(kid)
		at := r.l.row[kid]
		gives += now
		switch {
		case now == 0:
		case at == 0:
			terms = append(terms, r.l.figure(units.Area, now))
		case first > 0 && at == last+1:
			last = at
		default:
			flush()
			first, last = at, at
		}
	}
	flush()
	if host := r.l.host(r.m); host != nil && r.m.Piece.Kind == fittings.Plenum && r.m.ParentEnd != fittings.PlantEnd {
		if e, ok := host.End(r.m.ParentEnd); ok {
			now := r.l.outerFace(e.CrossSection)
			gives += now
			face := r.l.text(live.Face(host, r.m.ParentEnd, r.l.sheet), host, nil, true)
			if face == "" {
				face = r.l.figure(units.Area, now)
			}
			terms = append(terms, face)
		}
	}
	if text = strings.Join(terms, "+"); len(text) > longest {
		return "", gives
	}
	return text, gives
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}
