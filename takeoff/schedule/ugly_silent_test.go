package schedule_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// uglySilent are lists that could be read wrongly without a word, and ordinary ones like them.
func uglySilent() []ugly {
	one, two := rect(.6, .4, 1.5), rect(.5, .4, 1.5)
	const heads = "Tag,Kind,Width,Height,Length,Qty\n"
	const ft, in = .3048, .0254
	five := "K1,Straight,400,300,1500,2\nK2,Straight,500,300,2500,1\nK3,Straight,300,200,900,3\nK4,Straight,600,300,1200,2\nK5,Straight,250,200,3000,2\n"
	all := 2*rect(.4, .3, 1.5) + rect(.5, .3, 2.5) + 3*rect(.3, .2, .9) + 2*rect(.6, .3, 1.2) + 2*rect(.25, .2, 3)
	bare := strings.NewReplacer("K1,", "", "K2,", "", "K3,", "", "K4,", "", "K5,", "").Replace(five)
	return slices.Concat(uglySums(), uglyMoved(), []ugly{
		csvFile("silent-feet-inches.csv", "Tag,Kind,Width (in),Height (in),Length (ft.in),Qty\n1,Straight,24,12,4.08,1\n2,Straight,24,12,2.10,1\n3,Straight,24,12,4.75,1\n4,Straight,24,12,5,1\n5,Straight,24,12,5.0,1\n6,Straight,24,12,4'-8\",1\n", 4, 0, 2, rect(24*in, 12*in, 14.75*ft+4*ft+8*in), "2:Length (ft.in) 3:Length (ft.in)"),
		csvFile("silent-feet-and-inches.csv", "Tag,Kind,Size (in),Length (feet and inches),Qty\n1,Straight,24x12,4'-8\",1\n2,Straight,24x12,5,2\n3,Straight,24x12,3.5,1\n", 2, 0, 1, rect(24*in, 12*in, 4*ft+8*in)+2*rect(24*in, 12*in, 5*ft), "4:Length (feet and inches)"),
		csvFile("silent-feet-only.csv", "Tag,Kind,Size (in),Length (ft),Qty\n1,Straight,24x12,4.08,1\n2,Straight,24x12,2.10,1\n", 2, 0, 0, rect(24*in, 12*in, 6.18*ft), ""),
		csvFile("silent-pasted.csv", heads+five+five, 5, 0, 5, all, "7:tag 8:tag 9:tag 10:tag 11:tag"),
		csvFile("silent-pasted-below.csv", heads+five+"\nTotal,,,,,10\n"+five+"Total,,,,,20\n", 5, 2, 5, all, "9:tag 10:tag 11:tag 12:tag 13:tag"),
		csvFile("silent-pasted-untagged.csv", "Kind,Width,Height,Length,Qty\n"+bare+bare, 5, 0, 5, all, "7:tag 8:tag 9:tag 10:tag 11:tag"),
		csvFile("silent-floors.csv", heads+"Level 1,,,,,\n"+five+"Level 2,,,,,\n"+five, 10, 0, 0, 2*all, "", "tags that stand on earlier rows too"),
		csvFile("silent-risers.csv", heads+strings.Repeat("Riser,,,,,\n"+five, 20), 100, 0, 0, 20*all, "", "tags that stand on earlier rows too"),
		csvFile("silent-pasted-changed.csv", heads+five+strings.Replace(five, "900", "950", 1), 5, 0, 5, all, "7:tag 8:tag 9:tag 10:tag 11:tag"),
		csvFile("silent-pasted-reversed.csv", heads+five+reversed(five), 5, 0, 5, all, "7:tag 8:tag 9:tag 10:tag 11:tag"),
		csvFile("silent-rooms.csv", "Room,"+heads+"A,"+strings.ReplaceAll(strings.TrimSpace(five), "\n", "\nA,")+"\nB,"+strings.ReplaceAll(strings.TrimSpace(five), "\n", "\nB,")+"\n", 10, 0, 0, 2*all, "", "tags that stand on earlier rows too"),
		csvFile("silent-types.csv", heads+strings.Repeat("K1,Straight,600,400,1500,1\n", 5)+strings.Repeat("K2,Straight,500,400,1500,1\n", 5), 10, 0, 0, 5*(one+two), "", "tags that stand on earlier rows too"),
		csvFile("silent-types-by-two.csv", heads+strings.Repeat("K1,Straight,600,400,1500,1\nK2,Straight,500,400,1500,1\nK1,Straight,600,400,1500,1\n", 4), 12, 0, 0, 8*one+4*two, "", "tags that stand on earlier rows too"),
		csvFile("silent-round-and-sides.csv", "Pos.;Bauteil;Breite (mm);Höhe (mm);Ø (mm);Länge (mm);Anzahl\n1;Rechteckkanal;600;400;;1500;2\n2;Wickelfalzrohr;;;250;3000;1\n3;Rechteckkanal;500;400;315;1500;1\n4;Wickelfalzrohr;;;315;3000;2\n", 4, 0, 0, 2*one+round(.25, 3)+two+2*round(.315, 3), "4:diameter_mm"),
		csvFile("silent-equivalent.csv", "Tag,Kind,Width,Height,Diameter,Length,Qty\n1,Rectangular duct,600,400,533,1500,2\n2,Rectangular duct,500,400,488,1500,1\n3,Straight,,,250,3000,1\n", 3, 0, 0, 2*one+two+round(.25, 3), ""),
	})
}

// reversed is the lines of a text from the last to the first.
func reversed(text string) string {
	lines := strings.SplitAfter(text, "\n")
	slices.Reverse(lines)
	return strings.Join(lines, "")
}

// uglySums are rows that are totals, by a word, by their lengths, and totals that disagree.
func uglySums() []ugly {
	one, two, three := rect(.6, .4, 1.5), rect(.5, .4, 1.5), rect(.4, .3, 1.2)
	const heads = "Tag,Kind,Width,Height,Length,Qty,Remarks\n"
	rows := "1,Straight,600,400,1500,1,\n2,Straight,600,400,1200,2,\n3,Straight,600,400,900,1,\n"
	area, sum := rect(.6, .4, 4.8), ",Straight,600,400,4800,1,"
	other := "4,Straight,500,400,1500,1,\n5,Straight,400,300,1200,1,\n"
	return []ugly{
		csvFile("silent-total-remark.csv", heads+rows+sum+"total 600x400\n"+other, 5, 0, 1, area+two+three, "5:Remarks"),
		csvFile("silent-total-nothing.csv", heads+rows+sum+"\n"+other, 5, 0, 1, area+two+three, "5:tag"),
		csvFile("silent-total-items.csv", strings.Replace(heads, "Tag", "Item", 1)+rows+sum+"\n"+other, 5, 0, 1, area+two+three, "5:tag", "column 'Item' is read as tag"),
		csvFile("silent-no-total.csv", heads+rows+"3a,Straight,600,400,4800,1,\n"+other, 6, 0, 0, 2*area+two+three, ""),
		csvFile("silent-no-total-else.csv", heads+rows+",Straight,600,400,4700,1,\n"+other, 6, 0, 0, area+rect(.6, .4, 4.7)+two+three, ""),
		csvFile("silent-totals-untagged.csv", "Kind,Width,Height,Length,Qty\nStraight,600,400,1500,2\nStraight,600,400,1200,1\nStraight,600,400,4200,1\nStraight,500,400,1500,1\nStraight,500,400,600,2\nStraight,500,400,2700,1\n", 4, 0, 2, rect(.6, .4, 4.2)+rect(.5, .4, 2.7), "4:tag 7:tag"),
		csvFile("silent-total-key.csv", "Key,Kind,Width,Height,Length,Qty\nx,Straight,600,400,1500,1\nx,Straight,600,400,1500,1\nTOTAL,Straight,600,400,3000,1\ny,Straight,500,400,1500,1\nSub total,Straight,500,400,1500,1\n", 3, 0, 2, 2*one+two, "4:Key 6:Key"),
		csvFile("silent-total-finish.csv", "Tag,Kind,Width,Height,Length,Qty,Finish,Stage,Room\n1,Straight,600,400,1500,1,galv,1,Hall\n2,Straight,600,400,1500,1,galv,1,Totnes room\n3,Straight,600,400,3000,1,Total,1,Hall\n4,Straight,600,400,3000,1,galv,Total,Hall\n5,Straight,600,400,3000,1,galv,1,Totals\n", 2, 0, 3, 2*one, "4:Finish 5:stage 6:place"),
		csvFile("silent-no-total-words.csv", "Tag,Kind,Width,Height,Length,Qty,Logistics,Room\n1,Straight,600,400,1500,1,Collection,Transport\n2,Straight,600,400,1500,1,Transport,Collection\n", 2, 0, 0, 2*one, ""),
		csvFile("silent-pieces-wrong.csv", heads+rows+"Total,,,,,6,\n", 3, 1, 0, area, "5:", "it gives 6 pieces, but the rows above come to 4: they differ"),
		csvFile("silent-pieces-right.csv", heads+rows+"Total,,,,,4,\n"+other+"Total,,,,,2,\nGrand total,,,,,6,\n", 5, 3, 0, area+two+three, "", "they agree"),
		csvFile("silent-pieces-of-some.csv", heads+rows+"Total straights,,,,,6,\n", 3, 1, 0, area, "", "they differ"),
		csvFile("silent-pieces-left-out.csv", heads+rows+"9,Hanger rail,,,,2,\nTotal,,,,,6,\n", 3, 2, 0, area, "", "they differ"),
		csvFile("silent-pieces-uncounted.csv", heads+strings.ReplaceAll(rows, ",1,\n", ",3,\n")+"9,Straight,400,300,1200,,\nTotal,,,,,8,\n", 4, 1, 0, 3*rect(.6, .4, 2.4)+2*rect(.6, .4, 1.2)+three, "", "they differ"),
	}
}

// uglyMoved are rows that lack a cell, so that those behind it stand one to the left.
func uglyMoved() []ugly {
	const heads = "Tag,Width,Height,Length,Qty,Weight\n"
	const heads2 = "Tag,Kind,Width,Height,Length,Qty\n"
	rows, ordered, area := "", "", 0.0
	for i := 1; i <= 6; i++ {
		rows += fmt.Sprintf("F%d,%d,%d,1500,%d,%d.5\n", i, 300+100*i, 200+50*i, i, 10*i)
		ordered += fmt.Sprintf("F%d,%d,%d,1500,%d\n", i, 300+100*i, 200+50*i, i)
		area += float64(i) * rect(.3+.1*float64(i), .2+.05*float64(i), 1.5)
	}
	return []ugly{
		csvFile("silent-moved.csv", heads+rows+"F9,300,1500,200,18,\n", 7, 0, 0, area+18*rect(.3, 1.5, .2), "8:Weight"),
		csvFile("silent-moved-many.csv", strings.Replace(heads, "Length", "Length (m)", 1)+strings.ReplaceAll(rows, "1500", "1.5")+"F9,400,300,2,18,\n", 7, 0, 0, area+18*rect(.4, .3, 2), "8:Weight"),
		csvFile("silent-in-another-order.csv", strings.Replace(heads, ",Weight", "", 1)+ordered+"F9,1500,600,400,2\n", 6, 0, 1, area, "8:tag"),
		csvFile("silent-closers.csv", strings.Replace(heads, ",Weight", "", 1)+ordered+"F9,900,300,250,2\n", 7, 0, 0, area+2*rect(.9, .3, .25), ""),
		csvFile("silent-a-figure-too-many.csv", "Tag,Kind,Width,Height (mm),Length,Qty\n1,Straight,7000,300,1500,1\n2,Straight,300,7000,1500,1\n3,Straight,3500,1800,1500,1\n4,Straight,7000 mm,1800 mm,1500,1\n", 2, 0, 2, rect(3.5, 1.8, 1.5)+rect(7, 1.8, 1.5), "2:Width 3:Height (mm)"),
		csvFile("silent-signs.csv", heads2+"D1,Straight,600,400,1500,1\n-- D2,Straight,600,400,1500,1\nx D3,Straight,600,400,1500,1\nREM D4,Straight,600,400,1500,1\nD5,Straight,600,400,1500,1\nX6,Straight,600,400,1500,1\nD7,Straight,600,400,1500,1\nD8,Straight,600,400,1500,1\n"+strings.ReplaceAll("D9,D10,D11,D12,D13,D14,D15,D16,", ",", ",Straight,600,400,1500,1\n"), 13, 0, 3, 13*rect(.6, .4, 1.5), "3:tag 4:tag 5:tag"),
		csvFile("silent-not-weighed.csv", heads+rows+"F9,400,300,900,2,\n", 7, 0, 0, area+2*rect(.4, .3, .9), ""),
		csvFile("silent-seldom-weighed.csv", heads+strings.NewReplacer("20.5\n", "\n", "30.5\n", "\n").Replace(rows)+"F9,300,1500,200,18,\n", 7, 0, 0, area+18*rect(.3, 1.5, .2), ""),
	}
}

// uglySilentBooks are such workbooks.
func uglySilentBooks(t testing.TB) (out []ugly) {
	one := rect(.6, .4, 1)
	a := func(tag string) []any { return row(tag, "straight", 600, 400, 1000, 2) }
	heads := append(slices.Clone(bookHead), "Qty")
	four := [][]any{a("A"), a("B"), a("C"), a("D")}
	for _, x := range []struct {
		name   string
		total  int
		faults string
	}{{"silent-total-filtered.xlsx", 6, "Ducts!6:"}, {"silent-total-hidden.xlsx", 8, ""}} {
		b := hide(t, heads, append(slices.Clone(four), row("Total", nil, nil, nil, nil, x.total)), 4)
		out = append(out, uglyXLSX(x.name, b, 4, 1, 0, 8*one, x.faults, "hidden and read all the same: row 4"))
	}
	for _, x := range []struct{ name, cell, formula, faults string }{
		{"silent-sumproduct.xlsx", "E5", "SUMPRODUCT(E2:E4,F2:F4)", "Ducts!5:Length (mm)"},
		{"silent-sum-by-plus.xlsx", "E5", "E2*F2+E3*F3", "Ducts!5:Length (mm)"},
		{"silent-counta.xlsx", "F5", "COUNTA(A2:A4)", "Ducts!5:Qty"},
		{"silent-own-row.xlsx", "E5", "H5*I5+J5", ""},
		{"silent-as-above.xlsx", "E5", "E4", ""},
		{"silent-of-another-sheet.xlsx", "F5", "COUNTIF(Model!A1:A9,A5)", ""},
	} {
		b := newBook(t, "Ducts").rows("Ducts", 1, heads).rows("Ducts", 2, four...)
		b.do(b.file.SetCellFormula("Ducts", x.cell, x.formula))
		u := uglyXLSX(x.name, b, 4, 0, 0, 8*one, x.faults)
		if x.faults != "" {
			u.used, u.refused, u.area = 3, 1, 6*one
		}
		out = append(out, u)
	}
	for _, x := range []struct{ name, line, faults string }{
		{"silent-grey.xlsx", "Grey rows: not in our contract", "Ducts!3: Ducts!5:"},
		{"silent-shaded.xlsx", "Shaded rows: not in contract", "Ducts!3: Ducts!5:"},
		{"silent-shaded-de.xlsx", "Hinterlegte Zeilen sind nicht unser Auftrag", "Ducts!7:"},
		{"silent-shaded-fr.xlsx", "Lignes ombrées : hors marché", "Ducts!3: Ducts!5: Ducts!7:"},
		{"silent-grey-hold.xlsx", "Grey rows - hold", "Ducts!3: Ducts!5:"},
		{"silent-grey-ordered.xlsx", "Grey rows: delivery week 12", ""},
		{"silent-grey-and-yellow.xlsx", "Grey = delivered, yellow = not in our contract", ""},
	} {
		b := newBook(t, "Ducts").rows("Ducts", 1, heads).rows("Ducts", 2, four...).rows("Ducts", 7, row(x.line))
		id, err := b.file.NewStyle(&excelize.Style{Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"D9D9D9"}}})
		b.do(err)
		b.do(b.file.SetCellStyle("Ducts", "A3", "F3", id))
		b.do(b.file.SetCellStyle("Ducts", "A5", "F5", id))
		refused := 0
		if x.name == "silent-shaded-de.xlsx" { // the line stands alone
			refused = 1
		}
		out = append(out, uglyXLSX(x.name, b, 4, 0, refused, 8*one, x.faults))
	}
	shown := newBook(t, "Ducts").rows("Ducts", 1, heads).rows("Ducts", 2, four...)
	nothing := ";;;"
	id, err := shown.file.NewStyle(&excelize.Style{CustomNumFmt: &nothing})
	shown.do(err)
	shown.do(shown.file.SetCellStyle("Ducts", "F4", "F4", id))
	out = append(out, uglyXLSX("silent-shown-nothing.xlsx", shown, 3, 0, 1, 6*one, "Ducts!4:Qty"))
	again := newBook(t, "In mm", "In inches").rows("In mm", 1, heads, row("A", "straight", 600, 400, 1500, 2), row("B", "straight", 500, 300, 1250, 1), row("C", "straight", 400, 250, 900, 3), row("D", "straight", 300, 200, 1100, 1))
	again.rows("In inches", 1, row("Tag", "Kind", "Width (in)", "Height (in)", "Length (in)", "Qty"), row("A", "straight", 23.62, 15.75, 59.06, 2), row("B", "straight", 11.81, 19.69, 49.21, 1), row("C", "duct", 15.75, 9.84, 35.43, 3), row("D", "straight", 11.81, 7.87, 43.31, 1))
	const in = .0254
	return append(out, uglyXLSX("silent-again-in-inches.xlsx", again, 8, 0, 0, 2*rect(.6, .4, 1.5)+rect(.5, .3, 1.25)+3*rect(.4, .25, .9)+rect(.3, .2, 1.1)+
		2*rect(23.62*in, 15.75*in, 59.06*in)+rect(11.81*in, 19.69*in, 49.21*in)+3*rect(15.75*in, 9.84*in, 35.43*in)+rect(11.81*in, 7.87*in, 43.31*in), "In inches!1:"))
}
