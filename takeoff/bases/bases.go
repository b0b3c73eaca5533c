// Package bases holds the measuring bases: rules by which an area is measured. Those
// built in are files, each with its source and how sure it is; which kinds a switch
// touches is in fittings.Switches.
package bases

import (
	"bytes"
	"embed"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"

	"github.com/BurntSushi/toml"

	"blankoff/fittings"
	"blankoff/takeoff/terms"
)

//go:embed *.toml
var files embed.FS

// names fixes the order in which the built-in bases are listed: the default
// first.
var names = []string{"exact", "centre-line", "to-intersection", "largest-girth", "large-end", "outer-periphery"}

// sureness is how well a source may be known.
var sureness = []string{"read", "second-hand", "from memory", "derived", "not stated"}

type library struct {
	bases []fittings.Basis
	err   error
}

// builtIn reads the embedded files once.
var builtIn = sync.OnceValue(func() (lib library) {
	for _, name := range names {
		file := name + ".toml"
		data, err := files.ReadFile(file)
		if err != nil {
			return library{err: err}
		}
		b, err := read(bytes.NewReader(data), file)
		if err != nil {
			return library{err: err}
		}
		lib.bases = append(lib.bases, *b)
	}
	return lib
})

// BuiltIn lists the built-in measuring bases in a fixed order, the default (exact)
// first. The caller may change what it gets.
func BuiltIn() []fittings.Basis { return slices.Clone(builtIn().bases) }

// Lookup finds a built-in basis by its name, whatever the case, spaces and
// punctuation; "" is exact. The error quotes the name and lists those there are.
func Lookup(name string) (*fittings.Basis, error) {
	lib := builtIn()
	if lib.err != nil {
		return nil, fmt.Errorf("built-in basis: %w", lib.err)
	}
	if b := find(name); b != nil {
		return b, nil
	}
	return nil, fmt.Errorf("%q is not a measuring basis: expected one of %s, or a basis file of your own", name, strings.Join(names, ", "))
}

func find(name string) *fittings.Basis {
	if name == "" {
		name = names[0]
	}
	for _, b := range builtIn().bases {
		if terms.Fold(b.Name) == terms.Fold(name) {
			return &b
		}
	}
	return nil
}

// Load reads a basis of the user's own from TOML, in the format of the
// built-in ones; file is its name and appears in faults. It gives a name of its
// own and a choice for each switch of fittings.Switches: none is left to
// guesswork. Every fault is found in one go; the error is a [Faults].
func Load(r io.Reader, file string) (*fittings.Basis, error) {
	b, err := read(r, file)
	if err != nil {
		return nil, err
	}
	if find(b.Name) != nil {
		return nil, Faults{{File: file, Key: "name", Value: b.Name, Message: "a built-in basis has this name: give another"}}
	}
	return b, nil
}

// Fault is one thing wrong in a basis file: its place and its cure.
type Fault struct {
	File    string
	Key     string // or "line 3" where the file can't be read at all
	Value   string // as typed; "" where nothing was
	Message string
}

// Error is the fault on one line.
func (f Fault) Error() string {
	at := f.Key
	if f.Value != "" {
		at += fmt.Sprintf(" = %q", f.Value)
	}
	if at == "" {
		return f.File + ": " + f.Message
	}
	return f.File + ": " + at + ": " + f.Message
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

// read reads a basis file whole.
func read(r io.Reader, file string) (*fittings.Basis, error) {
	keys := map[string]any{}
	if _, err := toml.NewDecoder(r).Decode(&keys); err != nil {
		f := Fault{File: file, Message: err.Error() + "; expected a TOML file"}
		if parse := (toml.ParseError{}); errors.As(err, &parse) {
			f.Key, f.Message = fmt.Sprintf("line %d", parse.Position.Line), parse.Message+"; expected a TOML file"
		}
		return nil, Faults{f}
	}
	d := reader{file: file, keys: keys}
	b := &fittings.Basis{Name: d.text("name", true), About: d.text("about", false), Source: d.text("source", false), Sureness: d.text("sureness", false)}
	switch {
	case b.Name != "" && terms.Fold(b.Name) == "":
		d.fault("name", "give a name with a letter or digit")
	case b.Source == "":
		b.Source = "the user's own basis \"" + b.Name + "\""
	}
	if b.Sureness == "" {
		b.Sureness = "not stated"
	} else if !slices.Contains(sureness, b.Sureness) {
		d.fault("sureness", "expected "+strings.Join(sureness, ", "))
	}
	d.readSwitches(b)
	d.unknown()
	if len(d.faults) > 0 {
		return nil, d.faults
	}
	return b, nil
}

// reader reads a basis file key by key and collects its faults.
type reader struct {
	file   string
	keys   map[string]any
	known  []string
	faults Faults
}

func (d *reader) fault(key, message string) {
	value := ""
	if v, ok := d.keys[key]; ok {
		value = fmt.Sprint(v)
	}
	d.faults = append(d.faults, Fault{d.file, key, value, message})
}

// text reads a text that isn't blank, trimmed.
func (d *reader) text(key string, must bool) string {
	d.known = append(d.known, key)
	v, given := d.keys[key]
	s, isText := v.(string)
	s = strings.TrimSpace(s)
	switch {
	case !given && must:
		d.fault(key, "missing; give it as a text in quotes")
	case given && (!isText || s == ""):
		d.fault(key, "expected a text in quotes")
	}
	return s
}

// readSwitches reads every switch; none may be left out.
func (d *reader) readSwitches(b *fittings.Basis) {
	before := len(d.faults)
	for _, s := range fittings.Switches() {
		d.known = append(d.known, s.Key)
		v, given := d.keys[s.Key]
		word, _ := v.(string)
		choices := "expected " + strings.Join(s.Words, ", ")
		switch {
		case !given:
			d.fault(s.Key, "missing; "+choices)
		case !b.Set(s.Key, word):
			d.fault(s.Key, choices)
		}
	}
	if problem := b.Check(); problem != "" && len(d.faults) == before {
		d.fault("taper_length", problem)
	}
}

// unknown faults every key that isn't known, in order of name.
func (d *reader) unknown() {
	var keys []string
	for key := range d.keys {
		if !slices.Contains(d.known, key) {
			keys = append(keys, key)
		}
	}
	slices.Sort(keys)
	for _, key := range keys {
		d.fault(key, "unknown key; expected one of "+strings.Join(d.known, ", "))
	}
}
