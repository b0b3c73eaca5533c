package ledger

import (
	"bytes"
	"fmt"
	"math"
	"strings"
)

// mostParts is how many rows below one are looked at whether they are parts of it.
const mostParts = 200

// CheckParts refuses a row whose parts follow it, by their numbers, and come to the same area:
// 1 before 1.1 and 1.2. They would be counted twice.
func (b *Book) CheckParts() {
	for i := 0; i+2 < len(b.Lines); i++ {
		l, next := &b.Lines[i], &b.Lines[i+1]
		switch {
		case l.Refused || l.FromLength > 0 || l.Area <= 0:
		case next.TagLength > l.TagLength && l.TagLength > 0 && numbered(b.TagOf(next), b.TagOf(l)) > 0:
			b.checkParts(i, func(p *Line) int { return numbered(b.TagOf(p), b.TagOf(l)) })
		case next.Level != l.Level && b.Names[l.Level] != "" && numberedName(b.Names[next.Level], b.Names[l.Level]) > 0:
			b.checkParts(i, func(p *Line) int { return numberedName(b.Names[p.Level], b.Names[l.Level]) })
		}
	}
}

// checkParts refuses row i if its parts come to its area; depth is how far a row below is
// down from it: 0 for one that is no part.
func (b *Book) checkParts(i int, depth func(*Line) int) {
	l := &b.Lines[i]
	parts, last, sum := 0, i, 0.0
	for k := i + 1; k < len(b.Lines) && k <= i+mostParts; k++ {
		p := &b.Lines[k]
		d := depth(p)
		if d == 0 || p.Sheet != l.Sheet {
			break
		}
		if last = k; d == 1 && !p.Refused {
			parts, sum = parts+1, sum+p.Area
		}
	}
	if parts < 2 || !near(sum, l.Area) && !near(sum*float64(l.Quantity), l.Area) {
		return
	}
	b.Refuse(i, "", string(b.TagOf(l)), "each piece once",
		fmt.Sprintf("rows %d to %d seem to be the parts of this row by their numbers, and come to its area; take the row out, or its parts", b.Lines[i+1].Row, b.Lines[last].Row))
}

// near reports areas that are the same but for rounding.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-4*b }

// numbered is how many numbers a tag has behind those of another: 1 for 1.2 behind 1.
func numbered(tag, of []byte) int {
	if rest, ok := bytes.CutPrefix(tag, of); ok && len(rest) > 1 && rest[0] == '.' && rest[1] >= '0' && rest[1] <= '9' {
		return bytes.Count(rest, []byte{'.'})
	}
	return 0
}

// numberedName is numbered for names.
func numberedName(name, of string) int {
	if rest, ok := strings.CutPrefix(name, of); ok && len(rest) > 1 && rest[0] == '.' && rest[1] >= '0' && rest[1] <= '9' {
		return strings.Count(rest, ".")
	}
	return 0
}
