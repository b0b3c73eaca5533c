package text

import (
	"bufio"
	_ "embed"
	"fmt"
	"strings"

	"blankoff/planner/report/sketch"
)

// drawings.txt holds a drawing of every kind and style in plain ASCII, at most
// 14 lines of 60 columns, each after a line of "== " and its name. They are drawn
// by hand, not to scale. What their letters stand for isn't in it: package sketch
// says that, for these and for the true drawings alike.
//
//go:embed drawings.txt
var drawingsText string

// drawing gives the lines of the drawing of that name, or none.
func drawing(name string) []string {
	for part := range strings.SplitSeq(drawingsText, "== ") {
		head, lines, _ := strings.Cut(part, "\n")
		if head == name {
			return strings.Split(strings.TrimSuffix(lines, "\n"), "\n")
		}
	}
	return nil
}

// sketched writes a drawing and its letters.
func sketched(b *bufio.Writer, d *sketch.Drawing) {
	for _, line := range drawing(d.Name()) {
		b.WriteString(strings.TrimRight("  "+line, " ") + "\n")
	}
	b.WriteString("\n")
	for _, m := range d.Legend {
		text := strings.Join(m.Headings, " or ")
		if m.Note != "" {
			text += ", " + m.Note
		}
		paragraph(b, fmt.Sprintf("  %-7s", m.Letter), text)
	}
	b.WriteString("\n")
}
