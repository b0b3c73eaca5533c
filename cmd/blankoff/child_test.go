//go:build unix

package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
)

// The test binary can be run again as the program, or as one that writes packs
// and is killed at it: BLANKOFF_CHILD says as which.
func TestMain(m *testing.M) {
	switch os.Getenv("BLANKOFF_CHILD") {
	case "run":
		if err := limitChild(); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(99)
		}
		sparing()
		os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
	case "pack":
		os.Exit(packChild())
	}
	os.Exit(m.Run())
}

// limitChild holds the program to what the environment says: BLANKOFF_FSIZE, the
// largest file that it may write, bytes; BLANKOFF_UID, whom it runs as.
func limitChild() error {
	if n, err := strconv.Atoi(os.Getenv("BLANKOFF_UID")); err == nil {
		if err := syscall.Setuid(n); err != nil {
			return err
		}
	}
	if n, err := strconv.ParseUint(os.Getenv("BLANKOFF_FSIZE"), 10, 64); err == nil {
		return syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: n, Max: n})
	}
	return nil
}

// ran is what came of a run of the program in a process of its own.
type ran struct {
	code           int
	stdout, stderr string
	took, spent    time.Duration // waited; of processors
	most           int64         // memory held at most, bytes
}

// inChild runs the program in a process of its own and waits for a minute at most.
func inChild(t *testing.T, dir string, stdin io.Reader, env []string, args ...string) ran {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(self, args...)
	c.Dir, c.Stdin = dir, stdin
	c.Env = append(append(os.Environ(), "BLANKOFF_CHILD=run"), env...)
	var out, talk bytes.Buffer
	c.Stdout, c.Stderr = &out, &talk
	begun := time.Now()
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	stop := time.AfterFunc(time.Minute, func() { _ = c.Process.Kill() })
	err = c.Wait()
	stop.Stop()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Logf("%v", err) // the writer to its stdin was cut off, say
	}
	r := ran{c.ProcessState.ExitCode(), out.String(), talk.String(), time.Since(begun), c.ProcessState.UserTime() + c.ProcessState.SystemTime(), 0}
	if u, ok := c.ProcessState.SysUsage().(*syscall.Rusage); ok {
		r.most = u.Maxrss << 10
	}
	return r
}

// unharmed fails where a run ended otherwise than the program ends by itself.
func (r *ran) unharmed(t *testing.T, what string) {
	t.Helper()
	if r.code < 0 || r.code > exitPartly || strings.Contains(r.stderr, "panic") || strings.Contains(r.stderr, "goroutine ") {
		t.Errorf("%s: exit %d: %.600s", what, r.code, r.stderr)
	}
}
