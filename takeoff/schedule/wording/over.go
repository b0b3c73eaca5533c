package wording

import (
	"regexp"
	"slices"
	"strings"
	"unicode"

	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
)

// Overstruck reports a text that is struck out letter by letter, by strokes that combine with
// the letter before them: U+0335 to U+0338. A letter or two among many may be so written.
func Overstruck(text string) bool {
	if strings.IndexByte(text, 0xcc) < 0 {
		return false
	}
	strokes, letters := 0, 0
	for _, r := range text {
		switch {
		case r >= 0x335 && r <= 0x338:
			strokes++
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			letters++
		case unicode.IsMark(r): // of a script
			return false
		}
	}
	return strokes > 0 && strokes >= letters
}

// htmlStruck is a text that is struck out as on a page.
var htmlStruck = regexp.MustCompile(`(?i)^<(?:s|del|strike)>`)

// SetApart reports a tag in brackets, or behind a sign that makes a line one of remarks: (2),
// [D2], #2, ; 2, -- 2, x 2.
func SetApart(tag string) bool {
	n := len(tag) - 1
	if n < 1 {
		return false
	}
	apart := false
	switch tag[0] {
	case '(':
		apart = tag[n] == ')'
	case '[':
		apart = tag[n] == ']'
	case '{':
		apart = tag[n] == '}'
	case '#', ';', '!':
		apart = PlainTag(strings.TrimLeft(tag[1:], " "))
	case '-':
		rest := strings.TrimLeft(tag, "- ")
		apart = tag[1] == '-' && rest != "" && !celltext.Digit(rest[0]) && PlainTag(rest)
	case 'x', 'X', 'R', 'r':
		sign, rest, _ := strings.Cut(tag, " ")
		apart = (strings.EqualFold(sign, "x") || strings.EqualFold(sign, "rem")) && PlainTag(rest)
	}
	return apart && strings.ContainsAny(tag, "0123456789")
}

// StruckTag reports a tag between signs that strike it out, as in a chat: ~D2~, -D2-, ~~D2~~,
// or behind two of them.
func StruckTag(tag string) bool {
	if strings.HasPrefix(tag, "~~") || strings.HasPrefix(tag, "//") || Overstruck(tag) {
		return true
	}
	if tag[0] == '<' && htmlStruck.MatchString(tag) {
		return true
	}
	n := len(tag) - 1
	return n > 1 && tag[0] == tag[n] && strings.IndexByte("~-=/", tag[0]) >= 0
}

// closings are the words that end a letter, in seven languages (from memory, unverified).
var closings = strings.Split("regards,kindregards,bestregards,withregards,withkindregards,manythanks,thanks,thankyou,cheers,best,allthebest,bestwishes,yourssincerely,yoursfaithfully,sincerely,br,kr,rgds,"+
	"gruss,grusse,vielegrusse,bestegrusse,schonegrusse,mfg,mitfreundlichengrussen,mitfreundlichemgruss,freundlichegrusse,mitbestengrussen,danke,bestendank,vielendank,lg,vg,"+
	"cordialement,biencordialement,bienavous,merci,salutations,sinceressalutations,bonnereception,"+
	"groet,groeten,groetjes,metvriendelijkegroet,metvriendelijkegroeten,vriendelijkegroet,vriendelijkegroeten,mvg,bedankt,dank,"+
	"halsningar,medvanlighalsning,medvanligahalsningar,vanligahalsningar,vanligen,mvh,tack,"+
	"saludos,unsaludo,saludoscordiales,uncordialsaludo,atentamente,gracias,muchasgracias,"+
	"saluti,cordialisaluti,distintisaluti,unsaluto,grazie,cordialmente", ",")

// Closes reports a line of nothing but the words that end a letter: Kind regards,
func Closes(text string) bool {
	return len(text) < 50 && !celltext.HasDigit(text) && slices.Contains(closings, headings.Squash(text))
}

// Signs reports a line that may be the name of who wrote a letter: up to four words that all
// begin large.
func Signs(text string) bool {
	words := strings.Fields(text)
	return len(words) > 0 && len(words) <= 4 && len(text) < 50 && !celltext.HasDigit(text) && !slices.ContainsFunc(words, func(w string) bool {
		return !unicode.IsUpper([]rune(w)[0]) || strings.ContainsAny(w, ":;=?!()")
	})
}

// Running says of lengths that they are counted on from one piece to the next, in seven
// languages (from memory, unverified).
var Running = regexp.MustCompile(`(?i)\b(?:chainages?|running (?:dim|dist|length|meas|total)\w*|cumulative|cumulated|accumulat\w*|distances? (?:are |is |measured |taken )*(?:from|to|along)|(?:measured|lengths?|dimensions?|all) (?:are |is |measured |taken )*from (?:the )?(?:fan|ahu|plant|unit|start|origin|riser|zero|plenum)|kumuliert\w*|kumulativ\w*|fortlaufend(?:e|en)? (?:ma|l)\w*|aufsummiert\w*|aufaddiert\w*|stationierung|(?:abst[aä]nde?|entfernung\w*|ma(?:ß|ss)e|l[aä]ngen?) (?:jeweils )?(?:ab|vom|von der|von|bis) (?:dem |der )?(?:ventilator|ger[aä]t|anlage|nullpunkt|anfang|zentrale)|cumul[ée]\w*|distances? (?:depuis|[àa] partir)|cumulatie\w*|gecumuleerd\w*|opgeteld\w*|afstand(?:en)? (?:van|vanaf|tot)|ackumulera\w*|l[öo]pande m[åa]tt|avst[åa]nd fr[åa]n|acumulad\w*|distancias? (?:desde|a partir)|progressiv[eio]|progresiv[ao]s|cumulat[aeio]|distanz[ae] (?:da|dal|dalla))(?:[^\pL]|$)`)
