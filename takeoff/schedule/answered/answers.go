// Package answered knows what the columns say that answer something of each row: yes and no,
// that rows are turned into others, revisions, and signs that a line explains. It reads text only.
package answered

import (
	"slices"
	"strings"

	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// Answer is what a cell of a column of yes and no says.
type Answer uint8

// The answers.
const (
	NoAnswer Answer = iota
	Yes
	No
	Cross // a mark, or no beside ticks
	Tick  // yes
	One   // as a figure: yes
	Nought
)

// AnswerOf is the answer of a cell.
func AnswerOf(cell string) Answer {
	if len(cell) > longestAnswer {
		return NoAnswer
	}
	return answers[strings.TrimSuffix(strings.ToLower(cell), "\ufe0f")]
}

// longestAnswer is the length of the longest of them, bytes.
const longestAnswer = 12

// answers are words and signs for yes and no, in seven languages (from memory, unverified).
var answers = answersOf(map[Answer]string{
	Yes:   "yes y ja j oui o si sí sì s true wahr vrai verdadero vero waar sant ok okay",
	No:    "[] no n nein non nee nej false falsch faux falso onwaar falskt nok nio ✘ ✗ ✕ ✖ ❌ ❎ ☒ ☐ ⛔ 👎",
	Cross: "x ×", Tick: "[x] ✔ ✓ ☑ ✅ √ 👍", One: "1", Nought: "0"})

func answersOf(words map[Answer]string) map[string]Answer {
	of := map[string]Answer{}
	for a, list := range words {
		for w := range strings.FieldsSeq(list) {
			of[w] = a
		}
	}
	of["not ok"], of["[ ]"] = No, No
	return of
}

// SaysNo reports a cell that says no where others of its column answer so; ticked: some are
// ticks.
func SaysNo(cell string, ticked bool) bool {
	a := AnswerOf(cell)
	return a == No || a == Nought || a == Cross && ticked
}

// Marks reports a cell that says yes, or marks its row.
func Marks(cell string) bool {
	switch AnswerOf(cell) {
	case Yes, Tick, Cross, One:
		return true
	}
	return false
}

// PlusMinus reports a heading that is nothing but both signs: +/-.
func PlusMinus(typed string) bool {
	typed = strings.TrimPrefix(typed, "'") // as files of refused rows have it
	return len(typed) < 6 && strings.Contains(typed, "+") && strings.ContainsAny(typed, "-–") && len(headings.Tokens(typed)) == 0
}

// Answers reports cells of a column that answer yes or no, each of them, and whether some are
// ticks. Where none says yes, the rows without an answer have to be more: of them nobody says
// no. Letters that are no English or German ones, or no alone, may be north and south: they
// answer under a heading of taking only.
func Answers(cells []string, empty int, taking bool) (answered, ticked bool) {
	var n [Nought + 1]int
	letter, letters := byte(0), 0
	for _, cell := range cells {
		a := AnswerOf(cell)
		if n[a]++; len(cell) > 1 || a != Yes && a != No {
			continue
		}
		if letters++; a == Yes && letter != cell[0]|0x20 {
			if letter != 0 {
				return false, false
			}
			letter = cell[0] | 0x20
		}
	}
	if letters > 0 && !taking && letter != 'y' && letter != 'j' {
		return false, false
	}
	yes, no, figures := n[Yes]+n[Tick], n[No], n[One]+n[Nought]
	if n[Tick] > 0 {
		no += n[Cross]
	} else {
		yes += n[Cross]
	}
	switch {
	case len(cells) == 0 || n[NoAnswer] > 0 || figures > 0 && figures < len(cells):
		return false, false
	case figures > 0:
		return n[One] > 0 && n[Nought] > 0, false
	}
	return len(cells) > 1 && yes > 0 || no > 0 && yes == 0 && empty > no, n[Tick] > 0
}

// OfQuality reports a heading that asks what a piece is like, what is on it or how far it is:
// no under it says nothing against its row.
func OfQuality(typed string) bool {
	return slices.ContainsFunc(headings.Tokens(typed), func(w string) bool {
		return qualityWords[w] || hasQualityStem(w)
	})
}

func hasQualityStem(word string) bool {
	return slices.ContainsFunc(qualityStems, func(stem string) bool { return strings.Contains(word, stem) })
}

// OfState reports a heading with a participle, as insulated, abgedichtet, gekit, brandklassad,
// posée, sellado: it asks how far a piece is, or what it is like, unless it is one of taking.
func OfState(typed string) bool {
	return !OfTaking(typed) && (strings.Contains(typed, "é") || slices.ContainsFunc(headings.Tokens(typed), participle))
}

// participle reports how participles begin and end in seven languages (from memory,
// unverified).
func participle(w string) bool {
	ends := func(of ...string) bool {
		return slices.ContainsFunc(of, func(end string) bool { return strings.HasSuffix(w, end) })
	}
	begins := strings.HasPrefix(w, "ge") || strings.HasPrefix(w, "ver") || strings.HasPrefix(w, "be") || strings.Contains(w[1:], "ge")
	return len(w) > 4 && (ends("ed", "ad", "at", "ade", "ado", "ada", "ato", "ata", "ito", "ita", "uto", "uta") || begins && ends("t", "en", "d"))
}

// OfTaking reports a heading with a word on what is taken, counted or priced, or none at all:
// 0 under another one may be a number of something.
func OfTaking(typed string) bool {
	words := headings.Tokens(typed)
	return len(words) == 0 || len(words) == 1 && words[0] == "in" || slices.ContainsFunc(words, func(w string) bool { return takingWords[w] })
}

// takingWords are such words, in seven languages (from memory, unverified).
var takingWords = wording.SetOf(`price priced pricing offer quote quoted tender ours our us include included incl count counted use used take taken keep scope need needed want wanted valid active on ok order buy make
	preis angebot angeboten gezahlt mitgezahlt mitgerechnet eingerechnet berucksichtigt gerechnet gewertet zahlt zahlen rechnen mitrechnen mitnehmen nehmen gultig aktiv brauchen benotigt berucksichtigen liefern wertung
	prix devis offre compris compte compter prendre garder retenu retenue retenir actif utile meenemen meerekenen meetellen tellen prijs offerte meegeteld meegerekend meegenomen geteld gerekend nodig geldig actief gebruiken
	medraknad medraknat inraknad raknad medtagen medrakna rakna raknas med pris anbud offert behovs galler ingar precio oferta contado contada ofertado contar incluir incluido usar valido necesario activo prezzo offerta contato contata conteggiato offerto contare conteggiare incluso includere usare serve attivo`)

// Words of such headings, and how some begin, in seven languages (from memory, unverified).
var (
	qualityWords = wording.SetOf(`by orientation side facade skin walled wall walls double single twin layer swept mitred mesh birdmesh hoist hoisted crane scaffold loose field fit site iron sleeve sleeves stub lined lining liner fire rated rating fr sound access door doors hatch panel vane vanes damper dampers vcd fd mfd vav test tested hole holes point points
		painted paint coated coating ss kitchen grease vapour vapor drawn modelled modeled clash hanger hangers bracket brackets earthed bonded bonding cleaned clean checked approved delivered dispatched shipped received
		installed erected fixed fitted fabricated made manufactured ordered cut welded done complete completed finished signed issued urgent priority stock std special bespoke prefab handed hand drain weatherproof
		louvre louver grille grilles round rect rectangular circular oval straight fitting fittings seam seams stiffened stiffeners stiffener tie reinforced connector connectors collar collars branch capped cap caps open vertical horizontal roof
		left right curved flexible flex photo surveyed measured confirmed verified changed revised atex colour color barcode qr bim ifc rev revision leak gauge thickness weight mass finish material frame zone zinc
		brand brandschutz feuer rauch erhalten eingegangen angekommen empfangen recu recue recus ontvangen mottagen mottaget mottagna recibido recibida ricevuto ricevuta arrive arrivee llegado arrivato aangekomen framme tatad tatat klappe klappen tur deckel sicht sichtbar verdeckt lackiert kuche fett dicht gezeichnet gepruft gefertigt geliefert montiert eingebaut bestellt zugeschnitten geschweisst fertig erledigt lager norm leitbleche leitblech aufhangung halter geerdet etikett gereinigt freigegeben genehmigt gemessen rund eckig
		bride brides feu coupe fumee trappe trappes porte portes acces aube aubes clapet clapets registre cache peint peinte peinture laque cuisine graisse joint joints dessine controle verifie livre livree pose posee monte montee fabrique fabriquee commande commandee decoupe soude soudee termine terminee fini finie fait faite terre etiquette nettoye approuve rond
		rook geluid deur luik toegang schoepen klep zicht geverfd rvs keuken vet getekend gecontroleerd geleverd gemonteerd besteld gezaagd gelast klaar gereed voorraad aarding gereinigd goedgekeurd gemaakt rond
		flans rok ljud lucka luckor renslucka spjall synlig synligt dold dolt malad malat rostfri rostfritt kok fett ritad kontrollerad levererad monterad bestalld kapad svetsad klar klart fardig lager upphangning jordad markt godkand rund
		brida bridas fuego incendio incendios humo puerta acceso compuerta compuertas vista visto oculto pintado pintada cocina grasa sellado junta juntas dibujado revisado entregado entregada instalado instalada montado montada fabricado fabricada pedido pedida cortado soldado acabado terminado hecho hecha soporte soportes tierra etiqueta limpio aprobado redondo
		fuoco fumo porta portello portina ispezione accesso serranda serrande nascosto verniciato verniciata zincato cucina grasso tenuta guarnizione disegnato verificato controllato consegnato consegnata installato installata montato montata ordinato ordinata tagliato saldato finito completato fatto magazzino terra etichetta pulito approvato tondo`)
	qualityStems = []string{"insul", "isol", "lagg", "clad", "flang", "flansch", "flens", "acoust", "akust", "akoest", "acust", "silenc", "attenu", "schall", "intern", "extern", "expos", "visib", "conceal", "hidden", "galv", "verzink", "inox", "edelstahl", "stainless", "powder", "pulver", "poeder", "beschicht", "seal", "gasket", "afdicht", "etanch", "estanc", "sigill",
		"damm", "calorif", "coibent", "aisl", "vernis", "hygien", "revisions", "innen", "aussen", "inwend", "uitwend", "binnen", "buiten", "utvandig", "invandig", "interi", "exteri", "estern", "apparent", "label", "support", "spiral", "standard", "standaard", "estandar", "sonder", "special", "speciaal", "especial", "versteif", "messoffn", "potential", "weather", "reinforc"}
)
