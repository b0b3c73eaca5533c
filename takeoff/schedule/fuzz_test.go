package schedule

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
)

// FuzzRead: any bytes give an error, or rows that are in order and sound. A
// cell that stands in a column of numbers gives a number or a fault that says
// where it stands.
func FuzzRead(f *testing.F) {
	files, err := filepath.Glob(schedules + "/*.[ct]sv")
	if err != nil {
		f.Fatal(err)
	}
	ugly, err := filepath.Glob(schedules + "/ugly/*.[ctxo][sld][vsx]*")
	if err != nil || len(ugly) < 60 {
		f.Fatal(len(ugly), err)
	}
	for _, file := range ugly {
		if !strings.HasSuffix(file, ".golden") {
			files = append(files, file)
		}
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add(asXLSX(f, [][]any{{"tag", "kind", "width_mm"}, {"A", "straight", 600.0}}))
	f.Fuzz(func(t *testing.T, data []byte) {
		rows, info, err := collect(data)
		if err != nil {
			if err.Error() == "" || len(bytes.TrimSpace(data)) > 0 && len(rows) > 0 && info.RowsRead != len(rows)+len(info.TotalRows)+info.RowsLeft {
				t.Fatalf("error %q with %d rows", err, len(rows))
			}
			return
		}
		if info.RowsRead == 0 || info.RowsRead != len(rows)+len(info.TotalRows)+info.RowsLeft || info.SHA256 == "" {
			t.Fatalf("%d rows handed on, %d read", len(rows), info.RowsRead)
		}
		for i := range rows {
			soundRow(t, &rows[i])
			if i > 0 && rows[i].At.Sheet == rows[i-1].At.Sheet && rows[i].At.Row <= rows[i-1].At.Row {
				t.Fatalf("row %d after %d", rows[i].At.Row, rows[i-1].At.Row)
			}
		}
		for _, fault := range info.Faults {
			soundFault(t, fault)
		}
		again, infoAgain, _ := collect(data)
		if !reflect.DeepEqual(rows, again) || !reflect.DeepEqual(info, infoAgain) {
			t.Fatal("reads otherwise the second time")
		}
	})
}

func collect(data []byte) (rows []takeoff.Row, info Info, err error) {
	info, err = ReadFrom("f", data, func(r *takeoff.Row) error {
		rows = append(rows, *r)
		return nil
	})
	return rows, info, err
}

func soundFault(t *testing.T, f takeoff.Fault) {
	t.Helper()
	if f.File != "f" || f.Row < 1 || f.Message == "" || strings.ContainsAny(f.Message, "\x00\x1b\x07\n") {
		t.Fatalf("fault %+v", f)
	}
}

func soundRow(t *testing.T, r *takeoff.Row) {
	t.Helper()
	typed := 0
	for c := range takeoff.NumColumns {
		v := r.Number[c]
		switch {
		case !r.Has(c) && v != 0, r.Has(c) && (r.Text[c] == "" || c.Measure() == takeoff.Text):
			t.Fatalf("%s: number %v for %q", c.Heading(), v, r.Text[c])
		case r.Has(c) && (math.IsNaN(v) || math.Abs(v) > 1e6):
			t.Fatalf("%s: %q is %v", c.Heading(), r.Text[c], v)
		case v < 0 && c != takeoff.DimColumn(fittings.OffsetShift) && c != takeoff.DimColumn(fittings.OffsetShift2) && c != takeoff.DimColumn(fittings.BranchShift):
			t.Fatalf("%s: %q is %v", c.Heading(), r.Text[c], v)
		case c.Measure() != takeoff.Text && r.Text[c] != "" && !r.Has(c):
			typed++
		case r.Text[c] != strings.TrimSpace(r.Text[c]):
			t.Fatalf("%s: %q isn't trimmed", c.Heading(), r.Text[c])
		}
	}
	if len(r.Faults) < typed {
		t.Fatalf("%d cells that should be numbers aren't, but there are %d faults: %+v", typed, len(r.Faults), r)
	}
	for _, f := range r.Faults {
		soundFault(t, f)
		if f.Row != r.At.Row || f.Sheet != r.At.Sheet {
			t.Fatalf("fault %+v in row %v", f, r.At)
		}
	}
}

// FuzzWriteRead: what is written as CSV reads back as it was.
func FuzzWriteRead(f *testing.F) {
	f.Add("T1", "two\nlines, \"quoted\"", uint32(600), uint8(0), uint8(0))
	f.Add(" ^", "24\"", uint32(12345), uint8(3), uint8(1))
	f.Add("-", "=1+1", uint32(math.MaxUint32), uint8(5), uint8(2))
	f.Fuzz(func(t *testing.T, tag, note string, mant uint32, decimals, sep uint8) {
		number := strconv.FormatFloat(float64(mant)/math.Pow(10, float64(decimals%6)), 'f', int(decimals%6), 64)
		var b bytes.Buffer
		w := csv.NewWriter(&b)
		w.Comma = []rune{',', ';', '\t'}[sep%3]
		for _, row := range [][]string{{"tag", "kind", "length_mm", "note"}, {tag, "straight", number, note}, {"last", "bend", "1", ""}} {
			if err := w.Write(row); err != nil {
				t.Fatal(err)
			}
		}
		w.Flush()
		rows, info, err := collect(b.Bytes())
		if err != nil || len(rows) != 2 || len(info.Faults) > 0 {
			t.Fatalf("%d rows, %v %v of %q", len(rows), err, info.Faults, b.String())
		}
		r := rows[0]
		if len(r.Faults) == 0 && utf8.ValidString(tag) && utf8.ValidString(note) {
			sameText(t, r.Text[takeoff.Tag], tag)
			sameText(t, r.Text[takeoff.Note], note)
			want, _ := strconv.ParseFloat(number+"e-3", 64)
			if got := r.Number[takeoff.DimColumn(fittings.Length)]; got != want || r.Text[takeoff.Kind] != "straight" {
				t.Fatalf("%s mm reads as %v m", number, got)
			}
			return
		}
		doubted := slices.ContainsFunc(r.Faults, func(f takeoff.Fault) bool { // a word as deleted, or 4 off
			return f.Heading == "note" && f.Value == strings.TrimSpace(note) || f.Heading == "tag" && f.Value == strings.TrimSpace(tag)
		})
		if !doubted && ordinary(tag) && ordinary(note) && mant < 1e7 && (sep%3 != 1 || decimals%6 != 3) && (decimals%6 != 3 || mant >= 20000) { // 1.200 mm is asked about
			t.Fatalf("faults %+v for %q %q %s", r.Faults, tag, note, number)
		}
	})
}

// sameText compares text as typed with what was read: outer white space is
// cut, and a cell that says that it is empty is.
func sameText(t *testing.T, got, typed string) {
	t.Helper()
	want := strings.TrimSpace(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(typed))                                           // a lone CR ends a line too
	if got != want && got != celltext.Unwrap(want) && !(got == "" && (celltext.MeansNothing(want) || strings.HasPrefix(want, "#"))) { // or is an error of a spreadsheet, which is noted
		t.Fatalf("%q reads as %q", typed, got)
	}
}

// ordinary reports text that nobody would call odd.
func ordinary(s string) bool {
	for _, r := range s {
		if r < ' ' || r > '~' {
			return false
		}
	}
	return !strings.HasPrefix(strings.TrimSpace(s), "=") && !strings.HasPrefix(strings.TrimSpace(s), "#") && len(s) < 1000
}

func TestFileErrors(t *testing.T) {
	dir := t.TempDir()
	none := func(*takeoff.Row) error { return nil }
	for name, tt := range map[string]struct{ content, says string }{
		"old.xls":    {"\xd0\xcf\x11\xe0\xa1\xb1", "save it as .xlsx"},
		"plan.pdf":   {"%PDF-1.7", "a PDF"},
		"empty.csv":  {"", "is empty"},
		"blank.csv":  {" \n\n ,\n", "no heading row"},
		"bare.csv":   {"tag,kind,width_mm\n\n,,\n", "no rows under"},
		"cut.xlsx":   {"PK\x03\x04 and no more", "damaged"},
		"words.csv":  {"dear colleague\nplease find the ducts below\n", "no heading row"},
		"late.csv":   {strings.Repeat("x\n", 200) + "tag,kind,width_mm\nA,bend,1\n", "first 100 rows"},
		"odd16.csv":  {"\xff\xfea", "cut short"},
		"broad.csv":  {"tag,kind,width_mm" + strings.Repeat(",x", 2000) + "\nA,bend,1\n", "at most 1000"},
		"pieces.csv": {"width_mm\n600\n", "no heading row"},
	} {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(tt.content), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := Read(path, none); err == nil || !strings.Contains(err.Error(), tt.says) || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v, want %q", name, err, tt.says)
		}
	}
	if _, err := Read(dir, none); err == nil || !strings.Contains(err.Error(), "is a folder") {
		t.Errorf("a folder: %v", err)
	}
	if _, err := Read(filepath.Join(dir, "gone.csv"), none); err == nil || !strings.Contains(err.Error(), "no such file") {
		t.Errorf("a missing file: %v", err)
	}
	stop := fmt.Errorf("enough")
	if _, err := ReadFrom("x", []byte("tag,kind,width_mm\nA,bend,1\n"), func(*takeoff.Row) error { return stop }); err != stop {
		t.Errorf("the caller's error came back as %v", err)
	}
}
