package terms

import "regexp"

// RevisedTag reports a tag with a revision at its end, behind a space or a sign: D2 rev B, D2
// (rev. 1). base is what stands before it.
func RevisedTag(tag string) (base string, ok bool) {
	if len(tag) > 80 || !mayBeRevised(tag) {
		return "", false
	}
	at := revisedTag.FindStringIndex(tag)
	if at == nil || at[0] == 0 {
		return "", false
	}
	return tag[:at[0]], true
}

// mayBeRevised reports a tag with letters at its end as such a word has: most have none.
func mayBeRevised(tag string) bool {
	for i := max(1, len(tag)-16); i < len(tag); i++ {
		switch a, b := tag[i-1]|0x20, tag[i]|0x20; {
		case a == 'r' && b == 'e', a == 'v' && b == 'e', a == 'i' && b == 'n':
			return true
		}
	}
	return false
}

// revisedTag is the end of such a tag (from memory, unverified).
var revisedTag = regexp.MustCompile(`(?i)[\s(_/-]+(?:rev(?:ision|isie|isione)?|ind(?:ex|ice)?|ver(?:sion|sie)?)[\s._-]*[a-z0-9]{1,2}\)?$`)
