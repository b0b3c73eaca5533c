package ledger

import "blankoff/fittings"

// placed is where another ledger has what a ledger has filed, in the order of its lists.
type placed struct {
	in                   *Ledger // the other one
	sheets, names, faces []int32
}

// Add puts the lines of another ledger after those that it has, and says where
// they begin.
func (g *Ledger) Add(o *Ledger) (first int) {
	first, text, rest := len(g.Lines), len(g.Text), int32(len(g.More))
	p := g.filed(o)
	g.Text = append(g.Text, o.Text...)
	g.More = append(g.More, o.More...)
	g.Lines = append(g.Lines, o.Lines...)
	g.straights, g.short, g.narrow, g.Several, g.bare = g.straights+o.straights, g.short+o.short, g.narrow+o.narrow, g.Several+o.Several, g.bare+o.bare
	g.brief, g.slight = g.brief+o.brief, g.slight+o.slight
	for i := first; i < len(g.Lines); i++ {
		l := &g.Lines[i]
		l.Text += text
		l.Sheet, l.System, l.Level = p.sheets[l.Sheet], p.names[l.System], p.names[l.Level]
		if l.More >= 0 {
			l.More += rest
			g.More[l.More].Line = int32(i)
		}
		for e := range l.Faces {
			if l.Roles>>e != 0 {
				l.Faces[e] = p.faces[l.Faces[e]]
			}
		}
	}
	return first
}

// filed is where the ledger has what another has filed; what stays filed there is looked
// for once.
func (g *Ledger) filed(o *Ledger) *placed {
	p := &o.placed
	if p.in != g {
		*p = placed{in: g}
	}
	for _, s := range o.Sheets[len(p.sheets):] {
		p.sheets = append(p.sheets, g.FileSheet(s))
	}
	for _, s := range o.Names[len(p.names):] {
		p.names = append(p.names, g.Name(s))
	}
	for _, f := range o.Faces[len(p.faces):] {
		p.faces = append(p.faces, g.Face(f.CrossSection, func(fittings.CrossSection) string { return f.Note }))
	}
	return p
}
