package main

import (
	"errors"
	"fmt"
	"io"
	"os"

	"blankoff/planner/rig"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
)

// readTakeoff reads and measures a schedule.
func readTakeoff(path string, o takeoff.Options) (*takeoff.Takeoff, error) {
	t := takeoff.New(o)
	info, err := schedule.Read(path, func(r *takeoff.Row) error {
		t.Add(r)
		return nil
	})
	if err != nil {
		return nil, err
	}
	t.Finish(info.Schedule, info.Faults, info.Notes)
	return t, nil
}

// readRig reads a rig file.
func readRig(path string) (*rig.Rig, []string, error) {
	if path == "" {
		return nil, nil, misuse{hint{errors.New("no rig given"), "give --rig and a rig file; examples/site-lead has one to start from"}}
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, fmt.Errorf("rig file: %w", err)
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
func writeTo(path string, input []string, stdout io.Writer, write func(io.Writer) error) error {
	if path == "" || path == "-" {
		return write(stdout)
	}
	return writeFile(path, input, write)
}
