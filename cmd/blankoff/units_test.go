package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"html"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// factors are one of each US unit in SI, by the ending of a CSV heading. NIST SP
// 811 (2008) appendix B.8 (from memory, unverified), not from the program.
var factors = map[string]float64{
	"_m2": 9.290304e-2, "_l_s": 4.719474e-1, "_l_s_m2": 5.08e-2, "_pa": 2.490889e2, "_m": 3.048e-1, "_mm": 25.4, "_n": 4.448222,
}

// headings are the same endings in US units.
var headings = map[string]string{
	"_m2": "_ft2", "_l_s": "_cfm", "_l_s_m2": "_cfm_100ft2", "_pa": "_in_wg", "_m": "_ft", "_mm": "_in", "_n": "_lbf",
}

// others are what only sentences hold: kg in a pound, per m of girth and per m2
// in 1/ft, and mm in a foot, mm in workings being m.
var others = []float64{4.535924e-1, 1 / 3.048e-1}

// quoted is what a source says in its own words, and a heading as typed, which no
// system of units changes; and reference air, whose degrees aren't paired here.
var quoted = []string{"at least 10 m2 in one test", "Dia (mm): 'tbc'", "20 C and 101 325 Pa", "68 F and 29.92 in. Hg"}

// siWord finds a unit of SI in what a person reads: after a figure, or as a word
// by itself.
var siWord = regexp.MustCompile(`L/s|\bPa\b|\bm2\b|\bmm2?\b|\bkg\b|[0-9] (m|N)\b|\b(joint|to|per) (m|N)\b|\bmetres?\b|_(m2|l_s|pa|mm|m|n)(,|$)`)

// run2 is what one command line gives: what it prints, and the files of its
// pack by name.
func run2(t *testing.T, args []string, units string) map[string]string {
	t.Helper()
	args = append(slices.Clone(args), "--units", units)
	out := map[string]string{}
	if i := slices.Index(args, "-o") + 1; i > 0 {
		args[i] = filepath.Join(t.TempDir(), filepath.Base(args[i]))
		defer func() {
			files, _ := filepath.Glob(filepath.Join(args[i], "*"))
			for _, f := range append(files, args[i]) {
				data, err := os.ReadFile(f)
				switch ext := filepath.Ext(f); {
				case err != nil, ext == ".pdf":
				case ext == ".html":
					out[filepath.Base(f)] = visible(string(data))
				case ext == ".xlsx":
					out[filepath.Base(f)] = workbookTexts(t, data)
				default:
					out[filepath.Base(f)] = string(data)
				}
			}
		}()
	}
	var stdout, stderr bytes.Buffer
	if code := run(args, &stdout, &stderr); code != exitDone && code != exitPartly {
		t.Fatalf("%v: exit %d, %s", args, code, stderr.String())
	}
	out["stdout"] = stdout.String()
	return out
}

var unseen = regexp.MustCompile(`(?s)<(style|script)[ >].*?</(style|script)>|<svg.*?</svg>|<[^>]*>`)

// visible is what a page shows in words.
func visible(page string) string {
	return html.UnescapeString(regexp.MustCompile(`\n\s*\n+`).ReplaceAllString(unseen.ReplaceAllString(page, " "), "\n"))
}

// workbookTexts are the texts that a workbook holds, one a line, and its number
// formats. Two settings are only there in US units.
func workbookTexts(t *testing.T, data []byte) string {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var b strings.Builder
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range rows {
			if len(row) > 2 && (row[2] == "push_at_1_in_wg" || row[2] == "speed_at_1_in_wg") {
				continue
			}
			for _, text := range row {
				if _, err := strconv.ParseFloat(text, 64); err != nil && text != "" {
					b.WriteString(text + "\n")
				}
			}
		}
	}
	if f.Styles.NumFmts != nil {
		for _, n := range f.Styles.NumFmts.NumFmt {
			b.WriteString(n.FormatCode + "\n")
		}
	}
	return b.String()
}

// commandsOfExamples are the commands of the examples that print figures.
func commandsOfExamples(t *testing.T, dir string) (list [][]string) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("../../examples", dir, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range regexp.MustCompile(`(?m)^\$ blankoff (.*)$`).FindAllStringSubmatch(string(data), -1) {
		args := strings.Fields(strings.TrimSuffix(m[1], " 2>&1"))
		if args[0] != "kinds" && args[0] != "price" && args[0] != "check" { // a bill and a letter count m2
			list = append(list, args)
		}
	}
	return list
}

// TestUnitsOnExamples runs every command of the examples in both systems: no
// word of SI is left in tables and CSV, every figure is that of the SI run within
// its digits, and the figures of JSON are the same.
func TestUnitsOnExamples(t *testing.T) {
	for dir, more := range map[string][][]string{
		"site-lead": {
			{"takeoff", "schedule.csv"}, {"takeoff", "schedule.csv", "--format", "csv"}, {"takeoff", "schedule.csv", "--sheet", "0.8", "--format", "json"}, {"plan", "schedule.csv", "--rig", "rig.toml", "--format", "json"},
			{"compare", "schedule.csv", "--rig", "rig.toml", "--rig", "rig-fine.toml", "--pressures", "300,600"},
			{"plan", "schedule.csv", "--rig", "rig.toml", "--rig", "rig-fine.toml", "--min-area", "12", "--max-area", "150", "--piece-length", "1.25", "-o", "pack"},
			{"plan", "schedule.csv", "--rig", "rig.toml", "--keep", "plan-pack/plan.json", "--piece-length", "2", "--sample", "20"},
			{"plan", "schedule.csv", "--rig", "rig.toml", "--picked", "S01", "--sample", "40", "--sample-by", "joint length"},
		},
		"estimator": {{"takeoff", "tender-schedule.xlsx", "--format", "csv", "--totals", "-o", "totals.csv"}},
		"engineer":  {{"window", "--rig", "rig.toml"}, {"takeoff", "areas.csv", "--basis", "centre-line"}, {"takeoff", "areas.csv", "--basis", "centre-line", "--format", "csv"}},
	} {
		t.Run(dir, func(t *testing.T) {
			commands := append(commandsOfExamples(t, dir), more...)
			t.Chdir(filepath.Join("../../examples", dir))
			for _, args := range commands {
				si, us := run2(t, args, "si"), run2(t, args, "us")
				for name, text := range si {
					same := &pairing{t: t, where: strings.Join(args, " ") + ": " + name}
					switch {
					case name == listName: // sums of the other files
					case strings.HasSuffix(name, ".json") || strings.HasPrefix(text, "{"):
						same.json(text, us[name])
					case strings.HasSuffix(name, ".xlsx"):
						same.noSI(us[name])
						same.lines(text, us[name])
					case strings.HasSuffix(name, ".csv") || slices.Contains(args, "csv") && text != "":
						same.noSI(us[name])
						same.csv(text, us[name])
					case strings.HasSuffix(name, ".html"):
						same.noSI(us[name])
					default:
						same.noSI(us[name])
						same.text(text, us[name])
					}
				}
				if len(us) != len(si) {
					t.Errorf("%v: %d outputs in SI, %d in US units", args, len(si), len(us))
				}
			}
		})
	}
}

// pairing sets two runs of one command side by side.
type pairing struct {
	t     *testing.T
	where string
}

// noSI demands that no unit of SI is left.
func (p *pairing) noSI(us string) {
	for _, q := range quoted {
		us = regexp.MustCompile(strings.ReplaceAll(regexp.QuoteMeta(q), " ", `\s+`)).ReplaceAllString(us, "")
	}
	for line := range strings.Lines(us) {
		if siWord.MatchString(strings.TrimRight(line, "\n")) {
			p.t.Errorf("%s: %q in %s", p.where, siWord.FindString(line), line)
		}
	}
}

// json: the same keys, the same figures, sentences alike.
func (p *pairing) json(si, us string) {
	var a, b any
	if json.Unmarshal([]byte(si), &a) != nil || json.Unmarshal([]byte(us), &b) != nil {
		p.t.Fatalf("%s: no JSON", p.where)
	}
	p.value("", a, b)
}

func (p *pairing) value(at string, a, b any) {
	switch a := a.(type) {
	case map[string]any:
		b, _ := b.(map[string]any)
		for key := range b {
			if _, ok := a[key]; !ok && (key != "units" || b[key] != "us") {
				p.t.Errorf("%s%s.%s is only in US units", p.where, at, key)
			}
		}
		for key, v := range a {
			p.value(at+"."+key, v, b[key])
		}
	case []any:
		b, _ := b.([]any)
		if len(a) != len(b) {
			p.t.Errorf("%s%s: %d and %d", p.where, at, len(a), len(b))
			return
		}
		for i := range a {
			p.value(fmt.Sprint(at, "[", i, "]"), a[i], b[i])
		}
	case string:
		b, _ := b.(string)
		if strings.HasSuffix(at, ".size") && a != b {
			p.t.Errorf("%s%s: %q and %q", p.where, at, a, b)
		}
		p.words(at, a, b)
	default:
		if a != b {
			p.t.Errorf("%s%s: %v and %v", p.where, at, a, b)
		}
	}
}

// csv: figures by the unit of their heading, the rest word by word.
func (p *pairing) csv(si, us string) {
	a, errA := csv.NewReader(strings.NewReader(si)).ReadAll()
	b, errB := csv.NewReader(strings.NewReader(us)).ReadAll()
	if errA != nil || errB != nil || len(a) != len(b) {
		p.t.Fatalf("%s: %v %v, %d and %d rows", p.where, errA, errB, len(a), len(b))
	}
	for k, head := range a[0] {
		end := ""
		for e := range factors {
			if strings.HasSuffix(head, e) && len(e) > len(end) {
				end = e
			}
		}
		if want := strings.TrimSuffix(head, end) + headings[end]; b[0][k] != want {
			p.t.Errorf("%s: heading %s, want %s", p.where, b[0][k], want)
		}
		for i := 1; i < len(a); i++ {
			x, errX := strconv.ParseFloat(a[i][k], 64)
			y, errY := strconv.ParseFloat(b[i][k], 64)
			switch {
			case end == "" || errX != nil || errY != nil:
				p.words(fmt.Sprintf(" row %d, %s", i, head), a[i][k], b[i][k])
			case math.Abs(y*factors[end]-x) > 1.1e-6*factors[end]+1.1e-6+2e-7*x && end != "_n" || math.Abs(y*factors[end]-x) > 0.3:
				p.t.Errorf("%s row %d, %s: %v is %v in SI", p.where, i, head, y, x)
			}
		}
	}
}

// text pairs the blocks between blank lines. In one whose cells are wrapped in
// another way, the figures are paired in whatever order.
func (p *pairing) text(si, us string) {
	a, b := strings.Split(si, "\n\n"), strings.Split(us, "\n\n")
	if len(a) != len(b) {
		p.t.Fatalf("%s: %d and %d blocks", p.where, len(a), len(b))
	}
	for i := range a {
		x, y := tokens(beforeWorking(a[i])), tokens(beforeWorking(b[i]))
		if len(x) == len(y) && alike(x, y) {
			continue
		}
		x, y = figures(x), figures(y)
		if h := slices.Index(y, "100"); h >= 0 && h < 20 && !slices.Contains(x[:h+1], "100") {
			y = slices.Delete(y, h, h+1) // of a heading, cfm per 100 ft2
		}
		twice := strings.Contains(p.where, "--scheme US") // in. w.g. beside Pa
		if left := unpaired(x, y); len(left) > 0 || len(x) != len(y) && !twice {
			p.t.Errorf("%s: figures %v aren't those of the SI run\n%.2000s\n%.2000s", p.where, left, a[i], b[i])
		}
	}
}

// lines pairs texts line by line, but for number formats.
func (p *pairing) lines(si, us string) {
	a, b := strings.Split(si, "\n"), strings.Split(us, "\n")
	if len(a) != len(b) {
		p.t.Fatalf("%s: %d and %d texts", p.where, len(a), len(b))
	}
	for i := range a {
		if !strings.ContainsAny(a[i], `"[`) {
			p.words("", renamed.ReplaceAllString(a[i], ""), renamed.ReplaceAllString(strings.Replace(b[i], "in. w.g. per cfm2", "Pa per (L/s)2", 1), ""))
		}
	}
}

// renamed are the units at the end of a name and of a heading.
var renamed = regexp.MustCompile(`_(m2|ft2|pa|in_wg|mm|in)$|\b(mm|m|N|in|ft|lbf)$`)

// beforeWorking cuts the last column off the table of items: in CSV its cells
// aren't wrapped, and are paired there.
func beforeWorking(block string) string {
	at := -1
	var out []string
	for line := range strings.Lines(block) {
		if at < 0 && strings.HasPrefix(block, "Items\n") {
			at = strings.Index(line, "working")
		}
		if r := []rune(line); at >= 0 && len(r) > at {
			line = string(r[:at])
		}
		out = append(out, line)
	}
	return strings.Join(out, "\n")
}

func (p *pairing) words(at, si, us string) {
	if strings.Contains(si, "left open would leak about") || strings.Contains(si, "reference air, 20 C") {
		return // two digits on purpose, the figure itself stands beside; the air has its own figures in each system
	}
	if x, y := tokens(si), tokens(us); len(x) != len(y) || !alike(x, y) {
		p.t.Errorf("%s%s:\n%q\n%q", p.where, at, si, us)
	}
}

// unitWords are turned to those of SI, so that words pair; a size in mm goes
// without its unit.
var unitWords = strings.NewReplacer("in. w.g.", "Pa", "cfm per 100 ft2", "L/s per m2", "cfm", "L/s", "ft2", "m2", " lbf", " N", " lb)", " kg)",
	"per foot", "per metre", " ft", " m")

var (
	inches    = regexp.MustCompile(`([0-9]) in\b|([0-9]) mm\b`)
	openEnd   = regexp.MustCompile(`(leak about) [0-9]+`)         // to two digits; in sections.csv to all
	flagValue = regexp.MustCompile(`(--m(?:in|ax)-area) [0-9.]+`) // told in SI beside US units
	tokenOf   = regexp.MustCompile(`[0-9]+(\.[0-9]+)?|[^0-9\s]+`)
)

func tokens(s string) []string {
	s = strings.Join(strings.Fields(s), " ")
	for _, q := range quoted {
		s = strings.ReplaceAll(s, q, "")
	}
	for _, u := range []string{"m of joint per m2", "ft of joint per ft2"} {
		s = strings.ReplaceAll(s, u, "ratio")
	}
	s = openEnd.ReplaceAllString(flagValue.ReplaceAllString(s, "$1"), "$1")
	s = strings.ReplaceAll(s, "whole mm2", "about 0.000001 m2")
	s = strings.ReplaceAll(unitWords.Replace(s), "m2", "sqm")
	return tokenOf.FindAllString(inches.ReplaceAllString(s, "$1$2"), -1)
}

func figures(list []string) []string {
	return slices.DeleteFunc(slices.Clone(list), func(s string) bool { return s[0] < '0' || s[0] > '9' })
}

// named are the factors of units that stand behind a figure.
var named = map[string]float64{
	"ratio": 1 / 3.048e-1, "sqm": factors["_m2"], "L/s": factors["_l_s"], "Pa": factors["_pa"], "m": factors["_m"], "N": factors["_n"], "kg": 4.535924e-1,
}

// alike pairs words: a figure with its unit has to be turned by that unit, any
// other is the same or turned by one of them.
func alike(si, us []string) bool {
	for i := range si {
		unit := 0.0
		if i+1 < len(si) {
			unit = named[strings.TrimRight(si[i+1], ".,;:)")]
		}
		switch {
		case unit > 0 && si[i][0] >= '0' && si[i][0] <= '9':
			if !sameFigure(si[i], us[i], unit) {
				return false
			}
		case si[i] != us[i] && !sameFigure(si[i], us[i]):
			return false
		}
	}
	return true
}

// unpaired are the figures of the US run for which no figure of the SI run is
// left, when every one is given one of its own (augmenting paths).
func unpaired(si, us []string) (left []string) {
	owner := make([]int, len(si)) // of a figure of SI: its place in us, from 1
	same := sameTable(si, us)
	var find func(k int, seen []bool) bool
	find = func(k int, seen []bool) bool {
		for i, x := range si {
			if seen[i] || !same[us[k]][x] {
				continue
			}
			seen[i] = true
			if owner[i] == 0 || find(owner[i]-1, seen) {
				owner[i] = k + 1
				return true
			}
		}
		return false
	}
	for k, y := range us {
		if !find(k, make([]bool, len(si))) {
			left = append(left, y)
		}
	}
	return left
}

// sameTable says of every two unlike figures whether they are the same.
func sameTable(si, us []string) map[string]map[string]bool {
	table := map[string]map[string]bool{}
	for _, y := range us {
		if table[y] != nil {
			continue
		}
		row := map[string]bool{}
		for _, x := range si {
			if _, ok := row[x]; !ok {
				row[x] = x == y || sameFigure(x, y)
			}
		}
		table[y] = row
	}
	return table
}

// sameFigure says whether a figure is that of the SI run, in one of the units
// given (none: any), within one unit of the last place of both.
func sameFigure(si, us string, by ...float64) bool {
	x, errX := strconv.ParseFloat(si, 64)
	y, errY := strconv.ParseFloat(us, 64)
	if errX != nil || errY != nil {
		return false
	}
	if len(by) == 0 {
		by = slices.Clone(others)
		for _, f := range factors {
			by = append(by, f)
		}
	}
	for _, f := range by {
		if math.Abs(y*f-x) <= 1.001*(place(us)*f+place(si))+3e-7*x {
			return true
		}
	}
	return false
}

// place is the last place of a figure; a whole number of four digits and more
// may be cut to three.
func place(s string) float64 {
	if _, rest, ok := strings.Cut(s, "."); ok {
		return math.Pow10(-len(rest))
	}
	if len(s) > 3 && strings.HasSuffix(s, "0") {
		return math.Pow10(len(s) - 3)
	}
	return 1
}
