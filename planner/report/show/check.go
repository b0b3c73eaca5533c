package show

import (
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"blankoff/planner/report"
)

// Fingerprint is the beginning of a file's, behind its name.
func Fingerprint(sha256 string) string {
	if len(sha256) < 16 {
		return ""
	}
	return " (sha256 " + sha256[:16] + "...)"
}

// Tolerance says by how much a figure may be off.
func Tolerance(v *report.Check) string {
	text := fmt.Sprintf("the rounding of each figure as typed, and %g %% of the area worked out", v.Tolerance)
	if v.Assumed {
		text += ", an assumption; --tolerance replaces it"
	}
	return text
}

// Up is an area rounded up to 0.01 m2, so that the area shown is enough.
func Up(m2 float64) float64 { return math.Ceil(m2*100-1e-9) / 100 }

// First is a text that begins a sentence.
func First(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

// Step is a line of a reckoning with the rows that it concerns.
func Step(l *report.ReckoningLine) string {
	const most = 4
	if len(l.Names) == 0 {
		return l.Text
	}
	if len(l.Names) <= most {
		return l.Text + " (" + strings.Join(l.Names, ", ") + ")"
	}
	return fmt.Sprintf("%s (%s and %d more)", l.Text, strings.Join(l.Names[:most-1], ", "), len(l.Names)-most+1)
}

// Signed is a difference in m2 with its sign; nothing has none.
func Signed(m2 float64) string { return signed(m2, 2) }

// Percent is a share with its sign; nothing has none.
func Percent(share float64) string { return signed(share, 1) }

func signed(v float64, places int) string {
	s := fmt.Sprintf("%+.*f", places, v)
	if strings.Trim(s, "+-0.") == "" {
		return s[1:]
	}
	return s
}
