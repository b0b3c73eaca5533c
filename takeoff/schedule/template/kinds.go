package template

import (
	"regexp"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// kindsWith lists the kinds that need a column, in some shape or style, and
// those that may take it.
func kindsWith(column string) (needs, takes string) {
	if column == takeoff.Kind.Heading() {
		return "every row", ""
	}
	word := regexp.MustCompile(`\b` + regexp.QuoteMeta(column) + `\b`) // _ is part of a word
	var need, take []string
	for _, k := range fittings.Kinds() {
		switch {
		case word.MatchString(strings.Join(k.Needs, "\n")):
			need = append(need, k.Name)
		case word.MatchString(strings.Join(k.Takes, "\n")):
			take = append(take, k.Name)
		}
	}
	return strings.Join(need, ", "), strings.Join(take, ", ")
}
