package described

import "regexp"

// Words for shapes in lines above the headings, in names of sheets and in remarks, in
// seven languages (from memory, unverified).
var (
	OvalWord  = regexp.MustCompile(`(?i)\b(?:flat[\s-]*)?oval(?:e|i|es|er|rohre?|kan[aä]le?|e kanaler)?\b|\bflachoval`)
	OvalTitle = regexp.MustCompile(`(?i)^(?:flach|flat[\s-]*)?(?:oval(?:rohre|kanäle|kanaele| ducts?| ductwork)|ovale (?:rohre|kanäle|luftkanäle|kanalen|buizen)|ovala (?:kanaler|rör))(?: [^,;:/+&]*)?$|^(?:gaines|conduits) (?:ovales|oblongu?es)(?: [^,;:/+&]*)?$|^(?:conductos) (?:ovalados|ovales)(?: [^,;:/+&]*)?$|^(?:canali|condotti|condotte) oval[ie](?: [^,;:/+&]*)?$`)
	OvalDucts = regexp.MustCompile(`(?i)\b(?:gaines?|conduits?|kanal\w*|rohre?|kanaal|buis|buizen|conductos?|tubos?|canal[ei]|condott\w+|ducts?|ductwork)\s+(?:oblong\w*|oval\w*|ovaal|ovaux)|\b(?:oblong|oval|ovaal|ovala|ovale)\w*\s+(?:ducts?|ductwork|kanal\w*|rohre?|buizen|rör)`)
	RoundWord = regexp.MustCompile(`(?i)\b(?:round|circular|circulaires?|circolari?|circulares?|spiral(?:ly)?|spiro\w*|rund(?:[a-tv-z]\w*)?|ronde?|wickelfalz\w*)\b`)
	RoundNote = regexp.MustCompile(`(?i)^\s*(?:round|circular|spiral|circulaire|rund|rond|redondo|tondo|cirkulär|[øØ⌀]\s*\d+)(?:\s*(?:duct|kanal|gaine|kanaal|rohr|conducto|canale))?\s*$`)
	RectWord  = regexp.MustCompile(`(?i)\b(?:rect\w*|rechteck\w*|rechthoekig\w*|rektangul\w*|rettangol\w*|square)\b`)
)
