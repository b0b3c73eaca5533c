package workbook

import (
	"encoding/xml"
	"math"
	"strconv"
	"strings"
)

// odsText is the text of a cell: paragraphs, with runs, links and spaces in
// them.
type odsText struct{ b strings.Builder }

func (x *odsText) String() string { return x.b.String() }

// UnmarshalXML gathers the text of the paragraphs.
func (x *odsText) UnmarshalXML(d *xml.Decoder, start xml.StartElement) error {
	depth, paragraphs := 0, 0
	for {
		tok, err := d.Token()
		if err != nil {
			return err
		}
		switch e := tok.(type) {
		case xml.StartElement:
			if e.Name.Space != textNS && e.Name.Local != "a" { // a remark pinned to the cell, a drawing
				if err := d.Skip(); err != nil {
					return err
				}
				continue
			}
			depth++
			switch e.Name.Local {
			case "p":
				if paragraphs++; paragraphs > 1 {
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
		case xml.EndElement:
			if depth == 0 {
				return nil
			}
			depth--
		case xml.CharData:
			if depth > 0 {
				x.b.Write(e)
			}
		}
	}
}

// odsValue is what a cell says: its stored value where it has one, so that a
// number keeps all its digits, else its text.
func odsValue(e xml.StartElement, text string) string {
	formula := attr(e, "formula")
	switch kind := attr(e, "value-type"); kind {
	case "float", "currency":
		n, err := strconv.ParseFloat(attr(e, "value"), 64)
		switch {
		case strings.HasPrefix(text, "#") || strings.HasPrefix(text, "Err:"):
			return text // the value of an error is 0
		case err != nil || math.IsInf(n, 0) || math.IsNaN(n):
			return text
		}
		return odsFormat(text).show(attr(e, "value"), n, false)
	case "percentage":
		n, err := strconv.ParseFloat(attr(e, "value"), 64)
		if err != nil {
			return text
		}
		return fifteen(n*100) + "%"
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
func odsFormat(text string) format {
	figure := func(r rune) bool { return r >= '0' && r <= '9' || strings.ContainsRune(".,'-+ \u00a0\u202f", r) }
	first := strings.IndexFunc(text, func(r rune) bool { return r >= '0' && r <= '9' })
	if first < 0 {
		return format{}
	}
	var f format
	last := strings.LastIndexFunc(text, func(r rune) bool { return r >= '0' && r <= '9' })
	if p := text[:first]; strings.ContainsFunc(p, telling) {
		f.prefix = p
	}
	if s := text[last+1:]; strings.ContainsFunc(s, telling) {
		f.suffix = s
	}
	if middle := text[first : last+1]; strings.ContainsFunc(middle, func(r rune) bool { return !figure(r) }) {
		return format{} // 2'-6", 1E+03: the stored value counts
	}
	if lead := text[first : last+1]; len(lead) > 1 && lead[0] == '0' && strings.Trim(lead, "0123456789") == "" {
		f.digits = len(lead)
	}
	return f
}
