package audit

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"blankoff/fittings"
	"blankoff/takeoff"
	"blankoff/takeoff/bases"
)

// plant works out what a schedule's rows come to with mistakes made, not by the
// engine's own way, but by typing the schedule anew with the sizes that are
// meant and measuring that, or by formulas of its own. A row whose piece can't be
// made so gives NaN.
func plant(tb testing.TB, lines []line, keys ...string) []float64 {
	tb.Helper()
	typed := make([]line, len(lines))
	for i, l := range lines {
		typed[i] = maps.Clone(l)
	}
	// The shape is made before a radius is taken for its diameter.
	rank := func(key string) int {
		return map[string]int{"outs": 0, "insi": 0, "oval": 1}[key[:4]] + map[bool]int{true: 2}[strings.HasSuffix(key, "radius") || strings.HasPrefix(key, "radius")]
	}
	keys = slices.SortedStableFunc(slices.Values(keys), func(a, b string) int { return rank(a) - rank(b) })
	basis := fittings.Basis{}
	factor, formula := 1.0, ""
	for _, key := range keys {
		for _, l := range typed {
			retype(l, key)
		}
		rebase(tb, &basis, key)
		factor *= factors[key]
		switch key {
		case "cross-section", "half-girth", "fittings-out", "fittings-as-straights":
			formula = key
		}
	}
	t := measured(tb, typed, &basis)
	out := make([]float64, len(lines))
	for i := range t.Items {
		it := &t.Items[i]
		v := it.Area
		if fitting := typed[i]["kind"] != "straight" && typed[i]["kind"] != "flexible"; fitting && formula == "fittings-out" {
			v = 0
		} else if it.Refused {
			v = math.NaN()
		} else if formula != "" {
			v = byFormula(tb, t, typed, basis, i, formula)
		}
		for _, key := range keys {
			if fitting := it.Piece.Kind != fittings.Straight && it.Piece.Kind != fittings.Flexible; formula == "fittings-out" && fitting {
				continue
			}
			v += endFaces(t, i, key)
		}
		out[i] = v * factor
	}
	return out
}

var factors = func() map[string]float64 {
	m := map[string]float64{}
	for _, k := range mistakes(nil, true) {
		m[k.Key] = 1
	}
	for _, k := range mistakes(nil, false) {
		m[k.Key] = 1
	}
	m["ft2-for-m2"], m["m2-for-ft2"] = 10.7639104167, 1/10.7639104167
	m["cm-for-mm"], m["inch-for-mm"] = 100, 645.16
	return m
}()

// retype types a row with the sizes that a mistake takes.
func retype(l line, key string) {
	if mm, ok := strings.CutPrefix(key, "outside-insulation-"); ok {
		t, _ := strconv.ParseFloat(mm, 64)
		grow(l, 2*t)
	}
	if mm, ok := strings.CutPrefix(key, "inside-lining-"); ok {
		t, _ := strconv.ParseFloat(mm, 64)
		grow(l, -2*t)
	}
	switch key {
	case "inside-lining":
		t, _ := l.number("lining_mm")
		if l["size_is"] == "metal" {
			grow(l, -2*t)
		}
		delete(l, "lining_mm")
		delete(l, "size_is")
	case "radius-for-diameter", "diameter-for-radius":
		by := 0.5
		if key == "diameter-for-radius" {
			by = 2
		}
		for _, h := range []string{"diameter_mm", "diameter2_mm", "branch_diameter_mm"} {
			if v, ok := l.number(h); ok {
				l.mm(h, v*by)
			}
		}
	case "oval-as-rectangle":
		retypeOval(l, func(_, _ float64) float64 { return 0 })
	case "oval-as-circle":
		retypeOval(l, func(major, _ float64) float64 { return major })
	case "oval-as-minor-circle":
		retypeOval(l, func(_, minor float64) float64 { return minor })
	case "oval-as-mean-circle":
		retypeOval(l, func(major, minor float64) float64 { return (major + minor) / 2 })
	case "quantity-missed":
		delete(l, "quantity")
	}
}

func grow(l line, by float64) {
	for _, h := range []string{"width_mm", "height_mm", "diameter_mm", "width2_mm", "height2_mm", "diameter2_mm", "branch_width_mm", "branch_height_mm", "branch_diameter_mm"} {
		if v, ok := l.number(h); ok && l["kind"] != "" {
			l.mm(h, v+by)
		}
	}
	if v, ok := l.number("throat_mm"); ok {
		least := 0.0
		if l["size_is"] == "clear" {
			least, _ = l.number("lining_mm")
		}
		l.mm("throat_mm", math.Max(least, v-by/2))
	}
}

// retypeOval makes a circle of every flat oval, or a rectangle where the diameter
// is 0.
func retypeOval(l line, diameter func(major, minor float64) float64) {
	for _, e := range [][4]string{{"shape", "width_mm", "height_mm", "diameter_mm"}, {"shape2", "width2_mm", "height2_mm", "diameter2_mm"}} {
		w, ok := l.number(e[1])
		h, _ := l.number(e[2])
		oval := l[e[0]] == "flat-oval" || e[0] == "shape2" && ok && l["shape2"] == "" && (l["was"] == "flat-oval")
		if e[0] == "shape" {
			l["was"] = l["shape"]
		}
		if !oval || !ok {
			continue
		}
		if d := diameter(w, h); d > 0 {
			delete(l, e[1])
			delete(l, e[2])
			l.mm(e[3], d)
			if l[e[0]] != "" {
				l[e[0]] = "circular"
			}
		} else if l[e[0]] != "" {
			l[e[0]] = "rectangular"
		}
	}
	delete(l, "was")
	if l["kind"] == "transition" && l["shape"] == l["shape2"] {
		l["kind"] = "reducer"
		delete(l, "shape2")
	}
}

// rebase sets the switches of a basis in words, as a person would in a file.
func rebase(tb testing.TB, b *fittings.Basis, key string) {
	tb.Helper()
	words := map[string][]string{
		"larger-end": {"taper_girth=larger", "taper_length=axial"}, "larger-end-slant": {"taper_girth=larger", "taper_length=slant"},
		"mean-girth": {"taper_girth=mean", "taper_length=axial"}, "outer-edge": {"bend_length=outer edge"},
		"to-intersection": {"bend_length=to the intersection"}, "branch-from-axis": {"branch_from=axis"}, "branch-from-face": {"branch_from=face"},
		"openings-kept": {"opening=kept"}, "caps-out": {"caps=out"}, "inline-out": {"inline=excluded"},
	}
	for _, w := range words[key] {
		k, v, _ := strings.Cut(w, "=")
		if !b.Set(k, v) {
			tb.Fatal(w)
		}
	}
	if name, ok := strings.CutPrefix(key, "basis-"); ok {
		found, err := bases.Lookup(name)
		if err != nil {
			tb.Fatal(err)
		}
		*b = *found
	}
}

// byFormula is a row by another formula than girth x length.
func byFormula(tb testing.TB, t *takeoff.Takeoff, typed []line, basis fittings.Basis, i int, formula string) float64 {
	tb.Helper()
	it := &t.Items[i]
	n := float64(it.Quantity)
	straight := it.Piece.Kind == fittings.Straight || it.Piece.Kind == fittings.Flexible
	switch formula {
	case "cross-section":
		return faceByHand(typed[i]) * n
	case "fittings-out":
		if straight {
			return it.Each * n
		}
		return 0
	case "fittings-as-straights":
		return straightByHand(tb, typed, i) * n
	}
	kept := basis
	kept.Openings = fittings.Kept
	if k := typed[i]; k["shape"] == "rectangular" && k["kind"] != "cap" && k["kind"] != "transition" {
		whole := measured(tb, typed, &kept).Items[i].Area
		return whole/2 - (whole - it.Area)
	}
	return it.Area
}

func pi4(d float64) float64 { return math.Pi * d * d / 4 }

// faceByHand is the cross-section of a row, m2.
func faceByHand(l line) float64 {
	d, round := l.number("diameter_mm")
	if l["kind"] == "spigot" {
		d, round = l.number("branch_diameter_mm")
	}
	w, _ := l.number("width_mm")
	h, _ := l.number("height_mm")
	lining, _ := l.number("lining_mm")
	if l["size_is"] == "clear" {
		w, h = w+2*lining, h+2*lining
	}
	switch {
	case round:
		return pi4(d) / 1e6
	case l["shape"] == "flat-oval":
		return (pi4(h) + h*(w-h)) / 1e6
	}
	return w * h / 1e6
}

// girthByHand is the girth of a row's plant end, m.
func girthByHand(l line) float64 {
	d, round := l.number("diameter_mm")
	w, _ := l.number("width_mm")
	h, _ := l.number("height_mm")
	lining, _ := l.number("lining_mm")
	if l["size_is"] == "clear" {
		w, h = w+2*lining, h+2*lining
	}
	switch {
	case round:
		return math.Pi * d / 1e3
	case l["shape"] == "flat-oval":
		return (math.Pi*h + 2*(w-h)) / 1e3
	}
	return 2 * (w + h) / 1e3
}

// straightByHand counts a row as a straight. Bends and offsets go by their centre
// line, as the basis of that name does it.
func straightByHand(tb testing.TB, typed []line, i int) float64 {
	tb.Helper()
	l := typed[i]
	long, _ := l.number("length_mm")
	switch l["kind"] {
	case "cap":
		return 0
	case "spigot":
		d, _ := l.number("branch_diameter_mm")
		b, _ := l.number("branch_length_mm")
		return math.Pi * d * b / 1e6
	case "bend", "offset":
		centre, _ := bases.Lookup("centre-line")
		return measured(tb, typed, centre).Items[i].Each
	case "breeches":
		if e, ok := l.number("offset_mm"); ok {
			long = math.Hypot(long, e)
		} else {
			throat, _ := l.number("throat_mm")
			w, _ := l.number("width_mm")
			long = (throat + w/4) * math.Pi / 2
		}
	}
	return girthByHand(l) * long / 1e3
}

// endFaces are the faces that are counted with a row.
func endFaces(t *takeoff.Takeoff, i int, key string) float64 {
	it := &t.Items[i]
	if it.Piece.Kind == fittings.Cap || it.Refused {
		return 0
	}
	taken := func(r fittings.EndRole) bool {
		for k := range t.Items {
			if c := &t.Items[k]; c.Parent == i && c.ParentEnd == r && r != fittings.PlantEnd {
				return true
			}
		}
		return false
	}
	sum := 0.0
	for _, e := range it.Ends {
		switch {
		case key == "ends-counted":
			sum += e.FaceArea() * float64(it.Quantity)
		case key == "open-ends-counted" && e.Role != fittings.PlantEnd && !taken(e.Role):
			n := 1.0
			if it.Piece.Kind == fittings.Flexible {
				n = float64(it.Quantity)
			}
			sum += e.FaceArea() * n
		}
	}
	return sum
}
