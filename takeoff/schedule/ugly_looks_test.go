package schedule_test

import (
	"math"
	"slices"
	"testing"

	"github.com/xuri/excelize/v2"
)

// uglyLooks are lists as offices print them: pages, forms, things that hang ducts, titles of
// two words in another order.
func uglyLooks() []ugly {
	one := rect(.6, .4, 1.5)
	const heads = "Item,Kind,Width,Height,Length,Qty\n"
	bend := func(d, radius float64) float64 { return math.Pi * d * math.Pi / 2 * radius } // Pappus and Guldin
	return []ugly{
		csvFile("looks-pages.csv", heads+"1,Straight,600,400,1500,2\nDuct list,,,,,Page 2 of 3\n"+heads+"2,Straight,600,400,1500,1\nDuct list,,,,,Page 3 of 3\n"+heads+"3,Straight,600,400,1500,1\n", 3, 0, 0, 4*one, "", "title block"),
		csvFile("looks-pages-de.csv", "Pos;Bauteil;Breite;Höhe;Länge;Stück\n1;Kanal;600;400;1500;2\nStückliste;;;;;Seite 2 von 2\nPos;Bauteil;Breite;Höhe;Länge;Stück\n2;Kanal;600;400;1500;1\n", 2, 0, 0, 3*one, "", "title block"),
		csvFile("looks-pages-existing.csv", heads+"1,Straight,600,400,1500,2\nExisting ducts,,,,,Page 2 of 2\n"+heads+"2,Straight,600,400,1500,1\n", 2, 0, 1, 3*one, "3:Qty 3:kind"),
		csvFile("looks-rods.csv", "Item,Kind,Width,Height,Length,Qty\n1,Straight,600,400,1500,2\n2,Threaded bar M8,,,,12\n3,Mineral wool 30 mm,,,,4\n4,Studding,,,,4\n5,Mineral plate,,,,4\n", 1, 3, 1, 2*one, "6:kind", "no ductwork left out"),
		csvFile("looks-rods-de.csv", "Pos;Bauteil;Breite;Höhe;Länge;Stück\n1;Kanal;600;400;1500;2\n2;Gewindestange M8;;;;12\n3;Mineralwolle-Dämmung 30 mm;;;;4\n4;Zuluftgitter 400x200;;;;4\n", 1, 3, 0, 2*one, ""),
		csvFile("looks-rods-nl.csv", "Pos;Onderdeel;Breedte;Hoogte;Lengte;Aantal\n1;Kanaal;600;400;1500;2\n2;Draadeind M8;;;;12\n3;Isolatie minerale wol 30 mm;;;;4\n4;Toevoerrooster 400x200;;;;4\n", 1, 3, 0, 2*one, ""),
		csvFile("looks-form.csv", heads+"1,Straight,600,400,1500,2\nChecked by,,____________,,,\nDate,,____________,,,\n", 1, 0, 0, 2*one, "", "remarks among the rows"),
		csvFile("looks-form-it.csv", "N.;Descrizione;Larghezza (mm);Altezza (mm);Lunghezza (mm);Quantità\n1;Canale;600;400;1500;2\nControllato da;;;;________;\nData;;;;________;\n", 1, 0, 0, 2*one, "", "remarks among the rows"),
		csvFile("looks-form-empty-cell.csv", heads+"1,Straight,600,400,1500,2\n2,Straight,600,____,1500,1\n", 1, 0, 1, 2*one, "3:height_mm"),
		csvFile("looks-title-sv.csv", "Rektangulära kanaler raka\nLittera;Bredd (mm);Höjd (mm);Längd (mm);Antal\nR01;600;400;1500;2\nR02;600;400;1500;1\n", 2, 0, 0, 3*one, "", "from 'Rektangulära kanaler raka'"),
		csvFile("looks-title-it.csv", "Canali circolari dritti\nSigla;Diametro (mm);Lunghezza (mm);Quantità\nC01;250;3000;2\n", 1, 0, 0, 2*round(.25, 3), "", "from 'Canali circolari dritti'"),
		csvFile("looks-title-bends.csv", "Canali rettangolari curve\nSigla;Larghezza (mm);Altezza (mm);Lunghezza (mm);Quantità\nR01;600;400;1500;2\n", 0, 0, 1, 0, "3:kind"),
		csvFile("looks-title-turns.csv", "Rectangular ducts\nTag,Width (mm),Height (mm),Length (mm),Angle,Qty\n1,600,400,1500,,2\n2,600,400,,90,1\n3,600,400,500,45,1\n4,600,400,1500,0,1\n", 2, 0, 2, 3*one, "4:kind 5:kind"),
		csvFile("looks-title-turns-fr.csv", "Gaines rectangulaires\nRepère;Largeur (mm);Hauteur (mm);Longueur (mm);Largeur 2;Quantité\n1;600;400;1500;;2\n2;600;400;500;300;1\n", 1, 0, 1, 2*one, "4:kind"),
		csvFile("looks-radii-fr.csv", "Repère;Désignation;Largeur (mm);Hauteur (mm);Diamètre (mm);Longueur (mm);Angle (°);Rayon intérieur (mm);Rayon (mm);Quantité\nA;Gaine;600;400;;1500;;;;1\nB;Coude embouti;;;200;;90;;200;2\n", 2, 0, 0, one+2*bend(.2, .2), "", "column 'Rayon (mm)' is read as radius_mm"),
		csvFile("looks-radius-alone-fr.csv", "Repère;Désignation;Diamètre (mm);Longueur (mm);Angle (°);Rayon (mm);Quantité\nA;Gaine ronde;200;1500;;;1\nB;Coude embouti;200;;90;200;2\n", 1, 0, 1, round(.2, 1.5), "1:Rayon (mm) 3:radius_mm"),
	}
}

// uglyThird are descriptions with three figures, of which the last is the length in most.
func uglyThird() []ugly {
	const heads = "Tag;Kind;Quantité\n"
	three := "2;Gaine 600x400x1500;1\n3;Gaine 500x300x1200;2\n4;Gaine 400x300x900;1\n"
	area := rect(.6, .4, 1.5) + 2*rect(.5, .3, 1.2) + rect(.4, .3, .9)
	return []ugly{
		csvFile("looks-third-is-length.csv", heads+"1;Gaine 1200x350x1180;5\n"+three, 4, 0, 0, area+5*rect(1.2, .35, 1.18), "", "the third of three figures is read as the length"),
		csvFile("looks-third-of-few.csv", heads+"1;Gaine 1200x350x1180;5\n2;Gaine 600x400x1500;1\n3;Gaine 400x300x900;1\n", 2, 0, 1, rect(.6, .4, 1.5)+rect(.4, .3, .9), "2:kind"),
		csvFile("looks-first-is-length.csv", heads+"1;Gaine 1500x600x400;1\n2;Gaine 1200x500x300;1\n"+three, 3, 0, 2, area, "2:kind 3:kind"),
		csvFile("looks-third-is-thin.csv", heads+"1;Gaine 1200x350x30;5\n"+three, 3, 0, 1, area, "2:kind"),
	}
}

// uglyLastRow are lists whose last row may be the total of the others.
func uglyLastRow() []ugly {
	const heads = "Tag,Kind,Width,Height,Length,Qty\n"
	abc := "A,Straight,600,400,1500,2\nB,Straight,500,300,1200,1\nC,Straight,400,300,900,3\n"
	area := 2*rect(.6, .4, 1.5) + rect(.5, .3, 1.2) + 3*rect(.4, .3, .9)
	more := "D,Straight,600,400,1500,1\nE,Straight,600,400,1100,1\nF,Straight,600,400,800,1\n"
	all := area + rect(.6, .4, 3.4)
	return []ugly{
		csvFile("looks-total-made.csv", heads+abc+",Straight,800,400,6900,1\n", 4, 0, 0, area+rect(.8, .4, 6.9), "5:length_mm"),
		csvFile("looks-total-of-each.csv", heads+abc+",Straight,800,400,3600,\n", 3, 0, 1, area, "5:quantity 5:length_mm"),
		csvFile("looks-total-tagged.csv", heads+abc+more+"G,Straight,800,400,10300,1\n", 7, 0, 0, all+rect(.8, .4, 10.3), "8:length_mm"),
		csvFile("looks-no-total-tagged.csv", heads+abc+"D,Straight,800,400,6900,1\n", 4, 0, 0, area+rect(.8, .4, 6.9), ""),
		csvFile("looks-no-total-several.csv", heads+abc+",Straight,800,400,3600,2\n", 4, 0, 0, area+2*rect(.8, .4, 3.6), ""),
		csvFile("looks-no-total-unequal.csv", heads+abc+",Straight,800,400,6910,1\n", 4, 0, 0, area+rect(.8, .4, 6.91), ""),
		csvFile("looks-no-total-few.csv", heads+"A,Straight,600,400,1500,1\nB,Straight,600,400,1500,1\n,Straight,600,400,3000,1\n", 3, 0, 0, rect(.6, .4, 6), ""),
		csvFile("looks-no-total-untagged.csv", "Kind,Width,Height,Length\nStraight,600,400,1000\nStraight,600,400,1000\nStraight,600,400,1000\nStraight,600,400,3000\n", 4, 0, 0, rect(.6, .4, 6), ""),
	}
}

// uglyLooksBooks are workbooks that say by looks what their rows are, and ordinary ones with
// the same looks.
func uglyLooksBooks(t testing.TB) []ugly {
	return slices.Concat(uglyHidden(t), uglyColours(t), uglyPrinted(t), uglyRevised(t))
}

// hide makes a book of rows of which some are hidden.
func hide(t testing.TB, heads []any, rows [][]any, hidden ...int) *book {
	b := newBook(t, "Ducts").rows("Ducts", 1, heads).rows("Ducts", 2, rows...)
	for _, n := range hidden {
		b.do(b.file.SetRowVisible("Ducts", n, false))
	}
	return b
}

// uglyHidden are hidden and grouped rows, and sums by formulas.
func uglyHidden(t testing.TB) (out []ugly) {
	one := rect(.6, .4, 1)
	a := func(tag string, width int) []any { return row(tag, "straight", width, 400, 1000) }
	five := [][]any{a("A", 600), a("B", 500), a("B", 600), a("C", 600), a("D", 600)}
	out = append(out, uglyXLSX("looks-hidden-older.xlsx", hide(t, bookHead, five, 3), 5, 0, 0, 4*one+rect(.5, .4, 1), "Ducts!3:tag", "hidden and read all the same: row 3"))
	var runs, systems [][]any
	for i, tag := range []string{"R1", "R1", "R1", "R2", "R2", "R2", "R2"} {
		runs = append(runs, row(tag, "straight", 600, 400, 1000+100*i))
	}
	out = append(out, uglyXLSX("looks-hidden-runs.xlsx", hide(t, bookHead, runs, 3), 7, 0, 0, rect(.6, .4, 9.1), "", "hidden and read all the same: row 3"))
	heads := row("System", "Tag", "Kind", "Width (mm)", "Height (mm)", "Length (mm)")
	for i, tag := range []string{"1", "2", "3", "4", "5", "6", "1", "2"} {
		systems = append(systems, row([]string{"Supply", "Extract"}[i/6], tag, "straight", 600, 400, 1000+100*i))
	}
	out = append(out, uglyXLSX("looks-hidden-system.xlsx", hide(t, heads, systems, 8, 9), 8, 0, 0, rect(.6, .4, 10.8), "", "hidden and read all the same: rows 8 to 9"))

	for _, x := range []struct{ name, title, faults string }{{"looks-hidden-block.xlsx", "Ducts of block A", "Ducts!4:"}, {"looks-hidden-blocks.xlsx", "Ducts of the school", ""}} {
		b := newBook(t, "Ducts").rows("Ducts", 1, row(x.title), append(row(bookHead...), "Where"), append(a("1", 600), "block A"), append(a("2", 600), "block B"), append(a("3", 600), "Block A"))
		b.rows("Ducts", 5, append(a("3", 600), "block A"))
		b.do(b.file.SetRowVisible("Ducts", 4, false))
		out = append(out, uglyXLSX(x.name, b, 3, 0, 0, 3*one, x.faults, "hidden and read all the same: row 4"))
	}

	long := func(tag string, length int) []any { return row(tag, "straight", 600, 400, length) }
	for _, x := range []struct {
		name, faults string
		rows         [][]any
		from, to     int // of the group
		area         float64
	}{
		{"looks-group-above.xlsx", "Ducts!2:", [][]any{long("R1", 3000), long("A1", 1000), long("A2", 2000), long("B", 700)}, 3, 4, 6.7},
		{"looks-group-below.xlsx", "Ducts!4:", [][]any{long("A1", 1000), long("A2", 2000), long("A", 3000), long("B", 700)}, 2, 3, 6.7},
		{"looks-group-at-end.xlsx", "Ducts!3:", [][]any{long("B", 700), long("R1", 3000), long("A1", 1000), long("A2", 2000)}, 4, 5, 6.7},
		{"looks-group-plain.xlsx", "", [][]any{long("A", 2500), long("A1", 1000), long("A2", 2000), long("B", 700)}, 3, 4, 6.2},
		{"looks-group-of-one.xlsx", "", [][]any{long("A", 1000), long("A1", 1000), long("B", 700)}, 3, 3, 2.7},
	} {
		b := newBook(t, "Ducts").rows("Ducts", 1, bookHead).rows("Ducts", 2, x.rows...)
		for n := x.from; n <= x.to; n++ {
			b.do(b.file.SetRowOutlineLevel("Ducts", n, 1))
		}
		out = append(out, uglyXLSX(x.name, b, len(x.rows), 0, 0, rect(.6, .4, x.area), x.faults))
	}

	for _, x := range []struct {
		name, formula, faults string
		refused               int
	}{{"looks-sum-of-column.xlsx", "SUM(E2:E3)", "Ducts!4:Length (mm)", 1}, {"looks-sum-without-kind.xlsx", "SUM(E2:E3)", "Ducts!4:kind", 1}, {"looks-sum-of-row.xlsx", "SUM(F4:G4)", "", 0}, {"looks-sum-of-cells.xlsx", "SUM(E2,500)", "", 0}} {
		b := newBook(t, "Ducts").rows("Ducts", 1, bookHead, a("A", 600), a("B", 600), long("C", 2000))
		b.do(b.file.SetCellFormula("Ducts", "E4", x.formula))
		if x.faults == "Ducts!4:kind" {
			b.do(b.file.SetCellStr("Ducts", "B4", ""))
		}
		out = append(out, uglyXLSX(x.name, b, 3-x.refused, 0, x.refused, float64(4-2*x.refused)*one, x.faults))
	}
	return out
}

// uglyColours are rows in colours, with and without a line that says what they mean.
func uglyColours(t testing.TB) (out []ugly) {
	one := rect(.6, .4, 1)
	paint := func(b *book, font, fill, sheet, from, to string) {
		s := &excelize.Style{}
		if font != "" {
			s.Font = &excelize.Font{Color: font}
		}
		if fill != "" {
			s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{fill}}
		}
		id, err := b.file.NewStyle(s)
		b.do(err)
		b.do(b.file.SetCellStyle(sheet, from, to, id))
	}
	for _, x := range []struct{ name, font, fill, line, own, faults string }{
		{"looks-grey-existing.xlsx", "808080", "", "Text in grey: existing", "", "Ducts!3:"},
		{"looks-grey-in-grey.xlsx", "999999", "", "existing", "999999", "Ducts!3:"},
		{"looks-yellow-omitted.xlsx", "", "FFFF00", "Yellow = omitted", "", "Ducts!3:"},
		{"looks-rot-entfaellt.xlsx", "C00000", "", "rote Zeilen: entfällt", "", "Ducts!3:"},
		{"looks-grey-insulated.xlsx", "808080", "", "Text in grey: insulated", "", ""},
		{"looks-grey-no-legend.xlsx", "808080", "", "All ducts galvanised", "", ""},
		{"looks-blue-existing.xlsx", "0000FF", "", "Text in grey: existing", "", ""},
		{"looks-black-existing.xlsx", "", "", "Text in grey: existing", "", ""},
		{"looks-white-on-white.xlsx", "FFFFFF", "", "Notes", "", "Ducts!3:"},
		{"looks-white-on-blue.xlsx", "FFFFFF", "1F4E79", "Notes", "", ""},
	} {
		b := newBook(t, "Ducts", "Notes").rows("Ducts", 1, bookHead, row("A", "straight", 600, 400, 1000), row("B", "straight", 600, 400, 1000)).rows("Notes", 1, row("Notes"), row("Sizes are of the metal."), row(x.line))
		paint(b, "", "D9E1F2", "Ducts", "A1", "E1")
		paint(b, x.font, x.fill, "Ducts", "A3", "E3")
		if x.own != "" {
			paint(b, x.own, "", "Notes", "A3", "A3")
		}
		u := uglyXLSX(x.name, b, 2, 0, 0, 2*one, x.faults)
		if x.line == "Notes" && x.faults != "" {
			u.used, u.refused, u.area = 1, 1, one
		}
		out = append(out, u)
	}
	return out
}

// uglyPrinted are workbooks with something at the head or the foot of each page.
func uglyPrinted(t testing.TB) (out []ugly) {
	bare := row("Tag", "Kind", "Width", "Height", "Length")
	for _, x := range []struct {
		name, printed string
		heads         []any
		in            float64 // m of the unit that has to be read
		notes         []string
	}{
		{"looks-page-in-cm.xlsx", "&L&8Job 12&CAlle Maße in cm&RSeite &P von &N", bare, .01, []string{"'Alle Maße in cm' printed on each page gives the unit of 'Width', 'Height', 'Length'"}},
		{"looks-page-in-mm.xlsx", "&CAll dimensions in mm", row("Tag", "Kind", "Width (cm)", "Height (cm)", "Length (cm)"), .01, nil},
		{"looks-page-numbers.xlsx", "&CDuct list&RPage &P of &N", row("Tag", "Kind", "Width (cm)", "Height (cm)", "Length (cm)"), .01, nil},
		{"looks-page-insulation.xlsx", "&CInsulation thickness in cm", row("Tag", "Kind", "Width", "Height", "Length (cm)"), 0, nil},
	} {
		b := newBook(t, "Ducts").rows("Ducts", 1, x.heads, row("A", "straight", 60, 40, 100))
		area := rect(60*x.in, 40*x.in, 100*x.in)
		if x.in == 0 {
			b.rows("Ducts", 2, row("A", "straight", 600, 400, 100))
			area = rect(.6, .4, 1)
		}
		b.do(b.file.MergeCell("Ducts", "H1", "H4"))
		b.do(b.file.SetHeaderFooter("Ducts", &excelize.HeaderFooterOptions{OddHeader: x.printed}))
		out = append(out, uglyXLSX(x.name, b, 1, 0, 0, area, "", x.notes...))
	}
	b := newBook(t, "Ducts").rows("Ducts", 1, bare, row("A", "straight", 60, 40, 100), row("B", "straight", 60, 40, "long"))
	b.do(b.file.SetHeaderFooter("Ducts", &excelize.HeaderFooterOptions{OddFooter: "Sizes in cm, lengths in m"}))
	b.rows("Ducts", 2, row("A", "straight", 60, 40, 1))
	return append(out, uglyXLSX("looks-page-refused.xlsx", b, 1, 0, 1, rect(.6, .4, 1), "Ducts!3:Length", "printed on each page gives the units of 'Width' in cm, 'Height' in cm, 'Length' in m"))
}

// uglyRevised are sheets of which one is an earlier revision of another, or gives its lengths by
// size.
func uglyRevised(t testing.TB) (out []ugly) {
	one := rect(.6, .4, 1)
	sheet := func(b *book, name string, length int, tags ...string) {
		b.rows(name, 1, bookHead)
		for i, tag := range tags {
			b.rows(name, 2+i, row(tag, "straight", 600, 400, length))
		}
	}
	for _, x := range []struct{ name, first, second, line, faults string }{
		{"looks-revised.xlsx", "L2 A", "L2 B", "Rev B 03/26: reissued", "L2 A!1:"},
		{"looks-revised-earlier.xlsx", "L2 A", "L2 B", "Rev A: first issue", "L2 A!1:"},
		{"looks-blocks.xlsx", "L2 A", "L2 B", "Checked by: J. Marn", ""},
		{"looks-blocks-revised.xlsx", "L2 A", "L2 B", "Rev C 03/26: reissued", ""},
		{"looks-floors-revised.xlsx", "Level 1", "Roof B", "Rev B 03/26: reissued", ""},
	} {
		b := newBook(t, x.first, x.second)
		sheet(b, x.first, 1000, "A", "B", "C")
		sheet(b, x.second, 1500, "A", "B", "C", "D")
		where, at := x.second, 8
		if x.name == "looks-revised-earlier.xlsx" {
			where, at = x.first, 7
		}
		b.rows(where, at, row("Notes"), row(x.line))
		out = append(out, uglyXLSX(x.name, b, 7, 0, 0, 9*one, x.faults))
	}

	heads := row("Tag", "Kind", "Width (mm)", "Height (mm)", "Length (mm)", "Qty")
	list := [][]any{row("A", "straight", 600, 400, 1500, 2), row("B", "straight", 500, 300, 1200, 1), row("C", "straight", 600, 400, 500, 2), row("D", "straight", 400, 300, 900, 3)}
	area := 2*rect(.6, .4, 2) + rect(.5, .3, 1.2) + 3*rect(.4, .3, .9)
	for _, x := range []struct {
		name, sheet, faults string
		last                float64
	}{{"looks-pivot.xlsx", "By size", "By size!1:", 2.7}, {"looks-pivot-of-others.xlsx", "By size", "", 2.9}, {"looks-pivot-floor.xlsx", "Level 2", "", 2.7}} {
		first := "Ducts"
		if x.sheet == "Level 2" {
			first = "Level 1"
		}
		b := newBook(t, first, x.sheet).rows(first, 1, heads).rows(first, 2, list...)
		b.rows(x.sheet, 1, row("Kind", "Width (mm)", "Height (mm)", "Total length (m)"), row("straight", 400, 300, x.last), row("straight", 500, 300, 1.2), row("straight", 600, 400, 4))
		out = append(out, uglyXLSX(x.name, b, 7, 0, 0, area+rect(.4, .3, x.last)+rect(.5, .3, 1.2)+rect(.6, .4, 4), x.faults))
	}
	return out
}
