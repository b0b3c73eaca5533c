package report

import "blankoff/takeoff"

// Check is stated areas held against those worked out, ready to be written. Its
// JSON form is a contract: keys keep their names and meaning.
type Check struct {
	Schedule   takeoff.Schedule `json:"schedule"`
	StatedFile *StatedFile      `json:"stated_file,omitempty"` // a list of sums beside the schedule
	Basis      string           `json:"basis"`
	Measured   string           `json:"measured"`
	Tolerance  float64          `json:"tolerance_percent"`
	Assumed    bool             `json:"tolerance_assumed"`
	Agrees     bool             `json:"agrees"` // nothing differs by more than the tolerance
	Result     string           `json:"result"` // one sentence
	Counts     CheckCounts      `json:"counts"`
	Rows       []CheckRow       `json:"rows"`
	Sums       []CheckSum       `json:"totals"`
	Reason     Reason           `json:"reason"`
	Effects    []CheckEffect    `json:"effects"`
	Compared   Compared         `json:"compared"`
	Unstated   []UnstatedRow    `json:"rows_without_stated_area"`
	Reckoning  Reckoning        `json:"reconciliation"`
	Ask        []string         `json:"ask"` // what to ask for next
	Notes      []string         `json:"notes"`
	Faults     []takeoff.Fault  `json:"faults"`
	Job        *Job             `json:"job,omitempty"`
}

// StatedFile is the list of stated sums that was read.
type StatedFile struct {
	File   string `json:"file"`
	SHA256 string `json:"sha256"`
}

// CheckCounts counts stated figures of rows and sums by their verdict.
type CheckCounts struct {
	Stated  int `json:"stated"`
	Agree   int `json:"agree"`  // within the rounding of the figure as typed
	Within  int `json:"within"` // within the tolerance
	Differ  int `json:"differ"`
	NoArea  int `json:"no_area"` // of refused rows
	Unknown int `json:"unexplained"`
}

// CheckRow is a stated area of a row beside the one worked out, m2.
type CheckRow struct {
	Tag        string   `json:"tag"`
	Name       string   `json:"name"` // the tag, or the row's place
	Sheet      string   `json:"sheet,omitempty"`
	Row        int      `json:"row"`
	System     string   `json:"system"`
	Kind       string   `json:"kind"`
	Size       string   `json:"size"`
	Quantity   int      `json:"quantity"`
	Stated     float64  `json:"stated_area_m2"`
	Typed      string   `json:"stated_as_typed"`
	Rounding   float64  `json:"rounding_m2"`
	Area       *float64 `json:"area_m2"` // none of a refused row
	Difference *float64 `json:"difference_m2"`
	Percent    *float64 `json:"difference_percent"`
	Verdict    string   `json:"verdict"`
	Reason     string   `json:"reason"`  // why it differs, as far as known
	Working    string   `json:"working"` // of the area worked out
}

// CheckSum is a stated sum beside the one worked out, m2.
type CheckSum struct {
	By         string  `json:"by"` // system, section or schedule
	Name       string  `json:"name"`
	Rows       int     `json:"rows"`
	Stated     float64 `json:"stated_area_m2"`
	Typed      string  `json:"stated_as_typed"`
	Rounding   float64 `json:"rounding_m2"`
	Area       float64 `json:"area_m2"`
	Difference float64 `json:"difference_m2"`
	Percent    float64 `json:"difference_percent"`
	Verdict    string  `json:"verdict"`
	Reason     string  `json:"reason"`
	Flag       string  `json:"flag"` // beside the flat rule of French practice
}

// Reason is why the figures differ.
type Reason struct {
	Sure     string   `json:"sureness"` // certain, likely, one of these, no single cause found; "" where nothing differs
	Sentence string   `json:"sentence"`
	Causes   []Cause  `json:"causes"`
	More     int      `json:"more"`  // causes that aren't listed
	Alike    []string `json:"alike"` // rules that do the same to these figures, and suppose more
}

// Cause is a mistake or two that give the figures.
type Cause struct {
	Keys   []string `json:"keys"`
	Text   string   `json:"text"`
	Hits   int      `json:"reproduces"` // figures within their rounding
	Of     int      `json:"of"`
	Tells  int      `json:"tells"`  // of those, figures that aren't right
	Breaks int      `json:"breaks"` // figures that are right and would not be
}

// CheckEffect is what a stated area does to the test of a system or section.
type CheckEffect struct {
	By          string  `json:"by"`
	Name        string  `json:"name"`
	Others      bool    `json:"-"`                        // there are more parts
	Rows        int     `json:"rows"`                     // that the areas are of
	Unstated    int     `json:"rows_without_stated_area"` // in the system, but not in these areas
	Scheme      string  `json:"scheme"`
	Class       string  `json:"class"`
	Pa          float64 `json:"test_pa"`
	Sign        string  `json:"sign"`
	Stated      float64 `json:"stated_area_m2"`
	Area        float64 `json:"area_m2"`
	PerM2       float64 `json:"limit_l_s_per_m2"`
	LimitStated float64 `json:"limit_stated_l_s"`
	Limit       float64 `json:"limit_l_s"`
	Proves      string  `json:"proves_class"` // by a pass at the limit of the stated area; "" none
	Favours     string  `json:"favours"`
	Reading     float64 `json:"reading_l_s,omitempty"`
	BreakEven   float64 `json:"break_even_m2,omitempty"`
	PassStated  bool    `json:"passes_on_stated"`
	Pass        bool    `json:"passes"`
	Source      string  `json:"source"`  // of the limit, and how sure it is
	Missing     string  `json:"missing"` // why nothing can be said
}

// Reckoning goes from the stated total to the one worked out, line by line.
type Reckoning struct {
	Stated     float64         `json:"stated_m2"`
	Lines      []ReckoningLine `json:"lines"`
	Area       float64         `json:"area_m2"`
	Difference float64         `json:"difference_m2"` // what the lines leave
}

// ReckoningLine is one step, m2.
type ReckoningLine struct {
	Text    string   `json:"text"`
	Names   []string `json:"names"`
	Change  float64  `json:"change_m2"`
	Running float64  `json:"running_m2"`
}
