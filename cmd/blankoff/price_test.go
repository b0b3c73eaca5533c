package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// billOf is the JSON of a bill, as far as the tests read it.
type billOf struct {
	Fingerprint struct {
		SHA256 string `json:"sha256"`
	} `json:"fingerprint"`
	Quantities struct {
		Tests, Fits, Makes, Groupings, Days int
		Area                                float64 `json:"area_m2"`
	} `json:"quantities"`
	Lines []struct {
		Key      string  `json:"key"`
		Quantity float64 `json:"quantity"`
		Rate     int64   `json:"rate_minor"`
		Amount   int64   `json:"amount_minor"`
		From     string  `json:"from"`
	} `json:"lines"`
	Total     int64 `json:"total_minor"`
	NotPriced []struct {
		Write string `json:"write"`
	} `json:"not_priced"`
	UnitPrices []struct {
		Per    string `json:"per"`
		Shares []struct {
			Name   string `json:"name"`
			Amount int64  `json:"amount_minor"`
		} `json:"shares"`
	} `json:"unit_prices"`
	Risk struct {
		Outcome struct {
			Money []struct {
				Value float64 `json:"value"`
			} `json:"money_minor"`
			Widened float64 `json:"chance_that_the_sample_is_widened"`
		} `json:"outcome"`
		Past *struct {
			Results int `json:"results"`
		} `json:"past_results"`
	} `json:"risk"`
	Comparison []struct {
		Name       string `json:"name"`
		Tests      int    `json:"tests"`
		Total      int64  `json:"total_minor"`
		Difference int64  `json:"difference_minor"`
		Note       string `json:"note"`
	} `json:"comparison"`
	Exclusions []string `json:"exclusions"`
	Look       []string `json:"look"`
	Nothing    string   `json:"nothing_to_price"`
}

const estimator = "../../examples/estimator/"

// bill prices the estimator's example and reads its JSON back.
func bill(t *testing.T, schedule, more string) *billOf {
	t.Helper()
	line := fmt.Sprintf("price %s%s --rig %srig.toml --rates %srates.toml --class B --test-pressure 400 --runs 500 --format json %s", estimator, schedule, estimator, estimator, more)
	code, stdout, stderr := typed(t, line)
	var v billOf
	if err := json.Unmarshal([]byte(stdout), &v); err != nil || code == exitFailed || code == exitMisuse {
		t.Fatalf("%s\nexit %d, %v\n%s", line, code, err, stderr)
	}
	return &v
}

// TestBillTiesUpWithThePlan: tests, area, days, fits and makes are those of the
// plan that is made from the same files.
func TestBillTiesUpWithThePlan(t *testing.T) {
	b := bill(t, "linked.csv", "--compare=false")
	p := planOf(t, fmt.Sprintf("plan %slinked.csv --rig %srig.toml --class B --test-pressure 400", estimator, estimator))
	if q := b.Quantities; q.Tests != len(p.Sections) || q.Days != p.Programme.Days || q.Fits != p.Blanking.Fits || q.Makes != p.Blanking.Makes || math.Abs(q.Area-p.Balance.Sections) > 1e-9 {
		t.Errorf("bill %+v, plan %d tests, %d days, %d fits, %d makes, %g m2", q, len(p.Sections), p.Programme.Days, p.Blanking.Fits, p.Blanking.Makes, p.Balance.Sections)
	}
	fits, makes := map[bool]float64{}, 0.0
	for _, l := range b.Lines {
		if amount := int64(math.Round(l.Quantity * float64(l.Rate))); amount != l.Amount {
			t.Errorf("%s: %g x %d = %d", l.Key, l.Quantity, l.Rate, l.Amount)
		}
		switch {
		case strings.HasPrefix(l.Key, "fit_"):
			fits[true] += l.Quantity
		case strings.HasPrefix(l.Key, "make_"):
			makes += l.Quantity
		}
	}
	if int(fits[true]) != p.Blanking.Fits || int(makes) != p.Blanking.Makes {
		t.Errorf("lines of %g fits and %g makes", fits[true], makes)
	}
	for _, u := range b.UnitPrices {
		sum := int64(0)
		for _, s := range u.Shares {
			sum += s.Amount
		}
		if sum != b.Total {
			t.Errorf("shares per %s come to %d of %d", u.Per, sum, b.Total)
		}
	}
}

// TestGroupingIsSaid: the tender's loose rows have no blanks, and the bill says
// so rather than pricing them at nothing.
func TestGroupingIsSaid(t *testing.T) {
	b := bill(t, "tender-schedule.xlsx", "--compare=false")
	said := strings.Join(append(b.Exclusions, b.Look...), "\n")
	if b.Quantities.Groupings != b.Quantities.Tests || strings.Count(said, "not known for groupings") != 2 || !strings.Contains(said, "Supply row 36") {
		t.Errorf("%+v\n%s", b.Quantities, said)
	}
}

// TestFingerprint: what a file is called changes nothing, what is in it does.
func TestFingerprint(t *testing.T) {
	rates, err := os.ReadFile(estimator + "rates.toml")
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	priced := func(name, text, more string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return bill(t, "linked.csv", "--compare=false --rates "+path+" "+more).Fingerprint.SHA256
	}
	first := priced("a.toml", string(rates), "")
	if again := priced("b.toml", string(rates), ""); again != first {
		t.Error("another name gave another fingerprint")
	}
	for _, other := range []string{
		priced("c.toml", strings.Replace(string(rates), "test = 5500", "test = 5501", 1), ""), priced("d.toml", string(rates), "--headroom 2"),
		priced("e.toml", string(rates), "--seed 2"), priced("f.toml", string(rates), "--prior good"), priced("g.toml", string(rates), "--job "+estimator+"job.toml"),
	} {
		if other == first {
			t.Error("another rate, headroom, seed, prior or job gave the same fingerprint")
		}
		first = other
	}
}

// TestBesides holds the lines of the comparison against bills of their own.
func TestBesides(t *testing.T) {
	b := bill(t, "linked.csv", "--other-rig "+estimator+"rig-hire.toml --revision "+estimator+"tender-schedule.xlsx")
	own := map[string]int64{
		"as asked, all tested":          bill(t, "linked.csv", "--compare=false").Total,
		"sample of 25 %":                bill(t, "linked.csv", "--compare=false --sample 25").Total,
		"one class tighter":             bill(t, "linked.csv", "--compare=false --class C").Total,
		"revision tender-schedule.xlsx": bill(t, "tender-schedule.xlsx", "--compare=false").Total,
	}
	found := 0
	for _, x := range b.Comparison {
		if want, ok := own[x.Name]; ok {
			found++
			if x.Total != want || x.Difference != want-b.Total {
				t.Errorf("%s: %d, difference %d; by itself %d", x.Name, x.Total, x.Difference, want)
			}
		}
		if x.Name == "client's own blanks" && x.Difference >= 0 {
			t.Errorf("%+v", x)
		}
	}
	if found != len(own) || len(b.Comparison) != 8 || !strings.Contains(b.Comparison[7].Note, "-2 tests") {
		t.Errorf("%d of %d found: %+v", found, len(own), b.Comparison)
	}
}

// TestSampleWidens: a sample of a quarter that may fail costs less at first, and
// its P90 isn't below its own total.
func TestSampleWidens(t *testing.T) {
	b := bill(t, "linked.csv", "--compare=false --sample 25 --prior half-fail")
	if w := b.Risk.Outcome.Widened; w < 0.5 || w >= 1 || b.Risk.Outcome.Money[2].Value <= float64(b.Total) {
		t.Errorf("widened with %g, P90 %g, total %d", w, b.Risk.Outcome.Money[2].Value, b.Total)
	}
}

// TestKeptPlanIsPriced: what has passed is not priced again.
func TestKeptPlanIsPriced(t *testing.T) {
	dir := t.TempDir()
	if code, _, stderr := typed(t, fmt.Sprintf("plan %slinked.csv --rig %srig.toml --class B --test-pressure 400 -o %s", estimator, estimator, dir)); code != exitDone {
		t.Fatal(stderr)
	}
	path := filepath.Join(dir, "plan.json")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(strings.Replace(string(text), `"status": ""`, `"status": "passed"`, 2)), 0o600); err != nil {
		t.Fatal(err)
	}
	whole, rest := bill(t, "linked.csv", "--compare=false"), bill(t, "linked.csv", "--keep "+path)
	if rest.Quantities.Tests != whole.Quantities.Tests-2 || rest.Total >= whole.Total || rest.Comparison[0].Total != rest.Total || len(rest.Comparison) != 4 {
		t.Errorf("%d of %d tests, %d of %d: %+v", rest.Quantities.Tests, whole.Quantities.Tests, rest.Total, whole.Total, rest.Comparison)
	}
	done := strings.ReplaceAll(string(text), `"status": ""`, `"status": "passed"`)
	if err := os.WriteFile(path, []byte(done), 0o600); err != nil {
		t.Fatal(err)
	}
	code, stdout, stderr := typed(t, fmt.Sprintf("price %slinked.csv --rig %srig.toml --rates %srates.toml --class B --test-pressure 400 --runs 500 --keep %s -o %s", estimator, estimator, estimator, path, filepath.Join(dir, "bill")))
	if code != exitDone || !strings.Contains(stdout, "for 0 tests") {
		t.Errorf("everything has passed: exit %d\n%s\n%s", code, stdout, stderr)
	}
}

// TestBillPack: the same bytes twice, and texts that begin like formulas stay
// texts.
func TestBillPack(t *testing.T) {
	rates, err := os.ReadFile(estimator + "rates.toml")
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	own := filepath.Join(dir, "rates.toml")
	hostile := strings.Replace(string(rates), `"rates of this spring"`, `"=1+1"`, 1) + "\n[[provisional]]\nwhat = \"=cmd|' /C calc'!A0\"\namount = 100\n"
	if err := os.WriteFile(own, []byte(strings.Replace(hostile, "valid_days = 60", "valid_days = 60\nassumptions = [\"+cmd\"]\nexclusions = [\"@cmd \\u001b[2J\"]", 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	packs := []string{filepath.Join(dir, "a"), filepath.Join(dir, "b")}
	for _, pack := range packs {
		if code, _, stderr := typed(t, fmt.Sprintf("price %slinked.csv --rig %srig.toml --rates %s --class B --test-pressure 400 --runs 500 -o %s", estimator, estimator, own, pack)); code != exitDone {
			t.Fatal(stderr)
		}
	}
	for name, data := range files(t, packs[0]) {
		if !bytes.Equal(data, files(t, packs[1])[name]) {
			t.Errorf("%s: other bytes the second time", name)
		}
		if !strings.HasSuffix(name, ".xlsx") && bytes.Contains(data, []byte("\x1b")) {
			t.Errorf("%s holds what steers a screen", name)
		}
	}
	for _, name := range []string{"bill.xlsx", "risk.xlsx"} {
		f, err := excelize.OpenFile(filepath.Join(packs[0], name))
		if err != nil {
			t.Fatal(err)
		}
		formulas := 0
		for _, sheet := range f.GetSheetList() {
			rows, err := f.GetRows(sheet)
			if err != nil {
				t.Fatal(err)
			}
			for r, row := range rows {
				for c := range row {
					at, _ := excelize.CoordinatesToCellName(c+1, r+1)
					if text, _ := f.GetCellFormula(sheet, at); text != "" {
						formulas++
						if strings.Contains(text, "cmd") || strings.Contains(text, "1+1") {
							t.Errorf("%s!%s is the formula %q", sheet, at, text)
						}
					}
				}
			}
		}
		if (formulas > 0) != (name == "bill.xlsx") {
			t.Errorf("%s has %d formulas", name, formulas)
		}
		f.Close()
	}
}

func TestPastResults(t *testing.T) {
	path := filepath.Join(t.TempDir(), "past.csv")
	if err := os.WriteFile(path, []byte("area_m2,class,leak_over_limit,passed_first_time,job\n50,B,0.2,yes,a\n60,B,0.3,yes,b\n40,B,0.25,yes,c\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	before, after := bill(t, "linked.csv", "--compare=false"), bill(t, "linked.csv", "--compare=false --results "+path)
	if after.Risk.Past == nil || after.Risk.Past.Results != 3 || after.Risk.Outcome.Money[1].Value >= before.Risk.Outcome.Money[1].Value || after.Total >= before.Total {
		t.Errorf("before %+v, after %+v", before.Risk, after.Risk)
	}
}

func TestPriceMisuse(t *testing.T) {
	for _, tt := range []struct{ more, want string }{
		{"", "no rates given"}, {"--rates nowhere.toml", "rates file nowhere.toml"}, {"--rates " + estimator + "rig.toml", "unknown key"},
		{"--rates " + estimator + "rates.toml --prior hopeful", "is no prior"}, {"--rates " + estimator + "rates.toml --runs 3", "--runs 3"},
	} {
		code, stdout, stderr := typed(t, "price "+estimator+"linked.csv --rig "+estimator+"rig.toml --class B --test-pressure 400 "+tt.more)
		if code != exitMisuse && code != exitFailed || stdout != "" || !strings.Contains(stderr, tt.want) {
			t.Errorf("%s: exit %d, %s", tt.more, code, stderr)
		}
	}
}

// TestBillInOffice has another program recalculate the workbook: its total is
// ours to the minor unit, and so after a rate, a quantity or the mark-up was
// changed. Quantities and rates are such that many amounts end in half a minor
// unit.
func TestBillInOffice(t *testing.T) {
	office := need(t, "soffice")
	dir := t.TempDir()
	if code, _, stderr := typed(t, fmt.Sprintf("price %slinked.csv --rig %srig.toml --rates %srates.toml --class B --test-pressure 400 --runs 500 --compare=false -o %s", estimator, estimator, estimator, dir)); code != exitDone {
		t.Fatal(stderr)
	}
	b := bill(t, "linked.csv", "--compare=false")
	f, err := excelize.OpenFile(filepath.Join(dir, "bill.xlsx"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	cell := map[string]string{}
	for _, n := range f.GetDefinedName() {
		_, at, _ := strings.Cut(n.RefersTo, "!")
		cell[n.Name] = strings.ReplaceAll(at, "$", "")
	}
	if got := cached(t, f, cell["total"]); got != b.Total {
		t.Errorf("the workbook's own total is %d, the bill's %d", got, b.Total)
	}
	sheet := recalculated(t, office, dir, f)
	if got := amountAt(t, sheet("bill"), cell["total"]); got != b.Total {
		t.Errorf("recalculated %d, the bill says %d", got, b.Total)
	}
	holdShares(t, sheet("unit prices"), b)
	// Change every quantity and rate, and work the total out in whole numbers:
	// quantities in hundredths that end in 5, rates that end in 10 cents.
	sum := int64(0)
	for i, l := range b.Lines {
		rate := cell["rate_"+l.Key]
		row := rate[1:]
		hundredths, cents := int64(105+110*i), int64(10+100*i)
		set(t, f, rate, float64(cents)/100)
		set(t, f, "C"+row, float64(hundredths)/100)
		sum += (hundredths*cents + 50) / 100
	}
	set(t, f, cell["markup_percent"], 7.5)
	want := sum + (sum*750+5000)/10000
	if least := int64(60000); want < least {
		want = least
	}
	sheet = recalculated(t, office, dir, f)
	if got := amountAt(t, sheet("bill"), cell["total"]); got != want {
		t.Errorf("after the change recalculated %d, by hand %d", got, want)
	}
	for _, row := range sheet("unit prices") {
		if row[0] == "all" && (cents(t, row[2]) != want || row[3] != "" && cents(t, row[3]) != want) {
			t.Errorf("shares of %d come to %q", want, row)
		}
	}
}

// holdShares holds the shares of the recalculated sheet against the bill's.
func holdShares(t *testing.T, rows [][]string, b *billOf) {
	t.Helper()
	test, area, day := b.UnitPrices[0].Shares, b.UnitPrices[1].Shares, b.UnitPrices[2].Shares
	k, d := 0, 0
	for _, row := range rows {
		switch {
		case k < len(test) && row[0] == test[k].Name:
			if cents(t, row[2]) != test[k].Amount || cents(t, row[3]) != area[k].Amount {
				t.Errorf("%q, the bill has %d and %d", row, test[k].Amount, area[k].Amount)
			}
			k++
		case strings.HasPrefix(row[0], "day ") && cents(t, row[2]) == day[d].Amount:
			d++
		}
	}
	if k != len(test) || d != len(day) {
		t.Errorf("%d shares of tests and %d of days found", k, d)
	}
}

func set(t *testing.T, f *excelize.File, cell string, v float64) {
	t.Helper()
	if err := f.SetCellValue("bill", cell, v); err != nil {
		t.Fatal(err)
	}
}

// cached is an amount as the workbook holds it, in cents.
func cached(t *testing.T, f *excelize.File, cell string) int64 {
	t.Helper()
	text, err := f.GetCellValue("bill", cell, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	return cents(t, text)
}

func cents(t *testing.T, text string) int64 {
	t.Helper()
	v, err := strconv.ParseFloat(strings.ReplaceAll(text, ",", ""), 64)
	if err != nil {
		t.Fatalf("%q is no amount", text)
	}
	return int64(math.Round(v * 100))
}

// recalculated has the office program open the workbook and write its sheets out
// as they come to; the rows of one by its name.
func recalculated(t *testing.T, office, dir string, f *excelize.File) func(sheet string) [][]string {
	t.Helper()
	path := filepath.Join(dir, "changed.xlsx")
	if err := f.UpdateLinkedValue(); err != nil { // takes the values off the formulas
		t.Fatal(err)
	}
	if err := f.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	const all = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1"
	out, err := exec.Command(office, "-env:UserInstallation=file://"+filepath.ToSlash(filepath.Join(dir, "profile")), "--headless", "--convert-to", all, "--outdir", dir, path).CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	return func(sheet string) [][]string {
		text, err := os.ReadFile(filepath.Join(dir, "changed-"+sheet+".csv"))
		if err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		r := csv.NewReader(strings.NewReader(string(text)))
		r.FieldsPerRecord = -1
		rows, err := r.ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(text), "#") || strings.Contains(string(text), "Err:") {
			t.Errorf("a formula of %s fails:\n%s", sheet, text)
		}
		return rows
	}
}

// amountAt is an amount of a sheet, in cents.
func amountAt(t *testing.T, rows [][]string, cell string) int64 {
	t.Helper()
	column, row, err := excelize.CellNameToCoordinates(cell)
	if err != nil || row > len(rows) || column > len(rows[row-1]) {
		t.Fatalf("no cell %s in %q", cell, rows)
	}
	return cents(t, rows[row-1][column-1])
}
