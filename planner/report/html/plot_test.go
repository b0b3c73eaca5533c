package html

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// On a phone the axis is as wide as the page, and its figures are 15 high: half of
// the last one has to lie within the picture.
func TestAxisHasRoomForItsFigures(t *testing.T) {
	p := plotOf(planned(t, 3))
	found := regexp.MustCompile(`<text x="([0-9.]+)" y="12">([^<]+)</text>`).FindAllStringSubmatch(string(p.Axis), -1)
	if len(found) < 2 {
		t.Fatalf("no figures in %s", p.Axis)
	}
	for _, m := range found {
		x, err := strconv.ParseFloat(m[1], 64)
		if strings.ContainsAny(m[2], "e+") {
			t.Errorf("%s isn't written in full", m[2])
		}
		if half := 15 * 0.6 * float64(len(m[2])) / 2; err != nil || x < half || x > plotWide-half { // 0.6 of the height is a figure's width
			t.Errorf("%s at %s of %g is cut off", m[2], m[1], plotWide)
		}
	}
}
