package report

import (
	"fmt"
	"strings"

	"blankoff/planner/price"
)

// terms puts together what the bill assumes, what it leaves out, and what has to
// be settled before it is sent.
func (b *Bill) terms(a *PriceAsk) {
	b.Assumptions, b.Exclusions, b.Look = []string{}, []string{}, []string{}
	if b.Nothing != "" {
		b.assume("Nothing is to be tested of %s, together %.2f m2: %s.", count(b.Counts.Planned, "planned section"), b.plan.Balance.Sections, b.Nothing)
		return
	}
	b.assumeScope()
	b.assumeSite(a)
	b.assumeRetests(a)
	b.Assumptions = append(b.Assumptions, a.Rates.Assumptions...)
	b.exclude()
	b.Exclusions = append(b.Exclusions, a.Rates.Exclusions...)
	b.settle()
}

func (b *Bill) assume(format string, args ...any) {
	b.Assumptions = append(b.Assumptions, fmt.Sprintf(format, args...))
}

func (b *Bill) leaveOut(format string, args ...any) {
	b.Exclusions = append(b.Exclusions, fmt.Sprintf(format, args...))
}

func (b *Bill) assumeScope() {
	c, v := &b.Counts, b.plan
	b.assume("Quantities are taken from the schedule %s (sha256 %s); the price holds for that schedule only.", v.Schedule.File, firstOf(v.Schedule.SHA256))
	b.assume("%s of %s, together %.2f m2 of outside surface, %s.", count(c.Tests, "test"), count(c.Planned, "planned section"), c.Area, asked(v))
	b.assume("%s", v.Measured)
	if s := v.Sample; s != nil {
		b.assume("Only a sample is tested: %.1f %% by %s, drawn with seed %d: %s.", s.Share, s.By, s.Seed, strings.Join(s.IDs, ", "))
	}
	if c.Groupings > 0 {
		b.assume("The schedule doesn't say which piece joins which: %s a grouping by system, level and row order. Number and limits of the sections are settled from the drawings; a test more or less is charged at its rate.", are(c.Groupings))
	}
	b.assume("Rig: %s; a section may leak %g times its limit and still be read.", v.Settings.Rig, v.Settings.Headroom)
}

// asked says to what the sections are tested.
func asked(v *Plan) string {
	var out []string
	for i := range v.Sections {
		s := &v.Sections[i]
		out = once(out, fmt.Sprintf("scheme %s class %s at %g Pa %s", s.Scheme, s.Class, s.TestPa, s.Sign))
	}
	return strings.Join(out, "; ")
}

func firstOf(s string) string { return s[:min(16, len(s))] }

func are(n int) string {
	if n == 1 {
		return "1 section is"
	}
	return fmt.Sprintf("%d sections are", n)
}

func (b *Bill) assumeSite(a *PriceAsk) {
	c, o := &b.Counts, b.plan.Programme
	b.assume("%s in %s by a crew of %d, %.1f h of work as planned; a test takes %g min in place, a day has %g min.", count(c.Days, "day"), count(c.Visits, "visit"), c.Crew, c.Hours, b.Settings.TestMinutes, a.Told.Programme.DayMinutes)
	b.assume("On the day of a visit all sections of it are erected, sealed, cured, uncovered and free to reach; the days of a visit follow each other.")
	if o.NoticeDays > 0 {
		b.assume("Notice of a visit: %s.", count(o.NoticeDays, "calendar day"))
	}
	if c.Fits > 0 {
		b.assume("%s for %s; blanks go from one test to the next.", count(c.Makes, "blank"), count(c.Fits, "fit"))
	}
}

func (b *Bill) assumeRetests(a *PriceAsk) {
	retests := price.Quantity(0)
	for _, l := range b.Lines {
		if l.Key == "retest" {
			retests = l.Quantity
		}
	}
	if retests > 0 {
		b.assume("The total holds %s retests; more or fewer are charged at the price of a retest in the list of unit prices, mark-up included.", retests.Text())
	} else {
		b.assume("The total holds no retests: they are charged as they come, at the price of a retest in the list of unit prices, mark-up included.")
	}
	b.assume("Visits beyond those named, for retests or because the site isn't ready, are charged as they come at the rates of the bill.")
	b.assume("Leaks are put right by the installer; a retest comes %g h after resealing at the earliest.", a.Told.Programme.CureHours)
	if b.ValidDays > 0 {
		b.assume("The offer is open for %s.", count(b.ValidDays, "day"))
	}
}

// exclude lists what isn't in the total.
func (b *Bill) exclude() {
	v := b.plan
	for _, n := range b.NotPriced {
		b.leaveOut("Not priced: %s, %s.", n.What, QuantityText(n.Quantity, n.Unit))
	}
	if b.Counts.Groupings > 0 {
		text := "not in the price"
		for _, l := range b.Lines {
			if l.Key == "make_allowed" || l.Key == "fit_allowed" {
				text = "priced at provisional quantities"
			}
		}
		b.leaveOut("Blanks at cuts and open ends: not known for groupings, %s.", text)
	}
	if n := b.Counts.Planned - b.Counts.Tests; v.Sample != nil && n > 0 {
		b.leaveOut("Tests of the %s that the sample doesn't take; should it have to be widened after a failure, that is charged as it comes at the rates of the bill.", count(n, "section"))
	}
	if n := v.Schedule.RowsRefused; n > 0 {
		b.leaveOut("%s of the schedule could not be used and %s in no quantity: %s.", count(n, "row"), isAre(n), b.refused())
	}
	if v.Balance.Outside >= 0.005 {
		b.leaveOut("%.2f m2 of ductwork that can't be tested as the schedule stands, by piece in the plan.", v.Balance.Outside)
	}
	b.leaveOut("Search for and repair of leaks, sealing, and making good of insulation and ceilings.")
	b.leaveOut("Access equipment, electrical supply and lighting at the rig and at the blanks.")
	b.leaveOut("Witnesses' and inspectors' time, permits, and work outside usual hours.")
	b.leaveOut("Taxes.")
}

func isAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

// refused names the rows that could not be used.
func (b *Bill) refused() string {
	var out []string
	for _, f := range b.Faults {
		out = once(out, strings.TrimSpace(strings.Join([]string{f.Sheet, "row " + fmt.Sprint(f.Row)}, " ")))
	}
	if len(out) > 8 {
		out = append(out[:8], fmt.Sprintf("and %d more", len(out)-8))
	}
	return strings.Join(out, ", ")
}

// settle lists what has to be settled before the bill is sent.
func (b *Bill) settle() {
	under, over := 0, 0
	for _, s := range b.plan.ToTest() {
		if s.UnderRange {
			under++
		}
		if s.OverRange {
			over++
		}
	}
	look := func(format string, args ...any) { b.Look = append(b.Look, fmt.Sprintf(format, args...)) }
	if n := len(b.NotPriced); n > 0 {
		look("not in the total, for want of a rate: %s", count(n, "line"))
	}
	if under+over > 0 {
		look("%s the rig can't judge at their limit (%d under range, %d over range): the plan names the cures", count(under+over, "section"), under, over)
	}
	if b.Counts.Groupings > 0 {
		look("blanks at cuts: not known for groupings; neither they nor the time of fitting them are counted from the plan")
	}
	if b.ToMinimum > 0 {
		look("the minimum charge governs: %s were added", b.Currency.Full(b.ToMinimum))
	}
}
