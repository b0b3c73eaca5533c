package xlsx

import (
	"fmt"
	"io"
	"strings"

	"github.com/xuri/excelize/v2"

	"blankoff/planner/price"
	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// Bill writes a priced plan as a workbook that can be sent: the bill, its unit
// prices, assumptions and exclusions. Its amounts are formulas: change a
// rate, a quantity, the mark-up or the minimum, and the total, the unit prices
// and the shares follow. The cells that others hang on are named; every formula
// has its value beside it. Amounts are in major units, rounded as the bill is.
func Bill(w io.Writer, v *report.Bill) error {
	return billOf(w, v, billSheet, unitSheet, termsSheet)
}

// Risk writes what stays in the house: what the job may come to, other
// assumptions side by side, and what has to be settled before the bill is sent.
func Risk(w io.Writer, v *report.Bill) error {
	return billOf(w, v, riskSheet, besideSheet, settleSheet)
}

func billOf(w io.Writer, v *report.Bill, sheets ...func(*billBook) error) error {
	b, err := newBillBook(v)
	if err != nil {
		return err
	}
	defer b.file.Close()
	for _, write := range sheets {
		if err := write(b); err != nil {
			return err
		}
	}
	b.file.SetActiveSheet(0)
	if err := b.file.Write(w); err != nil {
		return fmt.Errorf("workbook: %w", err)
	}
	return nil
}

// names of the sheets
const (
	sheetBill   = "bill"
	sheetUnits  = "unit prices"
	sheetRisk   = "risk"
	sheetBeside = "side by side"
	sheetTerms  = "terms"
	sheetSettle = "to be settled"
)

// billSheet writes the bill itself.
func billSheet(b *billBook) error {
	v := b.v
	s, err := b.sheet(sheetBill, true, 5, 44, 10, 10, 11, 13, 20)
	if err != nil {
		return err
	}
	s.free(faceTitle, "Bill: ductwork leakage tests")
	for _, l := range v.Job.Lines() {
		s.free(faceFree, l.Word+": "+l.Text)
	}
	s.free(faceFree, fmt.Sprintf("schedule: %s (rows: %s); rates: %s; fingerprint %s", v.Schedule.File, show.Rows(&v.Schedule), orNone(v.RatesName), v.Fingerprint.Short()))
	s.free(faceFree, fmt.Sprintf("%s of %.2f m2 in %s, %s; amounts in %s without taxes", show.Count(v.Counts.Tests, "test"), v.Counts.Area, show.Count(v.Counts.Days, "day"), show.Count(v.Counts.Visits, "visit"), v.Currency.Code))
	if v.Nothing != "" {
		s.free(faceFree, "Nothing to price: "+v.Nothing)
	}
	s.gap()
	s.head(">no", "what", ">quantity", "unit", ">rate", ">amount", "from")
	if s.err == nil {
		s.err = b.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: fmt.Sprintf("'%s'!$%d:$%d", sheetBill, s.at, s.at), Scope: sheetBill})
	}
	var sums []string
	for _, group := range price.Groups() {
		from := s.at + 1
		for _, l := range v.Lines {
			if l.Group == group {
				s.line(l)
			}
		}
		if s.at >= from {
			sums = append(sums, s.groupSum(group, from, v.Lines))
		}
	}
	s.totals(sums)
	s.gap()
	s.free(faceFree, "Shaded cells may be changed; the amounts, the total and the unit prices follow.")
	s.note("Rounding: " + v.Rounding + ".")
	for _, n := range v.NotPriced {
		s.note(fmt.Sprintf("Not priced: %s, %s.", n.What, show.Quantity(n.Quantity, n.Unit)))
	}
	if v.ValidDays > 0 {
		s.free(faceFree, fmt.Sprintf("This offer is open for %s. Assumptions and exclusions are on the sheet %q.", show.Count(v.ValidDays, "day"), sheetTerms))
	}
	return s.end()
}

func orNone(s string) string {
	if s == "" {
		return "not named"
	}
	return s
}

// line writes a line of the bill, its amount as a formula with its value.
func (s *billPage) line(l price.Line) {
	n := s.at + 1
	rate := s.b.major(l.Rate)
	s.row(faceText, cellOf{l.No, faceWhole}, l.What, s.b.quantity(l.Quantity, faceInWhole, faceInHundred), l.Unit, cellOf{rate, faceInMoney},
		counted{s.b.rounded(fmt.Sprintf("C%d*E%d", n, n)), s.b.major(l.Amount), faceMoney}, l.From)
	s.name("rate_"+l.Key, "E", n)
}

// groupSum writes the sum of a group and gives its cell.
func (s *billPage) groupSum(group string, from int, lines []price.Line) string {
	sum := price.Money(0)
	for _, l := range lines {
		if l.Group == group {
			sum += l.Amount
		}
	}
	s.row(faceSum, "", "sum: "+group, "", "", "", counted{fmt.Sprintf("SUM(F%d:F%d)", from, s.at), s.b.major(sum), faceSumMoney}, "")
	return fmt.Sprintf("F%d", s.at)
}

// totals adds the groups up to the total.
func (s *billPage) totals(sums []string) {
	v, b := s.b.v, s.b
	all := "0"
	if len(sums) > 0 {
		all = strings.Join(sums, "+")
	}
	s.row(faceSum, "", "sum", "", "", "", counted{all, b.major(v.Subtotal), faceSumMoney}, "")
	s.name("bill_sum", "F", s.at)
	s.row(faceText, "", "mark-up", cellOf{v.MarkupPct.Value(), faceInHundred}, "%", "", counted{b.rounded(fmt.Sprintf("bill_sum*C%d/100", s.at+1)), b.major(v.Markup), faceMoney}, "of the sum")
	s.name("markup_percent", "C", s.at)
	s.name("markup", "F", s.at)
	total := "bill_sum+markup"
	if v.Minimum > 0 {
		s.row(faceText, "", "to the minimum charge", "", "", cellOf{b.major(v.Minimum), faceInMoney},
			counted{fmt.Sprintf("MAX(0,E%d-(bill_sum+markup))", s.at+1), b.major(v.ToMinimum), faceMoney}, "minimum of "+v.MinimumOf)
		s.name("minimum_charge", "E", s.at)
		s.name("to_minimum", "F", s.at)
		total += "+to_minimum"
	}
	s.row(faceTotal, "", "TOTAL, "+v.Currency.Code, "", "", "", counted{total, b.major(v.Total), faceTotalMoney}, "without taxes")
	s.name("total", "F", s.at)
}

// termsSheet writes assumptions and exclusions, ready to paste.
func termsSheet(b *billBook) error {
	s, err := b.sheet(sheetTerms, true, 5, 112)
	if err != nil {
		return err
	}
	s.texts("Assumptions", b.v.Assumptions)
	s.gap()
	s.texts("Not in the price", b.v.Exclusions)
	return s.end()
}

// settleSheet writes what has to be settled before the bill is sent.
func settleSheet(b *billBook) error {
	s, err := b.sheet(sheetSettle, true, 5, 112)
	if err != nil {
		return err
	}
	list := b.v.Look
	if len(list) == 0 {
		list = []string{"nothing that the program knows of"}
	}
	s.texts("To be settled before the bill is sent", list)
	return s.end()
}

// texts writes a titled list.
func (s *billPage) texts(head string, list []string) {
	s.free(faceTitle, head)
	for k, text := range list {
		s.row(faceText, cellOf{k + 1, faceWhole}, text)
	}
}

// rounded is a formula rounded to whole minor units.
func (b *billBook) rounded(f string) string {
	return fmt.Sprintf("ROUND(%s,%d)", f, b.v.Currency.Digits)
}

// name names a cell of the sheet.
func (s *billPage) name(name, column string, row int) {
	if s.err == nil {
		s.err = s.b.file.SetDefinedName(&excelize.DefinedName{Name: name, RefersTo: fmt.Sprintf("'%s'!$%s$%d", s.sheet, column, row)})
	}
}
