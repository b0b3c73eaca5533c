package sampling

import (
	"embed"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"sync"

	"blankoff/planner/tightness"
)

//go:embed data/*.toml
var data embed.FS

// Preset is a regime of sampling as a starting point for an Ask.
type Preset struct {
	Name      string // "Sweden"
	Title     string // one line for people
	Ask       Ask    // without a seed
	When      string // what the regime applies to
	Who       string // who chooses
	OnFailure string // what a failed sample leads to
	Source    string
	Sureness  string // one of tightness's: "read", "second-hand", "from memory"
	Notes     []string
}

// presetFiles fixes the order in which presets are listed.
var presetFiles = []string{
	"uk", "sweden", "sweden_approved", "sweden_mixed", "finland", "france",
	"us_energy_code", "us_handbook", "us_navy", "australia", "china", "by_class",
}

type presets struct {
	list []Preset
	err  error
}

var builtin = sync.OnceValue(func() presets {
	var out presets
	for _, name := range presetFiles {
		file := "data/" + name + ".toml"
		f, err := data.Open(file)
		if err != nil {
			return presets{err: err}
		}
		p, err := Load(f, file)
		if err != nil {
			return presets{err: err}
		}
		out.list = append(out.list, p)
	}
	return out
})

// Presets lists the built-in regimes in a fixed order. Each is a copy.
func Presets() []Preset {
	out := slices.Clone(builtin().list)
	for i := range out {
		out[i].Ask.Quotas = slices.Clone(out[i].Ask.Quotas)
		out[i].Notes = slices.Clone(out[i].Notes)
	}
	return out
}

// Lookup finds a built-in regime by its name, whatever the case, spaces and
// punctuation. The error quotes the name and lists those there are.
func Lookup(name string) (Preset, error) {
	if err := builtin().err; err != nil {
		return Preset{}, fmt.Errorf("built-in regimes of sampling: %w", err)
	}
	for _, p := range Presets() {
		if letters(p.Name) == letters(name) {
			return p, nil
		}
	}
	return Preset{}, fmt.Errorf("%q is no regime of sampling: expected one of %s, or a file of your own", name, Names())
}

// Names lists the names of the built-in regimes, each in quotes, since some hold
// commas and spaces.
func Names() string {
	var names []string
	for _, p := range Presets() {
		names = append(names, strconv.Quote(p.Name))
	}
	return strings.Join(names, ", ")
}

func letters(s string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(" -_.,()", r) {
			return -1
		}
		return r
	}, strings.ToLower(s))
}

const expectedShare = "a share in percent, 0 to 100"

// Load reads a regime of the user's own from TOML, in the format of the built-in
// ones; name is the file's and appears in faults. Every fault is found in one go.
// The error is a [tightness.Faults].
func Load(r io.Reader, name string) (Preset, error) {
	t, err := tightness.ReadTable(r, name)
	if err != nil {
		return Preset{}, err
	}
	t.Only("name", "title", "percent", "by", "per_class", "quota", "when", "who", "on_failure", "source", "sureness", "notes")
	t.Require("name", "a short name for the regime")
	p := Preset{
		Name: t.Text("name"), Title: t.Text("title"), When: t.Text("when"), Who: t.Text("who"), OnFailure: t.Text("on_failure"),
		Source: t.Text("source"), Sureness: tightness.NotStated, Notes: t.Texts("notes"),
	}
	if t.Has("sureness") {
		p.Sureness = among(t, "sureness", tightness.Read, tightness.SecondHand, tightness.FromMemory, tightness.Derived, tightness.NotStated)
	}
	p.Ask.PerClass = t.Truth("per_class")
	p.Ask.Percent, _ = t.Number("percent", 0, 100, expectedShare)
	if t.Has("by") {
		by, err := ParseBy(t.Text("by"))
		if err != nil {
			t.Fault("by", "area, length or joint length")
		}
		p.Ask.By = by
	}
	if !t.Has("percent") && !t.Has("quota") {
		t.Require("percent", expectedShare+", or a [[quota]]")
	}
	for _, q := range t.Tables("quota") {
		p.Ask.Quotas = append(p.Ask.Quotas, quota(q))
	}
	if err := t.Err(); err != nil {
		return Preset{}, err
	}
	return p, nil
}

func quota(t *tightness.Table) Quota {
	t.Only("percent", "run", "shape", "class", "system")
	t.Require("percent", expectedShare)
	q := Quota{Class: t.Text("class"), System: t.Text("system")}
	q.Percent, _ = t.Number("percent", 0, 100, expectedShare)
	q.Run = Run(among(t, "run", string(Mains), string(Branches)))
	var shapes []string
	for _, s := range tightness.Shapes() {
		shapes = append(shapes, string(s))
	}
	q.Shape = among(t, "shape", shapes...)
	if !t.Has("run") && !t.Has("shape") && !t.Has("class") && !t.Has("system") {
		t.Problem("percent", "of no part of the ductwork", "a run, shape, class or system beside it, or percent at the top of the file")
	}
	return q
}

func among(t *tightness.Table, key string, allowed ...string) string {
	v := t.Text(key)
	if v != "" && !slices.Contains(allowed, v) {
		t.Fault(key, "one of \""+strings.Join(allowed, "\", \"")+"\"")
		return ""
	}
	return v
}
