package wording

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// timesIn is how many times a text says that something is there: 4 of x4, 4 off, typical
// of 4; 0 where that can't be told.
func timesIn(text string) int {
	if m := timesNoted.FindAllStringSubmatch(text, 2); len(m) == 1 {
		n, _ := strconv.Atoi(m[0][1] + m[0][2] + m[0][3] + m[0][4])
		return n
	}
	return 0
}

// timesNoted is a number that says how many (from memory, unverified).
var timesNoted = regexp.MustCompile(`(?i)(?:^|[\s(,\d]|\d\s+)[x×*]\s*(\d{1,3})\b|\b(\d{1,3})\s*(?:[x×*]|off\b|no\b|nos\b|nr\b|st(?:ü|u)ck\b|stk\b|st\b|stuks?\b|pcs\b|pi[eè]ces\b|pz\b|uds?\b|times\b|mal\b|fois\b|volte\b|veces\b|keer\b|gånger\b|plantas?\b|pian[oi]\b|étages?\b|etagen\b|floors?\b|verdiepingen\b|våningar\b|required\b|reqd\b)|\btyp(?:ical)?\b\D{0,12}(\d{1,3})|\bqty\W*(\d{1,3})`)

// listed is how many a list or a range names: 4 of A1-A4, 2 of AHU1 & AHU2, 3 of D16a-c; 0
// where that can't be told.
func listed(text string) int {
	text = strings.ToLower(text)
	if m := letteredRange.FindStringSubmatch(text); m != nil {
		return int(m[1][0]) - 'a' + 1
	}
	at := figures.FindAllStringIndex(text, -1)
	if len(at) < 2 {
		return 0
	}
	prefix := strings.TrimRight(text[:at[0][0]], " -.")
	prefix = prefix[strings.LastIndexAny(prefix, " (,:")+1:]
	n, last := 1, atoi(text[at[0][0]:at[0][1]])
	for i, x := range at[1:] {
		next := atoi(text[x[0]:x[1]])
		sign := strings.TrimRight(text[at[i][1]:x[0]], " ")
		switch sign = joinSign(sign, prefix); {
		case slices.Contains(rangeSigns, sign) && next > last:
			n += next - last
		case slices.Contains(listSigns, sign) && next != last:
			n++
		default:
			return 0
		}
		last = next
	}
	return n
}

// joinSign is what joins two figures, without the prefix of the second and the ending of
// the first: 1st to L5.
func joinSign(sign, prefix string) string {
	if slices.Contains(rangeSigns, sign) {
		return sign
	}
	if rest, ok := strings.CutSuffix(strings.TrimRight(sign, " -."), prefix); ok && prefix != "" {
		sign = rest
	}
	if slices.Contains(rangeSigns, sign) {
		return sign
	}
	for _, ending := range ordinals {
		if rest, ok := strings.CutPrefix(sign, ending); ok && (rest == "" || rest[0] < 'a' || rest[0] > 'z') {
			sign = rest
			break
		}
	}
	return strings.TrimSpace(sign)
}

var (
	figures       = regexp.MustCompile(`\d+`)
	letteredRange = regexp.MustCompile(`^[a-z]+\d+a\s*[-–/]\s*([b-z])$`)
	rangeSigns    = []string{"-", "–", "…", "..", "...", "~", "to", "bis", "t/m", "till", "thru", "through", "à", "a", "al", "hasta"}
	listSigns     = []string{"&", "+", ",", "/", "and", "und", "et", "en", "och", "y", "e", ", and"}
	ordinals      = []string{"st", "nd", "rd", "th", ".", "er", "e", "º", "°"}
)

func atoi(figures string) int {
	n, err := strconv.Atoi(figures)
	if err != nil || n > 1e6 {
		return -1
	}
	return n
}
