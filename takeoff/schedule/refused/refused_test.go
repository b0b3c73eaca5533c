package refused

import (
	"bytes"
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
	"blankoff/takeoff/schedule/columns"
)

func read(t *testing.T, name string, data []byte) (*takeoff.Takeoff, schedule.Info, []takeoff.Row) {
	t.Helper()
	var rows []takeoff.Row
	tk := takeoff.New(takeoff.Options{})
	info, err := schedule.ReadFrom(name, data, func(r *takeoff.Row) error {
		rows = append(rows, *r)
		tk.Add(r)
		return nil
	})
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, data)
	}
	tk.Finish(info.Schedule, info.Faults, info.Notes)
	return tk, info, rows
}

// written writes the refused rows in one form or the other.
func written(t *testing.T, name string, data []byte, form string) []byte {
	t.Helper()
	tk, info, _ := read(t, name, data)
	var b bytes.Buffer
	r := Of(tk, &info, schedule.Options{})
	write := r.CSV
	if form == ".xlsx" {
		write = r.XLSX
	}
	if err := write(&b, data); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

const mixed = "Long barn;;;;;\nAll dimensions in cm;;;;;\nTag;Kind;Main;;Length;Remarks\n;;Width;Height;(m);\n" +
	"System: Supply 1;;;;;\nA;straight;60;40;1,5;fine\nB;strait;60;40;1,5;\"two\nlines\"\nSystem: Extract 1;;;;;\nC;straight;60;1.500;2;\nD;straight;60;40;2;fine\nE;straight;60;40;2;x;stray\n"

// The refused rows stand in the layout of the schedule, with what they are read
// by above them and the reasons beside them.
func TestLayout(t *testing.T) {
	got := strings.TrimPrefix(string(written(t, "m.csv", []byte(mixed), ".csv")), mark)
	r := csv.NewReader(strings.NewReader(got))
	r.Comma, r.FieldsPerRecord = ';', -1
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var tags []string
	for _, row := range rows {
		tags = append(tags, row[0])
	}
	want := []string{"Long barn", "All dimensions in cm", "Tag", "", "System: Supply 1", "B", "System: Extract 1", "C", "E"}
	if !reflect.DeepEqual(tags, want) {
		t.Fatalf("rows %q, want %q\n%s", tags, want, got)
	}
	if h := rows[3]; h[6] != Where || h[7] != Why+" "+columns.CommaMark || rows[5][6] != "kind" || !strings.Contains(rows[7][7], "could be 1500 or 1.5") || rows[7][6] != "Main / Height" || rows[8][8] != "stray" {
		t.Errorf("%q", rows)
	}
}

// Read again as it is, the file has the same faults; mended in the cells that
// it names, its rows are those that the schedule would have given.
func TestMendAndReadAgain(t *testing.T) {
	mend := strings.NewReplacer("strait", "straight", "1.500", "150", ";stray", "")
	_, _, all := read(t, "m.csv", []byte(mend.Replace(mixed)))
	want := []takeoff.Row{all[1], all[2], all[4]}
	for _, form := range []string{".csv", ".xlsx"} {
		out := written(t, "m.csv", []byte(mixed), form)
		again, _, _ := read(t, "again", out)
		if form == ".xlsx" {
			if s := again.Schedule; s.RowsRead != 3 || s.RowsRefused < 2 {
				t.Errorf("%s: %+v", form, s)
			}
			continue // mended by hand only
		}
		if s := again.Schedule; s.RowsRead != 3 || s.RowsRefused != 3 {
			t.Errorf("%s: read again %+v %v", form, s, again.Faults)
		}
		twice := written(t, "again", out, form)
		if !bytes.Equal(twice, out) {
			t.Errorf("written from itself it differs:\n%s\n%s", twice, out)
		}
		tk, _, rows := read(t, "mended", []byte(mend.Replace(string(out))))
		if tk.Schedule.RowsRefused != 0 || len(rows) != 3 {
			t.Fatalf("%+v %v", tk.Schedule, tk.Faults)
		}
		for i := range rows {
			if rows[i].Text != want[i].Text || rows[i].Number != want[i].Number {
				t.Errorf("row %d: %q, want %q", i, rows[i].Text, want[i].Text)
			}
		}
		if want := 2 * (0.6 + 0.4) * (1.5 + 2); math.Abs(tk.Totals.Area-want-2*(0.6+1.5)*2) > 1e-9 {
			t.Errorf("area %v", tk.Totals.Area)
		}
	}
}

// Every ugly file's refused rows read again: as many rows, each refused again or
// found fault with in its links only.
func TestUglyFilesAgain(t *testing.T) {
	files, err := filepath.Glob("../../../testdata/schedules/ugly/*.*")
	if err != nil || len(files) < 60 {
		t.Fatal(len(files), err)
	}
	tried := 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil || strings.HasSuffix(file, ".golden") {
			continue
		}
		tk := takeoff.New(takeoff.Options{})
		info, err := schedule.ReadFrom(filepath.Base(file), data, func(r *takeoff.Row) error { tk.Add(r); return nil })
		if err != nil {
			continue
		}
		tk.Finish(info.Schedule, info.Faults, info.Notes)
		r := Of(tk, &info, schedule.Options{})
		if r.Count() == 0 {
			continue
		}
		var b bytes.Buffer
		write := r.CSV
		if r.Workbook() {
			write = r.XLSX
		}
		if err := write(&b, data); err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		again, _, _ := read(t, filepath.Base(file), b.Bytes())
		tried++
		if s := again.Schedule; s.RowsRead != tk.Schedule.RowsRefused || s.RowsUsed > linksOnly(tk) {
			t.Errorf("%s: %+v after %+v\n%s", file, s, tk.Schedule, b.String()[:min(b.Len(), 600)])
		}
	}
	if tried < 20 {
		t.Errorf("%d files tried", tried)
	}
}

// linksOnly counts the rows of which all faults lie in how rows stand to each other, which the
// refused rows by themselves needn't have.
func linksOnly(t *takeoff.Takeoff) (rows int) {
	links := map[takeoff.Place]bool{}
	for _, f := range t.Faults {
		at := takeoff.Place{File: f.File, Sheet: f.Sheet, Row: f.Row}
		only, met := links[at]
		links[at] = (only || !met) && (f.Heading == "tag" || f.Heading == "from")
	}
	for _, only := range links {
		if only {
			rows++
		}
	}
	return rows
}

// TestNothingSteers: no cell of refused rows steers a terminal that shows the file, nor
// turns the direction of a line.
func TestNothingSteers(t *testing.T) {
	got := string(written(t, "s.csv", []byte("Tag,Kind,Width,Height,Length\nA,straight,600,400,1500\n\x1b[2JB\u202e\a,strait\u009b,600,400,1500\n"), ".csv"))
	if !strings.Contains(got, "[2JB") || strings.ContainsAny(got, "\x1b\a\u009b\u202e") {
		t.Errorf("%q", got)
	}
}
