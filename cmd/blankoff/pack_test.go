//go:build unix

package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
)

// made is a pack of small files that all say which run wrote them.
func made(run string, files, size int) []document {
	var docs []document
	for i := range files {
		docs = append(docs, document{fmt.Sprintf("doc%d.txt", i), func(w io.Writer) error {
			_, err := io.WriteString(w, run+"\n"+strings.Repeat("x", size)+"\n"+run+"\n")
			return err
		}})
	}
	return docs
}

// packChild writes a pack as the environment says: DIR, RUN, FILES, SIZE. With AT
// it kills itself at that change of a name.
func packChild() int {
	n := func(key string) int { v, _ := strconv.Atoi(os.Getenv("BLANKOFF_" + key)); return v }
	if at := n("AT"); at > 0 {
		rename = func(from, to string) error {
			if at--; at == 0 {
				_ = syscall.Kill(os.Getpid(), syscall.SIGKILL)
				select {}
			}
			return os.Rename(from, to)
		}
	}
	fmt.Println("begun")
	if err := writePack(os.Getenv("BLANKOFF_DIR"), nil, made(os.Getenv("BLANKOFF_RUN"), n("FILES"), n("SIZE")), os.Stderr); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return 0
}

// writer starts a process that writes a pack; it has begun once this returns.
func writer(t *testing.T, dir, run string, files, size, at int) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(self)
	c.Env = append(os.Environ(), "BLANKOFF_CHILD=pack", "BLANKOFF_DIR="+dir, "BLANKOFF_RUN="+run,
		fmt.Sprintf("BLANKOFF_FILES=%d", files), fmt.Sprintf("BLANKOFF_SIZE=%d", size), fmt.Sprintf("BLANKOFF_AT=%d", at))
	out, err := c.StdoutPipe()
	if err == nil {
		err = c.Start()
	}
	if err != nil {
		t.Fatal(err)
	}
	if _, err := io.ReadFull(out, make([]byte, 6)); err != nil {
		t.Fatal(err)
	}
	return c
}

// state says what a reader finds in a pack: "none", "whole" with the run that
// wrote it, or "half" where it is marked as half replaced. Anything else is an
// error: a mix that nobody is told of, a file that is cut short, or one left over.
func state(t *testing.T, dir string) (is, run string) {
	t.Helper()
	if !exists(dir) {
		return "none", ""
	}
	runs := map[string]bool{}
	docs, err := filepath.Glob(filepath.Join(dir, "doc*.txt"))
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range docs {
		data, err := os.ReadFile(path)
		lines := strings.Split(string(data), "\n")
		if err != nil || len(lines) != 4 || lines[0] != lines[2] {
			t.Fatalf("%s is half written (%v)", path, err)
		}
		run = lines[0]
		runs[run] = true
	}
	if exists(filepath.Join(dir, halfName)) {
		return "half", ""
	}
	if len(runs) != 1 {
		t.Fatalf("%s holds files of %d runs and nothing says so", dir, len(runs))
	}
	isWhole(t, dir)
	list, _ := readPackList(dir)
	if len(docs) != len(list.Files) {
		t.Fatalf("%d documents, the list has %d", len(docs), len(list.Files))
	}
	return "whole", run
}

// settled writes a pack over whatever is there and looks that it is whole and
// that nothing else is left, in its folder and above it. It returns what was said.
func settled(t *testing.T, dir, run string, files int) string {
	t.Helper()
	var talk strings.Builder
	if err := writePack(dir, nil, made(run, files, 10), &talk); err != nil {
		t.Fatalf("after a kill: %v", err)
	}
	if is, by := state(t, dir); is != "whole" || by != run {
		t.Fatalf("after a kill and a whole run the pack is %s by %q", is, by)
	}
	for _, in := range []string{dir, filepath.Dir(dir)} {
		list, err := os.ReadDir(in)
		if err != nil {
			t.Fatal(err)
		}
		if n := map[bool]int{true: files + 1, false: 1}[in == dir]; len(list) != n {
			t.Fatalf("%s holds %v", in, list)
		}
	}
	return talk.String()
}

// TestKilledWhileWriting kills a run that replaces a pack at 200 random moments:
// what is found is the old pack whole, the new one whole, or half of each with a
// folder that says so; and the next run leaves nothing of it.
func TestKilledWhileWriting(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	found := map[string]int{}
	for i := range 200 {
		dir := filepath.Join(t.TempDir(), "pack")
		if i%10 > 0 {
			if err := writePack(dir, nil, made("old", 12, 10), io.Discard); err != nil {
				t.Fatal(err)
			}
		}
		c := writer(t, dir, "new", 10, []int{10, 10, 300_000}[i%3], 0)
		time.Sleep(time.Duration(r.IntN(12_000)) * time.Microsecond)
		_ = c.Process.Kill()
		_ = c.Wait()
		is, by := state(t, dir)
		found[is+" "+by]++
		said := settled(t, dir, "next", 11)
		if told := strings.Contains(said, "stopped while it replaced"); told != (is == "half") {
			t.Fatalf("the pack was %s, and the next run said %q", is, said)
		}
	}
	t.Logf("found after the kill: %v", found)
	for _, want := range []string{"whole old", "whole new"} {
		if found[want] == 0 {
			t.Errorf("never found %s: the moments aren't spread over the writing", want)
		}
	}
}

// TestKilledAtEveryName does it at every change of a name, one after the other.
func TestKilledAtEveryName(t *testing.T) {
	found := map[string]int{}
	for at := 1; ; at++ {
		dir := filepath.Join(t.TempDir(), "pack")
		if err := writePack(dir, nil, made("old", 5, 10), io.Discard); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, "doc1.txt"), []byte("mine\n\nmine\n"), 0o644); err != nil {
			t.Fatal(err)
		}
		c := writer(t, dir, "new", 4, 10, at)
		if err := c.Wait(); err == nil {
			if at < 10 || found["half"] < 8 {
				t.Errorf("%d changes of names: %v", at-1, found)
			}
			return
		}
		is := "whole"
		if exists(filepath.Join(dir, halfName)) {
			is = "half"
		}
		found[is]++
		if err := writePack(dir, nil, made("next", 4, 10), io.Discard); err != nil {
			t.Fatalf("killed at name %d: %v", at, err)
		}
		isWhole(t, dir)
		mine, err := os.ReadFile(filepath.Join(dir, "earlier-doc1.txt"))
		if err != nil || string(mine) != "mine\n\nmine\n" {
			t.Errorf("killed at name %d: what somebody had changed is lost (%v)", at, err)
		}
		if got := names(t, dir); got != "doc0.txt doc1.txt doc2.txt doc3.txt earlier-doc1.txt pack.json" {
			t.Errorf("killed at name %d: %s", at, got)
		}
	}
}

// A name that can't be taken away from the old pack leaves all as it was.
func TestOldFileHeld(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "pack")
	if err := writePack(dir, nil, made("old", 5, 10), io.Discard); err != nil {
		t.Fatal(err)
	}
	before := files(t, dir)
	defer func() { rename = os.Rename }()
	rename = func(from, to string) error {
		if from == filepath.Join(dir, "doc3.txt") {
			return &os.LinkError{Op: "rename", Old: from, New: to, Err: syscall.EBUSY}
		}
		return os.Rename(from, to)
	}
	err := writePack(dir, nil, made("new", 5, 10), io.Discard)
	var h hint
	if !errors.As(err, &h) || !strings.Contains(err.Error(), "as it was") || !strings.Contains(h.next, "close the program") {
		t.Errorf("%v", err)
	}
	if after := files(t, dir); !slices.Equal(listed(after), listed(before)) {
		t.Errorf("left %v, was %v", listed(after), listed(before))
	}
	if is, run := state(t, dir); is != "whole" || run != "old" {
		t.Errorf("%s by %s", is, run)
	}
}

func listed(files map[string][]byte) (all []string) {
	for name, data := range files {
		all = append(all, name+": "+string(data))
	}
	slices.Sort(all)
	return all
}

// Files of an older pack that the new one no longer has don't stay as if they
// were current; what somebody changed, or what is read, isn't lost.
func TestNoLongerInThePack(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "pack")
	at := func(name string) string { return filepath.Join(dir, name) }
	if err := writePack(dir, nil, made("old", 6, 10), io.Discard); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"doc5.txt", "notes.txt"} {
		if err := os.WriteFile(at(name), []byte("mine"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	var talk strings.Builder
	if err := writePack(dir, []string{at("doc4.txt")}, made("new", 3, 10), &talk); err != nil {
		t.Fatal(err)
	}
	if got := names(t, dir); got != "doc0.txt doc1.txt doc2.txt doc4.txt earlier-doc5.txt notes.txt pack.json" {
		t.Errorf("%s", got)
	}
	for _, want := range []string{"doc5.txt had been changed", "doc4.txt is of the older pack and stays"} {
		if !strings.Contains(talk.String(), want) {
			t.Errorf("nothing said of %q: %s", want, talk.String())
		}
	}
}

// Two runs at once: one of them is told to wait, and the pack is whole.
func TestTwoRunsAtOnce(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "pack")
	if err := os.Mkdir(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	c := make(chan error)
	for i := range 4 {
		go func() { c <- writePack(dir, nil, made(fmt.Sprint("run", i), 20, 100_000), io.Discard) }()
	}
	done := 0
	for range 4 {
		if err := <-c; err == nil {
			done++
		} else if !strings.Contains(err.Error(), "another run of blankoff is writing") {
			t.Error(err)
		}
	}
	if is, _ := state(t, dir); is != "whole" || done == 0 {
		t.Errorf("%s after %d runs", is, done)
	}
}

// A list that isn't ours, or that names what lies elsewhere, is no leave to take
// files away.
func TestForeignList(t *testing.T) {
	top := t.TempDir()
	if err := os.WriteFile(filepath.Join(top, "mine.txt"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	empty := "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855" // SHA-256 of nothing
	for _, list := range []string{
		`{"name":"something else"}`, `not JSON`, ``,
		`{"about":"` + listAbout + `","files":[{"name":"../mine.txt","sha256":"` + empty + `"}]}`,
		`{"about":"` + listAbout + `","files":[{"name":"..\\mine.txt","sha256":"` + empty + `"}]}`,
		`{"about":"` + listAbout + `","files":[{"name":"` + filepath.Join(top, "mine.txt") + `","sha256":"` + empty + `"}]}`,
		`{"about":"` + listAbout + `","files":[{"name":"","sha256":""}]}`,
		`{"about":"` + listAbout + `","files":[{"name":".","sha256":""}]}`,
	} {
		dir := filepath.Join(top, "pack")
		if err := os.MkdirAll(dir, 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, listName), []byte(list), 0o644); err != nil {
			t.Fatal(err)
		}
		err := writePack(dir, nil, made("new", 3, 10), io.Discard)
		if err == nil || names(t, dir) != listName || !exists(filepath.Join(top, "mine.txt")) {
			t.Errorf("%s: %v; the folder holds %s", list, err, names(t, dir))
		}
	}
}

// What others keep under a like name isn't litter.
func TestSweepTakesOnlyLitter(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{".blankoff-notes", ".blankoff-0123456789abcdeg", "blankoff-0123456789abcdef", ".blankoff-0123456789abcdef"} {
		if err := os.WriteFile(filepath.Join(dir, name), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	held, err := tempFile(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer held.Close()
	sweep(dir)
	if _, err := os.Lstat(filepath.Join(dir, ".blankoff-0123456789abcdef")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("litter stays: %v", err)
	}
	if list, _ := os.ReadDir(dir); len(list) != 4 || !exists(held.Name()) {
		t.Errorf("%v", list)
	}
}
