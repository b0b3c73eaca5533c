package workbook

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"github.com/xuri/excelize/v2"
)

// format is what of a cell's number format bears on its meaning. Rounding and
// grouping don't: 1500 shown as 1,500 is 1500.
type format struct {
	date           bool
	percent        bool
	prefix, suffix string // as in T-001 or 600 mm
	digits         int    // at least so many before the point
}

// builtInFormat is a format by its number (ECMA-376 part 1, 18.8.30).
func builtInFormat(id int) format {
	return format{
		date:    id >= 14 && id <= 22 || id >= 27 && id <= 36 || id >= 45 && id <= 47 || id >= 50 && id <= 58,
		percent: id == 9 || id == 10,
	}
}

// readFormat reads the code of a format: its first section, which is for
// positive numbers.
func readFormat(code string) format {
	var f format
	var literal strings.Builder
	rs := []rune(strings.ReplaceAll(strings.ReplaceAll(code, "General", "#"), "GENERAL", "#"))
	number, point := false, false
	for i := 0; i < len(rs) && rs[i] != ';'; i++ {
		switch r := rs[i]; {
		case r == '"':
			end := i + 1 + max(0, slices.Index(rs[i+1:], '"'))
			literal.WriteString(string(rs[i+1 : end]))
			i = end
		case r == '\\' && i+1 < len(rs):
			i++
			literal.WriteRune(rs[i])
		case r == '_' || r == '*':
			i++
		case r == '[':
			end := i + max(0, slices.Index(rs[i:], ']'))
			f.date = f.date || strings.Trim(string(rs[i:end]), "[hHmMsS") == ""
			i = end
		case r == '%':
			f.percent = true
		case r == '.':
			point = true
		case r == '0' || r == '#' || r == '?':
			if !number {
				number, f.prefix = true, literal.String()
				literal.Reset()
			}
			if r == '0' && !point {
				f.digits++
			}
		case strings.ContainsRune("yYmMdDhHsS", r):
			f.date = true
		}
	}
	if number {
		f.suffix = literal.String()
	}
	if !strings.ContainsFunc(f.prefix, telling) {
		f.prefix = ""
	}
	if !strings.ContainsFunc(f.suffix, telling) {
		f.suffix = ""
	}
	return f
}

// telling reports a character that bears on what a number means.
func telling(r rune) bool { return unicode.IsLetter(r) || strings.ContainsRune(`"'″′°⌀`, r) }

// show writes the number n, stored as raw.
func (f format) show(raw string, n float64, date1904 bool) string {
	if f.date {
		if d, err := excelize.ExcelDateToTime(n, date1904); err == nil {
			if n == math.Trunc(n) {
				return d.Format("2006-01-02")
			}
			return d.Format("2006-01-02 15:04")
		}
	}
	if f.percent {
		return fifteen(n*100) + "%"
	}
	s := raw
	if len(s) > 15 || strings.ContainsAny(s, "eE+ \n\t") || strings.Contains(s, ".") && s[len(s)-1] == '0' {
		s = fifteen(n)
	}
	if pad := f.digits - len(s); f.digits > 1 && pad > 0 && n >= 0 && n == math.Trunc(n) {
		s = strings.Repeat("0", min(pad, 20)) + s
	}
	return f.prefix + s + f.suffix
}

// fifteen writes n with the fifteen digits that a spreadsheet shows, which
// gives back what was typed.
func fifteen(n float64) string {
	s := strconv.FormatFloat(n, 'g', 15, 64)
	if v, _ := strconv.ParseFloat(s, 64); v == 0 || math.Abs(v) > 1e-9 && math.Abs(v) < 1e15 {
		return strconv.FormatFloat(v+0, 'f', -1, 64)
	}
	return s
}
