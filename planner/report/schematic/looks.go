package schematic

import "blankoff/planner/report"

// Look is how a section's lines are drawn: a colour and a pattern, so that
// neighbours are told apart in print and by people who see few colours.
type Look struct {
	Colour  string // #rrggbb
	Pattern int    // of Patterns
}

// colours keep apart for the usual kinds of colour blindness: those of Okabe
// and Ito (2008, "Color Universal Design"), from memory, without the yellow that
// is too pale on white and with a grey for the black that text is in.
var colours = []string{"#0072b2", "#d55e00", "#009e73", "#cc79a7", "#56b4e9", "#e69f00", "#555555"}

// Patterns is the number of patterns.
const Patterns = 6

// Looks gives every section a look that differs in colour and in pattern from
// those of the sections it is cut from.
func Looks(v *report.Plan) []Look {
	at := map[string]int{}
	for i := range v.Sections {
		at[v.Sections[i].ID] = i
	}
	next := make([][]int, len(v.Sections))
	for i := range v.Cuts {
		a, b := at[v.Cuts[i].Parts[0]], at[v.Cuts[i].Parts[1]]
		next[a], next[b] = append(next[a], b), append(next[b], a)
	}
	looks := make([]Look, len(v.Sections))
	for i := range looks {
		looks[i] = lookFor(i, next[i], looks)
	}
	return looks
}

func lookFor(i int, next []int, looks []Look) Look {
	for try := range len(colours) * Patterns {
		l := Look{colours[(i+try)%len(colours)], (i + try + try/len(colours)) % Patterns}
		free := true
		for _, k := range next {
			if k < i && (looks[k].Colour == l.Colour || looks[k].Pattern == l.Pattern) {
				free = false
			}
		}
		if free {
			return l
		}
	}
	return Look{colours[i%len(colours)], i % Patterns}
}
