package schedule_test

// uglyRemarks are sentences in remarks, tags, statuses and lines that say more of a row than
// its cells do, and such that say nothing of it, in seven languages.
func uglyRemarks() []ugly {
	const heads = "Item,Kind,Size,Length,Qty,Remarks\n"
	one := rect(.6, .4, 1.5)
	lines := func(remarks ...string) (text string) {
		for i, r := range remarks {
			text += string(rune('A'+i)) + "1,Straight,600x400,1500,1,\"" + r + "\"\n"
		}
		return heads + text
	}
	return []ugly{
		csvFile("sentences-that-doubt.csv", lines("the builder keeps this one", "gone since the fire", "make it 50 wider", "hat sich erledigt", "macht nun der Nachbarbetrieb, nicht wir", "on l'a laissé tomber", "la même gaine côté jardin",
			"hoeft niet meer", "staat al bij A1", "strunta i raden", "en likadan till i schakt 2", "al final no va", "esta línea sobra", "questa riga è doppione", "alla fine non si fa"), 0, 0, 15, 0,
			"2:Remarks 3:Remarks 4:Remarks 5:Remarks 6:Remarks 7:Remarks 8:Remarks 9:Remarks 10:Remarks 11:Remarks 12:Remarks 13:Remarks 14:Remarks 15:Remarks 16:Remarks"),
		csvFile("sentences-that-say-nothing.csv", lines("not insulated", "screw it from below", "bracket isn't fixed yet", "longer bolts at the rear flange", "Aufhängung hat der Polier geprüft", "nicht sichtbar", "trappe pas encore posée", "niet geïsoleerd", "luik zit aan de gangzijde",
			"inte isolerad", "los soportes ya están puestos", "non coibentato", "zinc spray on the seams"), 13, 0, 0, 13*one, "", "remarks with words that no list here knows"),
		csvFile("remark-settled-by-scope.csv", "Item,Kind,Size,Length,Scope,Remarks\nA1,Straight,600x400,1500,in,never got painted by us\nA2,Straight,600x400,1500,out,never got built\nA3,Straight,600x400,1500,,never got built\n", 1, 1, 1, one, "4:Remarks"),
		csvFile("tag-in-words.csv", heads+"A1,Straight,600x400,1500,1,\nA2 (never built),Straight,600x400,1500,1,\nA3 riser stub,Straight,600x400,1500,1,\n", 2, 0, 1, 2*one, "3:tag"),
		csvFile("status-in-words.csv", "Item,Kind,Size,Length,Status\nA1,Straight,600x400,1500,issued\nA2,Straight,600x400,1500,gestorben\nA3,Straight,600x400,1500,geschrapt\nA4,Straight,600x400,1500,approved\n", 2, 0, 2, 2*one, "3:Status 4:Status"),
		csvFile("line-on-an-item.csv", heads+"A1,Straight,600x400,1500,1,\n7,Straight,600x400,1500,1,\n,,,,,\nNote: item 7 is already in the other job,,,,,\n", 2, 0, 0, 2*one, "5:"),
		csvFile("title-of-four-alike.csv", "Riser stubs - one floor shown and there are four alike\n"+heads+"A1,Straight,600x400,1500,1,\n", 1, 0, 0, one, "1:"),
		csvFile("title-of-a-star.csv", "Tags with * are somebody else's\n"+heads+"A1,Straight,600x400,1500,1,\nA2*,Straight,600x400,1500,1,\n", 1, 0, 1, one, "4:tag"),
		csvFile("lines-that-say-nothing.csv", "Checked by two of us on 3 May\n"+heads+"A1,Straight,600x400,1500,1,\n,,,,,\nNote: hangers for item 1 are in the blue crate,,,,,\n", 1, 0, 0, one, ""),
		csvFile("tag-of-two-with-dashes.csv", "Tag,Width,Height,Length,Qty\nD-01,600,400,1500,1\nD-02 & D-03,600,400,1500,1\nD-04/05,600,400,1500,1\n", 2, 0, 1, 2*one, "3:tag"),
		csvFile("revisions-all-there.csv", "Tag,Kind,Size,Length,Rev\nR1,Straight,600x400,1500,A\nR2,Straight,700x400,1500,A\nR2,Straight,800x400,1500,B\nR2,Straight,900x400,1500,C\nR3,Straight,600x400,1500,A\n", 3, 0, 2, 2*one+rect(.7, .4, 1.5), "4:tag 5:tag"),
		csvFile("variants-of-one-tag.csv", "Tag,Kind,Size,Length,Variant\nV1,Straight,600x400,1500,\nV2,Straight,800x300,1500,flat route\nV2,Straight,500x500,1500,deep route\nV3,Straight,600x400,1500,\n", 3, 0, 1, 2*one+rect(.8, .3, 1.5), "4:tag"),
		csvFile("part-of-its-run.csv", "Level,Kind,Size,Length,Qty\n1,Straight,600x400,6000,1\n1.1,Straight,600x400,1500,4\n2,Straight,600x400,1500,1\n2.1,Straight,600x400,1500,1\n", 3, 0, 1, 6*one, "2:tag"),
		csvFile("left-over-in-store.csv", heads+"A1,Straight,600x400,1500,1,\n,,,,,\nLeft over in our store after the job:,,,,,\n"+heads+"A2,Straight,600x400,1500,1,\n", 1, 0, 1, one, "4: 6:"),
		csvFile("states-no.csv", "Tag,Kind,Size,Length,Werkseitig abgedichtet,In werkplaats gekit,Brandklassad,Wire-brushed,Meegeteld\nA1,Straight,600x400,1500,ja,ja,ja,yes,ja\nA2,Straight,600x400,1500,nein,nee,nej,no,ja\nA3,Straight,600x400,1500,ja,ja,ja,yes,nee\n", 2, 0, 1, 2*one, "4:Meegeteld"),
		csvFile("received-no.csv", "Tag,Kind,Size,Length,Reçu,Gedämmt,Tätad i verkstad\nA1,Straight,600x400,1500,oui,ja,ja\nA2,Straight,600x400,1500,non,nein,nej\nA3,Straight,600x400,1500,oui,ja,ja\n", 3, 0, 0, 3*one, ""),
	}
}
