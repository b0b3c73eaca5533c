package items

import (
	"slices"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
)

// reducerStyle passes over the style of a reducer that says no more than its sizes do:
// concentric. One that is eccentric has to be given an offset.
func (t *Reader) reducerStyle(r *takeoff.Row) {
	kind, _, _, _ := fittings.ParseDescription(r.Text[takeoff.Kind])
	if kind != fittings.Reducer && kind != fittings.Transition {
		return
	}
	style := r.Text[takeoff.Style]
	known, shifted := t.Kinds().ReducerStyle(style)
	if !known {
		return
	}
	r.Text[takeoff.Style], t.Moved = "", true
	t.Told.Add("styles of reducers and transitions that give no size passed over, the first '%s'", celltext.Shorten(style), r.At.Row)
	if x := &t.InKind.row; shifted {
		if x.Spec == nil {
			at := slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.To() == takeoff.Style })
			x.Spec, x.cell = &t.Specs[max(at, 0)], style
		}
		x.eccentric = true
	}
}
