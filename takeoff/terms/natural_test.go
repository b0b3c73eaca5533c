package terms_test

import (
	"testing"

	"blankoff/takeoff/terms"
)

func TestNaturalLess(t *testing.T) {
	want := []string{"", "A", "D2", "D10", "D10a", "D010b", "d1"}
	for i := range want {
		for j := range want {
			if got := terms.NaturalLess(want[i], want[j]); got != (i < j) {
				t.Errorf("NaturalLess(%q, %q) = %v", want[i], want[j], got)
			}
		}
	}
}
