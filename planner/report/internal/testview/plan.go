// Package testview makes views by hand for the tests of the writers: a small one
// with awkward text, and one as big as wanted.
package testview

import (
	"fmt"

	"blankoff/planner/report"
	"blankoff/takeoff"
	"blankoff/takeoff/totals"
)

// Awkward texts, as schedules hold them.
const (
	Formula  = `=cmd|' /C calc'!A0`
	Long     = "riser behind the lift shaft between grid lines C4 and D4, above the suspended ceiling of the east lobby"
	Wide     = "Übergang 長い名前"
	Controls = "tag\x1b[2J with\ncontrol\u202e"
)

func rect(w, h float64) report.Face {
	return report.Face{Shape: "rectangular", Width: w, Height: h, Text: fmt.Sprintf("%g x %g", w, h)}
}

func round(d float64) report.Face {
	return report.Face{Shape: "circular", Diameter: d, Text: fmt.Sprintf("dia %g", d)}
}

// Small is a plan of three sections: one in range, one under range and one over
// range, with awkward texts all over.
func Small() *report.Plan {
	return &report.Plan{
		Schedule: takeoff.Schedule{File: "north & south.csv", SHA256: "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef", RowsRead: 12, RowsUsed: 8, RowsExcluded: 1, RowsRefused: 3},
		Settings: report.Settings{
			Rig: "Site rig", Scheme: "EN", Class: "C", TestPa: 400, Sign: "positive", Aim: "tests", TestMinutes: 90, MinArea: 12.5,
			Headroom: 1.5, PieceLength: 1.25, By: "level", Basis: "exact",
		},
		TakeoffM2: 412.3456, Sections: smallSections(), Cuts: smallCuts(),
		Outside: []report.Piece{
			{Tag: "D9", Row: 9, Kind: "straight", Size: "dia 200", From: 2, To: 3, Of: 4, Area: 1.25, Own: 1.25, Reason: "nothing at 400 Pa can be tested"},
			{Tag: "D10", Row: 10, Kind: "straight", Size: "dia 200", From: 1, To: 1, Of: 1, Reason: "row refused"},
		},
		OutOfScope: []report.Piece{{Tag: Wide, Row: 11, Kind: "inline", Size: "dia 400", From: 1, To: 1, Of: 1, Own: 0.5027, Reason: "scope out"}},
		Proof: report.Proof{
			Aim: "tests", Kind: "optimal", Score: report.Score{OverRange: 1, UnderRange: 1, Tests: 3, BlankMinutes: 52.25, TotalMinutes: 322.25}, EndMinutes: 40,
			Sentences: []string{"3 tests, fewest possible: 1 section over range and 1 section under range, which no cuts can better."},
		},
		Balance:  report.Balance{Takeoff: 412.3456, Sections: 411.0956, Outside: 1.25, Difference: -1.1e-13},
		Blanking: smallBlanking(), Untested: smallUntested(),
		Measured: "Areas are of the outside surface.",
		Notes:    []string{"sign: positive pressure where the row doesn't say", Formula, Long + "; " + Long},
		Cautions: []string{"Blanks are pushed: up to 400 N."},
		Faults:   Faults(),
		Takeoff:  SmallTakeoff(),
	}
}

func smallSections() []report.Section {
	return []report.Section{
		{
			ID: "S01", System: "Supply", Levels: []string{"L1", "L2", "L3"}, Places: []string{Long, "roof"}, Drawings: []string{"M-57-01"},
			Scheme: "EN", Class: "C", TestPa: 400, Sign: "positive", Area: 147.5, JointLength: 61.2, LimitPerM2: 0.14739, Limit: 21.739999, Range: "high",
			Pieces: []report.Piece{
				{Tag: "D1", Row: 2, Kind: "straight", Size: "1000 x 600", Level: "L1", From: 1, To: 8, Of: 8, Area: 100, Own: 100},
				{Tag: Formula, Row: 3, Kind: "straight", Size: "dia 400", Level: "L2", From: 1, To: 2, Of: 6, Area: 47.5, Own: 47.5},
			},
			Blanks: []report.Blank{
				{At: "plant end of D1", Why: "open end", Face: rect(1000, 600), Level: "L1", Force: 240, Minutes: 21},
				{At: "between " + Formula + " and D4, at " + Long, Why: "cut", Face: round(400), Level: "L2", Force: 50.265, Minutes: 12.125},
				{At: "far end of D3", Why: "open end", Face: round(400), Force: 50.265, Minutes: 11.3},
			},
			Notes: []string{"a grouping of rows that name no neighbours"}, Grouping: true,
		},
		{
			ID: "S02", System: Wide, Levels: []string{"L3"}, Scheme: "US", Class: "6", TestPa: 500, Sign: "negative", Area: 3.5956, JointLength: 4,
			LimitPerM2: 0.0499, Limit: 0.17999, UnderRange: true, Reason: "0.18 L/s is below 0.83 L/s, the least that the rig reads",
			Cures:  []string{"a test at 750 Pa, if the specifier agrees", "a jumper hose to S01: together 151.1 m2 in one test"},
			Pieces: []report.Piece{{Tag: Controls, Row: 5, Kind: "bend", From: 1, To: 1, Of: 1, Area: 3.5956, Own: 3.5956}},
			Blanks: []report.Blank{{At: "far end of D5", Why: "scope", Face: report.Face{Text: "size not known"}, Minutes: 8}},
			Notes:  []string{"3.6 m2 is less than the 10 m2 that scheme EN asks of one test"},
		},
		{
			ID: "S03", System: "Supply", Scheme: "EN", Class: "A", TestPa: 400, Sign: "positive", Area: 260, JointLength: 80, LimitPerM2: 1.3265,
			Limit: 344.899, OverRange: true, Reason: "517 L/s is above 170 L/s, the most that the rig holds", Cures: []string{"a bigger rig"},
		},
	}
}

func smallCuts() []report.Cut {
	return []report.Cut{
		{Between: [2]report.Side{{Tag: Formula, Piece: 2}, {Tag: Formula, Piece: 3}}, At: "in " + Formula + " after piece 2 of 6", Minutes: 24.25, Face: round(400)},
		{Between: [2]report.Side{{Tag: "D1", Piece: 8}, {Tag: "D7", Piece: 1}}, At: "between D1 and D7", Why: "class C meets class A", Minutes: 28, Face: rect(1000, 600)},
	}
}

func smallBlanking() *report.Blanking {
	unknown := report.Face{Text: "size not known"}
	return &report.Blanking{
		Order: []string{"S02", "S03"}, Fits: 1, Makes: 1, LeastMakes: 1, Proved: true, Groupings: []string{"S01"},
		Sizes:  []report.BlankSize{{Face: unknown, Fits: 1, Makes: 1}},
		Moving: []report.BlankMoves{{Face: unknown, No: 1, Steps: []report.BlankStep{{Section: "S02", At: "far end of D5", How: "fit"}}}},
	}
}

func smallUntested() *report.Untested {
	return &report.Untested{
		Joints: 2, Metres: 4.45664, Overlaps: 1, Tested: 1.25664, OverlapCost: report.OverlapCost{Blanks: 1, Minutes: 12.125, Area: 3.77},
		List: []report.UntestedJoint{
			{Cut: 1, At: "in " + Formula + " after piece 2 of 6", Size: "dia 400", Shown: "dia 400", Metres: 1.25664, Section: "S01", Takes: []string{Formula + " piece 3 of 6"}, OverlapCost: report.OverlapCost{Blanks: 1, Minutes: 12.125, Area: 3.77}},
			{Cut: 2, At: "between D1 and D7", Size: "1000 x 600", Shown: "1000 x 600", Metres: 3.2, Takes: []string{}, Why: "change of class"},
		},
	}
}

// Faults are a few faults, some alike.
func Faults() []takeoff.Fault {
	at := takeoff.Place{File: "north & south.csv"}
	var out []takeoff.Fault
	for _, row := range []int{12, 13, 14, 15, 40} {
		at.Row = row
		out = append(out, at.Fault("width_mm", "6OO", "a length in mm", "'6OO' isn't a number"))
	}
	at.Row = 41
	return append(out,
		at.Fault("length_mm", "", "more than 0 mm", "a straight needs a length"),
		at.Fault("", "", "", "the row has a quote that doesn't end"),
		takeoff.Place{File: "north & south.csv", Sheet: "Extract"}.Fault("", "", "a heading row", "no heading row was found"),
	)
}

// SmallTakeoff is a takeoff of a few items with awkward texts.
func SmallTakeoff() *report.Takeoff {
	stated := 28.5
	part := func(of, name string, rows int, m2, joints float64) report.Part {
		return report.Part{Of: of, Name: name, Part: totals.Part{Name: name, Rows: rows, Pieces: rows + 1, Area: m2, JointLength: joints}}
	}
	return &report.Takeoff{
		Schedule: takeoff.Schedule{File: "north & south.csv", RowsRead: 12, RowsUsed: 8, RowsExcluded: 1, RowsRefused: 3},
		Basis:    "exact", Measured: "Areas are of the outside surface.",
		Items: []report.Item{
			{Tag: "D1", Row: 2, System: "Supply", Level: "L1", Place: Long, Kind: "straight", Shape: "rectangular", Size: "800 x 400", Quantity: 1, Scope: "in",
				Area: 28.75, ExactArea: 28.75, Cut: 0.05, JointLength: 19.2, Working: "2 x (0.800 + 0.400) x 12.000 = 28.800 m2; less openings 0.050 m2 = 28.750 m2",
				Source: "mensuration", Stated: &stated},
			{Tag: Formula, Sheet: "Extract", Row: 3, Kind: "bend", Style: "square throat", Shape: "rectangular", Size: "1200.5 x 1000.25", Quantity: 120, Scope: "through",
				Area: 1234.5678912, ExactArea: 1234.5678912, JointLength: 0.333333333, Working: Long, Notes: []string{"-1 on site", Wide}},
			{Tag: Controls, Row: 4, System: Wide, Level: "L1", Kind: "cap", Shape: "circular", Quantity: 1, Scope: "out", From: "@D1"},
		},
		Totals: report.Totals{Area: 28.75, JointLength: 19.2, Through: 1234.5678912, Parts: []report.Part{
			part("system", "", 1, 1.25, 2), part("system", "Supply", 2, 27.5, 17.2), part("level", "", 3, 28.75, 19.2),
			part("shape", "rectangular", 3, 28.75, 19.2), part("size", "800 x 400", 3, 28.75, 19.2),
		}},
		Notes: []string{"headings taken: W for width_mm"}, Faults: Faults(),
	}
}

// Big is a plan of n sections of ten pieces and five blanks each, every tenth
// one under range.
func Big(n int) *report.Plan {
	v := Small()
	v.Sections, v.Cuts, v.Takeoff.Items = nil, nil, nil
	for i := range n {
		s := report.Section{
			ID: fmt.Sprintf("S%03d", i+1), System: fmt.Sprintf("System %d", i/7), Levels: []string{fmt.Sprintf("Level %d", i%9)}, Scheme: "EN", Class: "C",
			TestPa: 400, Sign: "positive", Area: 20 + float64(i)*1.37, LimitPerM2: 0.14739, Limit: (20 + float64(i)*1.37) * 0.14739, Range: "high",
			UnderRange: i%10 == 9,
		}
		if s.UnderRange {
			s.Reason, s.Range = "below the least that the rig reads", ""
		}
		for k := range 10 {
			tag := fmt.Sprintf("D%d.%d", i, k)
			s.Pieces = append(s.Pieces, report.Piece{Tag: tag, Row: i*10 + k + 2, Kind: "straight", Size: "dia 315", From: 1, To: 2, Of: 2, Area: s.Area / 10, Own: s.Area / 10})
			v.Takeoff.Items = append(v.Takeoff.Items, report.Item{Tag: tag, Row: i*10 + k + 2, Kind: "straight", Shape: "circular", Size: "dia 315", Quantity: 1, Scope: "in", Area: s.Area / 10, Working: "pi x 0.315 x 6.000"})
		}
		for k := range 5 {
			d := float64(100 + 5*((i*5+k)%60))
			s.Blanks = append(s.Blanks, report.Blank{At: fmt.Sprintf("far end of D%d.%d", i, k), Why: "open end", Face: round(d), Force: 400 * 3.14159 / 4 * d * d / 1e6, Minutes: 8})
		}
		if i > 0 {
			v.Cuts = append(v.Cuts, report.Cut{At: fmt.Sprintf("between D%d.9 and D%d.0", i-1, i), Minutes: 20, Face: round(315),
				Between: [2]report.Side{{Tag: fmt.Sprintf("D%d.9", i-1), Piece: 2}, {Tag: fmt.Sprintf("D%d.0", i), Piece: 1}}})
		}
		v.Sections = append(v.Sections, s)
	}
	return v
}
