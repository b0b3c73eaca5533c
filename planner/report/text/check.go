package text

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// Check writes stated areas beside those worked out: the result, the figures that
// differ, the most likely reason, what it changes, and the way from their total
// to ours. Figures that agree are only counted.
func Check(w io.Writer, v *report.Check) error {
	b := bufio.NewWriter(w)
	paragraph(b, "", v.Result)
	paragraph(b, "", v.Compared.Sentence)
	b.WriteString("\n")
	paragraph(b, "schedule  ", v.Schedule.File+show.Fingerprint(v.Schedule.SHA256))
	if f := v.StatedFile; f != nil {
		paragraph(b, "stated    ", f.File+show.Fingerprint(f.SHA256))
	}
	paragraph(b, "rows      ", show.Rows(&v.Schedule))
	paragraph(b, "basis     ", v.Basis+". "+v.Measured)
	paragraph(b, "tolerance ", show.Tolerance(v))
	if n := len(v.Faults); n > 0 {
		paragraph(b, "faults    ", fmt.Sprintf("%d; each is named apart with its place", n))
	}
	checkReason(b, &v.Reason)
	checkRows(b, v.Rows)
	checkSums(b, v.Sums)
	checkEffects(b, v.Effects)
	reckoning(b, &v.Reckoning)
	list(b, "Ask for", v.Ask, 0, "")
	list(b, "Notes", v.Notes, 0, "")
	return b.Flush()
}

func checkReason(b *bufio.Writer, r *report.Reason) {
	if r.Sure == "" {
		return
	}
	title(b, "Reason: "+r.Sure)
	paragraph(b, "  ", r.Sentence)
	if len(r.Causes) < 2 {
		return
	}
	for i := range r.Causes {
		c := &r.Causes[i]
		paragraph(b, "  - ", fmt.Sprintf("%s: gives %d of %d", c.Text, c.Hits, c.Of))
	}
	if r.More > 0 {
		paragraph(b, "  - ", fmt.Sprintf("and %d more", r.More))
	}
}

// checkRows lists the rows whose figures don't agree.
func checkRows(b *bufio.Writer, rows []report.CheckRow) {
	var off []*report.CheckRow
	for i := range rows {
		if rows[i].Verdict != "agrees" {
			off = append(off, &rows[i])
		}
	}
	if len(off) == 0 {
		return
	}
	title(b, fmt.Sprintf("Figures that don't agree: %d of %d", len(off), len(rows)))
	writeTable(b, []Column{
		{Head: "row", Align: Right, Max: 16}, {Head: "tag", Max: 16}, {Head: "kind", Max: 10}, {Head: "size", Max: 20},
		{Head: "stated", Align: Right, Max: 12}, {Head: "m2", Align: Right}, {Head: "off by", Align: Right}, {Head: "%", Align: Right}, {Head: "verdict", Max: 8}, {Head: "reason"},
	}, func(row func(...string)) {
		for _, x := range off {
			at := strconv.Itoa(x.Row)
			if x.Sheet != "" {
				at = x.Sheet + " " + at
			}
			ours, diff, share := "", "", ""
			if x.Area != nil {
				ours, diff = twoPlaces(*x.Area), show.Signed(*x.Difference)
			}
			if x.Percent != nil {
				share = show.Percent(*x.Percent)
			}
			size := x.Size
			if x.Quantity > 1 {
				size = fmt.Sprintf("%d of %s", x.Quantity, size)
			}
			row(at, x.Tag, x.Kind, size, x.Typed, ours, diff, share, strings.TrimSuffix(x.Verdict, " tolerance"), x.Reason)
		}
	})
}

func checkSums(b *bufio.Writer, sums []report.CheckSum) {
	if len(sums) == 0 {
		return
	}
	title(b, "Stated totals")
	writeTable(b, []Column{
		{Head: "of", Max: 24}, {Head: "rows", Align: Right}, {Head: "stated", Align: Right, Max: 12}, {Head: "m2", Align: Right}, {Head: "off by", Align: Right}, {Head: "%", Align: Right}, {Head: "verdict", Max: 8}, {Head: "reason"},
	}, func(row func(...string)) {
		for i := range sums {
			x := &sums[i]
			row(x.By+" "+x.Name, strconv.Itoa(x.Rows), x.Typed, twoPlaces(x.Area), show.Signed(x.Difference), show.Percent(x.Percent), strings.TrimSuffix(x.Verdict, " tolerance"), x.Reason)
		}
	})
	for i := range sums {
		if x := &sums[i]; x.Flag != "" {
			paragraph(b, "  flag      ", x.By+" "+x.Name+": "+x.Flag)
		}
	}
}

func checkEffects(b *bufio.Writer, effects []report.CheckEffect) {
	if len(effects) == 0 {
		return
	}
	title(b, "What it does to the test")
	writeTable(b, []Column{
		{Head: "of", Max: 26}, {Head: "class"}, {Head: "Pa", Align: Right}, {Head: "L/s per m2", Align: Right}, {Head: "on stated m2", Align: Right}, {Head: "limit L/s", Align: Right}, {Head: "on m2", Align: Right}, {Head: "limit L/s", Align: Right},
		{Head: "proves class"}, {Head: "reading L/s", Align: Right}, {Head: "passes from m2", Align: Right},
	}, func(row func(...string)) {
		for i := range effects {
			e := &effects[i]
			if e.Missing != "" {
				row(e.About(), "", "", "", twoPlaces(e.Stated), "", twoPlaces(e.Area))
				continue
			}
			proves, reading, least := e.Proves, "", ""
			if proves == "" {
				proves = "none"
			}
			if e.Reading > 0 {
				reading, least = fmt.Sprintf("%g", e.Reading), twoPlaces(show.Up(e.BreakEven))
			}
			row(e.About(), e.Class, signedPa(e.Pa, e.Sign), show.Limit(e.PerM2), twoPlaces(e.Stated), show.Limit(e.LimitStated), twoPlaces(e.Area), show.Limit(e.Limit), proves, reading, least)
		}
	})
	for i := range effects {
		for _, s := range effects[i].Sentences() {
			paragraph(b, "  ", show.First(effects[i].About())+": "+s)
		}
	}
}

func reckoning(b *bufio.Writer, r *report.Reckoning) {
	if len(r.Lines) == 0 {
		return
	}
	title(b, "From the stated total to ours")
	writeTable(b, []Column{{Head: "step", Max: 66}, {Head: "change m2", Align: Right}, {Head: "m2", Align: Right}}, func(row func(...string)) {
		row("stated", "", twoPlaces(r.Stated))
		for i := range r.Lines {
			l := &r.Lines[i]
			row(show.Step(l), show.Signed(l.Change), twoPlaces(l.Running))
		}
		row("worked out", "", twoPlaces(r.Area))
	})
}

func twoPlaces(m2 float64) string { return fmt.Sprintf("%.2f", m2) }

// signedPa writes Pa with its sign: the sign of a test is part of it.
func signedPa(pa float64, sign string) string {
	if sign == "negative" {
		pa = -pa
	}
	return fmt.Sprintf("%g", pa)
}
