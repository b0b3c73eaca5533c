package planner

import (
	"fmt"
	"math"
	"slices"

	"blankoff/planner/duty"
	"blankoff/planner/partition"
	"blankoff/planner/units"
	"blankoff/takeoff"
)

// Old is an earlier plan, as far as a new one has to keep to it.
type Old struct {
	Sections []OldSection
	Rest     []OldSpan // pieces in no section, for telling what changed
	Sums     Sums
}

// Sums is what a plan comes to, for setting two plans side by side.
type Sums struct {
	Tests, Under, Over int
	Cuts, Blanks       int     // joints cut; fits of blanks in all tests
	Minutes            float64 // of the cuts
	Area               float64 // in sections, m2
	Limit              float64 // permitted leakage of all sections, L/s
}

// OldSection is a section of an earlier plan.
type OldSection struct {
	ID, Status string  // agreed, tested and passed sections stay as they are
	Limit      float64 // permitted leakage, L/s; 0 not said
	Spans      []OldSpan
}

// OldSpan is a row, or a stretch of the pieces of one, in an earlier plan.
type OldSpan struct {
	Tag, Kind, Size string
	From, To, Of    int
	Own             float64 // outside area, m2
}

// Firm reports whether a section has to stay: it was agreed, tested or passed.
func (s *OldSection) Firm() bool {
	return s.Status == "agreed" || s.Status == "tested" || s.Status == "passed"
}

func (s *OldSection) kept() duty.KeptSection {
	k := duty.KeptSection{ID: s.ID}
	for _, p := range s.Spans {
		k.Spans = append(k.Spans, duty.KeptSpan{Tag: p.Tag, From: p.From, To: p.To})
	}
	return k
}

// Kept says what became of an earlier plan's sections.
type Kept struct {
	Stay   []string // ids that stay with all their pieces
	Moved  []string // ids that are used no more: their pieces are in other sections
	New    []string // ids that are new
	Void   []Void   // firm sections that a change has made void
	Proved bool     // no plan as good moves fewer sections
}

// Void is a firm section that couldn't be kept, and the piece that is to blame.
type Void struct{ ID, Status, Piece, Why string }

// mostReleases bounds the plans that are tried for moving as few sections as
// possible.
const mostReleases = 400

// keeper looks for the plan that moves fewest sections of an earlier one.
type keeper struct {
	t      *takeoff.Takeoff
	set    Settings
	firm   []duty.KeptSection
	free   []duty.KeptSection // unchanged, and free to move
	system map[string]string  // of the free ones, by id
	tries  int
}

// Keep plans so that the firm sections of an earlier plan stay as they are; of
// the others as few move as can, while no more sections are over or under range
// than there would have to be. Ids that are used no more are never used again.
func Keep(t *takeoff.Takeoff, set Settings, old Old) (*Plan, error) {
	k := &keeper{t: t, set: set, system: map[string]string{}}
	k.set.Old, k.set.NextID = nil, nextID(old)
	k.set.Planned = map[string]bool{}
	for i := range old.Sections {
		s := &old.Sections[i]
		k.set.Old = append(k.set.Old, s.kept())
		for _, o := range s.Spans {
			if s.Firm() {
				k.set.Planned[o.Tag] = true
			}
		}
	}
	void, err := k.sort(old)
	if err != nil {
		return nil, err
	}
	best, err := k.plan(k.firm)
	if err != nil {
		return best, err
	}
	p, proved, err := k.fewest(best)
	if err != nil {
		return p, err
	}
	p.Kept = k.tell(p, old, void, proved)
	return p, nil
}

// plan plans with sections held fast.
func (k *keeper) plan(held []duty.KeptSection) (*Plan, error) {
	k.tries++
	set := k.set
	set.Kept = held
	return Make(k.t, set)
}

// sort parts the old sections into firm and free ones, and names the firm ones
// that can't stay: a piece of them has changed, or held fast they don't come out
// of the plan as they were.
func (k *keeper) sort(old Old) (void []Void, err error) {
	now, err := Make(k.t, k.set)
	if now == nil {
		return nil, err
	}
	lost := func(s *OldSection, piece, why string) {
		if s.Firm() {
			void = append(void, Void{s.ID, s.Status, piece, why})
			k.set.Old = slices.DeleteFunc(k.set.Old, func(o duty.KeptSection) bool { return o.ID == s.ID })
		}
	}
	var same []*OldSection
	for i := range old.Sections {
		s := &old.Sections[i]
		if piece, why := now.changed(s); why != "" {
			lost(s, piece, why)
		} else {
			same = append(same, s)
		}
	}
	for again := true; again; {
		var held []duty.KeptSection
		for _, s := range same {
			held = append(held, s.kept())
		}
		p, err := k.plan(held)
		if p == nil {
			return nil, err
		}
		again = false
		same = slices.DeleteFunc(same, func(s *OldSection) bool {
			if p.has(s.kept().Key()) {
				return false
			}
			lost(s, s.ID, "its bounds can't be blanked any more, or its pieces no longer belong together")
			again = true
			return true
		})
	}
	for _, s := range same {
		if s.Firm() {
			k.firm = append(k.firm, s.kept())
		} else {
			k.free = append(k.free, s.kept())
			k.system[s.ID] = now.systemOf(s.Spans[0].Tag)
		}
	}
	return void, nil
}

// changed names a piece of an old section that isn't what it was.
func (p *Plan) changed(s *OldSection) (piece, why string) {
	u := p.Settings.Units
	for _, o := range s.Spans {
		area, of := 0.0, 0
		kind, size := "", ""
		for _, k := range p.Network.Find(o.Tag, 0) {
			n := &p.Network.Nodes[k]
			it := p.Network.Item(k)
			kind, size, of = it.Piece.Kind.String(), it.SizeText(), n.Of
			if n.First >= o.From && n.Last <= o.To {
				area += n.Area
			}
		}
		switch {
		case kind == "":
			return o.Tag, "it is gone"
		case kind != o.Kind || size != o.Size:
			return o.Tag, fmt.Sprintf("it was %s %s and is %s %s", o.Kind, u.Reread(o.Size), kind, u.Reread(size))
		case of != o.Of:
			return o.Tag, fmt.Sprintf("it was %d pieces and is %d", o.Of, of)
		case math.Abs(area-o.Own) > 1e-6:
			return o.Tag, fmt.Sprintf("%s was %.3f %s and is %.3f", o.area(), u.Of(units.Area, o.Own), u.Unit(units.Area), u.Of(units.Area, area))
		}
	}
	return "", ""
}

// area names what a section has of a row: the row's area, or that of some pieces.
func (o *OldSpan) area() string {
	switch {
	case o.From <= 1 && o.To >= o.Of:
		return "its area"
	case o.From == o.To:
		return fmt.Sprintf("the area of its piece %d of %d", o.From, o.Of)
	}
	return fmt.Sprintf("the area of its pieces %d to %d of %d", o.From, o.To, o.Of)
}

// fewest holds every free section fast and lets go, system by system, of as few
// as it takes to be as good as best.
func (k *keeper) fewest(best *Plan) (*Plan, bool, error) {
	held := append(append([]duty.KeptSection{}, k.firm...), k.free...)
	p, err := k.plan(held)
	if err != nil {
		return best, false, nil // held fast nothing can be planned: let all go
	}
	proved := true
	for _, s := range best.Proof.BySystem {
		if !worse(p.scoreOf(s.System), s.Score) {
			continue
		}
		var those, others []duty.KeptSection
		for _, h := range held {
			if id, free := k.system[h.ID]; free && id == s.System {
				those = append(those, h)
			} else {
				others = append(others, h)
			}
		}
		kept, ok := k.release(those, others, s)
		proved = proved && ok
		held = append(append([]duty.KeptSection{}, others...), kept...)
		if p, err = k.plan(held); err != nil {
			return best, false, nil
		}
	}
	return p, proved, nil
}

// release finds the fewest of a system's sections to let go, the cheapest of
// equals.
func (k *keeper) release(those, others []duty.KeptSection, s SystemProof) (kept []duty.KeptSection, proved bool) {
	n := len(those)
	for size := 1; size <= n; size++ {
		var best []duty.KeptSection
		var cost partition.Score
		for pick := first(size); pick != nil; pick = next(pick, n) {
			if k.tries >= mostReleases {
				return best, false
			}
			rest := without(those, pick)
			p, err := k.plan(append(append([]duty.KeptSection{}, others...), rest...))
			if err != nil {
				continue
			}
			c := p.scoreOf(s.System)
			if !worse(c, s.Score) && (best == nil || c.Tests < cost.Tests || c.Tests == cost.Tests && c.Minutes < cost.Minutes) {
				best, cost = append([]duty.KeptSection{}, rest...), c
			}
		}
		if best != nil {
			return best, true
		}
	}
	return nil, true
}
