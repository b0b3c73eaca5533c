package tightness

import (
	"fmt"
	"strings"
)

// Fault is one thing wrong in a settings file, with its place and its cure.
type Fault struct {
	File     string // as given
	At       string // the table, such as `range "low"`; empty: the top level
	Key      string
	Value    string // as typed; empty where nothing was
	Problem  string // "missing", "unknown key"; empty: the value is wrong
	Expected string
}

func (f Fault) Error() string {
	var parts []string
	for _, p := range []string{f.File, f.At} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	key := f.Key
	if f.Value != "" {
		key += " = " + f.Value
	}
	if key != "" {
		parts = append(parts, key)
	}
	last := f.Problem
	if f.Expected != "" {
		if last != "" {
			last += ", "
		}
		last += "expected " + f.Expected
	}
	return strings.Join(append(parts, last), ": ")
}

// Faults are all the faults of one file. As an error it prints one a line.
type Faults []Fault

func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i, one := range f {
		lines[i] = one.Error()
	}
	return strings.Join(lines, "\n")
}

// err is nil when there are none, so that callers can return it as it is.
func (f Faults) err() error {
	if len(f) == 0 {
		return nil
	}
	return f
}

func quote(v any) string {
	switch v := v.(type) {
	case string:
		return fmt.Sprintf("%q", v)
	case map[string]any, []map[string]any:
		return "a table"
	case []any:
		return "a list"
	}
	return fmt.Sprint(v)
}
