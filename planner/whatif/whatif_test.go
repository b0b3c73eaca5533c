package whatif_test

import (
	"strings"
	"testing"

	"blankoff/planner"
	"blankoff/planner/rig"
	"blankoff/planner/whatif"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
)

const schedules = `tag,kind,width_mm,height_mm,length_mm,from,class,test_pa
A,straight,1000,800,45000,,B,400
B,straight,600,400,30000,A,B,400
`

func base(t *testing.T, csv string) whatif.Base {
	t.Helper()
	r, _, err := rig.Load(strings.NewReader("name = \"r\"\n[[range]]\nname = \"a\"\nmin_l_s = 2\nmax_l_s = 60\n"), "rig.toml")
	if err != nil {
		t.Fatal(err)
	}
	set := planner.Defaults()
	set.Rigs = rig.Fleet{r}
	return whatif.Base{Settings: set, Read: func(piece float64) (*takeoff.Takeoff, error) {
		tk := takeoff.New(takeoff.Options{PieceLength: piece})
		info, err := schedule.ReadFrom("test.csv", []byte(csv), func(r *takeoff.Row) error { tk.Add(r); return nil })
		if err != nil {
			return nil, err
		}
		tk.Finish(info.Schedule, info.Faults, info.Notes)
		return tk, nil
	}}
}

func TestVariants(t *testing.T) {
	list, err := whatif.Run(base(t, schedules), whatif.Asked{PressuresPa: []float64{200}, Headrooms: []float64{1, 3}, Tighter: true, Whole: true})
	if err != nil {
		t.Fatal(err)
	}
	by := map[string]*planner.Plan{}
	for _, v := range list {
		if v.Plan == nil {
			t.Fatalf("%s: %s", v.Name, v.Why)
		}
		by[v.Name] = v.Plan
	}
	tests := func(name string) int { return by[name].Proof.Score.Tests }
	// More headroom, a higher pressure or cuts only between rows can't need fewer tests.
	if !(tests("headroom 1") <= tests("as asked") && tests("as asked") <= tests("headroom 3")) {
		t.Errorf("headroom 1, 1.5, 3: %d, %d, %d tests", tests("headroom 1"), tests("as asked"), tests("headroom 3"))
	}
	if tests("test pressure 200 Pa") > tests("as asked") {
		t.Errorf("%d tests at 200 Pa, %d at 400", tests("test pressure 200 Pa"), tests("as asked"))
	}
	if by["no cuts inside straights"].Proof.Score.Over == 0 { // 162 m2 in one piece
		t.Error("a straight of 162 m2 in one piece isn't over range")
	}
	if c := by["one class tighter"].Sections[0].Class.Name; c != "C" {
		t.Errorf("one class tighter than B is %s", c)
	}
	if c := by["as asked"].Sections[0].Class.Name; c != "B" {
		t.Errorf("a variant changed the base to class %s", c)
	}
}

// Where a variant can't be made it says why, and the others stand.
func TestTightestClass(t *testing.T) {
	list, err := whatif.Run(base(t, strings.ReplaceAll(schedules, ",B,400", ",D,400")), whatif.Asked{Tighter: true, Headrooms: []float64{1}})
	if err != nil || len(list) != 3 || list[1].Plan != nil || !strings.Contains(list[1].Why, "tightest") || list[2].Plan == nil {
		t.Errorf("%+v %v", list, err)
	}
}
