package headings

import (
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
)

// Word gives the word of ours for a cell of a column that holds words, and
// whether one was found. A kind may be several words, each of which has to be
// known: "coude rond" is a round bend.
func (l *Lexicon) Word(c takeoff.Column, cell string) (string, bool) {
	if w, ok := l.Exact(c, cell); ok || c != takeoff.Kind || len(cell) > 200 {
		return w, ok
	}
	parts := Tokens(cell)
	var found []phrase
	linked := false
	for len(parts) > 0 {
		n, p := l.phrase(parts)
		beside := l.besides(parts)
		switch {
		case n > 0 && n >= beside:
			p.aside = n == beside
			found, parts = append(found, p), parts[n:]
		case beside > 0:
			parts = parts[beside:]
		case len(found) > 0 && slices.Contains(links, parts[0]):
			linked, parts = true, parts[1:]
		default:
			return "", false
		}
	}
	if changesShape(found) {
		return fittings.Transition.String(), true
	}
	if len(found) == 0 || linked {
		return "", false
	}
	return whole(found)
}

// links are words between two shapes, in seven languages (from memory, unverified).
var links = []string{"to", "from", "auf", "von", "zu", "nach", "vers", "naar", "van", "op", "till", "fran", "a", "da"}

// changesShape reports a reducer or a transition with two shapes beside it: one to the
// other is a transition, as Übergang rechteckig auf rund or Taper rect/round.
func changesShape(found []phrase) bool {
	changes, shapes := false, []fittings.Shape{}
	for _, p := range found {
		s, isShape := fittings.ParseShape(p.word)
		k, _, of, ok := fittings.ParseDescription(p.word)
		switch {
		case isShape:
			shapes = append(shapes, s)
		case ok && of == fittings.NoShape && (k == fittings.Transition || k == fittings.Reducer):
			changes = true
		default:
			return false
		}
	}
	return changes && len(shapes) == 2 && shapes[0] != shapes[1]
}

// whole is what phrases say of a piece. What may stand beside any kind is left out where
// it is no style of the kind: pressed saddle, conical reducer.
func whole(found []phrase) (word string, ok bool) {
	word = described(slices.Clone(found))
	if _, _, _, ok = fittings.ParseDescription(word); ok {
		return word, true
	}
	changes := slices.ContainsFunc(found, func(p phrase) bool {
		k, _, _, ok := fittings.ParseDescription(p.word)
		return ok && (k == fittings.Reducer || k == fittings.Transition)
	})
	rest := slices.DeleteFunc(slices.Clone(found), func(p phrase) bool {
		style, is := fittings.ParseStyle(p.word)
		return is && !p.listed && (p.aside || changes && style == fittings.Conical)
	})
	if len(rest) == 0 || len(rest) == len(found) {
		return "", false
	}
	word = described(rest)
	_, _, _, ok = fittings.ParseDescription(word)
	return word, ok
}

// besides is how many words at the beginning of parts may stand beside a kind: galvanised,
// with turning vanes.
func (l *Lexicon) besides(parts []string) int {
	for n := min(4, len(parts)); n > 0; n-- {
		if _, known := l.beside[strings.Join(parts[:n], "")]; known {
			return n
		}
	}
	return 0
}

// BesideKind reports a word that may stand beside any kind.
func (l *Lexicon) BesideKind(word string) bool {
	_, known := l.beside[word]
	return known
}

// phrase is a kind, style or shape in our words. listed says that the lists of
// kinds have it, so that "straight" isn't a style.
type phrase struct {
	word   string
	listed bool
	aside  bool // it may stand beside any kind
}

// described joins what a cell says of a piece. A straight that is said to be
// straight, or a shape that is said twice, is said once; a straight together
// with another kind is nothing that we know.
func described(found []phrase) string {
	if len(found) == 1 {
		return found[0].word
	}
	straight, shape := -1, fittings.NoShape
	onceChanged(found)
	for i, p := range found {
		k, _, s, ok := fittings.ParseDescription(p.word)
		if !ok || k != fittings.Straight || !p.listed && p.word == "straight" {
			continue
		}
		if s == fittings.NoShape {
			found[i].word = "duct"
		}
		switch {
		case straight < 0:
			straight, shape = i, s
		case s == fittings.NoShape, s == shape:
			found[i].word = ""
		case shape == fittings.NoShape:
			found[straight].word = ""
			straight, shape = i, s
		}
	}
	var out []string
	for _, p := range found {
		if s, ok := fittings.ParseShape(p.word); ok && s == shape || straight >= 0 && p.word == "straight" || p.word == "" {
			continue
		}
		out = append(out, p.word)
	}
	for i, w := range out { // "rectangular straight": the shape of a kind, not of a style
		if _, shape := fittings.ParseShape(out[len(out)-1-i]); len(out) == 2 && w == "straight" && shape {
			out[i] = "duct"
		}
	}
	return strings.Join(out, " ")
}

// OfNoSize reports words that may stand beside a kind and say nothing of its sizes, nor of its
// shape.
func (l *Lexicon) OfNoSize(cell string) bool {
	words := Tokens(cell)
	for _, w := range words {
		_, shape := fittings.ParseShape(w)
		if _, known := l.cells[takeoff.Shape][w]; shape || known || l.besides([]string{w}) == 0 {
			return false
		}
	}
	return len(words) > 0
}

// onceChanged leaves one of several phrases for a change of shape, and no reducer beside it:
// trasformazione quadro tondo, taper square to round.
func onceChanged(found []phrase) {
	is := func(p phrase, kind fittings.Kind) bool {
		k, _, _, ok := fittings.ParseDescription(p.word)
		return ok && k == kind
	}
	first := slices.IndexFunc(found, func(p phrase) bool { return is(p, fittings.Transition) })
	for i := range found {
		if first >= 0 && (i > first && is(found[i], fittings.Transition) || is(found[i], fittings.Reducer)) {
			found[i].word = ""
		}
	}
}

// phrase translates the longest phrase at the beginning of parts: a kind, style
// or shape in any language, one or several. n is how many parts it has, 0 where it
// isn't known.
func (l *Lexicon) phrase(parts []string) (n int, p phrase) {
	for n = min(len(parts), l.longest); n > 0; n-- {
		key := strings.Join(parts[:n], "")
		for _, c := range [...]takeoff.Column{takeoff.Kind, takeoff.Shape, takeoff.Style} {
			w, ok := l.cells[c][key]
			if !ok && c == takeoff.Kind && len(key) > 4 {
				w, ok = l.cells[c][strings.TrimSuffix(key, "s")]
			}
			if ok {
				return n, phrase{word: w, listed: c == takeoff.Kind}
			}
		}
		typed := strings.Join(parts[:n], " ")
		_, kind := fittings.ParseKind(typed)
		_, style := fittings.ParseStyle(typed)
		_, shape := fittings.ParseShape(typed)
		if kind || style || shape {
			return n, phrase{word: typed}
		}
		if one, many := strings.CutSuffix(typed, "s"); many && len(one) > 2 { // bends
			if _, ok := fittings.ParseKind(one); ok {
				return n, phrase{word: one}
			}
		}
	}
	return 0, p
}
