package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// TestPackAgrees reads every document of a pack by itself and holds each against
// plan.json: every section's area, limit and pressure, every blank, every cut and
// the order of the tests are the same wherever they stand.
func TestPackAgrees(t *testing.T) {
	reader := need(t, "pdftotext")
	dir := packOf(t, "plan ../../examples/site-lead/schedule.csv --rig ../../examples/site-lead/rig.toml --job ../../examples/site-lead/job.toml")
	at := func(name string) string { return filepath.Join(dir, name) }
	var v report.Plan
	data, err := os.ReadFile(at("plan.json"))
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, &v); err != nil {
		t.Fatal(err)
	}
	text, err := exec.Command(reader, "-layout", at("cards.pdf"), "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	cards := strings.Split(string(text), "\f")
	page, err := os.ReadFile(at("plan.html"))
	if err != nil {
		t.Fatal(err)
	}
	onPage := strings.Split(string(page), `<article class="card`)
	sections, blanks := table(t, at("sections.csv")), table(t, at("blanks.csv"))
	book := sheetOf(t, at("plan.xlsx"), "sections")
	for i := range v.Sections {
		s := &v.Sections[i]
		near := func(where, text string, want float64) {
			if got, err := strconv.ParseFloat(strings.Fields(text + " x")[0], 64); err != nil || math.Abs(got-want) > 1e-5 {
				t.Errorf("%s of %s is %q, want %v", where, s.ID, text, want)
			}
		}
		near("area in sections.csv", sections[i]["area_m2"], s.Area)
		near("limit in sections.csv", sections[i]["limit_l_s"], s.Limit)
		near("area in the workbook", book[i]["area m2"], s.Area)
		near("pressure in the workbook", book[i]["test Pa"], s.TestPa)
		for _, figure := range []string{show.Limit(s.Limit), fmt.Sprintf("%.2f", s.Area), fmt.Sprintf("%g", s.TestPa), s.ID} {
			for where, card := range map[string]string{"cards.pdf": cards[i], "plan.html": visible(onPage[i+1])} {
				if !strings.Contains(card, figure) {
					t.Errorf("%s doesn't say %s on the card of %s", where, figure, s.ID)
				}
			}
		}
		of := slices.DeleteFunc(slices.Clone(blanks), func(b map[string]string) bool { return b["section"] != s.ID })
		if len(of) != len(s.Blanks) {
			t.Errorf("blanks.csv has %d blanks for %s, want %d", len(of), s.ID, len(s.Blanks))
		}
	}
	moves := table(t, at("moves.csv"))
	if len(moves) != v.Blanking.Fits || len(blanks) != v.Blanking.Fits {
		t.Errorf("%d moves, %d blanks, %d fits", len(moves), len(blanks), v.Blanking.Fits)
	}
	if cuts := table(t, at("cuts.csv")); len(cuts) != len(v.Cuts) {
		t.Errorf("%d cuts in cuts.csv, want %d", len(cuts), len(v.Cuts))
	}
	minutes := 0.0
	for i, line := range table(t, at("programme.csv")) {
		if line["section"] != v.Programme.Slots[i].Section {
			t.Errorf("test %d of the programme is %s, want %s", i+1, line["section"], v.Programme.Slots[i].Section)
		}
		m, _ := strconv.ParseFloat(line["minutes"], 64)
		minutes += m
	}
	if want := v.Proof.TotalMinutes + v.Proof.EndMinutes + v.Programme.Moving; math.Abs(minutes-want) > 1 {
		t.Errorf("the programme's tests take %v min, want %v", minutes, want)
	}
}

// table reads a CSV with its headings.
func table(t *testing.T, path string) (list []map[string]string) {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows[1:] {
		list = append(list, paired(rows[0], r))
	}
	return list
}

func paired(head, row []string) map[string]string {
	line := map[string]string{}
	for k, cell := range row {
		line[head[k]] = cell
	}
	return line
}

// sheetOf reads a sheet of a workbook with its headings, the figures as they are.
func sheetOf(t *testing.T, path, sheet string) (list []map[string]string) {
	t.Helper()
	f, err := excelize.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows[1:] {
		list = append(list, paired(rows[0], r))
	}
	return list
}
