package report

import (
	"math"
	"slices"

	"blankoff/fittings"
	"blankoff/planner"
	"blankoff/planner/partition"
	"blankoff/planner/units"
	"blankoff/takeoff"
)

// Of builds the view of a plan, with the items and the drawing that a pack shows.
func Of(p *planner.Plan) *Plan {
	v := Brief(p)
	v.Takeoff, v.Drawing = OfTakeoff(p.Takeoff, true, v.Units), drawingOf(p)
	return v
}

// Brief builds the view without what only a pack shows: every item with its
// working, and how the ductwork hangs together.
func Brief(p *planner.Plan) *Plan { return brief(p, true) }

// Short is Brief without the pieces of each section, which a table on the screen
// doesn't list.
func Short(p *planner.Plan) *Plan { return brief(p, false) }

func brief(p *planner.Plan, pieces bool) *Plan {
	set, u := p.Settings, p.Settings.Units
	v := &Plan{
		Schedule: p.Takeoff.Schedule, TakeoffM2: p.Takeoff.Totals.Area, ExactM2: p.Takeoff.Totals.Exact, Measured: measured(p.Takeoff, u), Mismatches: list(p.Mismatches),
		Settings: settingsOf(p),
		Sections: []Section{}, Cuts: []Cut{}, Outside: []Piece{}, OutOfScope: []Piece{},
		Notes: list(append(append([]string{}, p.Takeoff.Notes...), p.Notes...)), Faults: list(p.Faults),
		Balance: Balance{p.Balance.Takeoff, p.Balance.Sections, p.Balance.Outside, p.Balance.Difference},
		Takeoff: OfTakeoff(p.Takeoff, false, u), Units: u, Rigs: set.Rigs,
	}
	v.Schedule.RowsRefused += p.RefusedRows
	v.Schedule.RowsUsed -= p.RefusedRows
	v.Schedule.RefusedM2 += p.RefusedM2
	v.Sections, v.Cuts = make([]Section, 0, len(p.Sections)), make([]Cut, 0, len(p.Cuts))
	for i := range p.Sections {
		v.Sections = append(v.Sections, sectionOf(p, &p.Sections[i], pieces))
		if s := p.Sections[i].Scheme; !slices.Contains(v.Schemes, s) {
			v.Schemes = append(v.Schemes, s)
		}
	}
	for i := range p.Cuts {
		v.Cuts = append(v.Cuts, cutOf(p, &p.Cuts[i]))
	}
	for _, s := range p.Outside {
		v.Outside = append(v.Outside, pieceOf(p, s))
	}
	for _, s := range p.Excluded {
		v.OutOfScope = append(v.OutOfScope, pieceOf(p, s))
	}
	for _, a := range p.Alone {
		v.Alone = append(v.Alone, RigAlone{a.Rig, a.Score.Over, a.Score.Under, a.Score.Tests, float64(a.Score.Minutes) / 100, a.Left})
	}
	if j := p.Judged; j != nil {
		v.OwnCuts = &OwnCuts{j.Given, scoreOf(j.AsGiven, set), scoreOf(j.Completed, set), scoreOf(j.Best, set), list(j.Added), list(j.Dropped), list(j.Instead), nil}
		if c := j.Change; c != nil {
			v.OwnCuts.Change = &CutChange{list(c.Without), c.Smallest, scoreOf(c.Score, set)}
		}
	}
	v.addConnections(p)
	v.Proof = proofOf(p)
	v.follow(p)
	return v
}

// settingsOf is what a plan was made for.
func settingsOf(p *planner.Plan) Settings {
	set := p.Settings
	return Settings{
		Rig: set.Rigs.Names(), Scheme: set.Scheme, Class: set.Class, TestPa: set.TestPa, Sign: set.Sign,
		Aim: planner.Aim(set.Aim), TestMinutes: set.TestMinutes, MinArea: set.MinArea, MaxArea: set.MaxArea,
		Headroom: set.Headroom, PieceLength: p.Takeoff.Options().PieceLength, By: set.By, On: set.On.Text, SlipJoints: set.SlipJoints, PressureRule: set.PressureRule, Basis: basisName(p.Takeoff), HoldBoth: set.HoldBoth, Sheet: p.Takeoff.Sheet() * 1000, DuctClass: set.DuctClass,
	}
}

func sectionOf(p *planner.Plan, s *planner.Section, pieces bool) Section {
	o := Section{
		ID: s.ID, Status: s.Status, System: s.System, Levels: list(s.Levels), Scheme: s.Scheme.Name, Class: s.Class.Name,
		TestPa: s.TestPa, Sign: string(s.Sign), Area: s.Area, ExactArea: s.Exact, JointLength: s.JointLength,
		LimitPerM2: s.LimitPerM2, Limit: s.Limit, Rig: s.Rig, Range: s.Range, Ready: s.Ready, Closed: s.Closed,
		UnderRange: s.State.Under(), OverRange: s.State == planner.OverRange,
		Reason: s.Reason, Cures: list(s.Cures), Grouping: s.Grouping,
		Readings: []string{}, Pieces: []Piece{}, Blanks: []Blank{}, Notes: list(s.Notes), Places: []string{}, Drawings: []string{},
	}
	if s.Grouping {
		n, face := p.Widest(s)
		o.Widest, o.WidestForce = faceOf(face, p.Settings.Units).Text, n
	}
	for _, r := range s.Readings {
		o.Readings = append(o.Readings, r.Text(p.Settings.Units))
	}
	if pieces {
		spans := p.Spans(s)
		o.Pieces = make([]Piece, 0, len(spans))
		for _, sp := range spans {
			o.Pieces = append(o.Pieces, pieceOf(p, sp))
		}
	}
	var last *takeoff.Item
	for _, k := range s.Nodes {
		if it := p.Network.Item(k); it != last {
			o.Places, o.Drawings, last = once(o.Places, it.OnSite), once(o.Drawings, it.Drawing), it
		}
	}
	for _, b := range s.Blanks {
		o.Blanks = append(o.Blanks, Blank{
			Cut: cutNumber(p, b), At: b.At, Why: string(b.Why), Face: faceOf(b.Face, p.Settings.Units), Level: b.Level, Place: b.OnSite, Drawing: b.Drawing, Force: b.Force, Minutes: b.Minutes, End: blankEnd(p, &b),
		})
	}
	return o
}

// cutNumber is the number of the cut that a blank belongs to, from 1.
func cutNumber(p *planner.Plan, b planner.Blank) int {
	k, ok := slices.BinarySearchFunc(p.Cuts, b.Joint, func(c planner.Cut, joint int) int { return c.Joint - joint })
	if b.Why != planner.ForCut || !ok {
		return 0
	}
	return k + 1
}

// once adds a word to a list that doesn't hold it yet.
func once(l []string, word string) []string {
	if word == "" {
		return l
	}
	for _, w := range l {
		if w == word {
			return l
		}
	}
	return append(l, word)
}

func pieceOf(p *planner.Plan, s planner.Span) Piece {
	it := &p.Takeoff.Items[s.Item]
	return Piece{
		Tag: it.Name(), Row: it.At.Row, Kind: it.Piece.Kind.String(), Size: it.SizeText(), Shown: it.SizeIn(p.Settings.Units), Level: it.Level, Place: it.OnSite, Drawing: it.Drawing,
		From: s.From, To: s.To, Of: s.Of, Area: s.Area, Own: s.Own, Reason: s.Reason, Item: it, Exact: s.Exact,
	}
}

func cutOf(p *planner.Plan, c *planner.Cut) Cut {
	it, a := &p.Takeoff.Items[c.B.Item], &p.Takeoff.Items[c.A.Item]
	level := it.Level
	if a.Level != it.Level && a.Level != "" {
		level = a.Level + " to " + it.Level
	}
	return Cut{
		Parts: [2]string{p.Sections[c.Parts[0]].ID, p.Sections[c.Parts[1]].ID},
		Level: level, Place: it.OnSite, Drawing: it.Drawing,
		Between: [2]Side{
			{p.Takeoff.Items[c.A.Item].Name(), c.A.Piece},
			{p.Takeoff.Items[c.B.Item].Name(), c.B.Piece},
		},
		At: p.Network.JointText(c.Joint), Why: c.Why, Minutes: c.Minutes, Face: faceOf(c.Face, p.Settings.Units), End: cutEnd(p, c),
	}
}

// faceOf turns an opening to mm. Metres came from mm or inches, so the noise of
// the turning is cut at a millionth of a mm. Its text is in these units.
func faceOf(c fittings.CrossSection, u units.System) Face {
	mm := func(m float64) float64 { return math.Round(m*1e9) / 1e6 }
	f := Face{Shape: c.Shape.String(), Text: planner.OpeningText(c, u)}
	if c.Shape == fittings.Circular {
		f.Diameter = mm(c.Diameter)
	} else {
		f.Width, f.Height = mm(c.Width), mm(c.Height)
	}
	if f.Text == "" {
		f.Text = "size not known"
	}
	return f
}

// scoreOf turns a score to minutes.
func scoreOf(s partition.Score, set planner.Settings) Score {
	minutes := float64(s.Minutes) / 100
	return Score{s.Over, s.Under, s.Tests, minutes, float64(s.Tests)*set.TestMinutes + minutes}
}

func proofOf(p *planner.Plan) Proof {
	pr := &p.Proof
	o := Proof{
		Aim: planner.Aim(pr.Aim), Kind: pr.Kind, EndMinutes: pr.EndMinutes, Sentences: list(pr.Sentences),
		Score: Score{pr.Score.Over, pr.Score.Under, pr.Score.Tests, pr.BlankMinutes, pr.TotalMinutes},
	}
	o.LowerBound = scoreOf(pr.Bound, p.Settings)
	for _, s := range pr.BySystem {
		o.BySystem = append(o.BySystem, SystemProof{s.System, s.Kind, s.Score.Tests, s.Score.Under, s.AtLeast})
	}
	return o
}
