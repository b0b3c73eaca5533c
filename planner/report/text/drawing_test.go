package text

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
	"testing"

	"blankoff/fittings"
	"blankoff/planner/report/sketch"
)

// words are what a drawing may hold beside letters and the numbers of gores.
var words = []string{"or", "far", "end", "if", "it", "changes", "from", "above", "the", "side", "main", "wall", "circular", "rectangular", "v"} // v is an arrow head

var wordOf = regexp.MustCompile(`[a-z0-9]+`)

// TestDrawings: every kind and style is drawn, in plain characters, small enough
// for a terminal, and its letters are those of the legend.
func TestDrawings(t *testing.T) {
	count := 0
	for _, k := range fittings.Kinds() {
		styles := k.Styles
		if len(styles) == 0 {
			styles = []fittings.Style{fittings.NoStyle}
		}
		for _, s := range styles {
			count++
			d, _ := sketch.Of(k.Kind, s)
			lines := drawing(d.Name())
			if n := len(lines); n < 5 || n > 14 {
				t.Errorf("%s: %d lines", d.Name(), n)
			}
			checkLetters(t, &d, lines)
		}
	}
	if n := strings.Count("\n"+drawingsText, "\n== "); n != count {
		t.Errorf("%d drawings for %d kinds and styles", n, count)
	}
	if drawing("widget") != nil {
		t.Error("there is a drawing of a widget")
	}
}

func checkLetters(t *testing.T, d *sketch.Drawing, lines []string) {
	t.Helper()
	var legend []string
	for _, m := range d.Legend {
		legend = append(legend, m.Letter)
	}
	found := map[string]bool{}
	for _, line := range lines {
		if len(line) > 60 || strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r > '~' }) || strings.TrimRight(line, " ") != line {
			t.Errorf("%s: %q is too wide, not plain, or ends in a space", d.Name(), line)
		}
		for _, w := range wordOf.FindAllString(line, -1) {
			found[w] = true
			numbered := d.Style == fittings.Gored && len(w) == 1 && w >= "1" && w <= "5"
			if !numbered && !slices.Contains(legend, w) && !slices.Contains(words, w) {
				t.Errorf("%s: %q isn't in the legend", d.Name(), w)
			}
		}
	}
	for _, l := range legend {
		if !found[l] {
			t.Errorf("%s: letter %s isn't drawn", d.Name(), l)
		}
	}
}

// TestKindIsWorkedOut: with every style go its drawing, its letters and a working
// that ends in its area.
func TestKindIsWorkedOut(t *testing.T) {
	for _, k := range fittings.Kinds() {
		for _, s := range append([]fittings.Style{fittings.NoStyle}, k.Styles...) {
			var b bytes.Buffer
			if err := KindStyle(&b, k, s); err != nil {
				t.Fatal(err)
			}
			d, _ := sketch.Of(k.Kind, s)
			text := b.String()
			if !strings.Contains(text, strings.TrimRight(drawing(d.Name())[3], " ")) {
				t.Errorf("%s: isn't drawn", d.Name())
			}
			if !strings.Contains(text, "\nworking ") {
				t.Errorf("%s: no working:\n%s", d.Name(), text)
			}
			if s != fittings.NoStyle && !strings.Contains(strings.Join(strings.Fields(text), " "), strings.TrimPrefix(styled(&d, k), " ")) {
				t.Errorf("%s: no example in this style", d.Name())
			}
		}
	}
	for _, c := range []struct {
		kind  fittings.Kind
		style fittings.Style
		want  string
	}{
		// worked by hand: 2 (0.6 + 0.4) x 0.4 pi/2; 2 (0.6 + 0.4) (0.6 + 2 x 0.1)
		{fittings.Bend, fittings.NoStyle, "2 x (0.600 + 0.400) x 0.400 x pi x 90 / 180 = 1.256637 m2"},
		{fittings.Bend, fittings.Mitred, "= 1.600 m2"},
		{fittings.Spigot, fittings.NoStyle, "opening     pi x 0.200^2 / 4 = 0.031416 m2"},
		{fittings.Tee, fittings.NoStyle, "total: 1.600 - 0.090 + 0.180 = 1.690 m2"},
	} {
		info, _ := c.kind.Info()
		var b bytes.Buffer
		if err := KindStyle(&b, info, c.style); err != nil || !strings.Contains(b.String(), c.want) {
			t.Errorf("%s %s: no %q in\n%s", c.kind, c.style, c.want, b.String())
		}
	}
}

// styled is a text that only an example of the drawing's style has.
func styled(d *sketch.Drawing, k fittings.KindInfo) string {
	if d.Style == k.Styles[0] {
		return "kind=" + k.Name
	}
	return "style=" + d.Style.String()
}
