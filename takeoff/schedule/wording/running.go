package wording

import "regexp"

// Running says of lengths that they are counted on from one piece to the next, in seven
// languages (from memory, unverified).
var Running = regexp.MustCompile(`(?i)\b(?:chainages?|running (?:dim|dist|length|meas|total)\w*|cumulative|cumulated|accumulat\w*|distances? (?:are |is |measured |taken )*(?:from|to|along)|(?:measured|lengths?|dimensions?|all) (?:are |is |measured |taken )*from (?:the )?(?:fan|ahu|plant|unit|start|origin|riser|zero|plenum)|kumuliert\w*|kumulativ\w*|fortlaufend(?:e|en)? (?:ma|l)\w*|aufsummiert\w*|aufaddiert\w*|stationierung|(?:abst[aä]nde?|entfernung\w*|ma(?:ß|ss)e|l[aä]ngen?) (?:jeweils )?(?:ab|vom|von der|von|bis) (?:dem |der )?(?:ventilator|ger[aä]t|anlage|nullpunkt|anfang|zentrale)|cumul[ée]\w*|distances? (?:depuis|[àa] partir)|cumulatie\w*|gecumuleerd\w*|opgeteld\w*|afstand(?:en)? (?:van|vanaf|tot)|ackumulera\w*|l[öo]pande m[åa]tt|avst[åa]nd fr[åa]n|acumulad\w*|distancias? (?:desde|a partir)|progressiv[eio]|progresiv[ao]s|cumulat[aeio]|distanz[ae] (?:da|dal|dalla))(?:[^\pL]|$)`)
