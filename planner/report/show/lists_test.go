package show

import (
	"testing"

	"blankoff/planner/report"
)

func TestNames(t *testing.T) {
	for _, tt := range []struct {
		names []string
		room  int
		want  string
	}{
		{nil, 20, ""},
		{[]string{"Ground"}, 2, "Ground"},
		{[]string{"Ground", "First", "Second"}, 24, "Ground, First, Second"},
		{[]string{"Ground", "First", "Second", "Third"}, 18, "Ground, First (+2)"},
		{[]string{"Ground", "First", "Second", "Third"}, 24, "Ground, First (+2)"},
		{[]string{"Ground", "First", "Second", "Third"}, 5, "Ground (+3)"},
		{[]string{"L1", "L2", "L3", "L4"}, 0, "L1, L2, L3 (+1)"},
	} {
		if got := Names(tt.names, ", ", 3, tt.room); got != tt.want {
			t.Errorf("%q in %d: %q, want %q", tt.names, tt.room, got, tt.want)
		}
	}
}

func TestRowsShort(t *testing.T) {
	rows := []int{2, 5, 6, 7, 8, 9, 12, 13, 20, 22, 23, 24}
	for most, want := range map[int]string{
		9: RowsText(rows), 5: "rows 2, 5 to 9, 12, 13, 20 and 22 to 24", 4: "rows 2, 5 to 9, 12, 13, 20 and 3 more", 1: "rows 2 and 11 more",
	} {
		if got := RowsShort(rows, most); got != want {
			t.Errorf("at most %d: %q, want %q", most, got, want)
		}
	}
	if got := RowsShort([]int{7}, 3); got != "row 7" {
		t.Errorf("got %q", got)
	}
}

func TestGroupings(t *testing.T) {
	loose, sure := report.Section{Grouping: true, UnderRange: true}, report.Section{Blanks: make([]report.Blank, 3)}
	for want, sections := range map[string][]report.Section{"": {sure, sure}, "a GROUPING": {loose}, "part is a GROUPING": {loose, sure}} {
		if got := Groupings(&report.Plan{Sections: sections}); got != want {
			t.Errorf("%d sections: %q, want %q", len(sections), got, want)
		}
	}
	if Groupings(&report.Plan{}) != "" {
		t.Error("an empty plan is a grouping")
	}
	if Flag(&loose) != "UNDER RANGE, grouping" || Flag(&sure) != "" || Blanks(&loose) != "?" || Blanks(&sure) != "3" {
		t.Errorf("%q %q %q %q", Flag(&loose), Flag(&sure), Blanks(&loose), Blanks(&sure))
	}
	loose.Blanks = sure.Blanks
	if Blanks(&loose) != "3+?" {
		t.Errorf("%q", Blanks(&loose))
	}
}

func TestDifference(t *testing.T) {
	for m2, want := range map[float64]float64{0: 0, -1.1e-13: 0, 1e-9: 0, 1.23456789: 1.23457, -0.0012345678: -0.00123457} {
		if got := Difference(m2); got != want {
			t.Errorf("%v became %v, want %v", m2, got, want)
		}
	}
}

func TestItemState(t *testing.T) {
	for want, it := range map[string]report.Item{"used": {Scope: "through"}, "excluded": {Scope: "out"}} {
		if got := ItemState(&it, false); got != want {
			t.Errorf("scope %s is %s, want %s", it.Scope, got, want)
		}
	}
	if ItemState(&report.Item{Scope: "out"}, true) != "refused" {
		t.Error("a refused row out of scope isn't refused")
	}
}
