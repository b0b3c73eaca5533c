package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"

	"blankoff/planner"
	"blankoff/planner/cutlist"
	"blankoff/planner/job"
	"blankoff/planner/keep"
	"blankoff/planner/rig"
	"blankoff/planner/tightness"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
)

// readTakeoff reads and measures a schedule.
func readTakeoff(path string, o measureOptions, on *progress) (*takeoff.Takeoff, error) {
	options, err := o.settle()
	if err != nil {
		return nil, err
	}
	return measured(path, options, on)
}

// largeFile is the size from which memory is spared, in bytes.
const largeFile = 10_000_000

// measured reads and measures a schedule with settled options.
func measured(path string, options takeoff.Options, on *progress) (*takeoff.Takeoff, error) {
	t := takeoff.New(options)
	on.say("reading " + filepath.Base(path))
	if st, err := os.Stat(path); err == nil && st.Size() > largeFile {
		debug.SetGCPercent(20) // of a large schedule nearly all is kept: less room beside it
	}
	info, err := schedule.Into(path, t, func(rows int) {
		on.say(fmt.Sprintf("reading %s, row %d", filepath.Base(path), rows))
	})
	if err != nil {
		return nil, err
	}
	on.say("measuring")
	t.Finish(info.Schedule, info.Faults, info.Notes)
	return t, nil
}

// readJob reads a job file.
func readJob(path string) (job.Job, error) {
	f, err := os.Open(path)
	if err != nil {
		return job.Job{}, fmt.Errorf("job file %s: %w", path, cause(err))
	}
	defer f.Close()
	return job.Load(f, path)
}

// readCuts reads a person's own cuts; "" gives none.
func readCuts(path string) ([]planner.OwnCut, []takeoff.Fault, error) {
	if path == "" {
		return nil, nil, nil
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, fmt.Errorf("cuts file %s: %w", path, cause(err))
	}
	defer f.Close()
	return cutlist.Read(f, path)
}

// readOld reads an earlier plan; "" gives none.
func readOld(path string) (*planner.Old, error) {
	if path == "" {
		return nil, nil
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("earlier plan %s: %w", path, cause(err))
	}
	defer f.Close()
	old, err := keep.Read(f, path)
	return &old, err
}

// readRig reads a rig file.
func readRig(path string) (*rig.Rig, []string, error) {
	if path == "" {
		return nil, nil, misuse{hint{errors.New("no rig given"), "give --rig and a rig file; examples/site-lead has one to start from"}}
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, fmt.Errorf("rig file %s: %w", path, cause(err))
	}
	defer f.Close()
	r, notes, err := rig.Load(f, path)
	if err != nil {
		return nil, nil, err
	}
	var said []string
	for _, n := range notes {
		if n.Key == "fan" {
			continue // said again, and better, at each pressure
		}
		text := n.Text
		if n.Range != "" {
			text = "range " + n.Range + ": " + text
		}
		said = append(said, "rig: "+text)
	}
	return r, said, nil
}

// writeTo writes an answer to stdout, or whole to a file: it appears under its
// name only once it is complete.
func writeTo(path string, input []string, stdout, talk io.Writer, write func(io.Writer) error) error {
	if path == "" || path == "-" {
		return write(stdout)
	}
	old := exists(path)
	err := writeFile(path, input, write)
	if err == nil {
		wrote(talk, path, old)
	}
	return err
}

// readScheme finds a built-in scheme, or reads a file where the name is that of
// one.
func readScheme(name string) (*tightness.Scheme, error) {
	s, err := tightness.Lookup(name)
	if err == nil {
		return s, nil
	}
	if !strings.HasSuffix(name, ".toml") && !exists(name) {
		return nil, misuse{err}
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("scheme file %s: %w", name, cause(err))
	}
	defer f.Close()
	return tightness.Load(f, name)
}
