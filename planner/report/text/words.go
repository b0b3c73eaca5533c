package text

import (
	"bufio"
	"math"
	"strconv"
	"strings"
	"unicode"

	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// clean makes a text safe for one line of a terminal: white space to single
// spaces, and nothing that steers the screen.
func clean(s string) string {
	if even(s) {
		return s
	}
	return strings.Join(strings.Fields(show.Safe(s)), " ")
}

// even reports whether a text is words of a column a letter, parted by single
// spaces.
func even(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] > ' ' && s[i] < 0x7f || s[i] == ' ' && i > 0 && s[i-1] != ' ' && i < len(s)-1 {
			continue
		}
		return false
	}
	return true
}

// columnsOf is the columns a text takes: none for marks that combine, two for
// wide letters.
func columnsOf(s string) int {
	n := 0
	for _, r := range s {
		n += columnsOfRune(r)
	}
	return n
}

func columnsOfRune(r rune) int {
	switch {
	case r < 0x300:
		return 1
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return 0
	case unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Hangul),
		r >= 0xff01 && r <= 0xff60, r >= 0x1f300 && r <= 0x1faff:
		return 2
	}
	return 1
}

// wrap breaks a text into lines of at most wide columns, at spaces where it can;
// after most lines the rest is cut with "...". most 0: no end.
func wrap(s string, wide, most int) []string { return wrapOnto(nil, s, wide, most) }

// wrapOnto is wrap with room for the lines.
func wrapOnto(lines []string, s string, wide, most int) []string {
	if wide > 0 && even(s) {
		lines = wrapEven(lines, s, wide)
	} else {
		lines = wrapAny(lines, s, wide)
	}
	if most > 0 && len(lines) > most {
		lines = lines[:most]
		head, _ := split(lines[most-1], max(1, wide-3))
		lines[most-1] = head + "..."
	}
	return lines
}

// wrapEven breaks an even text: the lines are stretches of it.
func wrapEven(lines []string, s string, wide int) []string {
	for len(s) > wide {
		end := strings.LastIndexByte(s[:wide+1], ' ')
		if end < 0 { // a word longer than the line
			lines, s = append(lines, s[:wide]), s[wide:]
			continue
		}
		lines, s = append(lines, s[:end]), s[end+1:]
	}
	return append(lines, s)
}

// wrapAny breaks any text.
func wrapAny(lines []string, s string, wide int) []string {
	line, used := "", 0
	flush := func() { lines, line, used = append(lines, line), "", 0 }
	for _, word := range strings.Fields(s) {
		n := columnsOf(word)
		if used > 0 && used+1+n > wide {
			flush()
		}
		if used > 0 {
			line, used = line+" ", used+1
		}
		for n > wide {
			head, tail := split(word, wide)
			line = head
			flush()
			word, n = tail, columnsOf(tail)
		}
		line, used = line+word, used+n
	}
	if line != "" || len(lines) == 0 {
		flush()
	}
	return lines
}

// split cuts a text after at most wide columns, but not before its first letter.
func split(s string, wide int) (head, tail string) {
	n := 0
	for i, r := range s {
		if n += columnsOfRune(r); n > wide && i > 0 {
			return s[:i], s[i:]
		}
	}
	return s, ""
}

// paragraph writes a text behind a mark, its further lines under the first.
func paragraph(b *bufio.Writer, mark, text string) {
	room := max(20, width-columnsOf(mark))
	var few [4]string
	for i, line := range wrapOnto(few[:0], clean(text), room, 0) {
		if i > 0 {
			mark = strings.Repeat(" ", columnsOf(mark))
		}
		if line = strings.TrimRight(line, " "); line == "" {
			mark = strings.TrimRight(mark, " ")
		}
		b.WriteString(mark)
		b.WriteString(line)
		b.WriteByte('\n')
	}
}

// area writes an area without its unit.
func area(u units.System, m2 float64) string { return u.Fixed(units.Area, m2) }

// long writes a length of joints, m, to a hundredth, without its unit.
func long(u units.System, m float64) string { return fixed(u.Of(units.Length, m), 2) }

// asked writes a figure that somebody asked for with its unit.
func asked(u units.System, q units.Quantity, v float64) string {
	if u == units.SI {
		return plain(v) + " " + u.Unit(q)
	}
	return u.Text(q, v, -1)
}

// aligned is how figures of a column stand: those of US units have unlike
// decimals.
func aligned(u units.System) Align {
	if u == units.SI {
		return Right
	}
	return Point
}

// whole writes minutes and N.
func whole(v float64) string { return fixed(show.Whole(v), 0) }

// fixed writes a number with so many decimals, never as "-0.00".
func fixed(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

// pressure writes a test pressure without its unit; its sign is part of it.
func pressure(u units.System, pa float64, sign string) string {
	if sign == "negative" {
		return "-" + u.Fixed(units.Pressure, pa)
	}
	return u.Fixed(units.Pressure, pa)
}

// upTo writes a number with at most so many decimals.
func upTo(v float64, decimals int) string {
	scale := math.Pow10(decimals)
	return plain(math.Round(v*scale) / scale)
}

func plain(v float64) string { return strconv.FormatFloat(math.Round(v*1e6)/1e6, 'f', -1, 64) }

// hours writes minutes as hours and minutes.
func hours(minutes float64) string { return show.Hours(minutes) }
