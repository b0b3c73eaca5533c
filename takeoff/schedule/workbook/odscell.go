package workbook

import (
	"encoding/xml"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"blankoff/takeoff/schedule/workbook/dress"
)

// odsText is the text of a cell: paragraphs, with runs, links and spaces in
// them.
type odsText struct {
	b          strings.Builder
	looks      map[string]dress.RunLook // of the spans, by style
	inner      bool                     // a table lies in the cell that says something
	drawn      bool                     // a picture lies in it
	remark     bool                     // one is pinned to it
	comment    string                   // what it says
	paragraphs int
}

func (x *odsText) String() string { return x.b.String() }

// UnmarshalXML gathers the text of the paragraphs.
func (x *odsText) UnmarshalXML(d *xml.Decoder, start xml.StartElement) error {
	var within []dress.RunLook // of the elements that are open
	for {
		tok, err := d.Token()
		if err != nil {
			return err
		}
		switch e := tok.(type) {
		case xml.StartElement:
			if e.Name.Space != textNS && e.Name.Local != "a" || e.Name.Local == "ruby-text" {
				if err := x.beside(d, e); err != nil {
					return err
				}
				continue
			}
			look := x.looks[attr(e, "style-name")]
			if n := len(within); n > 0 {
				look.Struck, look.Raised = look.Struck || within[n-1].Struck, look.Raised || within[n-1].Raised
			}
			within = append(within, look)
			if err := x.open(e); err != nil {
				return err
			}
		case xml.EndElement:
			if len(within) == 0 {
				return nil
			}
			within = within[:len(within)-1]
		case xml.CharData:
			if n := len(within); n > 0 {
				x.b.WriteString(within[n-1].Of(string(e)))
			}
		}
	}
}

// open writes what an element of a text stands for.
func (x *odsText) open(e xml.StartElement) error {
	switch e.Name.Local {
	case "p":
		if x.paragraphs++; x.paragraphs > 1 {
			x.b.WriteByte('\n')
		}
	case "s":
		n, err := repeats(e, "c", 1000)
		if err != nil {
			return err
		}
		x.b.WriteString(strings.Repeat(" ", n))
	case "tab":
		x.b.WriteByte('\t')
	case "line-break":
		x.b.WriteByte('\n')
	}
	return nil
}

// beside passes over what isn't text of the cell: a remark pinned to it, a drawing, how
// a text is spoken. A table is looked at.
func (x *odsText) beside(d *xml.Decoder, e xml.StartElement) error {
	if e.Name.Space != tableNS || e.Name.Local != "table" {
		x.drawn = x.drawn || e.Name.Local == "frame"
		if e.Name.Local == "annotation" {
			x.remark = true
			text, err := commentText(d, "p")
			x.comment = text
			return err
		}
		return d.Skip()
	}
	filled, err := inner(d)
	x.inner = x.inner || filled
	return err
}

// odsNumber is what a cell with a number says: the number with all its digits and what
// is shown beside it; what is shown where that is another number. unlike reports that
// it is another by more than its scale.
func odsNumber(value, text string) (says string, unlike bool) {
	n, err := strconv.ParseFloat(value, 64)
	switch {
	case strings.HasPrefix(text, "#") || strings.HasPrefix(text, "Err:"):
		return text, false // the value of an error is 0
	case err != nil || math.IsInf(n, 0) || math.IsNaN(n), text != "" && splits(text, value, n):
		return text, false
	case text != "" && !shows(text, n):
		return text, strings.ContainsAny(text, "0123456789") && !shows(text, n/1e3) && !shows(text, n/1e6)
	}
	f := odsFormat(text)
	return f.Show(value, n, false)
}

// figuresOf leaves the figures of a text.
func figuresOf(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, text)
}

// splits reports a text that shows a whole number with text between its figures, as
// 5'-10" or 3m50 for 510 and 350, or with figures of its own behind it, as 600 x 400.
// Not so a fraction or a time.
func splits(text, value string, n float64) bool {
	found := figures.FindAllString(text, -1)
	if len(found) < 2 {
		return false
	}
	from := strings.Index(text, found[0]) + len(found[0])
	if strings.ContainsAny(text[from:strings.LastIndex(text, found[len(found)-1])], "/:") {
		return false
	}
	all := figuresOf(text)
	return all == value || strings.TrimLeft(all, "0") == value || shows(found[0], n)
}

// odsValue is what a cell says: its stored value where it has one, so that a
// number keeps all its digits, else its text.
func odsValue(e xml.StartElement, text string) string {
	formula := attr(e, "formula")
	switch kind := attr(e, "value-type"); kind {
	case "currency":
		return text
	case "percentage":
		n, err := strconv.ParseFloat(attr(e, "value"), 64)
		if err != nil {
			return text
		}
		return dress.Fifteen(n*100) + "%"
	case "date":
		return strings.Replace(strings.TrimSuffix(attr(e, "date-value"), "T00:00:00"), "T", " ", 1)
	case "boolean":
		return strings.ToUpper(attr(e, "boolean-value"))
	case "":
		if formula != "" && text == "" {
			return "=" + strings.TrimPrefix(formula, "of:=")
		}
	}
	return text
}

// odsFormat is what the shown text of a number adds to it: a unit before or
// behind it, as in T-001 or 600 mm.
func odsFormat(text string) dress.Format {
	figure := func(r rune) bool { return r >= '0' && r <= '9' || strings.ContainsRune(".,'-+ \u00a0\u202f", r) }
	first := strings.IndexFunc(text, func(r rune) bool { return r >= '0' && r <= '9' })
	if first < 0 {
		return dress.Format{}
	}
	var f dress.Format
	last := strings.LastIndexFunc(text, func(r rune) bool { return r >= '0' && r <= '9' })
	if p := text[:first]; strings.ContainsFunc(p, dress.Telling) {
		f.Prefix = p
	}
	if s := text[last+1:]; strings.ContainsFunc(s, dress.Telling) {
		f.Suffix = s
	}
	if middle := text[first : last+1]; strings.ContainsFunc(middle, func(r rune) bool { return !figure(r) }) {
		return dress.Format{} // 2'-6", 1E+03: the stored value counts
	}
	if lead := text[first : last+1]; len(lead) > 1 && lead[0] == '0' && strings.Trim(lead, "0123456789") == "" {
		f.Digits = len(lead)
	}
	return f
}

// figures are the figures of a shown number with what parts them.
var figures = regexp.MustCompile(`\d[\d.,' \x{a0}\x{202f}\x{2019}]*`)

// shows reports whether a text can show a number as it is stored, but for rounding: not
// so TRUE, or 0.5 m where 500 is stored. It is true where the text isn't plain.
func shows(text string, n float64) bool {
	found := figures.FindAllString(text, -1)
	if len(found) == 0 {
		return !strings.ContainsFunc(text, unicode.IsLetter)
	}
	if len(found) > 1 || strings.ContainsAny(text, "/:") { // 2'-6", 1E+03, 1/2, a time
		return true
	}
	t := strings.Map(func(r rune) rune {
		if r == '.' || r == ',' || r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, strings.TrimRight(found[0], " .,'\u00a0\u202f\u2019"))
	for _, decimals := range []string{".", ",", ""} {
		whole, part := t, ""
		if at := strings.LastIndex(t, decimals); decimals != "" && at >= 0 {
			whole, part = t[:at], t[at+1:]
		}
		whole = strings.NewReplacer(".", "", ",", "").Replace(whole)
		v, err := strconv.ParseFloat(whole+"."+part, 64)
		if err == nil && math.Abs(v-math.Abs(n)) <= 0.51*math.Pow(10, -float64(len(part))) {
			return true
		}
	}
	return false
}
