package celltext

import "math/bits"

// Split parts a line without quotes into cells, eight bytes at a time: most cells are
// short, so that a search for each would take longer. plain reports that it holds nothing
// but the printing characters of ASCII.
func Split(cells []string, line string, separator byte) (out []string, plain bool) {
	const low, ones, tops = 0x7f7f7f7f7f7f7f7f, 0x0101010101010101, 0x8080808080808080
	every := uint64(separator) * ones
	start, i := 0, 0
	odd := uint64(0) // the top bit of a byte is set here if it is in one that isn't plain
	for ; i+8 <= len(line); i += 8 {
		w := line[i : i+8]
		x := uint64(w[0]) | uint64(w[1])<<8 | uint64(w[2])<<16 | uint64(w[3])<<24 | uint64(w[4])<<32 | uint64(w[5])<<40 | uint64(w[6])<<48 | uint64(w[7])<<56
		odd |= x | (x - ' '*ones) | (x + ones)
		x ^= every // a separator is a zero byte now
		for found := ^((x&low + low) | x | low); found != 0; found &= found - 1 {
			at := i + bits.TrailingZeros64(found)>>3
			cells = append(cells, line[start:at])
			start = at + 1
		}
	}
	for ; i < len(line); i++ {
		c := line[i]
		if odd |= uint64(c | (c - ' ') | (c + 1)); c == separator {
			cells = append(cells, line[start:i])
			start = i + 1
		}
	}
	return append(cells, line[start:]), odd&tops == 0
}
