package schedule_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// wardrobe is how the same few straights may be written down.
type wardrobe struct {
	bits  []byte
	comma bool // for decimals
}

// pick takes the next choice of n.
func (w *wardrobe) pick(n int) int {
	if len(w.bits) == 0 {
		return 0
	}
	b := int(w.bits[0])
	w.bits = w.bits[1:]
	return b % n
}

// number writes a figure with the file's sign for decimals.
func (w *wardrobe) number(v float64) string {
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if w.comma {
		s = strings.Replace(s, ".", ",", 1)
	}
	return s
}

// the words of seven languages for tag, kind, width, height, length, size.
var tongues = [][7]string{
	{"Tag", "Kind", "Width", "Height", "Length", "Size", "straight"}, {"Pos.", "Formstück", "Breite", "Höhe", "Länge", "Abmessung", "Kanal"},
	{"Repère", "Accessoire", "Largeur", "Hauteur", "Longueur", "Dimensions", "gaine droite"}, {"Merk", "Hulpstuk", "Breedte", "Hoogte", "Lengte", "Afmeting", "recht kanaal"},
	{"Littera", "Detalj", "Bredd", "Höjd", "Längd", "Dimension", "rak kanal"}, {"Marca", "Pieza", "Ancho", "Alto", "Longitud", "Medidas", "conducto recto"},
	{"Sigla", "Tipo pezzo", "Larghezza", "Altezza", "Lunghezza", "Misure", "canale rettilineo"},
}

var lengthUnits = []struct {
	name   string
	factor float64 // of a mm
}{{"mm", 1}, {"cm", 0.1}, {"m", 0.001}}

// dress writes straights of these sizes, mm, in one of very many ways. areas are
// those by tag, m2.
func dress(bits []byte, sizes [][3]float64) (data []byte, areas map[string]float64) {
	w := &wardrobe{bits: bits}
	sep := []rune{',', ';', '\t', '|'}[w.pick(4)]
	w.comma = sep == ';' || sep == '\t' && w.pick(2) == 1
	words := tongues[w.pick(len(tongues))]
	inHeads, inCells, above, two, combined := w.pick(2) == 1, false, false, w.pick(3) == 1, w.pick(2) == 1
	u := lengthUnits[w.pick(3)]
	if !inHeads {
		inCells = w.pick(2) == 1
		above = !inCells && w.pick(2) == 1
		if !inCells && !above {
			u = lengthUnits[0]
		}
	}
	var rows [][]string
	for range w.pick(3) {
		rows = append(rows, []string{"Long barn, sheet 2"})
	}
	if above {
		rows = append(rows, []string{"All dimensions in " + u.name})
	}
	head := func(word string) string {
		if inHeads {
			return word + " (" + u.name + ")"
		}
		return word
	}
	switch {
	case combined:
		rows = append(rows, []string{words[0], words[1], head(words[5]), head(words[4])})
	case two:
		rows = append(rows, []string{words[0], words[1], head("Size"), "", head(words[4])}, []string{"", "", words[2], words[3], ""})
	default:
		rows = append(rows, []string{words[0], words[1], head(words[2]), head(words[3]), head(words[4])})
	}
	repeated := rows[len(rows)-1]
	areas = map[string]float64{}
	for i, z := range sizes {
		tag := fmt.Sprintf("D%d", i+1)
		areas[tag] = 2 * (z[0] + z[1]) * z[2] / 1e6
		cell := func(v float64) string {
			s := w.number(math.Round(v*u.factor*1e6) / 1e6)
			if inCells {
				s += " " + u.name
			}
			return s
		}
		row := []string{tag, words[6], cell(z[0]), cell(z[1]), cell(z[2])}
		if combined {
			row = []string{tag, words[6], row[2] + []string{"x", " x ", "×"}[w.pick(3)] + row[3], row[4]}
		}
		rows = append(rows, row)
		switch w.pick(6) {
		case 1:
			rows = append(rows, repeated)
		case 2:
			rows = append(rows, []string{"Level 2"})
		case 3:
			rows = append(rows, []string{"Total"})
		case 4:
			rows = append(rows, []string{"", " "})
		}
	}
	var b bytes.Buffer
	out := csv.NewWriter(&b)
	out.Comma = sep
	for _, row := range rows {
		for len(row) < len(repeated) {
			row = append(row, "")
		}
		_ = out.Write(row)
	}
	out.Flush()
	return b.Bytes(), areas
}

// FuzzDress: the same pieces, however they are written down, have the same areas
// or are refused with a reason; none is lost.
func FuzzDress(f *testing.F) {
	f.Add([]byte{1, 1, 1, 1, 1, 1, 1}, uint16(600), uint16(400), uint32(1500))
	f.Add([]byte{2, 1, 3, 0, 1, 0, 2, 1, 1, 2, 3, 4, 5}, uint16(625), uint16(300), uint32(1234))
	f.Add([]byte{0, 4, 0, 1, 0, 0, 1, 2, 1, 5, 4, 3, 2}, uint16(1200), uint16(1000), uint32(12345))
	f.Fuzz(func(t *testing.T, bits []byte, a, b uint16, l uint32) { dressed(t, bits, a, b, l) })
}

// TestDressAtRandom does the same with a fixed seed.
func TestDressAtRandom(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 2000 {
		bits := make([]byte, 40)
		r.Read(bits)
		dressed(t, bits, uint16(r.Uint32()), uint16(r.Uint32()), r.Uint32())
	}
}

func dressed(t *testing.T, bits []byte, a, b uint16, l uint32) {
	t.Helper()
	sizes := [][3]float64{}
	for i := range 4 {
		sizes = append(sizes, [3]float64{100 + float64(a%2000), 100 + float64((int(b)+i*25)%2000), 100 + float64((int(l)+i*333)%15000)})
	}
	data, areas := dress(bits, sizes)
	tk, info, err := takeoffOf("d", data, schedule.Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, data)
	}
	seen := 0
	for i := range tk.Items {
		it := &tk.Items[i]
		want, ok := areas[it.Tag]
		if !ok {
			t.Fatalf("row %q\n%s\n%v", it.Tag, data, info.Notes)
		}
		seen++
		if it.Refused == (math.Abs(it.Area-want) <= 1e-9*want) {
			t.Fatalf("%s: area %v, want %v, refused %v %v\n%s", it.Tag, it.Area, want, it.Refused, tk.Faults, data)
		}
		if it.Refused && !strings.Contains(faultsOf(tk, it.At.Row), "could be") && !strings.Contains(faultsOf(tk, it.At.Row), "lengths are in") {
			t.Fatalf("%s is refused for %s\n%s", it.Tag, faultsOf(tk, it.At.Row), data)
		}
	}
	if seen != len(areas) || len(info.Faults) > 0 {
		t.Fatalf("%d of %d pieces, %v\n%s", seen, len(areas), info.Faults, data)
	}
}

func faultsOf(t *takeoff.Takeoff, row int) string {
	var out []string
	for _, f := range t.Faults {
		if f.Row == row {
			out = append(out, f.Message)
		}
	}
	return strings.Join(out, "; ")
}

// FuzzMutate: a cell of an ugly file is changed into another text. Rows that
// aren't touched keep their areas or are refused with a fault or a note that
// wasn't there before; no row goes without a word.
func FuzzMutate(f *testing.F) {
	files, err := filepath.Glob(uglyFolder + "/*.csv")
	if err != nil || len(files) < 40 {
		f.Fatal(len(files), err)
	}
	var all [][]byte
	for i, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		all = append(all, data)
		f.Add(uint8(i), uint16(i*7), "1.500")
		f.Add(uint8(i), uint16(i*13+3), "Level 3")
	}
	f.Fuzz(func(t *testing.T, file uint8, at uint16, text string) {
		if strings.ContainsAny(text, "\"\r\n,;|\t\x00") || len(text) > 40 {
			return
		}
		if _, unit := quantity.UnitOf(text); unit {
			return // in a row of headings it is the unit of a column, which inspect shows
		}
		if lex, err := headings.BuiltIn(); err != nil || lex.Read(text).Verdict == headings.Known {
			return // so is a heading: a quantity headed Level is a level
		}
		data := all[int(file)%len(all)]
		before, _, err := takeoffOf("m", data, schedule.Options{})
		if err != nil {
			return
		}
		lines := strings.Split(string(data), "\n")
		if strings.Contains(string(data), "\"") || strings.Contains(string(data), "\r") || len(lines) < 3 {
			return
		}
		n := int(at) % len(lines)
		sep := ","
		if strings.Contains(string(data), ";") {
			sep = ";"
		}
		cells := strings.Split(lines[n], sep)
		cells[int(at)/len(lines)%len(cells)] = text
		lines[n] = strings.Join(cells, sep)
		after, _, err := takeoffOf("m", []byte(strings.Join(lines, "\n")), schedule.Options{})
		if err != nil {
			return // and says why
		}
		was := map[int]float64{}
		for i := range after.Items {
			if it := &after.Items[i]; !it.Refused {
				was[it.At.Row] = it.Area
			}
		}
		said := fmt.Sprint(before.Notes, before.Faults) != fmt.Sprint(after.Notes, after.Faults)
		for i := range before.Items {
			it := &before.Items[i]
			if got, ok := was[it.At.Row]; it.At.Row != n+1 && !it.Refused && (!ok || math.Abs(got-it.Area) > 1e-9) && !said {
				t.Fatalf("row %d was %v m2 and is %v (%v), and nothing says so: '%s' in row %d\n%s", it.At.Row, it.Area, got, ok, text, n+1, strings.Join(lines, "\n"))
			}
		}
	})
}
