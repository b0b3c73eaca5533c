package units

import (
	"testing"
)

func TestCount(t *testing.T) {
	for _, tt := range []struct {
		n    int
		word string
		want string
	}{
		{0, "test", "0 tests"}, {1, "test", "1 test"}, {2, "test", "2 tests"}, {-1, "day", "-1 day"}, {-3, "day", "-3 days"}, {1, "mismatch", "1 mismatch"}, {3, "mismatch", "3 mismatches"},
		{2, "crew day", "2 crew days"}, {2, "branch", "2 branches"}, {4, "class", "4 classes"}, {2, "assembly", "2 assemblies"}, {2, "y", "2 ys"},
	} {
		if got := Count(tt.n, tt.word); got != tt.want {
			t.Errorf("%d %s: %q, want %q", tt.n, tt.word, got, tt.want)
		}
	}
}
