package mapping

import (
	"bytes"
	"reflect"
	"strings"
	"testing"
)

// The letters of columns, as every spreadsheet counts them.
func TestLetters(t *testing.T) {
	for letter, n := range map[string]int{"A": 0, "Z": 25, "AA": 26, "AZ": 51, "BA": 52, "ZZ": 701, "AAA": 702} {
		if got, ok := Number(letter); !ok || got != n || Letter(n) != letter {
			t.Errorf("%s: %d, %s", letter, got, Letter(n))
		}
	}
	for _, bad := range []string{"", "1", "A1", "Ä", "ZZZZZZZZZ"} {
		if n, ok := Number(bad); ok {
			t.Errorf("%q is column %d", bad, n)
		}
	}
}

// A map of a sheet by name goes before that of all others.
func TestFor(t *testing.T) {
	m := &Map{Sheets: []Sheet{{Skip: true}, {Name: "S", SkipRows: []int{4}, SubHeadings: "level"}}}
	if m.For("S") != &m.Sheets[1] || m.For("T") != &m.Sheets[0] || !m.Skips("S", 4) || m.Skips("T", 4) || m.Fixes("S") {
		t.Error("the wrong sheet")
	}
	if got := m.Unmet([]string{"T"}); !reflect.DeepEqual(got, []string{"S"}) {
		t.Errorf("unmet %q", got)
	}
	var none *Map
	if none.For("S") != nil || none.Skips("S", 1) || none.Fixes("S") || none.Unmet(nil) != nil {
		t.Error("no map says something")
	}
}

// FuzzMap: any text is a map or an error; a map that is written reads back equal.
func FuzzMap(f *testing.F) {
	f.Add("decimal = \"comma\"\n[[sheet]]\nname = \"S\"\nheading_rows = [3, 4]\nskip_rows = [9]\n[[sheet.column]]\nat = \"B\"\nheading = \"Breite\"\nis = \"width_mm\"\nunit = \"cm\"\n")
	f.Add("[[sheet]]\nskip = true\n[[sheet]]\nname = \"x\"\nsub_headings = \"level\"\n")
	f.Fuzz(func(t *testing.T, text string) {
		m, err := Read("m.toml", strings.NewReader(text))
		if err != nil {
			if !strings.Contains(err.Error(), "m.toml") {
				t.Fatal(err)
			}
			return
		}
		var b bytes.Buffer
		if err := m.Write(&b); err != nil {
			t.Fatal(err)
		}
		again, err := Read("m.toml", &b)
		if err != nil || !reflect.DeepEqual(plain(m), plain(again)) {
			t.Fatalf("%q: %v\n%+v\n%+v", text, err, m, again)
		}
	})
}

// plain makes empty lists and none the same.
func plain(m *Map) *Map {
	for i := range m.Sheets {
		s := &m.Sheets[i]
		s.HeadingRows, s.SkipRows = append([]int{}, s.HeadingRows...), append([]int{}, s.SkipRows...)
		s.Columns = append([]Column{}, s.Columns...)
	}
	return m
}
