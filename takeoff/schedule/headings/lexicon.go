package headings

import (
	"embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"

	"blankoff/takeoff"
)

// The lists of a file of words.
const (
	headingList = "heading"           // canonical heading: what else it may be called
	unitList    = "heading with unit" // the same, where a unit follows
	sizeList    = "size"              // size, size2 or branch_size: a whole cross-section in a cell
	overList    = "over"              // main, branch or 2: what stands over several headings
	askList     = "ask"               // a name with more than one reading
	unusedList  = "unused"            // means nothing here, though spelt nearly as a known one
	placeList   = "place"             // total, system, level, either of these two, dimension or note: what begins a row that isn't a piece
	struckList  = "struck"            // says that a row does not count: see Struck
	besideList  = "beside kind"       // may stand beside a kind and says nothing of its sizes
	apartList   = "apart"             // a kind of thing that is no ductwork
	partList    = "part"              // a place, or a part of the ductwork: says nothing of the rows below it
	uncountList = "uncounted"         // what a quantity is counted in that isn't single pieces
	countList   = "count"             // in a heading, says that it may be about how many there are
	numberList  = "number"            // a number in words

	remarkList      = "remark"       // a phrase of a remark: see Says
	remarkAloneList = "remark alone" // one that is the whole of it
	remarkEndList   = "remark end"   // one at its end
	remarkWordList  = "remark word"  // a word of remarks that bears on no area: see Harmless
)

// cellLists are the lists of words of cells, with the column of each.
var cellLists = map[string]takeoff.Column{"kind": takeoff.Kind, "style": takeoff.Style, "shape": takeoff.Shape,
	"scope": takeoff.Scope, "sign": takeoff.Sign, "joint": takeoff.Joint}

// meaning is what a name of a column stands for.
type meaning struct {
	column     takeoff.Column
	size       SizeOf
	unitNeeded bool
	own        bool // of a user's own file
}

// nearName is a name that a misspelt heading may have meant.
type nearName struct {
	name    string
	letters uint32
	column  takeoff.Column
}

// Lexicon holds the words. It doesn't change once it is made.
type Lexicon struct {
	meanings map[string]meaning // this and the others by squashed name
	asked    map[string]*Question
	unused   map[string]struct{}
	over     map[string]string
	places   map[string]string
	struck   map[string]string
	beside   map[string]struct{}
	apart    map[string]struct{}
	parts    map[string]struct{}
	uncount  map[string]struct{}
	counts   map[string]bool      // true: only by itself
	totals   map[[3]byte]bool     // how words for totals begin
	strikes  map[[3]byte]struct{} // how struck begins
	sayings  map[string][]saying  // phrases of remarks, by their first word
	harmless map[string]bool      // words of remarks; true: things
	numbers  map[string]int
	cells    map[takeoff.Column]map[string]string
	near     []nearName // in the order of the files
	english  map[takeoff.Column][]string
	needUnit map[takeoff.Column][]string // English too
	longest  int                         // words of the longest name of a cell
}

//go:embed words/*.csv
var wordFiles embed.FS

// languages are the files of words, the one that is used in messages first.
var languages = []string{"en", "de", "fr", "nl", "sv", "es", "it"}

// BuiltIn gives the words that come with the program.
var BuiltIn = sync.OnceValues(func() (*Lexicon, error) {
	l := &Lexicon{meanings: map[string]meaning{}, asked: map[string]*Question{}, unused: map[string]struct{}{}, over: map[string]string{},
		places: map[string]string{}, struck: map[string]string{}, beside: map[string]struct{}{}, apart: map[string]struct{}{}, parts: map[string]struct{}{}, uncount: map[string]struct{}{}, totals: map[[3]byte]bool{}, strikes: map[[3]byte]struct{}{}, sayings: map[string][]saying{}, numbers: map[string]int{}, harmless: map[string]bool{}, counts: map[string]bool{}, cells: map[takeoff.Column]map[string]string{}, english: map[takeoff.Column][]string{}, needUnit: map[takeoff.Column][]string{}}
	l.canonical()
	for _, language := range languages {
		name := path.Join("words", language+".csv")
		f, err := wordFiles.Open(name)
		if err != nil {
			return nil, err
		}
		if err := l.read(name, f, language == "en"); err != nil {
			return nil, err
		}
		f.Close()
	}
	return l, nil
})

// canonical adds the headings that the program uses itself, and the questions.
func (l *Lexicon) canonical() {
	for c := range takeoff.NumColumns {
		l.addName(c.Heading(), meaning{column: c})
		stem := Stem(c)
		if stem != "area" && stem != "radius" {
			l.addName(stem, meaning{column: c})
		}
	}
	for i := range questions {
		for name := range strings.SplitSeq(questions[i].names, ",") {
			l.asked[Squash(name)] = &questions[i]
		}
	}
}

// Stem is a canonical heading without its unit.
func Stem(c takeoff.Column) string {
	stem := c.Heading()
	if _, ok := c.Dim(); ok || c == takeoff.StatedArea || c == takeoff.At {
		stem = strings.TrimSuffix(strings.TrimSuffix(strings.TrimSuffix(stem, "_mm"), "_m2"), "_deg")
	}
	return stem
}

// With gives the words with those of a user's own file added. Its words stand
// for what the file says, whatever they stood for before; the same word twice
// in the file, for two things, is an error that names the line.
func (l *Lexicon) With(name string, r io.Reader) (*Lexicon, error) {
	own := &Lexicon{meanings: maps.Clone(l.meanings), asked: maps.Clone(l.asked), unused: maps.Clone(l.unused), over: maps.Clone(l.over),
		places: maps.Clone(l.places), struck: maps.Clone(l.struck), beside: maps.Clone(l.beside), apart: maps.Clone(l.apart), parts: maps.Clone(l.parts), uncount: maps.Clone(l.uncount), totals: maps.Clone(l.totals), counts: maps.Clone(l.counts), strikes: maps.Clone(l.strikes), sayings: maps.Clone(l.sayings), numbers: maps.Clone(l.numbers), harmless: maps.Clone(l.harmless), cells: map[takeoff.Column]map[string]string{}, near: slices.Clone(l.near), english: l.english, needUnit: l.needUnit, longest: l.longest}
	for c, words := range l.cells {
		own.cells[c] = maps.Clone(words)
	}
	return own, own.readOwn(name, r)
}

// line is a line of a file of words.
type line struct {
	number      int
	list, means string
	words       []string
}

// readLines reads a file of words.
func readLines(name string, r io.Reader) (out []line, err error) {
	in := csv.NewReader(r)
	in.Comment, in.FieldsPerRecord, in.TrimLeadingSpace = '#', -1, true
	for {
		record, err := in.Read()
		if errors.Is(err, io.EOF) {
			return out, nil
		}
		if err != nil {
			return nil, fmt.Errorf("words file %s: %w", name, err)
		}
		number, _ := in.FieldPos(0)
		record[0] = strings.TrimPrefix(record[0], "\ufeff")
		if len(record) < 3 {
			return nil, fmt.Errorf("words file %s, line %d: expected a list, what the words stand for, and the words, as heading,width_mm,breedte", name, number)
		}
		l := line{number: number, list: strings.ToLower(strings.TrimSpace(record[0])), means: strings.TrimSpace(record[1])}
		for _, w := range record[2:] {
			if w = strings.TrimSpace(w); w != "" {
				l.words = append(l.words, w)
			}
		}
		out = append(out, l)
	}
}

// read adds the words of a built-in file. What stands already stays.
func (l *Lexicon) read(name string, r io.Reader, english bool) error {
	lines, err := readLines(name, r)
	if err != nil {
		return err
	}
	for _, line := range lines {
		if err := l.add(line, false, english); err != nil {
			return fmt.Errorf("words file %s, line %d: %w", name, line.number, err)
		}
	}
	return nil
}

// readOwn adds the words of a user's own file over those that stand.
func (l *Lexicon) readOwn(name string, r io.Reader) error {
	lines, err := readLines(name, r)
	if err != nil {
		return err
	}
	said := map[string]line{}
	for _, line := range lines {
		group := line.list
		if group == unitList || group == sizeList || group == unusedList || group == askList {
			group = headingList
		}
		for _, w := range line.words {
			key := group + " " + Squash(w)
			if before, twice := said[key]; twice && (before.means != line.means || before.list != line.list) {
				return fmt.Errorf("words file %s, line %d: '%s' stands for '%s' here and for '%s' on line %d; keep one", name, line.number, w, line.means, before.means, before.number)
			}
			said[key] = line
		}
		if err := l.add(line, true, false); err != nil {
			return fmt.Errorf("words file %s, line %d: %w", name, line.number, err)
		}
	}
	return nil
}
