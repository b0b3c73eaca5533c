package fittings

import (
	"math/rand"
	"strconv"
)

// randomRows makes rows that are right, for every kind, style and shape: lengths
// of whole tenths of a millimetre. Each is a function of a random source.
var randomRows = []struct {
	name string
	row  func(r *rand.Rand) string
	grow string // a size that makes the piece bigger, or ""
}{
	{"straight, rectangular", func(r *rand.Rand) string { return "kind=straight" + rect(r) + size(r, "length_mm", 50, 9000) }, "length_mm"},
	{"straight, circular", func(r *rand.Rand) string { return "kind=straight" + round(r) + size(r, "length_mm", 50, 9000) }, "length_mm"},
	{"straight, oval", func(r *rand.Rand) string { return "kind=straight" + oval(r) + size(r, "length_mm", 50, 9000) }, "length_mm"},
	{"flexible", func(r *rand.Rand) string { return "kind=flexible" + round(r) + size(r, "length_mm", 50, 9000) }, "length_mm"},
	{"inline", func(r *rand.Rand) string { return "kind=inline" + rect(r) + size(r, "length_mm", 50, 2000) }, "length_mm"},
	{"cap", func(r *rand.Rand) string { return "kind=cap" + oval(r) }, ""},
	{"cap, dished", func(r *rand.Rand) string {
		return "kind=cap, style=dished, diameter_mm=500" + size(r, "rise_mm", 10, 250)
	}, "rise_mm"},
	{"plenum", func(r *rand.Rand) string { return "kind=plenum" + rect(r) + size(r, "length_mm", 100, 3000) }, "length_mm"},
	{"bend, radius, rectangular", func(r *rand.Rand) string { return "kind=bend" + rect(r) + throat(r) + turn(r) + legs(r) }, "throat_mm"},
	{"bend, radius, circular", func(r *rand.Rand) string { return "kind=bend" + round(r) + throat(r) + turn(r) + legs(r) }, "angle_deg"},
	{"bend, radius, oval", func(r *rand.Rand) string { return "kind=bend" + oval(r) + throat(r) + turn(r) + plane(r) }, "throat_mm"},
	{"bend, mitred", func(r *rand.Rand) string { return "kind=bend, style=mitred" + rect(r) + turn(r) + legs(r) }, "legs_mm"},
	{"bend, gored", func(r *rand.Rand) string {
		return "kind=bend, style=gored" + round(r) + throat(r) + turn(r) + legs(r) + count(r, "gores", 2, 7)
	}, "throat_mm"},
	{"bend, square throat", func(r *rand.Rand) string { return "kind=bend, style=square throat" + rect(r) + turn(r) + legs(r) }, "legs_mm"},
	{"bend, square heel", func(r *rand.Rand) string {
		return "kind=bend, style=square heel" + rect(r) + throat(r) + turn(r) + legs(r)
	}, "throat_mm"},
	{"bend, reducing", func(r *rand.Rand) string {
		return "kind=bend" + rect(r) + size(r, "width2_mm", 100, 900) + throat(r) + turn(r) + legs(r)
	}, "throat_mm"},
	{"reducer, circular", func(r *rand.Rand) string {
		return "kind=reducer" + round(r) + size(r, "diameter2_mm", 80, 900) + run(r)
	}, "length_mm"},
	{"reducer, eccentric", func(r *rand.Rand) string {
		return "kind=reducer" + round(r) + size(r, "diameter2_mm", 80, 900) + run(r) + shifts(r)
	}, "length_mm"},
	{"reducer, rectangular", func(r *rand.Rand) string { return "kind=reducer" + rect(r) + rect2(r) + run(r) + shifts(r) }, "length_mm"},
	{"reducer, oval", func(r *rand.Rand) string {
		return "kind=reducer" + oval(r) + ", width2_mm=700, height2_mm=150" + run(r) + shifts(r)
	}, "length_mm"},
	{"transition, rectangle to round", func(r *rand.Rand) string {
		return "kind=transition" + rect(r) + size(r, "diameter2_mm", 80, 900) + run(r) + shifts(r)
	}, "length_mm"},
	{"transition, oval to round", func(r *rand.Rand) string {
		return "kind=transition" + oval(r) + size(r, "diameter2_mm", 80, 900) + run(r)
	}, "length_mm"},
	{"transition, rectangle to oval", func(r *rand.Rand) string {
		return "kind=transition, shape2=oval" + rect(r) + ", width2_mm=700, height2_mm=150" + run(r) + shifts(r)
	}, "length_mm"},
	{"offset, radius", func(r *rand.Rand) string {
		return "kind=offset" + rect(r) + size(r, "length_mm", 3000, 5000) + size(r, "offset_mm", 50, 900) + plane(r) + legs(r)
	}, "length_mm"},
	{"offset, given radius", func(r *rand.Rand) string {
		return "kind=offset" + round(r) + size(r, "length_mm", 3500, 5000) + size(r, "offset_mm", 200, 900) + ", radius_mm=450"
	}, "length_mm"},
	{"offset, mitred", func(r *rand.Rand) string {
		return "kind=offset, style=mitred" + oval(r) + size(r, "length_mm", 1500, 5000) + size(r, "offset_mm", 50, 900) + legs(r)
	}, "length_mm"},
	{"offset, straight, rectangular", func(r *rand.Rand) string {
		return "kind=offset, style=straight" + rect(r) + size(r, "length_mm", 500, 5000) + size(r, "offset_mm", 50, 900) + plane(r)
	}, "length_mm"},
	{"offset, straight, oval", func(r *rand.Rand) string {
		return "kind=offset, style=straight" + oval(r) + size(r, "length_mm", 500, 5000) + size(r, "offset_mm", 50, 900) + plane(r) + legs(r)
	}, "length_mm"},
	{"tee, round on round", func(r *rand.Rand) string {
		return "kind=tee, diameter_mm=500" + size(r, "length_mm", 900, 3000) + size(r, "branch_diameter_mm", 80, 500) + collar(r)
	}, "length_mm"},
	{"tee, at an angle, off centre", func(r *rand.Rand) string {
		return "kind=tee, diameter_mm=500" + size(r, "length_mm", 900, 3000) + size(r, "branch_diameter_mm", 80, 300) +
			collar(r) + size(r, "branch_angle_deg", 45, 135) + size(r, "branch_shift_mm", -90, 90)
	}, "branch_length_mm"},
	{"tee, rectangle on round", func(r *rand.Rand) string {
		return "kind=tee, diameter_mm=500" + size(r, "length_mm", 1500, 3000) + size(r, "branch_width_mm", 80, 900) +
			size(r, "branch_height_mm", 80, 300) + collar(r) + size(r, "branch_angle_deg", 50, 130) + size(r, "branch_shift_mm", -90, 90)
	}, "branch_length_mm"},
	{"tee, oval on round", func(r *rand.Rand) string {
		return "kind=tee, diameter_mm=500, shape2=oval" + size(r, "length_mm", 1500, 3000) + size(r, "branch_width_mm", 310, 900) +
			size(r, "branch_height_mm", 80, 300) + collar(r) + size(r, "branch_shift_mm", -90, 90)
	}, "branch_length_mm"},
	{"tee, on a flat wall", func(r *rand.Rand) string {
		return "kind=tee" + rect(r) + size(r, "length_mm", 900, 3000) + size(r, "branch_diameter_mm", 50, 100) + collar(r) + size(r, "branch_angle_deg", 30, 150)
	}, "branch_length_mm"},
	{"tee, on an oval", func(r *rand.Rand) string {
		return "kind=tee, shape=oval, width_mm=900, height_mm=200" + size(r, "length_mm", 900, 3000) + size(r, "branch_diameter_mm", 50, 700) + collar(r)
	}, "branch_length_mm"},
	{"tee, shoe", func(r *rand.Rand) string {
		return "kind=tee, style=shoe, width_mm=600, height_mm=400" + size(r, "length_mm", 900, 3000) + size(r, "branch_width_mm", 100, 500) +
			size(r, "branch_height_mm", 100, 600) + collar(r) + size(r, "entry_mm", 20, 300)
	}, "branch_length_mm"},
	{"tee, conical on round", func(r *rand.Rand) string {
		return "kind=tee, style=conical, diameter_mm=630" + size(r, "length_mm", 900, 3000) + size(r, "branch_diameter_mm", 80, 240) +
			", entry_mm=250" + size(r, "branch_length_mm", 300, 500)
	}, "length_mm"},
	{"tee, conical on a flat wall", func(r *rand.Rand) string {
		return "kind=tee, style=conical, width_mm=500, height_mm=300" + size(r, "length_mm", 900, 3000) + size(r, "branch_diameter_mm", 80, 300) +
			", entry_mm=350" + size(r, "branch_length_mm", 50, 500)
	}, "branch_length_mm"},
	{"cross", func(r *rand.Rand) string {
		return "kind=cross, diameter_mm=500" + size(r, "length_mm", 900, 3000) + size(r, "branch_diameter_mm", 80, 500) + collar(r)
	}, "branch_length_mm"},
	{"spigot on round", func(r *rand.Rand) string {
		return "kind=spigot, from=circular 500" + size(r, "branch_diameter_mm", 80, 500) + collar(r)
	}, "branch_length_mm"},
	{"spigot on a panel", func(r *rand.Rand) string {
		return "kind=spigot, from=plenum" + rect(r) + size(r, "length_mm", 20, 300)
	}, "length_mm"},
	{"breeches, circular", func(r *rand.Rand) string {
		return "kind=breeches, diameter_mm=500" + size(r, "branch_diameter_mm", 200, 500) + size(r, "length_mm", 300, 900) + size(r, "offset_mm", 250, 500)
	}, "length_mm"},
	{"breeches, rectangular", func(r *rand.Rand) string { return "kind=breeches" + rect(r) + throat(r) + turn(r) + legs(r) + plane(r) }, "throat_mm"},
}

func size(r *rand.Rand, heading string, low, high float64) string {
	return ", " + heading + "=" + strconv.FormatFloat(between(r, low, high), 'f', 1, 64)
}

func count(r *rand.Rand, heading string, low, high int) string {
	return ", " + heading + "=" + strconv.Itoa(low+r.Intn(high-low+1))
}

func rect(r *rand.Rand) string { return size(r, "width_mm", 100, 900) + size(r, "height_mm", 100, 900) }
func rect2(r *rand.Rand) string {
	return size(r, "width2_mm", 100, 900) + size(r, "height2_mm", 100, 900)
}
func round(r *rand.Rand) string  { return size(r, "diameter_mm", 80, 900) }
func throat(r *rand.Rand) string { return size(r, "throat_mm", 0, 900) }
func turn(r *rand.Rand) string   { return size(r, "angle_deg", 10, 140) }
func legs(r *rand.Rand) string   { return size(r, "legs_mm", 0, 200) }
func run(r *rand.Rand) string    { return size(r, "length_mm", 100, 2000) }
func collar(r *rand.Rand) string { return size(r, "branch_length_mm", 300, 900) }

func oval(r *rand.Rand) string {
	return ", shape=oval" + size(r, "width_mm", 410, 900) + size(r, "height_mm", 80, 400)
}

func shifts(r *rand.Rand) string {
	return size(r, "offset_mm", -300, 300) + size(r, "offset2_mm", -300, 300)
}

func plane(r *rand.Rand) string {
	if r.Intn(2) == 0 {
		return ", plane=height"
	}
	return ", plane=width"
}
