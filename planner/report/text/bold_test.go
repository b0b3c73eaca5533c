package text

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"blankoff/planner/report/internal/testview"
)

// TestBold: headings and flags of a plan are bold, nothing else, whatever the
// portions in which the text comes; without the marks it is the same text.
func TestBold(t *testing.T) {
	plain := planText(t, testview.Small())
	var whole, bits bytes.Buffer
	w, by1 := NewBold(&whole), NewBold(&bits)
	if _, err := w.Write([]byte(plain)); err != nil {
		t.Fatal(err)
	}
	for i := range len(plain) {
		if _, err := by1.Write([]byte{plain[i]}); err != nil {
			t.Fatal(err)
		}
	}
	for _, b := range []*Bold{w, by1} {
		if err := b.Close(); err != nil {
			t.Fatal(err)
		}
	}
	if whole.String() != bits.String() {
		t.Error("portions of the text matter")
	}
	if got := regexp.MustCompile("\x1b\\[[01]m").ReplaceAllString(whole.String(), ""); got != plain {
		t.Errorf("the text itself changed\n%s", got)
	}
	var bold []string
	for _, m := range regexp.MustCompile("\x1b\\[1m(.*?)\x1b\\[0m").FindAllStringSubmatch(whole.String(), -1) {
		bold = append(bold, m[1])
	}
	if !strings.HasPrefix(bold[0], "3 tests") {
		t.Errorf("first in bold: %q", bold[0])
	}
	for _, want := range []string{"Sections", "UNDER RANGE", "OVER RANGE", "Notes", "Take care"} {
		found := false
		for _, x := range bold {
			found = found || x == want || strings.HasPrefix(x, want+" (")
		}
		if !found {
			t.Errorf("%q isn't bold; %q are", want, bold)
		}
	}
	for _, x := range bold {
		if strings.Contains(x, "  ") {
			t.Errorf("%q is bold", x)
		}
	}
}
