package schedule

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"blankoff/takeoff"
)

var update = flag.Bool("update", false, "write the golden files anew")

// schedules is where the schedules of every kind of trouble are kept.
const schedules = "../../testdata/schedules"

// show writes all that was read, for a person to check.
func show(name string, data []byte) string {
	var b strings.Builder
	info, err := ReadFrom(name, data, func(r *takeoff.Row) error {
		fmt.Fprintf(&b, "%s:", r.At)
		for c := range takeoff.NumColumns {
			if r.Text[c] == "" {
				continue
			}
			fmt.Fprintf(&b, " %s=%q", c.Heading(), r.Text[c])
			if r.Has(c) {
				fmt.Fprintf(&b, " -> %v", r.Number[c])
			}
			b.WriteString(";")
		}
		b.WriteString("\n")
		for _, f := range r.Faults {
			fmt.Fprintf(&b, "    fault: %s\n", line(f))
		}
		return nil
	})
	for _, f := range info.Faults {
		fmt.Fprintf(&b, "fault: %s\n", line(f))
	}
	for _, n := range info.Notes {
		fmt.Fprintf(&b, "note: %s\n", n)
	}
	fmt.Fprintf(&b, "%d rows read\n", info.RowsRead)
	if err != nil {
		fmt.Fprintf(&b, "error: %v\n", err)
	}
	return b.String()
}

func line(f takeoff.Fault) string {
	return fmt.Sprintf("%s | heading %q | value %q | expected %s | %s",
		takeoff.Place{File: f.File, Sheet: f.Sheet, Row: f.Row}, f.Heading, f.Value, f.Expected, f.Message)
}

// Each schedule has beside it what was read from it, checked by hand once.
func TestGolden(t *testing.T) {
	files, err := filepath.Glob(schedules + "/*.[ct]sv")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d schedules: %v", len(files), err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		got := show(filepath.Base(file), data)
		golden := file + ".golden"
		if *update {
			if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s:\n%s\nwant\n%s", file, got, want)
		}
	}
}
