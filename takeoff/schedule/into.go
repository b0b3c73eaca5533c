package schedule

import (
	"path/filepath"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule/source"
)

// Into reads the schedule in the file path into a takeoff: what Read and
// Takeoff.Add give one after the other, with text files read and measured on all
// cores, and large ones not held in memory. told, if not nil, is told now and then how many rows
// were read, and how many the file may hold, or 0 where that isn't known. The
// error may be that of Takeoff.Hopeless.
func (o Options) Into(path string, t *takeoff.Takeoff, told func(rows, most int)) (Info, error) {
	lex, err := o.lexicon()
	if err != nil {
		return Info{}, err
	}
	if v := source.Surveyed(path, lex); v != nil {
		to := newInto(t, told)
		info := Info{into: to}
		info.File = filepath.Base(path)
		err := info.readText(&v.Text, &o, lex, to.add)
		sum, changed := v.Close()
		if info.SHA256 = sum; changed != nil {
			err = changed
		}
		return info, to.end(&info, err)
	}
	data, err := source.Load(path)
	if err != nil {
		return Info{}, err
	}
	return o.IntoFrom(filepath.Base(path), data, t, told)
}

// IntoFrom is Into for a schedule that is in memory; see ReadFrom.
func (o Options) IntoFrom(name string, data []byte, t *takeoff.Takeoff, told func(rows, most int)) (Info, error) {
	to := newInto(t, told)
	info := Info{into: to}
	err := info.readAll(name, data, &o, to.add)
	return info, to.end(&info, err)
}

// into is a takeoff that is read into.
type into struct {
	takeoff *takeoff.Takeoff
	told    func(rows, most int)
	rows    int
}

func newInto(t *takeoff.Takeoff, told func(int, int)) *into {
	if told == nil {
		told = func(int, int) {}
	}
	return &into{takeoff: t, told: told}
}

// end ends the reading, with an error or without.
func (o *into) end(info *Info, err error) error {
	info.into = nil
	if err == nil {
		err = info.noRows()
	}
	if err == nil {
		err = o.takeoff.Gather()
	}
	return err
}

// add takes one row.
func (o *into) add(r *takeoff.Row) error {
	o.takeoff.Add(r)
	if o.rows++; o.rows%1000 == 0 {
		o.told(o.rows, r.Most)
	}
	return o.takeoff.Hopeless()
}

// take takes the rows of a batch.
func (o *into) take(b *takeoff.Batch, most int) error {
	o.rows += b.Len()
	o.takeoff.Take(b)
	o.told(o.rows, most)
	return o.takeoff.Hopeless()
}
