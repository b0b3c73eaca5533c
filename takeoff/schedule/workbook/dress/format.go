// Package dress reads how the cells of a workbook are dressed, as far as it bears on what they
// say: formats of numbers, colours, texts struck out or raised, formulas that sum up.
package dress

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"github.com/xuri/excelize/v2"
)

// Format is what of a cell's number format bears on its meaning. Rounding and
// grouping don't: 1500 shown as 1,500 is 1500.
type Format struct {
	date           bool
	percent        bool
	Prefix, Suffix string    // as in T-001 or 600 mm
	Digits         int       // at least so many before the point
	scale          int       // it is shown divided by 1000 so many times
	parts          []stretch // of its figures, where text lies between them
	unlike         bool      // it shows another number than is stored, or none
	minus          bool      // it puts a minus sign before it
	words          string    // what it shows instead of a number
	around         [2]string // what it shows before and behind a text
	cases          []caseFormat
}

// caseFormat is a format for the numbers that meet a condition: [>=1000]0.0,
type caseFormat struct {
	op    string
	limit float64
	Format
}

// meets reports whether a number meets the condition; without one all do.
func (c *caseFormat) meets(n float64) bool {
	switch c.op {
	case "<":
		return n < c.limit
	case "<=":
		return n <= c.limit
	case ">":
		return n > c.limit
	case ">=":
		return n >= c.limit
	case "=":
		return n == c.limit
	case "<>":
		return n != c.limit
	}
	return true
}

// BuiltInFormat is a format by its number (ECMA-376 part 1, 18.8.30).
func BuiltInFormat(id int) Format {
	return Format{
		date:    id >= 14 && id <= 22 || id >= 27 && id <= 36 || id >= 45 && id <= 47 || id >= 50 && id <= 58,
		percent: id == 9 || id == 10,
	}
}

var condition = regexp.MustCompile(`^(?:\[[^\]<>=]*\])*\[(<=|>=|<>|<|>|=)\s*(-?[0-9.]+)\]`)

// MostFormat is the longest code of a number format, bytes: programs take 255 characters.
const MostFormat = 1020

// ReadFormat reads the code of a format: its first section, which is for
// positive numbers, or the sections by their conditions.
func ReadFormat(code string) Format {
	f := readSection(code)
	parts := sections(code)
	if n := len(parts) - 1; n == 3 || strings.Contains(parts[n], "@") { // that of text
		f.around = readSection(parts[n]).around
	}
	if !condition.MatchString(code) {
		return f
	}
	for _, part := range parts {
		c := caseFormat{Format: readSection(part)}
		if m := condition.FindStringSubmatch(part); m != nil {
			c.op = m[1]
			c.limit, _ = strconv.ParseFloat(m[2], 64)
		}
		f.cases = append(f.cases, c)
	}
	return f
}

// sections parts the code of a format.
func sections(code string) (parts []string) {
	from, quoted := 0, false
	for i := 0; i < len(code); i++ {
		switch {
		case code[i] == '"':
			quoted = !quoted
		case code[i] == '\\' && !quoted:
			i++
		case code[i] == ';' && !quoted:
			parts, from = append(parts, code[from:i]), i+1
		}
	}
	return append(parts, code[from:])
}

// told is a text beside a number if it bears on what the number means.
func told(text string) string {
	if strings.ContainsFunc(text, Telling) {
		return text
	}
	return ""
}

// Telling reports a character that bears on what a number means.
func Telling(r rune) bool { return unicode.IsLetter(r) || strings.ContainsRune(`"'″′°⌀×`, r) }

// Show writes the number n, stored as raw. unlike reports that it shows another number
// than that.
func (f *Format) Show(raw string, n float64, date1904 bool) (text string, unlike bool) {
	for i := range f.cases {
		if c := &f.cases[i]; c.meets(n) {
			return c.Show(raw, n, date1904)
		}
	}
	switch {
	case f.date:
		if d, err := excelize.ExcelDateToTime(n, date1904); err == nil {
			if n == math.Trunc(n) {
				return d.Format("2006-01-02"), false
			}
			return d.Format("2006-01-02 15:04"), false
		}
	case f.percent:
		return Fifteen(n*100) + "%", false
	case f.words != "":
		return f.words, true
	case len(f.parts) > 1:
		return f.parted(n)
	}
	s := raw
	if f.scale > 0 && f.scale < 5 {
		n /= math.Pow(1000, float64(f.scale))
		s = Fifteen(n)
	}
	if len(s) > 15 || strings.ContainsAny(s, "eE+ \n\t") || strings.Contains(s, ".") && s[len(s)-1] == '0' {
		s = Fifteen(n)
	}
	if pad := f.Digits - len(s); f.Digits > 1 && pad > 0 && n >= 0 && n == math.Trunc(n) {
		s = strings.Repeat("0", min(pad, 20)) + s
	}
	return f.Prefix + s + f.Suffix, f.unlike || f.minus && n > 0
}

// Fifteen writes n with the fifteen digits that a spreadsheet shows, which
// gives back what was typed.
func Fifteen(n float64) string {
	s := strconv.FormatFloat(n, 'g', 15, 64)
	if v, _ := strconv.ParseFloat(s, 64); v == 0 || math.Abs(v) > 1e-9 && math.Abs(v) < 1e15 {
		return strconv.FormatFloat(v+0, 'f', -1, 64)
	}
	return s
}

// Dress puts round a text what its format shows there: "3" by @" m" is 3 m.
func (f *Format) Dress(text string) string {
	if text == "" {
		return ""
	}
	return f.around[0] + text + f.around[1]
}
