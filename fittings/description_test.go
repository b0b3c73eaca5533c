package fittings

import "testing"

func TestDescriptions(t *testing.T) {
	for _, c := range []struct {
		typed string
		kind  Kind
		style Style
		shape Shape
	}{
		{"bend", Bend, NoStyle, NoShape},
		{"Radius Bend", Bend, RadiusStyle, NoShape},
		{"Mitred elbow", Bend, Mitred, NoShape},
		{"square throat bend", Bend, SquareThroat, NoShape},
		{"Round duct", Straight, NoStyle, Circular},
		{"Rectangular duct", Straight, NoStyle, Rectangular},
		{"Flat oval duct", Straight, NoStyle, FlatOval},
		{"flat-oval radius bend", Bend, RadiusStyle, FlatOval},
		{"conical tee", Tee, Conical, NoShape},
		{"dished end cap", Cap, Dished, NoShape},
		{"VCD", Inline, NoStyle, NoShape},
	} {
		k, style, shape, ok := ParseDescription(c.typed)
		if !ok || k != c.kind || style != c.style || shape != c.shape {
			t.Errorf("%q: %v %v %v %v, want %v %v %v", c.typed, k, style, shape, ok, c.kind, c.style, c.shape)
		}
	}
	for _, typed := range []string{"90 bend", "bend 90", "conical bend", "round square duct", "duct 600x400", "radius", "widget", "radius radius bend", ""} {
		if k, style, shape, ok := ParseDescription(typed); ok {
			t.Errorf("%q was read as %v %v %v", typed, k, style, shape)
		}
	}
}
