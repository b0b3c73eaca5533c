package tightness

import (
	"errors"
	"fmt"
	"io"
	"maps"
	"math"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"
)

// Table is one table of a settings file (TOML), read key by key so that every
// fault of a file is found in one go. An absent key is no fault until asked
// for with [Table.Require]; a value of the wrong type or out of range is one,
// and reads as absent.
type Table struct {
	// At names the table in faults, such as `range "low"`.
	At     string
	file   string
	path   string // of this table in the file, as its heading writes it
	keys   map[string]any
	faults *Faults
}

// ReadTable reads a settings file whole. file names it in faults. The error is
// a [Faults] with the line of the first thing that isn't TOML.
func ReadTable(r io.Reader, file string) (*Table, error) {
	t := &Table{file: file, faults: new(Faults)}
	_, err := toml.NewDecoder(r).Decode(&t.keys)
	if err == nil {
		return t, nil
	}
	fault := Fault{File: file, Problem: err.Error(), Expected: "a TOML file"}
	var parse toml.ParseError
	if errors.As(err, &parse) {
		fault.At, fault.Problem = fmt.Sprintf("line %d", parse.Position.Line), parse.Message
	}
	return nil, Faults{fault}
}

// Err is every fault found so far, as [Faults]; nil if there are none.
func (t *Table) Err() error { return t.faults.err() }

// Fault notes that the value of a key is wrong.
func (t *Table) Fault(key, expected string) { t.Problem(key, "", expected) }

// Problem notes what is wrong with a key and what was expected instead.
func (t *Table) Problem(key, problem, expected string) {
	f := Fault{File: t.file, At: t.At, Key: key, Problem: problem, Expected: expected}
	if t.Has(key) {
		f.Value = quote(t.keys[key])
	}
	*t.faults = append(*t.faults, f)
}

// Require notes a fault if the key is absent.
func (t *Table) Require(key, expected string) {
	if !t.Has(key) {
		t.Problem(key, "missing", expected)
	}
}

// Only notes a fault for every key that isn't one of these, in order of name.
func (t *Table) Only(keys ...string) {
	var unknown []string
	for key := range t.keys {
		if !slices.Contains(keys, key) {
			unknown = append(unknown, key)
		}
	}
	slices.Sort(unknown)
	for _, key := range unknown {
		t.Problem(key, "unknown key", "one of "+strings.Join(keys, ", "))
	}
}

// Keys lists the keys of the table, in order of name.
func (t *Table) Keys() []string {
	return slices.Sorted(maps.Keys(t.keys))
}

// Has says whether the key is there at all.
func (t *Table) Has(key string) bool { _, ok := t.keys[key]; return ok }

// Number reads a number from lo to hi; expected says so in words.
func (t *Table) Number(key string, lo, hi float64, expected string) (float64, bool) {
	if !t.Has(key) {
		return 0, false
	}
	v, ok := number(t.keys[key])
	if !ok || v < lo || v > hi {
		t.Fault(key, expected)
		return 0, false
	}
	return v, true
}

// Whole reads a whole number from lo to hi, written without a point: 280.00 is
// refused, because it isn't told from 280 of another unit.
func (t *Table) Whole(key string, lo, hi int64, expected string) (int64, bool) {
	if !t.Has(key) {
		return 0, false
	}
	if _, point := t.keys[key].(float64); point {
		t.Problem(key, "has a point", expected)
		return 0, false
	}
	v, ok := t.keys[key].(int64)
	if !ok || v < lo || v > hi {
		t.Fault(key, expected)
		return 0, false
	}
	return v, true
}

// number takes a TOML integer or float; NaN is no number.
func number(v any) (float64, bool) {
	switch v := v.(type) {
	case int64:
		return float64(v), true
	case float64:
		return v, !math.IsNaN(v)
	}
	return 0, false
}

// Numbers reads a list of numbers from lo to hi, each above the one before.
func (t *Table) Numbers(key string, lo, hi float64, expected string) []float64 {
	if !t.Has(key) {
		return nil
	}
	items, ok := t.keys[key].([]any)
	out := make([]float64, 0, len(items))
	for _, item := range items {
		v, isNumber := number(item)
		if !isNumber || v < lo || v > hi || (len(out) > 0 && v <= out[len(out)-1]) {
			ok = false
			break
		}
		out = append(out, v)
	}
	if !ok || len(out) == 0 {
		t.Fault(key, expected)
		return nil
	}
	return out
}

// Text reads a text that isn't blank, trimmed.
func (t *Table) Text(key string) string {
	if !t.Has(key) {
		return ""
	}
	s, _ := t.keys[key].(string)
	s = strings.TrimSpace(s)
	if s == "" {
		t.Fault(key, "a text in quotes")
	}
	return s
}

// Texts reads a list of texts.
func (t *Table) Texts(key string) []string {
	if !t.Has(key) {
		return nil
	}
	items, ok := t.keys[key].([]any)
	var out []string
	for _, item := range items {
		s, isText := item.(string)
		if !isText || strings.TrimSpace(s) == "" {
			ok = false
			break
		}
		out = append(out, strings.TrimSpace(s))
	}
	if !ok || len(out) == 0 {
		t.Fault(key, "a list of texts in quotes")
		return nil
	}
	return out
}

// Truth reads true or false.
func (t *Table) Truth(key string) bool {
	b, ok := t.keys[key].(bool)
	if t.Has(key) && !ok {
		t.Fault(key, "true or false")
	}
	return b
}

// Table reads a table within this one; nil if there is none.
func (t *Table) Table(key string) *Table {
	if !t.Has(key) {
		return nil
	}
	m, ok := t.keys[key].(map[string]any)
	if !ok {
		t.Fault(key, "a table ["+t.heading(key)+"]")
		return nil
	}
	return t.child(m, key, key)
}

// Tables reads a list of tables within this one, in the order of the file. An
// empty list is a fault: leave the key out instead.
func (t *Table) Tables(key string) []*Table {
	var maps []map[string]any
	switch v := t.keys[key].(type) {
	case nil:
		return nil
	case []map[string]any:
		maps = v
	case []any: // written in line
		for _, item := range v {
			m, ok := item.(map[string]any)
			if !ok {
				t.Fault(key, "a list of tables [["+t.heading(key)+"]]")
				return nil
			}
			maps = append(maps, m)
		}
	default:
		t.Fault(key, "a list of tables [["+t.heading(key)+"]]")
		return nil
	}
	if len(maps) == 0 {
		t.Fault(key, "at least one [["+t.heading(key)+"]], or no such key at all")
	}
	out := make([]*Table, len(maps))
	for i, m := range maps {
		out[i] = t.child(m, key, fmt.Sprintf("%s %d", key, i+1))
	}
	return out
}

func (t *Table) child(m map[string]any, key, at string) *Table {
	if t.At != "" {
		at = t.At + ", " + at
	}
	return &Table{At: at, file: t.file, path: t.heading(key), keys: m, faults: t.faults}
}

// heading is how the file heads a table of this key.
func (t *Table) heading(key string) string {
	if t.path == "" {
		return key
	}
	return t.path + "." + key
}
