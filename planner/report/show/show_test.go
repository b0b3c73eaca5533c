package show

import (
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"blankoff/planner/report"
	"blankoff/planner/report/internal/testview"
	"blankoff/takeoff"
)

func TestLimit(t *testing.T) {
	tests := []struct {
		q    float64
		want string
	}{
		{123.99, "123.9"}, {100, "100.0"}, {99.999999, "99.99"}, {12.3, "12.30"}, {12.299999999999999, "12.29"}, {1, "1.00"},
		{0.99999, "0.999"}, {0.1, "0.100"}, {0.09999, "0.0999"}, {0.00001, "0.0000"}, {0, "0.0000"},
		{math.Nextafter(21.28, 0), "21.27"}, {1e21, "1000000000000000000000.0"}, {math.Inf(1), "+Inf"},
	}
	for _, tt := range tests {
		if got := Limit(tt.q); got != tt.want {
			t.Errorf("Limit(%v) = %s, want %s", tt.q, got, tt.want)
		}
	}
	if LimitValue(12.299999999999999) != 12.29 || LimitValue(344.899) != 344.8 {
		t.Error("LimitValue isn't the number that is shown")
	}
}

// TestLimitIsNeverMore compares what is shown with the exact value of the
// number, and demands that it is less than one unit of the last place below it.
func TestLimitIsNeverMore(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 20000 {
		q := math.Exp(r.Float64()*20 - 10)
		if r.IntN(2) == 0 { // near a decimal, where rounding is tempting
			q = math.Nextafter(math.Round(q*1000)/1000, math.Inf(r.IntN(3)-1))
		}
		q = math.Abs(q)
		s := Limit(q)
		shown, ok := new(big.Rat).SetString(s)
		if !ok {
			t.Fatalf("Limit(%v) = %q is no number", q, s)
		}
		exact, _ := new(big.Rat).SetString(strconv.FormatFloat(q, 'f', -1, 64))
		unit := new(big.Rat).SetFrac64(1, int64(math.Pow10(LimitDecimals(q))))
		gap := new(big.Rat).Sub(exact, shown)
		if gap.Sign() < 0 || gap.Cmp(unit) >= 0 {
			t.Fatalf("Limit(%v) = %s", q, s)
		}
		if v := LimitValue(q); v > q {
			t.Fatalf("LimitValue(%v) = %v is more", q, v)
		}
	}
}

func TestRowsText(t *testing.T) {
	tests := []struct {
		rows []int
		want string
	}{
		{nil, ""},
		{[]int{7}, "row 7"},
		{[]int{7, 7}, "row 7"},
		{[]int{7, 8}, "rows 7 and 8"},
		{[]int{12, 13, 14, 15, 40, 41, 55}, "rows 12 to 15, 40, 41 and 55"},
		{[]int{12, 13, 14}, "rows 12 to 14"},
		{[]int{9, 3}, "rows 9 and 3"},
	}
	for _, tt := range tests {
		if got := RowsText(tt.rows); got != tt.want {
			t.Errorf("RowsText(%v) = %q, want %q", tt.rows, got, tt.want)
		}
	}
}

func TestGather(t *testing.T) {
	got := Gather(testview.Faults())
	if len(got) != 4 {
		t.Fatalf("%d kinds of fault, want 4", len(got))
	}
	for i, want := range []struct{ place, text string }{
		{"north & south.csv, rows 12 to 15 and 40, width_mm: '6OO'", "'6OO' isn't a number; expected a length in mm"},
		{"north & south.csv, row 41, length_mm: empty", "a straight needs a length; expected more than 0 mm"},
		{"north & south.csv, row 41", "the row has a quote that doesn't end"},
		{"north & south.csv, sheet Extract", "no heading row was found; expected a heading row"},
	} {
		if p := got[i].Place(); p != want.place {
			t.Errorf("place %q, want %q", p, want.place)
		}
		if text := got[i].Text(); text != want.text && i != 3 {
			t.Errorf("text %q, want %q", text, want.text)
		}
	}
	// Values as typed differ: told apart.
	at := takeoff.Place{File: "a.csv", Row: 2}
	if n := len(Gather([]takeoff.Fault{at.Fault("w", "1", "x", "y"), at.Fault("w", "2", "x", "y")})); n != 2 {
		t.Errorf("two values make %d faults", n)
	}
}

func TestSpan(t *testing.T) {
	for _, tt := range []struct {
		p    report.Piece
		want string
	}{
		{report.Piece{Tag: "D4", From: 1, To: 8, Of: 8}, "D4"},
		{report.Piece{Tag: "D4", From: 2, To: 5, Of: 8}, "D4 pieces 2 to 5 of 8"},
		{report.Piece{Tag: "D4", From: 8, To: 8, Of: 8}, "D4 piece 8 of 8"},
		{report.Piece{Tag: "D4"}, "D4"},
	} {
		if got := Span(&tt.p); got != tt.want {
			t.Errorf("got %q, want %q", got, tt.want)
		}
	}
}

func TestBySize(t *testing.T) {
	v := testview.Small()
	sizes := Sizes(v)
	var got []string
	for _, s := range sizes {
		got = append(got, strings.Join([]string{s.Text, strconv.Itoa(s.Fits()), strconv.Itoa(s.Cuts), strconv.Itoa(s.OpenEnds), strconv.Itoa(s.Scope), strconv.Itoa(s.Makes)}, "|"))
	}
	want := []string{"1000 x 600|1|0|1|0|0", "dia 400|2|1|1|0|0", "size not known|1|0|0|1|1"}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	all := AllSizes(sizes)
	if all.Fits() != 4 || all.Makes != 1 || all.MostForce != 240 || math.Abs(all.Minutes-52.425) > 1e-12 {
		t.Errorf("all: %+v", all)
	}
	if v.Blanking = nil; Sizes(v)[2].Makes != 0 {
		t.Error("makes of a plan without an order")
	}
}

func TestLargest(t *testing.T) {
	if _, ok := Largest(nil); ok {
		t.Error("a largest blank of none")
	}
	if b, ok := Largest([]report.Blank{{Force: 0}, {Force: 3, At: "x"}, {Force: 3, At: "y"}}); !ok || b.At != "x" {
		t.Errorf("got %+v", b)
	}
}

func TestSafe(t *testing.T) {
	for in, want := range map[string]string{
		"plain": "plain", "a\x1b[2Jb": "a?[2Jb", "a\u202eb": "a?b", "\xff": "?", "a\nb": "a\nb", "Übergang 長い": "Übergang 長い", "a\x00": "a?", "\x7f": "?",
	} {
		if got := Safe(in); got != want {
			t.Errorf("%q became %q, want %q", in, got, want)
		}
	}
}

// The share beside the bad sections is theirs: one of 7 is 14 %, though 10 % of 7 were
// supposed.
func TestChanceTellsTheShareItCounts(t *testing.T) {
	for _, tt := range []struct {
		bad, of int
		want    string
	}{{1, 7, "29 % to find a bad section if 1 of 7 is bad (14 %)"}, {2, 7, "29 % to find a bad section if 2 of 7 are bad (29 %)"}, {1, 1, "29 % to find a bad section if 1 of 1 is bad (100 %)"}} {
		if got := chance(&report.Detection{BadPercent: 10, Bad: tt.bad, Chance: 0.2857}, tt.of); got != tt.want {
			t.Errorf("%q, want %q", got, tt.want)
		}
	}
}
