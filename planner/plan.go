package planner

import (
	"blankoff/fittings"
	"blankoff/planner/duty"
	"blankoff/planner/network"
	"blankoff/planner/partition"
	"blankoff/planner/rig"
	"blankoff/planner/tightness"
	"blankoff/takeoff"
)

// What a plan is asked with is package duty's, by the same names.
type (
	// Settings are what a plan is made for.
	Settings = duty.Settings
	// OwnCut is a joint that a person wants to cut.
	OwnCut = duty.OwnCut
)

// Defaults are the settings of a plan when nothing is said.
func Defaults() Settings { return duty.Defaults() }

// Plan is the answer: sections, blanks, and what stands in the way.
type Plan struct {
	Takeoff  *takeoff.Takeoff
	Network  *network.Network
	Settings Settings
	Sections []Section
	Cuts     []Cut
	Outside  []Span // in scope, but in no section
	Excluded []Span // out of scope, or in the test without their area
	Faults   []takeoff.Fault
	// Kept is what became of an earlier plan's sections; nil where none was given.
	Kept *Kept
	// Judged is what a person's own cuts come to; nil where none were given.
	Judged *Judged
	// Alone is what each of several rigs would do alone.
	Alone []RigAlone
	// Mismatches are joints whose two openings differ, each with its place.
	Mismatches []string
	Notes      []string
	Proof      Proof
	Balance    Balance
	// RefusedRows counts the rows that were measured but refused by the plan,
	// for want of a class or a pressure or for one above a ceiling.
	RefusedRows int
	RefusedM2   float64 // their areas

	sectionOf []int                        // by node, -1 for none
	cutsOf    [][]int                      // by section, its cuts
	flowsAt   map[float64][]rig.FlowWindow // by test pressure, kept for cures
	steps     map[*tightness.Scheme][]step // of pressure, kept for cures
	keys      map[string]bool              // what the sections are made of, kept for comparing
	groupings map[sectionKey][]int         // sections made of loose rows, kept for cures
	joined    map[int][]int                // sections under range that one jumper hose would join
}

// Section is the part of the ductwork that is tested in one go.
type Section struct {
	ID          string
	Status      string // of an earlier plan's section that stays
	System      string
	Levels      []string
	Scheme      *tightness.Scheme
	Class       tightness.Class
	TestPa      float64 // Pa, a magnitude
	Sign        tightness.Sign
	Area        float64 // on the measuring basis, m2
	Exact       float64 // exactly, m2
	JointLength float64 // installation joints inside, m
	LimitPerM2  float64 // L/s per m2
	Limit       float64 // permitted leakage, L/s, of the area that it is held to
	Ready       string  // from when all of it is up, as the schedule writes it; "" not said
	Closed      string  // until when
	Windows     []rig.AreaWindow
	Most        float64 // the greatest area that it may have unless it can't be cut, m2
	State       SectionState
	Rig         string // that serves it
	Range       string // of the rig, to be set
	Readings    []Reading
	Reason      string // why it is under or over range
	Cures       []string
	Blanks      []Blank
	Grouping    bool // made of loose rows: it hangs together only on paper
	Notes       []string
	Nodes       []int
}

// SectionState says whether the rig can judge a section.
type SectionState uint8

// The states of a section.
const (
	InRange SectionState = iota
	UnderRange
	GapRange  // between two ranges; counts as under range
	SmallArea // below --min-area; counts as under range
	OverRange
)

// Under reports whether the section counts as under range.
func (s SectionState) Under() bool { return s == UnderRange || s == GapRange || s == SmallArea }

// Span is a row, or a stretch of the pieces of one, as it lies in a section.
type Span struct {
	Item     int
	From, To int // pieces, from 1
	Of       int
	Area     float64 // counted, on the basis, m2
	Exact    float64 // counted, exactly, m2
	Own      float64 // outside area, counted or not, m2
	Reason   string  // why it is outside or excluded
}

// RigAlone is what a plan would cost with one rig only.
type RigAlone struct {
	Rig   string
	Score partition.Score
	Left  float64 // area in scope that it couldn't test at all, m2
}

// Place is one side of a joint: a row and the piece of it.
type Place struct {
	Item  int
	Piece int
	Of    int
}

// Cut is a joint that is blanked on both sides, between two sections.
type Cut struct {
	Joint   int
	A, B    Place  // A is the nearer to the plant
	Parts   [2]int // the sections of A and of B
	Face    fittings.CrossSection
	Minutes float64
	Why     string // must, system, class..., or "" where the planner chose it
}

// BlankWhy says why an end is blanked.
type BlankWhy string

// The reasons for a blank.
const (
	ForCut   BlankWhy = "cut"
	ForEnd   BlankWhy = "open end"
	ForScope BlankWhy = "scope"
)

// Blank is a temporary end cap in one test.
type Blank struct {
	At      string // where, for somebody with a drawing in hand
	Why     BlankWhy
	Level   string
	OnSite  string // room, gridline, as the schedule says
	Drawing string
	Face    fittings.CrossSection
	Force   float64 // N, test pressure times the area of the opening
	Minutes float64
	Joint   int              // -1 for an open end
	Node    int              // of the network, in the section
	Role    fittings.EndRole // of an open end
	Known   bool
}

// Balance shows that nothing was lost, m2.
type Balance struct {
	Takeoff, Sections, Outside, Difference float64
}

// Proof says how good the plan is and why no better one exists.
type Proof struct {
	Aim          partition.Aim
	Kind         string // optimal, optimal given cuts, grouping
	Score        partition.Score
	Bound        partition.Score
	BySystem     []SystemProof
	Sentences    []string
	BlankMinutes float64  // sum of the cuts
	TotalMinutes float64  // tests x test minutes + BlankMinutes
	notProved    []string // why not, where it isn't
	EndMinutes   float64  // capping open ends and the bounds of the scope, apart
}

// SystemProof is the proof of one system.
type SystemProof struct {
	System string
	Kind   string
	Score  partition.Score
	Bound  partition.Score
	// AtLeast is the number of tests needed by area alone.
	AtLeast int
}

// The kinds of proof.
const (
	Optimal   = "optimal"
	GivenCuts = "optimal given cuts"
	Grouped   = "grouping"
)

// MostForce is the greatest force on a blank of the section, N, and its face.
func (s *Section) MostForce() (n float64, face fittings.CrossSection) {
	for _, b := range s.Blanks {
		if b.Force > n {
			n, face = b.Force, b.Face
		}
	}
	return n, face
}

// Widest is the greatest force that a blank on an end of a piece of the section would
// bear, N, and its face: of a grouping nobody knows where the blanks go.
func (p *Plan) Widest(s *Section) (n float64, face fittings.CrossSection) {
	for _, sp := range p.Spans(s) {
		for _, e := range p.Takeoff.Items[sp.Item].Ends {
			if f := s.TestPa * e.FaceArea(); f > n {
				n, face = f, e.CrossSection
			}
		}
	}
	return n, face
}

// count counts the sections over and under range.
func (p *Plan) count() (over, under int) {
	for i := range p.Sections {
		switch s := p.Sections[i].State; {
		case s == OverRange:
			over++
		case s.Under():
			under++
		}
	}
	return over, under
}

// Partly reports whether the plan leaves something for its reader to settle:
// rows refused, sections under or over range, pieces outside, or a grouping.
func (p *Plan) Partly() bool {
	over, under := p.count()
	void := p.Kept != nil && len(p.Kept.Void) > 0
	return void || len(p.Faults) > 0 || over > 0 || under > 0 || len(p.Outside) > 0 || p.Proof.Kind == Grouped
}

// Aim names an aim as the command line does.
func Aim(a partition.Aim) string {
	if a == partition.Time {
		return "time"
	}
	return "tests"
}

// SectionOf is the section that a node of the network lies in, or -1.
func (p *Plan) SectionOf(node int) int { return p.sectionOf[node] }
