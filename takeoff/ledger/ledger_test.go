package ledger_test

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"testing"

	"blankoff/fittings"
	"blankoff/takeoff/ledger"
)

// file puts a row of a duct of so many mm into a ledger.
func file(g *ledger.Ledger, tag, system, sheet string, mm int) {
	g.Lines = append(g.Lines, ledger.Line{Text: len(g.Text), TagLength: uint32(len(tag)), Row: int32(len(tag)), More: -1, Far: -1, Parent: -1, RingWith: -1})
	l := &g.Lines[len(g.Lines)-1]
	g.Text = append(g.Text, tag...)
	l.System, l.Level, l.Sheet = g.Name(system), g.Name("L1"), g.FileSheet(ledger.Sheet{File: "f", Name: sheet})
	g.SetEnds(l, fittings.Through(fittings.CrossSection{Shape: fittings.Circular, Diameter: float64(mm) / 1000}), func(fittings.CrossSection) string { return fmt.Sprint(mm) })
	if mm%3 == 0 {
		g.Rest(l).Run = system + tag
	}
}

// told is a row as a reader would tell it.
func told(g *ledger.Ledger, i int) string {
	l := &g.Lines[i]
	c, ok := g.First(l)
	return fmt.Sprintf("%s of %s %s on %v: %v %v %q, run %q, ends %v", g.TagOf(l), g.Names[l.System], g.Names[l.Level], g.Sheets[l.Sheet], c, ok, g.Faces[l.Faces[0]].Note, g.Seldom(l).Run, g.Ends(l))
}

// TestAddingUp: rows that are filed in parts of any size, parts that are used again,
// tell the same as all filed in one.
func TestAddingUp(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	whole, sum, part := ledger.New(), ledger.New(), ledger.New()
	for i := range 9000 { // more names and sections than a part keeps
		tag, system, sheet, mm := fmt.Sprintf("D%d", r.IntN(99)), fmt.Sprintf("S%d", r.IntN(7000)), fmt.Sprint("sheet", i/2000), 63+r.IntN(3000)
		file(&whole, tag, system, sheet, mm)
		file(&part, tag, system, sheet, mm)
		if r.IntN(40) == 0 || i == 8999 {
			if first := sum.Add(&part); first+len(part.Lines) != i+1 {
				t.Fatalf("part begins at %d, not %d", first, i+1-len(part.Lines))
			}
			part.Reset()
		}
	}
	for i := range whole.Lines {
		if a, b := told(&whole, i), told(&sum, i); a != b {
			t.Fatalf("row %d\n in one: %s\nin parts: %s", i, a, b)
		}
	}
	for k := range sum.More {
		if i := sum.More[k].Line; int(sum.Lines[i].More) != k {
			t.Fatalf("what row %d has of its own is told of another", i)
		}
	}
	if !reflect.DeepEqual(whole.Sheets, sum.Sheets) {
		t.Errorf("sheets in another order: %v, %v", whole.Sheets, sum.Sheets)
	}
}

// TestTags: rows are found by their tags as in a map of first rows.
func TestTags(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for _, room := range []int{0, 10, 5000} {
		b := ledger.NewBook()
		if room > 0 {
			b.Expect(room)
		}
		first, times := map[string]int{}, map[string]int{}
		for i := range 5000 {
			tag := fmt.Sprintf("T%d", r.IntN(6000))
			if i%50 == 0 {
				tag = ""
			}
			file(&b.Ledger, tag, "S", "", 200)
			hashes := []uint32{ledger.HashTag(tag)}
			b.Warm(hashes)
			at, taken := b.FileTag(i, hashes[0])
			if want, ok := first[tag]; tag != "" && taken != ok || taken && at != want {
				t.Fatalf("row %d, tag %q: on row %d already %v, want %d, %v", i, tag, at, taken, want, ok)
			}
			if _, ok := first[tag]; !ok && tag != "" {
				first[tag] = i
			}
			times[tag]++
		}
		for n := range 6100 {
			tag := fmt.Sprintf("T%d", n)
			at, ok := b.Find(tag)
			want, has := first[tag]
			if ok != has || ok && at != want || b.IsDouble([]byte(tag)) != (times[tag] > 1) {
				t.Fatalf("%s: row %d, %v, double %v; want %d, %v, %d times", tag, at, ok, b.IsDouble([]byte(tag)), want, has, times[tag])
			}
		}
		if _, ok := b.Find(""); ok {
			t.Error("a row without a tag is found")
		}
	}
}
