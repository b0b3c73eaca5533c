package dress

import (
	"math"
	"slices"
	"strings"
	"unicode"
)

// stretch is figures of a number with the text that stands before them: in 0'-00" the
// second is '-00.
type stretch struct {
	before string
	marks  string // 0, # and ?, one for each figure
}

// section is a section of the code of a format while it is read.
type section struct {
	Format
	literal   strings.Builder // since the last figure, as far as it may bear on the meaning
	between   strings.Builder // the same with every sign
	number    bool            // figures have begun
	point     bool
	otherwise bool // as a fraction or with an exponent
}

// readSection reads one section of a format.
func readSection(code string) Format {
	var s section
	rs := []rune(strings.ReplaceAll(strings.ReplaceAll(code, "General", "#"), "GENERAL", "#"))
	for i := 0; i < len(rs) && rs[i] != ';'; i++ {
		switch r := rs[i]; {
		case r == '"':
			end := i + 1 + max(0, slices.Index(rs[i+1:], '"'))
			s.write(string(rs[i+1 : end]))
			i = end
		case r == '\\' && i+1 < len(rs):
			i++
			s.write(string(rs[i]))
		case r == '_' || r == '*':
			i++
		case r == '[':
			end := i + max(0, slices.Index(rs[i:], ']'))
			s.date = s.date || strings.Trim(string(rs[i:end]), "[hHmMsS") == ""
			if sign, ok := strings.CutPrefix(string(rs[i:end]), "[$"); ok {
				sign, _, _ = strings.Cut(sign, "-")
				s.write(sign)
			}
			i = end
		default:
			s.sign(r)
		}
	}
	return s.end()
}

// write takes in text that is shown as it stands.
func (s *section) write(text string) {
	s.literal.WriteString(text)
	s.between.WriteString(text)
}

// sign takes in a sign that isn't quoted.
func (s *section) sign(r rune) {
	switch {
	case r == '%':
		s.percent = true
	case r == '.':
		s.point = true
	case r == '0' || r == '#' || r == '?':
		s.figure(r)
	case r == ',' && s.number && s.literal.Len() == 0:
		s.scale++ // unless a figure follows: then it parts thousands
	case r == '@':
		s.around[0] = s.literal.String()
		s.literal.Reset()
		s.words = "@"
	case strings.ContainsRune("'′″°⌀ø", r):
		s.write(string(r))
	case s.number && strings.ContainsRune("eE/", r):
		s.otherwise = true
	case strings.ContainsRune("yYmMdDhHsS", r):
		s.date = true
	case strings.ContainsRune("-+() :=~$", r):
		s.between.WriteRune(r)
	}
}

// figure takes in a place for a figure.
func (s *section) figure(r rune) {
	text := s.between.String()
	switch {
	case !s.number:
		s.number, s.Prefix, s.minus = true, s.literal.String(), strings.HasSuffix(strings.TrimSpace(text), "-")
		s.parts = append(s.parts, stretch{})
	case text == "" || s.otherwise:
	case s.point:
		s.unlike = true // text among the decimals
	default:
		s.parts = append(s.parts, stretch{before: text})
	}
	s.literal.Reset()
	s.between.Reset()
	if s.scale = 0; !s.point {
		s.parts[len(s.parts)-1].marks += string(r)
		if r == '0' {
			s.Digits++
		}
	}
}

// end gives the format when its section has been read.
func (s *section) end() Format {
	f, rest := s.Format, s.literal.String()
	if s.words == "@" {
		f.words, f.around[0], f.around[1] = "", told(f.around[0]), told(rest)
		return f
	}
	if !s.number {
		f.words = told(rest)
		f.unlike = f.unlike || f.words == "" && !f.date && !f.percent // it shows nothing
		return f
	}
	f.unlike = f.unlike || joins(backwards(f.Prefix)) || joins(rest)
	if !f.unlike {
		f.Prefix, rest = told(f.Prefix), told(rest)
	}
	f.minus = f.minus && f.Prefix == ""
	f.Suffix = rest
	if s.otherwise || !slices.ContainsFunc(f.parts[min(1, len(f.parts)):], func(p stretch) bool { return !p.groups() }) {
		f.parts = nil
	}
	return f
}

// joins reports a text beside figures that makes another number of them: 0"0" shows
// 300 as 3000.
func joins(text string) bool {
	t := strings.TrimLeft(text, ".,")
	if t != "" && unicode.IsDigit([]rune(t)[0]) {
		return true
	}
	return told(text) == "" && strings.ContainsFunc(text, unicode.IsDigit)
}

func backwards(text string) string {
	rs := []rune(text)
	slices.Reverse(rs)
	return string(rs)
}

// groups reports a stretch that a sign for thousands stands before: 1 500, 1'500.
func (p stretch) groups() bool {
	return len(p.marks) == 3 && (p.before == "" || strings.Trim(p.before, " \u00a0\u202f'’") == "")
}

// parted writes a number whose figures text lies between, as it is shown: 510 by
// 0'-00" is 5'-10". Where figures or a sign for decimals lie there, it is another
// number, unless the sign may part thousands.
func (f *Format) parted(n float64) (text string, unlike bool) {
	whole := strings.TrimPrefix(Fifteen(math.Trunc(n)), "-")
	_, decimals, _ := strings.Cut(Fifteen(n), ".")
	unlike = f.unlike || f.minus || f.scale > 0 || decimals != "" || strings.Trim(whole, "0123456789") != ""
	for i := len(f.parts) - 1; i >= 0; i-- {
		p := f.parts[i]
		at := max(0, len(whole)-len(p.marks))
		if i == 0 {
			at = 0
		}
		figures := whole[at:]
		whole = whole[:at]
		for len(figures) < len(p.marks) && strings.Contains(p.marks[:len(p.marks)-len(figures)], "0") {
			figures = "0" + figures
		}
		text = p.before + figures + text
		unlike = unlike || strings.ContainsFunc(p.before, unicode.IsDigit) || strings.ContainsAny(p.before, ".,") && len(p.marks) != 3
	}
	if n < 0 {
		text = "-" + text
	}
	return f.Prefix + text + f.Suffix, unlike
}
