package told

import (
	"encoding/binary"
	"fmt"
	"hash/fnv"
	"regexp"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// Words in the name or above the headings of a sheet whose pieces stand on another
// sheet too, or aren't meant, in seven languages (from memory, unverified).
var (
	sumWords = []string{"consolidated", "pivot", "summary", "summaries", "total", "totals", "recap", "overview", "collection", "zusammenfassung", "zusammenstellung", "ubersicht",
		"summe", "summen", "recapitulatif", "recapitulation", "synthese", "samenvatting", "totaal", "overzicht", "sammanstallning", "sammandrag", "resumen", "riepilogo", "sommario"}
	oldWords = []string{"old", "obsolete", "superseded", "withdrawn", "veraltet", "alt", "uberholt", "ancien", "perime", "oud", "vervallen", "gammal", "utgatt", "antiguo",
		"obsoleto", "vecchio", "superato", "archive", "archiv"}
	exampleWords = []string{"example", "sample", "beispiel", "muster", "exemple", "voorbeeld", "exempel", "ejemplo", "esempio", "template", "vorlage"}
	titleWords   = []string{"summary", "superseded", "obsolete", "example", "zusammenfassung", "zusammenstellung", "recapitulatif", "samenvatting", "sammanstallning", "resumen", "riepilogo",
		"veraltet", "beispiel", "exemple", "voorbeeld", "exempel", "ejemplo", "esempio"}
)

// otherWords are words in the names of sheets about something else than the ductwork that
// is to be, in seven languages (from memory, unverified).
var otherWords = []string{"backup", "scratch", "copy", "spare", "spares", "insulation", "demolition", "dammung", "isolierung", "kopie", "sicherung", "copie", "calorifuge", "reserve", "kopi", "isolering", "copia", "aislamiento", "isolamento", "isolatie"}

// again is what programs and people put behind the name of a sheet that they copy.
var again = regexp.MustCompile(`(?i)\s*(?:\(\d+\)|-?\s*copy|\bkopie|\bcopie)\s*$`)

// named reports a sheet before s of another name.
func named(read []*Sheet, s *Sheet, name string) bool {
	return name != s.Name && slices.ContainsFunc(read, func(o *Sheet) bool { return o.Name == name })
}

// revision is a revision in the name of a sheet.
var revision = regexp.MustCompile(`(?i)\b(?:rev(?:ision|isione)?|version|stand|indice|ind|index|issue|variant[ea]?)[\s._-]*[a-z0-9]{1,2}\b`)

// revisionOnly is the name of a sheet that says no more than a revision (from memory, unverified).
var revisionOnly = regexp.MustCompile(`(?i)^\W*(?:rev(?:ision)?|r[eé]visione?|version|indice|issue)[\s._-]*[a-z0-9]{1,2}\W*$`)

// DoubtSheets finds fault with sheets that were read beside others and seem to sum
// them up, to be of an earlier revision, or to be no part of the job.
func (f *Findings) DoubtSheets(file string, sheets []*Sheet, lex *headings.Lexicon) {
	var read []*Sheet
	for _, s := range sheets {
		defer func() {
			s.Titles, s.Lines, s.Linked, s.Mapped, s.rows, s.last, s.marks = nil, nil, 0, false, 0, 0, pieces{}
		}()
		if s.Classes[PieceRow].Count > 0 {
			read = append(read, s)
		}
	}
	if len(read) < 2 {
		return
	}
	stems := map[string]*Sheet{}
	var sound []*Sheet
	for _, s := range read {
		stem := revision.ReplaceAllString(s.Name, "")
		why := whyDoubted(lex, read, s, stems[stem])
		if stem != s.Name {
			stems[stem] = s
		}
		if why == "" {
			sound = append(sound, s)
			continue
		}
		f.doubtSheet(file, s, why)
	}
	f.doubtAgain(file, sound, lex)
}

// whyDoubted says why the pieces of a sheet may not count, by its name, its titles and what it
// holds; other is a sheet before it that is named alike but for the revision.
func whyDoubted(lex *headings.Lexicon, read []*Sheet, s, other *Sheet) string {
	room, original := ofRoom(lex, read, s), again.ReplaceAllString(s.Name, "")
	switch {
	case s.Mapped: // a map leaves others out
		return ""
	case 2*s.Linked > s.Classes[PieceRow].Count:
		return "is made of formulas on other sheets, so its pieces may be counted twice"
	case hasWord(s.Name, sumWords) || titled(s, titleWords):
		return "seems to sum up or repeat other sheets, so its pieces may be counted twice"
	case hasWord(s.Name, oldWords) && !room:
		return "seems to be an old one"
	case hasWord(s.Name, exampleWords):
		return "seems to be an example"
	case !room && (lex.Struck(s.Name) || lex.StruckAnywhere(s.Name) || lex.StruckEnd(s.Name) || wording.Outside.MatchString(s.Name) || hasWord(s.Name, otherWords)):
		return "seems to hold what doesn't count"
	case named(read, s, original):
		return fmt.Sprintf("seems to be a copy of sheet '%s', so pieces may be counted twice", original)
	case copied(read, s) != nil && alikeNames(s.Name, copied(read, s).Name):
		return fmt.Sprintf("holds the same pieces as sheet '%s', so they may be counted twice", copied(read, s).Name)
	case other != nil && revision.MatchString(s.Name):
		return fmt.Sprintf("seems to be another revision of sheet '%s', so pieces may be counted twice", other.Name)
	case revisionOnly.MatchString(s.Name) && slices.ContainsFunc(read, func(o *Sheet) bool { return !revision.MatchString(o.Name) }):
		return "is named for a revision only, so its pieces may be those of another sheet"
	case s.Hidden && slices.ContainsFunc(read, func(o *Sheet) bool { return !o.Hidden }):
		return unseen
	}
	return doubles(lex, read, s)
}

// doubles says why the pieces of a sheet may stand on others too, by what they are: it sums
// these up, or is an earlier revision.
func doubles(lex *headings.Lexicon, read []*Sheet, s *Sheet) string {
	if o := revisedBy(read, s); o != nil {
		return fmt.Sprintf("seems to be an earlier revision of sheet '%s', so pieces may be counted twice", o.Name)
	}
	if o := remakes(lex, read, s); o != nil {
		return fmt.Sprintf("has the tags and cross-sections of sheet '%s' with other lengths or quantities, so it may take the place of it", o.Name)
	}
	if of := sumsOf(lex, read, s); of != "" {
		return "gives the lengths of " + of + " by size, so its pieces may be counted twice"
	}
	return ""
}

// ofRoom reports a sheet named as a room that is called old, a copy room or a void over a
// ceiling, where no other is named as the room without the word.
func ofRoom(lex *headings.Lexicon, read []*Sheet, s *Sheet) bool {
	rest, old := lex.OldRoom(s.Name)
	return lex.Part(s.Name) || old && !slices.ContainsFunc(read, func(o *Sheet) bool { return o != s && headings.Squash(o.Name) == rest })
}

// unseen says why the pieces of a hidden sheet may not count.
const unseen = "is hidden while others are shown, so its pieces may not count"

// doubtSheet finds fault with a sheet.
func (f *Findings) doubtSheet(file string, s *Sheet, why string) {
	at, cure := takeoff.Place{File: file, Sheet: s.Name, Row: s.Headings[0]}, "leave it out by skip in a map (inspect -o), or rename it"
	if why == unseen {
		cure = "leave it out by --skip-hidden or by skip in a map (inspect -o), or show it"
	}
	f.Faults = append(f.Faults, at.Fault("", s.Name, "sheets of one job, each piece once",
		fmt.Sprintf("sheet '%s', pieces in %s, %s; it was read all the same: %s", s.Name, s.pieceRows(), why, cure)))
}

// pieceRows writes where the pieces of a sheet stand.
func (s *Sheet) pieceRows() string {
	x := &s.Classes[PieceRow]
	if x.Count == 1 {
		return fmt.Sprintf("row %d", x.First)
	}
	return fmt.Sprintf("rows %d to %d", x.First, s.last)
}

// doubtAgain finds fault with sheets that list again what others hold, and notes those of
// two places that hold the same.
func (f *Findings) doubtAgain(file string, read []*Sheet, lex *headings.Lexicon) {
	twice := listsAgain(lex, read)
	for _, x := range twice {
		f.doubtSheet(file, x.Sheet, x.why())
	}
	for _, s := range read {
		other := copied(read, s)
		switch {
		case other == nil || slices.ContainsFunc(twice, func(x repeated) bool { return x.Sheet == s || x.Sheet == other }):
		case s.ordersAgain(lex, other):
			f.doubtSheet(file, s, fmt.Sprintf("holds the same pieces under the same tags as sheet '%s', so they may be counted twice", other.Name))
		default:
			f.Note("sheet '%s' holds the same pieces as sheet '%s': right for two floors alike, twice too much for a copy", s.Name, other.Name)
		}
	}
}

// ordersAgain reports a sheet named as an order or a list, or for one, that holds the very
// pieces and tags of another, and not for another place.
func (s *Sheet) ordersAgain(lex *headings.Lexicon, other *Sheet) bool {
	same := len(s.marks.tagged) == len(s.marks.bare) && slices.Equal(s.marks.tagged, other.marks.tagged)
	a, b := nameOf(lex, s.Name), nameOf(lex, other.Name)
	return same && len(s.marks.bare) > 0 && !s.Mapped && (hasWord(a.stem, listWords) || hasWord(b.stem, listWords)) && !a.place && !b.place && !a.apart(b)
}

// SumsUp reports a name or titles of a sheet that sums up others.
func SumsUp(titles []string) bool {
	return slices.ContainsFunc(titles, func(text string) bool { return hasWord(text, sumWords) })
}

func hasWord(text string, words []string) bool {
	return slices.ContainsFunc(headings.Tokens(text), func(w string) bool { return slices.Contains(words, w) })
}

// titled reports a sheet with one of the words above its headings.
func titled(s *Sheet, words []string) bool {
	return slices.ContainsFunc(s.Titles, func(text string) bool {
		return hasWord(text, words) || strings.Contains(strings.ToLower(text), "do not use")
	})
}

// Mark takes a row into what the pieces of a sheet are.
func (s *Sheet) Mark(r *takeoff.Row) {
	h := fnv.New64a()
	var b [8]byte
	binary.LittleEndian.PutUint64(b[:], s.rows)
	h.Write(b[:])
	for _, c := range [...]takeoff.Column{takeoff.Kind, takeoff.DimColumn(fittings.Width), takeoff.DimColumn(fittings.Height), takeoff.DimColumn(fittings.Diameter), takeoff.DimColumn(fittings.Length), takeoff.Quantity} {
		h.Write([]byte(r.Text[c]))
		h.Write([]byte{0})
	}
	s.rows, s.last = h.Sum64(), r.At.Row
	if s.Among && len(r.Faults) == 0 {
		s.marks.mark(r)
	}
}

// copied is a sheet before s with the very rows of s but for their tags, or nil.
func copied(read []*Sheet, s *Sheet) *Sheet {
	for _, o := range read {
		if o == s {
			return nil
		}
		if o.rows == s.rows && s.Classes[PieceRow].Count > 1 && o.Classes[PieceRow].Count == s.Classes[PieceRow].Count {
			return o
		}
	}
	return nil
}

// alikeNames reports names of which one holds the other: Level 1, Level 1 (2), Copy of
// Level 1.
func alikeNames(a, b string) bool {
	a, b = headings.Squash(a), headings.Squash(b)
	return strings.Contains(a, b) || strings.Contains(b, a)
}
