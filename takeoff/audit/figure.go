package audit

import (
	"math"
	"strconv"
	"strings"

	"blankoff/takeoff"
)

// Verdict is what a stated figure is worth beside the one worked out.
type Verdict string

// The verdicts. Agrees is within the rounding of the figure as typed, Near
// within the tolerance.
const (
	Agrees  Verdict = "agrees"
	Near    Verdict = "within tolerance"
	Differs Verdict = "differs"
	NoArea  Verdict = "no area" // the row was refused
)

// Figure is a stated area beside the one worked out.
type Figure struct {
	Item     int     // among the takeoff's items
	Stated   float64 // m2
	Rounding float64 // half a unit of the last digit as typed, m2
	Area     float64 // worked out, m2; 0 where there is none
	Verdict  Verdict

	Under   float64 // what the named cause makes of the row, m2
	Fits    bool    // and it's the stated figure
	Slips   []Slip  // what this row has beside the cause; several explain it as well
	Outlier bool    // nothing explains it
}

// Difference is stated less worked out, m2.
func (f *Figure) Difference() float64 { return f.Stated - f.Area }

// slack absorbs float noise where a figure lies just half a unit off.
const slack = 1e-9

// holds reports whether v, rounded as the figure was, gives the figure.
func (f *Figure) holds(v float64) bool { return within(v, f.Stated, f.Rounding) }

func within(v, stated, rounding float64) bool {
	return math.Abs(v-stated) <= rounding*(1+1e-6)+slack*math.Max(1, math.Abs(stated))
}

// verdict judges a figure. tolerance is a share of the area worked out.
func verdict(stated, area, rounding, tolerance float64) Verdict {
	switch {
	case within(area, stated, rounding):
		return Agrees
	case math.Abs(stated-area) <= tolerance*area:
		return Near
	}
	return Differs
}

// bits is what it costs to leave the figure unexplained: how unlikely it is to be
// hit by chance.
func (f *Figure) bits() float64 { return missBits(f.Stated, f.Area, f.Rounding) }

func missBits(stated, area, rounding float64) float64 {
	const outlier = 3
	reach := math.Max(math.Abs(stated), area)
	return math.Min(20, math.Log2(1+reach/(2*math.Max(rounding, 1e-9)))) + outlier
}

// figuresOf sets every stated area of a takeoff beside the one worked out.
func figuresOf(t *takeoff.Takeoff, tolerance float64) []Figure {
	var list []Figure
	workbook := false
	for i := range t.Items {
		it := &t.Items[i]
		if !it.HasStated {
			continue
		}
		f := Figure{Item: i, Stated: it.Stated, Rounding: HalfUnit(it.StatedText, it.Stated), Verdict: NoArea}
		if workbook = workbook || it.At.Sheet != ""; !it.Refused {
			f.Area = it.Area
			f.Verdict = verdict(f.Stated, f.Area, f.Rounding, tolerance)
		}
		list = append(list, f)
	}
	if workbook {
		alike(t, list)
	}
	return list
}

// alike gives figures of a workbook, which keeps no zeros at the end of a number,
// as many digits as most of them have, where they have fewer.
func alike(t *takeoff.Takeoff, list []Figure) {
	count := map[int]int{}
	most := 0
	for i := range list {
		d := decimalsOf(number(t.Items[list[i].Item].StatedText))
		if count[d]++; count[d] > count[most] || count[d] == count[most] && d > most {
			most = d
		}
	}
	for i := range list {
		it := &t.Items[list[i].Item]
		if typed := number(it.StatedText); decimalsOf(typed) < most {
			list[i].Rounding = scaleOf(typed, it.Stated) * 0.5 * math.Pow10(-most)
		}
	}
}

// HalfUnit is half a unit of the last digit of a number as typed, in the unit of
// its value: 0.005 for "2.40", 0.05 for "2.4". A text without a number gives 0.
func HalfUnit(typed string, value float64) float64 {
	n := number(typed)
	if n == "" {
		return 0
	}
	return scaleOf(n, value) * 0.5 * math.Pow10(-decimalsOf(n))
}

// number is the number of a typed text, with a point for decimals.
func number(typed string) string {
	typed = strings.Map(func(r rune) rune {
		if r == ' ' || r == '\'' || r == '\u00a0' || r == '\u202f' || r == '\u2009' {
			return -1
		}
		return r
	}, typed)
	end := 0
	for end < len(typed) && (typed[end] >= '0' && typed[end] <= '9' || strings.IndexByte(".,+-", typed[end]) >= 0) {
		end++
	}
	n := typed[:end]
	last := strings.LastIndexAny(n, ".,")
	if last < 0 {
		return n
	}
	whole := strings.NewReplacer(".", "", ",", "").Replace(n[:last])
	if alone := strings.Count(n, n[last:last+1]) == 1; alone {
		return whole + "." + n[last+1:]
	}
	return whole + n[last+1:] // only thousands are parted more than once
}

func decimalsOf(n string) int {
	if i := strings.IndexByte(n, '.'); i >= 0 {
		return len(n) - i - 1
	}
	return 0
}

// scaleOf is the unit of a typed number in m2.
func scaleOf(n string, value float64) float64 {
	v, err := strconv.ParseFloat(n, 64)
	if err != nil || v == 0 || value == 0 {
		return 1
	}
	return value / v
}
