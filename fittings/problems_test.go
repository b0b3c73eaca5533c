package fittings

import (
	"math"
	"strings"
	"testing"
)

// fault is the heading at fault, and a piece of what is expected instead.
type fault struct{ at, expected string }

// refusals holds rows that are refused, each with every problem it has, in order.
var refusals = []struct {
	row  string
	want []fault
}{
	// missing sizes are never filled in
	{"kind=straight, width_mm=600, height_mm=400", []fault{{"length_mm", "1 to 1000000 mm"}}},
	{"kind=straight, width_mm=600", []fault{{"height_mm", "1 to 20000 mm"}, {"length_mm", ""}}},
	{"kind=straight, length_mm=600", []fault{{"shape", "rectangular, circular or flat-oval"}}},
	{"kind=straight, shape=round, width_mm=315, height_mm=315, length_mm=600", []fault{{"diameter_mm", ""}}},
	{"kind=straight, width_mm=600, height_mm=400, diameter_mm=500, length_mm=600", []fault{{"shape", ""}}},
	{"kind=bend, width_mm=600, height_mm=400, throat_mm=100", []fault{{"angle_deg", "0.01 to 180 degrees"}}},
	{"kind=bend, width_mm=600, height_mm=400, angle_deg=90", []fault{{"radius_mm", "300 to 1000000 mm"}}},
	{"kind=bend, style=gored, diameter_mm=300, radius_mm=300, angle_deg=90", []fault{{"gores", "a whole number from 2 to 60"}}},
	{"kind=reducer, diameter_mm=300, length_mm=300", []fault{{"diameter2_mm", ""}}},
	{"kind=reducer, width_mm=300, height_mm=300, width2_mm=200, length_mm=300", []fault{{"height2_mm", ""}}},
	{"kind=offset, diameter_mm=300", []fault{{"length_mm", ""}, {"offset_mm", ""}}},
	{"kind=tee, diameter_mm=300, length_mm=300, branch_diameter_mm=200", []fault{{"branch_length_mm", ""}}},
	{"kind=tee, diameter_mm=300, length_mm=300, branch_length_mm=200", []fault{{"shape2", ""}}},
	{"kind=tee, style=conical, diameter_mm=300, length_mm=300, branch_diameter_mm=100, branch_length_mm=200", []fault{{"entry_mm", ""}}},
	{"kind=spigot, diameter_mm=300, length_mm=100", []fault{{"from", "the tag of"}}},
	{"kind=cap, style=dished, diameter_mm=300", []fault{{"rise_mm", ""}}},
	{"kind=plenum, width_mm=300", []fault{{"height_mm", ""}, {"length_mm", ""}}},
	{"kind=breeches, diameter_mm=300", []fault{{"branch_diameter_mm", ""}, {"length_mm", ""}, {"offset_mm", ""}}},
	{"width_mm=300", []fault{{"kind", "straight, bend"}}},
	// impossible sizes
	{"kind=straight, width_mm=0, height_mm=-4, length_mm=0", []fault{{"width_mm", "1 to 20000 mm"}, {"height_mm", ""}, {"length_mm", ""}}},
	{"kind=straight, width_mm=NaN, height_mm=Inf, length_mm=100", []fault{{"width_mm", ""}, {"height_mm", ""}}},
	{"kind=straight, diameter_mm=20001, length_mm=1000001", []fault{{"diameter_mm", ""}, {"length_mm", ""}}},
	{"kind=straight, shape=oval, width_mm=150, height_mm=525, length_mm=100", []fault{{"height_mm", "up to 150 mm"}}},
	{"kind=bend, width_mm=600, height_mm=400, radius_mm=299, angle_deg=90", []fault{{"radius_mm", "300 to 1000000 mm"}}},
	{"kind=bend, shape=oval, width_mm=600, height_mm=400, radius_mm=299, angle_deg=90", []fault{{"radius_mm", "300 to"}}},
	{"kind=bend, width_mm=600, height_mm=400, radius_mm=400, throat_mm=150, angle_deg=90", []fault{{"radius_mm", "450 mm"}}},
	{"kind=bend, width_mm=600, height_mm=400, throat_mm=100, angle_deg=181", []fault{{"angle_deg", "0.01 to 180"}}},
	{"kind=bend, width_mm=600, height_mm=400, throat_mm=100, angle_deg=0", []fault{{"angle_deg", ""}}},
	{"kind=bend, style=mitred, width_mm=600, height_mm=400, angle_deg=175", []fault{{"angle_deg", "0.01 to 170 degrees"}}},
	{"kind=bend, style=gored, diameter_mm=300, radius_mm=300, angle_deg=90, gores=1", []fault{{"gores", ""}}},
	{"kind=bend, style=gored, diameter_mm=300, radius_mm=300, angle_deg=90, gores=3.5", []fault{{"gores", ""}}},
	{"kind=bend, style=square throat, width_mm=600, height_mm=400, angle_deg=90, throat_mm=100", []fault{{"throat_mm", "0 mm"}}},
	{"kind=reducer, diameter_mm=300, diameter2_mm=0, length_mm=300", []fault{{"diameter2_mm", ""}}},
	{"kind=reducer, diameter_mm=300, diameter2_mm=200, length_mm=0, offset_mm=100", []fault{{"length_mm", ""}}},
	{"kind=offset, diameter_mm=300, length_mm=900, offset_mm=0", []fault{{"offset_mm", ""}}},
	{"kind=offset, diameter_mm=600, length_mm=300, offset_mm=300", []fault{{"offset_mm", "at least 300 mm"}}},
	{"kind=offset, diameter_mm=300, length_mm=900, offset_mm=250, radius_mm=900", []fault{{"radius_mm", "150 to 872.5 mm"}}},
	{"kind=offset, style=mitred, diameter_mm=300, length_mm=900, offset_mm=250, legs_mm=450", []fault{{"legs_mm", "0 to 449.5 mm"}}},
	{"kind=tee, diameter_mm=300, length_mm=600, branch_diameter_mm=301, branch_length_mm=100", []fault{{"branch_diameter_mm", "1 to 300 mm"}}},
	{"kind=tee, diameter_mm=300, length_mm=600, branch_diameter_mm=200, branch_length_mm=100, branch_shift_mm=60", []fault{{"branch_diameter_mm", "1 to 180 mm"}}},
	{"kind=tee, shape=oval, width_mm=600, height_mm=400, length_mm=600, branch_diameter_mm=201, branch_length_mm=100", []fault{{"branch_diameter_mm", "1 to 200 mm"}}},
	{"kind=tee, width_mm=600, height_mm=400, length_mm=700, branch_width_mm=300, branch_height_mm=601, branch_length_mm=100", []fault{{"branch_height_mm", "1 to 600 mm"}}},
	{"kind=tee, width_mm=600, height_mm=400, length_mm=200, branch_width_mm=300, branch_height_mm=300, branch_length_mm=100", []fault{{"length_mm", "300 to"}}},
	{"kind=tee, width_mm=600, height_mm=400, length_mm=399, branch_diameter_mm=200, branch_length_mm=500, branch_angle_deg=30", []fault{{"length_mm", "400 to"}}},
	{"kind=tee, width_mm=600, height_mm=400, length_mm=700, branch_diameter_mm=200, branch_length_mm=50, branch_angle_deg=45", []fault{{"branch_length_mm", "100.1 mm and more"}}},
	{"kind=tee, diameter_mm=500, length_mm=700, branch_diameter_mm=250, branch_length_mm=50, branch_angle_deg=45", []fault{{"branch_length_mm", "125.1 mm"}}},
	{"kind=tee, style=conical, diameter_mm=500, length_mm=700, branch_diameter_mm=250, branch_length_mm=150, entry_mm=400", []fault{{"entry_mm", "250 to 354.8 mm"}}},
	{"kind=tee, style=conical, diameter_mm=500, length_mm=700, branch_diameter_mm=250, branch_length_mm=150, entry_mm=200", []fault{{"entry_mm", "250 mm and more"}}},
	{"kind=tee, style=shoe, width_mm=600, height_mm=400, length_mm=700, branch_width_mm=300, branch_height_mm=300, branch_length_mm=100, entry_mm=120", []fault{{"entry_mm", "1 to 100 mm"}}},
	{"kind=tee, diameter_mm=500, length_mm=700, branch_diameter_mm=250, branch_length_mm=150, branch_angle_deg=45, angle_deg=60", []fault{{"angle_deg", "45 degrees"}}},
	{"kind=spigot, diameter_mm=200, branch_diameter_mm=250, length_mm=100, from=plenum", []fault{{"diameter_mm", "250 mm"}}},
	{"kind=spigot, diameter_mm=200, length_mm=100, branch_length_mm=80, from=plenum", []fault{{"length_mm", "80 mm"}}},
	{"kind=spigot, diameter_mm=600, length_mm=100, from=circular 500", []fault{{"diameter_mm", "1 to 500 mm"}}},
	{"kind=breeches, diameter_mm=400, branch_diameter_mm=300, length_mm=500, offset_mm=149", []fault{{"offset_mm", "150 mm and more"}}},
	{"kind=breeches, diameter_mm=400, branch_diameter_mm=401, length_mm=500, offset_mm=300", []fault{{"branch_diameter_mm", ""}}},
	{"kind=cap, style=dished, diameter_mm=300, rise_mm=151", []fault{{"rise_mm", "1 to 150 mm"}}},
	{"kind=cap, diameter_mm=300, area_m2=0", []fault{{"area_m2", ""}}},
	// words that don't go together
	{"kind=straight, style=gored, diameter_mm=300, length_mm=100", []fault{{"style", "no style"}}},
	{"kind=cap, style=mitred, diameter_mm=300", []fault{{"style", "flat, dished"}}},
	{"kind=bend, style=square heel, diameter_mm=300, radius_mm=300, angle_deg=90", []fault{{"style", "radius, mitred, gored"}}},
	{"kind=bend, style=mitred, width_mm=600, width2_mm=400, height_mm=400, angle_deg=90", []fault{{"style", "radius"}}},
	{"kind=bend, width_mm=600, height_mm=400, height2_mm=300, throat_mm=100, angle_deg=90", []fault{{"height2_mm", "the same as the near end"}}},
	{"kind=bend, diameter_mm=600, diameter2_mm=500, throat_mm=100, angle_deg=90", []fault{{"diameter2_mm", ""}}},
	{"kind=reducer, width_mm=600, height_mm=400, diameter2_mm=400, length_mm=500", []fault{{"kind", "transition"}, {"width2_mm", ""}, {"height2_mm", ""}}},
	{"kind=transition, width_mm=600, height_mm=400, width2_mm=400, height2_mm=300, length_mm=500", []fault{{"shape2", "other than rectangular"}}},
	{"kind=transition, diameter_mm=600, diameter2_mm=400, length_mm=500", []fault{{"shape2", "other than circular"}}},
	{"kind=tee, diameter_mm=600, diameter2_mm=400, length_mm=500, branch_diameter_mm=200, branch_length_mm=100", []fault{{"diameter2_mm", ""}}},
	{"kind=tee, shape=oval, width_mm=600, height_mm=200, length_mm=500, branch_width_mm=200, branch_height_mm=100, branch_length_mm=100", []fault{{"shape2", "rectangular or flat-oval"}}},
	{"kind=tee, style=shoe, diameter_mm=600, length_mm=500, branch_width_mm=200, branch_height_mm=100, branch_length_mm=100, entry_mm=50", []fault{{"style", "area_m2"}}},
	{"kind=tee, style=conical, width_mm=600, height_mm=300, length_mm=500, branch_width_mm=200, branch_height_mm=100, branch_length_mm=100, entry_mm=50", []fault{{"style", "circular branch"}}},
	{"kind=tee, style=conical, diameter_mm=600, length_mm=500, branch_diameter_mm=200, branch_length_mm=100, entry_mm=250, branch_shift_mm=20", []fault{{"style", "on the main's axis"}}},
	{"kind=breeches, shape=oval, width_mm=600, height_mm=300, throat_mm=100, angle_deg=90", []fault{{"shape", "area_m2"}}},
	{"kind=breeches, width_mm=600, height_mm=300, branch_width_mm=400, throat_mm=100, angle_deg=90", []fault{{"branch_width_mm", "300 mm"}}},
	{"kind=plenum, diameter_mm=600, shape=round, length_mm=300", []fault{{"shape", "area_m2"}}},
	{"kind=cap, style=dished, width_mm=600, height_mm=300, rise_mm=100", []fault{{"style", "area_m2"}}},
}

func TestProblems(t *testing.T) {
	for _, c := range refusals {
		m, problems := Measure(row(t, c.row))
		if m.Area != 0 {
			t.Errorf("%s: has an area beside problems", c.row)
		}
		if len(problems) != len(c.want) {
			t.Errorf("%s: %d problems, want %d: %+v", c.row, len(problems), len(c.want), problems)
			continue
		}
		for i, want := range c.want {
			p := problems[i]
			at := p.Word
			if p.Dim != NumDims {
				at = p.Dim.Heading()
			}
			if at != want.at || !strings.Contains(p.Expected, want.expected) || p.Expected == "" || p.Message == "" {
				t.Errorf("%s: %q expects %q (%s), want %q expecting %q", c.row, at, p.Expected, p.Message, want.at, want.expected)
			}
		}
	}
}

// TestNotes: sizes that a kind doesn't use are named, and assumptions are said.
func TestNotes(t *testing.T) {
	for _, c := range []struct{ row, want string }{
		{"kind=straight, width_mm=600, height_mm=400, length_mm=1500", ""},
		{"kind=straight, width_mm=600, height_mm=400, length_mm=1500, lining_mm=25", ""},
		{"kind=straight, width_mm=600, height_mm=400, length_mm=1500, throat_mm=100, rise_mm=20", "throat_mm isn't used by this straight; rise_mm isn't used by this straight"},
		{"kind=straight, shape=rect, width_mm=600, height_mm=400, diameter_mm=500, length_mm=1500", "diameter_mm isn't used by this straight"},
		{"kind=bend, style=mitred, width_mm=600, height_mm=400, angle_deg=90, radius_mm=500", "radius_mm isn't used by this bend"},
		{"kind=bend, diameter_mm=300, radius_mm=300, angle_deg=90, gores=5", "taken as gored, because gores is given"},
		{"kind=offset, style=mitred, width_mm=600, height_mm=400, length_mm=800, offset_mm=300, legs_mm=50", "the mitre runs past the end face: legs_mm under 61.6"},
		{"kind=bend, diameter_mm=300, diameter2_mm=300, radius_mm=300, angle_deg=90", ""},
		{"kind=tee, diameter_mm=500, length_mm=700, branch_diameter_mm=250, branch_length_mm=150, angle_deg=90", ""},
		{"kind=cap, diameter_mm=500, length_mm=50", "length_mm isn't used by this cap"},
	} {
		if got := strings.Join(measured(t, c.row).Notes, "; "); got != c.want {
			t.Errorf("%s: notes %q, want %q", c.row, got, c.want)
		}
	}
}

// TestGoredIsInferred: five gores and no style are a gored bend.
func TestGoredIsInferred(t *testing.T) {
	stated := measured(t, "kind=bend, style=gored, diameter_mm=300, radius_mm=300, angle_deg=90, gores=5")
	inferred := measured(t, "kind=bend, diameter_mm=300, radius_mm=300, angle_deg=90, gores=5")
	closeTo(t, "area", inferred.Area, stated.Area, 1e-15)
}

// TestExactInches: sizes turned from inches carry float noise, which no limit may
// trip over.
func TestExactInches(t *testing.T) {
	in := 0.0254
	p := &Piece{Kind: Bend}
	for d, v := range map[Dim]float64{Width: 13 * in, Height: 9 * in, Radius: 6.5 * in, Throat: 0, Angle: 90} {
		p.Sizes.Set(d, v)
	}
	m := measuredPiece(t, p, "bend in inches")
	closeTo(t, "area", m.Area, 44*6.5*in*in*math.Pi/2, 1e-12)
	tee := &Piece{Kind: Tee}
	for d, v := range map[Dim]float64{Diameter: 0.1 + 0.2, Length: 1, BranchDiameter: 0.3, BranchLength: 0.1} {
		tee.Sizes.Set(d, v)
	}
	swapped := &Piece{Kind: Tee}
	for d, v := range map[Dim]float64{Diameter: 0.3, Length: 1, BranchDiameter: 0.1 + 0.2, BranchLength: 0.1} {
		swapped.Sizes.Set(d, v)
	}
	closeTo(t, "equal tee", measuredPiece(t, swapped, "tee").Area, measuredPiece(t, tee, "tee").Area, 1e-12)
}
