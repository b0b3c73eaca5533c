package main

import (
	"fmt"
	"path/filepath"
	"regexp"
	"testing"
)

// unlike are counts whose word isn't in its number: "1 days", "5 day". Words that
// end in s without being of many are let through.
var unlike = []*regexp.Regexp{
	regexp.MustCompile(`(?:^|[^\d.,/ ] ?|[a-z:;,(] )[+-]?1 (?:days|tests|rows|blanks|fits|makes|moves|cuts|sections|visits|faults|joints|pieces|lines|problems|mismatches|hours|openings)\b`),
	regexp.MustCompile(`(?:^|[^\d.,/ ] ?|[a-z:;,(] )[+-]?(?:0|[2-9]|[1-9]\d+) (?:day|test|row|blank|fit|make|move|cut|section|visit|fault|joint|piece|line|problem|mismatch|hour)(?:[.,;)]|$)`),
	regexp.MustCompile(`\b1 (?:row|section|blank)s? (?:that )?(?:don't|are|have|were)\b`),
}

// TestWordsOfCounts: one of a thing is "1 day" and two are "2 days", wherever
// people read it.
func TestWordsOfCounts(t *testing.T) {
	dir := site(t, map[string]string{
		"one.csv":   "tag,kind,width_mm,height_mm,length_mm,class\nA,straight,600,400,12000,B\n",
		"fault.csv": "tag,kind,width_mm,height_mm,length_mm,from,class\nA,straight,600,400,12000,,B\nB,straight,600,400,12000,A,Q\n",
		"none.csv":  "tag,kind,width_mm,height_mm,length_mm,class\nA,straight,600,400,12000,Q\n",
		"two.csv":   "tag,kind,width_mm,height_mm,length_mm,class\nA,straight,600,400,12000,B\nB,straight,600,400,12000,B\n",
		"few.toml":  "currency = \"EUR\"\nminor_digits = 2\n[rates]\ntest = 5500\n",
	})
	pack := filepath.Join(dir, "pack")
	for _, line := range []string{
		"plan one.csv --rig rig.toml --test-pressure 400 -o " + pack, "plan fault.csv --rig rig.toml --test-pressure 400", "plan none.csv --rig rig.toml --test-pressure 400", "plan two.csv --rig rig.toml --test-pressure 400 --picked S01,S01",
		"price one.csv --rig rig.toml --test-pressure 400 --rates few.toml --runs 100 --revision two.csv", "price one.csv --rig rig.toml --test-pressure 400 --rates few.toml --runs 100 --regime UK",
		"inspect one.csv", "takeoff one.csv", "compare one.csv --rig rig.toml --test-pressure 400",
	} {
		code, stdout, stderr := typed(t, line)
		if code == exitMisuse || stdout+stderr == "" {
			t.Errorf("%s: exit %d: %s", line, code, stderr)
		}
		countsAgree(t, line, stdout+stderr)
	}
	countsAgree(t, "plan.html", visible(pageOf(t, filepath.Join(pack, "plan.html"))))
}

func countsAgree(t *testing.T, what, text string) {
	t.Helper()
	for _, r := range unlike {
		for _, bad := range r.FindAllString(text, -1) {
			t.Errorf("%s says %q", what, fmt.Sprint(bad))
		}
	}
}
