package main

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

// fakeTerminal is a terminal to look at afterwards.
type fakeTerminal struct{ bytes.Buffer }

func (*fakeTerminal) IsTerminal() bool { return true }

// onTerminal runs a command line with both streams on terminals.
func onTerminal(line string) (code int, stdout, stderr string) {
	var out, talk fakeTerminal
	code = run(strings.Fields(line), &out, &talk)
	return code, out.String(), talk.String()
}

// TestBoldOnTerminalsOnly: a terminal gets bold headings and flags unless it or
// whoever sits at it asks for none; pipes, files and JSON never do.
func TestBoldOnTerminalsOnly(t *testing.T) {
	site(t, map[string]string{"good.csv": goodSchedule})
	t.Setenv("TERM", "xterm")
	t.Setenv("NO_COLOR", "")
	const bold = "\x1b["
	line := "plan good.csv --rig rig.toml --min-area 100"
	_, stdout, _ := onTerminal(line)
	if !strings.Contains(stdout, "\x1b[1mSections (limits are cut off, never rounded up)\x1b[0m\n") || !strings.Contains(stdout, "\x1b[1mUNDER RANGE\x1b[0m\n") {
		t.Errorf("nothing bold on a terminal\n%q", stdout)
	}
	_, plain, _ := typed(t, line)
	if got := strings.NewReplacer("\x1b[1m", "", "\x1b[0m", "").Replace(stdout); got != plain || strings.Contains(plain, bold) {
		t.Errorf("a pipe gets\n%q\nand a terminal\n%q", plain, got)
	}
	for name, set := range map[string][2]string{"NO_COLOR": {"NO_COLOR", "1"}, "dumb": {"TERM", "dumb"}} {
		t.Run(name, func(t *testing.T) {
			t.Setenv(set[0], set[1])
			if _, stdout, _ := onTerminal(line); strings.Contains(stdout, bold) {
				t.Error("bold all the same")
			}
		})
	}
	if _, stdout, _ := onTerminal(line + " --format json"); strings.Contains(stdout, bold) {
		t.Error("bold in JSON")
	}
	if _, stdout, _ := onTerminal("takeoff good.csv"); !strings.Contains(stdout, "\x1b[1mBy system\x1b[0m\n") {
		t.Errorf("%q", stdout)
	}
}

// TestQuiet leaves out what was written and no fault or error.
func TestQuiet(t *testing.T) {
	site(t, map[string]string{"good.csv": goodSchedule, "some.csv": goodSchedule + "C,S1,L1,straight,600,,,9000,B,B,400\n"})
	for _, c := range []struct{ line, says string }{
		{"plan good.csv --rig rig.toml -o pack", "wrote pack"},
		{"takeoff good.csv -o a.csv", "wrote a.csv"},
		{"template -o t.xlsx", "wrote t.xlsx"},
		{"kinds bend -o bend.svg", "wrote bend.svg"},
	} {
		if _, _, talk := typed(t, c.line); !strings.Contains(talk, c.says) {
			t.Errorf("%s says %q", c.line, talk)
		}
	}
	for _, line := range []string{"--quiet plan good.csv --rig rig.toml -o pack2", "takeoff good.csv --quiet -o b.csv", "template -o u.xlsx --quiet", "kinds bend -o bend2.svg --quiet"} {
		if code, _, talk := typed(t, line); code != exitDone || talk != "" {
			t.Errorf("%s: exit %d, says %q", line, code, talk)
		}
	}
	if _, _, talk := typed(t, "takeoff some.csv --quiet"); !strings.Contains(talk, "1 fault") {
		t.Errorf("a fault isn't told: %q", talk)
	}
	if code, _, talk := typed(t, "plan nothere.csv --rig rig.toml --quiet"); code != exitFailed || !strings.Contains(talk, "nothere.csv") {
		t.Errorf("an error isn't told: %q", talk)
	}
}

// TestProgressIsWiped: the line is written over itself, gives way to what else is
// said, and nothing of it is left.
func TestProgressIsWiped(t *testing.T) {
	var out fakeTerminal
	p := newProgress(&out, true)
	p.timer.Stop() // ticks come by hand
	p.say("reading")
	p.tick()
	p.tick()
	p.say("planning: a \x1b[2J" + strings.Repeat("long", 40))
	p.tick()
	if _, err := p.Write([]byte("1 fault\n")); err != nil {
		t.Fatal(err)
	}
	p.tick()
	p.done()
	p.say("too late")
	p.tick()
	shown, most := screenAfter(t, out.String())
	if shown != "1 fault\n" || strings.Count(out.String(), "reading") != 1 || most > widest || strings.Contains(out.String(), "late") || strings.Contains(out.String(), "\x1b") {
		t.Errorf("%q leaves %q, %d columns wide", out.String(), shown, most)
	}
}

// screenAfter is what stands on a terminal that knows line ends and carriage
// returns, without spaces at the end of lines, and the widest line ever.
func screenAfter(t *testing.T, text string) (string, int) {
	t.Helper()
	var lines []string
	line, at, most := []rune{}, 0, 0
	for _, r := range text {
		switch r {
		case '\r':
			at = 0
		case '\n':
			lines, line, at = append(lines, strings.TrimRight(string(line), " ")+"\n"), nil, 0
		default:
			if at == len(line) {
				line = append(line, r)
			} else {
				line[at] = r
			}
			at++
			most = max(most, at)
		}
	}
	return strings.Join(lines, "") + strings.TrimRight(string(line), " "), most
}

// TestProgressWaits: quick work shows nothing, long work does, and nothing is
// ever shown anywhere but on a terminal.
func TestProgressWaits(t *testing.T) {
	site(t, map[string]string{"good.csv": goodSchedule})
	if _, _, talk := onTerminal("takeoff good.csv"); talk != "" {
		t.Errorf("says %q of quick work", talk)
	}
	var term fakeTerminal
	p := newProgress(&term, true)
	p.say("reading")
	for wait := time.Now(); time.Since(wait) < 10*time.Second; time.Sleep(20 * time.Millisecond) {
		p.mu.Lock()
		shown := p.seen
		p.mu.Unlock()
		if shown == "reading" {
			break
		}
	}
	p.done()
	if !strings.HasPrefix(term.String(), "reading") {
		t.Errorf("says %q of long work", term.String())
	}
	var pipe bytes.Buffer
	p = newProgress(&pipe, false)
	p.say("reading")
	p.done()
	if pipe.Len() > 0 {
		t.Errorf("%q in a pipe", pipe.String())
	}
}
