// Package keep reads an earlier plan (plan.json) that a new one has to keep to.
// A section's status may be written into that file: agreed, tested, passed or
// failed.
package keep

import (
	"encoding/json"
	"fmt"
	"io"

	"blankoff/planner"
)

type piece struct {
	Tag  string  `json:"tag"`
	Kind string  `json:"kind"`
	Size string  `json:"size"`
	From int     `json:"from_piece"`
	To   int     `json:"to_piece"`
	Of   int     `json:"of"`
	Own  float64 `json:"own_area_m2"`
}

// thing is what is only counted.
type thing struct{}

type plan struct {
	Sections []struct {
		ID     string  `json:"id"`
		Status string  `json:"status"`
		Area   float64 `json:"area_m2"`
		Limit  float64 `json:"limit_l_s"`
		Pieces []piece `json:"pieces"`
		Blanks []thing `json:"blanks"`
	} `json:"sections"`
	Cuts  []thing `json:"cuts"`
	Proof struct {
		Under   int     `json:"under_range"`
		Over    int     `json:"over_range"`
		Minutes float64 `json:"blank_minutes"`
	} `json:"proof"`
	Outside    []piece `json:"outside"`
	OutOfScope []piece `json:"out_of_scope"`
}

// Read reads an earlier plan; name is the file's and appears in the error, which
// says what is wrong and what to do.
func Read(r io.Reader, name string) (planner.Old, error) {
	var in plan
	if err := json.NewDecoder(r).Decode(&in); err != nil {
		return planner.Old{}, fmt.Errorf("%s isn't a plan: %w; expected the plan.json of an earlier run", name, err)
	}
	if len(in.Sections) == 0 {
		return planner.Old{}, fmt.Errorf("%s has no sections; expected the plan.json of an earlier run", name)
	}
	old := planner.Old{Sums: planner.Sums{Tests: len(in.Sections), Under: in.Proof.Under, Over: in.Proof.Over, Cuts: len(in.Cuts), Minutes: in.Proof.Minutes}}
	seen := map[string]bool{}
	for i, s := range in.Sections {
		if s.ID == "" || seen[s.ID] {
			return planner.Old{}, fmt.Errorf("%s: section %d has the id %q, which is empty or stands twice", name, i+1, s.ID)
		}
		seen[s.ID] = true
		switch s.Status {
		case "", "agreed", "tested", "passed", "failed":
		default:
			return planner.Old{}, fmt.Errorf("%s: section %s has the status %q; expected agreed, tested, passed or failed, or none", name, s.ID, s.Status)
		}
		if len(s.Pieces) == 0 {
			return planner.Old{}, fmt.Errorf("%s: section %s has no pieces", name, s.ID)
		}
		old.Sections = append(old.Sections, planner.OldSection{ID: s.ID, Status: s.Status, Limit: s.Limit, Spans: spans(s.Pieces)})
		old.Sums.Area, old.Sums.Limit, old.Sums.Blanks = old.Sums.Area+s.Area, old.Sums.Limit+s.Limit, old.Sums.Blanks+len(s.Blanks)
	}
	inSection := map[string]bool{}
	for _, s := range old.Sections {
		for _, p := range s.Spans {
			inSection[p.Tag] = true
		}
	}
	for _, p := range append(spans(in.Outside), spans(in.OutOfScope)...) {
		if !inSection[p.Tag] { // what is measured through stands in both lists
			old.Rest = append(old.Rest, p)
		}
	}
	return old, nil
}

func spans(list []piece) []planner.OldSpan {
	var out []planner.OldSpan
	for _, p := range list {
		out = append(out, planner.OldSpan{Tag: p.Tag, Kind: p.Kind, Size: p.Size, From: p.From, To: p.To, Of: p.Of, Own: p.Own})
	}
	return out
}
