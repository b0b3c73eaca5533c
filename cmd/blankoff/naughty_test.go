package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"html"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/xuri/excelize/v2"

	"blankoff/planner/report/show"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/quantity"
)

// naughty are the published texts, once each, and some of our own.
func naughty(t *testing.T) []string {
	t.Helper()
	data, err := os.ReadFile("../../testdata/adversarial/naughty.json")
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	if err := json.Unmarshal(data, &all); err != nil || len(all) < 400 {
		t.Fatalf("%d texts (%v)", len(all), err)
	}
	all = append(all, hostile...)
	all = append(all, `=cmd|' /C calc'!A0`, "\t=1+1", "\r=1+1", "＝1+1", `=HYPERLINK("http://127.0.0.1","x")`, "=DDE(1)", "@x", "+x", "a\rb", "a\r\nb", "trail ", "\u00a0=1")
	slices.Sort(all)
	return slices.Compact(all)
}

// asRead is a cell as the door hands it on: outer white space is cut, and a cell
// that says that it is empty is.
func asRead(s string) string {
	s = strings.TrimSpace(strings.ReplaceAll(s, "\r\n", "\n"))
	if quantity.Nothing(s, takeoff.Text) {
		return ""
	}
	return s
}

// asCell is a text as it stands in our CSV: nothing that steers, no formula.
func asCell(s string) string {
	s = show.Safe(s)
	if s != "" && strings.ContainsRune("=+-@\t\r\n＝＋－＠", []rune(s)[0]) {
		return "'" + s
	}
	return s
}

// naughtySchedule has one text in every text field of each row; the rows hang on
// each other by their run. Rows whose text no cell may hold are left out, as the
// door refuses them; it returns what is used.
func naughtySchedule(t *testing.T, texts []string, name func(i int) string) (string, []string) {
	t.Helper()
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	_ = w.Write([]string{"tag", "system", "level", "place", "drawing", "kind", "shape", "diameter_mm", "length_mm", "run", "class", "test_pa", "note", "stage"})
	var used []string
	seen := map[string]bool{}
	for i, x := range texts {
		x = asRead(x)
		if x == "" || seen[x] || x == "^" || x == "+1" || x == "-1" || // a remark as +1 or -1 is asked about
			x[0] == '=' || x[0] == '#' || quantity.Above(x, takeoff.Text) != "" || strings.ContainsFunc(x, func(r rune) bool {
			return unicode.IsControl(r) && r != '\n' && r != '\t' || r == unicode.ReplacementChar
		}) {
			continue
		}
		seen[x] = true
		used = append(used, x)
		n := name(i)
		if n == "" {
			n = x
		}
		_ = w.Write([]string{n, "S " + n, n, n, n, "straight", "circular", "630", "30000", "r", "B", "400", n, ""})
	}
	w.Flush()
	return b.String(), used
}

// quotedTOML writes any text as a string of TOML.
func quotedTOML(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range strings.ToValidUTF8(s, "?") {
		if r < ' ' || r == '"' || r == '\\' || r == 0x7f {
			fmt.Fprintf(&b, `\u%04X`, r)
			continue
		}
		b.WriteRune(r)
	}
	return b.String() + `"`
}

// TestNaughtyTexts runs every text through every text field of a schedule into
// every output.
func TestNaughtyTexts(t *testing.T) {
	all := naughty(t)
	text, used := naughtySchedule(t, all, func(int) string { return "" })
	plain, _ := naughtySchedule(t, all, func(i int) string { return fmt.Sprintf("word %d", i) })
	site(t, map[string]string{"naughty.csv": text, "plain.csv": plain})
	if len(used) < 350 {
		t.Fatalf("only %d of %d texts are fit for a cell", len(used), len(all))
	}
	for _, name := range []string{"naughty", "plain"} {
		for _, line := range []string{"takeoff %s.csv -o %s-takeoff.csv", "takeoff %s.csv -o %s-takeoff.json", "takeoff %s.csv -o %s-takeoff.txt", "plan %s.csv --rig rig.toml -o %s-pack", "plan %s.csv --rig rig.toml --units us -o %s-us"} {
			code, stdout, talk := typed(t, fmt.Sprintf(line, name, name))
			if code != exitDone && code != exitPartly || strings.Contains(talk, "fault") {
				t.Fatalf(line+": exit %d, %.500s", name, name, code, talk)
			}
			steersNothing(t, line, stdout+talk)
		}
	}
	keptInCSV(t, "naughty-takeoff.csv", used)
	keptInJSON(t, "naughty-takeoff.json", used)
	text2, err := os.ReadFile("naughty-takeoff.txt")
	if err != nil {
		t.Fatal(err)
	}
	steersNothing(t, "naughty-takeoff.txt", string(text2))
	for _, pack := range []string{"pack", "us"} {
		soundPack(t, "naughty-"+pack, "plain-"+pack, used)
	}
	if code, _, talk := typed(t, "plan naughty.csv --rig rig.toml --cuts naughty-pack/cuts.csv"); code != exitDone && code != exitPartly || strings.Contains(talk, "fault") {
		t.Errorf("the cuts don't read back: exit %d, %.500s", code, talk)
	}
	if code, stdout, talk := typed(t, "plan naughty.csv --rig rig.toml --keep naughty-pack/plan.json"); code != exitDone && code != exitPartly || strings.Contains(stdout, "VOID") {
		t.Errorf("the plan doesn't keep to itself: exit %d, %.500s", code, talk)
	}
}

// TestNaughtySettings runs every text through every field of a job, a rig and a
// scheme.
func TestNaughtySettings(t *testing.T) {
	all := naughty(t)
	site(t, map[string]string{"good.csv": goodSchedule + "C,S1,Roof,straight,600,400,,9000,B,B,400\n"})
	for len(all) > 0 {
		n := min(24, len(all))
		x := append(slices.Clone(all[:n]), slices.Repeat([]string{"word"}, 24-n)...)
		all = all[n:]
		for i := range x {
			if strings.TrimSpace(x[i]) == "" {
				x[i] += "blank" // which a settings file refuses
			}
		}
		job := ""
		for i, key := range []string{"project", "client", "reference", "revision", "clause", "decision", "witness"} {
			job += key + " = " + quotedTOML(x[i]) + "\n"
		}
		job += "[register]\n"
		for i := 7; i < 18; i++ {
			job += quotedTOML(fmt.Sprint(i, x[i])) + " = " + quotedTOML(x[i]) + "\n"
		}
		rig := "name = " + quotedTOML("a"+x[18]) + "\n[[range]]\nname = " + quotedTOML("b"+x[19]) + "\nmin_l_s = 1\nmax_l_s = 200\n"
		scheme := fmt.Sprintf("name = %s\ntitle = %s\nnotes = [%s]\nsource = %s\nk_unit = \"L/s per m2\"\n[exponent]\nvalue = 0.65\n[[class]]\nname = \"B\"\nk = 0.009\nnote = %s\n",
			quotedTOML("c"+x[20]), quotedTOML(x[21]), quotedTOML(x[22]), quotedTOML(x[23]), quotedTOML(x[20]))
		for name, text := range map[string]string{"job.toml": job, "rig.toml": rig, "scheme.toml": scheme} {
			if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		for _, line := range []string{"plan good.csv --rig rig.toml --job job.toml --scheme scheme.toml -o pack", "window --rig rig.toml --scheme scheme.toml --test-pressure 400", "compare good.csv --rig rig.toml --job job.toml --scheme scheme.toml --headrooms 1"} {
			code, stdout, talk := typed(t, line)
			if code != exitDone && code != exitPartly {
				t.Errorf("%s with %q: exit %d, %.500s", line, x, code, talk)
			}
			steersNothing(t, line, stdout+talk)
		}
		soundPack(t, "pack", "", nil)
		if err := os.RemoveAll("pack"); err != nil {
			t.Fatal(err)
		}
	}
}

// steersNothing fails where a text would steer a terminal or turn the writing.
func steersNothing(t *testing.T, what, text string) {
	t.Helper()
	for _, line := range strings.Split(text, "\n") {
		for _, r := range line {
			if unicode.IsControl(r) && r != '\t' || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 || r == 0x200e || r == 0x200f || r == 0xfeff {
				t.Errorf("%s: %U in %q", what, r, line)
				return
			}
		}
	}
}

// tableOf reads a CSV of ours and looks that no cell is a formula.
func tableOf(t *testing.T, path string) [][]string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	number := regexp.MustCompile(`^-?[0-9.]+$`)
	for _, row := range rows {
		for _, cell := range row {
			if cell != "" && strings.ContainsRune("=+-@\t\r\n＝＋－＠", []rune(cell)[0]) && !number.MatchString(cell) {
				t.Errorf("%s: a spreadsheet would work out %q", path, cell)
			}
			steersNothing(t, path, cell)
		}
	}
	return rows
}

func keptInCSV(t *testing.T, path string, used []string) {
	t.Helper()
	rows := tableOf(t, path)
	if len(rows) != len(used)+1 {
		t.Fatalf("%s: %d rows, want %d", path, len(rows)-1, len(used))
	}
	for _, heading := range []string{"tag", "level"} {
		col := slices.Index(rows[0], heading)
		if col < 0 {
			t.Fatalf("%s has no %s: %v", path, heading, rows[0])
		}
		for i, x := range used {
			if rows[i+1][col] != asCell(x) {
				t.Errorf("%s, %s: %q, want %q", path, heading, rows[i+1][col], asCell(x))
			}
		}
	}
}

func keptInJSON(t *testing.T, path string, used []string) {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var v struct {
		Items []struct{ Tag, Level, System string }
	}
	if err := json.Unmarshal(data, &v); err != nil || len(v.Items) != len(used) {
		t.Fatalf("%s: %d items (%v)", path, len(v.Items), err)
	}
	for i, x := range used {
		if it := v.Items[i]; it.Tag != x || it.Level != x || it.System != "S "+x {
			t.Errorf("%s: %q, want %q", path, it, x)
		}
	}
}

// soundPack reads every document of a pack as its reader does. plain is a pack of
// the same pieces under harmless names, or "".
func soundPack(t *testing.T, dir, plain string, used []string) {
	t.Helper()
	isWhole(t, dir)
	tables, err := filepath.Glob(filepath.Join(dir, "*.csv"))
	if err != nil || len(tables) < 5 {
		t.Fatalf("%s: %v (%v)", dir, tables, err)
	}
	for _, path := range tables {
		tableOf(t, path)
	}
	data, err := os.ReadFile(filepath.Join(dir, "plan.json"))
	if err != nil || !json.Valid(data) {
		t.Errorf("%s: plan.json is no JSON (%v)", dir, err)
	}
	soundPage(t, dir, plain, used)
	soundBook(t, filepath.Join(dir, "plan.xlsx"), plain)
	if reader, err := exec.LookPath("pdftotext"); err == nil {
		out, err := exec.Command(reader, filepath.Join(dir, "cards.pdf"), "-").CombinedOutput()
		if err != nil || bytes.Contains(out, []byte("Syntax Error")) {
			t.Errorf("%s: the cards can't be read: %v %.300s", dir, err, out)
		}
	} else {
		need(t, "pdftotext")
	}
	if pdf, err := os.ReadFile(filepath.Join(dir, "cards.pdf")); err != nil || bytes.Contains(pdf, []byte("/JavaScript")) || bytes.Contains(pdf, []byte("/Launch")) || bytes.Contains(pdf, []byte("/URI")) {
		t.Errorf("%s: the cards do more than show (%v)", dir, err)
	}
}

var (
	dataScript = regexp.MustCompile(`(?s)<script type="application/json" id="data">(.*?)</script>`)
	ownScript  = regexp.MustCompile(`(?s)<script>.*?</script>`)
	element    = regexp.MustCompile(`<[a-zA-Z!/][^>]*>`)
	attributes = regexp.MustCompile(`"[^"]*"|'[^']*'`)
	drawing    = regexp.MustCompile(`<svg\b|</svg>`)
)

// shapes are the elements of a page with their attributes, without values.
func shapes(page []byte) map[string]bool {
	found := map[string]bool{}
	page = ownScript.ReplaceAll(dataScript.ReplaceAll(page, nil), nil)
	for _, e := range element.FindAll(page, -1) {
		found[strings.Join(strings.Fields(string(attributes.ReplaceAll(e, []byte(`""`)))), " ")] = true
	}
	return found
}

// soundPage: no element that a page of harmless names doesn't have, two scripts,
// drawings that are XML, every tag shown.
func soundPage(t *testing.T, dir, plain string, used []string) {
	t.Helper()
	page, err := os.ReadFile(filepath.Join(dir, "plan.html"))
	if err != nil {
		t.Fatal(err)
	}
	if n := len(regexp.MustCompile(`(?i)<script`).FindAll(page, -1)); n != 2 {
		t.Errorf("%s: %d scripts in the page", dir, n)
	}
	if m := dataScript.FindSubmatch(page); m == nil || !json.Valid(m[1]) {
		t.Errorf("%s: the page's data is no JSON", dir)
	}
	for _, d := range drawings(page) {
		x := xml.NewDecoder(bytes.NewReader(d))
		x.Entity = xml.HTMLEntity
		for {
			if _, err := x.Token(); err == io.EOF {
				break
			} else if err != nil {
				t.Errorf("%s: a drawing is no XML: %v", dir, err)
				break
			}
		}
	}
	steersNothing(t, dir+"/plan.html", strings.ReplaceAll(string(dataScript.ReplaceAll(page, nil)), "\r", " ")) // the data holds tags as they are, for saved cuts
	if plain == "" {
		return
	}
	harmless, err := os.ReadFile(filepath.Join(plain, "plan.html"))
	if err != nil {
		t.Fatal(err)
	}
	known := shapes(harmless)
	for e := range shapes(page) {
		if !known[e] {
			t.Errorf("%s: the page has the element %q, which one of harmless names hasn't", dir, e)
		}
	}
	text := squashed(html.UnescapeString(string(element.ReplaceAll(page, nil))))
	for _, x := range used {
		if !strings.Contains(text, squashed(show.Safe(x))) {
			t.Errorf("%s: %q isn't on the page", dir, x)
		}
	}
}

// squashed is a text without its white space, since lines are wrapped.
func squashed(s string) string { return strings.Join(strings.Fields(s), "") }

// soundBook opens a workbook: as many formulas as one of harmless names has, and
// nothing that leads outside.
func soundBook(t *testing.T, path, plain string) {
	t.Helper()
	count := func(path string) (n int) {
		f, err := excelize.OpenFile(path)
		if err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		defer f.Close()
		f.Pkg.Range(func(name, data any) bool {
			if bytes.Contains(data.([]byte), []byte("TargetMode=\"External\"")) || strings.Contains(name.(string), "externalLink") {
				t.Errorf("%s: %s leads outside", path, name)
			}
			n += bytes.Count(data.([]byte), []byte("<f>")) + bytes.Count(data.([]byte), []byte("<f "))
			return true
		})
		for _, sheet := range f.GetSheetList() {
			if _, err := f.GetRows(sheet); err != nil {
				t.Errorf("%s, %s: %v", path, sheet, err)
			}
		}
		return n
	}
	n := count(path)
	if plain == "" {
		return
	}
	if want := count(filepath.Join(plain, "plan.xlsx")); n != want || n == 0 {
		t.Errorf("%s: %d formulas, want %d as with harmless names", path, n, want)
	}
}

// drawings are those of a page, each with what is drawn within it.
func drawings(page []byte) (out [][]byte) {
	depth, from := 0, 0
	for _, at := range drawing.FindAllIndex(page, -1) {
		if page[at[0]+1] != '/' {
			if depth++; depth == 1 {
				from = at[0]
			}
			continue
		}
		if depth--; depth == 0 {
			out = append(out, page[from:at[1]])
		}
	}
	return out
}
