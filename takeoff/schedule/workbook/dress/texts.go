package dress

import (
	"encoding/xml"
	"io"
	"regexp"
	"strconv"
	"strings"
)

// MaxText is how many shared texts there may be.
const MaxText = 500_000

// Texts reads the shared texts, up to one more than there may be. A text lies in
// si/t, or in parts of different looks in si/r/t; how it is spoken (rPh) isn't
// part of it.
func Texts(dec *xml.Decoder) (list []string, err error) {
	var text []byte
	depth, at, spoken := 0, 0, 0 // at: the depth of si
	var look RunLook
	inText := false
	for len(list) <= MaxText {
		tok, err := dec.Token()
		if err == io.EOF {
			return list, nil
		}
		if err != nil {
			return nil, err
		}
		switch e := tok.(type) {
		case xml.StartElement:
			depth++
			switch name := e.Name.Local; {
			case name == "si" && at == 0:
				at, text = depth, text[:0]
			case name == "rPh" && spoken == 0:
				spoken = depth
			case name == "r":
				look = RunLook{}
			case name == "strike" || name == "vertAlign":
				look.see(e)
			case name == "t" && at > 0 && spoken == 0:
				inText = true
			}
		case xml.CharData:
			if inText {
				text = append(text, look.Of(string(e))...)
			}
		case xml.EndElement:
			switch {
			case e.Name.Local == "r":
				look = RunLook{}
			case depth == at:
				list, at = append(list, Unescape(string(text))), 0
			case depth == spoken:
				spoken = 0
			}
			inText = false
			depth--
		}
	}
	return list, nil
}

// RunLook is how a run of a text looks, as far as it bears on what it says: text
// that is struck out isn't there, and a raised figure is a mark and no figure.
type RunLook struct{ Struck, Raised bool }

// see takes in a property of the run.
func (l *RunLook) see(e xml.StartElement) {
	value := ""
	for _, a := range e.Attr {
		if a.Name.Local == "val" {
			value = a.Value
		}
	}
	switch e.Name.Local {
	case "strike":
		l.Struck = value != "0" && value != "false"
	case "vertAlign":
		l.Raised = value == "superscript"
	}
}

var raisedFigures = strings.NewReplacer("0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")

// Of is what a text of the run says.
func (l *RunLook) Of(text string) string {
	switch {
	case l.Struck:
		return ""
	case l.Raised:
		return raisedFigures.Replace(text)
	}
	return text
}

// Rich is text that may be in parts of different looks.
type Rich struct {
	Text string `xml:"t"`
	Runs []struct {
		Look struct {
			Strike *Property `xml:"strike"`
			Align  *Property `xml:"vertAlign"`
		} `xml:"rPr"`
		Text string `xml:"t"`
	} `xml:"r"`
}

// Property is a property of a text or a style, with its value.
type Property struct {
	Value string `xml:"val,attr"`
}

// String is what is to be read of the text.
func (x Rich) String() string {
	s := x.Text
	for _, r := range x.Runs {
		l := RunLook{r.Look.Strike != nil && r.Look.Strike.Value != "0" && r.Look.Strike.Value != "false", r.Look.Align != nil && r.Look.Align.Value == "superscript"}
		s += l.Of(r.Text)
	}
	return Unescape(s)
}

var escaped = regexp.MustCompile(`_x[0-9A-Fa-f]{4}_`)

// Unescape gives back characters that a workbook writes as _x000D_.
func Unescape(s string) string {
	if !strings.Contains(s, "_x") {
		return s
	}
	return escaped.ReplaceAllStringFunc(s, func(e string) string {
		n, _ := strconv.ParseUint(e[2:6], 16, 16)
		return string(rune(n))
	})
}
