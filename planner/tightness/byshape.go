package tightness

import "fmt"

// byShape is a name that stands for a class that depends on the duct's shape,
// such as the leakage class that goes with a seal class.
type byShape struct {
	name             string
	class            map[Shape]string
	source, sureness string
}

// ClassFor is [Scheme.Class] for duct of a shape: a name that stands for another
// class in each shape gives the one for this shape. note says so, and how sure
// that is; it is empty for the name of a class.
func (s *Scheme) ClassFor(name string, shape Shape) (c Class, note string, err error) {
	if shape == FlatOval {
		shape = s.FlatOvalAs
	}
	for _, b := range s.byShape {
		if classKey(b.name) != classKey(name) {
			continue
		}
		if c, err = s.Class(b.class[shape]); err != nil {
			return c, "", err
		}
		return c, fmt.Sprintf("%s was read as class %s for %s duct (%s; %s)", b.name, c.Name, shape, b.source, b.sureness), nil
	}
	c, err = s.Class(name)
	return c, "", err
}

// readByShape reads names that stand for a class in each shape.
func (s *Scheme) readByShape(t *Table) {
	for _, b := range t.Tables("by_shape") {
		b.Only("name", "rectangular", "circular", "source", "sureness")
		b.Require("name", "a name")
		o := byShape{name: b.Text("name"), class: map[Shape]string{}}
		o.source, o.sureness = origin(b, s.Source, s.Sureness)
		for _, shape := range []Shape{Rectangular, Circular} {
			const expected = "the number of a class, more than 0"
			b.Require(string(shape), expected)
			if v, ok := b.Number(string(shape), 1e-6, 1e6, expected); ok {
				o.class[shape] = fmt.Sprint(v)
			}
		}
		s.byShape = append(s.byShape, o)
	}
}
