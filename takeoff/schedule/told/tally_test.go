package told

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// A tally of rows in two parts, one after the other, tells what one of all of them tells.
func TestTallyInParts(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	formats := []string{"remarks passed over, the first '%s'", "cells of column '%s' left out", "rows that repeat the headings"}
	for range 200 {
		var whole, upper, lower Tally
		n, cut := 1+random.IntN(20), random.IntN(20)
		for row := 1; row <= n; row++ {
			format, about := formats[random.IntN(3)], fmt.Sprintf("text %d", random.IntN(8))
			if format == formats[2] {
				about = ""
			}
			whole.Add(format, about, row)
			if part := &upper; row <= cut {
				part.Add(format, about, row)
			} else {
				lower.Add(format, about, row)
			}
		}
		upper.Merge(lower)
		if got, want := fmt.Sprint(upper), fmt.Sprint(whole); got != want {
			t.Fatalf("cut behind row %d of %d:\n%s\nwant\n%s", cut, n, got, want)
		}
	}
}

// What is said of several sheets alike is said once, and no note twice.
func TestNotesOfSheets(t *testing.T) {
	var f Findings
	f.Note("column '%s' isn't used", "Finish")
	f.Note("column '%s' isn't used", "Finish")
	for _, sheet := range []string{"L1", "L2", "L2", "L3"} {
		f.NoteOf(sheet, "the sheet is hidden")
	}
	want := []string{"column 'Finish' isn't used", "sheets 'L1', 'L2' and 1 more: the sheet is hidden"}
	if fmt.Sprint(f.Notes) != fmt.Sprint(want) {
		t.Errorf("%q, want %q", f.Notes, want)
	}
}

// However much there is to note, the list stays short, and says that it does.
func TestNotesEnd(t *testing.T) {
	var f Findings
	for i := range 1000 {
		f.Note("row %d", i)
	}
	if n := len(f.Notes); n != mostNotes+1 || f.Notes[n-1] != "there is more to note; it is left out" {
		t.Errorf("%d notes, the last %q", n, f.Notes[n-1])
	}
}
