package duty

// duties files the duties that there are: most pieces of a system share one.
type duties struct {
	list []Duty
	at   map[Duty]int32
}

// newDuties has the duty of nobody, which is number 0.
func newDuties() duties { return duties{[]Duty{{}}, map[Duty]int32{{}: 0}} }

// file is the number of a duty.
func (d *duties) file(o Duty) int32 {
	if last := len(d.list) - 1; d.list[last] == o {
		return int32(last)
	}
	k, ok := d.at[o]
	if !ok {
		k = int32(len(d.list))
		d.list = append(d.list, o)
		d.at[o] = k
	}
	return k
}
