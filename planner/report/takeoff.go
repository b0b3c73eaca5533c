package report

import (
	"blankoff/fittings"
	"blankoff/planner/units"
	"blankoff/takeoff"
	"blankoff/takeoff/totals"
)

// Takeoff is a measured schedule, ready to be written. Its JSON form is a
// contract: keys keep their names and meaning.
type Takeoff struct {
	Schedule takeoff.Schedule `json:"schedule"`
	Basis    string           `json:"basis"`
	Measured string           `json:"measured"` // one sentence: what the areas are of
	Items    []Item           `json:"items"`
	Refused  []Item           `json:"refused"` // rows that count nowhere; Notes say why
	Totals   Totals           `json:"totals"`
	Notes    []string         `json:"notes"`
	Faults   []takeoff.Fault  `json:"faults"`
	Units    units.System     `json:"units,omitzero"` // of what people read; the figures here are SI

	Rule *fittings.Basis `json:"-"` // behind Basis
	All  []takeoff.Item  `json:"-"` // every row, refused ones too; nil where the view was made by hand
}

// Item is one row, quantity times each. Areas in m2, lengths in m.
type Item struct {
	Tag         string   `json:"tag"`
	Sheet       string   `json:"sheet,omitempty"`
	Row         int      `json:"row"`
	System      string   `json:"system"`
	Level       string   `json:"level"`
	Place       string   `json:"place,omitempty"`
	Drawing     string   `json:"drawing,omitempty"`
	Kind        string   `json:"kind"`
	Style       string   `json:"style,omitempty"`
	Shape       string   `json:"shape"`
	Size        string   `json:"size"` // in mm
	Shown       string   `json:"-"`    // in the units of the takeoff
	Quantity    int      `json:"quantity"`
	Scope       string   `json:"scope"`
	From        string   `json:"from,omitempty"` // the row that it hangs on
	Area        float64  `json:"area_m2"`
	ExactArea   float64  `json:"exact_area_m2"`
	Cut         float64  `json:"openings_m2"` // taken off for what is cut in it
	JointLength float64  `json:"joint_length_m"`
	Working     string   `json:"working"`
	Source      string   `json:"source"`
	Stated      *float64 `json:"stated_area_m2,omitempty"`
	Notes       []string `json:"notes"`

	Measured *takeoff.Item `json:"-"` // behind it; nil where the view was made by hand
}

// Totals are in scope only; the rest is told apart. Areas in m2, lengths in m.
type Totals struct {
	Area        float64            `json:"area_m2"`
	ExactArea   float64            `json:"exact_area_m2"`
	BySystem    map[string]float64 `json:"by_system"`
	ByLevel     map[string]float64 `json:"by_level"`
	ByShape     map[string]float64 `json:"by_shape"`
	JointLength float64            `json:"joint_length_m"`
	JointRatio  float64            `json:"joint_ratio_per_m"` // joint length over exact area
	JointFlag   string             `json:"joint_flag"`        // where it isn't as usual
	Through     float64            `json:"through_m2"`
	Out         float64            `json:"out_m2"`
	Refused     float64            `json:"refused_m2"` // of refused rows, as far as known
	Parts       []Part             `json:"-"`          // the same for tables, with sizes
}

// Part is one line of the totals.
type Part struct {
	Of   string // system, level, shape or size
	Name string
	totals.Part
}

// measured says in one sentence what every area is of.
func measured(t *takeoff.Takeoff, u units.System) string {
	sheet := "sheet thickness isn't added"
	if s := t.Sheet(); s > 0 {
		sheet = u.Thickness(s) + " of sheet are added to every size across"
	}
	text := "Areas are of the outside surface of the metal on the sizes given, open ends not counted; insulation outside the duct doesn't count, " + sheet
	if b := t.Basis(); !b.Exact() {
		return text + ". They are measured on the basis " + b.Name + " (" + b.About + "; sureness: " + b.Sureness + "); the exact area stands beside."
	}
	return text + "; openings are taken off."
}

// basisName is the name of the measuring basis.
func basisName(t *takeoff.Takeoff) string {
	if b := t.Basis(); !b.Exact() {
		return b.Name
	}
	return "exact"
}

// Written is the units of the workings and notes of a takeoff.
func Written(u units.System) fittings.Written {
	if u == units.SI {
		return fittings.Written{}
	}
	return fittings.Written{
		Metres: u.Back(units.Length, 1), Area: u.Unit(units.Area),
		Size: func(m float64) string { return u.Text(units.Size, m, -1) },
	}
}

// OfTakeoff builds the view of a takeoff; items are left out where only the
// totals are asked for. Its sentences are in these units.
func OfTakeoff(t *takeoff.Takeoff, items bool, u units.System) *Takeoff {
	v := &Takeoff{
		Schedule: t.Schedule, Basis: basisName(t), Measured: measured(t, u), Units: u,
		Items: []Item{}, Refused: []Item{}, Notes: list(t.Notes), Faults: list(t.Faults),
		Rule: t.Basis(), All: t.Items,
	}
	if items {
		why := faultsByRow(t.Faults)
		for i := range t.Items {
			it := &t.Items[i]
			if !it.Refused {
				v.Items = append(v.Items, itemOf(t, it, u))
				continue
			}
			o := itemOf(t, it, u)
			o.Working, o.Source, o.Notes = "", "", list(why[rowKey{it.At.Sheet, it.At.Row}])
			v.Refused = append(v.Refused, o)
		}
	}
	sums := t.Totals
	v.Totals = Totals{
		Area: sums.Area, ExactArea: sums.Exact, JointLength: sums.JointLength,
		JointRatio: sums.JointRatio(), JointFlag: totals.JointFlagIn(sums.JointLength, sums.Exact, u.Ratio, u.Unit(units.JointRatio)),
		Through: sums.Through, Out: sums.Out, Refused: sums.Refused,
		BySystem: shares(sums.BySystem), ByLevel: shares(sums.ByLevel), ByShape: shares(sums.ByShape),
	}
	for _, of := range []struct {
		name  string
		parts []totals.Part
	}{{"system", sums.BySystem}, {"level", sums.ByLevel}, {"shape", sums.ByShape}, {"size", sums.BySize}} {
		for _, p := range of.parts {
			name := p.Name
			if of.name == "size" {
				name = p.Size.In(u)
			}
			v.Totals.Parts = append(v.Totals.Parts, Part{of.name, name, p})
		}
	}
	return v
}

// rowKey is a row of a schedule.
type rowKey struct {
	sheet string
	row   int
}

// faultsByRow gathers what is wrong with each row.
func faultsByRow(faults []takeoff.Fault) map[rowKey][]string {
	m := map[rowKey][]string{}
	for _, f := range faults {
		k := rowKey{f.Sheet, f.Row}
		m[k] = append(m[k], f.Heading+": "+f.Message)
	}
	return m
}

func itemOf(t *takeoff.Takeoff, it *takeoff.Item, u units.System) Item {
	p := it.Piece
	o := Item{
		Tag: it.Tag, Sheet: it.At.Sheet, Row: it.At.Row, System: it.System, Level: it.Level,
		Place: it.OnSite, Drawing: it.Drawing, Kind: p.Kind.String(), Style: p.Style.String(),
		Shape: p.Shape.String(), Size: it.SizeText(), Shown: it.SizeIn(u), Quantity: it.Quantity, Scope: it.Scope.String(),
		Area: it.Area, ExactArea: it.Exact, Cut: it.Cut, JointLength: it.JointLength,
		Working: t.Working(it), Source: fittings.Source(&p), Notes: list(it.Notes),
		Measured: it,
	}
	if it.Parent >= 0 {
		o.From = t.Items[it.Parent].Name()
		if it.ParentEnd == fittings.BranchEnd || it.ParentEnd == fittings.BranchEnd2 {
			o.From += "/" + it.ParentEnd.String()
		}
	}
	if it.HasStated {
		o.Stated = &it.Stated
	}
	return o
}

func shares(parts []totals.Part) map[string]float64 {
	m := map[string]float64{}
	for _, p := range parts {
		name := p.Name
		if name == "" {
			name = "not stated"
		}
		m[name] = p.Area
	}
	return m
}

// list makes an empty list of none, so that JSON has [] and not null.
func list[T any](l []T) []T {
	if l == nil {
		return []T{}
	}
	return l
}
