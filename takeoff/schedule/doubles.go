package schedule

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
)

// Words in the name or above the headings of a sheet whose pieces stand on another
// sheet too, or aren't meant, in seven languages (from memory, unverified).
var (
	sumWords = []string{"summary", "summaries", "total", "totals", "recap", "overview", "collection", "zusammenfassung", "zusammenstellung", "ubersicht",
		"summe", "summen", "recapitulatif", "recapitulation", "synthese", "samenvatting", "totaal", "overzicht", "sammanstallning", "sammandrag", "resumen", "riepilogo", "sommario"}
	oldWords = []string{"old", "obsolete", "superseded", "withdrawn", "veraltet", "alt", "uberholt", "ancien", "perime", "oud", "vervallen", "gammal", "utgatt", "antiguo",
		"obsoleto", "vecchio", "superato", "archive", "archiv"}
	exampleWords = []string{"example", "beispiel", "muster", "exemple", "voorbeeld", "exempel", "ejemplo", "esempio", "template", "vorlage"}
	titleWords   = []string{"summary", "superseded", "obsolete", "example", "zusammenfassung", "zusammenstellung", "recapitulatif", "samenvatting", "sammanstallning", "resumen", "riepilogo",
		"veraltet", "beispiel", "exemple", "voorbeeld", "exempel", "ejemplo", "esempio"}
)

// revision is a revision in the name of a sheet.
var revision = regexp.MustCompile(`(?i)\b(?:rev(?:ision|isione)?|version|stand|indice|ind|index|issue)[\s._-]*[a-z0-9]{1,2}\b`)

// doubtSheets finds fault with sheets that were read beside others and seem to sum
// them up, to be of an earlier revision, or to be no part of the job.
func (info *Info) doubtSheets() {
	var read []*Sheet
	for _, s := range info.Sheets {
		defer func() { s.titles, s.linked, s.asked = nil, 0, false }()
		if s.Classes[PieceRow].Count > 0 {
			read = append(read, s)
		}
	}
	if len(read) < 2 {
		return
	}
	stems := map[string]*Sheet{}
	for _, s := range read {
		why := ""
		stem := revision.ReplaceAllString(s.Name, "")
		switch other := stems[stem]; {
		case s.asked: // a map leaves others out
		case 2*s.linked > s.Classes[PieceRow].Count:
			why = "is made of formulas on other sheets, so its pieces may be counted twice"
		case hasWord(s.Name, sumWords) || titled(s, titleWords):
			why = "seems to sum up or repeat other sheets, so its pieces may be counted twice"
		case hasWord(s.Name, oldWords):
			why = "seems to be an old one"
		case hasWord(s.Name, exampleWords):
			why = "seems to be an example"
		case stem != s.Name && other != nil:
			why = fmt.Sprintf("seems to be another revision of sheet '%s', so pieces may be counted twice", other.Name)
		}
		if stem != s.Name {
			stems[stem] = s
		}
		if why != "" {
			at := takeoff.Place{File: info.File, Sheet: s.Name, Row: s.Headings[0]}
			info.Faults = append(info.Faults, at.Fault("", s.Name, "sheets of one job, each piece once",
				fmt.Sprintf("sheet '%s' %s; it was read all the same: leave it out by skip in a map (inspect -o), or rename it", s.Name, why)))
		}
	}
}

func hasWord(text string, words []string) bool {
	return slices.ContainsFunc(headings.Tokens(text), func(w string) bool { return slices.Contains(words, w) })
}

// titled reports a sheet with one of the words above its headings.
func titled(s *Sheet, words []string) bool {
	return slices.ContainsFunc(s.titles, func(x titleText) bool {
		return hasWord(x.text, words) || strings.Contains(strings.ToLower(x.text), "do not use")
	})
}
