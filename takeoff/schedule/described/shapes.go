package described

import "regexp"

// Words for shapes in lines above the headings, in names of sheets and in remarks, in
// seven languages (from memory, unverified).
var (
	OvalWord  = regexp.MustCompile(`(?i)\b(?:flat[\s-]*)?oval(?:e|i|es|er|rohre?|kan[aä]le?|e kanaler)?\b|\bflachoval`)
	RoundWord = regexp.MustCompile(`(?i)\b(?:round|circular|circulaires?|circolari?|circulares?|spiral(?:ly)?|spiro\w*|rund(?:[a-tv-z]\w*)?|ronde?|wickelfalz\w*)\b`)
	RoundNote = regexp.MustCompile(`(?i)^\s*(?:round|circular|spiral|circulaire|rund|rond|redondo|tondo|cirkulär|[øØ⌀]\s*\d+)(?:\s*(?:duct|kanal|gaine|kanaal|rohr|conducto|canale))?\s*$`)
	RectWord  = regexp.MustCompile(`(?i)\b(?:rect\w*|rechteck\w*|rechthoekig\w*|rektangul\w*|rettangol\w*|square)\b`)
)
