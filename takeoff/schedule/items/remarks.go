package items

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/quantity"
	"blankoff/takeoff/schedule/wording"
)

// saysOf finds out what a remark says; most stand on many rows.
func (t *Reader) saysOf(note string) wording.Said {
	if len(note) > maxRemark {
		return wording.Said{Of: wording.OfElse}
	}
	of, met := t.remarks[note]
	if met {
		return of
	}
	of = wording.Remark(t.Lex, note)
	if t.remarks == nil || len(t.remarks) > mostMet {
		t.remarks = map[string]wording.Said{}
	}
	t.remarks[strings.Clone(note)] = of
	return of
}

// tellRemark tells of a remark that isn't read and bears on no area by itself.
func (t *Reader) tellRemark(r *takeoff.Row, note string) {
	of := t.saysOf(note).Of
	if of&wording.OfSizes != 0 {
		t.Told.Add("remarks with sizes, units or lengths, which aren't read, the first '%s'", celltext.Shorten(note), r.At.Row)
	}
	if of&wording.OfOpen != 0 {
		t.Told.Add("rows that count as they stand, though their remarks leave something open, the first '%s'", celltext.Shorten(note), r.At.Row)
	}
}

// doubtNote refuses a row for its remark, or for that of the row above, as which it is.
func (t *Reader) doubtNote(r *takeoff.Row, note string) {
	faults := len(r.Faults)
	if t.asAbove(note, t.noteAt) {
		r.Faults = append(r.Faults, t.Place.Fault(takeoff.Note.Heading(), celltext.Shorten(note), "a remark of its own",
			fmt.Sprintf("'%s' means the remark above, which says that its row isn't what it says; write it out, or take it out", celltext.Shorten(note))))
	} else {
		t.doubtRemark(r, takeoff.Note.Heading(), note)
	}
	if len(r.Faults) > faults {
		t.noteAt = r.At.Row
		return
	}
	if of := t.saysOf(note).Of; len(r.Faults) == 0 && (of == wording.OfElse || of == wording.OfDoubt && r.Text[takeoff.Scope] != "") {
		t.Told.AddToRead("remarks with words that no list here knows; read them, as their rows count as they stand, the first '%s'", celltext.Shorten(note), r.At.Row)
	}
}

// asAbove reports a cell that is as the one above it, where that one was found fault with
// at a row.
func (t *Reader) asAbove(cell string, at int) bool {
	if quantity.Above(cell, takeoff.Text) == "" {
		return false
	}
	t.Unsure = t.Unsure || t.chunked && t.rowBefore == 0
	return at > 0 && at == t.rowBefore
}

// doubtRemark refuses a row whose remark says that it isn't what the row says: that it
// doesn't count, is a total, stands for several or for less, or has another size.
func (t *Reader) doubtRemark(r *takeoff.Row, heading, note string) {
	says := t.saysOf(note)
	is := func(of uint16) bool { return says.Of&of != 0 }
	expected, trouble := "how many under quantity", ""
	switch {
	case t.Lex.Struck(note) || is(wording.OfOut):
		t.strike(r, heading, note)
		return
	case is(wording.OfSum):
		t.doubtSum(r, heading, note)
		return
	case is(wording.OfCounts):
		trouble = "seems to change how many there are; write how many under quantity, or reword it"
	case is(wording.OfMany) && !counted(r, says.Times):
		t.doubtCount(r, heading, note, expected, "seems to say how many there are, and the row counts for %s; write how many under quantity, or reword it")
		return
	case is(wording.OfPart):
		expected, trouble = "a row that counts whole", "seems to say that less than the row counts; write what counts in the row, or reword it"
	case is(wording.OfNew) && !hasSize(r, says.New):
		expected, trouble = "the size under its heading", "seems to give another size than the row; write the size that counts under its heading, or reword it"
	case is(wording.OfUnsized):
		expected, trouble = "a size that is settled", "seems to say that the size isn't settled; write the size that counts, and take it out"
	case is(wording.OfUnit) && t.otherUnit(r, says.Unit):
		expected, trouble = "the unit in the heading, or behind each size", fmt.Sprintf("seems to give the unit of the row, which is read in others; write each size with its unit, as %s", "24 "+says.Unit.Name)
	case is(wording.OfDoubt) && r.Text[takeoff.Scope] == "": // which would say whether it counts
		t.doubtWord(r, heading, note)
		return
	default:
		return
	}
	short := celltext.Shorten(note)
	r.Faults = append(r.Faults, t.Place.Fault(heading, short, expected, fmt.Sprintf("'%s' %s", short, trouble)))
}

// doubtWord refuses a row of which a text says something that can't be told.
func (t *Reader) doubtWord(r *takeoff.Row, heading, text string) {
	short := celltext.Shorten(text)
	r.Faults = append(r.Faults, t.Place.Fault(heading, short, "words that change nothing",
		fmt.Sprintf("'%s' seems to say more of the row than its cells do; write it there, under scope, quantity or a size, take the row out, or reword it", short)))
}

// doubtOthers looks at the remarks of columns that aren't used.
func (t *Reader) doubtOthers(r *takeoff.Row) {
	for _, x := range t.others {
		if x.cell != r.Text[takeoff.Note] {
			t.doubtRemark(r, x.heading, x.cell)
		}
	}
}

// hasSize reports a row that has all figures of a size, in mm or as typed.
func hasSize(r *takeoff.Row, size [2]float64) bool {
	has := func(v float64) bool {
		for d := range fittings.NumDims {
			c := takeoff.DimColumn(d)
			if !r.Has(c) {
				continue
			}
			typed, err := strconv.ParseFloat(r.Text[c], 64)
			if math.Abs(r.Number[c]*1000-v) < 0.6 || err == nil && typed == v {
				return true
			}
		}
		return false
	}
	return has(size[0]) && (size[1] == 0 || has(size[1]))
}

// otherUnit reports a row of which no size is read in the unit u.
func (t *Reader) otherUnit(r *takeoff.Row, u quantity.Unit) bool {
	sized := false
	for i := range t.Specs {
		s := &t.Specs[i]
		if !s.Used || s.Measure != takeoff.Lengths || r.Text[s.To()] == "" {
			continue
		}
		if s.Column.Unit == u || quantity.SaysUnit(r.Text[s.To()]) {
			return false
		}
		sized = true
	}
	return sized
}

// CommentOn begins the heading of a fault in a comment.
const CommentOn = "comment"

// doubtComments refuses a row with a comment on a cell that says that it isn't what the row
// says, as a remark.
func (t *Reader) doubtComments(r *takeoff.Row) {
	for _, c := range t.Marked.Comments {
		at := CommentOn
		if c.Column < len(t.Specs) && t.Specs[c.Column].Typed != "" {
			at = fmt.Sprintf(CommentOn+" on '%s'", t.Specs[c.Column].Typed)
		}
		faults := len(r.Faults)
		if t.doubtRemark(r, at, c.Text); len(r.Faults) == faults && t.saysOf(c.Text).Of == wording.OfElse {
			t.Told.AddToRead("comments on cells with words that no list here knows; read them, as their rows count as they stand, the first '%s'", celltext.Shorten(c.Text), r.At.Row)
		}
	}
}
