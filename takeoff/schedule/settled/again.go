package settled

import (
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/columns"
	"blankoff/takeoff/schedule/headings"
)

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
