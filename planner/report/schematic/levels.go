package schematic

import (
	"regexp"
	"strconv"
	"strings"
)

// storeys are words for levels, from the top down. Common practice, no source.
var storeys = []struct {
	word string
	at   float64
}{
	{"roof", 1000}, {"penthouse", 999}, {"attic", 998}, {"plant", 990},
	{"lower ground", -0.5}, {"ground", 0}, {"basement", -1}, {"cellar", -1},
	{"mezzanine", 0.5}, {"first", 1}, {"second", 2}, {"third", 3}, {"fourth", 4}, {"fifth", 5}, {"sixth", 6},
	{"seventh", 7}, {"eighth", 8}, {"ninth", 9}, {"tenth", 10},
}

var digits = regexp.MustCompile(`-?\d+(\.\d+)?`)

// height is about how high up a level is, by its name; what says nothing lies
// with the ground floor.
func height(level string) float64 {
	text := strings.ToLower(level)
	for _, s := range storeys {
		if strings.Contains(text, s.word) {
			return s.at
		}
	}
	v, err := strconv.ParseFloat(digits.FindString(text), 64)
	if err != nil {
		return 0
	}
	if strings.HasPrefix(text, "b") || strings.HasPrefix(text, "-") {
		return -max(v, -v)
	}
	return v
}
