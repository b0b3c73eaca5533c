package price_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"blankoff/planner/price"
	"blankoff/planner/programme"
)

const rates = `
currency = "EUR"
minor_digits = 2
markup_percent = 12.5
[rates]
mobilisation = 18500
crew_day = 36000
test = 5500
test_m2 = 33
report = 28000
report_section = 1200
retest = 9500
waiting_hour = 8800
[[hire]]
rig = "hired"
day = 9500
delivery = 12000
[[blank]]
up_to_mm = 315
make = 1800
fit = 1100
[blank_girth]
make_base = 2000
make_per_metre = 1550
fit_base = 900
fit_per_metre = 500
[allowances]
retests_percent = 25
waiting_hours = 1.5
[[provisional]]
what = "lathe bay, size to be confirmed"
amount = 40001
`

func loaded(t testing.TB, text string) *price.Rates {
	t.Helper()
	r, err := price.Load(strings.NewReader(text), "rates.toml")
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// work is five tests on two levels with two sizes of blanks. 90 min in place, 10
// min to move, 20 min to another level, 420 min a day:
//
//	A  30 + 90           = 120, day 1 to 120
//	B  10 + 30 + 90      = 130, to 250
//	C  10 + 20 + 90      = 120, to 370
//	D  20 + 90 + 90      = 200, day 2
//	E  10 + 90           = 100, to 300
func work() *price.Work {
	t := func(id, level string, cuts, area float64, fits ...int) price.Test {
		return price.Test{Test: programme.Test{ID: id, Level: level, Cuts: cuts}, Area: area, Rig: "hired", Fits: fits}
	}
	return &price.Work{
		Tests: []price.Test{
			t("A", "L1", 30, 40.111, 2, 1), t("B", "L1", 30, 51.5, 0, 2), t("C", "L1", 20, 60, 1, 1), t("D", "L2", 90, 33.3333, 5, 0), t("E", "L2", 0, 20, 0, 0),
		},
		Visits: make([]programme.Visit, 1), Set: programme.Defaults(),
		Sizes: []price.Size{{Text: "dia 250", Shape: "circular", Longest: 250, Girth: 0.785}, {Text: "600 x 400", Shape: "rectangular", Longest: 600, Girth: 2}},
	}
}

// TestBillByHand holds a bill against one made by hand, in cents:
//
//	mobilisation      1      x 18500 =  18500
//	crew, 2 days x 2  4      x 36000 = 144000
//	hire              2      x  9500 =  19000
//	delivery          1      x 12000 =  12000
//	test              5      x  5500 =  27500
//	m2                204.94 x    33 =   6763.02 -> 6763
//	made dia 250      5      x  1800 =   9000   (D has five)
//	made 600 x 400    2      x  5100 =  10200   (2000 + 1550 x 2 m)
//	fitted dia 250    8      x  1100 =   8800
//	fitted 600 x 400  4      x  1900 =   7600   (900 + 500 x 2 m)
//	report            1      x 28000 =  28000
//	records           5      x  1200 =   6000
//	retests, 25 %     1.25   x  9500 =  11875
//	waiting           1.5    x  8800 =  13200
//	provisional sum                     40001
//	sum                                362439
//	mark-up 12.5 %    45304.875   ->    45305
//	total                              407744
func TestBillByHand(t *testing.T) {
	b, err := price.Make(work(), loaded(t, rates), 9)
	if err != nil {
		t.Fatal(err)
	}
	want := []struct {
		key    string
		q      price.Quantity
		amount price.Money
	}{
		{"mobilisation", 100, 18500}, {"crew_day", 400, 144000}, {"hire_day_1", 200, 19000}, {"hire_delivery_1", 100, 12000}, {"test", 500, 27500}, {"test_m2", 20494, 6763},
		{"make_1", 500, 9000}, {"make_2", 200, 10200}, {"fit_1", 800, 8800}, {"fit_2", 400, 7600}, {"report", 100, 28000}, {"report_section", 500, 6000},
		{"retest", 125, 11875}, {"waiting_hour", 150, 13200}, {"provisional_1", 100, 40001},
	}
	if len(b.Lines) != len(want) {
		t.Fatalf("%d lines, want %d: %+v", len(b.Lines), len(want), b.Lines)
	}
	for i, w := range want {
		if l := b.Lines[i]; l.Key != w.key || l.Quantity != w.q || l.Amount != w.amount || l.No != i+1 {
			t.Errorf("line %d: %s %s -> %d, want %s %s -> %d", i+1, l.Key, l.Quantity.Text(), l.Amount, w.key, w.q.Text(), w.amount)
		}
	}
	if b.Subtotal != 362439 || b.Markup != 45305 || b.Total != 407744 || b.ToMinimum != 0 {
		t.Errorf("%d + %d = %d", b.Subtotal, b.Markup, b.Total)
	}
	// 407744 / 5 = 81548.8, / 204.94 = 1989.577, / 2 = 203872
	for i, want := range []price.Money{81549, 1990, 203872} {
		u := b.UnitPrice[i]
		sum := price.Money(0)
		for _, p := range u.Parts {
			sum += p.Amount
		}
		if u.Price != want || sum != b.Total {
			t.Errorf("per %s %d, want %d; its shares come to %d", u.Per, u.Price, want, sum)
		}
	}
	if len(b.NotPriced) != 0 {
		t.Errorf("not priced: %+v", b.NotPriced)
	}
	for _, r := range b.Rates {
		if r.Key == "test" && r.Marked != 6188 { // 5500 + 687.5, halves away from zero
			t.Errorf("a test more: %d with mark-up", r.Marked)
		}
	}
}

// A rate that is missing is told, and the line isn't there at 0.
func TestMissingRates(t *testing.T) {
	b, err := price.Make(work(), loaded(t, "currency = \"XTS\"\nminor_digits = 0\n[rates]\ntest = 100\nreport_section = 0\n[[blank]]\nfit = 7\n"), 0)
	if err != nil {
		t.Fatal(err)
	}
	told := map[string]bool{}
	for _, n := range b.NotPriced {
		told[n.What] = true
	}
	for _, what := range []string{"mobilisation: travel, setting up, clearing away", "crew on site", "hire of hired", "blank made dia 250", "blank made 600 x 400"} {
		if !told[what] {
			t.Errorf("%s has no rate and isn't told: %v", what, told)
		}
	}
	// A rate a test stands for one by m2, and a record of 0 for the report.
	if told["ductwork tested"] || told["report"] || len(told) != 5 {
		t.Errorf("told: %v", told)
	}
	if b.Total != 5*100+8*7+4*7 {
		t.Errorf("total %d", b.Total)
	}
}

func TestMinimum(t *testing.T) {
	for _, tt := range []struct {
		text     string
		top, all price.Money
		of       string
	}{
		{"minimum_charge = 600\n", 100, 600, "the job"}, {"minimum_a_visit = 700\n", 200, 700, "a visit"}, {"minimum_charge = 400\n", 0, 500, "the job"}, {"", 0, 500, ""},
		{"minimum_charge = 900\nminimum_a_visit = 700\n", 400, 900, "the job"},
	} {
		b, err := price.Make(work(), loaded(t, "currency = \"XTS\"\nminor_digits = 2\n"+tt.text+"[rates]\ntest = 100\n"), 0)
		if err != nil || b.ToMinimum != tt.top || b.Total != tt.all || b.MinimumOf != tt.of {
			t.Errorf("%q: %d of %d, minimum of %q (%v)", tt.text, b.ToMinimum, b.Total, b.MinimumOf, err)
		}
	}
}

// Blanks of groupings aren't known: only the user's own allowance prices them.
func TestGroupings(t *testing.T) {
	const allowed = "currency = \"XTS\"\nminor_digits = 2\n[rates]\ntest = 100\n[allowances]\nblank_fits = 30\nblank_makes = 12\nblank_fit = 11\nblank_make = 18\n"
	w := work()
	b, _ := price.Make(w, loaded(t, allowed), 0)
	if b.Total != 500 {
		t.Errorf("an allowance for groupings was taken without any: %d", b.Total)
	}
	w.Tests[0].Grouping = true
	if b, _ = price.Make(w, loaded(t, allowed), 0); b.Total != 500+30*11+12*18 {
		t.Errorf("total %d", b.Total)
	}
	for _, l := range b.Lines[1:] {
		if l.Basis != price.FromAllowance || !strings.Contains(l.From, "not known for groupings") {
			t.Errorf("%+v", l)
		}
	}
	w.OwnBlanks = true
	if b, _ = price.Make(w, loaded(t, allowed), 0); b.Total != 500 {
		t.Errorf("the client's own blanks cost %d", b.Total-500)
	}
}

// randomWork is work of one level, so that the order of its tests changes
// nothing but the days.
func randomWork(r *rand.Rand) *price.Work {
	w := &price.Work{Visits: make([]programme.Visit, 1), Set: programme.Defaults(), Sizes: work().Sizes}
	for i := range 1 + r.IntN(20) {
		w.Tests = append(w.Tests, price.Test{Test: programme.Test{ID: fmt.Sprint(i), Cuts: 20}, Area: 100 * r.Float64(), Rig: "hired", Fits: []int{r.IntN(5), r.IntN(5)}})
	}
	return w
}

// TestProperties: lines add up, the order of tests changes no total, a higher
// rate never lowers it, and more on top is priced as if it had been there.
func TestProperties(t *testing.T) {
	r, set := rand.New(rand.NewPCG(7, 8)), loaded(t, rates)
	for range 300 {
		w := randomWork(r)
		b, err := price.Make(w, set, 0)
		if err != nil {
			t.Fatal(err)
		}
		sum := price.Money(0)
		for _, l := range b.Lines {
			sum += l.Amount
		}
		if sum != b.Subtotal || b.Subtotal+b.Markup+b.ToMinimum != b.Total {
			t.Fatalf("lines come to %d of %d, total %d", sum, b.Subtotal, b.Total)
		}
		r.Shuffle(len(w.Tests), func(i, k int) { w.Tests[i], w.Tests[k] = w.Tests[k], w.Tests[i] })
		if other, _ := price.Make(w, set, 0); other.Total != b.Total {
			t.Fatalf("the order of tests moves the total from %d to %d", b.Total, other.Total)
		}
		for _, key := range set.RateKeys() {
			if other, _ := price.Make(w, set.Scaled(key, 1+r.Float64()), 0); other.Total < b.Total {
				t.Fatalf("a higher %s lowers the total from %d to %d", key, b.Total, other.Total)
			}
		}
	}
}

func TestPricer(t *testing.T) {
	w, set := work(), loaded(t, rates)
	p, err := price.NewPricer(w, set)
	if err != nil {
		t.Fatal(err)
	}
	// Without the allowances: 407744 less 11875 and 13200 before the mark-up.
	// (362439 - 25075) x 1.125 = 379534.5, the mark-up rounded away from zero.
	if got, err := p.Total(p.Nothing()); err != nil || got != 379535 {
		t.Errorf("bare total %d (%v)", got, err)
	}
	more := p.Nothing()
	more[p.Line("retest")], more[p.Line("waiting_hour")] = 125, 150
	if got, _ := p.Total(more); got != 407744 {
		t.Errorf("with the allowances on top %d, want the bill's 407744", got)
	}
	if p.Line("nothing") != -1 || p.Rig("hired") != 1 || p.Rig("other") != 0 {
		t.Error("lines or rigs that aren't there were found")
	}
}

func TestRateFaults(t *testing.T) {
	const head = "currency = \"EUR\"\nminor_digits = 2\n"
	for _, tt := range []struct{ text, want string }{
		{"", "currency: missing"},
		{"currency = \"euro\"\nminor_digits = 1\n", `currency = "euro": expected the currency's code`},
		{"currency = \"EUR\"\nminor_digits = 1\n", "minor_digits = 1: expected the digits after the point: 0, 2 or 3"},
		{head + "tests = 5\n", "tests = 5: unknown key"},
		{head + "[rates]\ntest = 55.00\n", "test = 55: has a point, expected whole minor units"},
		{head + "[rates]\ntest = -1\n", "test = -1: expected whole minor units"},
		{head + "[rates]\ntets = 1\n", "tets = 1: unknown key"},
		{head + "markup_percent = 12.345\n", "markup_percent = 12.345: expected a percentage with at most two decimals"},
		{head + "[[blank]]\nup_to_mm = 800\nmake = 1\n[[blank]]\nup_to_mm = 400\nmake = 1\n", "blank 2: up_to_mm = 400: never comes to it"},
		{head + "[[blank]]\nshape = \"square\"\nmake = 1\n", "blank 1: shape"},
		{head + "[[hire]]\nrig = \"a\"\n[[hire]]\nrig = \"a\"\n", "hire 2: rig = \"a\": named twice"},
		{head + "[allowances]\nretests = \"many\"\n", `retests = "many": expected "expected"`},
		{head + "[allowances]\nretests = \"expected\"\nretests_percent = 20\n", "two words on the same thing"},
		{head + "[[provisional]]\namount = 5\n", "what: missing"},
	} {
		_, err := price.Load(strings.NewReader(tt.text), "rates.toml")
		if err == nil || !strings.Contains(err.Error(), tt.want) || !strings.HasPrefix(err.Error(), "rates.toml: ") {
			t.Errorf("%q\n got %v\nwant %s", tt.text, err, tt.want)
		}
	}
}
