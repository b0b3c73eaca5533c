package report

import (
	"strconv"
	"strings"

	"blankoff/planner/job"
	"blankoff/planner/price"
	"blankoff/planner/programme"
	"blankoff/planner/units"
)

// figures are what the programme was laid out with, each with where it comes
// from.
func figures(j *job.Job, set programme.Settings) []Figure {
	out := []Figure{{"a test in place", plainNumber(set.TestMinutes) + " min", "--test-minutes, with set-up and hold in it; the default of 90 is an assumption, no source"}}
	for _, f := range []struct {
		key, what string
		value     float64
		unit      string
	}{
		{"set_up", "set-up", set.SetUp, " min"}, {"hold", "hold", set.Hold, " min"}, {"move", "moving on a level", set.Move, " min"}, {"move_level", "to another level", set.MoveLevel, " min"},
		{"day_minutes", "a day", set.DayMinutes, " min"}, {"crew", "crew of", float64(set.Crew), ""}, {"cure_hours", "curing before a retest", set.CureHours, " h"},
	} {
		basis := programme.Basis(f.key)
		if j.Own(f.key) {
			basis = jobFile
			if f.key == "hold" {
				basis += "; " + programme.Holds
			}
		}
		out = append(out, Figure{f.what, plainNumber(f.value) + f.unit, basis})
	}
	if set.NoticeDays > 0 {
		out = append(out, Figure{"notice", count(set.NoticeDays, "calendar day"), jobFile})
	} else {
		out = append(out, Figure{"notice", "", "not stated; give notice_days in the job file to get the days by which notice has to be given"})
	}
	return append(out,
		Figure{"moving", "", "between the tests of a visit, none to its first; the first test of a day is moved to as well"},
		Figure{"days", "", "of a visit follow each other; weekends and holidays aren't known here; ready is taken as up, sealed and cured"})
}

// jobFile is the basis of what the job file says itself.
const jobFile = "job file"

// Assumed are the figures that nobody has put in, with their values.
func (o *Programme) Assumed() []string {
	var out []string
	for _, f := range o.Figures {
		if f.Value != "" && !strings.HasPrefix(f.Basis, jobFile) {
			out = append(out, f.What+" "+f.Value)
		}
	}
	return out
}

// count counts things, in the words of people.
func count(n int, word string) string { return units.Count(n, word) }

// QuantityText is a quantity of a bill with its unit: 1 day, 5 days, 2.5 h, 84.57 m2.
func QuantityText(q price.Quantity, unit string) string {
	if unit != "m2" && unit != "h" && q != price.Of(1) {
		unit = units.Many(2, unit)
	}
	return q.Text() + " " + unit
}

func plainNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
