package ledger

import (
	"bytes"
	"hash/maphash"
)

// tagSeed is of the hashes of tags. Nothing that is seen depends on it.
var tagSeed = maphash.MakeSeed()

// HashTag is the hash of a tag.
func HashTag(tag string) uint32 { return uint32(maphash.String(tagSeed, tag)) }

// tags finds rows by their tags: a table with open addressing. A slot holds a
// row's index from 1 and the hash of its tag; the tags stay where they are.
type tags struct {
	slots  []uint64
	used   int
	warmed uint64
}

// warm fetches the slots of the next tags. They lie all over the memory: asked for
// one by one as the tags are claimed, each would be waited for.
func (g *tags) warm(hashes []uint32) {
	if len(g.slots) == 0 {
		return
	}
	mask := len(g.slots) - 1
	for _, h := range hashes {
		g.warmed += g.slots[int(h)&mask]
	}
}

// expect makes room for so many tags.
func (g *tags) expect(n int) {
	size := 64
	for size < 2*n {
		size *= 2
	}
	g.slots = inLargePages(make([]uint64, size))
}

// claim files row i under its tag, or gives the row that has it already.
func (g *tags) claim(of *Ledger, i int, hash uint32) (first int, taken bool) {
	if 3*g.used >= 2*len(g.slots) {
		g.grow()
	}
	k, ok := g.slot(of, of.TagOf(&of.Lines[i]), hash)
	if ok {
		return int(uint32(g.slots[k])) - 1, true
	}
	g.slots[k] = uint64(hash)<<32 | uint64(i+1)
	g.used++
	return i, false
}

// find is the first row with a tag.
func (g *tags) find(of *Ledger, tag []byte) (int, bool) {
	if len(tag) == 0 || g.used == 0 {
		return 0, false
	}
	k, ok := g.slot(of, tag, uint32(maphash.Bytes(tagSeed, tag)))
	return int(uint32(g.slots[k])) - 1, ok
}

// slot is where a tag is, or where it would be.
func (g *tags) slot(of *Ledger, tag []byte, hash uint32) (int, bool) {
	mask := len(g.slots) - 1
	for k := int(hash) & mask; ; k = (k + 1) & mask {
		s := g.slots[k]
		if s == 0 {
			return k, false
		}
		if uint32(s>>32) == hash && bytes.Equal(of.TagOf(&of.Lines[uint32(s)-1]), tag) {
			return k, true
		}
	}
}

// grow makes the table twice as large.
func (g *tags) grow() {
	old := g.slots
	g.slots = make([]uint64, max(64, 2*len(old)))
	mask := len(g.slots) - 1
	for _, s := range old {
		if s == 0 {
			continue
		}
		k := int(s>>32) & mask
		for g.slots[k] != 0 {
			k = (k + 1) & mask
		}
		g.slots[k] = s
	}
}
