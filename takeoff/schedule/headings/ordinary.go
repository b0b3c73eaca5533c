package headings

import (
	"embed"
	"path"
	"strings"
	"sync"
)

//go:embed ordinary/*.txt
var ordinaryFiles embed.FS

// ordinary are words of remarks that bear on no area, as those of the list remark word, in small
// letters without accents; true for a thing at the duct. They are many, and read once a remark
// is: from memory, unverified.
var ordinary = sync.OnceValue(func() map[string]bool {
	all := make(map[string]bool, 1<<14)
	for _, language := range languages {
		name := path.Join("ordinary", language+".txt")
		data, err := ordinaryFiles.ReadFile(name)
		if err != nil {
			return all // a test reads them
		}
		for line := range strings.Lines(string(data)) {
			sort, words, _ := strings.Cut(line, ": ")
			for w := range strings.FieldsSeq(words) {
				all[w] = all[w] || sort == "thing"
			}
		}
	}
	return all
})

// remarkWord reports a word of remarks that bears on no area, and whether it is a thing at the
// duct.
func (l *Lexicon) remarkWord(w string) (thing, known bool) {
	if thing, known = l.harmless[w]; thing {
		return true, true
	}
	more, also := ordinary()[w]
	return more, known || also
}
