package xlsx

import "blankoff/planner/report"

// kit writes what the tests need, with boxes to tick.
func kit(b *book, v *report.Plan) error {
	if len(v.Kit) == 0 {
		return nil
	}
	return b.sheet("kit", []column{
		{head: "group", width: 11}, {head: "what", width: 40}, {head: "number", width: 8, kind: whole}, {head: "why", width: 58}, {head: "packed", width: 8, kind: box}, {head: "back", width: 8, kind: box},
	}, func(row func(...any) error) error {
		last := ""
		for i := range v.Kit {
			k := &v.Kit[i]
			var number any
			if k.Number > 0 {
				number = k.Number
			}
			var group any = k.Group
			if k.Group != last {
				group, last = start(k.Group), k.Group
			}
			if err := row(group, k.What, number, k.Why, nil, nil); err != nil {
				return err
			}
		}
		return nil
	})
}
