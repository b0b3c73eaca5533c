package wording

import (
	"regexp"
	"strings"
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

// A tag with other figures is numbered like it and as plain; one with another letter isn't.
func TestNumberedLike(t *testing.T) {
	figures := strings.NewReplacer("0", "7", "1", "0", "2", "9")
	for _, tag := range []string{"D1", "AHU-01", "S1.2.003", "-1", "1-2", "A1-A4", "D11x2", "D", "_1", "D1/2"} {
		other := figures.Replace(tag)
		if !NumberedLike(tag, other) || PlainTag(tag) != PlainTag(other) {
			t.Errorf("%q and %q", tag, other)
		}
		if NumberedLike(tag+"a1", other+"b1") || NumberedLike(tag, other+"1") || NumberedLike(tag+"1", other+"_") {
			t.Errorf("%q is like others", tag)
		}
	}
	if NumberedLike("", "") {
		t.Error("no tag is numbered like none")
	}
}
