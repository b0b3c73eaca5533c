package partition

import "testing"

// decode reads a tiny problem from bytes; what is missing is 0.
func decode(data []byte) Problem {
	next := func() int {
		if len(data) == 0 {
			return 0
		}
		b := data[0]
		data = data[1:]
		return int(b)
	}
	n := 1 + next()%8
	p := Problem{Aim: Aim(next() % 2), TestPrice: int64(next() % 50)}
	price := func() int64 { return int64(next()%21) - 1 }
	for v := range n {
		p.Parent = append(p.Parent, next()%(v+1)-1)
		p.Weight = append(p.Weight, int64(next()%32))
		p.Price = append(p.Price, price())
	}
	for range next() % 4 {
		a, b := next()%n, next()%n
		if a != b {
			p.Links = append(p.Links, Link{a, b, price()})
		}
	}
	for range 1 + next()%3 {
		low := int64(next()%64) - 2
		p.Windows = append(p.Windows, Window{low, low + int64(next()%64)})
	}
	return p
}

// FuzzSolve holds every answer against the rules and against brute force.
func FuzzSolve(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte{5, 0, 0, 0, 9, 1, 1, 5, 4, 2, 7, 3, 1, 9, 9, 2, 30, 0, 1, 0, 4, 7, 1, 8, 20, 40, 9})
	f.Add([]byte{7, 1, 30, 0, 4, 4, 1, 4, 4, 2, 4, 4, 3, 4, 4, 4, 4, 4, 5, 4, 4, 6, 4, 4, 7, 4, 4, 3, 0, 7, 5, 1, 5, 0, 2, 6, 9, 2, 6, 3, 12, 2, 30, 0})
	f.Fuzz(func(t *testing.T, data []byte) {
		p := decode(data)
		s := mustSolve(t, p)
		if want := brute(p); merit(p, s.Score) != merit(p, want) || !s.Exhaustive {
			t.Fatalf("score %+v, exhaustive %v, brute force %+v\n%+v", s.Score, s.Exhaustive, want, p)
		}
	})
}
