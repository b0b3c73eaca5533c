package answered

import (
	"slices"

	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/wording"
)

// OfSupply reports a heading of who supplies a row, does its work or answers for it.
func OfSupply(typed string) bool {
	words := headings.Tokens(typed)
	return len(words) > 0 && len(words) < 4 && !slices.ContainsFunc(words, func(w string) bool { return notSupply[w] }) && slices.ContainsFunc(words, func(w string) bool { return supplyWords[w] })
}

// Ours reports a cell that says that it is whoever writes the list who does it.
func Ours(cell string) bool { return len(cell) < 40 && someParty(cell, ourWords) }

// Theirs reports a cell that names somebody else at a job: by tenant, bauseits.
func Theirs(cell string) bool { return len(cell) < 60 && !Ours(cell) && someParty(cell, partyWords) }

// someParty reports up to four words of which one is of a list.
func someParty(cell string, of map[string]bool) bool {
	words := headings.Tokens(cell)
	return len(words) < 5 && slices.ContainsFunc(words, func(w string) bool { return of[w] })
}

// OfTrade reports a cell that names ventilation, and OfOtherTrade one that names another trade
// or what it brings in.
func OfTrade(cell string) bool { return len(cell) < 60 && someParty(cell, airWords) }

// OfOtherTrade is the other; see OfTrade.
func OfOtherTrade(cell string) bool { return len(cell) < 60 && someParty(cell, tradeWords) }

// Words of them, in seven languages, without accents (from memory, unverified).
var (
	supplyWords = wording.SetOf(`supply supplied supplies supplier furnished furnish provided provide provider procured procurement purchased bought party responsible responsibility by contractor trade scope
		lieferung liefert lieferant geliefert durch ausfuhrung gewerk beistellung zustandig fourniture fourni fournit fournisseur lot responsable par charge
		levering geleverd leverancier door verantwoordelijk partij leverans levereras leverantor ansvar ansvarig entreprenad suministro suministra suministrado suministrador responsable fornitura fornito fornitore responsabile cura`)
	notSupply = wording.SetOf("air checked drawn approved measured date issued fan unit system return extract level zone no nr ref volume flow drawing note")
	ourWords  = wording.SetOf("us we our ours ourselves own wir uns unser eigen selbst auftragnehmer an nous notre wij ons eigen zelf vi oss egen nosotros nuestro propio noi nostro proprio mech mechanical hvac mvac ventilation ductwork")

	partyWords = wording.SetOf(`tenant tenants client clients landlord landlords owner owners employer occupier user others gc gmc builder builders vendor free foc shopfitter
		mieter bauherr bauherrn bauseits bauseitig nutzer eigentumer gu auftraggeber ag andere dritte beistellung locataire client proprietaire preneur moa moe maitre utilisateur exploitant tiers autres
		huurder klant eigenaar gebruiker bouwheer opdrachtgever derden hoofdaannemer hyresgast hyresgasten bestallare bestallaren kund kunden agaren brukaren annan andra
		inquilino cliente propiedad arrendatario usuario terceros otros committente conduttore utente terzi altri`)
	airWords = wording.SetOf(`duct ducts ductwork ducting hvac mvac mvhr ventilation ventilating vent mechanical mech air kanal kanale luftkanal luftkanale luftung luftungsbau rlt raumlufttechnik gaine gaines cvc ventil aeraulique
		kanaal kanalen luchtkanaal luchtkanalen ventilatie lucht kanaler ventilationskanal luft lb conducto conductos ventilacion climatizacion aire canale canali condotta condotte ventilazione aeraulica aria`)
	tradeWords = wording.SetOf(`electrical electric elec power lighting plumbing plumber sanitary drainage sewer sprinkler sprinklers fire gas pipe pipes pipework piping cable cables tray trays conduit conduits trunking ladder busbar structural steelwork medical data telecom comms
		elektro strom sanitar sprinkleranlage abwasser rohrleitung rohrleitungen kabel kabelbahn kabelrinne kabelpritsche electricite plomberie sanitaire assainissement tuyau tuyauterie cable cables chemin sprinkleur
		elektra elektrisch loodgieter riolering leiding leidingen kabelgoot kabelladder el elkraft rorledning vs sprinklerror kabelstege kabelranna kabelstegar electricidad electrico fontaneria saneamiento tuberia tuberias bandeja bandejas rociadores
		elettrico elettrici idraulico idraulici sanitario tubazione tubazioni passerella passerelle cavi scarichi`)
)
