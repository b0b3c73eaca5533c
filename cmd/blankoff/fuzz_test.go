package main

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
)

// FuzzTangled: what is refused before it is taken apart is either no TOML, or
// nests as no settings file does; and what isn't refused nests little.
func FuzzTangled(f *testing.F) {
	for _, s := range []string{"a = [[1]]", "a.b.c = 1", "# [[[[", `a = "[[[["`, "a = '''\n[\n'''", "a = \"\"\"\n\\\"\"\"\"", "[a.b]\nc = {d=[{e=1}]}", strings.Repeat("[", 80), "a" + strings.Repeat(".a", 80) + "=1"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		line := tangled(data)
		if line < 0 || line > bytes.Count(data, []byte("\n"))+1 {
			t.Fatalf("line %d", line)
		}
		if line > 0 || len(data) > 4000 {
			return
		}
		keys := map[string]any{}
		if _, err := toml.Decode(string(data), &keys); err == nil && depth(keys) > 2*mostNested+2 {
			t.Fatalf("%d deep", depth(keys))
		}
	})
}

func depth(v any) int {
	most := 0
	switch v := v.(type) {
	case map[string]any:
		for _, one := range v {
			most = max(most, depth(one))
		}
	case []any:
		for _, one := range v {
			most = max(most, depth(one))
		}
	case []map[string]any:
		for _, one := range v {
			most = max(most, depth(one))
		}
	default:
		return 0
	}
	return most + 1
}

// FuzzPackList: any file that claims to be the list of a pack names only what lies
// in the folder itself, or is refused.
func FuzzPackList(f *testing.F) {
	f.Add([]byte(`{"about":"` + listAbout + `","files":[{"name":"plan.json","bytes":1,"sha256":"00"}]}`))
	f.Add([]byte(`{"about":"` + listAbout + `","files":[{"name":"../x"},{"name":"a\\b"},{"name":"/x"},{"name":"C:x"},{"name":".."}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		list, err := parsePackList(data, listName)
		if err != nil {
			return
		}
		for _, file := range list.Files {
			if path := filepath.Join("pack", file.Name); filepath.Dir(path) != "pack" || strings.ContainsAny(file.Name, `/\`) || file.Name == "" {
				t.Fatalf("%q", file.Name)
			}
		}
	})
}
