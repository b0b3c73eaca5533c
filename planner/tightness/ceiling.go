package tightness

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Words writes a pressure, Pa, for the sentences of a ceiling: its figure and
// its unit. nil writes Pa.
type Words func(pa float64) (figure, unit string)

// Ceiling is the most a duct may be pressed for a test.
type Ceiling struct {
	// Pa is the ceiling, a magnitude; 0 unless Known.
	Pa    float64
	Known bool
	// Highest is the ceiling of the strongest duct the scheme provides for; 0
	// where it names none. Above it no duct of the scheme may be tested, even
	// while the duct's own pressure class isn't known.
	Highest float64
	// Reason says it in a sentence: "class B, circular, positive: at most
	// 1000 Pa", or what has to be stated before it can be known.
	Reason   string
	Source   string
	Sureness string

	words Words
}

// rule is one ceiling of the scheme's file.
type rule struct {
	classes []string // empty: every class
	shapes  []Shape  // empty: every shape
	sign    Sign
	pa      float64 // 0: the duct's own pressure class
	// ductClasses are the pressure classes the scheme knows, ascending.
	ductClasses      []float64
	source, sureness string
}

func (r rule) covers(class string, shape Shape, sign Sign) bool {
	return r.sign == sign &&
		(len(r.classes) == 0 || slices.Contains(r.classes, class)) &&
		(len(r.shapes) == 0 || slices.Contains(r.shapes, shape))
}

// Ceiling is the highest test pressure for a class, shape and sign.
// ductClassPa is the pressure the duct is built for, Pa, 0 where it isn't
// stated; a stated one always caps, whatever the scheme permits. Flat-oval
// follows FlatOvalAs unless the scheme has a ceiling for it.
//
// Where the scheme leaves the ceiling to the duct's pressure class and that
// isn't stated, Known is false and Reason asks for it; nothing is guessed.
func (s *Scheme) Ceiling(c Class, shape Shape, sign Sign, ductClassPa float64) Ceiling {
	return s.CeilingIn(nil, c, shape, sign, ductClassPa)
}

// CeilingIn is [Scheme.Ceiling] with its sentences in these words.
func (s *Scheme) CeilingIn(w Words, c Class, shape Shape, sign Sign, ductClassPa float64) Ceiling {
	at := fmt.Sprintf("class %s, %s, %s: ", c.Name, shape, sign)
	r, found := s.rule(c, shape, sign)
	out := Ceiling{Source: r.source, Sureness: r.sureness, Highest: r.pa, words: w}
	if n := len(r.ductClasses); n > 0 {
		out.Highest = r.ductClasses[n-1]
	}
	stated := ductClassPa > 0
	switch {
	case stated && out.Highest > 0 && ductClassPa >= out.Highest:
		out.Pa, out.Known, out.Reason = out.Highest, true, at+"at most "+w.say(out.Highest)
	case stated:
		out.Pa, out.Known = ductClassPa, true
		out.Reason = at + "at most " + w.say(ductClassPa) + ", the duct's own pressure class" + r.remark(w, ductClassPa)
		out.Source, out.Sureness = "the duct's own pressure class, as stated", Read
	case !found:
		out.Reason = at + "scheme " + s.Name + " names no ceiling, state the duct's pressure class (duct_class_pa)"
		out.Source, out.Sureness = s.Source, s.Sureness
	case r.pa > 0:
		out.Pa, out.Known, out.Reason = r.pa, true, at+"at most "+w.say(r.pa)
	default:
		out.Reason = at + "the ceiling is the duct's pressure class, which isn't stated" + r.ask(w)
	}
	return out
}

// rule finds the one that governs; Load makes sure that there is only one.
func (s *Scheme) rule(c Class, shape Shape, sign Sign) (rule, bool) {
	try := []Shape{shape}
	if shape == FlatOval {
		try = append(try, s.FlatOvalAs)
	}
	for _, shape := range try {
		for _, r := range s.ceilings {
			if r.covers(c.Name, shape, sign) {
				return r, true
			}
		}
	}
	return rule{}, false
}

// remark warns of a stated pressure class that the scheme doesn't know.
func (r rule) remark(w Words, pa float64) string {
	if len(r.ductClasses) == 0 || slices.Contains(r.ductClasses, pa) {
		return ""
	}
	text := " (the scheme's pressure classes are " + w.list(r.ductClasses) + ")"
	if i := int(pa); float64(i) == pa && i <= len(r.ductClasses) {
		text += fmt.Sprintf("; if pressure class %d was meant, state %s", i, w.say(r.ductClasses[i-1]))
	}
	return text
}

func (r rule) ask(w Words) string {
	if len(r.ductClasses) == 0 {
		return ": state it (duct_class_pa)"
	}
	list := w.list(r.ductClasses)
	if strings.HasSuffix(list, " Pa") {
		return ": state it (duct_class_pa: " + list + ")"
	}
	return ": state it under a heading with its unit: " + list // duct_class_pa is in Pa
}

// Permits says whether a test at pa (a magnitude, Pa) may go ahead, and why
// not. While the ceiling isn't known only a pressure above Highest is refused,
// and the reason asks for what is missing.
func (c Ceiling) Permits(pa float64) (ok bool, reason string) {
	most := c.Highest
	if c.Known {
		most = c.Pa
	}
	// A pressure that came through in. w.g. may be off in its last digit.
	if most > 0 && pa > most*(1+1e-9) {
		return false, "not permitted: at most " + c.words.say(most)
	}
	if !c.Known {
		return true, c.Reason
	}
	return true, ""
}

// write is the figure and the unit of a pressure.
func (w Words) write(pa float64) (figure, unit string) {
	if w != nil {
		return w(pa)
	}
	return strconv.FormatFloat(pa, 'g', 7, 64), "Pa"
}

func (w Words) say(pa float64) string {
	figure, unit := w.write(pa)
	return figure + " " + unit
}

func (w Words) list(pa []float64) string {
	if len(pa) == 0 {
		return ""
	}
	last := len(pa) - 1
	if last == 0 {
		return w.say(pa[0])
	}
	var figures []string
	for _, v := range pa[:last] {
		figure, _ := w.write(v)
		figures = append(figures, figure)
	}
	return strings.Join(figures, ", ") + " or " + w.say(pa[last])
}
