package rig

import (
	"fmt"
	"testing"
)

// TestLower: a reading below what the range to set reads needs a lower range.
func TestLower(t *testing.T) {
	r := &Rig{Ranges: []Range{{Name: "high", MinLS: 12, MaxLS: 180, AccuracyLS: 0.5}, {Name: "low", MinLS: 0.8, MaxLS: 14}, {Name: "fine", MinLS: 0.1, MaxLS: 1}}}
	for name, want := range map[string]string{"high": "12.5 low true", "low": "0.8 fine true", "fine": "0.1  false", "": "0  false"} {
		from, to, ok := r.Lower(name, 400)
		if got := fmt.Sprintf("%g %s %v", from, to, ok); got != want {
			t.Errorf("below range %s: %s, want %s", name, got, want)
		}
	}
}
