package schedule

import (
	"regexp"
	"strconv"
	"strings"
)

// Tags that name several pieces: D11x2, D40 (x3), 2no, D6/D7, D18+19, D23..25, D16a-c.
var (
	timesInTag = regexp.MustCompile(`(?i)^[a-z]{0,4}[-. ]?\d+[a-z]?[x×*][1-9]\d?$|(?:\s[x×*]\s*|\([x×*]\s*)[1-9]\d?\)?$|^[1-9]\d?\s*[x×*]\s*[a-z]{1,4}[-. ]?\d*$|\s[1-9]\d?[x×]\)?$|[\s(][1-9]\d?\s*(?:off|nos?|nr|stk|pcs)\)?$|\btyp(?:ical)?\.?\)?$|\bpairs?$|\bl\.?h\.?\s*/\s*r\.?h\b`)
	listOfTags = regexp.MustCompile(`(?i)^([a-z]+)(\d+)\s*(?:/|\+|,|&|\.\.\.?|~|\bund\b|\bet\b|\ben\b|\boch\b|\by\b|\bthru\b|\band\b)\s*([a-z]*)(\d+)`)
	lettered   = regexp.MustCompile(`(?i)^[a-z]+\d+a\s*[-–/]\s*[b-z]$`)
)

// rangeOfNumbers reports figures as 40-42, where nothing says how many there are.
func rangeOfNumbers(tag string) bool {
	m := numberRange.FindStringSubmatch(tag)
	if m == nil || len(m[1]) != len(m[2]) {
		return false
	}
	first, _ := strconv.Atoi(m[1])
	last, _ := strconv.Atoi(m[2])
	return last > first && last < first+20
}

var numberRange = regexp.MustCompile(`^\s*(\d{1,4})\s*[-–~]\s*(\d{1,4})\s*$`)

// severalTags reports a tag as A1-A4, A5 to A7 or A20 (x3).
func severalTags(tag string) bool {
	if len(tag) > maxTitle {
		return false
	}
	if m := listOfTags.FindStringSubmatch(tag); m != nil && (m[3] == "" && len(m[4]) == len(m[2]) && m[4] > m[2] && (len(m[2]) > 1 || !strings.Contains(tag, "/")) || // S1/2 is piece 2 of system 1
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
		return len(in) > 1 && (in[0] == 'x' && allDigits(in[1:]) || in[len(in)-1] == 'x' && allDigits(in[:len(in)-1]))
	}
	next := at
	for next < len(tag) && (tag[next] == ' ' || tag[next] == '-' || tag[next] == '.') {
		next++
	}
	if next == len(tag) || digit(tag[next]) {
		return false // most tags
	}
	before, from := cutDigits(strings.TrimRight(tag[:at], ",&"))
	if strings.ContainsAny(tag[at-1:], ",&") && before != "" && from != "" {
		next, second := cutDigits(strings.TrimLeft(tag[at:], " ,&"))
		return next == before && second != "" || strings.Contains(tag[at:], before)
	}
	rest := strings.TrimLeft(tag[at:], " -.–…")
	for _, word := range [...]string{"to ", "bis ", "t/m ", "à ", "till ", "al ", "hasta "} {
		rest = strings.TrimPrefix(rest, word)
	}
	if before == "" || from == "" || !strings.HasPrefix(rest, before) {
		return false
	}
	after, to := cutDigits(rest)
	first, _ := strconv.Atoi(from)
	last, err := strconv.Atoi(to)
	return err == nil && after == before && last > first+1 // N1-N2 is a duct between two nodes
}

func allDigits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// cutDigits parts the figures at the end of a name from what is before them.
func cutDigits(name string) (before, figures string) {
	n := len(name)
	for n > 0 && digit(name[n-1]) {
		n--
	}
	return name[:n], name[n:]
}
