// Package letter renders a check of stated areas as a letter, black on white, to
// whoever stated them. The first A4 page is the letter: what was held against
// what, the result, the likely reason, what it changes, and what is asked for. The
// second has the figures: those that differ most, the limits, the way from their
// total to ours, and what couldn't be used. On a narrow screen the pages flow. It
// needs nothing else and has no script; text of the schedule can't become markup.
// Whatever doesn't fit is counted; the workbook has all.
package letter

import (
	_ "embed" // the letter's parts
	"fmt"
	"html/template"
	"io"
	"slices"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

//go:embed letter.html
var letterText string

//go:embed letter.css
var letterStyle string

var page = template.Must(template.New("letter").Parse(letterText))

// Most of each thing, so that two pages hold them.
const (
	mostRows    = 7
	mostCauses  = 3
	mostEffects = 3
	mostSaid    = 2 // effects in sentences
	mostSteps   = 6
	mostUnused  = 3
	mostAsk     = 6
)

// view is what the letter's text is filled from, all of it as it's printed.
type view struct {
	Check                                                    *report.Check
	Style                                                    template.CSS
	To, From, Date, Subject, Opening, Compared, Beside, Foot string
	Reason, Singles, RowsHead, RowsRest, UnusedHead, Rests   string
	Lines                                                    []report.Line
	Causes, EffectText, EffectNotes, Ask, Unused             []string
	Groups                                                   []group
	Effects                                                  []effect
	Steps                                                    []step
}

// group is figures of one sort: of sums, or of rows.
type group struct {
	Head string
	Rows []figure
}

type figure struct{ Name, What, Stated, Ours, Difference, Percent, Reason string }

type effect struct{ Name, Test, Stated, LimitStated, Ours, Limit, Proves string }

type step struct {
	Text, Change, Running string
	Sum                   bool
}

// Check writes the letter. The same view gives the same bytes.
func Check(w io.Writer, v *report.Check) error {
	o := &view{Check: v, Style: template.CSS(letterStyle)}
	o.head(v)
	o.reason(v)
	o.effects(v)
	o.steps(&v.Reckoning)
	o.unused(v)
	o.figures(v)
	for _, a := range v.Ask[:min(mostAsk, len(v.Ask))] {
		if strings.HasPrefix(a, "Please correct") {
			a = strings.TrimSuffix(a, ".") + "; page 2 names " + map[bool]string{true: "it.", false: "them."}[len(v.StatedFaults()) == 1]
		}
		o.Ask = append(o.Ask, short(a, 235))
	}
	return page.Execute(w, o)
}

// short makes a text of the schedule fit for print, no longer than most letters.
func short(s string, most int) string {
	s = strings.ReplaceAll(strings.Join(strings.Fields(show.Safe(s)), " "), " m2", " m²")
	if r := []rune(s); len(r) > most {
		return strings.TrimSpace(string(r[:most-1])) + "…"
	}
	return s
}

func (o *view) head(v *report.Check) {
	o.Subject = "Duct areas stated in " + short(v.Schedule.File, 60)
	if j := v.Job; j != nil {
		o.To, o.From, o.Date = short(j.Letter.To, 70), short(j.Letter.From, 70), short(j.Letter.Date, 30)
		for _, l := range []report.Line{{Word: "Project", Text: j.Project}, {Word: "Client", Text: j.Client}, {Word: "Reference", Text: j.Reference}, {Word: "Clause", Text: j.Clause}} {
			if l.Text != "" {
				o.Lines = append(o.Lines, report.Line{Word: l.Word, Text: short(l.Text, 46)})
			}
		}
		if j.Project != "" {
			o.Subject = short(j.Project, 60) + ": the duct areas stated in " + short(v.Schedule.File, 60)
		}
	}
	what := "the areas stated for the rows of " + short(v.Schedule.File, 60)
	files := short(v.Schedule.File, 60) + show.Fingerprint(v.Schedule.SHA256)
	if f := v.StatedFile; f != nil {
		sums := "those stated in " + short(f.File, 60)
		if what += ", and " + sums + ","; len(v.Rows) == 0 {
			what = "the areas stated in " + short(f.File, 60)
		}
		files += ", " + short(f.File, 60) + show.Fingerprint(f.SHA256)
	}
	o.Opening = "We have compared " + what + " with areas that we worked out, piece by piece, from the sizes in " + short(v.Schedule.File, 60) + "."
	// The comparison is a part of the result; what it leaves out is said after it.
	o.Compared, o.Beside, _ = strings.Cut(short(v.Compared.Sentence, 700), ". ")
	if o.Beside != "" {
		o.Compared += "."
	}
	o.Foot = strings.Join(nonempty(short(v.Job.Head(), 60), short(v.Schedule.File, 60)+", sha256 "+v.Schedule.SHA256[:min(16, len(v.Schedule.SHA256))]), " · ")
	o.Rests = v.Measured + " Basis of measurement: " + v.Basis + ". A figure counts as different beyond " + show.Tolerance(v) + ". Rows of the schedule: " + show.Rows(&v.Schedule) + "." + limits(v) + " Files: " + files + "."
	o.Rests = short(strings.Replace(o.Rests, "; --tolerance replaces it", " of ours", 1), 1100)
}

// limits says where the limits come from.
func limits(v *report.Check) string {
	var said []string
	for i := range v.Effects {
		if e := &v.Effects[i]; e.Missing == "" {
			if text := fmt.Sprintf(" Class %s of scheme %s: %s.", e.Class, e.Scheme, e.Source); !slices.Contains(said, text) {
				said = append(said, text)
			}
		}
	}
	return strings.Join(said[:min(2, len(said))], "")
}

func nonempty(words ...string) []string {
	return slices.DeleteFunc(words, func(w string) bool { return w == "" })
}

// reason says where the difference seems to come from.
func (o *view) reason(v *report.Check) {
	r := &v.Reason
	switch {
	case r.Sure == "":
		return
	case len(r.Causes) == 0:
		o.Reason = "We have tried the usual reasons, alone and in pairs, on the whole list and on its systems, shapes and kinds. No single cause was found that gives the stated figures."
	case len(r.Causes) > 1:
		o.Reason = "Several causes give the stated figures about as well, and the figures alone can't tell between them:"
		for i := range r.Causes[:min(mostCauses, len(r.Causes))] {
			c := &r.Causes[i]
			o.Causes = append(o.Causes, short(fmt.Sprintf("%s (gives %d of %d figures within their rounding)", c.Text, c.Hits, c.Of), 150))
		}
		if n := len(r.Causes) + r.More - mostCauses; n > 0 {
			o.Causes = append(o.Causes, fmt.Sprintf("and %d more", n))
		}
	default:
		c := &r.Causes[0]
		sure := "The stated figures are most simply given by one cause"
		if r.Sure == "certain" {
			sure = "The stated figures are what comes out with one cause"
		}
		if len(c.Keys) > 1 {
			sure = strings.Replace(sure, "one cause", "two causes together", 1)
		}
		o.Reason = short(fmt.Sprintf("%s: %s. That gives %d of %d figures within their rounding", sure, c.Text, c.Hits, c.Of), 330)
		if r.Sure == "certain" {
			o.Reason += "; nothing" + map[bool]string{true: " giving other figures", false: " else"}[len(r.Alike) > 0] + " that we tried, alone or in pairs, comes near."
		} else {
			o.Reason += "; we take it to be likely, not certain."
		}
		if n := len(r.Alike); n > 0 {
			o.Reason += " " + short("Only rows that state no area could tell it from "+count(n, "other rule", "other rules")+": "+strings.Join(r.Alike[:min(2, n)], "; "), 220) + map[bool]string{true: "; and others.", false: "."}[n > 2]
		}
	}
	o.Singles = singles(v)
}

// singles names rows that have something of their own.
func singles(v *report.Check) string {
	var own, open []string
	for i := range v.Rows {
		switch x := &v.Rows[i]; {
		case x.Verdict != "differs" || report.ByCause(x.Reason):
		case x.Reason == "":
			open = append(open, short(x.Name, 14))
		default:
			own = append(own, short(x.Name, 14))
		}
	}
	var text []string
	if len(own) > 0 {
		text = append(text, "Beside that "+count(len(own), "row has a reason", "rows have reasons")+" of "+map[bool]string{true: "its", false: "their"}[len(own) == 1]+" own: "+show.Names(own, ", ", 5, 60)+".")
	}
	if len(open) > 0 && len(v.Reason.Causes) > 0 {
		text = append(text, "For "+show.Names(open, ", ", 5, 60)+" we have found no explanation.")
	}
	return strings.Join(text, " ")
}

func count(n int, one, many string) string {
	if n == 1 {
		return "one " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
