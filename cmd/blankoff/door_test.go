package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func runOn(t *testing.T, args ...string) (code int, out, talk string) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	code = run(args, &stdout, &stderr)
	return code, stdout.String(), stderr.String()
}

func needs(t *testing.T, what, text string, wants ...string) {
	t.Helper()
	for _, want := range wants {
		if !strings.Contains(text, want) {
			t.Errorf("%s: %q is missing in\n%s", what, want, text)
		}
	}
}

const office = "Long barn\nPos;Formstück;Abmessung;Länge (m);Farbe;Widht\n1;Kanal;600x400;1,5;rot;\n2;Kanal;600 oder 400;1,5;rot;\nSumme;;;;;\n"

// inspect shows columns, units and rows, and writes a map that reads the same.
func TestInspect(t *testing.T) {
	dir := t.TempDir()
	file, m := filepath.Join(dir, "office.csv"), filepath.Join(dir, "office.toml")
	if err := os.WriteFile(file, []byte(office), 0o600); err != nil {
		t.Fatal(err)
	}
	code, out, talk := runOn(t, "inspect", file, "-o", m)
	if code != exitPartly {
		t.Errorf("exit code %d", code)
	}
	needs(t, "inspect", out, "parted by semicolons, a comma for decimals", "headings in row 2", "Abmessung", "size", "assumed: nothing says so",
		"did you mean width_mm?", "not known", "1     totals", "2     pieces", "row 3: 1 | Kanal | 600x400 | 1,5 | rot")
	needs(t, "faults", talk, "office.csv, row 4, Abmessung: '600 oder 400'", "wrote "+m)
	code, out, talk = runOn(t, "takeoff", file, "--map", m)
	if code != exitPartly || strings.Contains(talk, "Widht") {
		t.Errorf("exit code %d\n%s", code, talk)
	}
	needs(t, "takeoff", out, "3.00 m2 in scope", "3 read = 1 used + 1 excluded + 1 refused")
	if err := os.WriteFile(m, []byte("[[sheet]]\nfoo = 1\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if code, _, talk = runOn(t, "takeoff", file, "--map", m); code != exitFailed || !strings.Contains(talk, "'sheet.foo' isn't known") {
		t.Errorf("%d %s", code, talk)
	}
}

// The refused rows of a takeoff and of a plan are written, mended and read.
func TestRefusedRows(t *testing.T) {
	dir := t.TempDir()
	file, out := filepath.Join(dir, "office.csv"), filepath.Join(dir, "mend.csv")
	if err := os.WriteFile(file, []byte(office), 0o600); err != nil {
		t.Fatal(err)
	}
	if code, _, talk := runOn(t, "takeoff", file, "--refused", out); code != exitPartly || !strings.Contains(talk, "wrote "+out) {
		t.Fatalf("%d %s", code, talk)
	}
	rows, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	needs(t, "refused rows", string(rows), "Long barn", "Farbe;Widht;refused: headings;refused: why", "2;Kanal;600 oder 400;1,5;rot;;Abmessung;")
	mended := strings.Replace(strings.Replace(string(rows), "600 oder 400;", "600x400;", 1), "Widht", "Tiefe", 1)
	if err := os.WriteFile(out, []byte(mended), 0o600); err != nil {
		t.Fatal(err)
	}
	if code, answer, talk := runOn(t, "takeoff", out); code != exitDone || !strings.Contains(answer, "3.00 m2 in scope") {
		t.Errorf("%d %s %s", code, answer, talk)
	}
	pack := filepath.Join(dir, "pack")
	if code, _, talk := runOn(t, "plan", file, "--rig", filepath.Join("..", "..", "examples", "site-lead", "rig.toml"), "--class", "B", "--test-pressure", "400", "-o", pack); code != exitPartly {
		t.Fatalf("%d %s", code, talk)
	}
	if again, err := os.ReadFile(filepath.Join(pack, "refused.csv")); err != nil || !bytes.Equal(again, rows) {
		t.Errorf("%v\n%s", err, again)
	}
	if code, _, talk := runOn(t, "takeoff", file, "--refused", file); code == exitPartly || !strings.Contains(talk, "also an input") {
		t.Errorf("%d %s", code, talk)
	}
	if code, _, talk := runOn(t, "takeoff", file, "--refused", "x.pdf"); code != exitMisuse {
		t.Errorf("%d %s", code, talk)
	}
}

// A user's words are read beside the program's own.
func TestAliases(t *testing.T) {
	dir := t.TempDir()
	file, words := filepath.Join(dir, "s.csv"), filepath.Join(dir, "w.csv")
	for name, text := range map[string]string{file: "tag,kind,panel,height_mm,length_mm\nA,kanalstueck x,600,400,1000\n", words: "heading,width_mm,panel\nkind,straight,kanalstueck x\n"} {
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if code, out, talk := runOn(t, "takeoff", file, "--aliases", words); code != exitDone || !strings.Contains(out, "2.00 m2 in scope") {
		t.Errorf("%d %s %s", code, out, talk)
	}
}
