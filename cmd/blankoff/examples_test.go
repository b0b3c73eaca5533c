package main

import (
	"archive/zip"
	"bytes"
	"compress/zlib"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The READMEs are run as they stand: every fenced block that begins with a
// command is carried out in the README's folder and has to print what is shown.
//
//	$ blankoff plan schedule.csv --rig rig.toml -o plan-pack
//	(exit 3)
//	10 tests, ...
//	[...]
//
// Without (exit N) the code is 0. A line [...] stands for any lines. With 2>&1
// after the command, what it says to stderr is shown too, as on a terminal.
// What -o names is kept beside the README and has to come out byte for byte.
var updateExamples = flag.Bool("update", false, "rewrite the blocks of the READMEs and the output kept beside them")

const (
	anyLines = "[...]"
	toUpdate = "if the new one is right: go test ./cmd/blankoff -run Examples -update"
)

func TestExamples(t *testing.T) {
	readmes, err := filepath.Glob("../../examples/*/README.md")
	if err != nil || len(readmes) != 3 {
		t.Fatalf("%d examples with a README.md, want one for each of three users (%v)", len(readmes), err)
	}
	if _, err := os.Stat("../../README.md"); err == nil {
		readmes = append(readmes, "../../README.md")
	}
	for _, path := range readmes {
		t.Run(strings.TrimPrefix(filepath.ToSlash(path), "../../"), func(t *testing.T) { runReadme(t, path) })
	}
}

// TestReadmeCommands runs the commands that README.md gives without output.
func TestReadmeCommands(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir("../..")
	found := regexp.MustCompile(`(?m)^(?:    |\t)(go run \./cmd/blankoff .*)$`).FindAllSubmatch(text, -1)
	if len(found) == 0 {
		t.Error("README.md gives no command that runs the main job")
	}
	for _, m := range found {
		args, _, _ := shown{line: "$ " + string(m[1])}.args(t)
		var stdout, stderr bytes.Buffer
		if code := run(args, &stdout, &stderr); code != exitDone && code != exitPartly || stdout.Len() == 0 {
			t.Errorf("%s\nexit %d, %d bytes of answer; stderr:\n%s", m[1], code, stdout.Len(), stderr.String())
		}
	}
}

// runReadme runs the blocks of one README in order.
func runReadme(t *testing.T, path string) {
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(filepath.Dir(path))
	var now []string
	ran := 0
	for lines := strings.Split(string(text), "\n"); len(lines) > 0; {
		now = append(now, lines[0])
		opens := strings.HasPrefix(lines[0], "```") && len(lines) > 1 && prompt.MatchString(lines[1])
		if lines = lines[1:]; !opens {
			continue
		}
		end := slices.Index(lines, "```")
		if end < 0 {
			t.Fatalf("the block of %q isn't closed", lines[0])
		}
		for _, c := range commandsIn(lines[:end]) {
			now = append(now, c.run(t)...)
			ran++
		}
		lines = lines[end:]
	}
	if ran == 0 && strings.Contains(path, "examples") {
		t.Fatal("no block with a command")
	}
	if s := strings.Join(now, "\n"); *updateExamples && s != string(text) {
		if err := os.WriteFile(filepath.Base(path), []byte(s), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

var (
	prompt   = regexp.MustCompile(`^\$ (blankoff|go run \./cmd/blankoff) `)
	exitLine = regexp.MustCompile(`^\(exit (\d+)\)$`)
)

// shown is a command and what the README shows of it.
type shown struct {
	line string
	exit int
	want []string
}

// commandsIn parts a block, which begins with a command, into its commands.
func commandsIn(lines []string) []shown {
	var list []shown
	for k, line := range lines {
		if prompt.MatchString(line) {
			list = append(list, shown{line: line})
			continue
		}
		c := &list[len(list)-1]
		if m := exitLine.FindStringSubmatch(line); m != nil && prompt.MatchString(lines[k-1]) {
			c.exit, _ = strconv.Atoi(m[1])
			continue
		}
		c.want = append(c.want, line)
	}
	return list
}

// run carries out one command and returns its lines of the README as they
// should be.
func (c shown) run(t *testing.T) []string {
	t.Helper()
	args, kept, temp := c.args(t)
	var stdout, stderr bytes.Buffer
	var talk io.Writer = &stderr
	if strings.HasSuffix(c.line, " 2>&1") {
		talk = &stdout
	}
	code := run(args, &stdout, talk)
	got := strings.Split(strings.TrimSuffix(stdout.String(), "\n"), "\n")
	if stdout.Len() == 0 {
		got = nil
	}
	why := differs(got, c.want)
	lines := []string{c.line}
	if code != 0 {
		lines = append(lines, fmt.Sprintf("(exit %d)", code))
	}
	if why != "" && *updateExamples {
		c.want = c.renewed(t, got)
	} else if why != "" {
		t.Errorf("%s\n%s\n%s", c.line, why, toUpdate)
	}
	if code != c.exit && !*updateExamples {
		t.Errorf("%s\nexit %d, the README says %d; stderr:\n%s", c.line, code, c.exit, stderr.String())
	}
	if kept != "" && !exists("go.mod") { // the module's root keeps no output
		compareKept(t, kept, temp)
	}
	return append(lines, c.want...)
}

// args parts the command line into words; words in double quotes hold spaces.
// What -o names is sent to a temporary place.
func (c shown) args(t *testing.T) (args []string, kept, temp string) {
	t.Helper()
	line := strings.TrimSuffix(prompt.ReplaceAllString(c.line, ""), " 2>&1")
	if strings.ContainsAny(line, "|<>;&'$") {
		t.Fatalf("%s\nonly words, double quotes and 2>&1 are understood", c.line)
	}
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			args = append(args, part)
			continue
		}
		args = append(args, strings.Fields(part)...)
	}
	if i := slices.Index(args, "-o") + 1; i > 0 && i < len(args) {
		kept = args[i]
		if !filepath.IsLocal(kept) || kept == "." {
			t.Fatalf("%s\nwrites outside its folder", c.line)
		}
		temp = filepath.Join(t.TempDir(), filepath.Base(kept))
		args[i] = temp
	}
	return args, kept, temp
}

// differs compares lines with a pattern in which [...] stands for any lines,
// and says where they part.
func differs(got, want []string) string {
	parts := splitAt(want, anyLines)
	head, rest := parts[0], got
	for i, line := range head {
		if i >= len(got) || got[i] != line {
			return fmt.Sprintf("line %d: the README shows\n  %s\nnow it is\n  %s", i+1, line, strings.Join(got[min(i, len(got)):min(i+1, len(got))], ""))
		}
	}
	rest = rest[len(head):]
	if len(parts) == 1 {
		if len(rest) > 0 {
			return "the README stops before the output does, which goes on with\n  " + rest[0]
		}
		return ""
	}
	for _, part := range parts[1 : len(parts)-1] {
		k := 0
		for k+len(part) <= len(rest) && !slices.Equal(rest[k:k+len(part)], part) {
			k++
		}
		if k+len(part) > len(rest) {
			return "these lines don't come any more:\n  " + strings.Join(part, "\n  ")
		}
		rest = rest[k+len(part):]
	}
	tail := parts[len(parts)-1]
	if k := len(rest) - len(tail); k < 0 || !slices.Equal(rest[k:], tail) {
		return "it doesn't end any more with\n  " + strings.Join(tail, "\n  ")
	}
	return ""
}

// splitAt parts lines at every line like at; there is always one part.
func splitAt(lines []string, at string) [][]string {
	parts := [][]string{nil}
	for _, line := range lines {
		if line == at {
			parts = append(parts, nil)
			continue
		}
		parts[len(parts)-1] = append(parts[len(parts)-1], line)
	}
	return parts
}

// renewed is the lines that the README should show, with cuts where they were.
// What stands before, between and after cuts keeps its number of paragraphs;
// between, it is found again by the first two words of its first line.
func (c shown) renewed(t *testing.T, got []string) []string {
	t.Helper()
	parts := splitAt(c.want, anyLines)
	if len(parts) == 1 {
		return got
	}
	lines, rest := paragraphs(got, len(splitAt(parts[0], ""))), got
	if len(parts[0]) == 0 {
		lines = nil
	}
	lines = slices.Clone(lines)
	rest = rest[len(lines):]
	for _, part := range parts[1 : len(parts)-1] {
		k := slices.IndexFunc(rest, func(line string) bool { return opening(line) == opening(part[0]) })
		if k < 0 {
			t.Errorf("%s\nno line begins any more as %q does: mend the README by hand", c.line, part[0])
			return c.want
		}
		found := paragraphs(rest[k:], len(splitAt(part, "")))
		lines = append(append(lines, anyLines), found...)
		rest = rest[k+len(found):]
	}
	tail := parts[len(parts)-1]
	return append(append(lines, anyLines), rest[max(0, len(rest)-len(tail)):]...)
}

// paragraphs is the first n paragraphs of lines.
func paragraphs(lines []string, n int) []string {
	for i, line := range lines {
		if line == "" {
			if n--; n == 0 {
				return lines[:i]
			}
		}
	}
	return lines
}

func opening(line string) string {
	words := strings.Fields(line)
	return strings.Join(words[:min(2, len(words))], " ")
}

// compareKept compares what was written with what is kept beside the README,
// file by file, both ways round.
func compareKept(t *testing.T, kept, written string) {
	t.Helper()
	now := files(t, written)
	if *updateExamples {
		if err := os.RemoveAll(kept); err != nil {
			t.Fatal(err)
		}
		for name, data := range now {
			at := filepath.Join(kept, name)
			if err := os.MkdirAll(filepath.Dir(at), 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(at, data, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	before := files(t, kept)
	for name, data := range now {
		if name == listName && before[name] != nil { // its sums are those of packed files
			isWhole(t, kept)
			delete(before, name)
			continue
		}
		if old, ok := before[name]; !ok || !bytes.Equal(unpacked(t, old), unpacked(t, data)) {
			t.Errorf("%s isn't what is kept beside the README (kept: %v); %s", filepath.Join(kept, name), ok, toUpdate)
		}
		delete(before, name)
	}
	for name := range before {
		t.Errorf("%s is kept beside the README but isn't written any more", filepath.Join(kept, name))
	}
}

// isWhole fails where a pack isn't what its list says.
func isWhole(t *testing.T, dir string) {
	t.Helper()
	list, err := readPackList(dir)
	if err != nil || len(list.Files) == 0 {
		t.Fatalf("%s: the list has %d files (%v)", dir, len(list.Files), err)
	}
	for _, f := range list.Files {
		st, err := os.Stat(filepath.Join(dir, f.Name))
		sum, e := sumOf(filepath.Join(dir, f.Name))
		if err != nil || e != nil || sum != f.SHA256 || st.Size() != f.Bytes {
			t.Errorf("%s isn't what the list says (%v %v)", filepath.Join(dir, f.Name), err, e)
		}
	}
}

// files reads a file, under the name ".", or every file of a folder.
func files(t *testing.T, path string) map[string][]byte {
	t.Helper()
	found := map[string][]byte{}
	err := filepath.WalkDir(path, func(at string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, _ := filepath.Rel(path, at)
		found[name], err = os.ReadFile(at)
		return err
	})
	if err != nil {
		t.Errorf("%s: %v", path, err)
	}
	return found
}

// unpacked is the content of a workbook in the order of its parts, or of a PDF's
// streams, so that another release of the compressor makes no difference; other
// files stay.
func unpacked(t *testing.T, data []byte) []byte {
	t.Helper()
	if bytes.HasPrefix(data, []byte("%PDF")) {
		return inflated(t, data)
	}
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return data
	}
	var all bytes.Buffer
	for _, f := range z.File {
		fmt.Fprintln(&all, f.Name, f.Modified.UTC())
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.Copy(&all, r); err != nil {
			t.Fatal(err)
		}
		r.Close()
	}
	return all.Bytes()
}

// inflated is a PDF with its streams unpacked, without the lengths of streams and
// the table of places, which depend on how they were packed.
func inflated(t *testing.T, data []byte) []byte {
	t.Helper()
	body, _, _ := bytes.Cut(data, []byte("\nxref\n"))
	body = regexp.MustCompile(`/Length \d+`).ReplaceAll(body, nil)
	return regexp.MustCompile(`(?s)stream\n.*?\nendstream`).ReplaceAllFunc(body, func(b []byte) []byte {
		z, err := zlib.NewReader(bytes.NewReader(b[len("stream\n"):]))
		if err != nil {
			return b
		}
		plain, err := io.ReadAll(z)
		if err != nil {
			t.Fatal(err)
		}
		return plain
	})
}

// TestExamplesDiffer tries the comparison on outputs that it has to tell apart,
// and that what is renewed is then alike.
func TestExamplesDiffer(t *testing.T) {
	got := []string{"a", "b", "c", "", "d 1 x", "e"}
	for _, tt := range []struct {
		want []string
		same bool
	}{
		{got, true},
		{got[:4], false},
		{append(slices.Clone(got), "f"), false},
		{[]string{"a", "X", "c", "", "d 1 x", "e"}, false},
		{[]string{"a", anyLines, "e"}, true},
		{[]string{anyLines, "e"}, true},
		{[]string{"a", anyLines}, true},
		{[]string{"a", anyLines, "c", anyLines, "e"}, true},
		{[]string{"a", anyLines, "d 1 y", anyLines, "e"}, false},
		{[]string{"a", anyLines, "d 1 x"}, false},
		{[]string{"b", anyLines, "e"}, false},
		{[]string{"a", anyLines, "e", anyLines, "e"}, false},
	} {
		if why := differs(got, tt.want); (why == "") != tt.same {
			t.Errorf("%q: said %q, want same = %v", tt.want, why, tt.same)
		}
	}
	c := shown{want: []string{"A", anyLines, "d 1 y", anyLines}}
	if now := c.renewed(t, got); !slices.Equal(now, []string{"a", "b", "c", anyLines, "d 1 x", "e", anyLines}) {
		t.Errorf("renewed: %q", now)
	}
}
