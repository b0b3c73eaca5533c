package card

import (
	"fmt"
	"strconv"

	"blankoff/planner/report"
	"blankoff/planner/report/show"
)

// strong is the force on a blank from which it is braced, N: the weight of about
// 50 kg. An assumption, no source.
const strong = 500

// fixing says how a blank is held. Common practice, no source.
func fixing(b *report.Blank) string {
	round := b.Shape == "circular"
	switch {
	case b.Force >= strong && round:
		return "cap screwed all round, strapped across"
	case b.Force >= strong:
		return "plate bolted at every flange hole, braced across"
	case round:
		return "cap screwed at 4 points or more, joint sealed"
	case b.Why == "open end":
		return "plate clamped or screwed all round, joint sealed"
	}
	return "plate bolted or clamped to the flange, gasket"
}

// checks are ticked before the pressure is raised. Common practice, no source.
func checks(s *report.Section) []string {
	list := []string{
		fmt.Sprintf("all %s blanks fitted and looked at from outside", show.Blanks(s)),
		"access doors and test holes closed",
		"certificates of flow and pressure in date",
		"rig blanked off: its own leak read and noted",
		"both instruments zeroed before the tubes go on",
	}
	if s.Sign == "negative" {
		list = append(list, "hose on the suction side of the fan, tubes changed over")
	}
	return append(list,
		"pressure tapping away from the air connection",
		"temperature and air pressure read",
		"supply through a 30 mA device or at the site's reduced voltage",
		"nobody in front of a blank; area closed off",
	)
}

// boxes are filled in at every test.
func boxes(s *report.Section) []string {
	return []string{"pressure reached, Pa", "leakage read, L/s", "held from - to", "air, degrees C", "air pressure, hPa"}
}

// cautions are the usual ones on a card.
func cautions(s *report.Section) []string {
	list := []string{fmt.Sprintf("Never above %g Pa. Begin with the fan throttled; raise the pressure slowly; let it down before touching a blank.", s.TestPa)}
	if b, ok := show.Largest(s.Blanks); ok && b.Force > 0 {
		list = append(list, fmt.Sprintf("The %s blank is pushed with %.0f N, the weight of %.0f kg.", b.Text, show.Whole(b.Force), b.Force/9.80665))
	}
	return append(list, "The specification, local codes and licensed practitioners come first.")
}

// mostBlanks is how many lines of blanks a card has room for.
const mostBlanks = 12

// blanks lists the openings to close; where there are too many for a card, those
// of one size and kind stand on one line.
func blanks(s *report.Section) []Blank {
	var out []Blank
	for k := range s.Blanks {
		b := &s.Blanks[k]
		out = append(out, Blank{
			Number: strconv.Itoa(k + 1), Size: b.Text, At: b.At, Where: place(b), Kind: b.Why,
			Force: fmt.Sprintf("%.0f N", show.Whole(b.Force)), Fixing: fixing(b),
		})
	}
	if len(out) <= mostBlanks {
		return out
	}
	var grouped []Blank
	count := map[Blank]int{}
	for _, b := range out {
		if b.Kind != "open end" {
			grouped = append(grouped, b)
			continue
		}
		key := b
		key.Number, key.At, key.Where = "", "", ""
		count[key]++
		if count[key] == 1 {
			grouped = append(grouped, key)
		}
	}
	for i := range grouped {
		if b := &grouped[i]; b.Number == "" {
			n := count[*b]
			b.Number, b.At = fmt.Sprintf("%d of them", n), "open ends of this size, each listed in plan.xlsx"
		}
	}
	return grouped
}
