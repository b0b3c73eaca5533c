package ledger

// Book is the ledger of a whole schedule, its rows to be found by their tags, with
// what was found out about them.
type Book struct {
	Ledger
	tags   tags
	double map[string]bool // tags that stand more than once

	faults  []Fault
	remarks []Remark
	notes   []string // of the file as a whole
}

// Fault is what is wrong with a row, which is refused for it.
type Fault struct {
	Line                              int
	Heading, Value, Expected, Message string
}

// Remark is a note on a row.
type Remark struct {
	Line int
	Text string
}

// NewBook is an empty book.
func NewBook() Book { return Book{Ledger: New(), double: map[string]bool{}} }

// usualText is about how long a tag and a reference are together, in bytes.
const usualText = 24

// Expect makes room for so many rows in an empty book.
func (b *Book) Expect(rows int) {
	b.Lines = inLargePages(make([]Line, 0, rows))
	b.Text = inLargePages(make([]byte, 0, usualText*rows))
	b.tags.expect(rows)
}

// Warm makes ready for rows with tags of these hashes.
func (b *Book) Warm(hashes []uint32) { b.tags.warm(hashes) }

// FileTag files row i under its tag, or gives the row that has it already.
func (b *Book) FileTag(i int, hash uint32) (first int, taken bool) {
	l := &b.Lines[i]
	if l.TagLength == 0 {
		return i, false
	}
	if first, taken = b.tags.claim(&b.Ledger, i, hash); taken {
		b.double[string(b.TagOf(l))] = true
	}
	return first, taken
}

// Rename gives a row that is joined to none another tag, under which it isn't filed.
func (b *Book) Rename(i int, tag string) {
	l := &b.Lines[i]
	l.Text, l.TagLength = len(b.Text), uint32(len(tag))
	b.Text = append(b.Text, tag...)
}

// Find is the first row with a tag.
func (b *Book) Find(tag string) (int, bool) { return b.tags.find(&b.Ledger, []byte(tag)) }

// IsDouble reports a tag that stands more than once.
func (b *Book) IsDouble(tag []byte) bool { return b.double[string(tag)] }

// Refuse refuses row i for what is wrong in the column of a heading.
func (b *Book) Refuse(i int, heading, value, expected, message string) {
	b.RefuseFor(Fault{i, heading, value, expected, message})
}

// RefuseFor refuses the row that something is wrong with.
func (b *Book) RefuseFor(f Fault) {
	b.Lines[f.Line].Refused = true
	b.faults = append(b.faults, f)
}

// Remark adds a note to row i.
func (b *Book) Remark(i int, text string) { b.remarks = append(b.remarks, Remark{i, text}) }

// Note adds a note on the file as a whole.
func (b *Book) Note(text string) { b.notes = append(b.notes, text) }

// Found hands over what was found out since it was asked last.
func (b *Book) Found() (faults []Fault, remarks []Remark, notes []string) {
	faults, remarks, notes = b.faults, b.remarks, b.notes
	b.faults, b.remarks, b.notes = nil, nil, nil
	return faults, remarks, notes
}
