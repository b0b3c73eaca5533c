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

// Running says of lengths that they are counted on from one piece to the next, in seven
// languages (from memory, unverified).
var Running = regexp.MustCompile(`(?i)\b(?:chainages?|running (?:dim|dist|length|meas|total)\w*|cumulative|cumulated|accumulat\w*|distances? (?:are |is |measured |taken )*(?:from|to|along)|(?:measured|lengths?|dimensions?|all) (?:are |is |measured |taken )*from (?:the )?(?:fan|ahu|plant|unit|start|origin|riser|zero|plenum)|kumuliert\w*|kumulativ\w*|fortlaufend(?:e|en)? (?:ma|l)\w*|aufsummiert\w*|aufaddiert\w*|stationierung|(?:abst[aä]nde?|entfernung\w*|ma(?:ß|ss)e|l[aä]ngen?) (?:jeweils )?(?:ab|vom|von der|von|bis) (?:dem |der )?(?:ventilator|ger[aä]t|anlage|nullpunkt|anfang|zentrale)|cumul[ée]\w*|distances? (?:depuis|[àa] partir)|cumulatie\w*|gecumuleerd\w*|opgeteld\w*|afstand(?:en)? (?:van|vanaf|tot)|ackumulera\w*|l[öo]pande m[åa]tt|avst[åa]nd fr[åa]n|acumulad\w*|distancias? (?:desde|a partir)|progressiv[eio]|progresiv[ao]s|cumulat[aeio]|distanz[ae] (?:da|dal|dalla))(?:[^\pL]|$)`)

// Bears reports a line that may bear on what counts of the rows, or on their sizes: it says how
// many times they are there, of which part or which rows it is, what comes on top or goes off, or
// holds the size of a piece. maybe: it is a sentence of which lists of words don't tell what it
// says, and not of papers, prices or the law: Do not scale.
func Bears(lex *headings.Lexicon, line string) (sure, maybe bool) {
	if len(line) > mostLine {
		return true, false
	}
	sure, maybe = bears(lex, line)
	return sure, maybe && !ofPapers.MatchString(headings.Plain(line))
}

// bears is Bears for a line of papers too.
func bears(lex *headings.Lexicon, line string) (sure, maybe bool) {
	plain := headings.Plain(line)
	words := headings.Tokens(plain)
	if Counts(lex, line) || len(sides.FindAllString(standards.ReplaceAllString(plain, ""), 2)) > 1 || inUnit.MatchString(plain) || ofRows.MatchString(plain) || onTop.MatchString(plain) || sizeInLine.MatchString(plain) || OnSizes.MatchString(plain) || outsideSizes.MatchString(plain) {
		return true, false
	}
	if percent.MatchString(plain) && !slices.ContainsFunc(words, func(w string) bool { return moneyWords[w] }) {
		return true, false
	}
	says := lex.Says(words, plain)
	if says&(headings.Several|headings.Twice|headings.Part|headings.Out|headings.Sum) != 0 || says&headings.Instead != 0 && sizeFigure.MatchString(plain) || says&headings.Unsized != 0 && !toCheck.MatchString(plain) && !insideSizes.MatchString(plain) {
		return true, false
	}
	if saysNumber(lex, words) || LoneUnit.MatchString(plain) || ofHomes.MatchString(plain) {
		return true, false
	}
	return lex.Doubts(slices.DeleteFunc(words, func(w string) bool { return harmlessBelow[w] }))
}

// saysNumber reports a number in words, from two on, that isn't one of days or the like.
func saysNumber(lex *headings.Lexicon, words []string) bool {
	for i, w := range words {
		if celltext.Digit(w[0]) || lex.Number(w) < 2 || w == "due" || w == "sei" || w == "once" {
			continue
		}
		if i+1 == len(words) || !ofTime.MatchString(words[i+1]) {
			return true
		}
	}
	return false
}

// Loose reports a line with a figure that may be the number of an item: it is no date or time, none
// of a standard, a measure or a sum of money, nor of a page, a class or the like.
func Loose(line string) bool {
	if !celltext.HasDigit(line) {
		return false
	}
	plain := headings.Plain(line)
	for _, x := range [...]*regexp.Regexp{days, standards, measured, labelled} {
		plain = x.ReplaceAllString(plain, " ")
	}
	return looseFigure.MatchString(plain)
}

// Topic reports a line of something that lines below a list are about, or one of up to four words: who
// made it and when, delivery, sheet and sealing, the law.
func Topic(lex *headings.Lexicon, line string) bool {
	words, plain := headings.Tokens(line), headings.Plain(line)
	named := 0
	for _, w := range words {
		if !celltext.Digit(w[0]) {
			named++
		}
	}
	return named <= 4 || lex.NamesThing(words) || lex.Harmless(words) || topics.MatchString(plain) || ofPapers.MatchString(plain) || standards.MatchString(plain) || slices.ContainsFunc(words, func(w string) bool { return moneyWords[w] })
}

// What Loose and Topic look for, in text without accents, in seven languages (from memory,
// unverified).
var (
	days        = regexp.MustCompile(`\b\d{1,2}[./-]\d{1,2}(?:[./-]\d{2,4})?\b\.?|\b\d{4}-\d{2}-\d{2}\b|\b\d{1,2}[:h]\d{2}\b|\b\d{1,2}(?:st|nd|rd|th|\.|er|:e)? ?(?:&|and|und|et|en|och|y|e|of|de|di)? ?(?:\d{1,2}(?:st|nd|rd|th|\.)? ?)?(?:jan|feb|mar|apr|may|mai|maj|mei|maggio|jun|jul|giu|lug|aug|aout|ago|sep|set|oct|okt|ott|nov|dec|dez|dic|ene|abr|avr|fev|mrt|gen|juin|juil)\pL*(?: ?,? ?\d{2,4})?|\b(?:19|20)\d\d\b`)
	measured    = regexp.MustCompile(`\b\d+(?:[.,]\d+)*(?: ?[/–-] ?\d+(?:[.,]\d+)?)? ?(?:mm|cm|kg|kgs|t|to|pa|kpa|%|°c?|m2|m²|qm|mq|m3|m³|l/s|in\.? ?wg|gsm|€|£|\$|eur|db\(?a?\)?|days?|weeks?|months?|years?|hours?|hrs?|working days|business days|werktage?n?|arbeitstage?n?|jours ouvr\w+|werkdagen|arbetsdagar|am|pm|uhr|loads?|deliver\w*|copies|tage?n?|wochen?|monate?n?|jahre?n?|stunden?|jours?|semaines?|mois|ans?|dagen|weken|maanden|jaar|dagar|veckor|manader|ar|dias?|semanas?|meses|anos?|giorni|settimane|mesi|anni|centres|ctrs|gauge|ga)(?:$|[^\pL\pN])|\b\d{1,2} ?/ ?10\b|\+?\b0\d[\d ./-]{5,}`)
	ofTime      = regexp.MustCompile(`^(?:days?|weeks?|months?|years?|hours?|tage?n?|wochen?|monate?n?|jahre?n?|jours?|semaines?|mois|ans?|dagen|weken|maanden|jaar|dagar|veckor|manader|ar|dias?|semanas?|meses|anos?|giorni|settimane|mesi|anni|working)$`)
	ofHomes     = regexp.MustCompile(`\b(?:flats?|apartments?|houses?|plots?|wohnung(?:en)?|hauser|haus|logements?|appartements?|maisons?|woning(?:en)?|huizen|lagenhet(?:er)?|viviendas?|pisos|allogg\w*|appartament\w*)\b`)
	labelled    = regexp.MustCompile(`\b(?:profile?|profil|rahmen|frame|flanges?|class[ei]?|classe|klass[e]?|klasse|clase|rev\.?|revision|index|indice|issue|version|ausgabe|week|wk|kw|vecka|v|semaine|semana|settimana|table|tabelle?|appendix|annex|anlage|annexe|bilaga|bijlage|anexo|allegato|team|equipe|kolonne|ploeg|lag|phase|fase|section|sect|abschnitt|page|seite|pagina|sida|hoja|foglio|sheet|blatt|feuille|blad|druckstufe|druckklasse|drawing|dwg|plan|zeichnung|zng|tekening|ritning|plano|tavola|disegno|dessin|order|auftrag|bestellung|commande|bestelnr|opdracht|pedido|ordine|offer|angebot|devis|offerte|offert|oferta|project|projekt|projet|proyecto|progetto|job|contract|vertrag|contrat|no|nr|n°|nº|ref|tel|phone|fax|mobile|iban|plz|lot|los|lotto|unit|unite?|smacna|postfach|po box|quality|gute|type?|typ|tipo|s|dx|aisi|v)\.?:? ?(?:no\.?|nr\.?|n°|nº)? ?#?(?:\w{1,3}[-/]?)?\d[\w./-]*(?: \d{2,3}){0,4}(?: ?(?:of|von|sur|de|van|av|di|/) ?\d+)?|\b(?:vat reg|ust-?id|company reg|registered|reg)\b.*|\bz ?\d{3}\b|\bdx ?\d+\w*`)
	looseFigure = regexp.MustCompile(`\b[a-z]{0,3}[-. ]?\d{1,3}\b`)
	topics      = regexp.MustCompile(`\b(?:levels|underside|edite|imprime|impreso|impresa|stampato|gedruckt|druck\w*|ausdruck|bearb\w*|version|school|office|registered|ltd|gmbh|sarl|srl|discrepanc\w*|payment|lead|valid\w*|gultig\w*|geldig|oberflache|areas?|total\w*|surfaces?|superficie|flache|gesamtflache|oppervlak\w*|yta|measure[ds]?|checked|drawn|prepared|issued|signed|approved|printed|compiled|provided|survey\w*|sites?|deliver\w*|orders?|project|client|contact|contractor|tel|phone|e-?mail|spec\w*|section|class|pressure|leakage|gauge|seal\w*|joints?|standards?|manufactur\w*|fabricat\w*|install\w*|toleranc\w*|construction|enquir\w*|thanks?|thank|please|legend|abbrev\w*|units?|dims?|dimensions?|caps?|capped|approval|` +
		`aufmass|aufgenommen|gepruft|erstellt|aufgestellt|gezeichnet|freigabe|freigegeben|liefer\w*|bestell\w*|baustelle|auftrag\w*|projekt|bauvorhaben|bitte|danke|unterschrift|gelten|gilt|mit(?:\S+)? (?:gruss|grussen)|rundung\w*|angaben|masse?|leistungsverzeichnis|ausfuhrung|hersteller|verarbeit\w*|` +
		`releve\w*|verifie\w*|etabli\w*|dresse\w*|fait|livraison|chantier|commande|client|merci|veuillez|signature|dimensions|cotes|fourniture|pose|execution|mise en oeuvre|conforme\w*|selon|suivant|` +
		`opgemeten|opgesteld|gecontroleerd|getekend|levering|werk|bouwplaats|bestelling|klant|graag|dank|handtekening|maten|volgens|conform|uitvoering|` +
		`uppmatt|upprattad|godkand|kontrollerad|egenkontroll|ritad|leverans|bestallning|kund|tack|underskrift|matt|enligt|utforande|` +
		`medido|elaborado|revisado|aprobado|dibujado|entrega|obra|pedido|cliente|gracias|firma|medidas|segun|conforme|ejecucion|` +
		`rilevat[oaie]|redatto|verificat[oaie]|approvat[oaie]|disegnato|consegna|cantiere|ordine|committente|grazie|misure|secondo|come da|conformi?|esecuzione)\b`)
)

// WithoutLegal takes out of a line what papers say of mistakes in them: errors and omissions
// excepted.
func WithoutLegal(line string) string {
	if plain := headings.Plain(line); legal.MatchString(plain) {
		return legal.ReplaceAllString(plain, " ")
	}
	return line
}

// AlsoHere reports the name of a system or a level that may say that other rows are there too:
// gilt auch für 2. OG.
func AlsoHere(name string) bool { return also.MatchString(headings.Plain(name)) }

var also = regexp.MustCompile(`\b(?:as|like|wie|comme|als|zoals|som|como|come) (?:the |la |le |el )?(?:supply|extract|return|exhaust|zuluft|abluft|fortluft|soufflage|reprise|extraction|toevoer|afvoer|retour|tilluft|franluft|impulsion|retorno|extraccion|mandata|ripresa|estrazione)\b|\b(?:also|again|same|genauso|gleich|hetzelfde|likadan\w*|igual|uguale|identi\w*|auch|nochmals?|ebenfalls|ebenso|aussi|egalement|de meme|ook|eveneens|idem|aven|ocksa|likasa|tambien|igualmente|anche|ugualmente)\b`)

// Lacks reports the name of a group of pieces that may say that they are missing, or come on top:
// plus fittings, ohne Formstücke.
func Lacks(name string) bool { return lacking.MatchString(headings.Plain(name)) }

var lacking = regexp.MustCompile(`^(?:plus|without|excl\w*|no|ohne|zuzuglich|zzgl|sans|hors|zonder|utan|exkl\w*|sin|excepto|senza|escl\w*)\b|\b(?:missing|not (?:included|listed|counted)|fehlen|folgen|manquent|ontbreken|saknas|faltan|mancano)\b`)

// harmlessBelow are words that a remark of a row may not hold, and a line below a list may.
var harmlessBelow = SetOf("price prices total totals totale totaal totales totali medido medida medidas leistungsverzeichnis boq bill contract netto cotes maten misure matt masse offerten offert angebot preise prezzi precios prijzen priser")

// Counts reports a line that may say how many times the rows are there, or of which part of a
// whole they are: quantities for half the building, alle Stückzahlen doppelt.
func Counts(lex *headings.Lexicon, line string) bool {
	plain := headings.Plain(line)
	if ofTimes.MatchString(plain) {
		return true
	}
	if !ofQuantities.MatchString(plain) {
		return false
	}
	return perOne.MatchString(plain) || celltext.HasDigit(plain) || slices.ContainsFunc(headings.Tokens(plain), func(w string) bool { return lex.Number(w) > 0 })
}

// TimesAll reports a line that says of all rows, or of quantities, how many times they are there:
// alle Stückzahlen doppelt.
func TimesAll(line string) bool {
	if len(line) > mostLine {
		return false
	}
	plain := headings.Plain(line)
	return ofTimes.MatchString(plain) && (ofQuantities.MatchString(plain) || ofAll.MatchString(plain))
}

var ofAll = regexp.MustCompile(`\b(?:all|everything|alles?|das ganze|tout|toutes|tous|allt|alla|todo|todos|todas|tutto|tutti|tutte)\b|^(?:mal|x|×) ?\d+$`)

// What Counts and Bears look for, in text without accents, in seven languages (from memory,
// unverified): how many times; quantities; of one of several; rows; what comes on top or goes off;
// a size of a piece; sizes of the outside.
var (
	ofTimes = regexp.MustCompile(`\b(?:[x×] ?\d+|\d+ ?[x×]|twice|thrice|double[ds]?|doubling|tripled?|triples?|halves|multipl\w*|mirror\w*|handed|opposite hand|half|doppelt\w*|verdoppel\w*|(?:zwei|drei|vier|funf|\d)(?:fach|mal)\w*|triplicat\w*|triplicad\w*|tripl[oae]|driedubbel\w*|tredubb\w*|exemplaires?|mal|halbe[nrs]?|halb|halfte|spiegel\w*|moitie|demi|fois|doubler|miroir|symetri\w*|maal|keer|dubbel\w*|dubbl\w*|helft|halve|gespiegeld\w*|ganger|halva|halften|spegel\w*|veces|dobles?|duplic\w*|mitad|espejo|simetric\w*|volte|doppi[oae]?|raddoppi\w*|meta|specchi\w*|simmetric\w*)\b`)

	ofQuantities = regexp.MustCompile(`\b(?:quantit\w*|qtys?|sets?|mengen?|stuckzahl\w*|anzahl|aantal\w*|hoeveelhe\w*|antal\w*|mangder?|cantidad\w*|pieces?|stuck|stuks|styck|piezas|pezzi)\b`)
	perOne       = regexp.MustCompile(`\b(?:per|each|for|one|only|je|jede\w*|pro|fur|nur|ein\w*|par|pour|chaque|un|une|seul\w*|voor|elke?|een|alleen|varje|for|ett|en|endast|por|cada|para|solo|una|uno|ogni|soltanto)\b`)
	ofRows       = regexp.MustCompile(`\b(?:rows?|lines?|items?|above|below|first|second|third|last|ones?|these|those|everything|nothing|erste[nrs]?|zweite[nrs]?|dritte[nrs]?|letzte[nrs]?|diese[nrs]?|alles|nichts|premiere?s?|derniere?s?|ces|cette|rien|eerste|tweede|laatste|deze|niets|forsta|andra|sista|dessa|inget|primer[oa]?s?|segund[oa]s?|ultim[oaie]s?|est[oa]s|nada|prim[oaie]|second[aie]|quest[oaie]|niente|zeilen?|positionen|oben|unten|obige\w*|obenstehend\w*|vorstehend\w*|lignes?|ci-dessus|ci-dessous|regels?|bovenstaand\w*|boven|rader|raderna|raden|ovan\w*|filas?|lineas|arriba|righe|riga|sopra|suddett\w*)\b`)
	onTop        = regexp.MustCompile(`\b(?:plus|same|add|adds|added|also|again|another|further|additional\w*|extras?|more|remaining|remainder|rest|others?|missing|allow|allowances?|wast(?:e|age)|deduct\w*|less|minus|only|already|cumul\w*|cut-?outs|` +
		`zusatzlich\w*|dazu|weitere\w*|restliche\w*|fehl(?:t|en|ende\w*)|verschnitt\w*|abzug|abzuge|abzuziehen|nur|auch|nochmal\w*|erneut|bereits|bedarf\w*|eventual\w*|zulage\w*|kumul\w*|` +
		`aussi|encore|autres?|reste|restant\w*|en plus|supplement\w*|ajout\w*|majoration|chutes?|dedui\w*|deduction|seulement|uniquement|deja|egalement|manqu\w*|` +
		`ook|nog|meer|overige?|aanvullend\w*|toeslag|snijverlies|aftrek\w*|alleen|reeds|eveneens|ontbre\w*|` +
		`aven|ocksa|ytterligare|resten|ovriga|tillagg|spill|avdrag|endast|bara|redan|saknas|` +
		`tambien|mas|otr[oa]s?|resto|adicional\w*|anadi\w*|incremento|mermas?|descontar|faltan?|solamente|` +
		`anche|altr[oiae]|aggiun\w*|maggiorazione|sfrid[oi]|detra\w*|detrazione|soltanto|manca\w*)\b`)
	sizeInLine   = regexp.MustCompile(`\d{2,4}\s*(?:mm)?\s*[x×*]\s*\d{2,4}|\b\d{3,4}\s*/\s*\d{3,4}\b|[ø⌀∅]\s*\d|\d\s*(?:mm)?\s*(?:[ø⌀∅]|dia\b|diam)|\b(?:dn|nw|dia\.?|diam\.?) ?\d|\b\d+(?:[.,]\d+)? ?(?:m|lfm|lm|ml|lin\.? ?m|meters?|metres?|metri|metros)\b(?:[^²³&/]|$)|\b\d{3,4} (?:mm )?(?:long|lang|wide|high|breit|hoch)\b`)
	sizeFigure   = regexp.MustCompile(`\b(?:[3-9]\d\d|1\d[0-8]\d|[1-9]\d\d|[3-9]\d{3})\b`)
	outsideSizes = regexp.MustCompile(`\b(?:sizes?|dimensions?|masse|abmessungen|cotes|dimensions|maten|afmetingen|matt|medidas|misure|dimensioni)\b.*\b(?:external|outside|overall|aussen\w*|exterieur\w*|hors tout|buitenwerks\w*|uitwendig\w*|utvandig\w*|exterior\w*|estern[eoai])\b|\b(?:aussenmasse?|buitenmaten|yttermatt)\b`)
	insideSizes  = regexp.MustCompile(`\b(?:intern\w*|inside|inner|clear|innen\w*|lichte\w*|interieur\w*|binnen\w*|inwendig\w*|invandig\w*|interior\w*)\b`)
	inUnit       = regexp.MustCompile(`\b(?:in|en|i) (?:mm|cm|m|inch(?:es)?|feet|ft|met(?:er|re)s?|zoll|pouces?|tum|pulgadas|pollici|metros?|metri)(?:$|[\s.,;)])`)
	sides        = regexp.MustCompile(`\b(?:[3-9]\d\d|[12]\d\d|1[0-8]\d\d|[3-9]\d00)\b`)
	standards    = regexp.MustCompile(`\b(?:en|din|iso|bs|nf|uni|ss|une|astm|dw|vdi|ral|nen|ev|lv)\b[ /-]*(?:(?:en|iso)\b[ /-]*)?\w?\d[\d-]*`)
	percent      = regexp.MustCompile(`\d\s*%|\bper ?cent\b|\bprozent\b|\bpour ?cent\b|\bprocent\b`)
	legal        = regexp.MustCompile(`\be ?& ?oe\b|\b(?:errors?(?: and | & )omissions?|omissions?(?: and | & )errors?)(?: are)? excepted\b|\birrtum(?:er)?(?: und auslassungen| und anderungen)? vorbehalten\b|\bsauf erreurs? (?:ou|et) omissions?\b|\bsalvo error(?:es)? [uyo] omision(?:es)?\b|\bsalvo errori (?:ed|e|od|o) omissioni\b|\blast (?:saved|printed|modified|updated|changed)\b|\b(?:nur zur (?:internen )?(?:verwendung|information)|for (?:information|internal use|reference|tender|approval) only)\b|\b(?:at|every|max\.?|alle|tous les|elke|cada|ogni) \d+(?:[.,]\d+)? ?m\b|\b\d+(?:[.,]\d+)? ?m (?:max|centres|ctrs|abstand)\b|\bunless (?:otherwise )?(?:noted|stated|shown)(?: otherwise)?\b|\bu\.?n\.?o\.?\b`)
	toCheck      = regexp.MustCompile(`\b(?:check\w*|verif\w*|pruf\w*|uberpruf\w*|control\w*|kontroll\w*|gecontroleerd|comprob\w*)\b`)
	ofPapers     = regexp.MustCompile(`\b(?:documents?|drawings?|copyright|cop(?:y|ies|ied)|reproduc\w*|scaled?|resale|prices?|offers?|quotations?|liab\w*|responsib\w*|warrant\w*|guarant\w*|binding|zeichnung\w*|dokument\w*|preis\w*|angebot\w*|massstab\w*|haft\w*|gewahr\w*|weitergabe|vervielfalt\w*|verbindlich\w*|plans?|prix|offres?|devis|echelle|contractuel\w*|responsab\w*|tekening\w*|prij[sz]\w*|offerte\w*|schaal|aansprakelijk\w*|ritning\w*|handling\w*|pris\w*|offert\w*|skala|ansvar\w*|planos?|documentos?|precios?|ofertas?|escala|disegn[oi]|document[oi]|prezz[oi]|scala|riprodu\w*|agb|(?:\w*bedingungen)|conditions?|terms|voorwaarden|villkor\w*|condiciones|condizioni|questions?|hesitate|fragen|hesiter|questions|vragen|fragor|dudas|domande)\b`)
)

// moneyWords are words of lines of money or of weight below a list, in seven languages, without
// accents (from memory, unverified).
var moneyWords = SetOf("net nett netto bruto betala rounding round goods material materials materialien nettosumme nettobetrag nettopreis nettowert gross brutto bruttosumme bruttobetrag bruttopreis vat tax taxes gst hst pst mwst ust mehrwertsteuer umsatzsteuer steuer tva ht ttc taxe btw moms mervardesskatt iva impuesto impuestos imponible imponibile " +
	"discount rebate rabatt nachlass skonto abschlag remise rabais escompte korting descuento dto sconto carriage freight shipping handling packing packaging postage delivery fracht frachtkosten versand versandkosten verpackung verpackungskosten lieferung lieferkosten transport transports transportkosten " +
	"emballage port livraison vracht vrachtkosten verzending verzendkosten verpakking leveringskosten frakt frakten fraktkostnad portes embalaje transporte envio flete trasporto imballo imballaggio spedizione surcharge sundries consumables kleinmaterial kleinteile labour labor montage montagekosten arbeid arbetskostnad manodopera " +
	"price prices preis gesamtpreis endpreis nettopreise prix prijs totaalprijs pris totalpris precio prezzo amount betrag endbetrag rechnungsbetrag gesamtbetrag angebotssumme auftragssumme montant bedrag totaalbedrag belopp importe importo balance deposit acompte anzahlung aanbetaling anticipo acconto payable rounding rundung oresavrundning avrundning arrondi afronding redondeo arrotondamento " +
	"weight gewicht gesamtgewicht nettogewicht poids vikt totalvikt peso")

// besideMoney are words beside these.
var besideMoney = SetOf("and und et en och y e the of for on at off up a to excl incl ex exkl inkl exclusive inclusive exclusief inclusief excluding including zzgl zuzuglich abzgl abzuglich plus minus less trade fuel special total totals sub subtotal subtotaal subtotale zwischensumme delsumma totaal totale suma somme sum summa summe gesamt grand goods order value material materials materialien fournitures due pay payer betala betalen att a te pagar da da sans avec hors sin con inclusa esclusa inclus comprise exclusa gesetzliche gesetzlicher " +
	"de du des d di del della frais porto spese main doeuvre oeuvre mano obra base round sales state local site free commerciale in kg kgs t lb lbs eur gbp usd sek chf euro euros us kr")

// Money reports a cell that names a sum of money or a weight, and nothing else: VAT 20 %, Packing
// and carriage, zzgl. 19% MwSt.
func Money(cell string) bool {
	if len(cell) > MaxTitle || cell == "" {
		return false
	}
	money := false
	for _, w := range headings.Tokens(cell) {
		switch {
		case moneyWords[w]:
			money = true
		case !besideMoney[w] && !celltext.Digit(w[0]):
			return false
		}
	}
	return money
}

// Amount reports a cell with an amount of money or a weight: 1.234,50 €, -5 %, 412 kg.
func Amount(cell string) bool { return amount.MatchString(cell) }

var amount = regexp.MustCompile(`(?i)^\(?[-–+−]?\s*(?:[€£$]|eur|gbp|usd|chf|sek)?\s*[-–+−]?\d[\d.,' \x{a0}’]*(?:[-–]|\s*(?:[€£$%]|eur|gbp|usd|chf|sek|kr\.?|kgs?|t|to|lbs?))?\)?$`)
