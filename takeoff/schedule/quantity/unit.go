package quantity

import (
	"math/bits"
	"strings"

	"blankoff/takeoff"
)

// Unit turns a number as typed into the program's unit of its measure:
// value x num / 10^pow. Kept as whole numbers, so that 24 in and 609.6 mm give
// the same float64.
type Unit struct {
	Name    string
	Measure takeoff.Measure
	num     int64
	pow     int
}

// The units that a schedule may use. The foot is 0.3048 m and the inch
// 0.0254 m exactly (international yard and pound agreement of 1959). The inch
// and millimetre of water are the conventional ones, 249.0889 Pa and
// 9.80665 Pa (NIST SP 811:2008, appendix B.8).
var (
	Millimetre = Unit{"mm", takeoff.Lengths, 1, 3}
	Inch       = Unit{"in", takeoff.Lengths, 254, 4}
	Foot       = Unit{"ft", takeoff.Lengths, 3048, 4}
	squareM    = Unit{"m2", takeoff.Areas, 1, 0}
	degree     = Unit{"deg", takeoff.Degrees, 1, 0}
	pascal     = Unit{"Pa", takeoff.Pressure, 1, 0}
	Minute     = Unit{"min", takeoff.Minutes, 1, 0}
	once       = Unit{"each", takeoff.Count, 1, 0}
)

var unitSpellings = []struct {
	Unit
	spellings string
}{
	{Millimetre, "mm millimetre millimetres millimeter millimeters millimètre millimètres milímetro milímetros millimetro millimetri"},
	{Unit{"cm", takeoff.Lengths, 1, 2}, "cm centimetre centimetres centimeter centimeters zentimeter centimètre centimètres centímetro centímetros centimetro centimetri"},
	{Unit{"m", takeoff.Lengths, 1, 0}, "m metre metres meter meters mtr mtrs lfm lfdm lm ml m1 linm mètre mètres metro metros metri"},
	{Inch, `in ins inch inches " '' zoll pouce pouces duim tum pulgada pulgadas pollice pollici`},
	{Foot, "ft lf linft lnft ftrun foot feet ' fuß fuss pied pieds voet fot pie pies piede piedi"},
	{degree, "deg degs degree degrees ° grad degré degrés graden grader grado grados gradi"},
	{squareM, "m2 m^2 sqm qm squaremetre squaremetres squaremeter squaremeters"},
	{Unit{"mm2", takeoff.Areas, 1, 6}, "mm2 mm^2 sqmm"},
	{Unit{"ft2", takeoff.Areas, 9290304, 8}, "ft2 ft^2 sqft sf squarefoot squarefeet"},
	{Unit{"in2", takeoff.Areas, 64516, 8}, "in2 in^2 sqin squareinch squareinches"},
	{pascal, "pa pascal pascals"},
	{Unit{"kPa", takeoff.Pressure, 1000, 0}, "kpa kilopascal kilopascals"},
	{Unit{"mbar", takeoff.Pressure, 100, 0}, "mbar millibar millibars"},
	{Unit{"in w.g.", takeoff.Pressure, 2490889, 4},
		`inwg iwg "wg inwc iwc "wc inh2o incheswg inchwg incheswc incheswatergauge incheswatercolumn`},
	{Unit{"mm w.g.", takeoff.Pressure, 980665, 5}, "mmwg mmwc mmh2o"},
	{Minute, "min mins minute minutes"},
	{once, "no nr n n° nº off each ea pc pcs nos stk stck st stück stücke pièce pièces pce pces stuk stuks styck u un unité unités unidad unidades ud uds pieza piezas pezzo pezzi pz"},
}

var unitBySpelling = func() map[string]Unit {
	m := map[string]Unit{}
	for _, u := range unitSpellings {
		for s := range strings.FieldsSeq(u.spellings) {
			m[s] = u.Unit
		}
	}
	return m
}()

var unitCleaner = strings.NewReplacer(" ", "", ".", "", "²", "2", "″", `"`, "”", `"`, "′", "'", "’", "'", "\u00a0", "")

// UnitOf finds a unit by its spelling, as "mm" or "in mm".
func UnitOf(s string) (Unit, bool) {
	if len(s) > mostTyped {
		return Unit{}, false
	}
	s = strings.ToLower(s)
	u, ok := unitBySpelling[unitCleaner.Replace(s)]
	for _, before := range [...]string{"in ", "en ", "i "} {
		if rest, cut := strings.CutPrefix(s, before); cut && !ok {
			u, ok = unitBySpelling[unitCleaner.Replace(rest)]
		}
	}
	return u, ok
}

// Default is the unit of a column whose heading gives none.
func Default(m takeoff.Measure) Unit {
	switch m {
	case takeoff.Lengths:
		return Millimetre
	case takeoff.Areas:
		return squareM
	case takeoff.Degrees:
		return degree
	case takeoff.Pressure:
		return pascal
	case takeoff.Minutes:
		return Minute
	}
	return once
}

// Largest is the largest value of a measure that can stand in a schedule, in the
// program's unit: a typing error otherwise.
func Largest(m takeoff.Measure) float64 {
	if m == takeoff.Lengths {
		return 1e4
	}
	return 1e6
}

// exact turns the plain decimal s ("609.6", no sign) into the program's unit
// with one rounding where its digits fit, and reports whether they did.
func (u *Unit) exact(s string) (float64, bool) {
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
	over, exact := bits.Mul64(uint64(mant), uint64(u.num)) // a division would take longer
	if digits == 0 || digits > 15 || dec >= len(tens) || over > 0 || exact > 1<<53 {
		return 0, false
	}
	if dec == 0 {
		return float64(int64(exact)), true
	}
	return float64(int64(exact)) / tens[dec], true
}

// tens are the powers of ten that a float64 holds exactly.
var tens = [...]float64{1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10,
	1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22}
