package cutlist_test

import (
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
		cuts, _, err := cutlist.Read(strings.NewReader(text), "cuts.csv")
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
