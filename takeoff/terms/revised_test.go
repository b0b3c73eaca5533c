package terms

import "testing"

// A revision stands at the end of a tag, behind a space or a sign; names that end alike have
// none.
func TestRevisedTag(t *testing.T) {
	for tag, base := range map[string]string{
		"D2 rev B": "D2", "D2 (Rev.1)": "D2", "D2-REV-B": "D2", "D2_rev3": "D2", "2 ind A": "2", "2 Index b": "2", "S1/03 version 2": "S1/03",
		"rev B": "", "REV-1": "", "D2": "", "Reventon 2": "", "D2 inv 3": "", "Driver 2": "", "D2 rev B14": "",
	} {
		if got, ok := RevisedTag(tag); got != base || ok != (base != "") {
			t.Errorf("%s: %q, %v; want %q", tag, got, ok, base)
		}
	}
}
