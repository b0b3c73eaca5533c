package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// rooms says what the source of each folder may import beyond the standard
// library, and beyond itself and the folders inside it. A folder that isn't
// named is ruled by the nearest one above it.
var rooms = map[string][]string{
	"fittings":              {"gonum.org/v1/gonum/integrate", "gonum.org/v1/gonum/mathext"},
	"takeoff":               {"blankoff/fittings"},
	"takeoff/terms":         {"blankoff/fittings"},
	"takeoff/bases":         {"blankoff/fittings", "blankoff/takeoff/terms", "github.com/BurntSushi/toml"},
	"takeoff/ledger":        {"blankoff/fittings", "blankoff/takeoff/terms"},
	"takeoff/measuring":     {"blankoff/fittings", "blankoff/takeoff/ledger"},
	"takeoff/joining":       {"blankoff/fittings", "blankoff/takeoff/terms", "blankoff/takeoff/ledger"},
	"takeoff/totals":        {"blankoff/fittings", "blankoff/takeoff/terms", "blankoff/takeoff/ledger"},
	"takeoff/schedule":      {"blankoff/takeoff", "blankoff/fittings", "github.com/BurntSushi/toml", "github.com/xuri/excelize/v2", "golang.org/x/text"},
	"takeoff/audit":         {"blankoff/takeoff", "blankoff/fittings", "github.com/gocarina/gocsv"},
	"planner":               {"blankoff/planner/units", "blankoff/fittings", "blankoff/takeoff", "blankoff/planner/tightness", "blankoff/planner/rig", "blankoff/planner/network", "blankoff/planner/partition", "blankoff/planner/duty", "blankoff/planner/divide"},
	"planner/duty":          {"blankoff/planner/units", "blankoff/fittings", "blankoff/takeoff", "blankoff/planner/tightness", "blankoff/planner/rig", "blankoff/planner/network", "blankoff/planner/partition"},
	"planner/divide":        {"blankoff/takeoff", "blankoff/planner/duty", "blankoff/planner/network", "blankoff/planner/partition", "blankoff/planner/rig", "blankoff/planner/tightness"},
	"planner/tightness":     {"github.com/BurntSushi/toml"},
	"planner/rig":           {"blankoff/planner/tightness", "blankoff/planner/units", "github.com/BurntSushi/toml"},
	"planner/cutlist":       {"blankoff/planner", "blankoff/takeoff", "github.com/gocarina/gocsv"},
	"planner/keep":          {"blankoff/planner"},
	"planner/job":           {"blankoff/planner/network", "blankoff/planner/programme", "blankoff/planner/tightness", "blankoff/takeoff"},
	"planner/network":       {"blankoff/takeoff", "blankoff/fittings"},
	"planner/partition":     {},
	"planner/visits":        {},
	"planner/blanking":      {},
	"planner/untested":      {"blankoff/fittings", "blankoff/takeoff", "blankoff/planner/network", "blankoff/planner/duty", "blankoff/planner/divide", "blankoff/planner/rig"},
	"planner/programme":     {"blankoff/takeoff"},
	"planner/units":         {"blankoff/planner/tightness"},
	"planner/price":         {"blankoff/planner/programme", "blankoff/planner/tightness", "gonum.org/v1/gonum/stat", "github.com/BurntSushi/toml", "github.com/gocarina/gocsv"},
	"planner/effect":        {"blankoff/takeoff", "blankoff/planner/tightness"},
	"planner/whatif":        {"blankoff/planner", "blankoff/takeoff"},
	"planner/sampling":      {"blankoff/planner/tightness", "blankoff/planner/units", "gonum.org/v1/gonum"},
	"planner/report":        {"blankoff"},
	"planner/report/live":   {"blankoff/fittings", "blankoff/takeoff"},
	"planner/report/csvout": {"blankoff", "github.com/gocarina/gocsv"},
	"planner/report/xlsx":   {"blankoff", "github.com/xuri/excelize/v2"},
	"planner/report/pdf":    {"blankoff", "codeberg.org/go-pdf/fpdf", "codeberg.org/go-fonts/liberation", "golang.org/x/image", "golang.org/x/text/unicode/norm"},
	"cmd/blankoff":          {"blankoff", "github.com/spf13/cobra", "golang.org/x/term"},

	// below the door, leaves first
	"takeoff/schedule/celltext":       {"blankoff/takeoff", "blankoff/takeoff/schedule/quantity"},
	"takeoff/schedule/wording":        {"blankoff/fittings", "blankoff/takeoff", "blankoff/takeoff/schedule/celltext", "blankoff/takeoff/schedule/headings", "blankoff/takeoff/schedule/quantity"},
	"takeoff/schedule/told":           {"blankoff/fittings", "blankoff/takeoff", "blankoff/takeoff/schedule/celltext", "blankoff/takeoff/schedule/headings", "blankoff/takeoff/schedule/wording"},
	"takeoff/schedule/headrow":        {"blankoff/fittings", "blankoff/takeoff", "blankoff/takeoff/schedule/celltext", "blankoff/takeoff/schedule/headings", "blankoff/takeoff/schedule/plaintext", "blankoff/takeoff/schedule/quantity", "blankoff/takeoff/schedule/told", "blankoff/takeoff/schedule/wording"},
	"takeoff/schedule/source":         {"blankoff/takeoff/schedule/headings", "blankoff/takeoff/schedule/headrow", "blankoff/takeoff/schedule/plaintext"},
	"takeoff/schedule/described":      {"blankoff/fittings", "blankoff/takeoff", "blankoff/takeoff/schedule/celltext", "blankoff/takeoff/schedule/headings", "blankoff/takeoff/schedule/quantity", "blankoff/takeoff/schedule/wording"},
	"takeoff/schedule/answered":       {"blankoff/takeoff/schedule/celltext", "blankoff/takeoff/schedule/headings", "blankoff/takeoff/schedule/wording"},
	"takeoff/schedule/columns":        {"blankoff/fittings", "blankoff/takeoff", "blankoff/takeoff/schedule/answered", "blankoff/takeoff/schedule/celltext", "blankoff/takeoff/schedule/described", "blankoff/takeoff/schedule/headings", "blankoff/takeoff/schedule/headrow", "blankoff/takeoff/schedule/mapping", "blankoff/takeoff/schedule/quantity", "blankoff/takeoff/schedule/told", "blankoff/takeoff/schedule/wording"},
	"takeoff/schedule/workbook/dress": {"github.com/xuri/excelize/v2"},
	"takeoff/schedule/workbook":       {"blankoff/takeoff/schedule/workbook/dress", "github.com/xuri/excelize/v2"},
	"takeoff/schedule/stated":         {"blankoff/takeoff", "blankoff/takeoff/schedule/celltext", "blankoff/takeoff/schedule/headings", "blankoff/takeoff/schedule/headrow", "blankoff/takeoff/schedule/plaintext", "blankoff/takeoff/schedule/quantity", "blankoff/takeoff/schedule/source", "blankoff/takeoff/schedule/workbook"},
	"takeoff/schedule/settled":        {"blankoff/fittings", "blankoff/takeoff", "blankoff/takeoff/schedule/answered", "blankoff/takeoff/schedule/celltext", "blankoff/takeoff/schedule/columns", "blankoff/takeoff/schedule/described", "blankoff/takeoff/schedule/headings", "blankoff/takeoff/schedule/mapping", "blankoff/takeoff/schedule/quantity", "blankoff/takeoff/schedule/wording", "blankoff/takeoff/terms"},
	"takeoff/schedule/items":          {"blankoff/fittings", "blankoff/takeoff", "blankoff/takeoff/schedule/answered", "blankoff/takeoff/schedule/celltext", "blankoff/takeoff/schedule/columns", "blankoff/takeoff/schedule/described", "blankoff/takeoff/schedule/headings", "blankoff/takeoff/schedule/headrow", "blankoff/takeoff/schedule/mapping", "blankoff/takeoff/schedule/quantity", "blankoff/takeoff/schedule/settled", "blankoff/takeoff/schedule/told", "blankoff/takeoff/schedule/wording", "blankoff/takeoff/schedule/workbook", "blankoff/takeoff/terms"},
}

// ruleOf finds the rule of a folder.
func ruleOf(dir string) (room string, allowed []string, ok bool) {
	for room = dir; room != "." && room != ""; room = filepath.ToSlash(filepath.Dir(room)) {
		if allowed, ok = rooms[room]; ok {
			return room, allowed, true
		}
	}
	return "", nil, false
}

// TestImportsRunOneWay holds every source file against the table of rooms:
// fittings <- takeoff <- planner <- cmd, and outside packages only where named.
func TestImportsRunOneWay(t *testing.T) {
	eachSource(t, func(path string) {
		file, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", "..", path), nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		dir := filepath.ToSlash(filepath.Dir(path))
		room, allowed, ok := ruleOf(dir)
		if !ok {
			t.Errorf("%s: no rule for its folder; add it to the table of rooms", path)
			return
		}
		for _, spec := range file.Imports {
			name, _ := strconv.Unquote(spec.Path.Value)
			if standard(name) || within(name, "blankoff/"+room) || slices.ContainsFunc(allowed, func(a string) bool { return within(name, a) }) {
				continue
			}
			t.Errorf("%s imports %s; %s may import only %v", path, name, room, allowed)
		}
		if strings.HasPrefix(dir, "planner/report") {
			for _, spec := range file.Imports {
				if strings.HasPrefix(spec.Path.Value, `"blankoff/cmd`) {
					t.Errorf("%s imports the command", path)
				}
			}
		}
	})
}

// standard reports whether a package is of the standard library: its first
// element has no dot and it isn't ours.
func standard(name string) bool {
	first, _, _ := strings.Cut(name, "/")
	return !strings.Contains(first, ".") && first != "blankoff"
}

func within(name, folder string) bool {
	return name == folder || strings.HasPrefix(name, folder+"/")
}

// TestFilesStaySmall holds the source to its limits: a file under 300 lines.
func TestFilesStaySmall(t *testing.T) {
	eachSource(t, func(path string) {
		data, err := os.ReadFile(filepath.Join("..", "..", path))
		if err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(string(data), "\n"); n >= 300 {
			t.Errorf("%s has %d lines; split it", path, n)
		}
	})
}

// eachSource calls f for every Go source file that isn't a test, by its path
// from the top of the project.
func eachSource(t *testing.T, f func(path string)) {
	t.Helper()
	for _, top := range []string{"cmd", "fittings", "takeoff", "planner"} {
		err := filepath.WalkDir(filepath.Join("..", "..", top), func(path string, d fs.DirEntry, err error) error {
			if err == nil && !d.IsDir() && strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, "_test.go") {
				rel, _ := filepath.Rel(filepath.Join("..", ".."), path)
				f(filepath.ToSlash(rel))
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
}

// TestTopLevel holds the top of the project to what was agreed.
func TestTopLevel(t *testing.T) {
	agreed := []string{"cmd", "takeoff", "planner", "fittings", "testdata", "examples", "go.mod", "go.sum", "README.md", "DEVELOPERS.md"}
	list, err := os.ReadDir(filepath.Join("..", ".."))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range list {
		if name := e.Name(); !strings.HasPrefix(name, ".") && !slices.Contains(agreed, name) {
			t.Errorf("%s isn't among what the top level holds: %v", name, agreed)
		}
	}
}
