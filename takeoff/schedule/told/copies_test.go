package told

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
)

// piece is a row as a list gives it: size, mm, length, mm, and how many.
type piece [4]float64

// sheetOf makes a sheet of pieces that has been read.
func sheetOf(name string, rows []piece) *Sheet {
	s := &Sheet{Name: name, Among: true, Headings: []int{1}}
	for i, p := range rows {
		var r takeoff.Row
		r.Text[takeoff.Kind] = "straight"
		for k, c := range [...]takeoff.Column{takeoff.DimColumn(fittings.Width), takeoff.DimColumn(fittings.Height), takeoff.DimColumn(fittings.Length), takeoff.Quantity} {
			r.Text[c] = fmt.Sprint(p[k])
			r.SetNumber(c, p[k])
		}
		s.Class(PieceRow, i+2, nil)
		s.Mark(&r)
	}
	return s
}

// doubted are the sheets that are found fault with, in the order of the file.
func doubted(t *testing.T, sheets ...*Sheet) string {
	t.Helper()
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	var f Findings
	f.DoubtSheets("x.xlsx", sheets, lex)
	var out []string
	for _, x := range f.Faults {
		out = append(out, x.Sheet)
	}
	slices.Sort(out)
	return strings.Join(out, " ")
}

// standard are pieces as lists of standard lengths have them: some sizes, few lengths.
func standard(rnd *rand.Rand, n int) (out []piece) {
	sides := []float64{200, 250, 300, 400, 500, 600, 800}
	for range n {
		w := sides[rnd.IntN(len(sides))]
		out = append(out, piece{w, sides[rnd.IntN(len(sides))], []float64{1500, 1500, 1500, 1250, 1000, 600}[rnd.IntN(6)], float64(1 + rnd.IntN(4))})
	}
	return out
}

// A list that stands again on other sheets, shuffled or parted, is always found; lists of
// standard lengths of one job hardly ever.
func TestListsAgain(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	for n := 4; n < 200; n += 7 {
		rows := standard(rnd, n)
		sorted := slices.Clone(rows)
		rnd.Shuffle(n, func(a, b int) { sorted[a], sorted[b] = sorted[b], sorted[a] })
		if got := doubted(t, sheetOf("Works", rows), sheetOf("Sorted", sorted)); got != "Sorted" && n > 6 {
			t.Errorf("%d rows in another order: %q", n, got)
		}
		if got := doubted(t, sheetOf("Works", rows), sheetOf("Van", sorted[:n/2]), sheetOf("Depot", sorted[n/2:])); got != "Works" && n > 6 {
			t.Errorf("%d rows in two parts: %q", n, got)
		}
		if got := doubted(t, sheetOf("Level 1", rows), sheetOf("Level 2", sorted), sheetOf("Roof", sorted)); got != "" {
			t.Errorf("%d rows on three floors: %q", n, got)
		}
	}
	asked := 0
	for range 300 {
		names := []string{"Kitchen", "Offices", "Shop", "Garage"}
		var sheets []*Sheet
		for _, name := range names {
			sheets = append(sheets, sheetOf(name, standard(rnd, 3+rnd.IntN(200))))
		}
		if doubted(t, sheets...) != "" {
			asked++
		}
	}
	if asked > 3 {
		t.Errorf("%d of 300 ordinary jobs are asked about", asked)
	}
}

func TestNamesOfPlaces(t *testing.T) {
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	for names, want := range map[string]bool{"Level 1;Level 2": true, "EG;1. OG": true, "Block A;Block B": true, "North;South": true, "L1;L2": true, "Supply;Extract": true, "AHU 1;AHU 2": true, "Geschoss 1;Dach": true, "Haus 1;Haus 2": true,
		"R+1;R+2": true, "Niveau 1;Niveau 2": true, "Plan 1;Plan 2": true, "Piano 1;Piano 2": true, "Planta 1;Planta 2": true, "Verdieping 1;Verdieping 2": true,
		"Ducts;Sorted": false, "Ducts;Level 1": false, "Order 1;Order 2": false, "Sheet1;Sheet2": false, "Tabelle1;Tabelle2": false, "Ducts;Order 1": false, "Feuil1;Feuil2": false} {
		a, b, _ := strings.Cut(names, ";")
		if got := nameOf(lex, a).apart(nameOf(lex, b)); got != want {
			t.Errorf("%s: apart %v", names, got)
		}
	}
}
