package xlsx

import (
	"fmt"
	"io"
	"math"
	"strings"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
	"blankoff/planner/units"
)

// Check writes stated areas held against those worked out as a workbook. The same
// view gives the same bytes.
func Check(w io.Writer, v *report.Check) error {
	b, err := newBook(footText(v.Schedule.File), units.SI)
	if err != nil {
		return err
	}
	const core = "docProps/core.xml"
	b.file.Pkg.Store(core, []byte(strings.Replace(bare[core], "Ductwork leakage test plan", "Stated areas checked", 1)))
	b.head = footText(v.Job.Head())
	defer b.file.Close()
	for _, write := range []func(*book, *report.Check) error{checkResult, checkFigures, checkUnstated, checkTotals, checkTest, checkReckoning} {
		if err := write(b, v); err != nil {
			return err
		}
	}
	return b.write(w)
}

func checkResult(b *book, v *report.Check) error {
	columns := []column{{head: "Stated areas checked", width: 30, kind: label}, {head: v.Schedule.File, width: 98, kind: value}}
	return b.form("result", columns, func(row func(...any) error) error {
		for _, line := range checkLines(v) {
			if err := row(line[0], line[1]); err != nil {
				return err
			}
		}
		return nil
	})
}

func checkLines(v *report.Check) (lines [][2]any) {
	add := func(head string, text any) { lines = append(lines, [2]any{head, text}) }
	for _, l := range v.Job.Lines() {
		add(l.Word, l.Text)
	}
	add("result", bold(v.Result))
	if v.Compared.Sentence != "" {
		add("compared", v.Compared.Sentence)
	}
	if v.Reason.Sure != "" {
		add("reason: "+v.Reason.Sure, v.Reason.Sentence)
	}
	for i := range v.Reason.Causes {
		c := &v.Reason.Causes[i]
		add("", fmt.Sprintf("%s: gives %d of %d", c.Text, c.Hits, c.Of))
	}
	add("schedule", v.Schedule.File+", sha256 "+v.Schedule.SHA256)
	if f := v.StatedFile; f != nil {
		add("stated", f.File+", sha256 "+f.SHA256)
	}
	add("rows", show.Rows(&v.Schedule))
	add("basis", v.Basis+". "+v.Measured)
	add("tolerance", show.Tolerance(v))
	for _, part := range []struct {
		head  string
		texts []string
	}{{"ask for", v.Ask}, {"note", v.Notes}} {
		for _, t := range part.texts {
			add(part.head, t)
		}
	}
	for _, f := range show.Gather(v.Faults) {
		add("fault", f.Place()+": "+f.Text())
	}
	return lines
}

func checkFigures(b *book, v *report.Check) error {
	return b.sheet("figures", []column{
		{head: "row", width: 5, kind: whole}, {head: "tag", width: 12}, {head: "system", width: 10}, {head: "kind", width: 10}, {head: "size", width: 13}, {head: "qty", width: 5, kind: whole},
		{head: "stated m2", width: 10, kind: full}, {head: "worked out m2", width: 11, kind: hundred}, {head: "difference m2", width: 11, kind: hundred}, {head: "%", width: 8, kind: hundred},
		{head: "verdict", width: 14}, {head: "reason", width: 40}, {head: "working", width: 50, screen: true}, {head: "sheet", width: 14, screen: true}, {head: "rounding m2", width: 10, kind: full, screen: true},
	}, func(row func(...any) error) error {
		for i := range v.Rows {
			x := &v.Rows[i]
			cells := []any{x.Row, x.Tag, x.System, x.Kind, x.Size, x.Quantity, x.Stated, nil, nil, nil, verdictCell(x.Verdict), x.Reason, x.Working, x.Sheet, x.Rounding}
			if x.Area != nil {
				cells[7], cells[8] = *x.Area, nearZero(*x.Difference)
			}
			if x.Percent != nil {
				cells[9] = nearZero(*x.Percent)
			}
			if err := row(cells...); err != nil {
				return err
			}
		}
		return nil
	})
}

// nearZero makes a difference that shows as nothing nothing, so that it isn't shown
// as -0.00.
func nearZero(v float64) float64 {
	if math.Abs(v) < 0.005 {
		return 0
	}
	return v
}

// checkUnstated lists the rows that state no area, where others do.
func checkUnstated(b *book, v *report.Check) error {
	if len(v.Unstated) == 0 {
		return nil
	}
	return b.sheet("no stated area", []column{
		{head: "row", width: 5, kind: whole}, {head: "tag", width: 30}, {head: "system", width: 12}, {head: "kind", width: 10}, {head: "size", width: 16}, {head: "qty", width: 5, kind: whole},
		{head: "worked out m2", width: 11, kind: hundred}, {head: "sheet", width: 14, screen: true},
	}, func(row func(...any) error) error {
		for i := range v.Unstated {
			x := &v.Unstated[i]
			if err := row(x.Row, x.Name, x.System, x.Kind, x.Size, x.Quantity, x.Area, x.Sheet); err != nil {
				return err
			}
		}
		return nil
	})
}

// verdictCell makes a figure that differs stand out.
func verdictCell(verdict string) any {
	if verdict == "agrees" || verdict == "within tolerance" {
		return verdict
	}
	return bold(verdict)
}

func checkTotals(b *book, v *report.Check) error {
	if len(v.Sums) == 0 {
		return nil
	}
	return b.sheet("totals", []column{
		{head: "of", width: 10}, {head: "name", width: 16}, {head: "rows", width: 6, kind: whole}, {head: "stated m2", width: 10, kind: full}, {head: "worked out m2", width: 11, kind: hundred},
		{head: "difference m2", width: 11, kind: hundred}, {head: "%", width: 8, kind: hundred}, {head: "verdict", width: 14}, {head: "reason", width: 40}, {head: "flag", width: 40},
	}, func(row func(...any) error) error {
		for i := range v.Sums {
			x := &v.Sums[i]
			if err := row(x.By, x.Name, x.Rows, x.Stated, x.Area, nearZero(x.Difference), nearZero(x.Percent), verdictCell(x.Verdict), x.Reason, x.Flag); err != nil {
				return err
			}
		}
		return nil
	})
}

func checkTest(b *book, v *report.Check) error {
	return b.sheet("test", []column{
		{head: "of", width: 24}, {head: "class", width: 8}, {head: "Pa", width: 7, kind: plain}, {head: "sign", width: 9}, {head: "limit L/s per m2", width: 9, kind: perM2}, {head: "stated m2", width: 10, kind: hundred},
		{head: "limit on it L/s", width: 10, kind: flowsFull}, {head: "worked out m2", width: 10, kind: hundred}, {head: "limit on it L/s", width: 10, kind: flowsFull}, {head: "proves class", width: 9},
		{head: "reading L/s", width: 9, kind: full}, {head: "passes from m2", width: 10, kind: hundred}, {head: "in words", width: 46},
	}, func(row func(...any) error) error {
		for i := range v.Effects {
			e := &v.Effects[i]
			text := strings.Join(e.Sentences(), " ")
			if e.Missing != "" {
				if err := row(e.About(), nil, nil, nil, nil, e.Stated, nil, e.Area, nil, nil, nil, nil, text); err != nil {
					return err
				}
				continue
			}
			var reading, least any
			if e.Reading > 0 {
				reading, least = e.Reading, show.Up(e.BreakEven)
			}
			proves := e.Proves
			if proves == "" {
				proves = "none"
			}
			if err := row(e.About(), e.Class, given(e.Pa), e.Sign, show.LimitValue(e.PerM2), e.Stated, show.LimitValue(e.LimitStated), e.Area, show.LimitValue(e.Limit), proves, reading, least, text); err != nil {
				return err
			}
		}
		return nil
	})
}

func checkReckoning(b *book, v *report.Check) error {
	return b.sheet("reconciliation", []column{{head: "step", width: 70}, {head: "change m2", width: 12, kind: hundred}, {head: "m2", width: 12, kind: hundred}, {head: "rows", width: 60, screen: true}}, func(row func(...any) error) error {
		r := &v.Reckoning
		if err := row("stated", nil, r.Stated); err != nil {
			return err
		}
		for i := range r.Lines {
			l := &r.Lines[i]
			if err := row(show.Step(l), l.Change, l.Running, lines(l.Names)); err != nil {
				return err
			}
		}
		return row(total("worked out"), nil, r.Area)
	})
}
