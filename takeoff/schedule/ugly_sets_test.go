package schedule_test

import "testing"

// uglySets are files that older readers wrote and that were read wrong unnamed, or refused
// though plain, when all of them were read again.
func uglySets(testing.TB) []ugly {
	one := rect(.6, .4, 1.5) // 3 m2
	return []ugly{
		csvFile("quantity-none-beside-ones.csv", "Item,Kind,Size,Length,Qty\n1,Straight,600x400,1500,2\n2,Straight,600x400,1500,\n3,Straight,600x400,1500,1\n", 2, 0, 1, 3*one, "3:quantity"),
		csvFile("quantity-none-for-one.csv", "Item,Kind,Size,Length,Qty\n1,Straight,600x400,1500,2\n2,Straight,600x400,1500,\n3,Straight,600x400,1500,4\n4,Straight,600x400,1500,3\n", 4, 0, 0, 10*one, "", "counts as one piece: row 3"),
		csvFile("quantity-none-all-ones.csv", "Item,Kind,Size,Length,Qty\n1,Straight,600x400,1500,1\n2,Straight,600x400,1500,\n3,Straight,600x400,1500,1\n", 3, 0, 0, 3*one, "", "counts as one piece: row 3"),
		csvFile("quantity-none-often.csv", "Item,Kind,Size,Length,Qty\n1,Straight,600x400,1500,1\n2,Straight,600x400,1500,\n3,Straight,600x400,1500,\n4,Straight,600x400,1500,2\n", 4, 0, 0, 5*one, "", "2 rows have no figure under quantity"),
		csvFile("stroke-among-crosses.csv", "Item,Kind,Size,Length\n1,Straight,600x400,1500\n2,Straight,500/300,1500\n3,Straight,600x400,1500\n", 2, 0, 1, 2*one, "3:Size"),
		csvFile("stroke-of-a-size-crossed.csv", "Item,Kind,Size,Length\n1,Straight,600/400,1500\n2,Straight,600*400,1500\n3,Straight,600×400,1500\n", 3, 0, 0, 3*one, "", "with a stroke"),
		csvFile("cross-among-strokes.csv", "Item,Kind,Size,Length\n1,Straight,600/400,1500\n2,Straight,600/400,1500\n3,Straight,600x400,1500\n", 3, 0, 0, 3*one, "", "with a stroke"),
		csvFile("tables-side-by-side-then-one.csv", "Tag,Kind,Width,Height,Length,Qty,,Tag,Kind,Width,Height,Length,Qty\n1,Straight,600,400,1500,1,,2,Straight,600,400,1500,1\n,,,,,,,3,Straight,600,400,1500,1\n\nTag,Kind,Width,Height,Length,Qty\n1,Straight,600,400,1500,2\n", 1, 0, 2, 2*one, "2: 3:"),
		csvFile("total-unnamed-strange.csv", "Item,Kind,Area (m2)\n1,Straight,6.0\n,,2.4\n3,Bend,3\n", 2, 1, 0, 9, "3:", "they differ"),
		csvFile("total-unnamed-near.csv", "Item,Kind,Size,Length,Qty,Area\n1,Straight,600x400,1500,2,6.6\n2,Straight,600x400,1500,1,3.3\n,,,,,9.9\n", 2, 1, 0, 3*one, "", "they differ"),
		csvFile("total-of-lengths.csv", "Item,Kind,Size,Length,Qty\n1,Straight,600x400,1500,2\n,,,3000,\n", 1, 0, 1, 2*one, "3:kind"),
		csvFile("carried-over-pages.csv", "Item,Kind,Size,Length,Qty\n1,Straight,600x400,1500,2\nc/f,,,,2\n,b/f,,,2\n2,Straight,600x400,1500,1\n,,C/fwd,,3\n", 2, 3, 0, 3*one, "", "'c/f' is a total", "'C/fwd' is a total"),
		csvFile("status-by-initials.csv", "Item,Kind,Size,Length,New/Exist.,Change,+/-,Include\n1,Straight,600x400,1500,N,A,+,✓\n2,Straight,600x400,1500,E,A,+,✓\n3,Straight,600x400,1500,N,D,+,✓\n4,Straight,600x400,1500,N,A,-,✓\n5,Straight,600x400,1500,N,A,+,✗\n", 1, 0, 4, one, "3:New/Exist. 4:Change 5:+/- 6:Include"),
		csvFile("tag-e-g.csv", "Tag,Kind,Size,Length\ne.g.,Straight,600x400,1500\nEG,Straight,600x400,1500\n", 1, 0, 1, one, "2:tag"),
		csvFile("remarks-that-multiply.csv", "Tag,Kind,Size,Length,Qty,Remarks\n1,Straight,600x400,1500,2,multiply by 3\n2,Straight,600x400,1500,2,\"should be 5, see RFI 12\"\n3,Straight,600x400,1500,2,each side (2 no.)\n", 1, 0, 2, 2*one, "2:Remarks 3:Remarks"),
		csvFile("title-per-ahu.csv", "Quantities per AHU (3 AHUs)\n\nTag,Kind,Size,Length,Qty\n1,Straight,600x400,1500,2\n", 1, 0, 0, 2*one, "1:", "no unit is given"),
		csvFile("words-of-dimensions.csv", "Tag,Description,Dim A,Dim B,Dim L,Qty\n1,Rect ducting,600,400,1500,2\n2,Conduit circulaire,,,,\n", 1, 0, 1, 2*one, "3:diameter_mm 3:length_mm"),
	}
}

// uglySetsBooks are workbooks of theirs.
func uglySetsBooks(t testing.TB) []ugly {
	one := rect(.6, .4, 1)
	two := [][]any{row("1", "straight", 600, 400, 1000), row("2", "straight", 600, 400, 1000)}
	alike := func(sheets ...string) *book {
		b := newBook(t, sheets...)
		for _, s := range sheets {
			b.rows(s, 1, bookHead, two[0], two[1])
		}
		return b
	}
	hidden := newBook(t, "D", "Rev A").rows("D", 1, bookHead, two[0], two[1]).rows("Rev A", 1, bookHead, row("1", "straight", 300, 200, 1000))
	hidden.do(hidden.file.SetSheetVisible("Rev A", false))
	return []ugly{
		uglyXLSX("sheet-order-again.xlsx", alike("Schedule", "Workshop order"), 4, 0, 0, 4*one, "Workshop order!1:"),
		uglyXLSX("sheet-flats-alike.xlsx", alike("Flat 1", "Flat 2"), 4, 0, 0, 4*one, "", "right for two floors alike"),
		uglyXLSX("sheet-floors-alike.xlsx", alike("Ground", "First"), 4, 0, 0, 4*one, "", "right for two floors alike"),
		uglyXLSX("sheet-revision-hidden.xlsx", hidden, 3, 0, 0, 2*one+rect(.3, .2, 1), "Rev A!1:", "the sheet is hidden"),
	}
}
