package celltext

import "testing"

// What a cell is by itself.
func TestCells(t *testing.T) {
	for cell, want := range map[string]string{"": "", " a ": "a", "\u00a0a\u00a0": "a", "a b": "a b"} {
		if got := Trim(cell); got != want {
			t.Errorf("%q: %q, want %q", cell, got, want)
		}
	}
	for cell, want := range map[string]string{`="007"`: "007", "'=600": "=600", "'007": "'007", `="a"b"`: `="a"b"`, "600": "600"} {
		if got := Unwrap(cell); got != want {
			t.Errorf("%q: %q, want %q", cell, got, want)
		}
	}
	for cell, want := range map[string]int{"4": 4, "4.00": 4, "4 no": 4, "4x": 4, "4.": -1, "1000": -1, "four": -1, "4 mm": -1, "": -1} {
		n, ok := Count(cell)
		if !ok {
			n = -1
		}
		if n != want {
			t.Errorf("%q: %d, want %d", cell, n, want)
		}
	}
	if got := Shorten("a\tb\x1b[2J"); got != `a b\x1b[2J` {
		t.Errorf("%q", got)
	}
}

// What a row of cells is.
func TestRows(t *testing.T) {
	for _, tt := range []struct {
		cells                 []string
		lone, ruler, labelled bool
	}{
		{[]string{"", "Level 2", ""}, true, false, false},
		{[]string{"", "2", ""}, false, false, false},
		{[]string{"-----", "", "-----"}, false, true, false},
		{[]string{"System:", "AHU 4", "Class:", "B"}, false, false, true},
		{[]string{"Tag", "Kind"}, false, false, false},
	} {
		filled := Filled(tt.cells)
		if lone, ruler, labelled := IsLone(tt.cells, filled), IsRuler(tt.cells, filled), Labels(tt.cells); lone != tt.lone || ruler != tt.ruler || labelled != tt.labelled {
			t.Errorf("%q: lone %v, ruler %v, labels %v", tt.cells, lone, ruler, labelled)
		}
	}
	if !PartedAt([]string{"1", "5"}, 0) || PartedAt([]string{"1", "500"}, 0) || PartedAt([]string{"1"}, 0) {
		t.Error("a number in two cells")
	}
	if !NumbersRows([]string{"1", "2", "5"}) || NumbersRows([]string{"1", "1", "2"}) || !NamesPieces([]string{"101", "103"}) || NamesPieces([]string{"101", "101"}) {
		t.Error("figures that number")
	}
}
