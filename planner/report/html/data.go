package html

import (
	"math"

	"blankoff/planner/report"
	"blankoff/planner/report/schematic"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// data is what the page's script works with: the same figures as the plan's,
// unrounded, so that cuts can be tried on it.
type data struct {
	Nodes    []nodeData    `json:"nodes"`
	Joints   []jointData   `json:"joints"`
	Ends     []endData     `json:"ends"`
	Sections []sectionData `json:"sections"`
	Width    float64       `json:"width"`
	Height   float64       `json:"height"`
	Headroom float64       `json:"headroom"`
	MinArea  float64       `json:"minArea"`
	Held     bool          `json:"held"`
	TestMin  float64       `json:"testMinutes"`
	Score    report.Score  `json:"score"`
	Units    unitData      `json:"units"`
}

// unitData turns the script's figures to the units that are shown.
type unitData struct {
	Area     float64 `json:"area"`
	AreaWord string  `json:"areaWord"`
	Flow     float64 `json:"flow"`
	FlowWord string  `json:"flowWord"`
}

type nodeData struct {
	Tag     string  `json:"t"`
	Text    string  `json:"n"`
	About   string  `json:"k"` // kind, size and place
	Section int     `json:"s"`
	Area    float64 `json:"a"`
	Exact   float64 `json:"e"`
	Path    string  `json:"p"`
	Weight  float64 `json:"w"`
	X       float64 `json:"x"`
	Y       float64 `json:"y"`
}

type jointData struct {
	A       int     `json:"a"`
	B       int     `json:"b"`
	At      string  `json:"at"`
	Size    string  `json:"size"`
	Minutes float64 `json:"m"`
	Barred  string  `json:"bar,omitempty"`
	Fixed   string  `json:"fix,omitempty"`
	Assumed bool    `json:"loose,omitempty"`
	Cut     int     `json:"cut,omitempty"`
	X       float64 `json:"x"`
	Y       float64 `json:"y"`
	Upright bool    `json:"up,omitempty"`
	Weight  float64 `json:"w"`
	Sides   [4]any  `json:"sides"` // as a line of a list of cuts
}

type endData struct {
	Node int    `json:"n"`
	At   string `json:"at"`
	Size string `json:"size"`
}

type sectionData struct {
	ID      string       `json:"id"`
	System  string       `json:"system"`
	PerM2   float64      `json:"perM2"`
	Pa      float64      `json:"pa"`
	About   string       `json:"about"` // class, pressure and sign
	Windows [][2]float64 `json:"windows"`
	Most    float64      `json:"most"`
	Flows   [][2]float64 `json:"flows"`
	Colour  string       `json:"colour"`
	Pattern int          `json:"pattern"`
	Range   string       `json:"range"`
	State   string       `json:"state"`
	Left    string       `json:"left,omitempty"` // why it isn't tested
}

// greatest stands for no bound in JSON, which has no infinity.
const greatest = 1e300

func dataOf(v *report.Plan, pic *schematic.Picture, looks []schematic.Look) *data {
	s := &v.Settings
	d := &data{
		Width: pic.Width, Height: pic.Height, Headroom: s.Headroom, MinArea: s.MinArea, Held: s.HoldBoth,
		TestMin: s.TestMinutes, Score: v.Proof.Score, Joints: []jointData{}, Ends: []endData{}, Sections: []sectionData{},
		Units: unitData{v.Units.Of(units.Area, 1), v.Units.Unit(units.Area), v.Units.Of(units.Flow, 1), v.Units.Unit(units.Flow)},
	}
	d.Nodes = []nodeData{}
	if len(pic.Pieces) == 0 {
		return d
	}
	d.Nodes = make([]nodeData, len(v.Drawing.Nodes))
	for k := range v.Drawing.Nodes {
		n := &v.Drawing.Nodes[k]
		about := n.Kind + " " + n.Size
		if where := show.Names(nonempty(n.Level, n.Place), ", ", 2, 0); where != "" {
			about += ", " + where
		}
		d.Nodes[k] = nodeData{Tag: show.Safe(n.Tag), Text: show.Safe(n.Text), About: show.Safe(about), Section: n.Section, Area: n.Area, Exact: n.Exact}
	}
	for k := range v.Drawing.Joints {
		d.Joints = append(d.Joints, jointOf(&v.Drawing.Joints[k]))
	}
	d.place(pic)
	for i := range v.Drawing.Ends {
		e := &v.Drawing.Ends[i]
		d.Ends = append(d.Ends, endData{e.Node, show.Safe(e.At), e.Size})
	}
	for i := range v.Sections {
		d.Sections = append(d.Sections, sectionOf(v, i, looks[i]))
	}
	return d
}

// place says where on the drawing the pieces and joints are.
func (d *data) place(pic *schematic.Picture) {
	for i := range pic.Pieces {
		p := &pic.Pieces[i]
		n := &d.Nodes[p.Node]
		n.Path += path(p.Path)
		if n.Weight == 0 {
			last := p.Path[len(p.Path)-1]
			from := p.Path[max(0, len(p.Path)-2)]
			n.Weight, n.X, n.Y = p.Weight, tenth((last.X+from.X)/2), tenth((last.Y+from.Y)/2)
		}
	}
	for i := range pic.Joints {
		m := &pic.Joints[i]
		j := &d.Joints[m.Index]
		j.X, j.Y, j.Upright, j.Weight = tenth(m.X), tenth(m.Y), m.Upright, m.Weight
	}
	for i := range pic.Rings {
		r := &pic.Rings[i]
		j := &d.Joints[r.Joint]
		j.X, j.Y, j.Weight = tenth(r.From.X), tenth(r.From.Y), 4
	}
}

func jointOf(j *report.Joint) jointData {
	o := jointData{A: j.A, B: j.B, At: show.Safe(j.At), Size: j.Size, Minutes: j.Minutes, Barred: show.Safe(j.Barred), Fixed: show.Safe(j.Fixed), Assumed: j.Assumed, Cut: j.Cut}
	o.Sides = [4]any{j.Sides[0].Tag, j.Sides[0].Piece, j.Sides[1].Tag, j.Sides[1].Piece}
	return o
}

func sectionOf(v *report.Plan, i int, l schematic.Look) sectionData {
	s := &v.Sections[i]
	o := sectionData{
		ID: s.ID, System: show.Safe(s.System), PerM2: s.LimitPerM2, Pa: s.TestPa, About: shown{v.Units}.About(s), Most: min(v.Drawing.Most[i], greatest),
		Colour: l.Colour, Pattern: l.Pattern, Range: show.Range(v, s), State: show.State(s), Left: s.NotTested, Windows: [][2]float64{}, Flows: [][2]float64{},
	}
	for _, w := range v.Drawing.Windows[i] {
		o.Windows = append(o.Windows, [2]float64{w.Low, min(w.High, greatest)})
	}
	for _, w := range v.Drawing.Flows[i] {
		o.Flows = append(o.Flows, [2]float64{w.Low, min(w.High, greatest)})
	}
	return o
}

func tenth(x float64) float64 { return math.Round(x*10) / 10 }

func nonempty(words ...string) []string {
	var out []string
	for _, w := range words {
		if w != "" {
			out = append(out, w)
		}
	}
	return out
}
