package described

import (
	"regexp"
	"slices"
	"strings"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/schedule/celltext"
	"blankoff/takeoff/schedule/headings"
)

// OfPieces reports a heading of pieces, which are counted.
func OfPieces(typed string) bool {
	return slices.ContainsFunc(headings.Tokens(typed), func(w string) bool {
		return slices.Contains([]string{"pieces", "pcs", "pieza", "piezas", "pezzi", "stuck", "stuks"}, w)
	})
}

// describers are words of headings that may stand over what a piece is, in seven
// languages (from memory, unverified).
var describers = []string{"name", "text", "part", "piece", "element", "elemento", "elément", "category", "article", "artikel", "component", "composant", "onderdeel", "nom", "nome", "namn", "naam", "denominazione", "designation", "object", "objekt"}

// Describer reports a heading that may stand over what a piece is.
func Describer(typed string) bool {
	return slices.ContainsFunc(headings.Tokens(typed), func(w string) bool { return slices.Contains(describers, w) })
}

// neighbours are words of headings over what other pieces are, or what isn't made, in seven
// languages (from memory, unverified).
var neighbours = []string{"above", "below", "over", "under", "beside", "clash", "clashes", "cross", "crosses", "crossing", "near", "next", "previous", "from", "to", "end", "ends", "connection", "connects", "connected", "adjacent", "between", "joins", "joint", "alternative", "alternate", "old", "spare", "insulation",
	"anschluss", "nach", "von", "naar", "vers", "amont", "aval", "raccordement", "aansluiting", "anslutning", "conexion", "collegamento", "remark", "remarks", "comment", "comments", "note", "notes"}

// OfNeighbours reports a heading over what stands beside the piece.
func OfNeighbours(typed string) bool {
	return slices.ContainsFunc(headings.Tokens(typed), func(w string) bool { return slices.Contains(neighbours, w) })
}

// RoundKind reports a word alone that names a circular duct, as spiral: it may be a kind or
// a shape.
func (k Kinds) RoundKind(cell string) bool {
	w, known := k.Lex.Exact(takeoff.Kind, cell)
	kind, _, shape, ok := fittings.ParseDescription(w)
	return known && ok && kind == fittings.Straight && shape == fittings.Circular && !k.NamesShape(cell)
}

// GroupNames are words for groups of pieces that no single piece is called (from memory,
// unverified).
var GroupNames = []string{"fittings", "ductwork", "ducts", "formteile", "kanale", "kanalteile", "accessoires", "gaines", "hulpstukken", "kanalen", "kanaldelar", "kanaler", "accesorios", "conductos", "accessori", "canali", "pezzispeciali", "pieces", "components", "accessories"}

// NamesGroup reports words of a line that name pieces.
func (k Kinds) NamesGroup(text string) bool {
	return slices.ContainsFunc(headings.Tokens(text), func(w string) bool {
		return slices.Contains(GroupNames, w) || k.NamesKind(w) || k.NamesKind(strings.TrimSuffix(w, "s"))
	})
}

// LooksLikePiece reports a row with a kind of piece in a cell of its own and two
// numbers.
func (k Kinds) LooksLikePiece(cells []string) bool {
	kind, numbers := false, 0
	for _, cell := range cells {
		if cell = celltext.Trim(cell); cell == "" || len(cell) > 40 {
			continue
		}
		if cell[0] >= '0' && cell[0] <= '9' {
			numbers++
			continue
		}
		_, _, _, known := fittings.ParseDescription(cell)
		if w, ok := k.Lex.Exact(takeoff.Kind, cell); ok && w != "" {
			known = true
		}
		kind = kind || known
	}
	return kind && numbers > 1
}

// ofList are words of titles for a list or for lengths of ducts as such, in seven languages (from
// memory, unverified). A take-off is the list, and take-offs are spigots.
var ofList = regexp.MustCompile(`(?i)\btake[\s-]?off(?:\s+(?:list|sheet|schedule))?\b|\b(?:schedule|list|joints|lengths|sections|runs|liste|aufma(?:ß|ss)|aufstellung|längen|stücke|relevé|métré|longueurs|lista|lijst|staat|lengtes|lengten|längder|mängdlista|elenco|lunghezze|longitudes|medición|computo|cómputo)\s*$|^(?:(?:schedule|list|take[\s-]?off|aufma(?:ß|ss)|(?:stück)?liste|aufstellung|relevé|métré|lijst|meetstaat|staat|mängdlista|mängdförteckning|lista|elenco|computo|cómputo|listado|medición)\s+(?:(?:of|der|von|de|des|van|av|di|dei|delle)\s+)?)`)

// WithoutList is a title without words for the list that it heads.
func WithoutList(title string) string {
	if rest := strings.Trim(ofList.ReplaceAllString(title, ""), " :-–"); rest != title {
		return rest
	}
	return title
}

// TitleKind is the kind that a title names: "" where it names none, or says no more than
// ducts, which may be of any kind.
func (k Kinds) TitleKind(title string) string {
	if title = WithoutList(title); len(title) < 4 || !k.NamesPiece(title) { // Red
		return ""
	}
	w := k.Translate(takeoff.Kind, title)
	if strings.ContainsAny(w, "|"+BesideMark) {
		return ""
	}
	kind, _, shape, _ := fittings.ParseDescription(w)
	if kind == fittings.Straight && shape == fittings.NoShape && !k.Lex.SaysStraight(title) {
		return ""
	}
	return w
}

// idHeads head columns of numbers that models give to single pieces, in seven languages (from
// memory, unverified).
var idHeads = []string{"elementid", "elementids", "objectid", "instanceid", "componentid", "entityid", "partid", "guid", "ifcguid", "ifcid", "globalid", "uniqueid", "uid", "uuid", "handle", "entityhandle", "modelid", "objektid", "bauteilid", "elementnummer", "elementnr", "identifiant", "idelement", "idobjet", "identificador", "idelemento", "iddeelemento", "idobjeto", "identificativo", "idoggetto", "elementnumber", "elementno"}

// OfIDs reports such a heading.
func OfIDs(typed string) bool { return slices.Contains(idHeads, headings.Squash(typed)) }
