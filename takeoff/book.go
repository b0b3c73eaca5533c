package takeoff

// book is the ledger of a whole schedule, its rows to be found by their tags, with
// what was found out about them.
type book struct {
	ledger
	tags   tags
	double map[string]bool // tags that stand more than once

	faults  []wrong
	remarks []remark
	notes   []string // of the file as a whole
}

// wrong is what is wrong with a row, which is refused for it.
type wrong struct {
	line                              int
	heading, value, expected, message string
}

// remark is a note on a row.
type remark struct {
	line int
	text string
}

func newBook() book { return book{ledger: newLedger(), double: map[string]bool{}} }

// usualText is about how long a tag and a reference are together, in bytes.
const usualText = 24

// expect makes room for so many rows in an empty book.
func (b *book) expect(rows int) {
	b.lines = make([]line, 0, rows)
	b.text = make([]byte, 0, usualText*rows)
	b.tags.expect(rows)
}

// warm makes ready for rows with tags of these hashes.
func (b *book) warm(hashes []uint32) { b.tags.warm(hashes) }

// fileTag files row i under its tag, or gives the row that has it already.
func (b *book) fileTag(i int, hash uint32) (first int, taken bool) {
	l := &b.lines[i]
	if l.tag == 0 {
		return i, false
	}
	if first, taken = b.tags.claim(&b.ledger, i, hash); taken {
		b.double[string(b.tagOf(l))] = true
	}
	return first, taken
}

// find is the first row with a tag.
func (b *book) find(tag string) (int, bool) { return b.tags.find(&b.ledger, []byte(tag)) }

// isDouble reports a tag that stands more than once.
func (b *book) isDouble(tag []byte) bool { return b.double[string(tag)] }

// refuse refuses the row that something is wrong with.
func (b *book) refuse(w wrong) {
	b.lines[w.line].refused = true
	b.faults = append(b.faults, w)
}

// remark adds a note to row i.
func (b *book) remark(i int, text string) { b.remarks = append(b.remarks, remark{i, text}) }

// note adds a note on the file as a whole.
func (b *book) note(text string) { b.notes = append(b.notes, text) }

// found hands over what was found out since it was asked last.
func (b *book) found() (faults []wrong, remarks []remark, notes []string) {
	faults, remarks, notes = b.faults, b.remarks, b.notes
	b.faults, b.remarks, b.notes = nil, nil, nil
	return faults, remarks, notes
}
