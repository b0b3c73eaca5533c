package celltext

import (
	"math/bits"
	"slices"
)

// Split parts a line without quotes into cells, eight bytes at a time: most cells are
// short, so that a search for each would take longer. plain reports that it holds nothing
// but the printing characters of ASCII.
func Split(cells []string, line string, separator byte) (out []string, plain bool) {
	const low, ones, tops = 0x7f7f7f7f7f7f7f7f, 0x0101010101010101, 0x8080808080808080
	every := uint64(separator) * ones
	start, i, n := 0, 0, 0
	odd := uint64(0) // the top bit of a byte is set here if it is in one that isn't plain
	cells = room(cells[:0])
	for ; i+8 <= len(line); i += 8 {
		w := line[i : i+8]
		x := uint64(w[0]) | uint64(w[1])<<8 | uint64(w[2])<<16 | uint64(w[3])<<24 | uint64(w[4])<<32 | uint64(w[5])<<40 | uint64(w[6])<<48 | uint64(w[7])<<56
		odd |= x | (x - ' '*ones) | (x + ones)
		x ^= every // a separator is a zero byte now
		found := ^((x&low + low) | x | low)
		if found == 0 {
			continue
		}
		if n+8 > len(cells) {
			cells = room(cells)
		}
		for ; found != 0; found &= found - 1 {
			at := i + bits.TrailingZeros64(found)>>3
			cells[n], n, start = line[start:at], n+1, at+1
		}
	}
	cells = room(cells[:n]) // for those of up to seven bytes, and the last one
	for ; i < len(line); i++ {
		c := line[i]
		if odd |= uint64(c | (c - ' ') | (c + 1)); c == separator {
			cells[n], n, start = line[start:i], n+1, i+1
		}
	}
	cells[n] = line[start:]
	return cells[:n+1], odd&tops == 0
}

// room makes room for eight cells more at least, to be filled without a look at it.
func room(cells []string) []string {
	cells = slices.Grow(cells, 8)
	return cells[:cap(cells)]
}
