package headings

import (
	"fmt"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// columnOf finds a column by its canonical heading.
func columnOf(heading string) (takeoff.Column, bool) {
	for c := range takeoff.NumColumns {
		if c.Heading() == heading {
			return c, true
		}
	}
	return 0, false
}

// sizeNames are the whole cross-sections, with a column that stands for each in
// messages.
var sizeNames = map[string]meaning{
	"size":        {column: takeoff.DimColumn(fittings.Width), size: OwnSize},
	"size2":       {column: takeoff.DimColumn(fittings.Width2), size: SecondSize},
	"size_length": {column: takeoff.DimColumn(fittings.Width), size: LongSize},
	"branch_size": {column: takeoff.DimColumn(fittings.BranchWidth), size: BranchSize},
}

// add files the words of a line. over says that they replace what stands.
func (l *Lexicon) add(line line, over, english bool) error {
	set := func(in map[string]string, value string) {
		for _, w := range line.words {
			if key := Squash(w); key != "" && (over || in[key] == "") {
				in[key] = value
			}
		}
	}
	switch line.list {
	case headingList, unitList:
		c, ok := columnOf(line.means)
		if !ok {
			return fmt.Errorf("'%s' isn't a heading of ours; the second sheet of the template lists them", line.means)
		}
		return l.addNames(line, meaning{column: c, unitNeeded: line.list == unitList}, over, english)
	case sizeList:
		m, ok := sizeNames[line.means]
		if !ok {
			return fmt.Errorf("'%s' isn't a size; expected size, size_length, size2 or branch_size", line.means)
		}
		return l.addNames(line, m, over, false)
	case askList, unusedList:
		return l.addUnused(line, over)
	case besideList, apartList, partList, uncountList:
		to := map[string]map[string]struct{}{besideList: l.beside, apartList: l.apart, partList: l.parts, uncountList: l.uncount}[line.list]
		for _, w := range line.words {
			to[Squash(w)] = struct{}{}
		}
	case struckList, countList, placeList:
		return l.addDoubts(line, set)
	case remarkList, remarkAloneList, remarkEndList:
		return l.addSayings(line)
	case remarkWordList:
		return l.addHarmless(line)
	case numberList:
		return l.addNumbers(line)
	case overList:
		return place(line, l.over, "main branch 2", set)
	default:
		return l.addCells(line, set)
	}
	return nil
}

// addUnused files headings that are asked about, or mean nothing here.
func (l *Lexicon) addUnused(line line, over bool) error {
	q := l.asked[Squash(line.means)]
	if q == nil && line.list == askList {
		return fmt.Errorf("there is no question about '%s'", line.means)
	}
	for _, w := range line.words {
		if err := l.claim(w, line.list, over); err != nil {
			return err
		}
		if line.list == askList {
			l.asked[Squash(w)] = q
		} else {
			l.unused[Squash(w)] = struct{}{}
		}
	}
	return nil
}

// strikeMeans are the words of the list struck that cells may begin with.
var strikeMeans = []string{"first", "alone", "cell", "yes", "thing"}

// addDoubts files words of rows that aren't pieces, or may not count, and of how many.
func (l *Lexicon) addDoubts(line line, set func(map[string]string, string)) error {
	for _, w := range line.words {
		switch {
		case line.list == struckList && slices.Contains(strikeMeans, line.means):
			l.strikes[begin(w)] = struct{}{}
			l.strikes[begin(plainLetters.Replace(strings.ToLower(w)))] = struct{}{} // without accents
		case line.list == countList:
			l.counts[Squash(w)] = line.means == "alone"
		case line.means == "total" && len(w) > 1:
			l.totals[begin(w+" ")] = true
		}
	}
	switch line.list {
	case struckList:
		return place(line, l.struck, "first alone cell heading column yes no thing", set)
	case placeList:
		return place(line, l.places, "total system level either dimension note", set)
	}
	return nil
}

// place files words that stand for one of those known.
func place(line line, words map[string]string, known string, set func(map[string]string, string)) error {
	if !strings.Contains(" "+known+" ", " "+line.means+" ") {
		return fmt.Errorf("'%s' isn't one of %s", line.means, known)
	}
	set(words, line.means)
	return nil
}

// addNames files names of a column.
func (l *Lexicon) addNames(line line, m meaning, over, english bool) error {
	m.own = over
	for _, w := range line.words {
		key := Squash(w)
		if err := l.claim(w, line.list, over); err != nil {
			return err
		}
		before := len(l.meanings)
		if l.addName(w, m); english && len(l.meanings) > before {
			if m.unitNeeded {
				l.needUnit[m.column] = append(l.needUnit[m.column], w)
			} else {
				l.english[m.column] = append(l.english[m.column], w)
			}
		}
		if m.size == NoSize && !over && l.meanings[key].column != m.column {
			return fmt.Errorf("'%s' stands for %s already", w, l.meanings[key].column.Heading())
		}
	}
	return nil
}

// claim takes a name out of the lists of headings where it may be replaced; else
// it has to be free.
func (l *Lexicon) claim(w, list string, over bool) error {
	key := Squash(w)
	m, known := l.meanings[key]
	_, unused := l.unused[key]
	switch {
	case over:
		delete(l.meanings, key)
		delete(l.asked, key)
		delete(l.unused, key)
	case list != headingList && list != unitList && list != sizeList && known && !m.unitNeeded:
		return fmt.Errorf("'%s' stands for %s already", w, m.column.Heading())
	case list != askList && l.asked[key] != nil && list != unitList, list != unusedList && unused:
		return fmt.Errorf("'%s' is asked about or unused already", w)
	}
	return nil
}

func (l *Lexicon) addName(name string, m meaning) {
	key := Squash(name)
	if _, known := l.meanings[key]; known || key == "" {
		return
	}
	l.meanings[key] = m
	words := Tokens(name)
	if lettered := len(words) > 1 && len(words[len(words)-1]) == 1; lettered { // duct w isn't duct misspelt
		return
	}
	if len(key) >= 4 && m.size == NoSize && !m.unitNeeded {
		l.near = append(l.near, nearName{key, lettersOf(key), m.column})
	}
}

// addCells files words of cells. What they stand for has to be understood.
func (l *Lexicon) addCells(line line, set func(map[string]string, string)) error {
	c, ok := cellLists[line.list]
	if !ok {
		return fmt.Errorf("there is no list '%s'; expected heading, heading with unit, size, over, ask, unused, place, struck, count, number, remark, remark alone, remark end, remark word, beside kind, apart, part, uncounted, kind, style, shape, scope, sign or joint", line.list)
	}
	switch c {
	case takeoff.Kind:
		_, _, _, ok = fittings.ParseDescription(line.means)
	case takeoff.Style:
		_, ok = fittings.ParseStyle(line.means)
	case takeoff.Shape:
		_, ok = fittings.ParseShape(line.means)
	case takeoff.Scope:
		ok = line.means == "in" || line.means == "out" || line.means == "through"
	case takeoff.Sign:
		ok = line.means == "positive" || line.means == "negative"
	case takeoff.Joint:
		ok = line.means == "flanged" || line.means == "slip" || line.means == "welded"
	}
	if !ok {
		return fmt.Errorf("'%s' isn't a word that is known for %s", line.means, line.list)
	}
	if l.cells[c] == nil {
		l.cells[c] = map[string]string{}
	}
	set(l.cells[c], line.means)
	for _, w := range line.words {
		l.longest = max(l.longest, len(Tokens(w)))
	}
	return nil
}

// Canonical finds what a canonical name stands for: a heading of ours, or size,
// size_length, size2 or branch_size with the first of its columns.
func Canonical(name string) (c takeoff.Column, of SizeOf, ok bool) {
	if m, ok := sizeNames[name]; ok {
		return m.column, m.size, true
	}
	c, ok = columnOf(name)
	return c, NoSize, ok
}
