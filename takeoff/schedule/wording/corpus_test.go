package wording

import (
	"encoding/csv"
	"os"
	"testing"
)

// TestCorpusOfRemarks holds the lists of words against remarks in seven languages that people
// wrote who knew neither the lists nor the program: such that change nothing of their row, and
// such by which it is wrong as typed. The lists were extended by three of the sets; the one
// that is set apart was never looked at, so it tells how remarks fare that nobody has seen.
func TestCorpusOfRemarks(t *testing.T) {
	f, err := os.Open("../../../testdata/remarks.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	lex := builtIn(t)
	type shares struct{ all, asked, noted float64 }
	found := map[string]*shares{}
	for _, r := range rows[1:] {
		set := "known"
		if r[0] == "apart" {
			set = "apart"
		}
		s := found[set+" "+r[1]]
		if s == nil {
			s = &shares{}
			found[set+" "+r[1]] = s
		}
		s.all++
		switch of := Remark(lex, r[3]).Of; {
		case lex.Struck(r[3]) || of&^(OfElse|OfOpen|OfSizes) != 0:
			s.asked++
		case of != 0:
			s.noted++
		}
	}
	for _, x := range []struct {
		of                  string
		asked, most, silent float64 // least and most share that is asked about; most of which nothing is said
	}{{"known doubt", 0.94, 1, 0.005}, {"known nothing", 0, 0.045, 1}, {"apart doubt", 0.69, 1, 0.01}, {"apart nothing", 0, 0.055, 1}} {
		s := found[x.of]
		asked, silent := s.asked/s.all, (s.all-s.asked-s.noted)/s.all
		t.Logf("%-13s of %4.0f remarks %5.1f %% asked about, %5.1f %% noted, of %.1f %% nothing is said", x.of, s.all, 100*asked, 100*s.noted/s.all, 100*silent)
		if asked < x.asked || asked > x.most || silent > x.silent {
			t.Errorf("%s: asked %.3f, want %.2f to %.2f; silent %.3f, want at most %.3f", x.of, asked, x.asked, x.most, silent, x.silent)
		}
	}
}
