package text

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"blankoff/planner/report"
	"blankoff/planner/report/internal/testview"
	"blankoff/takeoff"
)

func takeoffText(t *testing.T, v *report.Takeoff) string {
	t.Helper()
	var b bytes.Buffer
	if err := Takeoff(&b, v); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func planText(t *testing.T, v *report.Plan) string {
	t.Helper()
	var b bytes.Buffer
	if err := Plan(&b, v); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func wants(t *testing.T, text string, wanted ...string) {
	t.Helper()
	for _, w := range wanted {
		if !strings.Contains(text, w) {
			t.Errorf("no %q in\n%s", w, text)
		}
	}
}

// TestLikeNotesOnItems: a note on many rows is told once; rows of two sheets are
// told apart.
func TestLikeNotesOnItems(t *testing.T) {
	v := testview.SmallTakeoff()
	v.Items = nil
	add := func(sheet string, row int, notes ...string) {
		v.Items = append(v.Items, report.Item{Tag: fmt.Sprintf("D%d", row), Sheet: sheet, Row: row, Scope: "in", Notes: notes})
	}
	for _, row := range []int{2, 5, 6, 7, 8, 9} {
		add("", row, "no joint given")
	}
	add("Extract", 2, "no joint given", "only here")
	for k := range 40 {
		add("Long", 10+2*k, "every second row")
	}
	text := takeoffText(t, v)
	wants(t, text, "  - rows 2 and 5 to 9: no joint given\n", "  - sheet Extract, row 2, D2: no joint given\n", "  - sheet Extract, row 2, D2: only here\n", "32 and 28 more: every second row\n")
	if n := strings.Count(text, "no joint given"); n != 2 {
		t.Errorf("told %d times, want 2", n)
	}
}

// TestRefusedIsTold in the headline and in the total.
func TestRefusedIsTold(t *testing.T) {
	v := testview.SmallTakeoff()
	v.Schedule = takeoff.Schedule{RowsRead: 9, RowsUsed: 2, RowsRefused: 7}
	v.Totals.Refused = 5.325
	wants(t, takeoffText(t, v), "28.75 m2 in scope, 19.2 m of joints, 7 of 9 rows REFUSED\n", "known area of refused rows, counted nowhere\n")
	v.Schedule.RowsRefused, v.Totals.Refused = 0, 0
	if text := takeoffText(t, v); strings.Contains(strings.ToLower(text), "refused r") {
		t.Errorf("nothing is refused:\n%s", text)
	}
}

// TestStatedAddsUp: 28.5 and 10 stated, 28.75 and 12 worked out.
func TestStatedAddsUp(t *testing.T) {
	v := testview.SmallTakeoff()
	ten := 10.0
	v.Items = []report.Item{v.Items[0], {Tag: "D2", Row: 9, Area: 12, Stated: &ten}}
	var last string
	for line := range strings.Lines(takeoffText(t, v)) {
		if strings.HasPrefix(line, "  all stated") {
			last = strings.Join(strings.Fields(line), " ")
		}
	}
	if last != "all stated 38.50 40.75 -2.25 -5.5" {
		t.Errorf("got %q", last)
	}
}

// TestAllGrouping: what isn't known isn't shown as nought.
func TestAllGrouping(t *testing.T) {
	v := testview.Small()
	v.Sections = v.Sections[:1]
	s := &v.Sections[0]
	s.Blanks, s.UnderRange, v.Proof.EndMinutes = nil, true, 0
	wants(t, planText(t, v), "a GROUPING, 3 of 12 rows REFUSED", "capping ends not known for groupings\n", " ?  UNDER RANGE, grouping\n")
}

// TestMismatches are told by that word.
func TestMismatches(t *testing.T) {
	v := testview.Small()
	v.Mismatches = []string{"between D1 and D2, 300 x 200 meets 300 x 250; check the schedule"}
	wants(t, planText(t, v), "1 mismatch,", "\nMismatches: joints where the sizes differ\n  - between D1 and D2")
}

func TestFaultsHeading(t *testing.T) {
	at := takeoff.Place{File: "a.csv", Row: 2}
	for want, faults := range map[string][]takeoff.Fault{
		"1 fault:\n": {at.Fault("w", "1", "x", "y")}, "2 faults:\n": {at.Fault("w", "1", "x", "y"), at.Fault("w", "2", "x", "y")},
		"2 faults (like ones together):\n": {at.Fault("w", "1", "x", "y"), {File: "a.csv", Row: 9, Heading: "w", Value: "1", Expected: "x", Message: "y"}},
	} {
		var b bytes.Buffer
		if err := Faults(&b, faults); err != nil || !strings.HasPrefix(b.String(), want) {
			t.Errorf("%q, %v; want %q", b.String(), err, want)
		}
	}
}

// TestWindowsInInches: scheme US has its pressures in in. w.g. beside, 1 of which
// is 249.08891 Pa (conventional water at 1000 kg/m3 and standard
// gravity: 25.4 mm x 9.80665).
func TestWindowsInInches(t *testing.T) {
	v := windows()
	v.Scheme = "US"
	v.Rows = nil
	for k, shape := range []string{"rectangular", "circular", "flat-oval", "circular"} {
		pa := 124.544455
		if k == 3 {
			pa = 2490.8891
		}
		v.Rows = append(v.Rows, report.WindowRow{Class: "6", PressurePa: pa, Shape: shape, LimitPerM2: 0.2, Areas: []report.AreaWindow{{Low: 1, High: 2}}, Permitted: k < 3, State: "not permitted: at most 3 in. w.g."})
	}
	var b bytes.Buffer
	if err := Windows(&b, v); err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(b.String()), " ")
	wants(t, text, "class Pa in. w.g. shape", "6 124.5 0.5 all 0.200 1.0 2.0 ", "6 2490.9 10 circular 0.200 - - not permitted: at most 3 in. w.g.")
}

// TestRigIsNotBlamed: sections that are out of range for their area alone aren't
// told as the rig's fault.
func TestRigIsNotBlamed(t *testing.T) {
	v := testview.Small()
	small, big := &v.Sections[1], &v.Sections[2]
	small.Range, small.Reason = "low", "area: less than the 12.5 m2 asked for at least"
	big.Reason = "260.0 m2 is more than the 200 m2 asked for at most"
	text := planText(t, v)
	wants(t, text, "\nUnder range: smaller than asked for\n  S02: ", "\nOver range: too big\n  S03: 260.00 m2, limit 344.8 L/s; 260.0 m2 is more than the 200 m2 asked for at most\n")
	if strings.Contains(text, "the rig can't") {
		t.Errorf("the rig is blamed:\n%s", text)
	}
}

// TestWrapEven holds the lines of an even text against those that any text is broken
// into, letter by letter.
func TestWrapEven(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for range 5000 {
		var words []string
		for range r.IntN(12) {
			words = append(words, strings.Repeat("x", 1+r.IntN(30)))
		}
		s, wide := strings.Join(words, " "), 1+r.IntN(40)
		if got, want := wrapEven(nil, s, wide), wrapAny(nil, s, wide); !slices.Equal(got, want) {
			t.Fatalf("%q in %d columns: %q, want %q", s, wide, got, want)
		}
	}
}
