package terms

import "strings"

// NaturalLess orders tags as people do: D2 before D10.
func NaturalLess(a, b string) bool {
	i, j := 0, 0
	for i < len(a) && j < len(b) {
		if digit(a[i]) && digit(b[j]) {
			x, ni := digits(a, i)
			y, nj := digits(b, j)
			if len(x) != len(y) {
				return len(x) < len(y)
			}
			if x != y {
				return x < y
			}
			i, j = ni, nj
			continue
		}
		if a[i] != b[j] {
			return a[i] < b[j]
		}
		i++
		j++
	}
	if len(a)-i != len(b)-j {
		return len(a)-i < len(b)-j
	}
	return a < b // equal but for leading zeros
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// digits returns the number at s[i:] without leading zeros, and where it ends.
func digits(s string, i int) (string, int) {
	j := i
	for j < len(s) && digit(s[j]) {
		j++
	}
	return strings.TrimLeft(s[i:j], "0"), j
}
