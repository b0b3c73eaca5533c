package duty

import (
	"fmt"
	"sort"
	"strings"
)

// KeptSection is a section of an earlier plan that has to stay as it is.
type KeptSection struct {
	ID    string
	Spans []KeptSpan
}

// KeptSpan is a row, or a stretch of the pieces of one, from 1.
type KeptSpan struct {
	Tag      string
	From, To int
}

// Key names what a section is made of, whatever the order.
func (k KeptSection) Key() string {
	var parts []string
	for _, s := range k.Spans {
		parts = append(parts, fmt.Sprintf("%q %d-%d", s.Tag, s.From, s.To))
	}
	sort.Strings(parts)
	return strings.Join(parts, " ")
}

// keepSections bars the joints inside each kept section and ends sections at its
// bounds.
func (z *Zones) keepSections() {
	owner := map[int]string{}
	for _, s := range z.Rows.set.Kept {
		for _, span := range s.Spans {
			for _, k := range z.Net.Find(span.Tag, 0) {
				if n := &z.Net.Nodes[k]; n.First >= span.From && n.Last <= span.To {
					owner[k] = s.ID
				}
			}
		}
	}
	if len(owner) == 0 {
		return
	}
	for k := range z.Net.Joints {
		j := &z.Net.Joints[k]
		a, b := owner[j.A], owner[j.B]
		switch {
		case z.Must[k] != "" || a == "" && b == "":
		case a == b && j.Barred == "":
			j.Barred = keptIn + a
		case a != b:
			z.Must[k] = keptBound(a, b)
		}
	}
}

func keptBound(a, b string) string {
	if a == "" {
		a = b
	}
	return boundOf + a + ", which is kept"
}

const keptIn, boundOf = "kept in ", "bound of "

// OnlyKept reports whether a joint is barred only because an earlier plan's
// section stays whole: a blank could be got into it.
func OnlyKept(barred string) bool { return strings.HasPrefix(barred, keptIn) }

// BoundOfKept reports whether a joint is cut because an earlier plan's section
// ends there.
func BoundOfKept(must string) bool { return strings.HasPrefix(must, boundOf) }
