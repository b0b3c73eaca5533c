package dress

import "testing"

func TestSumsUp(t *testing.T) {
	for formula, want := range map[string]bool{"SUM(G4:G6)": true, "SUM($G$4:$G$6)": true, "sum(G4:G6)": true, "of:=SUM([.G4:.G6])": true, "SUBTOTAL(9,G4:G6)": true,
		"SUM(A7:F7)": false, "SUM(G4:G8)": false, "SUM(F4:F6)": false, "SUM(G4:G6)*2": false, "SUM(G4,G6)": false, "G4+100": false, "SUM(G6:G6)": false, "SUM(": false, "": false} {
		if got := SumsUp(formula, 6, 7); got != want { // in G7
			t.Errorf("%s: %v", formula, got)
		}
	}
}
