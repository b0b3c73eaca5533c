package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"blankoff/takeoff/audit"
)

// Compared is what is stated and what is worked out of the same rows, or of the
// same sums, m2.
type Compared struct {
	Of         string   `json:"of"` // row, system, section or schedule
	Count      int      `json:"count"`
	Stated     float64  `json:"stated_m2"`
	Area       float64  `json:"area_m2"`
	Percent    *float64 `json:"difference_percent"` // of the area worked out
	Left       int      `json:"rows_without_area"`  // state an area, but can't be measured
	LeftStated float64  `json:"rows_without_area_stated_m2"`
	Missed     float64  `json:"unstated_m2"` // worked out of the rows that state no area
	Sentence   string   `json:"sentence"`
}

// UnstatedRow is a row in scope that states no area, though others do.
type UnstatedRow struct {
	Name     string  `json:"name"`
	Sheet    string  `json:"sheet,omitempty"`
	Row      int     `json:"row"`
	System   string  `json:"system"`
	Kind     string  `json:"kind"`
	Size     string  `json:"size"`
	Quantity int     `json:"quantity"`
	Area     float64 `json:"area_m2"`
}

// compare sets like beside like, and lists what states no area.
func (v *Check) compare(r *audit.Result) {
	c := Compared{
		Of: r.Compared.By, Count: r.Compared.Count, Stated: r.Compared.Stated, Area: r.Compared.Area,
		Left: r.Compared.Left, LeftStated: r.Compared.LeftStated, Missed: r.Missed,
	}
	if c.Area > 0 {
		p := 100 * (c.Stated - c.Area) / c.Area
		c.Percent = &p
	}
	for _, i := range r.Unstated {
		it := &r.Takeoff.Items[i]
		v.Unstated = append(v.Unstated, UnstatedRow{it.Name(), it.At.Sheet, it.At.Row, it.System, it.Piece.Kind.String(), it.SizeText(), it.Quantity, it.Area})
	}
	c.Sentence = c.words(v.Unstated)
	v.Compared = c
}

// words says how the two compare, and what isn't in it.
func (c *Compared) words(unstated []UnstatedRow) string {
	if c.Count == 0 {
		return ""
	}
	what := map[string]string{"row": "rows", "system": "systems", "section": "sections"}[c.Of]
	switch {
	case c.Of == "schedule":
		what = "The whole comes"
	case c.Count == 1:
		what = "The one " + c.Of + " that states an area comes"
		if c.Of != "row" {
			what = "The one stated " + c.Of + " comes"
		}
	case c.Of == "row" && len(unstated) > 0:
		what = fmt.Sprintf("The %d rows that state an area come", c.Count)
	case c.Of == "row":
		what = fmt.Sprintf("Together the %d rows come", c.Count)
	default:
		what = fmt.Sprintf("Together the %d stated %s come", c.Count, what)
	}
	text := fmt.Sprintf("%s to %.2f m2 as stated and to %.2f m2 as worked out%s.", what, c.Stated, c.Area, c.by())
	if n := c.Left; n > 0 {
		text += fmt.Sprintf(" Not counted here: %.2f m2 stated for %s that can't be measured.", c.LeftStated, counted(n, "row"))
	}
	if n := len(unstated); n > 0 {
		states, they := "states no area; worked out it comes", "isn't"
		if n > 1 {
			states, they = "state no area; worked out they come", "aren't"
		}
		text += fmt.Sprintf(" %s (%s) %s to %.2f m2, which %s in this comparison.", counted(n, "further row"), kindsOf(unstated), states, c.Missed, they)
	}
	return text
}

// by says which side is larger.
func (c *Compared) by() string {
	switch {
	case c.Percent == nil || math.Abs(c.Stated-c.Area) < 0.005:
		return ""
	case math.Abs(*c.Percent) < 0.05:
		return ", a difference of less than 0.1 %"
	case *c.Percent > 0:
		return fmt.Sprintf(": %.1f %% more is stated", *c.Percent)
	}
	return fmt.Sprintf(": %.1f %% less is stated", -*c.Percent)
}

// kindsOf counts rows by their kind, the most first: "spigot 85, bend 40".
func kindsOf(rows []UnstatedRow) string {
	const most = 4
	count := map[string]int{}
	var kinds []string
	for i := range rows {
		k := rows[i].Kind
		if count[k] == 0 {
			kinds = append(kinds, k)
		}
		count[k]++
	}
	slices.SortStableFunc(kinds, func(a, b string) int { return count[b] - count[a] })
	var words []string
	left := len(rows)
	for _, k := range kinds[:min(most, len(kinds))] {
		words = append(words, fmt.Sprintf("%s %d", k, count[k]))
		left -= count[k]
	}
	if left > 0 {
		words = append(words, fmt.Sprintf("others %d", left))
	}
	return strings.Join(words, ", ")
}

func counted(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// ByCause reports that a figure is what the cause gives, or one of the causes.
func ByCause(reason string) bool {
	return reason == "the cause" || reason == "the two causes" || reason == "one of the causes"
}
