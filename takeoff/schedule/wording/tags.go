package wording

import (
	"regexp"
	"strconv"
	"strings"

	"blankoff/takeoff/schedule/celltext"
)

// What plainTag thinks of a byte.
const (
	otherByte = iota // no part of a plain name
	figureByte
	letterByte
	dashByte
	crossByte // an x, which may be a sign
)

var tagBytes = func() (of [256]uint8) {
	for c := range of {
		switch {
		case celltext.Digit(byte(c)), c == '_':
			of[c] = figureByte
		case c|0x20 == 'x':
			of[c] = crossByte
		case c|0x20 >= 'a' && c|0x20 <= 'z':
			of[c] = letterByte
		case c == '-', c == '.':
			of[c] = dashByte
		}
	}
	return of
}()

// What a tag has come to, byte by byte: what its last byte was, and whether it has letters
// and dashes. It stands on every row, so a table is gone through instead of conditions.
const (
	notPlain   = 0      // and never will be
	beginning  = 5      // before its first byte
	withLetter = 1 << 3 // beside the last byte
	withDash   = 1 << 4
)

var tagStates = func() (next [32][8]uint8) {
	for state := range next {
		before := uint8(state & 7)
		if before == notPlain || before > beginning {
			continue
		}
		for b := uint8(figureByte); b <= crossByte; b++ {
			letter := b == letterByte || b == crossByte
			if letter && before == dashByte || b == dashByte && before == dashByte || b == crossByte && before == figureByte {
				continue
			}
			to := uint8(state)&^7 | b
			if letter {
				to |= withLetter
			}
			if b == dashByte {
				to |= withDash
			}
			next[state][b] = to
		}
	}
	return next
}()

// PlainTag reports a tag of letters, figures and dashes that ends in a figure and has
// none but figures behind dashes: it is nothing but a name.
func PlainTag(tag string) bool {
	if tag == "" {
		return true
	}
	state := uint8(beginning)
	for i := range len(tag) {
		state = tagStates[state&31][tagBytes[tag[i]]&7]
	}
	return state != notPlain && celltext.Digit(tag[len(tag)-1]) && state&(withLetter|withDash) != withDash
}

// NumberedLike reports a tag that is another one but for figures that stand where there are
// figures in the other: if one is plain, both are.
func NumberedLike(tag, other string) bool {
	if len(tag) != len(other) {
		return false
	}
	for i := range len(tag) {
		if tag[i] != other[i] && !(celltext.Digit(tag[i]) && celltext.Digit(other[i])) {
			return false
		}
	}
	return tag != ""
}

// Tags that name several pieces: D11x2, D40 (x3), 2no, D6/D7, D18+19, D23..25, D16a-c.
var (
	timesInTag = regexp.MustCompile(`(?i)^[a-z]{0,4}[-. ]?\d+[a-z]?[x×*][1-9]\d?$|(?:\s[x×*]\s*|\([x×*]\s*)[1-9]\d?\)?$|^[1-9]\d?\s*[x×*]\s*[a-z]{1,4}[-. ]?\d*$|\s[1-9]\d?[x×]\)?$|[\s(][1-9]\d?\s*(?:off|nos?|nr|stk|pcs)\)?$|\btyp(?:ical)?\.?\)?$|\bpairs?$|\bl\.?h\.?\s*/\s*r\.?h\b`)
	listOfTags = regexp.MustCompile(`(?i)^([a-z]+)[-. ]?(\d+)\s*(?:/|\+|,|&|\.\.\.?|~|\bund\b|\bet\b|\ben\b|\boch\b|\by\b|\bthru\b|\band\b)\s*([a-z]*)[-. ]?(\d+)`)
	lettered   = regexp.MustCompile(`(?i)^[a-z]+\d+a\s*[-–/]\s*[b-z]$`)
)

// RangeOfNumbers reports figures as 40-42, where nothing says how many there are.
func RangeOfNumbers(tag string) bool {
	m := numberRange.FindStringSubmatch(tag)
	if m == nil || len(m[1]) != len(m[2]) {
		return false
	}
	first, _ := strconv.Atoi(m[1])
	last, _ := strconv.Atoi(m[2])
	return last > first && last < first+20
}

var numberRange = regexp.MustCompile(`^\s*(\d{1,4})\s*[-–~]\s*(\d{1,4})\s*$`)

// SeveralNumbers reports a tag of several item numbers, as 2-4, 5 & 6 or 7, 8, 9: which
// they are, in their order; nil for another tag.
func SeveralNumbers(tag string) (numbers []int) {
	if len(tag) > MaxTitle || !severalNumbered.MatchString(tag) {
		return nil
	}
	at := figures.FindAllStringIndex(tag, -1)
	for i, x := range at {
		n := atoi(tag[x[0]:x[1]])
		if i > 0 && n <= numbers[len(numbers)-1] {
			return nil
		}
		if i == 1 && len(at) == 2 && !strings.ContainsAny(tag[at[0][1]:x[0]], "/,&+u") && !strings.Contains(tag, "and") && !strings.Contains(tag, "et") {
			if n > numbers[0]+20 {
				return nil
			}
			for k := numbers[0] + 1; k < n; k++ {
				numbers = append(numbers, k)
			}
		}
		numbers = append(numbers, n)
	}
	return numbers
}

// severalNumbered is item numbers with signs between them.
var severalNumbered = regexp.MustCompile(`(?i)^\s*\d{1,4}(?:\s*(?:-|–|~|/|,|&|\+|to|bis|t/m|and|und|et|en)\s*\d{1,4})+\s*$`)

// TagTimes reports a tag of several pieces, as A1-A4, A5 to A7 or A20 (x3), and how many
// they are: 0 where that can't be told.
func TagTimes(tag string) (times int, several bool) {
	if PlainTag(tag) || !severalTags(tag) {
		return 0, false
	}
	if timesInTag.MatchString(tag) {
		if times = timesIn(tag); times == 0 && twoInTag.MatchString(tag) {
			times = 2
		}
		return times, true
	}
	if times = timesIn(tag); times == 0 {
		times = listed(tag)
	}
	return times, true
}

// twoInTag is a tag of a pair.
var twoInTag = regexp.MustCompile(`(?i)\bpairs?$|\bl\.?h\.?\s*/\s*r\.?h\b`)

// severalTags reports a tag as A1-A4, A5 to A7 or A20 (x3).
func severalTags(tag string) bool {
	if len(tag) > MaxTitle {
		return false
	}
	if m := listOfTags.FindStringSubmatch(tag); m != nil && (m[3] == "" && len(m[4]) == len(m[2]) && m[4] > m[2] && (len(m[2]) > 1 && strings.HasPrefix(tag[len(m[1]):], m[2]) || !strings.Contains(tag, "/")) || // S1/2 is piece 2 of system 1
		strings.EqualFold(m[1], m[3]) && m[2] != m[4]) {
		return true
	}
	if timesInTag.MatchString(tag) || lettered.MatchString(tag) {
		return true
	}
	at := 0
	for at < len(tag) && tag[at] != ' ' && tag[at] != '-' && tag[at] != '(' && tag[at] != '.' && tag[at] < 0x80 {
		at++
	}
	if at == 0 || at == len(tag) {
		return false
	}
	if open := strings.IndexByte(tag[at:], '('); open >= 0 {
		in := strings.ToLower(strings.Trim(tag[at+open:], "() "))
		return len(in) > 1 && (in[0] == 'x' && celltext.AllDigits(in[1:]) || in[len(in)-1] == 'x' && celltext.AllDigits(in[:len(in)-1]))
	}
	next := at
	for next < len(tag) && (tag[next] == ' ' || tag[next] == '-' || tag[next] == '.') {
		next++
	}
	if next == len(tag) || celltext.Digit(tag[next]) {
		return false // most tags
	}
	before, from := celltext.CutDigits(strings.TrimRight(tag[:at], ",&"))
	if strings.ContainsAny(tag[at-1:], ",&") && before != "" && from != "" {
		next, second := celltext.CutDigits(strings.TrimLeft(tag[at:], " ,&"))
		return next == before && second != "" || strings.Contains(tag[at:], before)
	}
	rest := strings.TrimLeft(tag[at:], " -.–…")
	for _, word := range [...]string{"to ", "bis ", "t/m ", "à ", "till ", "al ", "hasta "} {
		rest = strings.TrimPrefix(rest, word)
	}
	if before == "" || from == "" || !strings.HasPrefix(rest, before) {
		return false
	}
	after, to := celltext.CutDigits(rest)
	first, _ := strconv.Atoi(from)
	last, err := strconv.Atoi(to)
	return err == nil && after == before && last > first+1 // N1-N2 is a duct between two nodes
}
