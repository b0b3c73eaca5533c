package schedule

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"blankoff/takeoff"
)

// unit turns a number as typed into the program's unit of its measure:
// value x num / 10^pow. Kept as whole numbers, so that 24 in and 609.6 mm give
// the same float64.
type unit struct {
	name    string
	measure takeoff.Measure
	num     int64
	pow     int
}

// The units that a schedule may use. The foot is 0.3048 m and the inch
// 0.0254 m exactly (international yard and pound agreement of 1959). The inch
// and millimetre of water are the conventional ones, 249.0889 Pa and
// 9.80665 Pa (NIST SP 811:2008, appendix B.8).
var (
	millimetre = unit{"mm", takeoff.Lengths, 1, 3}
	inch       = unit{"in", takeoff.Lengths, 254, 4}
	foot       = unit{"ft", takeoff.Lengths, 3048, 4}
	squareM    = unit{"m2", takeoff.Areas, 1, 0}
	degree     = unit{"deg", takeoff.Degrees, 1, 0}
	pascal     = unit{"Pa", takeoff.Pressure, 1, 0}
	minute     = unit{"min", takeoff.Minutes, 1, 0}
	once       = unit{"each", takeoff.Count, 1, 0}
)

var unitSpellings = []struct {
	unit
	spellings string
}{
	{millimetre, "mm millimetre millimetres millimeter millimeters"},
	{unit{"cm", takeoff.Lengths, 1, 2}, "cm centimetre centimetres centimeter centimeters"},
	{unit{"m", takeoff.Lengths, 1, 0}, "m metre metres meter meters mtr mtrs"},
	{inch, `in ins inch inches " ''`},
	{foot, "ft foot feet '"},
	{degree, "deg degs degree degrees °"},
	{squareM, "m2 m^2 sqm squaremetre squaremetres squaremeter squaremeters"},
	{unit{"mm2", takeoff.Areas, 1, 6}, "mm2 mm^2 sqmm"},
	{unit{"ft2", takeoff.Areas, 9290304, 8}, "ft2 ft^2 sqft sf squarefoot squarefeet"},
	{unit{"in2", takeoff.Areas, 64516, 8}, "in2 in^2 sqin squareinch squareinches"},
	{pascal, "pa pascal pascals"},
	{unit{"kPa", takeoff.Pressure, 1000, 0}, "kpa kilopascal kilopascals"},
	{unit{"mbar", takeoff.Pressure, 100, 0}, "mbar millibar millibars"},
	{unit{"in w.g.", takeoff.Pressure, 2490889, 4},
		`inwg iwg "wg inwc iwc "wc inh2o incheswg inchwg incheswc incheswatergauge incheswatercolumn`},
	{unit{"mm w.g.", takeoff.Pressure, 980665, 5}, "mmwg mmwc mmh2o"},
	{minute, "min mins minute minutes"},
	{once, "no nr off each ea pc pcs"},
}

var unitBySpelling = func() map[string]unit {
	m := map[string]unit{}
	for _, u := range unitSpellings {
		for s := range strings.FieldsSeq(u.spellings) {
			m[s] = u.unit
		}
	}
	return m
}()

var unitCleaner = strings.NewReplacer(" ", "", ".", "", "²", "2", "″", `"`, "”", `"`, "′", "'", "’", "'", "\u00a0", "")

// unitOf finds a unit by its spelling.
func unitOf(s string) (unit, bool) {
	u, ok := unitBySpelling[unitCleaner.Replace(strings.ToLower(s))]
	return u, ok
}

// defaultUnit is the unit of a column whose heading gives none.
func defaultUnit(m takeoff.Measure) unit {
	switch m {
	case takeoff.Lengths:
		return millimetre
	case takeoff.Areas:
		return squareM
	case takeoff.Degrees:
		return degree
	case takeoff.Pressure:
		return pascal
	case takeoff.Minutes:
		return minute
	}
	return once
}

// The largest value of a measure that can stand in a schedule, in the
// program's unit: a typing error otherwise.
func largest(m takeoff.Measure) float64 {
	if m == takeoff.Lengths {
		return 1e4
	}
	return 1e6
}

// exact turns the plain decimal s ("609.6", no sign) into the program's unit
// with one rounding where its digits fit, and reports whether they did.
func (u unit) exact(s string) (float64, bool) {
	var mant, digits int64
	dec, dot := 0, false
	for i := range len(s) {
		c := s[i]
		if c == '.' && !dot {
			dot = true
			continue
		}
		if c < '0' || c > '9' {
			return 0, false
		}
		mant = mant*10 + int64(c-'0')
		digits++
		if dot {
			dec++
		}
	}
	dec += u.pow
	if digits == 0 || digits > 15 || dec >= len(tens) || mant > 1<<53/u.num {
		return 0, false
	}
	return float64(mant*u.num) / tens[dec], true
}

// tens are the powers of ten that a float64 holds exactly.
var tens = [...]float64{1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10,
	1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22}

// number reads a cell of a column: its value in the program's unit, or what is
// wrong with it and what to do.
func (s *spec) number(text string) (v float64, trouble string) {
	v, ok := s.unit.exact(text)
	if ok && v <= s.max && (s.measure != takeoff.Count || v == math.Trunc(v)) && (!s.commaFile || !strings.Contains(text, ".")) {
		return v, ""
	}
	t := cellCleaner.Replace(text)
	negative := strings.HasPrefix(t, "-")
	if negative || strings.HasPrefix(t, "+") {
		t = t[1:]
	}
	v, trouble = s.quantity(strings.TrimSpace(t))
	switch {
	case trouble != "":
		return 0, trouble
	case negative && !s.signed:
		return 0, "can't be negative; write it without the minus sign if that is what is meant"
	case v > s.max:
		return 0, "is too large to be meant; check the number and its unit"
	case s.measure == takeoff.Count && v != math.Trunc(v):
		return 0, "isn't a whole number; write one"
	case negative:
		return -v, ""
	}
	return v, ""
}

var cellCleaner = strings.NewReplacer("−", "-", "\u00a0", " ", "\u2009", " ", "\u202f", " ",
	"″", `"`, "”", `"`, "''", `"`, "′", "'", "’", "'", "⁄", "/", "½", " 1/2", "¼", " 1/4", "¾", " 3/4")

var (
	feetInches = regexp.MustCompile(`(?i)^(\d+)\s*(?:'|ft\.?|feet|foot)[\s-]*(\d.*?)\s*(?:"|in\.?|ins|inch|inches)$`)
	fraction   = regexp.MustCompile(`^(?:(\d{1,6})[\s-]+)?(\d{1,3})/(\d{1,3})(\D*)$`)
	decimal    = regexp.MustCompile(`^([0-9.,]+(?:[eE][-+]?\d+)?)(.*)$`)
	notNumber  = "isn't a number; write digits only, with a point for decimals"
)

// quantity reads an unsigned number that isn't a plain decimal: with a unit of
// its own, feet and inches, fractions of an inch, commas, an exponent.
func (s *spec) quantity(t string) (float64, string) {
	if s.diameter {
		t = strings.TrimSpace(strings.TrimLeft(t, "Øø⌀∅"))
	}
	if m := feetInches.FindStringSubmatch(t); m != nil && s.measure == takeoff.Lengths {
		ft, ok := foot.exact(m[1])
		in, trouble := s.inUnit(m[2], inch)
		if ok && trouble == "" && in < 0.3048 {
			return ft + in, ""
		}
		return 0, `isn't feet and inches; write them as 2'-6"`
	}
	if m := fraction.FindStringSubmatch(t); m != nil {
		u, trouble := s.cellUnit(m[4])
		if trouble == "" {
			return s.inUnit(strings.TrimSuffix(t, m[4]), u)
		}
		return 0, trouble
	}
	m := decimal.FindStringSubmatch(t)
	if m == nil {
		return 0, notNumber
	}
	u, trouble := s.cellUnit(m[2])
	if trouble != "" {
		return 0, trouble
	}
	return s.inUnit(m[1], u)
}

// cellUnit is the unit that follows a number in a cell, or the column's own.
func (s *spec) cellUnit(typed string) (unit, string) {
	typed = strings.TrimSpace(typed)
	if typed == "" {
		return s.unit, ""
	}
	u, ok := unitOf(typed)
	if !ok {
		return u, notNumber
	}
	if u.measure != s.measure {
		return u, fmt.Sprintf("has the unit %s, which doesn't fit this column; write a value in %s", u.name, s.unit.name)
	}
	return u, ""
}

// inUnit turns an unsigned number without a unit ("24", "24 1/2", "1,5",
// "1.5e3") into the program's unit.
func (s *spec) inUnit(t string, u unit) (float64, string) {
	if m := fraction.FindStringSubmatch(t); m != nil {
		whole, _ := strconv.ParseFloat("0"+m[1], 64)
		a, _ := strconv.ParseFloat(m[2], 64)
		b, _ := strconv.ParseFloat(m[3], 64)
		if u != inch || b == 0 || a >= b {
			return 0, "isn't a number; fractions are for inches only, so write a decimal"
		}
		return (whole*b + a) * float64(u.num) / (b * tens[u.pow]), ""
	}
	p, trouble := plain(t, s.commaFile)
	if trouble != "" {
		return 0, trouble
	}
	if v, ok := u.exact(p); ok {
		return v, ""
	}
	v, err := strconv.ParseFloat(p, 64)
	if err != nil && !math.IsInf(v, 0) {
		return 0, notNumber
	}
	return v * float64(u.num) / tens[u.pow], ""
}

// plain writes an unsigned number with a point for decimals and no grouping,
// or says why that can't be done without guessing. commaFile says that the
// file parts its cells by semicolons, so that 1.500 may be 1500.
func plain(t string, commaFile bool) (p, trouble string) {
	dots, commas := strings.Count(t, "."), strings.Count(t, ",")
	lastDot, lastComma := strings.LastIndexByte(t, '.'), strings.LastIndexByte(t, ',')
	switch {
	case commas == 0 && dots <= 1:
		if commaFile && dots == 1 && grouped(t, ".") {
			return "", twoReadings(t, ".")
		}
		return t, ""
	case dots == 0 && commas == 1:
		if grouped(t, ",") {
			return "", twoReadings(t, ",")
		}
		if lastComma == 0 || lastComma == len(t)-1 {
			return "", notNumber
		}
		return strings.Replace(t, ",", ".", 1), ""
	case dots == 0 && grouped(t, ","):
		return strings.ReplaceAll(t, ",", ""), ""
	case commas == 0 && grouped(t, "."):
		return strings.ReplaceAll(t, ".", ""), ""
	case dots == 1 && lastDot > lastComma && grouped(t[:lastDot], ","):
		return strings.ReplaceAll(t, ",", ""), ""
	case commas == 1 && lastComma > lastDot && grouped(t[:lastComma], "."):
		return strings.Replace(strings.ReplaceAll(t, ".", ""), ",", ".", 1), ""
	}
	return "", notNumber
}

// grouped reports whether t can be a whole number with thousands parted by sep.
func grouped(t, sep string) bool {
	groups := strings.Split(t, sep)
	if len(groups) < 2 || len(groups[0]) < 1 || len(groups[0]) > 3 || groups[0][0] == '0' {
		return false
	}
	for i, g := range groups {
		if i > 0 && len(g) != 3 || strings.Trim(g, "0123456789") != "" {
			return false
		}
	}
	return true
}

func twoReadings(t, sep string) string {
	a := strings.Replace(t, sep, "", 1)
	b := strings.TrimRight(strings.Replace(t, sep, ".", 1), "0")
	return fmt.Sprintf("could be %s or %s; write the one that is meant", a, strings.TrimSuffix(b, "."))
}
