package headings

import "slices"

// Words before the name of a room that say of a sheet or of rows that they don't count, and
// names of rooms, in seven languages (from memory, unverified). What isn't a room may be struck:
// Old main.
var (
	beforeRooms = []string{"old", "copy", "spare", "alt", "alte", "ancien", "ancienne", "oud", "oude", "gammal", "gamla", "antiguo", "antigua", "vecchio", "vecchia"}

	rooms = []string{"hall", "halls", "kitchen", "office", "offices", "gym", "theatre", "ward", "store", "stores", "storeroom", "lab", "laboratory", "workshop", "building", "room", "rooms", "library", "canteen",
		"school", "house", "chapel", "church", "barn", "stable", "stables", "bar", "restaurant", "toilets", "plantroom", "gebaude", "halle", "kuche", "buro", "saal", "raum", "haus", "werkstatt", "cuisine", "bureau", "salle", "atelier",
		"batiment", "keuken", "kantoor", "gebouw", "hal", "zaal", "kok", "kontor", "byggnad", "hus", "cocina", "oficina", "edificio", "nave", "sala", "cucina", "ufficio", "capannone"}
)

// OldRoom reports the name of a room that begins with a word as old, copy or spare: Old hall,
// Copy room, Spare parts store 2. rest is the name without it.
func (l *Lexicon) OldRoom(name string) (rest string, ok bool) {
	words := Tokens(name)
	n := len(words)
	if n > 2 && label(words[n-1]) {
		n--
	}
	if n < 2 || n > 4 || !slices.Contains(beforeRooms, words[0]) || !slices.Contains(rooms, words[n-1]) {
		return "", false
	}
	for _, w := range words[1 : n-1] {
		if _, part := l.parts[w]; !part && w != "parts" && w != "plant" {
			return "", false
		}
	}
	for _, w := range words[1:] {
		rest += w
	}
	return rest, true
}
