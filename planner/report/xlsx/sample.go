package xlsx

import (
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// sampleLines say on the summary which sections a sample takes, and how it came
// about.
func sampleLines(v *report.Plan) [][2]any {
	if v.Sample == nil {
		return nil
	}
	lines := [][2]any{{"sample", show.SampleTitle(v)}}
	for _, l := range show.SampleLines(v) {
		lines = append(lines, [2]any{"sample: " + l.Word, l.Text})
	}
	return lines
}

// lowered begins a text with a small letter.
func lowered(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToLower(text[:1]) + text[1:]
}
