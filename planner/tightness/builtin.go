package tightness

import (
	"embed"
	"fmt"
	"strings"
	"sync"
)

//go:embed data/*.toml
var data embed.FS

// names fixes the order in which schemes are listed.
var names = []string{"EN", "EN16798", "UK", "US", "GB50243"}

type library struct {
	schemes []*Scheme
	err     error
}

// builtin reads the embedded files once.
var builtin = sync.OnceValue(func() library {
	var lib library
	for _, name := range names {
		file := "data/" + strings.ToLower(name) + ".toml"
		f, err := data.Open(file)
		if err != nil {
			return library{err: err}
		}
		s, err := read(f, file)
		if err != nil {
			return library{err: err}
		}
		lib.schemes = append(lib.schemes, s)
	}
	return lib
})

// Names lists the built-in schemes in a fixed order.
func Names() []string { return append([]string(nil), names...) }

// Lookup finds a built-in scheme by its name or by the standard it comes from
// ("EN", "EN 1507", "dw/144"), whatever the case, spaces and punctuation. The
// error quotes the name and lists those there are.
func Lookup(name string) (*Scheme, error) {
	lib := builtin()
	if lib.err != nil {
		return nil, fmt.Errorf("built-in scheme: %w", lib.err)
	}
	if s := find(name); s != nil {
		return s, nil
	}
	return nil, fmt.Errorf("%q is not a tightness scheme: expected one of %s, or a scheme file of your own",
		name, strings.Join(names, ", "))
}

func find(name string) *Scheme {
	key := plainKey(name)
	for _, s := range builtin().schemes {
		if plainKey(s.Name) == key {
			return s
		}
		for _, alias := range s.aliases {
			if plainKey(alias) == key {
				return s
			}
		}
	}
	return nil
}
