package text

import (
	"bytes"
	"strings"
	"testing"

	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

func table(t *testing.T, columns []Column, rows [][]string) string {
	t.Helper()
	var b bytes.Buffer
	err := Table(&b, columns, func(row func(...string)) {
		for _, r := range rows {
			row(r...)
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestTable(t *testing.T) {
	for name, tt := range map[string]struct {
		columns []Column
		rows    [][]string
		want    string
	}{
		"numbers stand at the right, text at the left": {
			[]Column{{Head: "tag"}, {Head: "m2", Align: Right}}, [][]string{{"D1", "3.00"}, {"D100", "12.50"}},
			"  tag      m2\n  D1     3.00\n  D100  12.50\n"},
		"point under point": {
			[]Column{{Head: "limit", Align: Point}, {Head: "x"}}, [][]string{{"123.4", "a"}, {"0.0499", "b"}, {"7", "c"}, {"", "d"}},
			"     limit  x\n  123.4     a\n    0.0499  b\n    7       c\n            d\n"},
		"an empty column is left out": {
			[]Column{{Head: "tag"}, {Head: "level"}, {Head: "m2", Align: Right}}, [][]string{{"D1", "", "3"}},
			"  tag  m2\n  D1    3\n"},
		"long text is wrapped, a long word broken": {
			[]Column{{Head: "at", Max: 8}, {Head: "N", Align: Right}}, [][]string{{"behind the shaft ABCDEFGHIJKL", "40"}},
			"  at         N\n  behind    40\n  the\n  shaft\n  ABCDEFGH\n  IJKL\n"},
		"wide letters take two columns, marks none": {
			[]Column{{Head: "tag"}, {Head: "N", Align: Right}}, [][]string{{"長い", "1"}, {"u\u0308ber", "22"}},
			"  tag    N\n  長い   1\n  u\u0308ber  22\n"},
		"no rows, no headings": {[]Column{{Head: "tag"}}, nil, ""},
	} {
		if got := table(t, tt.columns, tt.rows); got != tt.want {
			t.Errorf("%s:\n%s\nwant\n%s", name, got, tt.want)
		}
	}
}

// TestTableFitsTheLine: headings and the last column give way.
func TestTableFitsTheLine(t *testing.T) {
	columns := []Column{{Head: "a"}, {Head: "b", Max: 30}, {Head: "c"}}
	got := table(t, columns, [][]string{{strings.Repeat("x", 40), strings.Repeat("word ", 30), strings.Repeat("more ", 60)}})
	if n := strings.Count(got, "more"); n < 60 {
		// deepest lines of the last column; the rest is cut and says so
		if !strings.Contains(got, "...") {
			t.Errorf("text is lost and nothing says so:\n%s", got)
		}
	}
	for _, line := range strings.Split(got, "\n") {
		if len(line) > width {
			t.Errorf("%d columns: %s", len(line), line)
		}
	}
}

func TestWrap(t *testing.T) {
	for _, tt := range []struct {
		text string
		wide int
		most int
		want string
	}{
		{"one two three", 7, 0, "one two|three"},
		{"", 7, 0, ""},
		{"abcdefghij k", 4, 0, "abcd|efgh|ij k"},
		{"a abcdef", 4, 0, "a|abcd|ef"},
		{"one two three four", 5, 2, "one|tw..."},
		{"長長長", 1, 0, "長|長|長"},
	} {
		if got := strings.Join(wrap(tt.text, tt.wide, tt.most), "|"); got != tt.want {
			t.Errorf("wrap(%q, %d, %d) = %q, want %q", tt.text, tt.wide, tt.most, got, tt.want)
		}
	}
}

func FuzzWrapLosesNothing(f *testing.F) {
	f.Add("one two three", 5)
	f.Add("長い名前 u\u0308", 1)
	f.Fuzz(func(t *testing.T, s string, wide int) {
		if wide < 1 || wide > 200 {
			return
		}
		s = clean(s)
		lines := wrap(s, wide, 0)
		squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if squeeze(strings.Join(lines, "")) != squeeze(s) {
			t.Errorf("%q became %q", s, lines)
		}
		for _, line := range lines {
			if columnsOf(line) > max(wide, 2) {
				t.Errorf("%q is wider than %d", line, wide)
			}
		}
	})
}

func TestNumbers(t *testing.T) {
	for _, tt := range []struct{ got, want string }{
		{area(units.SI, -0.0001), "0.00"}, {area(units.SI, 12.345), "12.35"}, {area(units.SI, -12.3), "-12.30"}, {hours(0), "0 min"}, {hours(59.6), "1 h"},
		{hours(2770), "46 h 10 min"}, {pressure(units.SI, 500, "negative"), "-500"}, {pressure(units.SI, 498.178, "positive"), "498.178"},
		{show.Count(1, "test"), "1 test"}, {show.Count(0, "test"), "0 tests"}, {clean("a\tb\x1b[1m \u202ec  "), "a b?[1m ?c"},
	} {
		if tt.got != tt.want {
			t.Errorf("got %q, want %q", tt.got, tt.want)
		}
	}
}
