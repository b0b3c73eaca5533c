package quantity

import (
	"slices"
	"strings"

	"blankoff/takeoff"
)

// The words by which a cell says that it is empty, or as the one above it, in
// English, German, French, Dutch, Swedish, Spanish and Italian: small letters, no
// spaces, no point at the end. Common practice, from memory, unverified.
var (
	dashes  = []string{"-", "–", "—", "n/a", "null", `\n`, "nan"} // as databases write it, too
	absents = []string{"n/a", "--", "---", "./", "n.a", "n.v.t", "nvt", "k.a", "notapplicable", "nichtzutreffend", "nietvantoepassing",
		"nonapplicable", "sansobjet", "noaplica", "nonapplicabile", "ejaktuellt"}
	nones = []string{"none", "nil", "entfällt", "entfaellt", "keine", "keiner", "keines", "geen", "aucun", "aucune",
		"ninguno", "ninguna", "nessuno", "nessuna", "ingen", "inget", "n.d"}
	dittos = []string{`"`, "''", "″", "“", "”", "„", "〃", `-"-`, `--"--`, "↑", "ditto", "dito", "d:o", "idem", "ibidem", "sieheoben", "s.oben",
		"wieoben", "wievor", "seeabove", "asabove", "zieboven", "alsboven", "voirci-dessus", "ci-dessus", "comesopra", "comoarriba", "verarriba",
		"seovan", "somovan"}
	shortDittos = []string{"do", "id", "ib", "ibid", "c.s", "w.o", "w.v"}
)

// starts are the bytes with which a cell may begin that is in one of the lists.
var starts = func() (s [256]bool) {
	for _, list := range [...][]string{dashes, absents, nones, dittos, shortDittos, kindDittos, {"s.o"}} {
		for _, w := range list {
			s[w[0]], s[strings.ToUpper(w)[0]] = true, true
		}
	}
	return s
}()

// maybe reports a cell that may be in one of the lists, none of which has figures:
// most cells of most schedules aren't.
func maybe(cell string) bool {
	return cell != "" && len(cell) <= 40 && starts[cell[0]] && !digitIn(cell)
}

// bare writes a cell as the lists above do.
func bare(cell string) string {
	return strings.TrimSuffix(strings.ToLower(strings.ReplaceAll(strings.ReplaceAll(cell, "\u00a0", ""), " ", "")), ".")
}

// Nothing reports a cell that is filled in to say that it is empty: "-", "n/a",
// "n.v.t.", "k.A.". A word as "none" says so of a length or an angle only: a test
// pressure of "none" may mean that there is no test. How many there are can't be
// "n.v.t.", and "none" of it would be no piece, so that a count takes only what
// says nothing at all.
func Nothing(cell string, m takeoff.Measure) bool {
	if !maybe(cell) {
		return false
	}
	word := bare(cell)
	switch {
	case slices.Contains(dashes, strings.ToLower(cell)):
		return true
	case m != takeoff.Text && strings.EqualFold(cell, "na"): // it may be a name
		return true
	case m == takeoff.Count:
		return false
	case slices.Contains(absents, word):
		return true
	}
	return (m == takeoff.Lengths || m == takeoff.Degrees) && slices.Contains(nones, word)
}

// Above says what is wrong with a cell that means the row above it, and what to
// do: "dito", "siehe oben", a ditto mark. It is empty for other cells. Short
// forms, as "do.", count where no text is expected; they may be a name there.
func Above(cell string, m takeoff.Measure) (trouble string) {
	if !maybe(cell) {
		return ""
	}
	word := bare(cell)
	switch {
	case slices.Contains(dittos, word), m != takeoff.Text && slices.Contains(shortDittos, word):
		return "means the row above; write the value itself"
	case word == "s.o" || word == "s/o":
		return "may mean see above or not applicable; write the value, or leave the cell empty"
	}
	return ""
}

// Ditto reports a cell of a word that means the row above it, short forms included: do., dto.
func Ditto(cell string) bool {
	if !maybe(cell) {
		return false
	}
	word := bare(cell)
	return slices.Contains(dittos, word) || slices.Contains(kindDittos, word)
}

// kindDittos are short forms that are no kind of piece.
var kindDittos = []string{"do", "dto", "dº"}
