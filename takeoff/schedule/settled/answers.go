package settled

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/answered"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/described"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/mapping"
	"blankoff/takeoff/schedule/wording"
)

// seeAnswers finds the columns that aren't used and whose cells answer yes or no, under
// headings that don't ask what a piece is like: a row that says no may not count.
func (t *Reading) seeAnswers() {
	var b columns.Beneath
	for i := range t.Specs {
		s := &t.Specs[i]
		if s.Used || s.Verdict != headings.Unknown && s.Verdict != headings.Blank || strings.HasPrefix(s.Typed, columns.AddedMark) {
			continue
		}
		if b.Columns == nil {
			b = t.Peek()
		}
		cells := b.Columns[i]
		if t.seeParties(s, cells); t.ofQuality(s.Typed) {
			continue
		}
		empty := b.Rows - len(cells)
		taking := s.Verdict == headings.Blank || answered.OfTaking(s.Typed)
		s.Answers, s.Ticked = answered.Answers(cells, empty, taking)
		if s.Answers && !taking && celltext.IsFigure(cells[0]) { // a number of something
			s.Answers = false
		}
		if t.OfRefused() {
			t.refusedAnswers(s, cells)
			continue
		}
		if answered.PlusMinus(s.Typed) {
			s.Answers = len(cells) > 0 && b.Share(i, func(cell string) bool { return cell == "+" }) == 1
		} else if !s.Fixed && empty > 0 && len(cells) > 0 && b.Share(i, answered.Marks) == 1 {
			t.askMarks(s, mapping.Letter(i), cells[0])
		}
	}
}

// seeParties finds out whether the cells of a column say who supplies each row, or which trade
// does: most of them are ours, and others are asked about.
func (t *Reading) seeParties(s *columns.Spec, cells []string) {
	s.Parties = ""
	share := func(so func(string) bool) bool {
		n := 0
		for _, cell := range cells {
			if so(cell) {
				n++
			}
		}
		return n > 0 && 2*n >= len(cells)
	}
	refused := t.OfRefused() && len(cells) > 0
	switch {
	case answered.OfSupply(s.Typed) && (refused || !share(answered.Theirs)):
		s.Parties = "supplied"
	case described.OfNeighbours(s.Typed):
	case share(answered.OfTrade) || refused && share(answered.OfOtherTrade):
		s.Parties = "trade"
	}
}

// ofQuality reports a heading that asks what a piece is like, what is on it or where it is.
func (t *Reading) ofQuality(typed string) bool {
	return answered.OfQuality(typed) || t.Lex.Apart(typed) || t.Lex.Part(typed) || answered.OfState(typed) || !answered.OfTaking(typed) && t.Lex.Harmless(headings.Tokens(typed))
}

// refusedAnswers takes the cells of a file of refused rows for answers where all of them say no
// or yes: those of the others are missing.
func (t *Reading) refusedAnswers(s *columns.Spec, cells []string) {
	said := func(cell string) bool { return answered.SaysNo(cell, true) || answered.AnswerOf(cell) == answered.Yes }
	no := slices.ContainsFunc(cells, func(cell string) bool { return answered.SaysNo(cell, false) })
	s.Ticked = slices.ContainsFunc(cells, func(cell string) bool { return cell[0] >= 0x80 && answered.SaysNo(cell, false) }) // a cross in another form
	s.Answers = s.Answers || answered.PlusMinus(s.Typed) || no && !slices.ContainsFunc(cells, func(cell string) bool { return !said(cell) })
}

// askMarks asks about a column under no word with marks on some rows and none on others, and
// about one of what is included that says so of some rows and nothing of others.
func (t *Reading) askMarks(s *columns.Spec, letter, cell string) {
	said := celltext.Shorten(cell)
	switch {
	case t.Lex.Keeps(s.Typed) == "kept":
		t.Found.Faults = append(t.Found.Faults, t.Place.Fault(s.Typed, said, "yes or no on each row",
			fmt.Sprintf("'%s' says '%s' on some rows and nothing on others, which may not count; write no there, and out under scope, or take the column out", s.Typed, said)))
	case len(headings.Tokens(s.Typed)) == 0 && answered.AnswerOf(cell) != answered.One:
		t.Found.Faults = append(t.Found.Faults, t.Place.Fault("column "+letter, said, "a heading",
			fmt.Sprintf("column %s has no heading and '%s' on some rows, so these or the others may not count; take those out, or write out under scope, and take the column out", letter, said)))
	}
}

// seeTags finds out whether most tags are nothing but names, so that one in brackets is set
// apart.
func (t *Reading) seeTags() {
	t.BareTags = false
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Verdict != headings.Known || s.To() != takeoff.Tag {
			continue
		}
		if b := t.Peek(); len(b.Columns[i]) > 2 {
			t.BareTags = 3*b.Share(i, wording.SetApart) <= 1
		}
	}
}

// dealtWords say of a quantity what has become of it, in seven languages (from memory,
// unverified).
var dealtWords = []string{"delivered", "ordered", "installed", "fitted", "received", "issued", "made", "manufactured", "fabricated", "invoiced", "dispatched", "shipped", "checked", "erected", "on", "site", "order",
	"geliefert", "bestellt", "montiert", "gefertigt", "livre", "livree", "livres", "commande", "commandee", "pose", "posee", "geleverd", "besteld", "gemonteerd", "levererat", "bestallt", "monterat",
	"entregada", "entregado", "pedida", "pedido", "instalada", "consegnata", "consegnato", "ordinata", "ordinato", "montata"}

// CountsAgain reports a heading of the quantity again, of which it is said what has become of
// it, beside one that is plain: Qty delivered, Qty on site. same says that its cells, as far as
// rows were looked at, are empty or those of the quantity.
func (t *Reading) CountsAgain(s *columns.Spec) (again, same bool) {
	words := headings.Tokens(s.Typed)
	rest := slices.DeleteFunc(slices.Clone(words), func(w string) bool { return slices.Contains(dealtWords, w) || slices.Contains(columns.LaterWords, w) })
	if s.Fixed || s.Verdict != headings.Unknown || len(rest) == 0 || len(rest) == len(words) || !t.Quantity(rest) {
		return false, false
	}
	many := slices.IndexFunc(t.Specs, func(s columns.Spec) bool { return s.Used && s.Verdict == headings.Known && s.To() == takeoff.Quantity })
	at := slices.IndexFunc(t.Specs, func(x columns.Spec) bool { return x.Typed == s.Typed })
	if many < 0 || slices.ContainsFunc(headings.Tokens(t.Specs[many].Typed), func(w string) bool { return slices.Contains(dealtWords, w) }) {
		return false, false
	}
	for _, cells := range t.Peek().Cells {
		if cell := celltext.At(cells, at); !t.OfRefused() && cell != "" && !celltext.MeansNothing(cell) && !SameCount(cell, celltext.At(cells, many)) {
			return true, false
		}
	}
	return true, true
}

// SameCount reports two cells that say the same number of pieces.
func SameCount(a, b string) bool {
	n, ok := celltext.Count(a)
	m, also := celltext.Count(b)
	return strings.EqualFold(a, b) || ok && also && n == m
}

// mostLacking is the share of the rows that may lack a quantity where each of the others has
// one: of more, nobody would think that they were forgotten. Common practice, no source.
const mostLacking = 0.2

// countsByCells finds out whether an empty quantity may stand for one: not where a 1 is
// written out on other rows, and (nearly) all rows have a figure, several of them others.
func (t *Reading) countsByCells() {
	t.NoneEmpty = false
	at := slices.IndexFunc(t.Specs, func(s columns.Spec) bool {
		return s.Used && s.Verdict == headings.Known && s.To() == takeoff.Quantity && !strings.EqualFold(s.Typed, takeoff.Quantity.Heading()) // where empty is one
	})
	if at < 0 || t.UnitsAt > 0 || t.OfRefused() {
		return
	}
	ones, more, none := 0, 0, 0
	for _, cells := range t.Peek().Cells {
		if !t.sizedRow(cells) {
			continue
		}
		switch n, whole := celltext.Count(celltext.At(cells, at)); {
		case celltext.At(cells, at) == "":
			none++
		case whole && n == 1:
			ones++
		default:
			more++
		}
	}
	t.NoneEmpty = more > 0 && ones > 0 && ones >= none && (none < 2 || float64(none) <= mostLacking*float64(none+ones+more))
}

// sizedRow reports a row with a figure under a size.
func (t *Reading) sizedRow(cells []string) bool {
	for i := range min(len(cells), len(t.Specs)) {
		if s := &t.Specs[i]; s.Used && s.Measure == takeoff.Lengths && celltext.HasDigit(cells[i]) {
			return true
		}
	}
	return false
}

// orderedCounts takes the one column of pieces ordered or delivered for how many there are, where no
// other says it: Qty ordered, Bestellmenge.
func (t *Reading) orderedCounts() {
	if t.Maps(takeoff.Quantity) || t.OfRefused() {
		return
	}
	var found []int
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used && !s.Fixed && (s.Verdict == headings.Unknown || s.Verdict == headings.Near) && t.ordered(headings.Tokens(s.Typed)) && len(t.Peek().Columns[i]) > 0 {
			found = append(found, i)
		}
	}
	if len(found) != 1 {
		return
	}
	if b, i := t.Peek(), found[0]; len(b.Columns[i]) < b.Rows || b.Share(i, celltext.IsCount) < 1 {
		return
	}
	t.TakeFor(&t.Specs[found[0]], takeoff.Quantity)
	t.Note("column '%s' is read as quantity, as no other says how many there are", t.Specs[found[0]].Typed)
}

// ordered reports words of a heading for how many are ordered or delivered.
func (t *Reading) ordered(words []string) bool {
	rest := slices.DeleteFunc(slices.Clone(words), func(w string) bool { return orderWords[w] })
	return len(rest) < len(words) && (len(rest) == 0 || t.Quantity(rest)) || len(words) == 1 && orderCounts[words[0]]
}

// Words of headings for what is ordered or delivered, and for how many, in seven languages, without
// accents (from memory, unverified).
var (
	orderWords = wording.SetOf("order ordered received recd pick picked erhalten recu recue recues ontvangen mottaget mottagna recibida recibidas ricevuta ricevuti delivered supplied despatched dispatched shipped bestellt bestellte bestellten geliefert gelieferte gelieferten versandt commande commandee commandes cdee cde livre livree livres expediee " +
		"besteld bestelde geleverd geleverde bestallt bestallda levererat levererade pedida pedidas pedidos solicitada entregada entregadas servida servidas ordinata ordinati ord consegnata consegnati cons")
	orderCounts = wording.SetOf("bestellmenge bestellanzahl bestellstuckzahl liefermenge lieferanzahl versandmenge bestelaantal leveraantal orderantal leveransantal")
)

// counts reports a cell that counts pieces, or adds up or multiplies how many: 4, 2x3, 4+2. The
// latter are asked about at their rows.
func counts(cell string) bool {
	return celltext.IsCount(cell) || len(cell) < 9 && celltext.Digit(cell[0]) && celltext.Digit(cell[len(cell)-1]) && strings.Trim(cell, "0123456789+x*×") == ""
}

// idForTag takes the one column of numbers of single pieces, as models give them, for the tags
// where no other column names pieces: it stands twice on none.
func (t *Reading) idForTag() {
	if t.Maps(takeoff.Tag) || t.Maps(takeoff.From) || t.Maps(takeoff.Run) {
		return
	}
	found := -1
	for i := range t.Specs {
		if s := &t.Specs[i]; !s.Used && !s.Fixed && (s.Verdict == headings.Unknown || s.Verdict == headings.Near) && described.OfIDs(s.Typed) {
			if found >= 0 {
				return
			}
			found = i
		}
	}
	if found < 0 {
		return
	}
	b := t.Peek()
	cells := b.Columns[found]
	if some := slices.Compact(slices.Sorted(slices.Values(cells))); len(cells) < b.Rows || b.Rows == 0 || 4*len(some) < 3*len(cells) || b.Share(found, celltext.HasDigit) < 1 {
		return
	}
	t.TakeFor(&t.Specs[found], takeoff.Tag)
	t.Note("column '%s' is read as tag, as it numbers single pieces and no other column names them", t.Specs[found].Typed)
}
