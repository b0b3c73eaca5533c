package workbook

import (
	"encoding/xml"
	"io"
)

// texts reads the shared texts, up to one more than there may be. A text lies in
// si/t, or in parts of different looks in si/r/t; how it is spoken (rPh) isn't
// part of it.
func texts(dec *xml.Decoder) (list []string, err error) {
	var text []byte
	depth, at, spoken := 0, 0, 0 // at: the depth of si
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
			case name == "t" && at > 0 && spoken == 0:
				inText = true
			}
		case xml.CharData:
			if inText {
				text = append(text, e...)
			}
		case xml.EndElement:
			switch {
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
