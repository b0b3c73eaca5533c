package text

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"blankoff/fittings"
	"blankoff/planner/report/sketch"
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

// Kind writes all there is to know of one kind, with its default style drawn.
func Kind(w io.Writer, k fittings.KindInfo) error { return KindStyle(w, k, fittings.NoStyle) }

// KindStyle writes all there is to know of one kind, with the given style drawn
// and worked out. NoStyle means the default style; nothing is drawn of a style
// that the kind doesn't have.
func KindStyle(w io.Writer, k fittings.KindInfo, style fittings.Style) error {
	b := bufio.NewWriter(w)
	paragraph(b, "", k.Name+": "+k.Doc)
	b.WriteString("\n")
	d, drawn := sketch.Of(k.Kind, style)
	if drawn {
		if d.Style != fittings.NoStyle {
			paragraph(b, "", "Drawn in style "+d.Style.String()+", not to scale:")
			b.WriteString("\n")
		}
		sketched(b, &d)
	}
	told(b, "other names", nonempty(strings.Join(k.Aliases, ", "))...)
	told(b, "styles", nonempty(strings.Join(styleWords(k.Styles), ", "))...)
	var shapes []string
	for _, s := range k.Shapes {
		shapes = append(shapes, s.String())
	}
	told(b, "shapes", nonempty(strings.Join(shapes, ", "))...)
	told(b, "needs", k.Needs...)
	told(b, "takes", k.Takes...)
	told(b, "area", k.Formula)
	told(b, "source", k.Source)
	told(b, "example", k.Example, fmt.Sprintf("area %.3f m2", k.ExampleArea))
	worked(b, k.Example)
	if drawn && styleOf(k.Example, k) != d.Style {
		told(b, "in style", d.Style.String()+": "+d.Row)
		worked(b, d.Row)
	}
	return b.Flush()
}

// told writes a heading and texts beside it.
func told(b *bufio.Writer, head string, texts ...string) {
	for i, t := range texts {
		if i > 0 {
			head = ""
		}
		paragraph(b, fmt.Sprintf("%-12s", head), t)
	}
}

func styleWords(styles []fittings.Style) []string {
	words := make([]string, len(styles))
	for i, s := range styles {
		words[i] = s.String()
		if i == 0 {
			words[i] += " (default)"
		}
	}
	return words
}

// styleOf is the style of an example row.
func styleOf(row string, k fittings.KindInfo) fittings.Style {
	p, err := sketch.ParseRow(row)
	if err == nil && p.Style == fittings.NoStyle && len(k.Styles) > 0 {
		return k.Styles[0]
	}
	return p.Style
}

// worked writes the working of a row, so that a reader can redo it. A row that
// can't be measured has none.
func worked(b *bufio.Writer, row string) {
	p, err := sketch.ParseRow(row)
	if err != nil {
		return
	}
	if text := fittings.Working(&p); text != "" {
		told(b, "working", strings.Split(text, "; ")...)
	}
	if text := fittings.OpeningWorking(&p); text != "" {
		told(b, "opening", strings.Split(text, "; ")...)
	}
}
