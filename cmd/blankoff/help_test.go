package main

import (
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime/debug"
	"strings"
	"testing"
)

// Every command tells what it does, its exit codes and two examples at least, and
// every flag of it what it is for.
func TestHelpIsComplete(t *testing.T) {
	root := newRoot()
	_, manual, _ := typed(t, "manual")
	site(t, map[string]string{})
	if code, _, talk := typed(t, "manual -o blankoff.1"); code != exitDone {
		t.Fatal(talk)
	}
	page, err := os.ReadFile("blankoff.1")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range documented(root) {
		if !strings.Contains(c.Long, "Exit codes:\n") || strings.Count(c.Example, "blankoff ") < 2 || !strings.Contains(manual, c.Example) {
			t.Errorf("%s: the help lacks exit codes or two examples, or isn't in the manual", c.CommandPath())
		}
		if plans := c.Flags().Lookup("rig") != nil && c.Name() != "window"; plans != strings.Contains(c.Long, "under or over range") && c.HasParent() {
			t.Errorf("%s: the help names exit codes of another command:\n%s", c.CommandPath(), c.Long)
		}
		if usage := c.LocalFlags().FlagUsages(); strings.Contains(usage, "(default [])") || strings.Contains(usage, "Slice") {
			t.Errorf("%s: what only the program's language knows:\n%s", c.CommandPath(), usage)
		}
		if about := map[string]string{"check": "a stated area differs", "price": "a line of the bill has no rate"}[c.Name()]; !strings.Contains(strings.Join(strings.Fields(c.Long), " "), about) {
			t.Errorf("%s: the help doesn't say that exit 3 is for %s", c.CommandPath(), about)
		}
		if s := c.Short; s == "" || strings.HasSuffix(s, ".") || s[0] < 'A' || s[0] > 'Z' {
			t.Errorf("%s: %q; short help begins with a capital and has no full stop", c.CommandPath(), s)
		}
		for line := range strings.Lines(c.Long + c.Example) {
			if len(line) > 81 && !strings.HasPrefix(line, "  blankoff") {
				t.Errorf("%s: a line of %d characters: %s", c.CommandPath(), len(line), line)
			}
		}
		for _, name := range flagsOf(c) {
			_, value, about := flagParts(c, name)
			f := c.LocalFlags().Lookup(name)
			if about == "" || strings.HasSuffix(about, ".") || strings.ToUpper(about[:1]) == about[:1] && f.Name != "help" && about[0] > '9' {
				t.Errorf("%s --%s: %q; say what it is for, in lower case and without a full stop", c.CommandPath(), f.Name, about)
			}
			if f.Value.Type() == "bool" && value != "" {
				t.Errorf("%s --%s takes no value, the help names %q", c.CommandPath(), f.Name, value)
			}
			if !strings.Contains(manual, "--"+f.Name) || f.Name != "help" && !strings.Contains(string(page), roff("--"+f.Name)) {
				t.Errorf("%s --%s isn't in the manual", c.CommandPath(), f.Name)
			}
		}
	}
	for line := range strings.Lines(string(page)) {
		if strings.HasPrefix(line, "'") || strings.HasPrefix(line, ".") && !strings.ContainsAny(line[1:2], "TSBPnfb") {
			t.Errorf("the manual page has the request %q", line)
		}
	}
}

// Every example of the help runs as it stands.
func TestHelpExamplesRun(t *testing.T) {
	files := map[string]string{
		"schedule.csv": goodSchedule, "old.csv": goodSchedule, "new.csv": goodSchedule,
		"specified.csv": "tag,system,kind,width_mm,height_mm,length_mm,class,test_pa,stated_area_m2\nA,S1,straight,600,400,12000,B,400,24.5\n",
		"totals.csv":    "system,stated_area_m2\nS1,24.5\n", "sheets.csv": "section,stated_area_m2\nS01,24.5\n",
	}
	for _, name := range []string{"rates.toml", "job.toml"} {
		data, err := os.ReadFile("../../examples/estimator/" + name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = string(data)
	}
	site(t, files)
	if code, _, talk := typed(t, "plan specified.csv --rig rig.toml -o plan-pack"); code != exitDone && code != exitPartly {
		t.Fatal(talk)
	}
	data, err := os.ReadFile("rig.toml")
	if err == nil {
		err = os.Mkdir("tower", 0o755)
	}
	for _, name := range []string{"own", "hired"} {
		if err == nil {
			err = os.WriteFile(name+".toml", []byte(strings.Replace(string(data), "made-up", name, 1)), 0o644)
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	if code, _, talk := typed(t, "template -o schedule.xlsx"); code != exitDone {
		t.Fatal(talk)
	}
	ran := 0
	for _, c := range documented(newRoot())[1:] {
		for line := range strings.Lines(c.Example) {
			command, ok := strings.CutPrefix(strings.TrimSpace(line), "blankoff ")
			if !ok {
				t.Errorf("%s: an example that isn't a command: %q", c.CommandPath(), line)
				continue
			}
			ran++
			code, stdout, talk := typed(t, command)
			// the template states no class
			if strings.Contains(command, "schedule.xlsx") && code == exitFailed && strings.Contains(talk, "--class") {
				code, stdout, talk = typed(t, command+" --class B --test-pressure 400")
			}
			if code != exitDone && code != exitPartly || stdout == "" && !strings.Contains(command, "-o ") {
				t.Errorf("blankoff %s: exit %d\n%s", command, code, talk)
			}
		}
	}
	if ran < 12 {
		t.Errorf("%d examples", ran)
	}
}

func TestVersion(t *testing.T) {
	code, stdout, _ := typed(t, "--version")
	if code != exitDone || !strings.HasPrefix(stdout, "blankoff ") || !strings.Contains(stdout, "go1.") || strings.Count(stdout, "\n") != 1 {
		t.Errorf("exit %d: %q", code, stdout)
	}
	info := &debug.BuildInfo{GoVersion: "go1.26.0", Main: debug.Module{Version: "v1.2.3"}, Settings: []debug.BuildSetting{
		{Key: "GOOS", Value: "linux"}, {Key: "GOARCH", Value: "amd64"}, {Key: "vcs.revision", Value: "0123456789abcdef0123"}, {Key: "vcs.time", Value: "2026-03-14T12:00:00Z"}, {Key: "vcs.modified", Value: "true"},
	}}
	if got, want := versionText(info, true), "blankoff v1.2.3, revision 0123456789ab of 2026-03-14T12:00:00Z, changed since, go1.26.0, linux/amd64"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// What a shell is told of words and files.
func TestCompletion(t *testing.T) {
	for line, want := range map[string]string{
		"__complete pl": "plan", "__complete plan --format ": "json", "__complete takeoff --format ": "csv", "__complete plan --aim ": "time", "__complete plan --scheme ": "GB50243",
		"__complete takeoff --basis ": "centre-line", "__complete plan --regime ": "Sweden", "__complete kinds re": "reducer", "__complete takeoff ": "xlsx", "__complete plan --rig ": "toml", "__complete plan --un": "--units",
	} {
		var out strings.Builder
		args := strings.Split(line, " ")
		if code := run(args, &out, io.Discard); code != exitDone || !strings.Contains(out.String(), want) {
			t.Errorf("%q: exit %d, %q; want %q among it", line, code, out.String(), want)
		}
	}
	root := newRoot()
	for _, c := range documented(root)[1:] {
		if c.ValidArgsFunction == nil {
			t.Errorf("%s: nothing is said of its arguments", c.Name())
		}
	}
	for _, shell := range []string{"zsh", "fish", "powershell"} {
		if code, stdout, _ := typed(t, "completion "+shell); code != exitDone || len(stdout) < 1000 {
			t.Errorf("%s: exit %d, %d bytes", shell, code, len(stdout))
		}
	}
}

// TestCompletionInBash sources the script and presses Tab, as it were.
func TestCompletionInBash(t *testing.T) {
	bash := need(t, "bash")
	dir := site(t, map[string]string{})
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	script := "#!" + bash + "\nBLANKOFF_CHILD=run exec " + self + " \"$@\"\n"
	if err := os.WriteFile(filepath.Join(dir, "blankoff"), []byte(script), 0o755); err != nil {
		t.Fatal(err)
	}
	for typed, want := range map[string]string{"pl": "plan", "plan --format j": "json", "takeoff --basis centre": "centre-line", "kinds pl": "plenum"} {
		words := "blankoff " + typed
		tab := fmt.Sprintf(`set -eu; source <(blankoff completion bash)
compopt() { :; }
_init_completion() { words=(%[1]s); cword=$((${#words[@]}-1)); cur=${words[cword]}; prev=${words[cword-1]}; }
COMP_WORDS=(%[1]s); COMP_CWORD=$((${#COMP_WORDS[@]}-1)); COMP_LINE="%[1]s"; COMP_POINT=${#COMP_LINE}; COMP_TYPE=9
COMPREPLY=(); set +eu; __start_blankoff; printf '%%s\n' "${COMPREPLY[@]}"`, words)
		c := exec.Command(bash, "-c", tab)
		c.Env = append(os.Environ(), "PATH="+dir+":"+os.Getenv("PATH"))
		out, err := c.CombinedOutput()
		if strings.TrimSpace(string(out)) != want {
			t.Errorf("%s<Tab>: %q (%v), want %q", words, out, err, want)
		}
	}
}
