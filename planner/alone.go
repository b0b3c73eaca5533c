package planner

// tryAlone plans with each of several rigs alone, so that the reader sees which
// of them is needed.
func (p *Plan) tryAlone() {
	if len(p.Settings.Rigs) < 2 || p.Settings.onlyOwn {
		return
	}
	for _, r := range p.Settings.Rigs {
		set := p.Settings
		set.Rigs = set.Rigs[:0:0]
		set.Rigs = append(set.Rigs, r)
		alone := RigAlone{Rig: r.Name}
		if o, err := Make(p.Takeoff, set); err == nil {
			alone.Score, alone.Left = o.Proof.Score, o.Balance.Outside
		} else {
			alone.Left = p.Balance.Takeoff
		}
		p.Alone = append(p.Alone, alone)
	}
}
