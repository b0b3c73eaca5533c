package stated

import (
	"math"
	"os"
	"path/filepath"
	"testing"
)

func TestReadTotals(t *testing.T) {
	for name, tt := range map[string]struct {
		text    string
		by      string
		area    float64 // of the first, m2
		flow    float64 // L/s
		reading float64
		rows    int
		faults  int
	}{
		"m2":        {"system,stated_area_m2,flow_m3_h\nSA1,48.04,3600\nSA2,12,\n", "system", 48.04, 1000, 0, 2, 0},
		"ft2":       {"Section,Stated area (ft2),reading_l_s\nS01,517.10,23.4\n", "section", 517.10 * 0.09290304, 0, 23.4, 1, 0},
		"semicolon": {"system;stated_area_m2\nSA1;48,04\n", "system", 48.04, 0, 0, 1, 0},
		"titles":    {"Sheet of areas\nsystem,stated_area_m2\nSA1,48.04\n", "system", 48.04, 0, 0, 1, 0},
		"faults":    {"system,stated_area_m2\nSA1,48.04\nSA2,abc\nSA3,\nSA4,-3\n", "system", 48.04, 0, 0, 1, 3},
	} {
		path := filepath.Join(t.TempDir(), "totals.csv")
		if err := os.WriteFile(path, []byte(tt.text), 0o644); err != nil {
			t.Fatal(err)
		}
		got, err := Read(path)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if len(got.List) != tt.rows || len(got.Faults) != tt.faults {
			t.Errorf("%s: %d rows and %d faults, want %d and %d", name, len(got.List), len(got.Faults), tt.rows, tt.faults)
			continue
		}
		x := got.List[0]
		if x.By != tt.by || math.Abs(x.Area-tt.area) > 1e-9 || math.Abs(x.Flow-tt.flow) > 1e-9 || x.Reading != tt.reading {
			t.Errorf("%s: %+v", name, x)
		}
	}
}

func TestReadTotalsRefuses(t *testing.T) {
	for _, text := range []string{"", "a,b\n1,2\n", "system,stated_area_m2\n"} {
		path := filepath.Join(t.TempDir(), "totals.csv")
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		if got, err := Read(path); err == nil {
			t.Errorf("%q: %+v", text, got)
		}
	}
	if _, err := Read(filepath.Join(t.TempDir(), "none.csv")); err == nil {
		t.Error("a missing file was read")
	}
}
