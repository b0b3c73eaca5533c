package columns

import (
	"strings"

	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// seeAnswers finds the columns that aren't used and whose cells answer yes or no, under
// headings that don't ask what a piece is like: a row that says no may not count.
func (t *Reading) seeAnswers() {
	var b beneath
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Used || s.Fixed || s.Verdict != headings.Unknown && s.Verdict != headings.Blank || strings.HasPrefix(s.Typed, AddedMark) || wording.OfQuality(s.Typed) {
			continue
		}
		if b.columns == nil {
			b = t.peek()
		}
		s.Answers, s.Ticked = wording.Answers(b.columns[i], b.rows-len(b.columns[i]))
		s.Answers = s.Answers || t.OfRefused() && len(b.columns[i]) > 0 && b.share(i, func(cell string) bool { return wording.AnswerOf(cell) == wording.Yes || wording.SaysNo(cell, false) }) == 1
	}
}
