package xlsx

import "github.com/xuri/excelize/v2"

// setUp makes the sheet and says how it prints: A4 on its side, one page wide,
// the heading row on every page.
func (b *book) setUp(name string, columns []column) error {
	f := b.file
	if f.SheetCount == 1 && f.GetSheetName(0) == "Sheet1" {
		if err := f.SetSheetName("Sheet1", name); err != nil {
			return err
		}
	} else if _, err := f.NewSheet(name); err != nil {
		return err
	}
	yes, wide, tall, paper, side := true, 1, 0, 9, "landscape"
	if err := f.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &yes}); err != nil {
		return err
	}
	err := f.SetPageLayout(name, &excelize.PageLayoutOptions{Size: &paper, Orientation: &side, FitToWidth: &wide, FitToHeight: &tall})
	if err != nil {
		return err
	}
	narrow, deep, edge := 0.4, 0.6, 0.3
	top, head := narrow, ""
	if b.head != "" {
		top, head = deep, "&L"+b.head
	}
	err = f.SetPageMargins(name, &excelize.PageLayoutMarginsOptions{Left: &narrow, Right: &narrow, Top: &top, Bottom: &deep, Header: &edge, Footer: &edge})
	if err != nil {
		return err
	}
	err = f.SetHeaderFooter(name, &excelize.HeaderFooterOptions{OddHeader: head, OddFooter: "&L" + b.foot + "&C&A&Rpage &P of &N"})
	if err != nil {
		return err
	}
	err = f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: "'" + name + "'!$1:$1", Scope: name})
	if err != nil {
		return err
	}
	printed := 0
	for printed < len(columns) && !columns[printed].screen {
		printed++
	}
	if printed == len(columns) {
		return nil
	}
	end, _ := excelize.ColumnNumberToName(printed)
	return f.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Area", RefersTo: "'" + name + "'!$A:$" + end, Scope: name})
}
