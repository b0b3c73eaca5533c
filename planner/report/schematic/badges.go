package schematic

import "blankoff/planner/report"

// Badge is where the name of a section stands: the middle of its upper edge; the
// run above it, and how long that is.
type Badge struct {
	Point
	Section int
	Run     float64 // its y
	Long    float64
}

// Badges puts the name of every section below its longest level run.
func Badges(d *report.Ductwork, p *Picture) []Badge {
	type run struct{ long, x, y float64 }
	best := map[int]run{}
	most := -1
	var now run
	last := -1
	for i := range p.Pieces {
		k := &p.Pieces[i]
		s := d.Nodes[k.Node].Section
		if s < 0 || len(k.Path) < 2 {
			last = -1
			continue
		}
		a, b := k.Path[len(k.Path)-2], k.Path[len(k.Path)-1]
		if a.Y != b.Y {
			continue
		}
		if last == s && now.y == a.Y && now.x+now.long == a.X {
			now.long += b.X - a.X
		} else {
			now = run{b.X - a.X, a.X, a.Y}
		}
		last, most = s, max(most, s)
		if o := now; o.long > best[s].long {
			best[s] = o
		}
	}
	var out []Badge
	for s := 0; s <= most; s++ {
		if r, ok := best[s]; ok {
			out = append(out, Badge{Point{r.x + r.long/2, r.y + 7}, s, r.y, r.long})
		}
	}
	return out
}
