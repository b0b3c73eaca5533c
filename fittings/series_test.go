package fittings

import "testing"

func TestSeriesNote(t *testing.T) {
	circle := func(mm float64) CrossSection { return CrossSection{Shape: Circular, Diameter: mm / 1000} }
	box := func(w, h float64) CrossSection {
		return CrossSection{Shape: Rectangular, Width: w / 1000, Height: h / 1000}
	}
	oval := func(w, h float64) CrossSection {
		return CrossSection{Shape: FlatOval, Width: w / 1000, Height: h / 1000}
	}
	for _, c := range []struct {
		section CrossSection
		want    string
	}{
		{circle(315), ""},
		{circle(355), ""},
		{circle(330), "dia 330 isn't in the EN 1506 series, nearest 315 and 355"},
		{circle(60), "dia 60 isn't in the EN 1506 series, which begins at 63"},
		{circle(1400), "dia 1400 isn't in the EN 1506 series, which ends at 1250"},
		{circle(304.8), ""}, // 12 in
		{circle(254), ""},   // 10 in
		{box(600, 400), ""},
		{box(400, 600), ""},
		{box(600, 350), "side 350 isn't in the usual series of sides, nearest 300 and 400"},
		{box(350, 350), "side 350 isn't in the usual series of sides, nearest 300 and 400"},
		{box(650, 350), "side 650 isn't in the usual series of sides, nearest 600 and 800; side 350 isn't in the usual series of sides, nearest 300 and 400"},
		{box(600, 304.8), ""},
		{oval(845, 275), ""},
		{oval(845, 260), "minor axis 260 isn't in the usual series of minor axes, nearest 250 and 275"},
		{CrossSection{}, ""},
	} {
		if got := SeriesNote(c.section); got != c.want {
			t.Errorf("%+v: %q, want %q", c.section, got, c.want)
		}
	}
	for _, shape := range []Shape{Rectangular, Circular, FlatOval} {
		s := SeriesOf(shape)
		for i, size := range s.Sizes {
			if i > 0 && size <= s.Sizes[i-1] {
				t.Errorf("%s: %d after %d", s.Name, size, s.Sizes[i-1])
			}
		}
		if s.Source == "" || s.Sureness == "" {
			t.Errorf("%s has no source", s.Name)
		}
	}
}
