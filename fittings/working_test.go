package fittings

import (
	"fmt"
	"math"
	"math/rand"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// reader redoes a working: it reads the sum as a person would, and knows nothing
// of how the program came to it. Angles are in degrees, but for those inside an
// integral, which are in radians. Integrals are done by Simpson's rule.
type reader struct {
	words []string
	at    int
	names map[string]float64
	given map[string][]string // with name = words
	deep  int                 // integrals being read
	err   error
}

var word = regexp.MustCompile(`[0-9.]+|[a-z]+|[-+/^()=,]`)

func redo(text string) (float64, error) {
	sum, with, _ := strings.Cut(text, " with ")
	r := &reader{words: word.FindAllString(sum, -1), names: map[string]float64{"pi": math.Pi}, given: map[string][]string{}}
	if with != "" {
		for definition := range strings.SplitSeq(with, ", ") {
			name, value, ok := strings.Cut(definition, " = ")
			if !ok {
				return 0, fmt.Errorf("definition %q", definition)
			}
			r.given[name] = word.FindAllString(value, -1)
		}
	}
	v := r.sum()
	if r.err == nil && r.at != len(r.words) {
		r.err = fmt.Errorf("left over: %v", r.words[r.at:])
	}
	return v, r.err
}

func (r *reader) peek() string {
	if r.at < len(r.words) {
		return r.words[r.at]
	}
	return ""
}

func (r *reader) take(want string) bool {
	if r.peek() == want {
		r.at++
		return true
	}
	return false
}

func (r *reader) must(want string) {
	if !r.take(want) && r.err == nil {
		r.err = fmt.Errorf("want %q, have %q at %d of %v", want, r.peek(), r.at, r.words)
	}
}

func (r *reader) sum() float64 {
	v := r.product()
	for {
		switch {
		case r.take("+"):
			v += r.product()
		case r.take("-"):
			v -= r.product()
		default:
			return v
		}
	}
}

func (r *reader) product() float64 {
	v := r.signed()
	for {
		switch {
		case r.take("x"):
			v *= r.signed()
		case r.take("/"):
			v /= r.signed()
		default:
			return v
		}
	}
}

func (r *reader) signed() float64 {
	if r.take("-") {
		return -r.signed()
	}
	v := r.primary()
	if r.take("^") {
		v = math.Pow(v, r.signed())
	}
	return v
}

func (r *reader) primary() float64 {
	w := r.peek()
	r.at++
	switch {
	case w == "(":
		v := r.sum()
		r.must(")")
		return v
	case w == "integral":
		return r.integral()
	case r.given[w] != nil:
		inner := &reader{words: r.given[w], names: r.names, given: r.given, deep: r.deep}
		return inner.sum()
	case w != "" && (w[0] >= '0' && w[0] <= '9'):
		v, err := strconv.ParseFloat(w, 64)
		r.err = err
		return v
	case r.peek() == "(":
		r.at++
		v := r.sum()
		r.must(")")
		return r.function(w, v)
	}
	v, ok := r.names[w]
	if !ok && r.err == nil {
		r.err = fmt.Errorf("%q isn't known in %v", w, r.words)
	}
	return v
}

func (r *reader) function(name string, v float64) float64 {
	unit := math.Pi / 180
	if r.deep > 0 {
		unit = 1
	}
	switch name {
	case "sqrt":
		return math.Sqrt(v)
	case "sin":
		return math.Sin(v * unit)
	case "cos":
		return math.Cos(v * unit)
	case "tan":
		return math.Tan(v * unit)
	case "asin":
		return math.Asin(v) / unit
	case "atan":
		return math.Atan(v) / unit
	}
	r.err = fmt.Errorf("function %q isn't known", name)
	return 0
}

func (r *reader) integral() float64 {
	for _, w := range []string{"over", "t", "from"} {
		r.must(w)
	}
	low := r.sum()
	r.must("to")
	high := r.sum()
	r.must("of")
	start, end := r.at, r.at
	r.deep++
	const n = 4000
	total := 0.0
	for i := range n + 1 {
		r.at = start
		r.names["t"] = low + (high-low)*float64(i)/n
		weight := 2.0
		if i%2 == 1 {
			weight = 4
		}
		if i == 0 || i == n {
			weight = 1
		}
		total += weight * r.primary()
		end = r.at
	}
	r.deep--
	r.at = end
	delete(r.names, "t")
	return total * (high - low) / n / 3
}

var (
	resultOf = regexp.MustCompile(`^(.*) = ([0-9.]+) m2(?: \((.*)\))?$`)
	stripsOf = regexp.MustCompile(`by 256 strips: ([0-9.]+) m2$`)
)

// TestWorkingsCanBeRedone redoes every line of the workings of random pieces of
// every kind, and finds the area.
func TestWorkingsCanBeRedone(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	for _, c := range randomRows {
		for range 6 {
			text := c.row(r)
			p := row(t, text)
			area := measuredPiece(t, p, text).Area
			working := Working(p)
			last := 0.0
			for line := range strings.SplitSeq(working, "; ") {
				last = redoLine(t, text, line)
			}
			if opening := OpeningWorking(p); p.Kind == Spigot {
				m, _ := Measure(p)
				if got := redoLine(t, text, opening); math.Abs(got-m.Opening) > 1e-6 {
					t.Errorf("%s: opening %s, want %.6f", text, opening, m.Opening)
				}
			} else if opening != "" {
				t.Errorf("%s: has an opening: %s", text, opening)
			}
			if math.Abs(last-area) > 1e-6 {
				t.Errorf("%s: working ends in %.6f, area %.6f: %s", text, last, area, working)
			}
		}
	}
}

// redoLine redoes one line and gives its printed result.
func redoLine(t *testing.T, text, line string) float64 {
	t.Helper()
	if name, rest, ok := strings.Cut(line, ": "); ok && !strings.ContainsAny(name, "0123456789=") {
		line = rest
	}
	m := resultOf.FindStringSubmatch(line)
	if m == nil {
		t.Errorf("%s: %q has no result", text, line)
		return 0
	}
	printed, _ := strconv.ParseFloat(m[2], 64)
	got, err := redo(m[1])
	if err != nil {
		t.Errorf("%s: %q: %v", text, line, err)
	}
	// Sizes are printed to a thousandth of a millimetre at worst.
	if math.Abs(got-printed) > 1.5e-5 {
		t.Errorf("%s: %q: redone %.7f", text, line, got)
	}
	if m[3] == "" {
		return printed
	}
	strips := stripsOf.FindStringSubmatch(m[3])
	if strips == nil {
		t.Errorf("%s: %q has no second value", text, line)
		return printed
	}
	if other, _ := strconv.ParseFloat(strips[1], 64); math.Abs(other-printed) > 2e-4*printed {
		t.Errorf("%s: strips give %s for %s", text, strips[1], m[2])
	}
	return printed
}

// TestWorkingsAsPrinted holds a few workings word for word.
func TestWorkingsAsPrinted(t *testing.T) {
	for _, c := range []struct{ row, want string }{
		{"kind=straight, width_mm=600, height_mm=400, length_mm=1500", "2 x (0.600 + 0.400) x 1.500 = 3.000 m2"},
		{"kind=straight, width_mm=609.6, height_mm=400, length_mm=1500", "2 x (0.6096 + 0.400) x 1.500 = 3.028800 m2"},
		{"kind=straight, shape=oval, width_mm=525, height_mm=150, length_mm=3000", "(pi x 0.150 + 2 x (0.525 - 0.150)) x 3.000 = 3.663717 m2"},
		{"kind=bend, width_mm=600, height_mm=400, throat_mm=100, angle_deg=90, legs_mm=30",
			"2 x (0.600 + 0.400) x (0.400 x pi x 90 / 180 + 2 x 0.030) = 1.376637 m2"},
		{"kind=tee, width_mm=600, height_mm=400, length_mm=800, branch_width_mm=300, branch_height_mm=300, branch_length_mm=150",
			"main: 2 x (0.600 + 0.400) x 0.800 = 1.600 m2; opening: 0.300 x 0.300 = 0.090 m2; " +
				"branch: 2 x (0.300 + 0.300) x 0.150 = 0.180 m2; total: 1.600 - 0.090 + 0.180 = 1.690 m2"},
		{"kind=plenum, area_m2=4.25", "given area = 4.250 m2"},
		{"kind=straight, width_mm=600, length_mm=1500", ""},
	} {
		if got := Working(row(t, c.row)); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.row, got, c.want)
		}
	}
}
