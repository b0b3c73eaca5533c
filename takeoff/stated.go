package takeoff

// StatedTotal is an area that somebody states for a whole system or section.
type StatedTotal struct {
	At      Place
	By      string // system or section
	Name    string
	Area    float64 // m2
	Text    string  // as typed
	Flow    float64 // greatest flow of the network, L/s; 0 is not given
	Reading float64 // a test's reading, L/s; 0 is not given
}
