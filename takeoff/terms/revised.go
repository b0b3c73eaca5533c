package terms

import "regexp"

// RevisedTag reports a tag with a revision at its end, behind a space or a sign: D2 rev B, D2
// (rev. 1). base is what stands before it.
func RevisedTag(tag string) (base string, ok bool) {
	if len(tag) > 80 {
		return "", false
	}
	at := revisedTag.FindStringIndex(tag)
	if at == nil || at[0] == 0 {
		return "", false
	}
	return tag[:at[0]], true
}

// revisedTag is the end of such a tag (from memory, unverified).
var revisedTag = regexp.MustCompile(`(?i)[\s(_/-]+(?:rev(?:ision|isie|isione)?|ind(?:ex|ice)?|ver(?:sion|sie)?)\.?\s*[a-z0-9]{1,2}\)?$`)
