package show

import (
	"fmt"
	"strconv"
	"strings"

	"blankoff/planner/report"
)

// Line is a word and what is said of it.
type Line = report.Line

// SampleTitle heads what is said of a sample.
func SampleTitle(v *report.Plan) string {
	s := v.Sample
	n := fmt.Sprintf("%s of %d", Count(len(s.IDs), "section"), len(v.Sections))
	switch {
	case s.Checked:
		return "Somebody else's pick, checked: " + n
	case len(s.Earlier) > 0:
		return fmt.Sprintf("After a failure: %s more of %d, seed %d", Count(len(s.IDs), "section"), len(v.Sections), s.Seed)
	}
	return fmt.Sprintf("Sample: %s, seed %d", n, s.Seed)
}

// SampleLines say which sections are tested where a share is asked for, by which
// rule they were drawn, what was asked for and reached, and the chances of finding
// what is bad.
func SampleLines(v *report.Plan) []Line {
	s := v.Sample
	var out []Line
	add := func(word, text string) {
		if text != "" {
			out = append(out, Line{Word: word, Text: text})
		}
	}
	if r := s.Regime; r != nil {
		add("regime", r.Title+" ("+r.Source+"; "+r.Sureness+")")
		add("when", r.When)
		add("who", r.Who)
		add("failure", r.OnFailure)
	}
	add("rule", rule(s))
	add("test", or(strings.Join(s.IDs, ", "), "none"))
	add("tested", strings.Join(s.Earlier, ", "))
	for _, x := range s.Problems {
		add("problem", x)
	}
	add("share", fmt.Sprintf("%.1f %% by %s; %s", s.Share, s.By, asked(s)))
	for _, x := range s.Parts {
		wanted := ""
		if x.Asked > 0 {
			wanted = fmt.Sprintf("; %s %% was asked for", number(x.Asked))
		}
		add("of", fmt.Sprintf("%s: %d of %s, %.1f %%%s", x.Name, x.Taken, Count(x.Sections, "section"), x.Share, wanted))
	}
	for i, d := range s.Detect {
		if again := i > 0 && s.Detect[i-1].Bad == d.Bad; !again && len(s.IDs)+len(s.Earlier) > 0 {
			add("chance", chance(&d, len(v.Sections)))
		}
	}
	for _, f := range s.Flags {
		if !s.Checked { // told as problems there
			add("flag", f)
		}
	}
	return out
}

func chance(d *report.Detection, of int) string {
	are := "are"
	if d.Bad == 1 {
		are = "is"
	}
	return fmt.Sprintf("%.0f %% to find a bad section if %d of %d %s bad (%.0f %%)", 100*d.Chance, d.Bad, of, are, 100*float64(d.Bad)/float64(max(of, 1)))
}

// rule is how the sections were chosen.
func rule(s *report.Sample) string {
	switch {
	case s.Checked:
		return "picked by somebody else"
	case len(s.IDs) == 0:
		return ""
	}
	among := "whole sections"
	if len(s.Earlier) > 0 {
		among += " not tested before"
	}
	return fmt.Sprintf("%s in an order shuffled with seed %d, until every share asked for is reached", among, s.Seed)
}

// asked is the share that was asked for.
func asked(s *report.Sample) string {
	parts := 0
	for _, x := range s.Parts {
		if x.Asked > 0 {
			parts++
		}
	}
	switch {
	case s.Percent > 0 && s.PerClass:
		return number(s.Percent) + " % of every class was asked for"
	case s.Percent > 0:
		return number(s.Percent) + " % was asked for"
	case parts > 0:
		return "shares of parts were asked for"
	case s.Regime != nil:
		return "the regime asks for no share of what is here"
	}
	return "no share was asked for"
}

// Drawn says in one line how a sample came about, for a page of one section.
func Drawn(v *report.Plan) string {
	s := v.Sample
	if s == nil {
		return ""
	}
	how := fmt.Sprintf("drawn with seed %d", s.Seed)
	if s.Checked {
		how = "picked by somebody else"
	}
	text := fmt.Sprintf("%d of %s, %s: %.1f %% by %s; %s", len(s.IDs)+len(s.Earlier), Count(len(v.Sections), "section"), how, s.Share, s.By, asked(s))
	if len(s.Detect) > 0 && s.Detect[0].Chance > 0 {
		text += "; " + chance(&s.Detect[0], len(v.Sections))
	}
	return text
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func or(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}
