package csvout

import (
	"bytes"
	"encoding/csv"
	"errors"
	"flag"
	"io"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"blankoff/planner/report"
	"blankoff/planner/report/internal/testview"
)

var update = flag.Bool("update", false, "write the golden files anew")

var outputs = map[string]func(io.Writer) error{
	"takeoff": func(w io.Writer) error { return Takeoff(w, testview.SmallTakeoff()) },
	"totals": func(w io.Writer) error {
		v := testview.SmallTakeoff()
		v.Items = nil
		return Takeoff(w, v)
	},
	"sections": func(w io.Writer) error { return Sections(w, testview.Small()) },
	"blanks":   func(w io.Writer) error { return Blanks(w, testview.Small()) },
	"balance":  func(w io.Writer) error { return Balance(w, testview.Small()) },
	"moves":    func(w io.Writer) error { return Moves(w, testview.Small()) },
}

func TestGolden(t *testing.T) {
	for name, write := range outputs {
		t.Run(name, func(t *testing.T) {
			var b bytes.Buffer
			if err := write(&b); err != nil {
				t.Fatal(err)
			}
			path := filepath.Join("testdata", name+".csv")
			if *update {
				if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(b.Bytes(), want) {
				t.Errorf("differs from %s; look at it and run go test -update if it is meant\n%s", path, b.String())
			}
		})
	}
}

// read takes a table in and gives its cells by heading.
func read(t *testing.T, write func(io.Writer) error) []map[string]string {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, r := range rows[1:] {
		m := map[string]string{}
		for i, h := range rows[0] {
			m[h] = r[i]
		}
		out = append(out, m)
	}
	return out
}

// TestNoFormulas: no cell but a number begins as a formula does.
func TestNoFormulas(t *testing.T) {
	for name, write := range outputs {
		for i, row := range read(t, write) {
			for heading, cell := range row {
				if _, err := strconv.ParseFloat(cell, 64); err == nil || cell == "" {
					continue
				}
				if strings.ContainsAny(cell[:1], "=+-@\t\r\n") {
					t.Errorf("%s, row %d, %s: %q", name, i+1, heading, cell)
				}
			}
		}
	}
	for text, want := range map[words]string{
		"=1+1": "'=1+1", "+1": "'+1", "-1": "'-1", "@a": "'@a", "\tx": "'\tx", "\rx": "'\rx", "\uff1d1": "'\uff1d1", "a=1": "a=1", "": "", "'": "'", "\xff": "?", "a\x1b[2J": "a?[2J", "a\nb": "a\nb",
	} {
		if got, _ := text.MarshalCSV(); got != want {
			t.Errorf("%q became %q, want %q", text, got, want)
		}
	}
}

func TestNumbers(t *testing.T) {
	for _, tt := range []struct {
		v    interface{ MarshalCSV() (string, error) }
		want string
	}{
		{number(1234.5678912), "1234.567891"}, {number(-1.1e-13), "0"}, {number(3), "3"}, {number(1e-7), "0"},
		{size(0), ""}, {size(314.999999), "314.999999"},
		{permitted(0.9999999), "0.999999"}, {permitted(2), "2"}, {permitted(12.299999999999999), "12.299999"}, {permitted(100), "100"},
	} {
		if got, err := tt.v.MarshalCSV(); got != tt.want || err != nil {
			t.Errorf("%v became %q, %v; want %q", tt.v, got, err, tt.want)
		}
	}
}

// TestBig: the areas and limits of what was written are those of the view, over
// the bounds of the portions too.
func TestBig(t *testing.T) {
	v := testview.Big(700)
	sections := read(t, func(w io.Writer) error { return Sections(w, v) })
	blanks := read(t, func(w io.Writer) error { return Blanks(w, v) })
	items := read(t, func(w io.Writer) error { return Takeoff(w, v.Takeoff) })
	if len(sections) != 700 || len(blanks) != 3500 || len(items) != 7000 {
		t.Fatalf("%d sections, %d blanks, %d items", len(sections), len(blanks), len(items))
	}
	for i, s := range sections {
		a, _ := strconv.ParseFloat(s["area_m2"], 64)
		q, _ := strconv.ParseFloat(s["limit_l_s"], 64)
		if w := v.Sections[i]; math.Abs(a-w.Area) > 5.1e-7 || q > w.Limit || q < w.Limit-1.1e-6 || s["section"] != w.ID {
			t.Fatalf("section %d: %v", i, s)
		}
		if (s["state"] == "under range") != v.Sections[i].UnderRange {
			t.Fatalf("section %d: state %s", i, s["state"])
		}
	}
	if b := blanks[3499]; b["section"] != "S700" || b["blank"] != "5" {
		t.Errorf("last blank: %v", b)
	}
}

func TestEmpty(t *testing.T) {
	for _, write := range []func(io.Writer) error{
		func(w io.Writer) error { return Sections(w, &report.Plan{}) },
		func(w io.Writer) error { return Blanks(w, &report.Plan{}) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil || !strings.HasPrefix(b.String(), "section,") || strings.Count(b.String(), "\n") != 1 {
			t.Errorf("%q, %v; want the headings alone", b.String(), err)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestWriteErrors(t *testing.T) {
	for name, write := range outputs {
		if err := write(full{}); err == nil {
			t.Errorf("%s: the disk was full and nobody was told", name)
		}
	}
}

// TestRefusedRows: the file alone tells which rows count and why others don't.
func TestRefusedRows(t *testing.T) {
	v := testview.SmallTakeoff()
	v.Refused = []report.Item{{Tag: "R1", Row: 9, Scope: "in", Quantity: 1, Area: 5, ExactArea: 5, Notes: []string{"length_mm: give length_mm", "kind: 'elbo' isn't a kind"}}}
	var got []string
	for _, r := range read(t, func(w io.Writer) error { return Takeoff(w, v) }) {
		got = append(got, r["state"])
		if r["state"] == "refused" && (r["tag"] != "R1" || r["area_m2"]+r["exact_area_m2"]+r["openings_m2"]+r["joint_length_m"] != "" || r["notes"] != "length_mm: give length_mm; kind: 'elbo' isn't a kind") {
			t.Errorf("%v", r)
		}
	}
	if s := strings.Join(got, " "); s != "used used excluded refused" {
		t.Errorf("states: %s", s)
	}
	v.Items = nil
	if rows := read(t, func(w io.Writer) error { return Takeoff(w, v) }); len(rows) != 1 || rows[0]["state"] != "refused" {
		t.Errorf("nothing but a refused row: %v", rows)
	}
}

// TestBlanksOfGroupings: the blanks of a grouping aren't nought, and a blank at a
// cut has its number.
func TestBlanksOfGroupings(t *testing.T) {
	v := testview.Small()
	v.Sections[0].Blanks[1].Cut = 1
	if b := read(t, func(w io.Writer) error { return Blanks(w, v) }); b[0]["cut"] != "" || b[1]["cut"] != "1" {
		t.Errorf("%v", b)
	}
	v.Sections[0].Blanks = nil
	if s := read(t, func(w io.Writer) error { return Sections(w, v) }); s[0]["blanks"] != "" || s[2]["blanks"] != "0" {
		t.Errorf("%v", s)
	}
}
