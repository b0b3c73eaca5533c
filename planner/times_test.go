package planner_test

import (
	"fmt"
	"strings"
	"testing"

	"blankoff/planner"
)

// datedChain is a main of n straights of 2.1 m2, each of them up for six days from
// a day of its own.
func datedChain(n int) string {
	var b strings.Builder
	b.WriteString("tag,kind,shape,width_mm,height_mm,length_mm,from,class,test_pa,ready,closed\n")
	for i := range n {
		from := ""
		if i > 0 {
			from = fmt.Sprintf("T%d", i-1)
		}
		fmt.Fprintf(&b, "T%d,straight,rectangular,400,300,1500,%s,B,400,%d,%d\n", i, from, i, i+5)
	}
	return b.String()
}

// TestDatedChain: six neighbours at most are up on one day, so n straights take
// n/6 sections, rounded up, and that is proved however many there are; one by one
// the ways of parting them can't be tried.
func TestDatedChain(t *testing.T) {
	for _, n := range []int{30, 400, 3000} {
		p := madePlan(t, datedChain(n), classB(t, siteRig, 400))
		if want := (n + 5) / 6; len(p.Sections) != want || p.Proof.Score != p.Proof.Bound || p.Proof.Kind != planner.Optimal {
			t.Errorf("%d straights: %d sections, want %d; %s, bound %+v of %+v", n, len(p.Sections), want, p.Proof.Kind, p.Proof.Bound, p.Proof.Score)
		}
		for i := range p.Sections {
			for _, note := range p.Sections[i].Notes {
				if strings.Contains(note, "never up together") {
					t.Fatalf("%s: %s", p.Sections[i].ID, note)
				}
			}
		}
	}
}

// BenchmarkDated plans mains of straights that are each up for days of their own:
// four times as many should take little more than four times as long.
func BenchmarkDated(b *testing.B) {
	for _, n := range []int{2500, 10_000} {
		csv := datedChain(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				madePlan(b, csv, classB(b, siteRig, 400))
			}
		})
	}
}
