package schedule_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
)

// uglyFolder holds files as offices send them, ugly and hostile; every name in
// them is invented.
const uglyFolder = "../../testdata/schedules/ugly"

// ugly is one such file with what has to come out of it. Rows, areas and the
// places of faults are worked out by hand, not taken from the program.
type ugly struct {
	name                    string
	data                    []byte
	used, excluded, refused int
	area                    float64 // of the rows used and in scope, m2
	faults                  string  // row:heading of each, in order; a sheet before, as Supply!4:width
	notes                   []string
	fails                   string // what the error says of a file that can't be read at all
}

func csvFile(name, text string, used, excluded, refused int, area float64, faults string, notes ...string) ugly {
	return ugly{name: name, data: []byte(text), used: used, excluded: excluded, refused: refused, area: area, faults: faults, notes: notes}
}

// rect and round are the outside surfaces of straights, m2: girth times length.
func rect(a, b, l float64) float64 { return 2 * (a + b) * l }
func round(d, l float64) float64   { return math.Pi * d * l }

func takeoffOf(name string, data []byte, o schedule.Options) (*takeoff.Takeoff, schedule.Info, error) {
	t := takeoff.New(takeoff.Options{})
	info, err := o.ReadFrom(name, data, func(r *takeoff.Row) error { t.Add(r); return nil })
	if err == nil {
		t.Finish(info.Schedule, info.Faults, info.Notes)
	}
	return t, info, err
}

func faultPlaces(t *takeoff.Takeoff) string {
	var out []string
	for _, f := range t.Faults {
		p := fmt.Sprintf("%d:%s", f.Row, f.Heading)
		if f.Sheet != "" {
			p = f.Sheet + "!" + p
		}
		out = append(out, p)
	}
	return strings.Join(out, " ")
}

// account is what the golden file beside an ugly one says.
func account(t *takeoff.Takeoff, info *schedule.Info, err error) string {
	var b strings.Builder
	if err != nil {
		fmt.Fprintf(&b, "error: %v\n", err)
		return b.String()
	}
	s := t.Schedule
	fmt.Fprintf(&b, "%d read = %d used + %d excluded + %d refused\narea %.6f m2\n", s.RowsRead, s.RowsUsed, s.RowsExcluded, s.RowsRefused, t.Totals.Area)
	for _, f := range t.Faults {
		fmt.Fprintf(&b, "fault: %s, %s: '%s': %s\n", takeoff.Place{File: f.File, Sheet: f.Sheet, Row: f.Row}, f.Heading, f.Value, f.Message)
	}
	for _, n := range t.Notes {
		fmt.Fprintf(&b, "note: %s\n", n)
	}
	return b.String()
}

var updateUgly = flag.Bool("update-ugly", false, "write the ugly files and their golden files anew")

// TestUgly reads every file of the folder and holds rows, area and places of
// faults against what was worked out by hand, and all of it against the golden
// file beside it.
func TestUgly(t *testing.T) {
	files := slices.Concat(
		uglyMarks(t), uglyText(), uglyPages(), uglyDoubts(), uglySettled(), uglyFooters(), uglyTongues(), uglyBooks(t), uglySettledBooks(t), uglyMisread(), uglyMisreadBooks(t), uglyWords(), uglyTitles(), uglyHeads(), uglyAgain(t), uglyPinned(t), uglyKinds(), uglyKindsBooks(t), uglyDescribed(), uglyLines(), uglyBlind(), uglyRemarks(), uglyBeside(t), uglyBlindBooks(t), uglyPlain(t), uglyLooks(), uglyThird(), uglyLastRow(), uglyLooksBooks(t), uglySets(t), uglySetsBooks(t), uglyTraps(), uglyOrdinary(), uglyRooms(t), uglyWorkshop(), uglySilent(), uglySilentBooks(t), uglyOffices(), uglyHeadings(), uglyBills(), uglyQuiet(), uglyQuietBooks(t), uglyQuietLooks(t), uglyQuietColumns())
	if len(files) < 60 {
		t.Errorf("%d files", len(files))
	}
	known := map[string]bool{}
	for _, u := range files {
		if known[u.name] {
			t.Errorf("%s stands there twice", u.name)
		}
		known[u.name] = true
		path := filepath.Join(uglyFolder, u.name)
		if *updateUgly {
			if err := os.WriteFile(path, u.data, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		tk, info, err := takeoffOf(u.name, data, schedule.Options{})
		u.check(t, tk, err)
		got := account(tk, &info, err)
		if *updateUgly {
			if err := os.WriteFile(path+".golden", []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if want, err := os.ReadFile(path + ".golden"); err != nil || got != string(want) {
			t.Errorf("%s: %v\n%s\nwant\n%s", u.name, err, got, want)
		}
	}
	left, err := os.ReadDir(uglyFolder)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range left {
		if !known[strings.TrimSuffix(f.Name(), ".golden")] {
			t.Errorf("nobody tests %s", f.Name())
		}
	}
}

func (u *ugly) check(t *testing.T, tk *takeoff.Takeoff, err error) {
	t.Helper()
	if u.fails != "" || err != nil {
		if err == nil || !strings.Contains(err.Error(), u.fails) || u.fails == "" {
			t.Errorf("%s: error %v, want %q", u.name, err, u.fails)
		}
		return
	}
	s := tk.Schedule
	if s.RowsUsed != u.used || s.RowsExcluded != u.excluded || s.RowsRefused != u.refused || s.RowsRead != u.used+u.excluded+u.refused {
		t.Errorf("%s: %d read, %d used, %d excluded, %d refused; want %d, %d, %d", u.name, s.RowsRead, s.RowsUsed, s.RowsExcluded, s.RowsRefused, u.used, u.excluded, u.refused)
	}
	if math.Abs(tk.Totals.Area-u.area) > 1e-9*max(1, u.area) {
		t.Errorf("%s: area %.9f m2, want %.9f", u.name, tk.Totals.Area, u.area)
	}
	if got := faultPlaces(tk); got != u.faults {
		t.Errorf("%s: faults at %s\nwant %s\n%v", u.name, got, u.faults, tk.Faults)
	}
	for _, want := range u.notes {
		found := false
		for _, n := range tk.Notes {
			found = found || strings.Contains(n, want)
		}
		if !found {
			t.Errorf("%s: no note with %q in\n%s", u.name, want, strings.Join(tk.Notes, "\n"))
		}
	}
}
