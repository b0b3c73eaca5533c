//go:build linux

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
)

// writers are command lines that write, with what they write.
var writers = []struct{ line, out string }{
	{"takeoff good.csv -o out.csv", "out.csv"},
	{"takeoff good.csv --format json -o out.json", "out.json"},
	{"plan good.csv --rig rig.toml -o pack", "pack"},
	{"kinds bend -o out.svg", "out.svg"},
	{"template -o out.xlsx", "out.xlsx"},
}

// refuses runs every writer in a folder where it must fail: with exit 1 and a
// word of why, and nothing in the folder changed.
func refuses(t *testing.T, dir, why string, env []string) {
	t.Helper()
	for _, w := range writers {
		before := listed(files(t, dir))
		r := inChild(t, dir, nil, env, strings.Fields(w.line)...)
		if r.code != exitFailed || !strings.Contains(r.stderr, why) || strings.Contains(r.stderr, ".blankoff-") {
			t.Errorf("%s: exit %d, %q; want exit 1 and a word of %q", w.line, r.code, r.stderr, why)
		}
		if after := listed(files(t, dir)); !slices.Equal(before, after) {
			t.Errorf("%s changed the folder: %.300q, was %.300q", w.line, after, before)
		}
	}
}

// aged fills a folder with what an earlier run wrote; the template is left out,
// since it is never written over.
func aged(t *testing.T, dir string) {
	t.Helper()
	for _, w := range writers[:4] {
		if r := inChild(t, dir, nil, nil, strings.Fields(w.line)...); r.code != exitDone {
			t.Fatalf("%s: exit %d, %s", w.line, r.code, r.stderr)
		}
	}
}

// TestNoRoom writes where a file may grow to 4 kB only, as on a full disk: with
// and without older files in the way.
func TestNoRoom(t *testing.T) {
	dir := site(t, map[string]string{"good.csv": goodSchedule + manyRows(200)})
	refuses(t, dir, "file too large", []string{"BLANKOFF_FSIZE=4096"})
	aged(t, dir)
	refuses(t, dir, "file too large", []string{"BLANKOFF_FSIZE=4096"})
}

// manyRows goes on after goodSchedule.
func manyRows(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "M%d,S1,L1,straight,600,400,,9000,%s,B,400\n", i, map[bool]string{true: "B", false: fmt.Sprintf("M%d", i-1)}[i == 0])
	}
	return b.String()
}

// mounted mounts a small file system in memory, or says why it can't.
func mounted(t *testing.T, size string) string {
	t.Helper()
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size="+size); err != nil {
		t.Skipf("can't mount a small file system here (%v); TestNoRoom and TestFullDevice stand in for it", err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(dir, 0); err != nil {
			t.Error(err)
		}
	})
	return dir
}

// TestFullDisk fills a small disk: old files stay as they were, and with room
// again everything is written.
func TestFullDisk(t *testing.T) {
	dir := mounted(t, "8m")
	at := site(t, map[string]string{"good.csv": goodSchedule + manyRows(200)})
	for _, name := range []string{"good.csv", "rig.toml"} {
		data, err := os.ReadFile(filepath.Join(at, name))
		if err == nil {
			err = os.WriteFile(filepath.Join(dir, name), data, 0o644)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	aged(t, dir)
	ballast := filepath.Join(dir, "ballast")
	f, err := os.Create(ballast)
	for err == nil {
		_, err = f.Write(make([]byte, 4096))
	}
	f.Close()
	refuses(t, dir, "no space left", nil)
	if err := os.Remove(ballast); err != nil {
		t.Fatal(err)
	}
	for _, w := range writers {
		if r := inChild(t, dir, nil, nil, strings.Fields(w.line)...); r.code != exitDone {
			t.Errorf("with room again: %s: exit %d, %s", w.line, r.code, r.stderr)
		}
	}
	isWhole(t, filepath.Join(dir, "pack"))
}

// TestFullDevice writes into a device that takes nothing, as an output and as
// stdout.
func TestFullDevice(t *testing.T) {
	dir := site(t, map[string]string{"good.csv": goodSchedule})
	for _, line := range []string{"takeoff good.csv -o /dev/full", "takeoff good.csv --format json -o /dev/full"} {
		if r := inChild(t, dir, nil, nil, strings.Fields(line)...); r.code != exitFailed || !strings.Contains(r.stderr, "no space left") {
			t.Errorf("%s: exit %d, %q", line, r.code, r.stderr)
		}
	}
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer full.Close()
	for _, line := range []string{"takeoff good.csv", "takeoff good.csv --format json", "plan good.csv --rig rig.toml", "plan good.csv --rig rig.toml --format json",
		"compare good.csv --rig rig.toml", "window --rig rig.toml", "kinds", "kinds bend", "--help", "plan --help", "--version"} {
		var talk strings.Builder
		if code := run(strings.Fields(line), full, &talk); code != exitFailed || !strings.Contains(talk.String(), "no space left") {
			t.Errorf("%s to a full device: exit %d, %q", line, code, talk.String())
		}
	}
}

// TestReadOnlyFolder writes, as somebody who isn't root, where nothing may be
// written.
func TestReadOnlyFolder(t *testing.T) {
	dir := site(t, map[string]string{"good.csv": goodSchedule})
	aged(t, dir)
	for _, d := range []string{filepath.Join(dir, "pack"), dir} {
		if err := os.Chmod(d, 0o555); err != nil {
			t.Fatal(err)
		}
		defer os.Chmod(d, 0o755)
	}
	var env []string
	if os.Getuid() == 0 {
		env = []string{"BLANKOFF_UID=65534"}
	}
	refuses(t, dir, "permission denied", env)
}

// TestMarkedReadOnly leaves a file that somebody has marked read-only.
func TestMarkedReadOnly(t *testing.T) {
	dir := site(t, map[string]string{"good.csv": goodSchedule})
	aged(t, dir)
	for _, name := range []string{"out.csv", "out.json", "out.svg", "pack/cuts.csv"} {
		if err := os.Chmod(filepath.Join(dir, name), 0o444); err != nil {
			t.Fatal(err)
		}
	}
	before := listed(files(t, dir))
	for _, w := range writers[:4] {
		if code, _, talk := typed(t, w.line); code != exitFailed || !strings.Contains(talk, "marked read-only") {
			t.Errorf("%s: exit %d, %q", w.line, code, talk)
		}
	}
	if after := listed(files(t, dir)); !slices.Equal(before, after) {
		t.Error("something was changed")
	}
}

// TestOutputIsInput writes over what is read, under every name that it has.
func TestOutputIsInput(t *testing.T) {
	dir := site(t, map[string]string{"good.csv": goodSchedule, "basis.toml": "", "job.toml": "project = \"x\"\n", "cuts.csv": "tag,piece,next_tag,next_piece\nA,,B,\n"})
	for _, err := range []error{
		os.Symlink("good.csv", "soft.csv"), os.Link("good.csv", "hard.csv"), os.Mkdir("sub", 0o755), os.Symlink(dir, "sub/up"),
		os.Symlink("soft.csv", "softer.csv"), os.Mkdir("linked", 0o755), os.Symlink("../good.csv", "linked/plan.json"), os.Mkdir("hardlinked", 0o755), os.Link("cuts.csv", "hardlinked/cuts.csv"),
		os.Mkdir("listed", 0o755), os.Link("rig.toml", "listed/pack.json"),
	} {
		if err != nil {
			t.Fatal(err)
		}
	}
	read := func() (all []string) {
		for _, name := range []string{"good.csv", "rig.toml", "cuts.csv", "basis.toml"} {
			data, err := os.ReadFile(name)
			all = append(all, fmt.Sprint(string(data), err))
		}
		return append(all, names(t, dir))
	}
	before := read()
	for _, out := range []string{"good.csv", "./good.csv", "sub/../good.csv", "sub/up/good.csv", "soft.csv", "softer.csv", "hard.csv", filepath.Join(dir, "good.csv")} {
		for _, in := range []string{"good.csv", "hard.csv", "soft.csv"} {
			if code, _, talk := typed(t, "takeoff "+in+" -o "+out); code != exitMisuse || !strings.Contains(talk, "is also an input") {
				t.Errorf("takeoff %s -o %s: exit %d, %q", in, out, code, talk)
			}
		}
	}
	for _, line := range []string{"plan good.csv --rig rig.toml -o linked", "plan good.csv --rig rig.toml --cuts cuts.csv -o hardlinked", "plan good.csv --rig rig.toml -o listed"} {
		if code, _, talk := typed(t, line); code == exitDone || !strings.Contains(talk, "is also an input") && !strings.Contains(talk, "isn't the list") {
			t.Errorf("%s: exit %d, %q", line, code, talk)
		}
	}
	if after := read(); !slices.Equal(before, after) {
		t.Error("an input was changed")
	}
}

// TestOddOutputs: folders, pipes, devices, links.
func TestOddOutputs(t *testing.T) {
	site(t, map[string]string{"good.csv": goodSchedule, "file": "mine"})
	for _, err := range []error{os.Mkdir("folder", 0o755), os.MkdirAll("pack/plan.json", 0o755), os.Symlink("target.csv", "link.csv"), os.WriteFile("target.csv", []byte("old"), 0o600), os.Symlink("loop.csv", "loop.csv")} {
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct{ line, about string }{
		{"takeoff good.csv -o folder", "is a folder"}, {"plan good.csv --rig rig.toml -o file", "isn't a folder"}, {"plan good.csv --rig rig.toml -o pack", "isn't a file"},
		{"plan good.csv --rig rig.toml -o /dev/null", "isn't a folder"}, {"takeoff good.csv -o none/out.csv", "no such file"}, {"plan good.csv --rig rig.toml -o file/sub", "not a directory"},
		{"takeoff good.csv -o file/out.csv", "not a directory"}, {"takeoff good.csv -o " + strings.Repeat("x", 300) + ".csv", "name too long"},
	} {
		if code, _, talk := typed(t, c.line); code != exitFailed || !strings.Contains(talk, c.about) {
			t.Errorf("%s: exit %d, %q; want a word of %q", c.line, code, talk, c.about)
		}
	}
	if code, _, talk := typed(t, "takeoff good.csv -o link.csv"); code != exitDone {
		t.Errorf("exit %d, %s", code, talk)
	}
	st, err := os.Stat("target.csv")
	if to, e := os.Readlink("link.csv"); e != nil || to != "target.csv" || err != nil || st.Size() < 10 || st.Mode().Perm() != 0o600 {
		t.Errorf("the link leads to %q (%v), its target is %v (%v)", to, e, st, err)
	}
	// A file that another program has open is replaced: that one goes on reading
	// the old one. (Where the system forbids it, the old pack stays: TestOldFileHeld.)
	f, err := os.Open("target.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if code, _, talk := typed(t, "takeoff good.csv --totals -o target.csv"); code != exitDone {
		t.Errorf("over an open file: exit %d, %s", code, talk)
	}
	if held, _ := f.Stat(); held.Size() != st.Size() {
		t.Error("the open file was changed")
	}
}
