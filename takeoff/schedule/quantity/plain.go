package quantity

import (
	"fmt"
	"regexp"
	"strings"
)

// spaced is a number with its thousands parted by spaces, or by apostrophes as
// the Swiss do. Neither can stand for decimals, and three figures can't be
// inches, so there is one reading only; but 600 400 may be a width and a height.
var spaced = regexp.MustCompile(`^([1-9]\d?(?: \d{3})+|[1-9]\d{0,2}(?:'\d{3})+)((?:[.,]\d+)?(?:\D.*)?)$`)

var ungrouper = strings.NewReplacer(" ", "", "'", "")

// ungroup takes out the spaces or apostrophes that part thousands.
func ungroup(t string) string {
	m := spaced.FindStringSubmatch(t)
	if m == nil || strings.HasPrefix(m[2], "/") || strings.HasPrefix(m[2], "-") {
		return t
	}
	return ungrouper.Replace(m[1]) + m[2]
}

// plain writes an unsigned number with a point for decimals and no grouping,
// or says why that can't be done without guessing. commaFile says that the
// file writes decimals with a comma, so that 1.500 may be 1500.
func plain(t string, commaFile bool, decimal byte) (p, trouble string) {
	if decimal != 0 {
		return settled(t, decimal)
	}
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

// settled is plain where the sign for decimals was said: the other one can only
// part thousands.
func settled(t string, decimal byte) (p, trouble string) {
	other := ","
	if decimal == ',' {
		other = "."
	}
	whole, part, has := strings.Cut(t, string(decimal))
	if strings.Contains(whole, other) && !grouped(whole, other) || strings.ContainsAny(part, ".,") || has && (part == "" || whole == "") {
		return "", fmt.Sprintf("isn't a number with '%c' for decimals; write it so", decimal)
	}
	whole = strings.ReplaceAll(whole, other, "")
	if has {
		whole += "." + part
	}
	return whole, ""
}
