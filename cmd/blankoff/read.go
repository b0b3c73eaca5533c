package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"blankoff/planner"
	"blankoff/planner/cutlist"
	"blankoff/planner/job"
	"blankoff/planner/keep"
	"blankoff/planner/rig"
	"blankoff/planner/tightness"
	"blankoff/takeoff"
)

// readTakeoff reads and measures a schedule.
func readTakeoff(path string, o *measureOptions, on *progress) (*takeoff.Takeoff, error) {
	options, err := o.settle()
	if err != nil {
		return nil, err
	}
	return measured(path, &o.door, options, on)
}

// largeRows is the number of rows from which memory is spared.
const largeRows = 200_000

// measured reads and measures a schedule with settled options.
func measured(path string, door *doorOptions, options takeoff.Options, on *progress) (*takeoff.Takeoff, error) {
	t := takeoff.New(options)
	on.say("reading " + filepath.Base(path))
	room := rowRoom
	if options.TotalsOnly {
		room = totalsRoom
	}
	large := false
	info, err := door.set.Into(path, t, func(rows, most int) {
		if most = max(rows, most); !large && most > largeRows {
			large = true
			if spacious(most * room); options.TotalsOnly {
				litter(forTotals)
			}
		}
		on.say(fmt.Sprintf("reading %s, row %d", filepath.Base(path), rows))
	})
	if err != nil {
		return nil, err
	}
	on.say("measuring")
	door.info = info
	t.Finish(info.Schedule, info.Faults, info.Notes)
	return t, nil
}

// readJob reads a job file.
func readJob(path string) (job.Job, error) {
	f, err := readSettings("job file", path)
	if err != nil {
		return job.Job{}, err
	}
	return job.Load(f, path)
}

// readCuts reads a person's own cuts; "" gives none.
func readCuts(path string) ([]planner.OwnCut, []takeoff.Fault, error) {
	if path == "" {
		return nil, nil, nil
	}
	data, err := readInput("cuts file", path, mostCuts)
	if err != nil {
		return nil, nil, err
	}
	if n := bytes.Count(data, []byte("\n")); n > takeoff.MostRows {
		return nil, nil, fmt.Errorf("cuts file %s: it has %d lines, and a plan has at most %d cuts", path, n, takeoff.MostRows)
	}
	return cutlist.Read(bytes.NewReader(data), path)
}

// readOld reads an earlier plan; "" gives none.
func readOld(path string) (*planner.Old, error) {
	if path == "" {
		return nil, nil
	}
	if isHalf(filepath.Dir(path)) {
		return nil, hint{fmt.Errorf("the pack in %s is half replaced: a run was stopped at it", filepath.Dir(path)), "run that again, which finishes it, or keep to a copy of its plan.json"}
	}
	f, err := readPlanFile(path)
	if err != nil {
		return nil, err
	}
	old, err := keep.Read(f, path)
	return &old, err
}

// readRig reads a rig file.
func readRig(path string) (*rig.Rig, []string, error) {
	if path == "" {
		return nil, nil, misuse{hint{errors.New("no rig given"), "give --rig and a rig file; examples/site-lead has one to start from"}}
	}
	f, err := readSettings("rig file", path)
	if err != nil {
		return nil, nil, err
	}
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
	f, err := readSettings("scheme file", name)
	if err != nil {
		return nil, err
	}
	return tightness.Load(f, name)
}
