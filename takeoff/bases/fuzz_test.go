package bases

import (
	"strings"
	"testing"
)

// FuzzLoad: any text is a basis that can be measured on, or an error; and a
// basis written out again is the same.
func FuzzLoad(f *testing.F) {
	for _, name := range names {
		data, err := files.ReadFile(name + ".toml")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(strings.Replace(string(data), `name = "`, `name = "own `, 1))
	}
	f.Fuzz(func(t *testing.T, text string) {
		b, err := Load(strings.NewReader(text), "fuzz.toml")
		if (b == nil) != (err != nil) || err != nil && !strings.Contains(err.Error(), "fuzz.toml") {
			t.Fatalf("basis %v and error %v", b, err)
		}
		if err != nil {
			return
		}
		if wrong := b.Check(); wrong != "" || b.Name == "" || b.Source == "" || find(b.Name) != nil {
			t.Fatalf("%+v: %s", b, wrong)
		}
	})
}
