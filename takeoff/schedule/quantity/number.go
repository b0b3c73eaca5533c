package quantity

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"blankoff/takeoff"
)

// Column is how the cells of a column of numbers are read.
type Column struct {
	Unit      Unit // of a cell that gives none
	Measure   takeoff.Measure
	Max       float64 // in the program's unit
	Least     float64 // less than this is hardly meant, in the program's unit: then 1.200 may be 1200
	Small     float64 // less than this is looked at twice
	Across    bool    // is a side or a diameter
	Turn      bool    // is an angle of a bend
	Signed    bool    // may be negative
	Diameter  bool    // may carry a diameter sign
	CommaFile bool    // the file writes decimals with a comma, so that 1.500 may be 1500
	Stated    bool    // somebody gave the unit
	Decimal   byte    // the sign for decimals where somebody said so, else 0
	InchesToo bool    // its heading is in feet and inches: a point may stand between them
}

// Expects says what a cell of the column should hold.
func (s *Column) Expects() string {
	what := map[takeoff.Measure]string{takeoff.Lengths: "a length", takeoff.Areas: "an area",
		takeoff.Degrees: "an angle", takeoff.Pressure: "a pressure", takeoff.Minutes: "a time"}[s.Measure]
	switch {
	case s.Measure == takeoff.Count:
		return "a whole number"
	case s.Signed:
		return what + " in " + s.Unit.Name
	}
	return what + " in " + s.Unit.Name + ", not negative"
}

// leastAcross is a side or a diameter that no duct has, m: it is in metres, or by
// mistake. Common practice, no source.
const leastAcross = 0.01

// hardlyMeant says what is wrong with a value that no piece has: a side of a few
// millimetres is in metres, an angle of 1.5708 in radians.
func (s *Column) hardlyMeant(v float64) string {
	switch {
	case v <= 0:
	case s.Across && v < leastAcross:
		return fmt.Sprintf("is %.4g mm, narrower than any duct; write it in %s, or with its own unit behind it", v*1000, s.Unit.Name)
	case s.Turn && inRadians(v):
		return "may be in radians; write it in degrees"
	}
	return ""
}

// mostTyped is the most bytes that a number or a size may have: more is none, and is
// refused before the many forms are tried.
const mostTyped = 100

// Number reads a cell of a column: its value in the program's unit, or what is
// wrong with it and what to do.
func (s *Column) Number(text string) (v float64, trouble string) {
	if len(text) > mostTyped {
		return 0, "is too long for a number; write digits only, with a point for decimals"
	}
	v, ok := s.Unit.exact(text)
	if ok && !s.InchesToo && v <= s.Max && (s.Measure != takeoff.Count || v == math.Trunc(v)) && (!s.CommaFile && s.Decimal != ',' || !strings.Contains(text, ".")) {
		if v >= s.Small {
			return v, ""
		}
		return s.small(text, v)
	}
	t := cellCleaner.Replace(text)
	negative := strings.HasPrefix(t, "-")
	if negative || strings.HasPrefix(t, "+") {
		t = t[1:]
	}
	v, trouble = s.quantity(strings.TrimSpace(t))
	if above := Above(text, s.Measure); trouble != "" && above != "" {
		trouble = above
	}
	switch {
	case trouble != "":
		return 0, strange(text, trouble)
	case negative && !s.Signed:
		return 0, "can't be negative; write it without the minus sign if that is what is meant"
	case v > s.Max:
		return 0, "is too large to be meant; check the number and its unit"
	case s.Measure == takeoff.Count && v != math.Trunc(v):
		return 0, "isn't a whole number; write one"
	case s.InchesToo && mayBeInches.MatchString(t):
		return 0, `may be feet and inches, or feet with decimals; write it as 4'-8", or put ft behind it`
	case negative:
		return -v, ""
	}
	return v, s.hardlyMeant(v)
}

// mayBeInches are feet with a sign before less than twelve: 4.08, 2.10.
var mayBeInches = regexp.MustCompile(`^\d+[.,](?:[1-9]|0[1-9]|1[01])$`)

// inRadians reports an angle that is a usual one in radians: 1.5708, 0.785.
func inRadians(v float64) bool {
	steps := v / (math.Pi / 24) // of 7.5 degrees
	return v < 2*math.Pi+0.01 && math.Round(steps) > 0 && math.Abs(steps-math.Round(steps)) < 0.01
}

// small looks twice at a value that is hardly meant.
func (s *Column) small(text string, v float64) (float64, string) {
	switch {
	case s.Measure == takeoff.Count && len(text) > 4 && s.Decimal == 0 && grouped(text, "."):
		return 0, twoReadings(text, ".")
	case s.inMillimetres(text, s.Unit):
		v, _ = s.Unit.exact(text[:1] + text[2:])
		return v, ""
	case v < s.Least && s.Decimal == 0 && grouped(text, "."):
		return 0, twoReadings(text, ".") + ", with its unit behind it if that isn't " + s.Unit.Name
	}
	return v, s.hardlyMeant(v)
}

// cellCleaner writes signs that look alike as one, and takes out what can't be seen.
var cellCleaner = strings.NewReplacer("−", "-", "º", "°", "\u00a0", " ", "\u2009", " ", "\u202f", " ",
	"\u200b", "", "\ufeff", "", "\u2060", "", "０", "0", "１", "1", "２", "2", "３", "3", "４", "4", "５", "5", "６", "6", "７", "7", "８", "8", "９", "9", "ｘ", "x", "．", ".", "，", ",",
	"″", `"`, "”", `"`, "''", `"`, "′", "'", "’", "'", "⁄", "/", "½", " 1/2", "¼", " 1/4", "¾", " 3/4")

var (
	feetInches = regexp.MustCompile(`(?i)^(\d+)\s*(?:'|ft\.?|feet|foot)[\s-]*(\d.*?)\s*(?:"|in\.?|ins|inch|inches)$`)
	fraction   = regexp.MustCompile(`^(?:(\d{1,6})[\s-]+)?(\d{1,3})/(\d{1,3})(\D*)$`)
	decimal    = regexp.MustCompile(`^([0-9.,]+(?:[eE][-+]?\d+)?)(.*)$`)
	notNumber  = "isn't a number; write digits only, with a point for decimals"
)

// quantity reads an unsigned number that isn't a plain decimal: with a unit of
// its own, feet and inches, fractions of an inch, commas, an exponent.
func (s *Column) quantity(t string) (float64, string) {
	if s.Diameter {
		t, _ = CutDiameter(t)
	}
	if s.Measure == takeoff.Count { // x2
		t = strings.TrimSpace(strings.TrimLeft(t, "xX×"))
	}
	t = ungroup(t)
	if m := feetInches.FindStringSubmatch(t); m != nil && s.Measure == takeoff.Lengths {
		ft, ok := Foot.exact(m[1])
		in, trouble := s.inUnit(m[2], Inch)
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
func (s *Column) cellUnit(typed string) (Unit, string) {
	typed = strings.TrimSpace(typed)
	if typed == "" || s.Measure == takeoff.Count && (typed == "x" || typed == "X" || typed == "×") { // 2x
		return s.Unit, ""
	}
	u, ok := UnitOf(typed)
	if !ok {
		return u, notNumber
	}
	if u.Measure != s.Measure {
		return u, fmt.Sprintf("has the unit %s, which doesn't fit this column; write a value in %s", u.Name, s.Unit.Name)
	}
	return u, ""
}

// inUnit turns an unsigned number without a unit ("24", "24 1/2", "1,5",
// "1.5e3") into the program's unit.
func (s *Column) inUnit(t string, u Unit) (float64, string) {
	if m := fraction.FindStringSubmatch(t); m != nil {
		whole, _ := strconv.ParseFloat("0"+m[1], 64)
		a, _ := strconv.ParseFloat(m[2], 64)
		b, _ := strconv.ParseFloat(m[3], 64)
		if u != Inch || b == 0 || a >= b {
			return 0, "isn't a number; fractions are for inches only, so write a decimal"
		}
		return (whole*b + a) * float64(u.num) / (b * tens[u.pow]), ""
	}
	p, trouble := plain(t, s.CommaFile, s.Decimal)
	switch {
	case trouble != "" && s.inMetres(t, u):
		p, trouble = strings.Replace(t, ",", ".", 1), ""
	case trouble != "" && s.inMillimetres(t, u):
		p, trouble = t[:1]+t[2:], ""
	}
	if trouble != "" {
		return 0, trouble
	}
	if v, ok := u.exact(p); ok {
		if v < s.Least && s.Decimal == 0 && grouped(t, ".") {
			return 0, twoReadings(t, ".")
		}
		return v, ""
	}
	v, err := strconv.ParseFloat(p, 64)
	if err != nil && !math.IsInf(v, 0) {
		return 0, notNumber
	}
	return v * float64(u.num) / tens[u.pow], ""
}

// inMillimetres reports a size with a sign before three figures that is 1200 mm, as
// nothing is 1.2 mm wide or long, where somebody said that it is in mm. With a point it
// may be metres by mistake, which is the same.
func (s *Column) inMillimetres(t string, u Unit) bool {
	return len(t) == 5 && s.Least > 0 && s.Decimal == 0 && s.Stated && u == Millimetre && (grouped(t, ",") || grouped(t, "."))
}

// inMetres reports a number in metres with one sign before three figures: nothing is
// 1250 m wide, and where decimals are written with a comma, 1,250 m isn't 1250 m long.
func (s *Column) inMetres(t string, u Unit) bool {
	if u.Name != "m" || s.Decimal != 0 || strings.Count(t, ",")+strings.Count(t, ".") != 1 {
		return false
	}
	return s.Across || s.CommaFile && s.Least > 0 && strings.Contains(t, ",")
}
