package pdf

import (
	"bytes"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"

	"blankoff/planner/report/show"
)

// style is how a text is set: its size in points, bold, grey, white on black.
type style struct {
	size              float64
	bold, grey, white bool
}

// high is the distance from line to line, mm.
func (f style) high() float64 { return f.size * mmPerPoint * 1.22 }

const mmPerPoint = 25.4 / 72

// letters knows what the font has and how wide it is.
type letters struct {
	fonts  [2]*sfnt.Font // regular, bold
	buf    sfnt.Buffer
	ascii  [2][utf8.RuneSelf]float64
	others [2]map[rune]float64
}

// both are the two fonts, read once.
var both = sync.OnceValues(func() ([2]*sfnt.Font, error) {
	var out [2]*sfnt.Font
	for i, data := range [][]byte{liberationsansregular.TTF, liberationsansbold.TTF} {
		f, err := sfnt.Parse(data)
		if err != nil {
			return out, err
		}
		out[i] = f
	}
	return out, nil
})

// fontData is a font's own copy of its file, since the writer may change it.
func fontData(bold bool) []byte {
	if bold {
		return bytes.Clone(liberationsansbold.TTF)
	}
	return bytes.Clone(liberationsansregular.TTF)
}

func newLetters() (*letters, error) {
	fonts, err := both()
	if err != nil {
		return nil, err
	}
	l := &letters{fonts: fonts, others: [2]map[rune]float64{{}, {}}}
	for k := range fonts {
		for r := ' '; r < utf8.RuneSelf; r++ {
			l.ascii[k][r] = l.advance(k, r)
		}
	}
	return l, nil
}

// advance is the width of a letter in ems, below 0 where the font lacks it.
func (l *letters) advance(k int, r rune) float64 {
	f := l.fonts[k]
	g, err := f.GlyphIndex(&l.buf, r)
	if err != nil || g == 0 {
		return -1
	}
	em := fixed.I(int(f.UnitsPerEm()))
	a, err := f.GlyphAdvance(&l.buf, g, em, font.HintingNone)
	if err != nil {
		return -1
	}
	return float64(a) / float64(em)
}

func (l *letters) wide(k int, r rune) float64 {
	if r < utf8.RuneSelf {
		return l.ascii[k][r]
	}
	w, ok := l.others[k][r]
	if !ok {
		w = l.advance(k, r)
		l.others[k][r] = w
	}
	return w
}

// width is that of a text, mm.
func (l *letters) width(text string, f style) float64 {
	k := 0
	if f.bold {
		k = 1
	}
	sum := 0.0
	for _, r := range text {
		sum += max(0, l.wide(k, r))
	}
	return sum * f.size * mmPerPoint
}

// has says whether a letter can be set: the fonts hold it and it is written from
// left to right.
func (l *letters) has(r rune) bool {
	if r > 0xffff || !unicode.In(r, unicode.Latin, unicode.Greek, unicode.Cyrillic, unicode.Common, unicode.Inherited) || unicode.Is(unicode.Cf, r) {
		return false
	}
	return l.wide(0, r) >= 0 && l.wide(1, r) >= 0
}

// clean makes a text of a schedule fit to be set on one line: what can't be set
// becomes "?", which whole tells.
func (l *letters) clean(text string) (safe string, whole bool) {
	plain := true
	for i := 0; i < len(text) && plain; i++ {
		plain = text[i] >= ' ' && text[i] < 0x7f
	}
	if plain {
		return text, true
	}
	safe = show.Safe(text)
	whole = safe == text
	safe = strings.Join(strings.Fields(norm.NFC.String(safe)), " ")
	safe = strings.Map(func(r rune) rune {
		if l.has(r) {
			return r
		}
		whole = false
		return '?'
	}, safe)
	return safe, whole
}
