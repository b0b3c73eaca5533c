package wording

import (
	"regexp"
	"slices"
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/headings"
	"blankoff/takeoff/schedule/quantity"
)

// runningMetre are abbreviations of it, under a length: the metre (lfm laufender
// Meter, ml mètre linéaire, metro lineal; from memory, unverified).
var runningMetre = []string{"lfm", "lm", "ml", "linm", "rm", "rmt", "rmts", "rmtr", "rmtrs", "rft", "lnm", "mlin", "m1"}

// UnitWord understands a cell of a row of units: cm, [cm], in cm.
func UnitWord(cell string) (quantity.Unit, bool) {
	word := strings.ToLower(strings.Trim(cell, "()[] "))
	if before, after, ok := strings.Cut(word, " "); ok && slices.Contains(unitAfter, before) {
		word = after
	}
	if slices.Contains(runningMetre, strings.NewReplacer(" ", "", ".", "").Replace(word)) {
		word = "m"
	}
	return quantity.UnitOf(word)
}

// StatedUnit finds the unit that a line gives for all sizes: "all dimensions in
// mm". says is true for a line that is about units; u is empty where it names
// none or several.
func StatedUnit(lex *headings.Lexicon, text string) (u quantity.Unit, says bool) {
	words := headings.Tokens(text)
	about := false
	for _, w := range words {
		about = about || lex.Dimension(w) || slices.Contains(measures, w)
	}
	if !about && differ(words) && slices.ContainsFunc(words, func(w string) bool { return w == "in" || w == "en" }) {
		return u, true // W and H in mm, L in m
	}
	if !about || len(words) > 12 {
		return u, false
	}
	if differ(words) {
		return u, true
	}
	several := slices.ContainsFunc(words, func(w string) bool { return slices.Contains(nots, w) })
	says = several && slices.ContainsFunc(words, func(w string) bool { u, ok := quantity.UnitOf(w); return ok && u.Measure == takeoff.Lengths })
	for i, w := range words {
		x, ok := quantity.UnitOf(w)
		if !ok || x.Measure != takeoff.Lengths || i == 0 || w == "in" && i < len(words)-1 && words[i-1] != "in" {
			continue
		}
		before := words[i-1]
		if !slices.Contains(unitAfter, before) && !(len(words) <= 5 && (lex.Dimension(before) || slices.Contains(measures, before))) {
			continue
		}
		several = several || says && x != u
		u, says = x, true
	}
	if several {
		u = quantity.Unit{}
	}
	return u, says
}

// differ reports a short line that names two units of length.
func differ(words []string) bool {
	var one quantity.Unit
	for i, w := range words {
		x, ok := quantity.UnitOf(w)
		if !ok || x.Measure != takeoff.Lengths || w == "in" || i > 0 && strings.Trim(words[i-1], "0123456789") == "" {
			continue
		}
		if one.Name != "" && x != one {
			return len(words) <= 14
		}
		one = x
	}
	return false
}

// nots are words for not, in seven languages (from memory, unverified).
var nots = []string{"not", "nicht", "pas", "niet", "inte", "no", "non"}

// unitAfter are the words before the unit in a line that gives it for all sizes.
var unitAfter = []string{"in", "en", "i", "as", "are", "and", "or", "und", "et", "y", "e", "och"}

// measures are more words for what a line on units is about, in six languages
// (from memory, unverified).
var measures = []string{"lengths", "length", "size", "widths", "heights", "langen", "breiten", "hohen", "angaben", "angabe", "dim", "dims", "sizes", "measurements", "cotes", "misura", "misure", "medida", "medidas", "matt", "matten", "mattenhet", "maten", "masseinheit", "massangabe", "massangaben", "measure", "longueurs", "valeurs", "valores", "acotado"}

// LoneUnit is a unit that stands by itself or in brackets.
var LoneUnit = regexp.MustCompile(`(?i)^\s*(cm|inch|inches|ft|feet)[.!]*\s*$|[(\[]\s*(?:in\s+)?(cm|inch|inches|ft|feet)\s*[)\]]|\b(?:in|en|i)\s+(cm|inches|feet)\b`)

// UnitBehind is a unit at the end of a sub-heading.
var UnitBehind = regexp.MustCompile(`(?i)(?:[-–:,]|\b(?:in|en|i))\s*(cm|inch|inches|ft|feet|metres|meters)\.?\s*$|[(\[]\s*(?:in\s+)?(cm|inch|inches|ft|feet)\s*[)\]]\s*$`)

// OtherUnit is a unit in a heading that is none of pieces: of speed, flow, pressure, weight, heat.
var OtherUnit = regexp.MustCompile(`(?i)\b(?:m/s|ft/min|fpm|m[³3]/h|m[³3]/s|l/s|cfm|k?pa|kg(?:/m)?|lbs?|k?w|°c)(?:$|[\s)\]])`)

// ofLengths are words for lengths in a line on units, in seven languages (from memory,
// unverified).
var ofLengths = []string{"length", "lengths", "lange", "langen", "longueur", "longueurs", "lengte", "lengten", "lengtes", "langd", "langder", "longitud", "longitudes", "lunghezza", "lunghezze", "l"}

// UnitsApart reads a line of two units, one for lengths and one for the rest: sizes in mm,
// lengths in m.
func UnitsApart(text string) (across, along quantity.Unit, ok bool) {
	var parts []string
	before := ""
	if _, in, ok := strings.Cut(strings.TrimSuffix(strings.TrimSpace(text), ")"), "("); ok && strings.HasSuffix(strings.TrimSpace(text), ")") && !strings.ContainsAny(in, "()") {
		text = in // Ducts (sizes in inches, lengths in feet)
	}
	for _, part := range partUnits.Split(text, -1) { // W and H in mm is one
		before += " " + part
		if words := headings.Tokens(before); slices.ContainsFunc(words[min(1, len(words)):], func(w string) bool { u, ok := quantity.UnitOf(w); return ok && u.Measure == takeoff.Lengths }) {
			parts, before = append(parts, before), ""
		}
	}
	if len(parts) != 2 || before != "" {
		return across, along, false
	}
	for _, part := range parts {
		words := headings.Tokens(part)
		var u quantity.Unit
		n := 0
		for i, w := range words {
			if x, unit := quantity.UnitOf(w); unit && x.Measure == takeoff.Lengths && w != "l" && (w != "in" || i == len(words)-1 && i > 0) {
				u, n = x, n+1
			}
		}
		if n != 1 || len(words) > 6 || slices.ContainsFunc(words, func(w string) bool { return slices.Contains(nots, w) || slices.Contains(OfInsulation, w) }) {
			return across, along, false
		}
		if slices.ContainsFunc(words, func(w string) bool { return slices.Contains(ofLengths, w) }) {
			along = u
		} else {
			across = u
		}
	}
	return across, along, across.Name != "" && along.Name != "" && across != along
}

// partUnits parts a line of two units.
var partUnits = regexp.MustCompile(`(?i)\s*[,;/]\s*|\s+[-–—|]\s+|\.\s+|\s+(?:and|und|et|en|och|y|e)\s+`)

// OfInsulation are words of titles about what isn't a size, in seven languages (from
// memory, unverified).
var OfInsulation = []string{"insulation", "thickness", "lining", "gauge", "dammung", "dammdicke", "isolierung", "blechdicke", "isolation", "epaisseur",
	"calorifuge", "isolatie", "isolatiedikte", "plaatdikte", "isolering", "plattjocklek", "aislamiento", "espesor", "isolamento", "spessore"}

// OnInsulation reports a text about what isn't a size.
func OnInsulation(text string) bool {
	return slices.ContainsFunc(headings.Tokens(text), func(w string) bool { return slices.Contains(OfInsulation, w) })
}
