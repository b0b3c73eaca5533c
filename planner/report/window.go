package report

import (
	"strings"

	"blankoff/planner/rig"
	"blankoff/planner/tightness"
	"blankoff/planner/units"
)

// Windows is the table of areas that a rig can judge.
type Windows struct {
	Rig      string      `json:"rig"`
	Scheme   string      `json:"scheme"`
	Title    string      `json:"title"` // of the scheme
	Sign     string      `json:"sign"`
	Headroom float64     `json:"headroom"`
	DuctPa   float64     `json:"duct_class_pa"` // 0: not stated
	Rows     []WindowRow `json:"rows"`
	Notes    []string    `json:"notes"`

	Units units.System `json:"units,omitzero"`
}

// WindowRow is one class at one pressure in one shape of duct.
type WindowRow struct {
	Class      string       `json:"class"`
	PressurePa float64      `json:"test_pa"`
	Shape      string       `json:"shape"`
	LimitPerM2 float64      `json:"limit_l_s_m2"`
	Areas      []AreaWindow `json:"windows"`
	Permitted  bool         `json:"permitted"`
	State      string       `json:"state"`  // the ceiling, or what has to be stated first
	Reason     string       `json:"reason"` // why nothing can be judged
}

// AreaWindow is the least and greatest area, m2, and the ranges that read it.
type AreaWindow struct {
	Low    float64  `json:"min_m2"`
	High   float64  `json:"max_m2"`
	Ranges []string `json:"ranges"`
}

// OfWindows builds the view of a table of windows.
func OfWindows(r *rig.Rig, of rig.TableOf, rows []rig.Row, notes []string) *Windows {
	v := &Windows{
		Rig: r.Name, Scheme: of.Scheme.Name, Title: of.Scheme.Title, Sign: string(of.Sign),
		Headroom: of.Headroom, DuctPa: of.DuctClassPa, Rows: []WindowRow{}, Notes: list(notes), Units: of.Units,
	}
	said := map[string]bool{}
	for _, row := range rows {
		o := WindowRow{
			Class: row.Class, PressurePa: row.PressurePa, Shape: string(row.Shape), LimitPerM2: row.LimitPerM2,
			Areas: []AreaWindow{}, Permitted: row.Permitted, State: row.State, Reason: row.Reason,
		}
		if row.Permitted {
			_, o.State, _ = strings.Cut(row.State, ": ") // the columns say for what class, shape and sign
		}
		for _, a := range row.Areas {
			o.Areas = append(o.Areas, AreaWindow{a.Low, a.High, list(a.Ranges)})
		}
		v.Rows = append(v.Rows, o)
		for _, n := range r.NotesAt(row.PressurePa, tightness.Sign(v.Sign), of.Units) {
			text := n.Text
			if n.Range != "" {
				text = "range " + n.Range + ": " + text
			}
			if !said[text] {
				said[text] = true
				v.Notes = append(v.Notes, text)
			}
		}
	}
	for _, text := range of.Scheme.Unverified {
		v.Notes = append(v.Notes, "from memory, unverified: "+text)
	}
	return v
}
