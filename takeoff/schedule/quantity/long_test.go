package quantity

import (
	"strings"
	"testing"
)

// longCells are cells of 1,000 bytes, the most that a cell but a note may have, made to
// keep a reader of numbers and sizes busy.
var longCells = map[string]string{
	"sizes": "600x600", "brackets": "(", "brackets with figures": "(1) [2] ", "spaces": " ", "figures": "1", "thousands": "1 234 ",
	"points": "1.234.", "fractions": "1 1/2 ", "feet": `2'-6" `, "inches": `"`, "diameters": "Ø315 ", "strokes": "600/", "ovals": "1 oval ",
	"squares": "3 sq ", "by": "6 by 4 ", "to": "6 to 4 ", "exponents": "1e5", "signs": "-+", "widths": "W600 ", "units": "mm ", "half": "½", "raised": "600x⁴",
	"words": "in lieu of ", "unseen": "6\u200b",
}

// A cell that is far too long for a number or a size is refused without being tried
// by every form there is: 20,000 of them are a schedule.
func BenchmarkLongCells(b *testing.B) {
	c := asColumn(b, "diameter_mm")
	for name, part := range longCells {
		cell := strings.Repeat(part, 1000/len(part))
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				c.Number(cell)
				c.Sizes(cell)
				Combined(cell)
				SaysUnit(cell)
			}
		})
	}
}

func TestLongCells(t *testing.T) {
	c := asColumn(t, "diameter_mm")
	for name, part := range longCells {
		cell := strings.Repeat(part, 1000/len(part))
		if v, trouble := c.Number(cell); trouble == "" {
			t.Errorf("%s: %v as a number", name, v)
		}
		if found, trouble := c.Sizes(cell); trouble == "" {
			t.Errorf("%s: %v as a size", name, found)
		}
		if Combined(cell) {
			t.Errorf("%s: may be a size", name)
		}
		n := testing.AllocsPerRun(10, func() {
			c.Number(cell)
			c.Sizes(cell)
			Combined(cell)
			SaysUnit(cell)
		})
		if n > 4 {
			t.Errorf("%s: %v pieces of memory for one cell", name, n)
		}
	}
}

// What can't be seen is taken out, and figures as wide as a character of Chinese are
// figures; other signs that look like something else are named.
func TestUnseen(t *testing.T) {
	c := asColumn(t, "width_mm")
	for cell, want := range map[string]float64{"6\u200b00": .6, "\ufeff600": .6, "600\u2060": .6, "６００": .6, "1．5": .0015} {
		if v, trouble := c.Number(cell); v != want || trouble != "" {
			t.Errorf("%q: %v %s", cell, v, trouble)
		}
	}
	for _, cell := range []string{"300x\u200b200", "300x 2\u200b00", "３００ｘ２００", "\ufeff300 × 200"} {
		found, trouble := c.Sizes(cell)
		if describe(found) != "300x200" || trouble != "" || !Combined(cell) {
			t.Errorf("%q: %v %s", cell, found, trouble)
		}
	}
	for cell, want := range map[string]string{"6\u200e00": "U+200E, which can't be seen", "6\u00ad00": "U+00AD", "٦٠٠": "U+0666, which isn't one of 0 to 9", "6OO": "isn't a number"} {
		if _, trouble := c.Number(cell); !strings.Contains(trouble, want) {
			t.Errorf("%q: %s", cell, trouble)
		}
		if _, trouble := c.Sizes("300x" + cell); !strings.Contains(trouble, want) {
			t.Errorf("a size with %q: %s", cell, trouble)
		}
	}
}
