package wording

import (
	"regexp"
	"testing"
)

// TestPlainTag holds the table to a pattern that says the same in another way.
func TestPlainTag(t *testing.T) {
	for tag, plain := range map[string]bool{
		"": true, "1": true, "D1": true, "AHU-01": true, "S1.2.003": true, "D0123-456": true, "x1": true, "_1": true, "-1": false, "1-2": false, "1.5": false,
		"A1-A4": false, "D11x2": false, "D11 x2": false, "D1,D2": false, "D1a": false, "D": false, "AX1": true, "A-X1": false, "A--1": false, "D1/2": false, "Dé1": false,
	} {
		if got := PlainTag(tag); got != plain {
			t.Errorf("%q: %v, want %v", tag, got, plain)
		}
	}
	parts := regexp.MustCompile(`^(?:[-.]?[0-9_]|[-.]|[A-Za-z])*$`)
	not := regexp.MustCompile(`[-.][A-Za-z]|[-.][-.]|[0-9_][xX]`)
	figure, letter, dash := regexp.MustCompile(`[0-9]$`), regexp.MustCompile(`[A-Za-z]`), regexp.MustCompile(`[-.]`)
	const of = "01aXx-._ /"
	tag := make([]byte, 0, 6)
	var all func()
	all = func() {
		s := string(tag)
		want := s == "" || parts.MatchString(s) && !not.MatchString(s) && figure.MatchString(s) && (letter.MatchString(s) || !dash.MatchString(s))
		if got := PlainTag(s); got != want {
			t.Fatalf("%q: %v, want %v", s, got, want)
		}
		if len(tag) == 5 {
			return
		}
		for k := range len(of) {
			tag = append(tag, of[k])
			all()
			tag = tag[:len(tag)-1]
		}
	}
	all()
}
