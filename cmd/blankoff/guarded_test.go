package main

import (
	"os"
	"strings"
	"testing"
)

const partlySchedule = "tag,kind,width_mm,height_mm,length_mm,class,test_pa\nA,straight,600,400,12000,B,400\n=cmd|' /C calc'!A0,straight,wide,400,9000,B,400\n"

// A list of refused rows never takes the place of what the run reads or writes.
func TestRefusedRowsHaveAPlaceOfTheirOwn(t *testing.T) {
	site(t, map[string]string{"s.csv": partlySchedule, "job.csv": "project = \"job\"\n"})
	rig, err := os.ReadFile("rig.toml")
	if err == nil {
		err = os.WriteFile("rig.csv", rig, 0o644)
	}
	if err == nil {
		err = os.Mkdir("pack", 0o755)
	}
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{
		"plan s.csv --rig rig.csv --refused rig.csv", "plan s.csv --rig rig.toml --refused s.csv", "plan s.csv --rig rig.toml --job job.csv --refused job.csv",
		"takeoff s.csv -o a.csv --refused a.csv", "takeoff s.csv -o a.csv --refused ./a.csv", "plan s.csv --rig rig.toml -o pack --refused pack/sections.csv",
		"compare s.csv --rig rig.csv --refused rig.csv",
	} {
		if code, _, talk := typed(t, line); code != exitMisuse || !strings.Contains(talk, "refused") && !strings.Contains(talk, "also an input") {
			t.Errorf("%s: exit %d, %s", line, code, talk)
		}
	}
	if left, err := os.ReadFile("rig.csv"); err != nil || string(left) != string(rig) {
		t.Errorf("the rig is %q, %v", left, err)
	}
	for _, line := range []string{"takeoff s.csv --refused r.csv", "plan s.csv --rig rig.toml --refused r.csv", "compare s.csv --rig rig.toml --refused r.csv"} {
		_ = os.Remove("r.csv")
		code, _, talk := typed(t, line)
		if got, err := os.ReadFile("r.csv"); code != exitPartly || err != nil || !strings.Contains(string(got), "wide") {
			t.Errorf("%s: exit %d, %q %v %s", line, code, got, err, talk)
		}
	}
}

// What is refused is no formula in the file of refused rows, and reads the same.
func TestRefusedRowsHoldNoFormulas(t *testing.T) {
	site(t, map[string]string{"s.csv": partlySchedule})
	typed(t, "takeoff s.csv --refused r.csv")
	got, err := os.ReadFile("r.csv")
	if err != nil || !strings.Contains(string(got), "\n'=cmd|' /C calc'!A0,straight,wide,400,9000,B,400,") {
		t.Fatalf("%s %v", got, err)
	}
	_, _, first := typed(t, "takeoff s.csv")
	_, _, again := typed(t, "takeoff r.csv")
	if f, a := strings.Count(first, "=cmd|"), strings.Count(again, "=cmd|"); f == 0 || f != a || strings.Contains(again, "''=") {
		t.Errorf("%s\nagain\n%s", first, again)
	}
}

// Files that somebody keeps in the folder of a pack are put aside, not replaced.
func TestOwnFilesAreKept(t *testing.T) {
	site(t, map[string]string{"s.csv": goodSchedule})
	if err := os.Mkdir("own", 0o755); err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{"cuts.csv": "my cuts", "plan.html": "mine", "other.txt": "x"} {
		if err := os.WriteFile("own/"+name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	code, _, talk := typed(t, "plan s.csv --rig rig.toml -o own")
	cuts, err := os.ReadFile("own/earlier-cuts.csv")
	page, err2 := os.ReadFile("own/earlier-plan.html")
	if code != exitDone || err != nil || err2 != nil || string(cuts) != "my cuts" || string(page) != "mine" || !strings.Contains(talk, "earlier-cuts.csv") {
		t.Errorf("exit %d: %q %q %s", code, cuts, page, talk)
	}
	if code, _, talk := typed(t, "plan s.csv --rig rig.toml -o own"); code != exitDone || strings.Contains(talk, "earlier") {
		t.Errorf("again: exit %d, %s", code, talk)
	}
}

// Names and keys of files don't steer the terminal.
func TestNamesDontSteer(t *testing.T) {
	site(t, map[string]string{"s.csv": goodSchedule, "odd.toml": "\"\\u001b[31m\\u202ek\" = 1\n", "\x1b[2J\u009b.csv": "tag,kind\nA,what\n"})
	for _, line := range []string{"plan s.csv --rig odd.toml", "inspect \x1b[2J\u009b.csv", "takeoff \x1b[2J\u009b.csv", "plan s.csv --rig rig.toml --scheme odd.toml"} {
		_, answer, talk := typed(t, line)
		steersNothing(t, line, answer+talk)
		if strings.ContainsAny(answer+talk, "\u009b\u202e") {
			t.Errorf("%s: %q", line, answer+talk)
		}
	}
}

// A length and a quantity that make millions of pieces are a slip.
func TestTooManyPieces(t *testing.T) {
	site(t, map[string]string{"s.csv": "tag,kind,width_mm,height_mm,length_mm,quantity,class,test_pa\nA,straight,600,400,1000000,9999,B,400\n",
		"long.csv": "tag,kind,width_mm,height_mm,length_mm,quantity,class,test_pa\nA,straight,600,400,1000000,2,B,400\n"})
	if code, _, talk := typed(t, "plan s.csv --rig rig.toml"); code != exitFailed || !strings.Contains(talk, "A alone about") {
		t.Errorf("exit %d, %s", code, talk)
	}
	if code, _, talk := typed(t, "plan long.csv --rig rig.toml"); code != exitDone && code != exitPartly {
		t.Errorf("two tunnels: exit %d, %s", code, talk)
	}
}
