package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"blankoff/fittings"
	"blankoff/planner/report/sketch"
)

var update = flag.Bool("update", false, "write the golden files anew")

// eachSVG calls f with the file of every kind and style.
func eachSVG(t *testing.T, f func(t *testing.T, name string, data []byte)) {
	for _, k := range fittings.Kinds() {
		styles := k.Styles
		if len(styles) == 0 {
			styles = []fittings.Style{fittings.NoStyle}
		}
		for _, s := range styles {
			name := strings.ReplaceAll(strings.TrimSuffix(k.Name+"-"+s.String(), "-"), " ", "-")
			t.Run(name, func(t *testing.T) {
				var b bytes.Buffer
				if err := Kind(&b, k, s); err != nil {
					t.Fatal(err)
				}
				f(t, name, b.Bytes())
			})
		}
	}
}

func TestGolden(t *testing.T) {
	eachSVG(t, func(t *testing.T, name string, data []byte) {
		path := filepath.Join("testdata", name+".svg")
		if *update {
			if err := os.WriteFile(path, data, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(data, want) {
			t.Errorf("differs from %s; look at it and run go test -update if it is meant", path)
		}
	})
}

// element is what a drawing's file holds.
type element struct {
	name       string
	attributes map[string]string
	text       string
}

func elements(t *testing.T, data []byte) []element {
	t.Helper()
	var all []element
	for d := xml.NewDecoder(bytes.NewReader(data)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all
		}
		if err != nil {
			t.Fatalf("not well-formed: %v", err)
		}
		switch x := token.(type) {
		case xml.StartElement:
			e := element{x.Name.Local, map[string]string{}, ""}
			for _, a := range x.Attr {
				e.attributes[a.Name.Local] = a.Value
			}
			all = append(all, e)
		case xml.CharData:
			if len(all) > 0 {
				all[len(all)-1].text += strings.TrimSpace(string(x))
			}
		}
	}
}

var number = regexp.MustCompile(`-?[0-9]+(\.[0-9]+)?`)

// TestFiles: every file is well-formed, names and describes itself, takes nothing
// from elsewhere, is black and white, and draws inside its own page, with no text
// over another.
func TestFiles(t *testing.T) {
	allowed := map[string]bool{"svg": true, "title": true, "desc": true, "rect": true, "g": true, "path": true, "circle": true, "text": true}
	eachSVG(t, func(t *testing.T, name string, data []byte) {
		for _, bad := range []string{"NaN", "Inf", "href", "url(", "script", "rgb", `"#`} {
			if bytes.Contains(data, []byte(bad)) {
				t.Errorf("holds %q", bad)
			}
		}
		all := elements(t, data)
		var wide, high float64
		if n, _ := fmt.Sscanf(all[0].attributes["viewBox"], "0 0 %f %f", &wide, &high); n != 2 || all[1].name != "title" || all[1].text == "" || all[2].name != "desc" || len(all[2].text) < 60 {
			t.Fatalf("starts with %+v", all[:3])
		}
		inside := func(what string, x, y float64) {
			if x < 0 || y < 0 || x > wide || y > high {
				t.Errorf("%s at %g %g is outside %g by %g", what, x, y, wide, high)
			}
		}
		var boxes [][4]float64
		for _, e := range all {
			if !allowed[e.name] {
				t.Errorf("holds an element %q", e.name)
			}
			for _, c := range []string{"fill", "stroke"} {
				if v := e.attributes[c]; v != "" && v != "black" && v != "white" && v != "none" {
					t.Errorf("%s %s", c, v)
				}
			}
			switch e.name {
			case "path":
				checkPath(e.attributes["d"], inside)
			case "circle":
				x, y, r := value(e, "cx"), value(e, "cy"), value(e, "r")
				inside("circle", x-r, y-r)
				inside("circle", x+r, y+r)
			case "text":
				b := textBox(e)
				inside(e.text, b[0], b[1])
				inside(e.text, b[2], b[3])
				for i, c := range boxes {
					if b[0] < c[2] && c[0] < b[2] && b[1] < c[3] && c[1] < b[3] {
						t.Errorf("%q overlaps text %d", e.text, i)
					}
				}
				boxes = append(boxes, b)
			}
		}
	})
}

// checkPath checks the points of a path; of an arc, its end.
func checkPath(d string, inside func(string, float64, float64)) {
	for part := range strings.SplitSeq(strings.NewReplacer("M", "|", "L", "|", "A", "|A", "Z", "").Replace(d), "|") {
		var n []float64
		for _, s := range number.FindAllString(part, -1) {
			v, _ := strconv.ParseFloat(s, 64)
			n = append(n, v)
		}
		if len(n) >= 2 {
			inside("a line to", n[len(n)-2], n[len(n)-1])
		}
	}
}

func value(e element, name string) float64 {
	v, _ := strconv.ParseFloat(e.attributes[name], 64)
	return v
}

// textBox is about what a text takes up.
func textBox(e element) [4]float64 {
	size := value(e, "font-size")
	x, y, w := value(e, "x"), value(e, "y"), sketch.TextWidth(e.text, size)
	if e.attributes["text-anchor"] == "middle" {
		x -= w / 2
	}
	return [4]float64{x, y - 0.75*size, x + w, y + 0.2*size}
}

func TestRefusals(t *testing.T) {
	straight, _ := fittings.Straight.Info()
	if err := Kind(io.Discard, straight, fittings.Mitred); err == nil || !strings.Contains(err.Error(), "mitred") {
		t.Errorf("a mitred straight: %v", err)
	}
	if err := Kind(full{}, straight, fittings.NoStyle); err == nil {
		t.Error("the disk was full and nobody was told")
	}
}

// TestArcs draws a quarter turn each way by hand.
func TestArcs(t *testing.T) {
	for _, c := range []struct {
		from, sweep float64
		want        string
	}{
		{0, 90, "M10 0A10 10 0 0 0 0 -10"},
		{90, -90, "M0 -10A10 10 0 0 1 10 0"},
		{0, 270, "M10 0A10 10 0 1 0 0 10"},
	} {
		if got := arcPath(sketch.Arc{R: 10, From: c.from, Sweep: c.sweep}, 0, 0); got != c.want {
			t.Errorf("from %g by %g: %s, want %s", c.from, c.sweep, got, c.want)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }
