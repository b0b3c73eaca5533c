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
// [D2], #2, ; 2.
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

// Bears reports a line that may bear on what counts of the rows, or on their sizes: it says how
// many times they are there, of which part or which rows it is, what comes on top or goes off, or
// holds the size of a piece. What it says that can't be told from lists of words bears on them too,
// unless it is of papers, prices or the law: Do not scale.
func Bears(lex *headings.Lexicon, line string) bool {
	if len(line) > mostLine {
		return true
	}
	plain := headings.Plain(line)
	words := headings.Tokens(plain)
	if Counts(lex, line) || len(sides.FindAllString(standards.ReplaceAllString(plain, ""), 2)) > 1 || inUnit.MatchString(plain) || ofRows.MatchString(plain) || onTop.MatchString(plain) || sizeInLine.MatchString(plain) || OnSizes.MatchString(plain) || outsideSizes.MatchString(plain) {
		return true
	}
	if percent.MatchString(plain) && !slices.ContainsFunc(words, func(w string) bool { return moneyWords[w] }) {
		return true
	}
	says := lex.Says(words, plain)
	if says&(headings.Several|headings.Twice|headings.Part|headings.Out|headings.Sum) != 0 || says&headings.Instead != 0 && sizeFigure.MatchString(plain) || says&headings.Unsized != 0 && !toCheck.MatchString(plain) && !insideSizes.MatchString(plain) {
		return true
	}
	doubted, vague := lex.Doubts(slices.DeleteFunc(words, func(w string) bool { return harmlessBelow[w] }))
	return doubted || vague && !ofPapers.MatchString(plain)
}

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

var also = regexp.MustCompile(`\b(?:also|again|same|auch|nochmals?|ebenfalls|ebenso|aussi|egalement|de meme|ook|eveneens|idem|aven|ocksa|likasa|tambien|igualmente|anche|ugualmente)\b`)

// harmlessBelow are words that a remark of a row may not hold, and a line below a list may.
var harmlessBelow = SetOf("price prices total totals totale totaal totales totali medido medida medidas leistungsverzeichnis boq bill")

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

// What Counts and Bears look for, in text without accents, in seven languages (from memory,
// unverified): how many times; quantities; of one of several; rows; what comes on top or goes off;
// a size of a piece; sizes of the outside.
var (
	ofTimes = regexp.MustCompile(`\b(?:[x×] ?\d+|\d+ ?[x×]|twice|thrice|double[ds]?|doubling|tripled?|triples?|halves|multipl\w*|mirror\w*|handed|opposite hand|half|doppelt\w*|verdoppel\w*|(?:zwei|drei|vier|fünf|funf|\d)fach\w*|mal|halbe[nrs]?|halb|halfte|spiegel\w*|moitie|demi|fois|doubler|miroir|symetri\w*|maal|keer|dubbel\w*|dubbl\w*|helft|halve|gespiegeld\w*|ganger|halva|halften|spegel\w*|veces|dobles?|duplic\w*|mitad|espejo|simetric\w*|volte|doppi[oae]?|raddoppi\w*|meta|specchi\w*|simmetric\w*)\b`)

	ofQuantities = regexp.MustCompile(`\b(?:quantit\w*|qtys?|sets?|mengen?|stuckzahl\w*|anzahl|aantal\w*|hoeveelhe\w*|antal\w*|mangder?|cantidad\w*|pieces?|stuck|stuks|styck|piezas|pezzi)\b`)
	perOne       = regexp.MustCompile(`\b(?:per|each|for|one|only|je|jede\w*|pro|fur|nur|ein\w*|par|pour|chaque|un|une|seul\w*|voor|elke?|een|alleen|varje|for|ett|en|endast|por|cada|para|solo|una|uno|ogni|soltanto)\b`)
	ofRows       = regexp.MustCompile(`\b(?:rows?|lines?|items?|above|below|zeilen?|positionen|oben|unten|obige\w*|obenstehend\w*|vorstehend\w*|lignes?|ci-dessus|ci-dessous|regels?|bovenstaand\w*|boven|rader|raderna|raden|ovan\w*|filas?|lineas|arriba|righe|riga|sopra|suddett\w*)\b`)
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
	legal        = regexp.MustCompile(`\be ?& ?oe\b|\b(?:errors?(?: and | & )omissions?|omissions?(?: and | & )errors?)(?: are)? excepted\b|\birrtum(?:er)?(?: und auslassungen| und anderungen)? vorbehalten\b|\bsauf erreurs? (?:ou|et) omissions?\b|\bsalvo error(?:es)? [uyo] omision(?:es)?\b|\bsalvo errori (?:ed|e|od|o) omissioni\b|\bunless (?:otherwise )?(?:noted|stated|shown)(?: otherwise)?\b|\bu\.?n\.?o\.?\b`)
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
