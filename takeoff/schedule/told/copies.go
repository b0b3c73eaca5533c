package told

import (
	"encoding/binary"
	"fmt"
	"hash/fnv"
	"math"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
)

// pieces are marks of the rows of a sheet, of 32 bits each: by what the piece is, and by its
// tag too. A sheet that lists others again, in another order or in part, has the same marks.
type pieces struct {
	bare, tagged []uint32  // sorted once all are there; tagged without rows that have no tag
	count        int       // of pieces, with their quantities
	tags         []uint32  // of the tags alone
	named        []uint32  // of the tags with kind and cross-section
	runs         []stretch // of the rows with a length
	kind, is     string    // of the row before: as typed, and as it is called here
}

// Sheets that may list others again are those of this many rows and pieces. Common
// practice, no source.
const (
	leastRows   = 3
	leastPieces = 5
)

// byChance is how likely it may be that all rows of a sheet stand on others by chance, so
// that it is still asked about.
const byChance = 0.01

// markedBy are the columns that make a piece the same.
var markedBy = [...]takeoff.Column{takeoff.DimColumn(fittings.Width), takeoff.DimColumn(fittings.Height), takeoff.DimColumn(fittings.Diameter), takeoff.DimColumn(fittings.Length), takeoff.Quantity}

// ofRuns is how many of them make a cross-section.
const ofRuns = 3

// mark takes a row into the marks of its sheet. Sizes are taken to whole millimetres, as the same
// list may be in inches, and the longer side first.
func (p *pieces) mark(r *takeoff.Row) {
	h := fnv.New32a()
	if kind := r.Text[takeoff.Kind]; kind != p.kind || p.is == "" {
		p.kind, p.is = strings.Clone(kind), kind
		if k, _, _, ok := fittings.ParseDescription(kind); ok {
			p.is = k.String()
		}
	}
	h.Write([]byte(p.is))
	many, section := 1, uint32(0)
	for i, v := range marking(r) {
		if i == ofRuns {
			section = h.Sum32()
			p.markRun(r, section)
		}
		if i == len(markedBy)-1 {
			many = int(v)
		}
		var b [8]byte
		binary.LittleEndian.PutUint64(b[:], math.Float64bits(v))
		h.Write(b[:])
	}
	p.count += many
	p.bare = append(p.bare, h.Sum32())
	if tag := r.Text[takeoff.Tag]; tag != "" {
		h.Write([]byte(tag))
		mark := markTag(tag)
		p.tagged, p.tags, p.named = append(p.tagged, h.Sum32()), append(p.tags, mark), append(p.named, mark^section*0x9e3779b1)
	}
}

// marking are the figures of markedBy, sizes in mm; 0 for none, and a quantity of one.
func marking(r *takeoff.Row) (out [len(markedBy)]float64) {
	for i, c := range markedBy {
		switch {
		case r.Has(c) && c == takeoff.Quantity:
			out[i] = r.Number[c]
		case r.Has(c):
			out[i] = math.Round(r.Number[c] * 1000)
		case c == takeoff.Quantity:
			out[i] = 1
		}
	}
	out[0], out[1] = max(out[0], out[1]), min(out[0], out[1])
	return out
}

// listsAgain finds the sheets of which one lists again what others hold, the larger ones first.
func listsAgain(lex *headings.Lexicon, read []*Sheet) (found []repeated) {
	names := make([]sheetName, len(read))
	for i, s := range read {
		names[i] = nameOf(lex, s.Name)
		slices.Sort(s.marks.bare)
		slices.Sort(s.marks.tagged)
	}
	order := make([]int, len(read))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		if d := len(read[b].marks.bare) - len(read[a].marks.bare); d != 0 {
			return d
		}
		return b - a
	})
	out := make([]bool, len(read))
	for _, i := range order {
		s := read[i]
		if len(s.marks.bare) < leastRows || s.Mapped || len(found) > mostAgain {
			continue
		}
		var others []*Sheet
		for k, o := range read {
			if k != i && !out[k] && !names[i].apart(names[k]) && shares(s, o) {
				others = append(others, o)
			}
		}
		if len(others) > 0 && s.repeats(others) {
			found, out[i] = append(found, repeated{s, others}), true
		}
	}
	return found
}

// mostAgain is how many sheets that list others again are told of.
const mostAgain = 50

// repeated is a sheet that lists again what others hold.
type repeated struct {
	*Sheet
	of []*Sheet
}

// why says so.
func (x repeated) why() string {
	named := fmt.Sprintf("sheet '%s'", x.of[0].Name)
	switch n := len(x.of); {
	case n == 2:
		named = fmt.Sprintf("sheets '%s' and '%s'", x.of[0].Name, x.of[1].Name)
	case n > 2:
		named = fmt.Sprintf("sheets '%s', '%s' and %d more", x.of[0].Name, x.of[1].Name, n-2)
	}
	return "holds no other pieces than " + named + ", so they may be counted twice"
}

// shares reports that some row of s stands on o.
func shares(s, o *Sheet) bool {
	for _, m := range s.marks.bare {
		if _, ok := slices.BinarySearch(o.marks.bare, m); ok {
			return true
		}
	}
	return false
}

// repeats reports that all rows of s stand on the others together, and hardly by chance.
func (s *Sheet) repeats(others []*Sheet) bool {
	var bare, tagged []uint32
	for _, o := range others {
		bare, tagged = append(bare, o.marks.bare...), append(tagged, o.marks.tagged...)
	}
	if s.marks.count >= leastPieces && within(s.marks.bare, bare) {
		return true
	}
	return len(s.marks.tagged) == len(s.marks.bare) && within(s.marks.tagged, tagged)
}

// within reports that each of the marks, as often as it is there, is among the others, which
// are sorted, and that it is hardly so by chance.
//
// How many of other rows would be among them anyway is one less the share of those that are
// there once. Source: I. J. Good, The population frequencies of species and the estimation
// of population parameters, Biometrika 40 (1953), after A. M. Turing.
func within(marks, others []uint32) bool {
	slices.Sort(others)
	at, once := 0, 0
	for i := 0; i < len(others); {
		n := run(others[i:])
		m := 0
		if at < len(marks) && marks[at] == others[i] {
			m = run(marks[at:])
		}
		if m > n || at < len(marks) && marks[at] < others[i] {
			return false
		}
		if n == 1 {
			once++
		}
		at, i = at+m, i+n
	}
	if at < len(marks) || len(marks) == 0 {
		return false
	}
	likely := 1 - float64(once+1)/float64(len(others)+2)
	return math.Pow(likely, float64(kinds(marks))) < byChance
}

// run is how many of the first mark stand at the beginning.
func run(marks []uint32) int {
	n := 1
	for n < len(marks) && marks[n] == marks[0] {
		n++
	}
	return n
}

// kinds is how many different marks there are.
func kinds(marks []uint32) (n int) {
	for i := 0; i < len(marks); i += run(marks[i:]) {
		n++
	}
	return n
}

// sheetName is what the name of a sheet says of where its pieces are.
type sheetName struct {
	place bool   // a level, a system, a part of the building
	stem  string // without figures and letters that count
}

// apart reports names of two places, as Level 1 and Level 2 or Roof and Basement.
func (a sheetName) apart(b sheetName) bool {
	return a.place && b.place || a.stem == b.stem && !slices.Contains(listWords, a.stem)
}

func nameOf(lex *headings.Lexicon, name string) (n sheetName) {
	words := headings.Tokens(name)
	var stem []string
	figures := false
	for _, w := range words {
		bare := strings.Trim(w, "0123456789")
		figures = figures || bare != w
		if len(bare) > 1 {
			stem = append(stem, bare)
		}
	}
	n.stem = strings.Join(stem, " ")
	if slices.ContainsFunc(stem, func(w string) bool { return slices.Contains(wholeWords, w) }) {
		return n
	}
	places, _ := lex.Place(name)
	n.place = len(places) > 0 && !slices.ContainsFunc(places, func(p string) bool { return p != "system" && p != "level" }) ||
		slices.ContainsFunc(stem, func(w string) bool { return slices.Contains(partWords, w) }) ||
		figures && len(words) < 3 && len(n.stem) < 4
	return n
}

// listWords are the names of sheets of which figures tell nothing of a place, in seven
// languages (from memory, unverified).
var listWords = []string{"sheet", "list", "order", "page", "part", "table", "ducts", "ductwork", "schedule", "variant", "option", "delivery", "batch", "tabelle", "liste", "blatt", "seite", "bestellung", "teil", "variante", "lieferung", "kanale",
	"feuil", "feuille", "commande", "gaines", "blad", "bestelling", "lijst", "kanalen", "kanaler", "lista", "bestallning", "hoja", "pedido", "conductos", "foglio", "elenco", "ordine", "canali"}

// wholeWords are words of names of sheets that hold all of something, in seven languages (from
// memory, unverified).
var wholeWords = []string{"all", "complete", "whole", "overall", "combined", "gesamt", "alle", "alles", "komplett", "tout", "tous", "toutes", "complet", "ensemble", "totaal", "compleet", "samtliga", "allt", "komplett", "todo", "todos", "completo", "tutto", "tutti", "complessivo"}

// partWords are parts of buildings and of their ductwork, in seven languages (from memory,
// unverified).
var partWords = []string{"ground", "first", "second", "third", "fourth", "fifth", "upper", "lower", "mezzanine", "kitchen", "kitchens", "toilet", "toilets", "wc", "wcs", "bathroom", "office", "offices", "classroom", "north", "south", "east", "west", "wing", "block", "tower", "house", "flat", "apartment", "plot", "building", "core", "hall", "room", "plantroom", "bay", "unit", "nord", "sud", "ost", "flugel", "haus", "wohnung", "gebaude", "bauteil", "halle", "raum",
	"est", "ouest", "aile", "batiment", "logement", "appartement", "salle", "local", "noord", "zuid", "oost", "vleugel", "gebouw", "woning", "ruimte", "norr", "soder", "oster", "vaster", "hus", "lagenhet", "rum", "norte", "sur", "este", "oeste", "bloque", "edificio", "vivienda", "sala", "ovest", "ala", "appartamento", "blocco", "locale"}
