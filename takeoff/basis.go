package takeoff

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
)

//go:embed bases/*.toml
var basisFiles embed.FS

// basisNames fixes the order in which the built-in bases are listed: the default
// first.
var basisNames = []string{"exact", "centre-line", "to-intersection", "largest-girth", "large-end", "outer-periphery"}

// basisSureness is how well a source may be known.
var basisSureness = []string{"read", "second-hand", "from memory", "derived", "not stated"}

type basisLibrary struct {
	bases []fittings.Basis
	err   error
}

// builtinBases reads the embedded files once.
var builtinBases = sync.OnceValue(func() (lib basisLibrary) {
	for _, name := range basisNames {
		file := "bases/" + name + ".toml"
		data, err := basisFiles.ReadFile(file)
		if err != nil {
			return basisLibrary{err: err}
		}
		b, err := readBasis(bytes.NewReader(data), file)
		if err != nil {
			return basisLibrary{err: err}
		}
		lib.bases = append(lib.bases, *b)
	}
	return lib
})

// Bases lists the built-in measuring bases in a fixed order, the default (exact)
// first. The caller may change what it gets.
func Bases() []fittings.Basis { return slices.Clone(builtinBases().bases) }

// LookupBasis finds a built-in basis by its name, whatever the case, spaces and
// punctuation; "" is exact. The error quotes the name and lists those there are.
func LookupBasis(name string) (*fittings.Basis, error) {
	lib := builtinBases()
	if lib.err != nil {
		return nil, fmt.Errorf("built-in basis: %w", lib.err)
	}
	if b := findBasis(name); b != nil {
		return b, nil
	}
	return nil, fmt.Errorf("%q is not a measuring basis: expected one of %s, or a basis file of your own", name, strings.Join(basisNames, ", "))
}

func findBasis(name string) *fittings.Basis {
	if name == "" {
		name = basisNames[0]
	}
	for _, b := range builtinBases().bases {
		if fold(b.Name) == fold(name) {
			return &b
		}
	}
	return nil
}

// LoadBasis reads a basis of the user's own from TOML, in the format of the
// built-in ones; file is its name and appears in faults. It gives a name of its
// own and a choice for each switch of fittings.Switches: none is left to
// guesswork. Every fault is found in one go; the error is a [BasisFaults].
func LoadBasis(r io.Reader, file string) (*fittings.Basis, error) {
	b, err := readBasis(r, file)
	if err != nil {
		return nil, err
	}
	if findBasis(b.Name) != nil {
		return nil, BasisFaults{{File: file, Key: "name", Value: b.Name, Message: "a built-in basis has this name: give another"}}
	}
	return b, nil
}

// BasisFault is one thing wrong in a basis file: its place and its cure.
type BasisFault struct {
	File    string
	Key     string // or "line 3" where the file can't be read at all
	Value   string // as typed; "" where nothing was
	Message string
}

// Error is the fault on one line.
func (f BasisFault) Error() string {
	at := f.Key
	if f.Value != "" {
		at += fmt.Sprintf(" = %q", f.Value)
	}
	if at == "" {
		return f.File + ": " + f.Message
	}
	return f.File + ": " + at + ": " + f.Message
}

// BasisFaults are all the faults of one file. As an error it prints one a line.
type BasisFaults []BasisFault

func (f BasisFaults) Error() string {
	lines := make([]string, len(f))
	for i, one := range f {
		lines[i] = one.Error()
	}
	return strings.Join(lines, "\n")
}

// readBasis reads a basis file whole.
func readBasis(r io.Reader, file string) (*fittings.Basis, error) {
	keys := map[string]any{}
	if _, err := toml.NewDecoder(r).Decode(&keys); err != nil {
		f := BasisFault{File: file, Message: err.Error() + "; expected a TOML file"}
		if parse := (toml.ParseError{}); errors.As(err, &parse) {
			f.Key, f.Message = fmt.Sprintf("line %d", parse.Position.Line), parse.Message+"; expected a TOML file"
		}
		return nil, BasisFaults{f}
	}
	d := basisReader{file: file, keys: keys}
	b := &fittings.Basis{Name: d.text("name", true), About: d.text("about", false), Source: d.text("source", false), Sureness: d.text("sureness", false)}
	switch {
	case b.Name != "" && fold(b.Name) == "":
		d.fault("name", "give a name with a letter or digit")
	case b.Source == "":
		b.Source = "the user's own basis \"" + b.Name + "\""
	}
	if b.Sureness == "" {
		b.Sureness = "not stated"
	} else if !slices.Contains(basisSureness, b.Sureness) {
		d.fault("sureness", "expected "+strings.Join(basisSureness, ", "))
	}
	d.readSwitches(b)
	d.unknown()
	if len(d.faults) > 0 {
		return nil, d.faults
	}
	return b, nil
}

// basisReader reads a basis file key by key and collects its faults.
type basisReader struct {
	file   string
	keys   map[string]any
	known  []string
	faults BasisFaults
}

func (d *basisReader) fault(key, message string) {
	value := ""
	if v, ok := d.keys[key]; ok {
		value = fmt.Sprint(v)
	}
	d.faults = append(d.faults, BasisFault{d.file, key, value, message})
}

// text reads a text that isn't blank, trimmed.
func (d *basisReader) text(key string, must bool) string {
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
func (d *basisReader) readSwitches(b *fittings.Basis) {
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
func (d *basisReader) unknown() {
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
