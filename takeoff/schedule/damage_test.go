package schedule

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// areaOf reads and measures a schedule: the area, and how much was said of it.
func areaOf(t testing.TB, data []byte) (area float64, said int, err error) {
	t.Helper()
	m := takeoff.New(takeoff.Options{})
	info, err := ReadFrom("f", data, func(r *takeoff.Row) error {
		m.Add(r)
		return nil
	})
	if err != nil {
		return 0, 0, err
	}
	m.Finish(info.Schedule, info.Faults, info.Notes)
	said = len(m.Faults) + len(m.Notes)
	for i := range m.Items {
		said += len(m.Items[i].Notes)
	}
	return m.Totals.Area, said, nil
}

const soundCSV = `tag,system,kind,width_mm,height_mm,diameter_mm,length_mm,angle_deg,radius_mm,from,note
A,S1,straight,600,400,,3000,,,,"painted, at level 2"
B,S1,bend,600,400,,,90,600,A,
C,S1,straight,600,400,,1500,,,B,"a ""black"" finish"
D,S1,straight,,,315,3000,,,,
E,S1,bend,,,315,,90,472.5,D,painted
`

// What only writes the table otherwise gives the same area to the last bit: order
// of columns, spaces, line ends, quotes, signs between cells, encodings, case of
// headings, empty rows and columns.
func TestWrittenOtherwise(t *testing.T) {
	want, said, err := areaOf(t, []byte(soundCSV))
	if err != nil || said > 0 || !(want > 10) {
		t.Fatalf("%v m2, %d said, %v", want, said, err)
	}
	wide := func(s string, low bool) string {
		var b strings.Builder
		for _, r := range s {
			if low {
				b.WriteString(string([]byte{byte(r), 0}))
			} else {
				b.WriteString(string([]byte{0, byte(r)}))
			}
		}
		return b.String()
	}
	for name, text := range map[string]string{
		"BOM": "\ufeff" + soundCSV, "CRLF": strings.ReplaceAll(soundCSV, "\n", "\r\n"), "no last line end": strings.TrimSuffix(soundCSV, "\n"), "UTF-16 LE": "\xff\xfe" + wide(soundCSV, true), "UTF-16 BE": "\xfe\xff" + wide(soundCSV, false),
		"case": strings.Replace(soundCSV, "width_mm,height_mm", "WIDTH (MM),Height mm", 1), "spaces": strings.ReplaceAll(soundCSV, ",600,", ", 600 ,"), "empty rows": strings.ReplaceAll(soundCSV, "\n", "\n\n"), "rows of commas": strings.ReplaceAll(soundCSV, "\n", "\n,,,,,,,,,,\n"),
	} {
		if got, _, err := areaOf(t, []byte(text)); err != nil || got != want {
			t.Errorf("%s: %v m2, want %v (%v)", name, got, want, err)
		}
	}
}

// A character that parts or quotes cells, taken away, doubled or put elsewhere,
// gives the same area, or something is said.
func TestDamagedText(t *testing.T) {
	want, _, _ := areaOf(t, []byte(soundCSV))
	silent := func(name, text string) {
		if got, said, err := areaOf(t, []byte(text)); err == nil && said == 0 && got != want {
			t.Errorf("%s: %v m2, want %v, and nothing is said:\n%s", name, got, want, text)
		}
	}
	for i := range soundCSV {
		for _, c := range []string{",", "\n", `"`, ";", "\t", "\r", "\x00", " "} {
			if c == `"` && i > 0 && soundCSV[i-1] >= '0' && soundCSV[i-1] <= '9' {
				continue // an inch mark, by which a cell says its own unit
			}
			silent(fmt.Sprintf("%q put in at %d", c, i), soundCSV[:i]+c+soundCSV[i:])
		}
		if strings.ContainsRune(",\n\"", rune(soundCSV[i])) {
			silent(fmt.Sprintf("%q taken out at %d", soundCSV[i], i), soundCSV[:i]+soundCSV[i+1:])
		}
	}
	for i := range len(soundCSV) {
		if got, said, err := areaOf(t, []byte(soundCSV[:i])); err == nil && said == 0 && got > want {
			t.Errorf("cut at %d: %v m2", i, got)
		}
	}
}

// A bit of a workbook that has turned over gives an error, the same rows, or
// something that is said.
func TestDamagedWorkbook(t *testing.T) {
	f := excelize.NewFile()
	inches := `0" in"`
	style, err := f.NewStyle(&excelize.Style{CustomNumFmt: &inches})
	if err != nil {
		t.Fatal(err)
	}
	for row, cells := range [][]any{{"tag", "kind", "diameter_mm", "length_mm"}, {"A", "straight", 12, 3000}, {"B", "straight", 315, 3000.5}} {
		for col, v := range cells {
			at, _ := excelize.CoordinatesToCellName(col+1, row+1)
			if err := f.SetCellValue("Sheet1", at, v); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := f.SetCellStyle("Sheet1", "C2", "C2", style); err != nil {
		t.Fatal(err)
	}
	b, err := f.WriteToBuffer()
	if err != nil {
		t.Fatal(err)
	}
	good, goodInfo, err := collect(b.Bytes())
	if d := takeoff.DimColumn(fittings.Diameter); err != nil || len(good) != 2 || good[0].Number[d] != 0.3048 || good[1].Number[d] != 0.315 {
		t.Fatalf("%v %+v", err, good)
	}
	r := rand.New(rand.NewPCG(3, 4))
	errors, same, told := 0, 0, 0
	for i := range b.Bytes() {
		data := append([]byte(nil), b.Bytes()...)
		data[i] ^= 1 << r.IntN(8)
		rows, info, err := collect(data)
		faults := len(info.Faults) + len(info.Notes) - len(goodInfo.Notes)
		for k := range rows {
			faults += len(rows[k].Faults)
		}
		for k := range rows {
			rows[k].At.Sheet = "Sheet1" // may be called otherwise
		}
		switch {
		case err != nil:
			errors++
		case reflect.DeepEqual(rows, good):
			same++
		case faults > 0:
			told++
		default:
			t.Errorf("byte %d of %d turned: nothing is said, and the rows are\n%+v", i, len(data), rows)
		}
	}
	t.Logf("%d errors, %d the same, %d told", errors, same, told)
}
