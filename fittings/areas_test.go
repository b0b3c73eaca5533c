package fittings

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// rowOf turns a shape of the reference table into a row: the words of the table
// are of geometry, those of the row of the trade. %name% is a parameter.
var rowOf = map[string]string{
	"rect_straight":                         "kind=straight, width_mm=%a%, height_mm=%b%, length_mm=%L%",
	"round_straight":                        "kind=straight, diameter_mm=%d%, length_mm=%L%",
	"oval_straight":                         "kind=straight, shape=flat-oval, width_mm=%major%, height_mm=%minor%, length_mm=%L%",
	"rect_radius_bend":                      "kind=bend, width_mm=%W%, height_mm=%H%, throat_mm=%throat%, angle_deg=%angle%, legs_mm=%tangents%",
	"rect_mitre_bend":                       "kind=bend, style=mitred, width_mm=%W%, height_mm=%H%, angle_deg=%angle%, legs_mm=%throat_leg%",
	"rect_radius_throat_square_heel_90":     "kind=bend, style=square heel, width_mm=%W%, height_mm=%H%, throat_mm=%throat%, angle_deg=90",
	"rect_square_throat_radius_heel_90":     "kind=bend, style=square throat, width_mm=%W%, height_mm=%H%, angle_deg=90",
	"rect_reducing_radius_bend_linear_heel": "kind=bend, width_mm=%W1%, width2_mm=%W2%, height_mm=%H%, throat_mm=%throat%, angle_deg=%angle%",
	"round_smooth_bend":                     "kind=bend, diameter_mm=%d%, radius_mm=%Rc%, angle_deg=%angle%",
	"round_gored_bend":                      "kind=bend, style=gored, diameter_mm=%d%, radius_mm=%Rc%, angle_deg=%angle%, gores=%mitres+1%",
	"oval_smooth_bend":                      "kind=bend, shape=oval, width_mm=%major%, height_mm=%minor%, radius_mm=%Rc%, angle_deg=%angle%",
	"round_reducer_concentric":              "kind=reducer, diameter_mm=%d1%, diameter2_mm=%d2%, length_mm=%L%",
	"round_reducer_eccentric":               "kind=reducer, diameter_mm=%d1%, diameter2_mm=%d2%, length_mm=%L%, offset_mm=%e%",
	"round_sheared_offset":                  "kind=offset, style=straight, diameter_mm=%d%, length_mm=%L%, offset_mm=%O%",
	"rect_taper":                            "kind=reducer, width_mm=%a1%, height_mm=%b1%, width2_mm=%a2%, height2_mm=%b2%, length_mm=%L%, offset_mm=%ea%, offset2_mm=%eb%",
	"rect_to_round":                         "kind=transition, width_mm=%a%, height_mm=%b%, diameter2_mm=%d%, length_mm=%L%, offset_mm=%ex%, offset2_mm=%ey%",
	"oval_to_round":                         "kind=transition, shape=oval, width_mm=%major%, height_mm=%minor%, diameter2_mm=%d%, length_mm=%L%",
	"oval_reducer":                          "kind=reducer, shape=oval, width_mm=%M1%, height_mm=%m1%, width2_mm=%M2%, height2_mm=%m2%, length_mm=%L%",
	"rect_to_oval":                          "kind=transition, shape=rect, shape2=oval, width_mm=%a%, height_mm=%b%, width2_mm=%major%, height2_mm=%minor%, length_mm=%L%",
	"rect_sheared_offset":                   "kind=offset, style=straight, width_mm=%W%, height_mm=%H%, length_mm=%L%, offset_mm=%O%",
	"rect_radius_offset":                    "kind=offset, width_mm=%W%, height_mm=%H%, length_mm=%L%, offset_mm=%O%",
	"round_radius_offset":                   "kind=offset, diameter_mm=%d%, length_mm=%L%, offset_mm=%O%",
	"rect_mitre_offset":                     "kind=offset, style=mitred, width_mm=%W%, height_mm=%H%, length_mm=%L%, offset_mm=%O%, legs_mm=%end_legs%",
	"round_tee_net":                         "kind=tee, diameter_mm=%D%, branch_diameter_mm=%d%, length_mm=%L%, branch_angle_deg=%angle%, branch_length_mm=%collar%",
	"round_tee_branch_lateral":              "kind=spigot, from=circular %D%, branch_diameter_mm=%d%, branch_angle_deg=%angle%, branch_length_mm=%collar%",
	"round_tee_opening":                     "kind=spigot, from=circular %D%, branch_diameter_mm=%d%, branch_angle_deg=%angle%, branch_length_mm=1000",
	"rect_tee_net":                          "kind=tee, width_mm=%a%, height_mm=%b%, length_mm=%L%, branch_width_mm=%w%, branch_height_mm=%h%, branch_length_mm=%l%",
	"rect_main_round_spigot_net":            "kind=tee, width_mm=%a%, height_mm=%b%, length_mm=%L%, branch_diameter_mm=%d%, branch_length_mm=%l%",
	"rect_tee_shoe45_net":                   "kind=tee, style=shoe, width_mm=%a%, height_mm=%b%, length_mm=%L%, branch_width_mm=%w%, branch_height_mm=%h%, branch_length_mm=%l%, entry_mm=%t%",
	"round_tee_conical_net":                 "kind=tee, style=conical, diameter_mm=%D%, branch_diameter_mm=%d2%, entry_mm=%d1_at_crown%, branch_length_mm=%height%, length_mm=%L%",
	"round_breeches_net":                    "kind=breeches, diameter_mm=%D%, branch_diameter_mm=%d%, length_mm=%L%, offset_mm=%e%",
	"rect_breeches_two_radius_bends":        "kind=breeches, width_mm=%W%, height_mm=%H%, throat_mm=%throat%, angle_deg=%angle%",
	"cap_round":                             "kind=cap, diameter_mm=%d%",
	"cap_dished_spherical":                  "kind=cap, style=dished, diameter_mm=%d%, rise_mm=%rise%",
	"plenum_gross":                          "kind=plenum, width_mm=%1%, height_mm=%2%, length_mm=%3%",
}

// params reads "a=600 b=400 way=hard"; a bare 1000x800x500 is 1, 2 and 3.
func params(text string) map[string]string {
	out := map[string]string{}
	for _, word := range strings.Fields(text) {
		if name, value, ok := strings.Cut(word, "="); ok {
			out[name] = value
		} else if sides := strings.Split(word, "x"); len(sides) == 3 {
			out["1"], out["2"], out["3"] = sides[0], sides[1], sides[2]
		}
	}
	if m, err := strconv.Atoi(out["mitres"]); err == nil {
		out["mitres+1"] = strconv.Itoa(m + 1)
	}
	if s, err := strconv.ParseFloat(out["S_axis"], 64); err == nil {
		d, _ := strconv.ParseFloat(out["D"], 64)
		angle, _ := strconv.ParseFloat(out["angle"], 64)
		out["collar"] = strconv.FormatFloat(s-d/2/math.Sin(angle*math.Pi/180), 'g', 17, 64)
	}
	return out
}

// TestReferenceAreas holds every row of the reference table to 1e-6.
func TestReferenceAreas(t *testing.T) {
	file, err := os.Open("../testdata/areas.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	rows, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 50 {
		t.Fatalf("%d rows, want a heading and 49", len(rows))
	}
	for _, r := range rows[1:] {
		text, ok := rowOf[r[0]]
		if !ok {
			t.Errorf("no row for shape %q", r[0])
			continue
		}
		for name, value := range params(r[1]) {
			text = strings.ReplaceAll(text, "%"+name+"%", value)
		}
		want, err := strconv.ParseFloat(r[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		m := measured(t, text)
		got := m.Area
		if r[0] == "round_tee_opening" {
			got = m.Opening
		}
		if math.Abs(got-want) > 1e-6 {
			t.Errorf("%s %s: got %.7f, want %.6f", r[0], r[1], got, want)
		}
	}
}
