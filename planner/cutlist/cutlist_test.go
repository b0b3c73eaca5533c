package cutlist_test

import (
	"encoding/csv"
	"fmt"
	"strings"
	"testing"

	"blankoff/planner/cutlist"
)

func TestRead(t *testing.T) {
	cuts, faults, err := cutlist.Read(strings.NewReader("tag,piece,next_tag,next_piece,at\nA,2,A,3,somewhere\n B , , C ,\n"), "cuts.csv")
	if err != nil || len(faults) > 0 || len(cuts) != 2 {
		t.Fatalf("%v %v %v", cuts, faults, err)
	}
	if c := cuts[0]; c.Tag != "A" || c.Piece != 2 || c.Next != "A" || c.NextPiece != 3 || c.At.Row != 2 {
		t.Errorf("%+v", c)
	}
	if c := cuts[1]; c.Tag != "B" || c.Piece != 0 || c.Next != "C" || c.NextPiece != 0 {
		t.Errorf("%+v", c)
	}
}

// Every slip has its line and its cure; a missing heading isn't a 0.
func TestFaults(t *testing.T) {
	_, faults, err := cutlist.Read(strings.NewReader("tag,piece,next_tag,next_piece\nA,two,A,3\n,,B,\nA,1,B,-2\n"), "cuts.csv")
	if err != nil || len(faults) != 3 {
		t.Fatalf("%v %v", faults, err)
	}
	for i, row := range []int{2, 3, 4} {
		if f := faults[i]; f.Row != row || f.Expected == "" || f.Message == "" {
			t.Errorf("%+v", f)
		}
	}
	cuts, faults, err := cutlist.Read(strings.NewReader("from,to\nA,B\n"), "cuts.csv")
	if err == nil && len(cuts) > 0 || err == nil && len(faults) == 0 {
		t.Errorf("other headings: %v %v %v", cuts, faults, err)
	}
}

func FuzzRead(f *testing.F) {
	f.Add("tag,piece,next_tag,next_piece\nA,2,A,3\n")
	f.Fuzz(func(t *testing.T, text string) {
		cuts, faults, err := cutlist.Read(strings.NewReader(text), "cuts.csv")
		for _, f := range faults {
			if f.File != "cuts.csv" || f.Row < 2 || f.Message == "" || f.Expected == "" {
				t.Errorf("%+v", f)
			}
		}
		if err != nil && len(cuts) > 0 {
			t.Error("cuts and an error")
		}
		for _, c := range cuts {
			if c.Tag == "" || c.Next == "" || c.Piece < 0 || c.NextPiece < 0 {
				t.Errorf("%+v", c)
			}
		}
	})
}

// FuzzWriteRead: cuts that are written as a plan writes them read back equal; what
// can't be a cut has a fault.
func FuzzWriteRead(f *testing.F) {
	f.Add("A", "B/branch", uint8(1), uint8(2))
	f.Add("=1+1", "@x", uint8(0), uint8(9))
	f.Add("two\nlines", `a "quoted", tag`, uint8(3), uint8(0))
	f.Fuzz(func(t *testing.T, tag, next string, piece, nextPiece uint8) {
		if strings.TrimSpace(tag) != tag || strings.TrimSpace(next) != next || tag == "" || next == "" || strings.ContainsAny(tag+next, "\r") || strings.HasPrefix(tag, "'") || strings.HasPrefix(next, "'") {
			return // the door cuts outer white space; an apostrophe masks
		}
		masked := func(s string) string {
			if strings.ContainsRune("=+-@\uff1d\uff0b\uff0d\uff20", []rune(s)[0]) {
				return "'" + s
			}
			return s
		}
		var b strings.Builder
		w := csv.NewWriter(&b)
		for _, row := range [][]string{{"tag", "piece", "next_tag", "next_piece"}, {masked(tag), fmt.Sprint(piece), masked(next), fmt.Sprint(nextPiece)}} {
			if err := w.Write(row); err != nil {
				t.Fatal(err)
			}
		}
		w.Flush()
		cuts, faults, err := cutlist.Read(strings.NewReader(b.String()), "cuts.csv")
		if err != nil || len(cuts)+len(faults) != 1 {
			t.Fatalf("%q: %v %v %v", b.String(), cuts, faults, err)
		}
		if len(cuts) == 1 && (cuts[0].Tag != tag || cuts[0].Next != next || cuts[0].Piece != int(piece) || cuts[0].NextPiece != int(nextPiece)) {
			t.Fatalf("%q reads as %+v", b.String(), cuts[0])
		}
	})
}
