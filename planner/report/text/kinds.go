package text

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"blankoff/fittings"
)

// Kinds writes every kind of piece, the sizes it needs and its other names.
func Kinds(w io.Writer, kinds []fittings.KindInfo) error {
	b := bufio.NewWriter(w)
	b.WriteString("Kinds of piece; blankoff kinds KIND tells all of one\n\n")
	writeTable(b, []Column{{Head: "kind"}, {Head: "other names", Max: 38}, {Head: "needs"}}, func(row func(...string)) {
		for i := range kinds {
			k := &kinds[i]
			row(k.Name, strings.Join(k.Aliases, ", "), strings.Join(k.Needs, "; "))
		}
	})
	return b.Flush()
}

// Kind writes all there is to know of one kind.
func Kind(w io.Writer, k fittings.KindInfo) error {
	b := bufio.NewWriter(w)
	paragraph(b, "", k.Name+": "+k.Doc)
	b.WriteString("\n")
	say := func(head string, texts ...string) {
		for i, t := range texts {
			if i > 0 {
				head = ""
			}
			paragraph(b, fmt.Sprintf("%-12s", head), t)
		}
	}
	say("other names", nonempty(strings.Join(k.Aliases, ", "))...)
	var styles, shapes []string
	for i, s := range k.Styles {
		name := s.String()
		if i == 0 {
			name += " (default)"
		}
		styles = append(styles, name)
	}
	for _, s := range k.Shapes {
		shapes = append(shapes, s.String())
	}
	say("styles", nonempty(strings.Join(styles, ", "))...)
	say("shapes", nonempty(strings.Join(shapes, ", "))...)
	say("needs", k.Needs...)
	say("takes", k.Takes...)
	say("area", k.Formula)
	say("source", k.Source)
	say("example", k.Example, fmt.Sprintf("area %.3f m2", k.ExampleArea))
	return b.Flush()
}
