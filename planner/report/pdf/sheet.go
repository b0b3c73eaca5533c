package pdf

import (
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// The page is A4, upright; its left margin leaves room for a binder's holes. mm.
const (
	left, right = 16.0, 198.0
	top, bottom = 8.5, 288.5
	wide        = right - left
)

// sheet is the document being written. Lengths are in mm from the upper left
// corner of the page.
type sheet struct {
	*letters
	pdf    *fpdf.Fpdf
	set    style
	lacked bool        // a letter of this page couldn't be set
	seen   func(trace) // told of all that is drawn; nil where nobody looks
}

// trace is something that was drawn.
type trace struct {
	page           int
	x0, y0, x1, y1 float64
	text           string // empty for a line
	size           float64
}

// day stands in both dates of the document, so that the same plan gives the same
// bytes; it is the day of nothing.
var day = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

func newSheet(title string) (*sheet, error) {
	l, err := newLetters()
	if err != nil {
		return nil, err
	}
	s := &sheet{letters: l, pdf: fpdf.New("P", "mm", "A4", "")}
	p := s.pdf
	p.SetCreationDate(day)
	p.SetModificationDate(day)
	p.SetCatalogSort(true)
	p.SetProducer("", false)
	p.SetTitle(s.safe(title), true)
	p.SetLang("en")
	p.SetMargins(0, 0, 0)
	p.SetCellMargin(0)
	p.SetAutoPageBreak(false, 0)
	p.AddUTF8FontFromBytes("sans", "", fontData(false))
	p.AddUTF8FontFromBytes("sans", "B", fontData(true))
	p.SetLineCapStyle("butt")
	return s, p.Error()
}

// page begins a page with its name in the outline.
func (s *sheet) page(name string) {
	s.pdf.AddPage()
	s.lacked, s.set = false, style{}
	s.font(style{size: 9})
	s.pdf.Bookmark(s.safe(name), 0, 0)
}

// safe is a text as it can be set.
func (s *sheet) safe(text string) string {
	text, whole := s.clean(text)
	s.lacked = s.lacked || !whole
	return text
}

func (s *sheet) font(f style) {
	if f == s.set {
		return
	}
	if f.bold != s.set.bold || f.size != s.set.size || s.set.size == 0 {
		weight := ""
		if f.bold {
			weight = "B"
		}
		s.pdf.SetFont("sans", weight, f.size)
	}
	grey := 0
	switch {
	case f.white:
		grey = 255
	case f.grey:
		grey = 80
	}
	s.pdf.SetTextColor(grey, grey, grey)
	s.set = f
}

// text sets one line of clean text; y is its foot.
func (s *sheet) text(x, y float64, text string, f style) {
	if text == "" {
		return
	}
	s.font(f)
	s.pdf.Text(x, y, text)
	if s.seen != nil {
		rise := f.size * mmPerPoint
		s.seen(trace{s.pdf.PageNo(), x, y - 0.72*rise, x + s.width(text, f), y + 0.2*rise, text, f.size})
	}
}

// toRight sets a line that ends at x.
func (s *sheet) toRight(x, y float64, text string, f style) { s.text(x-s.width(text, f), y, text, f) }

// line draws a line of a weight, mm, and a grey from 0, black, to 255.
func (s *sheet) line(weight float64, grey int, points ...float64) {
	s.pdf.SetLineWidth(weight)
	s.pdf.SetDrawColor(grey, grey, grey)
	s.pdf.MoveTo(points[0], points[1])
	for i := 2; i < len(points); i += 2 {
		s.pdf.LineTo(points[i], points[i+1])
		s.look(min(points[i-2], points[i])-weight/2, min(points[i-1], points[i+1])-weight/2, max(points[i-2], points[i])+weight/2, max(points[i-1], points[i+1])+weight/2)
	}
	s.pdf.DrawPath("D")
}

// box draws a frame, filled with a grey from 0, black, to 255, white.
func (s *sheet) box(x, y, w, h, weight float64, fill int) {
	s.pdf.SetLineWidth(weight)
	s.pdf.SetDrawColor(0, 0, 0)
	s.pdf.SetFillColor(fill, fill, fill)
	s.pdf.Rect(x, y, w, h, "FD")
	s.look(x-weight/2, y-weight/2, x+w+weight/2, y+h+weight/2)
}

func (s *sheet) look(x0, y0, x1, y1 float64) {
	if s.seen != nil {
		s.seen(trace{page: s.pdf.PageNo(), x0: x0, y0: y0, x1: x1, y1: y1})
	}
}

// word is a word in its style.
type word struct {
	text string
	style
}

// words parts a text of the schedule into words of one style.
func (s *sheet) words(text string, f style) []word {
	var out []word
	for _, w := range strings.Fields(s.safe(text)) {
		out = append(out, word{w, f})
	}
	return out
}

// lines sets words in lines of a width; words that are longer are broken. Past
// the most lines, if that is over 0, the last ends in dots.
func (s *sheet) lines(words []word, width float64, most int) [][]word {
	var out [][]word
	var now []word
	used := 0.0
	for _, w := range words {
		for _, part := range s.broken(w, width) {
			need := s.width(part.text, part.style)
			if gap := s.width(" ", part.style); len(now) > 0 && used+gap+need > width+1e-6 {
				out, now, used = append(out, now), nil, 0
			} else if len(now) > 0 {
				used += gap
			}
			now, used = append(now, part), used+need
		}
	}
	if len(now) > 0 {
		out = append(out, now)
	}
	if most > 0 && len(out) > most {
		out = out[:most]
		out[most-1] = s.dotted(out[most-1], width)
	}
	return out
}

// broken parts a word that is longer than a line.
func (s *sheet) broken(w word, width float64) []word {
	var out []word
	for s.width(w.text, w.style) > width {
		n, sum := 0, 0.0
		for i, r := range w.text {
			if sum += s.width(string(r), w.style); sum > width && i > 0 {
				break
			}
			n = i + len(string(r))
		}
		out = append(out, word{w.text[:n], w.style})
		w.text = w.text[n:]
	}
	return append(out, w)
}

// dotted ends a line in dots.
func (s *sheet) dotted(line []word, width float64) []word {
	line = append([]word(nil), line...)
	used := 0.0
	for i, w := range line {
		gap := 0.0
		if i > 0 {
			gap = s.width(" ", w.style)
		}
		if i == len(line)-1 {
			line[i].text = s.clip(w.text+" …", w.style, width-used-gap)
		}
		used += gap + s.width(w.text, w.style)
	}
	return line
}

// clip shortens clean text to a width, ending it in dots.
func (s *sheet) clip(text string, f style, width float64) string {
	if s.width(text, f) <= width {
		return text
	}
	room := width - s.width("…", f)
	sum := 0.0
	for i, r := range text {
		if sum += s.width(string(r), f); sum > room {
			return strings.TrimRight(text[:i], " ") + "…"
		}
	}
	return text
}

// put sets lines below y and returns where they end.
func (s *sheet) put(x, y float64, lines [][]word) float64 {
	for _, line := range lines {
		high, at := 0.0, x
		for _, w := range line {
			high = max(high, w.high())
		}
		y += high
		for i := 0; i < len(line); { // words of one style are set together
			k, text := i+1, line[i].text
			for ; k < len(line) && line[k].style == line[i].style; k++ {
				text += " " + line[k].text
			}
			s.text(at, y-0.26*high, text, line[i].style)
			at += s.width(text, line[i].style) + s.width(" ", line[i].style)
			i = k
		}
	}
	return y
}

// deep is the height of lines.
func deep(lines [][]word) float64 {
	sum := 0.0
	for _, line := range lines {
		high := 0.0
		for _, w := range line {
			high = max(high, w.high())
		}
		sum += high
	}
	return sum
}
