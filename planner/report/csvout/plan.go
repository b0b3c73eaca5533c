package csvout

import (
	"io"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

type sectionRow struct {
	ID          words     `csv:"section"`
	System      words     `csv:"system"`
	Levels      words     `csv:"levels"`
	Places      words     `csv:"places"`
	Drawings    words     `csv:"drawings"`
	Scheme      words     `csv:"scheme"`
	Class       words     `csv:"class"`
	TestPa      number    `csv:"test_pa"`
	Sign        words     `csv:"sign"`
	Area        number    `csv:"area_m2"`
	ExactArea   number    `csv:"exact_area_m2"`
	JointLength number    `csv:"joint_length_m"`
	LimitPerM2  permitted `csv:"limit_l_s_m2"`
	Limit       permitted `csv:"limit_l_s"`
	Rig         words     `csv:"rig"`
	Range       words     `csv:"range"`
	Readings    words     `csv:"readings"`
	State       words     `csv:"state"`
	Reason      words     `csv:"reason"`
	Cures       words     `csv:"cures"`
	Grouping    bool      `csv:"grouping"`
	Pieces      words     `csv:"pieces"`
	Blanks      *int      `csv:"blanks"`
	Notes       words     `csv:"notes"`
	RigAt       words     `csv:"rig_at"`
	TapAt       words     `csv:"tapping_at"`
	OpenEnd     size      `csv:"open_end_flow_l_s"`
	ToTest      bool      `csv:"to_test"`
	NotTested   words     `csv:"not_tested"` // why
}

type blankRow struct {
	Section  words  `csv:"section"`
	Number   int    `csv:"blank"`
	Cut      *int   `csv:"cut"`
	System   words  `csv:"system"`
	Level    words  `csv:"level"`
	Place    words  `csv:"place"`
	Drawing  words  `csv:"drawing"`
	At       words  `csv:"at"`
	Why      words  `csv:"why"`
	Size     words  `csv:"size"`
	Shape    words  `csv:"shape"`
	Width    size   `csv:"width_mm"`
	Height   size   `csv:"height_mm"`
	Diameter size   `csv:"diameter_mm"`
	TestPa   number `csv:"test_pa"`
	Sign     words  `csv:"sign"`
	Force    tenth  `csv:"force_n"`
	Minutes  tenth  `csv:"minutes"`
}

// cutRow is a cut; its first four columns read back as a list of own cuts.
type cutRow struct {
	Tag       words `csv:"tag"`
	Piece     int   `csv:"piece"`
	Next      words `csv:"next_tag"`
	NextPiece int   `csv:"next_piece"`
	At        words `csv:"at"`
	Sections  words `csv:"sections"`
	Level     words `csv:"level"`
	Place     words `csv:"place"`
	Drawing   words `csv:"drawing"`
	Size      words `csv:"size"`
	Minutes   tenth `csv:"minutes"`
	Why       words `csv:"why"`
	Tested    words `csv:"blanked_for"` // the sections in whose tests it is blanked
}

// Cuts writes the cuts, one a row.
func Cuts(w io.Writer, v *report.Plan) error {
	sides, minutes := v.TestedSides(), v.TestedMinutes()
	return write(w, v.Units, v.Cuts, func(c *report.Cut) cutRow {
		a, z := c.Between[0], c.Between[1]
		return cutRow{words(a.Tag), a.Piece, words(z.Tag), z.Piece, words(c.At), words(c.Parts[0] + " | " + c.Parts[1]),
			words(c.Level), words(c.Place), words(c.Drawing), words(c.Text), tenth(minutes(c)), words(c.Why), joined(sides(c))}
	})
}

// Sections writes the sections, one a row.
func Sections(w io.Writer, v *report.Plan) error {
	u := v.Units
	return write(w, v.Units, v.Sections, func(s *report.Section) sectionRow {
		var pieces []string
		for i := range s.Pieces {
			pieces = append(pieces, show.Span(&s.Pieces[i]))
		}
		return sectionRow{
			ID: words(s.ID), System: words(s.System), Levels: joined(s.Levels), Places: joined(s.Places), Drawings: joined(s.Drawings),
			Scheme: words(s.Scheme), Class: words(s.Class), TestPa: in(u, units.Pressure, s.TestPa), Sign: words(s.Sign),
			Area: in(u, units.Area, s.Area), ExactArea: in(u, units.Area, s.ExactArea), JointLength: in(u, units.Length, s.JointLength),
			LimitPerM2: permitted(u.Turn(units.PerArea, s.LimitPerM2)), Limit: permitted(u.Turn(units.Flow, s.Limit)),
			Rig: words(s.Rig), Range: words(s.Range), Readings: joined(s.Readings), State: words(show.State(s)), Reason: words(s.Reason), Cures: joined(s.Cures), Grouping: s.Grouping,
			Pieces: joined(pieces), Blanks: blanksOf(s), Notes: joined(s.Notes),
			RigAt: words(s.RigAt), TapAt: words(s.TapAt), OpenEnd: size(v.Units.Of(units.Flow, s.OpenEndFlow)),
			ToTest: s.NotTested == "", NotTested: words(s.NotTested),
		}
	})
}

// blanksOf is the number of blanks, nil in a grouping of which none is known.
func blanksOf(s *report.Section) *int {
	n := len(s.Blanks)
	if s.Grouping && n == 0 {
		return nil
	}
	return &n
}

// Blanks writes every blank of every section that is tested, one a row, numbered
// in its section.
func Blanks(w io.Writer, v *report.Plan) error {
	u := v.Units
	var rows []blankRow
	for i := range v.Sections {
		s := &v.Sections[i]
		if s.NotTested != "" {
			continue
		}
		for k := range s.Blanks {
			b := &s.Blanks[k]
			var cut *int
			if b.Cut > 0 {
				cut = &b.Cut
			}
			rows = append(rows, blankRow{
				Section: words(s.ID), Number: k + 1, Cut: cut, System: words(s.System), Level: words(b.Level), Place: words(b.Place), Drawing: words(b.Drawing), At: words(b.At), Why: words(b.Why),
				Size: words(b.Text), Shape: words(b.Shape), Width: across(u, b.Width), Height: across(u, b.Height), Diameter: across(u, b.Diameter),
				TestPa: in(u, units.Pressure, s.TestPa), Sign: words(s.Sign), Force: tenth(u.Of(units.Force, b.Force)), Minutes: tenth(b.Minutes),
			})
		}
	}
	return write(w, v.Units, rows, func(r *blankRow) blankRow { return *r })
}
