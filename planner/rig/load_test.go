package rig

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"blankoff/planner/tightness"
)

const trolley = `
name = "trolley"

[[range]]
name = "low"
min_l_s = 0.8
max_l_s = 14
accuracy_percent = 5
accuracy_l_s = 0.1
own_leak_l_s = 0.05
fan = [{pressure_pa = 200, flow_l_s = 16}, {pressure_pa = 2500, flow_l_s = 9.5}]

[[range]]
name = "high"
min_l_s = 12
max_l_s = 180
accuracy_percent = 4
own_leak_l_s = 0.3
[[range.fan]]
pressure_pa = 200
flow_l_s = 190
[[range.fan]]
pressure_pa = 2000
flow_l_s = 60
[range.hose]
length_m = 5
diameter_mm = 100
`

func TestLoad(t *testing.T) {
	r, notes, err := Load(strings.NewReader(trolley), "trolley.toml")
	if err != nil {
		t.Fatal(err)
	}
	if r.Name != "trolley" || len(r.Ranges) != 2 || !r.FanChecked() {
		t.Fatalf("got %+v", r)
	}
	low, high := r.Ranges[0], r.Ranges[1]
	if low.Name != "low" || low.MinLS != 0.8 || low.MaxLS != 14 || low.AccuracyPercent != 5 || low.AccuracyLS != 0.1 || low.OwnLeakLS != 0.05 ||
		!slices.Equal(low.Fan, []FanPoint{{200, 16}, {2500, 9.5}}) || low.Hose != nil {
		t.Errorf("low: %+v", low)
	}
	if !slices.Equal(high.Fan, []FanPoint{{200, 190}, {2000, 60}}) || high.Hose == nil || *high.Hose != (Hose{LengthM: 5, DiameterM: 0.1, Friction: 0.03}) {
		t.Errorf("high: %+v, hose %+v", high, high.Hose)
	}
	if len(notes) != 1 || notes[0].Range != "high" || notes[0].Key != "hose" || !strings.Contains(notes[0].Text, "assumption, no source") {
		t.Errorf("notes: %+v", notes)
	}
}

// What is left out is never taken silently.
func TestLoadNotesWhatItAssumes(t *testing.T) {
	text := "[[range]]\nmin_l_s = 0\nmax_l_s = 21\n[range.hose]\nlength_m = 3\ndiameter_mm = 80\nfriction = 0.04\n"
	r, notes, err := Load(strings.NewReader(text), `site\van rig.toml`)
	if err != nil {
		t.Fatal(err)
	}
	if r.Name != "van rig" || r.Ranges[0].Name != "range 1" || r.FanChecked() {
		t.Errorf("got %+v", r)
	}
	var got []string
	for _, n := range notes {
		got = append(got, n.Range+"/"+n.Key+": "+n.Text)
	}
	for i, want := range []string{
		`/name: the rig has no name: called "van rig"`, "range 1/name: ", "range 1/accuracy_percent: no accuracy stated",
		"range 1/own_leak_l_s: ", "range 1/min_l_s: ", "range 1/fan: fan not checked", "range 1/hose: the hose isn't used",
	} {
		if i >= len(got) || !strings.HasPrefix(got[i], want) {
			t.Fatalf("notes %q: want %q in place %d", got, want, i)
		}
	}
	if len(got) != 7 {
		t.Errorf("got %d notes: %q", len(got), got)
	}
}

const slipRig = `
nmae = "slip"
[[range]]
name = "low"
min_ls = 0.8
max_l_s = "14"
accuracy_percent = -5
[[range]]
name = "low"
min_l_s = 180
max_l_s = 12
[[range]]
name = "thin"
min_l_s = 12
max_l_s = 14
accuracy_l_s = 1.1
[[range]]
name = "wild"
min_l_s = nan
max_l_s = inf
own_leak_l_s = 1e9
[[range.fan]]
pressure_pa = 800
flow_l_s = 50
[[range.fan]]
pressure_pa = 400
flow_l_s = 60
[[range.fan]]
pressure = 900
flow_l_s = true
[range.hose]
length_m = -1
friction = 0
bore = 3
`

func TestLoadFindsEveryFault(t *testing.T) {
	r, notes, err := Load(strings.NewReader(slipRig), "slip.toml")
	var faults tightness.Faults
	if r != nil || notes != nil || !errors.As(err, &faults) {
		t.Fatalf("got %v, %v, %v, want faults only", r, notes, err)
	}
	for _, want := range []string{
		`slip.toml: nmae = "slip": unknown key, expected one of name, range`,
		`slip.toml: range "low": min_ls = 0.8: unknown key, expected one of name, min_l_s`,
		`slip.toml: range "low": min_l_s: missing, expected a flow in L/s`,
		`slip.toml: range "low": max_l_s = "14": expected a flow in L/s`,
		`slip.toml: range "low": accuracy_percent = -5: expected a percentage`,
		`slip.toml: range "low": name = "low": expected a name that no other range has`,
		`slip.toml: range "low": max_l_s = 12: expected a flow in L/s, more than min_l_s = 180`,
		`slip.toml: range "thin": max_l_s = 14: nothing is left of the range once it is guarded: it would read from 13.1`,
		`slip.toml: range "wild": min_l_s = NaN: expected a flow`,
		`slip.toml: range "wild": max_l_s = +Inf: expected a flow`,
		`slip.toml: range "wild": own_leak_l_s = 1e+09: expected a flow`,
		`slip.toml: range "wild", fan point 2: pressure_pa = 400: expected more than 800 Pa`,
		`slip.toml: range "wild", fan point 2: flow_l_s = 60: expected at most 50 L/s`,
		`slip.toml: range "wild", fan point 3: pressure = 900: unknown key`,
		`slip.toml: range "wild", fan point 3: pressure_pa: missing`,
		`slip.toml: range "wild", fan point 3: flow_l_s = true: expected a flow`,
		`slip.toml: range "wild", hose: length_m = -1: expected a length`,
		`slip.toml: range "wild", hose: diameter_mm: missing`,
		`slip.toml: range "wild", hose: friction = 0: expected a Darcy`,
		`slip.toml: range "wild", hose: bore = 3: unknown key`,
	} {
		n := 0
		for _, f := range faults {
			if strings.HasPrefix(f.Error(), want) {
				n++
			}
		}
		if n != 1 {
			t.Errorf("named %d times: %s", n, want)
		}
	}
	if len(faults) != 20 {
		t.Errorf("%d faults, want 20", len(faults))
	}
	if t.Failed() {
		t.Log("\n" + err.Error())
	}
}

func TestLoadRefusals(t *testing.T) {
	tests := []struct{ what, text, says string }{
		{"empty", "", "range: missing, expected at least one [[range]]"},
		{"no ranges", "range = []", "at least one [[range]]"},
		{"a range as a single table", "[range]\nmin_l_s = 1\n", "a list of tables [[range]]"},
		{"not TOML", "name = \"a\"\nrange = ]\n", "line 2"},
		{"a key twice", "name = \"a\"\nname = \"b\"\n", "line 2"},
		{"fan no list", "[[range]]\nname = \"low\"\nmin_l_s = 0.8\nmax_l_s = 14\nfan = 3\n", `range "low": fan = 3: expected a list of tables [[range.fan]]`},
		{"fan empty", "[[range]]\nname = \"low\"\nmin_l_s = 0.8\nmax_l_s = 14\nfan = []\n", `range "low": fan`},
		{"hose no table", "[[range]]\nname = \"low\"\nmin_l_s = 0.8\nmax_l_s = 14\nhose = 3\n", "a table [range.hose]"},
		{"wrong case of a key", "[[range]]\nname = \"low\"\nMIN_L_S = 0.8\nmax_l_s = 14\n", "MIN_L_S = 0.8: unknown key"},
		{"minimum and maximum the same", "[[range]]\nname = \"low\"\nmin_l_s = 14\nmax_l_s = 14\n", "more than min_l_s = 14"},
		{"two points at one pressure", "[[range]]\nname = \"low\"\nmin_l_s = 0.8\nmax_l_s = 14\nfan = [{pressure_pa = 300, flow_l_s = 9}, {pressure_pa = 300, flow_l_s = 8}]\n", "more than 300 Pa"},
		{"unknown keys in order of name", "zeta = 1\nbeta = 1\nmu = 1\nalpha = 1\n", "x.toml: alpha = 1: unknown key, expected one of name, range\nx.toml: beta = 1: unknown key, expected one of name, range\nx.toml: mu"},
		{"blank name", "[[range]]\nname = \" \"\nmin_l_s = 0.8\nmax_l_s = 14\n", "a text in quotes"},
	}
	for _, tt := range tests {
		r, _, err := Load(strings.NewReader(tt.text), "x.toml")
		if r != nil || err == nil || !strings.Contains(err.Error(), tt.says) || !strings.HasPrefix(err.Error(), "x.toml: ") {
			t.Errorf("%s: got %v, %v; want an error that says %s", tt.what, r, err, tt.says)
		}
	}
}

// Either an error, or a rig with a name for every range whose windows are
// finite, ascending and apart at every pressure; never both. And a rig with a
// window has a range to set for the limits at its ends.
func FuzzLoad(f *testing.F) {
	f.Add(trolley, 400.0, 1.5)
	f.Add("[[range]]\nmin_l_s=12\nmax_l_s=180\n", 1000.0, 1.0)
	f.Add("range=[{name=\"a\",min_l_s=1,max_l_s=9},{name=\"b\",min_l_s=20,max_l_s=90,accuracy_l_s=2}]", 250.0, 3.0)
	f.Fuzz(func(t *testing.T, text string, pa, headroom float64) {
		r, _, err := Load(strings.NewReader(text), "fuzz.toml")
		if (r != nil) == (err != nil) {
			t.Fatalf("rig %v and error %v", r, err)
		}
		if err != nil {
			return
		}
		windows := r.FlowWindows(pa, headroom)
		last := math.Inf(-1)
		for _, w := range windows {
			if !(w.Low >= 0) || !(w.Low <= w.High) || math.IsInf(w.High, 0) || !(w.Low > last) {
				t.Fatalf("%+v at %g Pa, headroom %g: windows %+v", r, pa, headroom, windows)
			}
			last = w.High
			if name, ok := r.RangeFor(w.Low, pa, headroom); !ok || name == "" {
				t.Fatalf("%+v at %g Pa: no range for %g L/s of %+v", r, pa, w.Low, windows)
			}
			if v := r.Judge(w.High, pa, headroom); v.State != In || v.Range == "" {
				t.Fatalf("%+v at %g Pa: %+v for %g L/s of %+v", r, pa, v, w.High, windows)
			}
		}
		for _, one := range r.Ranges {
			if low, high := one.guarded(); one.Name == "" || !(low < high) {
				t.Fatalf("a range without a name or of which nothing is left: %+v", one)
			}
		}
	})
}
