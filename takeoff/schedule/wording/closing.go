package wording

import (
	"slices"
	"strings"
	"unicode"

	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
)

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
