package schedule_test

// uglyTraps are lists in which a column, the order of the rows or a mark says that rows don't
// count, and ordinary lists that look like them.
func uglyTraps() []ugly {
	const heads = "Tag,Kind,Size,Length (mm),Qty"
	a, b, c := rect(.6, .4, 1.5), rect(.5, .4, 1.5), rect(.4, .3, 1.2)
	const one, two, three = "1,Straight,600x400,1500,2", "2,Straight,500x400,1500,1", "3,Straight,400x300,1200,1"
	return []ugly{
		csvFile("answers-price.csv", heads+",In our price\n"+one+",Y\n"+two+",N\n"+three+",Y\n", 2, 0, 1, 2*a+c, "3:In our price"),
		csvFile("answers-dutch.csv", "Nr;Soort;Breedte (mm);Hoogte (mm);Lengte (mm);Aantal;Meenemen\n1;recht kanaal;600;400;1500;2;ja\n2;recht kanaal;500;400;1500;1;nee\n3;recht kanaal;400;300;1200;1;ja\n", 2, 0, 1, 2*a+c, "3:Meenemen"),
		csvFile("answers-ticks.csv", heads+",OK?\n"+one+",✔\n"+two+",✘\n"+three+",x\n", 1, 0, 2, 2*a, "3:OK? 4:OK?"),
		csvFile("answers-nobody-says-yes.csv", heads+",Ours\n"+one+",\n"+two+",no\n"+three+",\n", 2, 0, 1, 2*a+c, "3:Ours"),
		csvFile("answers-unnamed.csv", "Tag,Kind,Size,Length (mm),Qty,\n"+one+",1\n"+two+",0\n"+three+",1\n", 2, 0, 1, 2*a+c, "3:column F"),
		csvFile("answers-ordinary.csv", heads+",Insulated,Access door,Painted?,Coupe-feu,Geliefert,Vanes,Stiffeners,Riser,Screws,Weather louvre,Comment\n"+one+",Y,n,✔,oui,ja,x,0,Y,1,N,ok\n"+two+",N,n,✘,non,nein,,1,N,0,Y,no\n"+three+",N,y,✘,non,ja,,0,N,1,N,\n", 3, 0, 0, 2*a+b+c, ""),
		csvFile("struck-by-strokes.csv", "Tag,Kind,Size,Length (mm),Qty,System\n"+one+",S1\nD\u03362\u0336,straight,500x400,1500,1,S1\nD3,s\u0336t\u0336r\u0336a\u0336i\u0336g\u0336h\u0336t\u0336,500x400,1500,1,S1\nD4,straight,500x400,1500,1,S\u03382\u0338\nD5,straight,500\u0336x\u0336400,1500,1,S1\nDé\u0301-6,straight,500x400,1500,1,Zuluft Küche\u0308\n",
			2, 0, 4, 2*a+b, "3:tag 4:kind 5:system 6:Size"),
		csvFile("struck-by-signs.csv", heads+"\n"+one+"\n~2~,straight,500x400,1500,1\n-D3-,straight,500x400,1500,1\n~~D4~~,straight,500x400,1500,1\n-,straight,500x400,1500,1\n-06,straight,500x400,1500,1\nA-7-b,straight,500x400,1500,1\n", 4, 0, 3, 2*a+3*b, "3:tag 4:tag 5:tag"),
		csvFile("revisions-of-one-tag.csv", "Rev,"+heads+"\nA,"+one+"\nA,"+two+"\nB,2,straight,500x300,1500,4\nA,"+three+"\n", 3, 0, 1, 2*a+b+c, "4:tag"),
		csvFile("revisions-in-german.csv", "Index;Pos;Bauteil;Breite (mm);Höhe (mm);Länge (mm);Stück\n;1;Kanal gerade;600;400;1500;2\n;2;Kanal gerade;500;400;1500;1\na;2;Kanal gerade;500;300;1500;4\n;3;Kanal gerade;400;300;1200;1\n", 3, 0, 1, 2*a+b+c, "4:tag"),
		csvFile("revisions-of-runs.csv", heads+",Rev\nD1,straight,600x400,1500,2,A\nD1,straight,500x400,1500,1,B\nD1,straight,400x300,1200,1,A\nD2,straight,600x400,1500,2,A\nD2,straight,500x400,1500,1,A\n", 5, 0, 0, 4*a+2*b+c, "", "tags that stand on earlier rows too"),
		csvFile("index-of-rows.csv", "Index,"+heads+"\n1,D1,straight,600x400,1500,2\n2,D2,straight,500x400,1500,1\n3,D2,straight,400x300,1200,1\n", 3, 0, 0, 2*a+b+c, "", "tags that stand on earlier rows too"),
		csvFile("assembly-and-parts.csv", "Level,Part,Kind,Size,Length (mm),Qty\n1,Spool A,straight,600x400,3000,1\n1.1,Spool A left,straight,600x400,1500,1\n1.2,Spool A right,straight,600x400,1500,1\n2,Spool B,straight,400x300,1200,1\n", 3, 0, 1, 2*a+c, "2:tag"),
		csvFile("items-and-parts.csv", heads+"\n1,straight,600x400,3000,2\n1.1,straight,600x400,1500,1\n1.2,straight,600x400,1000,1\n1.3,straight,600x400,500,1\n2,straight,500x400,1500,1\n2.1,straight,500x400,1500,1\n", 5, 0, 1, 2*a+2*b, "2:tag"),
		csvFile("items-put-between.csv", heads+"\n1,straight,600x400,3000,2\n1.1,straight,600x400,1500,1\n1.2,straight,500x400,1500,1\n2,straight,400x300,1200,1\n2.1,straight,400x300,1200,1\n10,straight,600x400,3000,1\n10.5,straight,600x400,1500,1\n11,straight,600x400,1500,1\n", 8, 0, 0, 9*a+b+2*c, ""),
		csvFile("sums-below-a-blank-row.csv", heads+"\n1,straight,600x400,1500,2\n2,straight,600x400,1500,3\n3,straight,500x400,1500,4\n\n,straight,600x400,1500,5\n,straight,500x400,1500,4\n", 3, 0, 2, 5*a+4*b, "6:tag 7:tag"),
		csvFile("sums-in-metres.csv", heads+"\n1,straight,600x400,1500,2\n2,straight,600x400,1000,3\n3,straight,500x400,1500,4\n\n,straight,600x400,6000,1\n,straight,500x400,6000,1\n", 3, 0, 2, 4*a+4*b, "6:tag 7:tag"),
		csvFile("sums-on-top.csv", heads+"\n,straight,600x400,1500,5\n,straight,500x400,1500,4\n\n1,straight,600x400,1500,2\n2,straight,600x400,1500,3\n3,straight,500x400,1500,4\n", 3, 0, 2, 5*a+4*b, "2:tag 3:tag"),
		csvFile("page-again.csv", "Kind,Size,Length (mm),Qty\nstraight,600x400,1500,2\nstraight,500x400,1500,4\nstraight,400x300,1200,1\nstraight,400x300,1500,1\nKind,Size,Length (mm),Qty\nstraight,600x400,1500,2\nstraight,500x400,1500,4\nstraight,400x300,1200,1\nstraight,400x300,1500,1\n", 4, 0, 4, 2*a+4*b+2.25*c, "7:tag 8:tag 9:tag 10:tag"),
		csvFile("floors-alike.csv", "Kind,Size,Length (mm),Qty\nLevel 1\nstraight,600x400,1500,2\nstraight,500x400,1500,4\nstraight,400x300,1200,1\nstraight,400x300,1500,1\nLevel 2\nstraight,600x400,1500,2\nstraight,500x400,1500,4\nstraight,400x300,1200,1\nstraight,400x300,1500,1\n", 8, 0, 0, 2*(2*a+4*b+2.25*c), ""),
		csvFile("risers-alike.csv", "Kind,Size,Length (mm),Qty\nRiser 1\nstraight,600x400,1500,2\nstraight,500x400,1500,4\nstraight,400x300,1200,1\nstraight,400x300,1500,1\nRiser 2\nstraight,600x400,1500,2\nstraight,500x400,1500,4\nstraight,400x300,1200,1\nstraight,400x300,1500,1\n", 8, 0, 0, 2*(2*a+4*b+2.25*c), ""),
		csvFile("sums-to-order.csv", heads+"\n1,straight,600x400,1500,2\n2,straight,600x400,1500,3\n3,straight,500x400,1500,4\nTo order,,,,\n,straight,600x400,1500,5\n,straight,500x400,1500,4\n", 3, 0, 3, 5*a+4*b, "5: 6:tag 7:tag"),
		csvFile("flats-alike.csv", heads+"\n1,straight,600x400,1500,1\n2,straight,600x400,1500,1\n3,straight,500x400,1500,1\n4,straight,400x300,1200,1\n\n5,straight,600x400,1500,2\n6,straight,500x400,1500,1\n7,straight,400x300,1200,1\n", 7, 0, 0, 4*a+2*b+2*c, ""),
		csvFile("answers-of-compass.csv", heads+",Aspect,Lead\n"+one+",N,J\n"+two+",S,N\n"+three+",N,S\n", 3, 0, 0, 2*a+b+c, ""),
		csvFile("runs-alike.csv", heads+"\n1,straight,600x400,1500,2\n2,straight,600x400,1500,3\n3,straight,500x400,1500,4\n\n4,straight,600x400,1500,5\n5,straight,500x400,1500,4\n\n6,straight,600x400,1500,4\n7,straight,600x400,1500,1\n8,straight,500x400,1500,4\n", 8, 0, 0, 15*a+12*b, ""),
		csvFile("signs-above.csv", "Tags with * are the kitchen fitter's,,,,\n"+heads+"\n"+one+"\n2*,straight,500x400,1500,1\n"+three+"\n4,straight*,500x400,1500,1\n", 2, 0, 2, 2*a+c, "4:tag 6:kind"),
		csvFile("signs-below.csv", heads+"\n"+one+"\n2*,straight,500x400,1500,1\n"+three+"\n* gehört zu Los 2,,,,\n", 3, 0, 0, 2*a+b+c, "5:"),
		csvFile("signs-of-qualities.csv", "* = insulated,,,,\n"+heads+"\n"+one+"\n2*,straight,500x400,1500,1\n"+three+"\n*) see drawing 12,,,,\n", 3, 0, 0, 2*a+b+c, ""),
		csvFile("signs-of-nothing.csv", "*** Duct list ***,,,,\nFields with * are required,,,,\n"+heads+"\n"+one+"\n2*,straight,500x400,1500,1\n"+three+"\n", 3, 0, 0, 2*a+b+c, ""),
		csvFile("lengths-from-the-fan.csv", "Distances are from the fan to the far end of each piece,,,\nTag,Kind,Size,Length (mm)\n1,straight,600x400,1500\n2,straight,500x400,3000\n3,straight,400x300,4200\n", 3, 0, 0, a+2*b+3.5*c, "1:"),
		csvFile("lengths-added-up.csv", "Längen kumuliert;;;\nPos;Art;Breite (mm);Höhe (mm);Länge (mm)\n1;Kanal gerade;600;400;1500\n2;Kanal gerade;500;400;3000\n3;Kanal gerade;400;300;4200\n", 3, 0, 0, a+2*b+3.5*c, "1:"),
		csvFile("lengths-of-each.csv", "Distances from the fan are on drawing 3,,,\nTag,Kind,Size,Length (mm)\n1,straight,600x400,1500\n2,straight,500x400,3000\n3,straight,400x300,1200\n", 3, 0, 0, a+2*b+c, ""),
		csvFile("marks-unnamed.csv", ","+heads+"\nx,"+one+"\n,"+two+"\nx,"+three+"\n", 3, 0, 0, 2*a+b+c, "1:column A"),
		csvFile("marks-all-rows.csv", "✓,"+heads+"\n✓,"+one+"\n✓,"+two+"\n✓,"+three+"\n", 3, 0, 0, 2*a+b+c, ""),
		csvFile("boxes.csv", "[ ],"+heads+"\n[x],"+one+"\n[ ],"+two+"\n[x],"+three+"\n", 2, 0, 1, 2*a+c, "3:[ ]"),
		csvFile("include-some.csv", heads+",Include\n"+one+",x\n"+two+",\n"+three+",x\n", 3, 0, 0, 2*a+b+c, "1:Include"),
		csvFile("plus-and-minus.csv", "+/-,"+heads+"\n+,"+one+"\n-,"+two+"\n+,"+three+"\n", 2, 0, 1, 2*a+c, "3:+/-"),
		csvFile("tags-set-apart.csv", heads+"\n"+one+"\n(2),straight,500x400,1500,1\n3,straight,400x300,1200,1\n[4],straight,500x400,1500,1\n#5,straight,500x400,1500,1\n<s>6</s>,straight,500x400,1500,1\n7 (E),straight,400x300,1200,1\n8,straight,400x300,1200,1\n9,straight,400x300,1200,1\n10,straight,400x300,1200,1\n", 6, 0, 4, 2*a+5*c, "3:tag 5:tag 6:tag 7:tag"),
		csvFile("tags-all-in-brackets.csv", heads+"\n(1),straight,600x400,1500,2\n(2),straight,500x400,1500,1\n#3,straight,400x300,1200,1\n4,straight,400x300,1200,1\n", 4, 0, 0, 2*a+b+2*c, ""),
		csvFile("revisions-in-tags.csv", heads+"\n"+one+"\n"+two+"\n2 rev B,straight,500x300,1500,1\nD4 (Rev.1),straight,400x300,1200,1\nREV-1,straight,400x300,1200,1\n3 rev A,straight,400x300,1200,1\n3,straight,400x300,1500,1\n", 5, 0, 2, 2*a+b+2*c+1.25*c, "4:tag 7:tag"),
		csvFile("parts-by-letters.csv", heads+"\nA,straight,600x400,3000,1\nA1,straight,600x400,1500,1\nA2,straight,600x400,1500,1\n7,straight,500x400,3000,1\n7a,straight,500x400,1500,1\n7b,straight,500x400,1500,1\nB-1,straight,500x400,3000,1\nB-1-1,straight,500x400,1500,1\nB-1-2,straight,500x400,1500,1\nD1,straight,500x400,3000,1\nD10,straight,500x400,1500,1\nD11,straight,500x400,1500,1\n", 9, 0, 3, 2*a+8*b, "2:tag 5:tag 8:tag"),
		csvFile("columns-that-change.csv", heads+",Change\n"+one+",\n"+two+",-1\n"+three+",\n4,straight,500x400,1500,1,+2\n5,straight,500x400,1500,1,moved\n6,straight,500x400,1500,1,3\n", 4, 0, 2, 2*a+2*b+c, "3:Change 5:Change"),
		csvFile("columns-that-replace.csv", heads+",Replaces,Both sides,Optional,Date deleted\n"+one+",,,,\n"+two+",1,,,\n"+three+",-,no,,\n4,straight,500x400,1500,1,,Y,,\n5,straight,500x400,1500,1,,,Y,\n6,straight,500x400,1500,1,,,,12.03.2026\n7,straight,500x400,1500,1,,,,\n", 3, 0, 4, 2*a+b+c, "3:Replaces 5:Both sides 6:Optional 7:Date deleted"),
		csvFile("columns-that-change-nothing.csv", heads+",Double skin,Option code,Date on site,Floor level,Extra works ref\n"+one+",Y,B,12.03.2026,+3.20,V2\n"+two+",N,C,13.03.2026,-1.50,\n"+three+",Y,,14.03.2026,0,\n", 3, 0, 0, 2*a+b+c, ""),
		csvFile("answers-none.csv", heads+",Crane,Gang,Hooks\n"+one+",N,A,1\n"+two+",N,B,0\n"+three+",N,A,2\n", 3, 0, 0, 2*a+b+c, ""),
	}
}
