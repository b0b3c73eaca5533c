package report

import (
	"math"
	"sort"

	"blankoff/planner"
	"blankoff/planner/units"
	"blankoff/takeoff"
	"blankoff/takeoff/terms"
)

// Kept is what became of an earlier plan's sections, and what changed in the
// schedule since.
type Kept struct {
	Stay    []string `json:"stay"`
	Moved   []string `json:"moved"` // ids that are used no more
	New     []string `json:"new"`
	Void    []Void   `json:"void"`   // firm sections that a change has made void
	Proved  bool     `json:"proved"` // no plan as good moves fewer
	Changes []Change `json:"changes"`
	Before  Sums     `json:"before"` // what the earlier plan came to
	Now     Sums     `json:"now"`
	Limits  []Limit  `json:"limits"` // sections that stay and are held to another limit than before
}

// Sums is what a plan comes to.
type Sums struct {
	Tests   int     `json:"tests"`
	Under   int     `json:"under_range"`
	Over    int     `json:"over_range"`
	Cuts    int     `json:"cuts"`
	Blanks  int     `json:"blanks"` // fits in all tests
	Minutes float64 `json:"blank_minutes"`
	Area    float64 `json:"sections_m2"`
	Limit   float64 `json:"limit_l_s"` // of all sections
}

// Limit is a section whose pieces stay while its permitted leakage doesn't, L/s.
type Limit struct {
	ID     string  `json:"id"`
	Status string  `json:"status"`
	Was    float64 `json:"was_l_s"`
	Is     float64 `json:"is_l_s"`
}

// Void is a firm section that couldn't be kept.
type Void struct {
	ID     string `json:"id"`
	Status string `json:"status"`
	Piece  string `json:"piece"`
	Why    string `json:"why"`
}

// Change is a row that came, went or changed since the earlier plan.
type Change struct {
	What string  `json:"what"` // added, gone, changed
	Tag  string  `json:"tag"`
	Was  string  `json:"was"` // kind and size
	Is   string  `json:"is"`
	Area float64 `json:"area_m2"` // more, or less than before
}

// AddKept adds to a plan's view what became of an earlier plan.
func (v *Plan) AddKept(p *planner.Plan, old planner.Old) {
	k := p.Kept
	if k == nil {
		return
	}
	v.Kept = &Kept{Stay: list(k.Stay), Moved: list(k.Moved), New: list(k.New), Void: []Void{}, Proved: k.Proved, Changes: changes(p.Takeoff, old, p.Settings.Units)}
	for _, x := range k.Void {
		v.Kept.Void = append(v.Kept.Void, Void(x))
	}
	v.noteVoid(p, old)
	v.Kept.Before, v.Kept.Now, v.Kept.Limits = Sums(old.Sums), sums(v), limits(p, old)
}

// sums is what a plan comes to.
func sums(v *Plan) Sums {
	s := Sums{Tests: len(v.Sections), Under: v.Proof.UnderRange, Over: v.Proof.OverRange, Cuts: len(v.Cuts), Minutes: v.Proof.BlankMinutes}
	for i := range v.Sections {
		x := &v.Sections[i]
		s.Blanks, s.Area, s.Limit = s.Blanks+len(x.Blanks), s.Area+x.Area, s.Limit+x.Limit
	}
	return s
}

// limits lists the sections that stay and have another limit than before: the
// class, the pressure or the basis of the area has changed.
func limits(p *planner.Plan, old planner.Old) []Limit {
	out := []Limit{}
	was := map[string]float64{}
	for _, s := range old.Sections {
		was[s.ID] = s.Limit
	}
	for i := range p.Sections {
		s := &p.Sections[i]
		if b := was[s.ID]; b > 0 && math.Abs(s.Limit-b) > 1e-6*b {
			out = append(out, Limit{s.ID, s.Status, b, s.Limit})
		}
	}
	return out
}

// thing is a row as a plan knows it.
type thing struct {
	what string
	area float64
}

// changes sets the rows of an earlier plan beside those of the schedule, with
// sizes in these units.
func changes(t *takeoff.Takeoff, old planner.Old, u units.System) []Change {
	was, is := map[string]thing{}, map[string]thing{}
	add := func(m map[string]thing, tag, what string, area float64) {
		x := m[tag]
		m[tag] = thing{what, x.area + area}
	}
	for _, s := range old.Sections {
		for _, o := range s.Spans {
			add(was, o.Tag, o.Kind+" "+o.Size, o.Own)
		}
	}
	for _, o := range old.Rest {
		add(was, o.Tag, o.Kind+" "+o.Size, o.Own)
	}
	for i := range t.Items {
		if it := &t.Items[i]; !it.Refused {
			add(is, it.Name(), it.Piece.Kind.String()+" "+it.SizeText(), it.Area)
		}
	}
	out := []Change{}
	for tag, a := range was {
		b, there := is[tag]
		switch {
		case !there:
			out = append(out, Change{"gone", tag, u.Reread(a.what), "", -a.area})
		case a.what != b.what || math.Abs(a.area-b.area) > 1e-6:
			out = append(out, Change{"changed", tag, u.Reread(a.what), u.Reread(b.what), b.area - a.area})
		}
	}
	for tag, b := range is {
		if _, there := was[tag]; !there {
			out = append(out, Change{"added", tag, "", u.Reread(b.what), b.area})
		}
	}
	sort.Slice(out, func(i, j int) bool {
		if out[i].What != out[j].What {
			return out[i].What < out[j].What
		}
		return terms.NaturalLess(out[i].Tag, out[j].Tag)
	})
	return out
}
