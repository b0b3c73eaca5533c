package schedule_test

import "testing"

// uglyKinds are lists without a column of kinds, or with one under a heading that nobody
// knows, and what stands in for kinds in them.
func uglyKinds() []ugly {
	one := rect(.6, .4, 1.5)
	const assumed = "no column says what kind of piece each row is"
	return []ugly{
		csvFile("kinds-none.csv", "Duct schedule,,,\nMark,Size (mm),Length (mm),Qty\nD1,600x400,1500,4\nD2,Ø315,3000,1\n", 2, 0, 0, 4*one+round(.315, 3), "", assumed),
		csvFile("kinds-none-no-length.csv", "Mark,Size (mm),Length (mm)\nD1,600x400,1500\nD2,600x400,1500\nD3,600x400,1500\nD4,600x400,1500\nD5,600x400,1500\nD6,600x400,1500\nD7,600x400,1500\nD8,600x400,1500\nD9,600x400,1500\nD10,600x400,\n",
			9, 0, 1, 9*one, "11:kind", assumed),
		csvFile("kinds-none-many-no-length.csv", "Mark,Size (mm),Length (mm)\nD1,600x400,1500\nD2,600x400,1500\nD3,600x400,\n", 0, 0, 3, 0, "2:kind 3:kind 4:kind"),
		csvFile("kinds-none-in-remarks.csv", "Mark,Size (mm),Length (mm),Remarks\nD1,600x400,1500,\nD2,600x400,900,45° bend\n", 1, 0, 1, rect(.6, .4, 1.5), "3:kind"),
		csvFile("kinds-none-unheaded.csv", "Mark,Size (mm),Length (mm),\nD1,600x400,1500,cut to suit\nD2,600x400,900,reducer to 400\n", 0, 0, 2, 0, "2:kind 3:kind"),
		csvFile("kinds-none-angle.csv", "Mark,Size (mm),Length (mm),Angle\nD1,600x400,1500,\nD2,600x400,900,45\n", 0, 0, 2, 0, "2:kind 3:kind"),
		csvFile("kinds-none-two-sizes.csv", "Mark,Size (mm),Length (mm)\nD1,600x400,1500\nD2,600x400/400x300,500\n", 0, 0, 2, 0, "2:kind 3:kind"),
		csvFile("kinds-none-fittings.csv", "Ductwork and fittings,,\nMark,Size (mm),Length (mm)\nD1,600x400,1500\n", 0, 0, 1, 0, "3:kind"),
		csvFile("kinds-none-grilles.csv", "Grille schedule,,\nMark,Size (mm),Length (mm)\nG1,600x100,1500\n", 0, 0, 1, 0, "3:kind"),
		csvFile("kinds-none-insulated.csv", "Mark,Size (mm),Length (mm),Insulation,Flange,Remarks\nD1,600x400,1500,25,TDF,25 mm insulation\nD2,600x400,1500,25,TDF,hangers at 2 m\n", 2, 0, 0, 2*one, "", assumed),
		csvFile("kinds-none-of-elbows.csv", "Mark,Size (mm),Length (mm),Elbows\nD1,600x400,1500,2\n", 0, 0, 1, 0, "1:Elbows 2:kind"),
		csvFile("kinds-none-below-kinds.csv", "Tag,Kind,Size (mm),Length (mm)\nA,Duct,600x400,1500\nMark,Size (mm),Length (m),Area (m2)\nall,600x400,1.5,3\n", 1, 0, 1, one, "4:kind"),
		csvFile("kinds-unknown-heading.csv", "Pos,Pezzo,Size (mm),Length (mm),Qty\n1,Canale,600x400,1500,4\n2,Fondello,600x400,,1\n", 2, 0, 0, 4*one+.24, "", "column 'Pezzo' is read as kind"),
		csvFile("kinds-no-heading.csv", "Pos,,Size (mm),Length (mm)\n1,Duct,600x400,1500\n2,End cap,600x400,\n", 2, 0, 0, one+.24, "", "column B has no heading and is read as kind"),
		csvFile("kinds-of-neighbours.csv", "Pos,Next fitting,Size (mm),Length (mm)\n1,Bend,600x400,1500\n2,Tee,600x400,1500\n", 0, 0, 2, 0, "2:kind 3:kind"),
		csvFile("kinds-spiral.csv", "Mark,Item,Size,Length\n1,Spiral,\"8\"\"\",\"4'-0\"\"\"\n", 1, 0, 0, round(.2032, 1.2192), "", "column 'Item' is read as kind"),
	}
}

// uglyKindsBooks are workbooks of the same sort.
func uglyKindsBooks(t testing.TB) []ugly {
	one := rect(.6, .4, 1.5)
	b := newBook(t, "Ducts", "By size").rows("Ducts", 1, row("Tag", "Kind", "Size (mm)", "Length (mm)"), row("S1", "Duct", "600x400", 1500)).
		rows("By size", 1, row("Ref", "Size (mm)", "Length (m)"), row("X", "600x400", 1.5))
	out := []ugly{uglyXLSX("kinds-none-on-second-sheet.xlsx", b, 1, 0, 1, one, "By size!2:kind")}
	b = newBook(t, "Level 1", "Level 2").rows("Level 1", 1, row("Ref", "Size (mm)", "Length (mm)"), row("X1", "600x400", 1500)).
		rows("Level 2", 1, row("Ref", "Size (mm)", "Length (mm)"), row("X2", "600x400", 1500))
	return append(out, uglyXLSX("kinds-none-on-two-sheets.xlsx", b, 2, 0, 0, 2*one, "", "rows with a size and a length are read as straights"))
}
