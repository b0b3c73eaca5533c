package workbook

import (
	"encoding/xml"
	"io"
	"regexp"
	"strconv"
	"strings"
)

// texts reads the shared texts, up to one more than there may be. A text lies in
// si/t, or in parts of different looks in si/r/t; how it is spoken (rPh) isn't
// part of it.
func texts(dec *xml.Decoder) (list []string, err error) {
	var text []byte
	depth, at, spoken := 0, 0, 0 // at: the depth of si
	var look runLook
	inText := false
	for len(list) <= maxText {
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
				look = runLook{}
			case name == "strike" || name == "vertAlign":
				look.see(e)
			case name == "t" && at > 0 && spoken == 0:
				inText = true
			}
		case xml.CharData:
			if inText {
				text = append(text, look.of(string(e))...)
			}
		case xml.EndElement:
			switch {
			case e.Name.Local == "r":
				look = runLook{}
			case depth == at:
				list, at = append(list, unescape(string(text))), 0
			case depth == spoken:
				spoken = 0
			}
			inText = false
			depth--
		}
	}
	return list, nil
}

// runLook is how a run of a text looks, as far as it bears on what it says: text
// that is struck out isn't there, and a raised figure is a mark and no figure.
type runLook struct{ struck, raised bool }

// see takes in a property of the run.
func (l *runLook) see(e xml.StartElement) {
	value := ""
	for _, a := range e.Attr {
		if a.Name.Local == "val" {
			value = a.Value
		}
	}
	switch e.Name.Local {
	case "strike":
		l.struck = value != "0" && value != "false"
	case "vertAlign":
		l.raised = value == "superscript"
	}
}

var raisedFigures = strings.NewReplacer("0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")

// of is what a text of the run says.
func (l *runLook) of(text string) string {
	switch {
	case l.struck:
		return ""
	case l.raised:
		return raisedFigures.Replace(text)
	}
	return text
}

// rich is text that may be in parts of different looks.
type rich struct {
	Text string `xml:"t"`
	Runs []struct {
		Look struct {
			Strike *property `xml:"strike"`
			Align  *property `xml:"vertAlign"`
		} `xml:"rPr"`
		Text string `xml:"t"`
	} `xml:"r"`
}

type property struct {
	Value string `xml:"val,attr"`
}

func (x rich) String() string {
	s := x.Text
	for _, r := range x.Runs {
		l := runLook{r.Look.Strike != nil && r.Look.Strike.Value != "0" && r.Look.Strike.Value != "false", r.Look.Align != nil && r.Look.Align.Value == "superscript"}
		s += l.of(r.Text)
	}
	return unescape(s)
}

var escaped = regexp.MustCompile(`_x[0-9A-Fa-f]{4}_`)

// unescape gives back characters that a workbook writes as _x000D_.
func unescape(s string) string {
	if !strings.Contains(s, "_x") {
		return s
	}
	return escaped.ReplaceAllStringFunc(s, func(e string) string {
		n, _ := strconv.ParseUint(e[2:6], 16, 16)
		return string(rune(n))
	})
}
