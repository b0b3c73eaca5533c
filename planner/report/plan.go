package report

import (
	"blankoff/fittings"
	"blankoff/planner/rig"
	"blankoff/planner/tightness"
	"blankoff/planner/units"
	"blankoff/takeoff"
)

// Plan is a test plan, ready to be written. Its JSON form is a contract: keys
// keep their names and meaning; more may be added. Areas in m2, flows in L/s,
// pressures in Pa, forces in N, sizes in mm, whatever Units says: those are what
// a person reads, in tables and in the sentences of the view.
type Plan struct {
	Schedule   takeoff.Schedule `json:"schedule"`
	Settings   Settings         `json:"settings"`
	TakeoffM2  float64          `json:"takeoff_m2"`
	ExactM2    float64          `json:"exact_takeoff_m2"`
	Sections   []Section        `json:"sections"`
	Cuts       []Cut            `json:"cuts"`
	Outside    []Piece          `json:"outside"`
	OutOfScope []Piece          `json:"out_of_scope"`
	Proof      Proof            `json:"proof"`
	Balance    Balance          `json:"balance"`
	Measured   string           `json:"measured"`
	Mismatches []string         `json:"mismatches"`
	Notes      []string         `json:"notes"`
	Cautions   []string         `json:"cautions"`
	Faults     []takeoff.Fault  `json:"faults"`
	Job        *Job             `json:"job,omitempty"`
	Programme  *Programme       `json:"programme,omitempty"`
	Kit        []KitLine        `json:"kit,omitempty"`
	Kept       *Kept            `json:"kept,omitempty"`
	ToBeTested *Tested          `json:"to_test,omitempty"`
	Sample     *Sample          `json:"sample,omitempty"`
	Visits     *Visits          `json:"visits,omitempty"`
	Blanking   *Blanking        `json:"blanking,omitempty"`
	Untested   *Untested        `json:"untested_joints,omitempty"`
	OwnCuts    *OwnCuts         `json:"your_cuts,omitempty"`
	Alone      []RigAlone       `json:"rigs_alone,omitempty"`
	Takeoff    *Takeoff         `json:"-"` // the items behind it
	Drawing    *Ductwork        `json:"-"` // how it all hangs together
	Units      units.System     `json:"units,omitzero"`
	whole      *Blanking        // the blanking of all, where a sample is taken
	// For writers whose figures follow a change.
	Rigs    rig.Fleet           `json:"-"`
	Schemes []*tightness.Scheme `json:"-"` // of the sections, in the order in which they first come
}

// OwnCuts is what a person's own cuts come to, beside the best plan.
type OwnCuts struct {
	Given     int      `json:"given"`
	AsGiven   Score    `json:"as_given"`
	Completed Score    `json:"completed"` // this plan
	Best      Score    `json:"best"`
	Added     []string `json:"added"`        // cuts added to complete the person's own
	Dropped   []string `json:"best_without"` // the person's cuts that the best plan does without
	Instead   []string `json:"best_instead"` // and what it has instead
	// Change is the smallest change after which no more sections are out of range
	// than there have to be; absent where none is needed.
	Change *CutChange `json:"change,omitempty"`
}

// CutChange is which of a person's cuts to do without, and what it comes to.
type CutChange struct {
	Without  []string `json:"without"`
	Smallest bool     `json:"smallest"` // no change does without fewer
	Score
}

// RigAlone is what the plan would cost with one of several rigs alone.
type RigAlone struct {
	Rig          string  `json:"rig"`
	OverRange    int     `json:"over_range"`
	UnderRange   int     `json:"under_range"`
	Tests        int     `json:"tests"`
	BlankMinutes float64 `json:"blank_minutes"`
	Left         float64 `json:"not_tested_m2"`
}

// Settings are what the plan was made for.
type Settings struct {
	Rig          string  `json:"rig"`
	Scheme       string  `json:"scheme"`
	Class        string  `json:"class"`
	TestPa       float64 `json:"test_pa"`
	Sign         string  `json:"sign"`
	Aim          string  `json:"aim"`
	TestMinutes  float64 `json:"test_minutes"`
	MinArea      float64 `json:"min_area_m2"`
	MaxArea      float64 `json:"max_area_m2"`
	Headroom     float64 `json:"headroom"`
	PieceLength  float64 `json:"piece_length_m"` // 0: by shape
	By           string  `json:"by"`
	On           string  `json:"on"` // the day of the plan, as the schedule writes days
	SlipJoints   string  `json:"slip_joints"`
	PressureRule string  `json:"pressure_rule"`
	DuctClass    float64 `json:"duct_class_pa"` // for rows that don't state it; 0: not stated
	Basis        string  `json:"basis"`
	HoldBoth     bool    `json:"hold_both"` // the exact area is held to as well
	Sheet        float64 `json:"sheet_mm"`  // added to every size across
}

// Section is one test.
type Section struct {
	ID          string   `json:"id"`
	Status      string   `json:"status"`               // agreed, tested, passed or failed, as an earlier plan says
	NotTested   string   `json:"not_tested,omitempty"` // why there is no test of it here: it has passed, or isn't in the sample
	System      string   `json:"system"`
	Levels      []string `json:"levels"`
	Places      []string `json:"places"`
	Drawings    []string `json:"drawings"`
	Scheme      string   `json:"scheme"`
	Class       string   `json:"class"`
	TestPa      float64  `json:"test_pa"`
	Sign        string   `json:"sign"`
	Area        float64  `json:"area_m2"`
	ExactArea   float64  `json:"exact_area_m2"`
	JointLength float64  `json:"joint_length_m"`
	LimitPerM2  float64  `json:"limit_l_s_m2"`
	Limit       float64  `json:"limit_l_s"`
	Rig         string   `json:"rig"`
	Range       string   `json:"range"`
	UnderRange  bool     `json:"under_range"`
	OverRange   bool     `json:"over_range"`
	Ready       string   `json:"ready"`    // from when all of it is up
	Closed      string   `json:"closed"`   // until when
	Readings    []string `json:"readings"` // what each reading would mean
	Reason      string   `json:"reason"`
	Cures       []string `json:"cures"`
	Grouping    bool     `json:"grouping"`
	Widest      string   `json:"-"` // of a grouping: its largest opening
	WidestForce float64  `json:"-"` // on a blank there, N
	Pieces      []Piece  `json:"pieces"`
	Blanks      []Blank  `json:"blanks"`
	Notes       []string `json:"notes"`
	RigAt       string   `json:"rig_at"`            // opening through which the air goes in
	RigLevel    string   `json:"rig_level"`         // its level
	TapAt       string   `json:"tapping_at"`        // where the pressure is read
	OpenEnd     string   `json:"open_end"`          // what its smallest opening would leak if it were left open
	OpenEndFlow float64  `json:"open_end_flow_l_s"` // the same, L/s; 0: no opening is known
	RigFace     string   `json:"rig_opening"`       // size of the opening through which the air goes in
}

// Piece is a row, or a stretch of its pieces.
type Piece struct {
	Tag     string  `json:"tag"`
	Row     int     `json:"row"`
	Kind    string  `json:"kind"`
	Size    string  `json:"size"` // in mm; --keep reads it
	Shown   string  `json:"-"`    // in the units of the plan
	Level   string  `json:"level"`
	Place   string  `json:"place"`
	Drawing string  `json:"drawing"`
	From    int     `json:"from_piece"`
	To      int     `json:"to_piece"`
	Of      int     `json:"of"`
	Area    float64 `json:"area_m2"` // counted
	Own     float64 `json:"own_area_m2"`
	Reason  string  `json:"reason,omitempty"`

	Item  *takeoff.Item `json:"-"` // nil where the view was made by hand
	Exact float64       `json:"-"` // counted, exactly
}

// Face is an opening, mm; Text is the same for people, in the units of the plan, a
// rectangle with its longer side first: one blank serves both ways round.
type Face struct {
	Shape    string  `json:"shape"`
	Width    float64 `json:"width_mm"`
	Height   float64 `json:"height_mm"`
	Diameter float64 `json:"diameter_mm"`
	Text     string  `json:"-"`
}

// Blank is a temporary end cap in one test.
type Blank struct {
	At  string `json:"at"`
	Why string `json:"why"`
	Face
	Cut     int     `json:"cut"` // number of the cut that it belongs to, from 1; 0: none
	Level   string  `json:"level"`
	Place   string  `json:"place"`
	Drawing string  `json:"drawing"`
	Force   float64 `json:"force_n"`
	Minutes float64 `json:"minutes"`
	End     EndOf   `json:"-"`
}

// EndOf is the end of a row from which the sizes of an opening come. Its zero
// value means that no end is known to have them.
type EndOf struct {
	Item *takeoff.Item
	Role fittings.EndRole
}

// Side is one side of a cut.
type Side struct {
	Tag   string `json:"tag"`
	Piece int    `json:"piece"`
}

// Cut is a joint blanked on both sides between two sections.
type Cut struct {
	Between [2]Side   `json:"between"`
	Parts   [2]string `json:"sections"` // the sections on its two sides
	Level   string    `json:"level"`
	Place   string    `json:"place"`
	Drawing string    `json:"drawing"`
	At      string    `json:"at"`
	Why     string    `json:"why"` // empty where the planner chose it
	Minutes float64   `json:"minutes"`
	End     EndOf     `json:"-"`
	Face
}

// Score is what a plan costs, in the order in which it was made least.
type Score struct {
	OverRange    int     `json:"over_range"`
	UnderRange   int     `json:"under_range"`
	Tests        int     `json:"tests"`
	BlankMinutes float64 `json:"blank_minutes"`
	TotalMinutes float64 `json:"total_minutes"`
}

// Proof says how good the plan is.
type Proof struct {
	Aim  string `json:"aim"`
	Kind string `json:"kind"`
	Score
	EndMinutes float64       `json:"end_minutes"` // capping open ends and bounds of the scope, apart
	LowerBound Score         `json:"lower_bound"`
	BySystem   []SystemProof `json:"by_system"`
	Sentences  []string      `json:"sentences"`
}

// SystemProof is the proof for one system.
type SystemProof struct {
	System      string `json:"system"`
	Kind        string `json:"kind"`
	Tests       int    `json:"tests"`
	UnderRange  int    `json:"under_range"`
	ByAreaAlone int    `json:"tests_by_area_alone"`
}

// Balance shows that nothing was lost, m2.
type Balance struct {
	Takeoff    float64 `json:"takeoff_m2"`
	Sections   float64 `json:"sections_m2"`
	Outside    float64 `json:"outside_m2"`
	Difference float64 `json:"difference_m2"`
}
