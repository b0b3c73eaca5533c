package celltext

import "math/bits"

// Split parts a line without quotes into cells, eight bytes at a time: most cells are
// short, so that a search for each would take longer.
func Split(cells []string, line string, separator byte) []string {
	const low = 0x7f7f7f7f7f7f7f7f
	every := uint64(separator) * 0x0101010101010101
	start, i := 0, 0
	for ; i+8 <= len(line); i += 8 {
		w := line[i : i+8]
		x := uint64(w[0]) | uint64(w[1])<<8 | uint64(w[2])<<16 | uint64(w[3])<<24 | uint64(w[4])<<32 | uint64(w[5])<<40 | uint64(w[6])<<48 | uint64(w[7])<<56
		x ^= every // a separator is a zero byte now
		for found := ^((x&low + low) | x | low); found != 0; found &= found - 1 {
			at := i + bits.TrailingZeros64(found)>>3
			cells = append(cells, line[start:at])
			start = at + 1
		}
	}
	for ; i < len(line); i++ {
		if line[i] == separator {
			cells = append(cells, line[start:i])
			start = i + 1
		}
	}
	return append(cells, line[start:])
}
