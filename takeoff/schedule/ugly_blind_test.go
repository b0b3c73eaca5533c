package schedule_test

import "testing"

// uglyBlind are what readers met who had never seen the program, and wrote down beforehand
// what each file holds.
func uglyBlind() []ugly {
	const heads, plain = "Item,Kind,Size,Length,Qty,Remarks\n", "1,Straight,600x400,1500,2,\n"
	one := rect(.6, .4, 1.5)
	return []ugly{
		csvFile("remark-should-be.csv", heads+plain+"2,Straight,500x400,1500,1,should be 3 off\n3,Straight,500x400,1500,1,-1\n4,Straight,500x400,1500,1,each side\n5,Straight,500x400,1500,1,flanged each side\n",
			2, 0, 3, 2*one+rect(.5, .4, 1.5), "3:Remarks 4:Remarks 5:Remarks"),
		csvFile("remark-options.csv", heads+plain+"2a,Straight,500x400,1500,1,Option 1\n2b,Straight,550x350,1500,1,Option 2 - alternative to 2a\n3,Straight,500x400,1500,1,if required\n4,Straight,500x400,1500,1,riser option chosen\n",
			2, 0, 3, 2*one+rect(.5, .4, 1.5), "3:Remarks 4:Remarks 5:Remarks"),
		csvFile("remark-wrong-size.csv", heads+plain+"2,Straight,500x400,1500,1,cut back 150\n3,Straight,500x400,1500,1,length 1350\n4,Straight,500x400,1500,1,length 1500\n5,Straight,500x400,1500,1,internal size\n6,Straight,500x400,1500,1,height 2700\n",
			3, 0, 3, 2*one+2*rect(.5, .4, 1.5), "3:Remarks 4:Remarks 6:Remarks"),
		csvFile("tag-deducts.csv", heads+plain+"Deduct,Straight,500x300,500,1,\n2,Straight,500x300,1500,1,\n", 2, 0, 1, 2*one+rect(.5, .3, 1.5), "3:tag"),
		csvFile("tag-of-items.csv", heads+plain+"2-4,Straight,500x300,1500,1,\n5 & 6,Straight,400x300,1500,2,\n7,Straight,400x300,1500,1,\n", 3, 0, 1, 2*one+3*rect(.4, .3, 1.5), "3:tag"),
		csvFile("remark-omit-and-more.csv", heads+plain+"2,Straight,500x400,1500,1,omit - replaced by 3\n3,Straight,500x400,1500,1,void above ceiling\n3b,Straight,500x400,1500,1,not to be made\n4,Straight,500x400,1500,1,existing - not in contract\n4 (alt.),Straight,500x400,1500,1,\n", 2, 0, 4, 2*one+rect(.5, .4, 1.5), "3:Remarks 5:Remarks 6:Remarks 7:tag"),
		csvFile("label-right-above.csv", "System,S1,,\nRef,Size,Length (mm),Qty\n1,500x300,1500,2\n", 1, 0, 0, 2*rect(.5, .3, 1.5), "", "row 1 above the headings passed over: 'System S1'"),
		csvFile("tag-struck-out.csv", heads+plain+"//2,Straight,500x300,1500,1,\n", 1, 0, 1, 2*one, "3:tag"),
		csvFile("total-lengths-that-differ.csv", "Item,Kind,Size,Length (mm),Qty,Total length (m)\n1,Straight,600x400,1500,2,3.0\n2,Straight,500x300,1235,3,3.7\n3,Straight,500x300,1500,1,12\n", 2, 0, 1, 2*one+3*rect(.5, .3, 1.235), "4:Total length (m)"),
		csvFile("actual-sizes.csv", "Item,Kind,Width,Height,Length,Actual size\n1,Straight,600,400,1500,650x400\n", 1, 0, 0, one, "1:Actual size"),
		csvFile("tag-of-nodes.csv", heads+"1-2,Straight,600x400,1500,2,\n2-3,Straight,600x400,1500,1,\n3,Straight,600x400,1500,1,\n", 3, 0, 0, 4*one, ""),
		csvFile("line-that-adds.csv", heads+plain+",,,,,\nplus 2 more of item 1 on level 3,,,,,\n", 1, 0, 0, 2*one, "4:"),
		csvFile("total-for-floors.csv", heads+plain+"Total for 5 floors: 30 m2,,,,,\n", 1, 1, 0, 2*one, "3:"),
		csvFile("depths-d1.csv", "Ref,Type,W1 (mm),D1 (mm),Length (mm)\nS1,Straight,600,400,1500\n", 1, 0, 0, one, ""),
		csvFile("depths-under-size.csv", "Ref,Type,Size,,Length (mm)\n,,W,D,\nS1,Straight,600,400,1500\n", 1, 0, 0, one, ""),
		csvFile("statuses-of-others.csv", "Item,Kind,Size,Length,Supplied by,Exist/New\n1,Straight,600x400,1500,,New\n2,Straight,600x400,1500,others,New\n3,Straight,600x400,1500,,Exist\n", 1, 0, 2, one, "3:Supplied by 4:Exist/New"),
	}
}

// uglyBlindBooks are their workbooks.
func uglyBlindBooks(t testing.TB) (out []ugly) {
	heads := row("Tag", "Item", "Width (mm)", "Height (mm)", "Length (mm)", "Qty")
	first := row("D1", "Straight duct", 600, 400, 1500, 1)
	one := rect(.6, .4, 1.5)
	beside := newBook(t, "Ducts")
	beside.rows("Ducts", 1, heads, append(row(first...), "deleted"), append(row("D2", "Straight duct", 600, 400, 1500, 1), nil, "x3"), append(row("D3", "Straight duct", 600, 400, 1500, 1), "primed"))
	out = append(out, uglyXLSX("words-right-of-the-table.xlsx", beside, 1, 0, 2, one, "Ducts!2:column G Ducts!3:column H"))
	for name, rows := range map[string][][]any{
		"sheet-of-sizes.xlsx":   {row("Duct size", "Total m"), row("300x200", 3), row("350x250", 4)},
		"sheet-of-numbers.xlsx": {row("D2", 300, 200, 1500, 1), row("D3", 350, 200, 1500, 1), row("D4", 400, 200, 1500, 1)},
		"sheet-of-words.xlsx":   {row("Lp.", "Szerokość", "Wysokość", "Długość"), row(1, 300, 200, 1500), row(2, 300, 200, 1500)},
	} {
		b := newBook(t, "A", "Level 2")
		b.rows("A", 1, heads, first)
		b.rows("Level 2", 1, rows...)
		at := "Level 2!2:"
		if name == "sheet-of-numbers.xlsx" {
			at = "Level 2!1:"
		}
		out = append(out, uglyXLSX(name, b, 1, 0, 0, one, at))
	}
	grilles := newBook(t, "A", "Grilles", "EG Zuluft")
	grilles.rows("A", 1, heads, first)
	grilles.rows("Grilles", 1, row("Nr", "Neck", "Flow"), row(1, "300x150", 120), row(2, "300x150", 150))
	grilles.rows("EG Zuluft", 1, heads, row("D9", "Straight duct", 600, 400, 1500, 1))
	return append(out, uglyXLSX("grilles-without-headings.xlsx", grilles, 2, 0, 0, 2*one, ""))
}
