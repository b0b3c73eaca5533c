package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// replacing is a folder with a pack in it that is being replaced.
type replacing struct {
	dir   string   // links resolved
	held  *os.File // no other run writes into it
	input []string
	talk  io.Writer
}

// openPack takes hold of a folder, and finishes what a run that was stopped has
// left half replaced.
func openPack(dir string, input []string, talk io.Writer) (*replacing, error) {
	real, err := filepath.EvalSymlinks(dir)
	if err != nil {
		return nil, fmt.Errorf("can't write into %s: %w", dir, cause(err))
	}
	held, err := os.Open(real)
	if err != nil {
		return nil, fmt.Errorf("can't write into %s: %w", dir, cause(err))
	}
	r := &replacing{real, held, input, talk}
	if err := r.ready(dir); err != nil {
		held.Close()
		return nil, err
	}
	return r, nil
}

func (r *replacing) ready(dir string) error {
	if st, err := r.held.Stat(); err != nil || !st.IsDir() {
		return fmt.Errorf("can't write into %s: it isn't a folder", dir)
	}
	if !lock(r.held) {
		return hint{fmt.Errorf("another run of blankoff is writing into %s", dir), "wait until it is done, or choose another folder"}
	}
	if isHalf(r.dir) {
		if err := r.finish(); err != nil {
			return err
		}
		fmt.Fprintf(r.talk, "an earlier run was stopped while it replaced the pack in %s; what it had begun is finished\n", dir)
	}
	sweep(r.dir)
	_, err := readPackList(r.dir)
	return err
}

// isHalf reports whether a folder holds a pack that was being replaced.
func isHalf(dir string) bool {
	half := filepath.Join(dir, halfName)
	return exists(filepath.Join(half, halfNote)) || exists(filepath.Join(half, listName))
}

// fits refuses documents that have no place in the folder.
func (r *replacing) fits(docs []document) error {
	if path := filepath.Join(r.dir, halfName); exists(path) {
		return hint{fmt.Errorf("%s is in the way", path), "move it away, or choose another folder"}
	}
	for _, d := range append(docs, document{name: listName}) {
		path := filepath.Join(r.dir, d.name)
		if err := notAnInput(path, r.input); err != nil {
			return err
		}
		st, err := os.Stat(path)
		if err != nil {
			continue
		}
		if !st.Mode().IsRegular() {
			return fmt.Errorf("can't write %s: something that isn't a file has that name", path)
		}
		if err := notReadOnly(path, st); err != nil {
			return err
		}
	}
	return nil
}

// replace puts a staged pack in the place of what is there.
func (r *replacing) replace(stage string) error {
	settleDir(stage)
	if err := rename(stage, filepath.Join(r.dir, halfName)); err != nil {
		return fmt.Errorf("can't write into %s: %w", r.dir, cause(err))
	}
	settleDir(r.dir)
	return r.finish()
}

// finish carries a replacement through from wherever it stands: what is old goes
// out, what is new comes in, the list last. If something old can't be taken
// away, all that was is put back.
func (r *replacing) finish() error {
	half := filepath.Join(r.dir, halfName)
	if !exists(filepath.Join(half, listName)) {
		return r.unmark() // all was in its place
	}
	list, err := readPackList(half)
	if err != nil {
		return err
	}
	old, err := readPackList(r.dir)
	if err != nil {
		return err
	}
	if err := r.retire(list, old); err != nil {
		return err
	}
	for _, f := range append(list.Files, packFile{Name: listName}) {
		from := filepath.Join(half, f.Name)
		if !exists(from) {
			continue
		}
		if f.Name == listName {
			settleDir(r.dir)
		}
		if err := rename(from, filepath.Join(r.dir, f.Name)); err != nil {
			return hint{fmt.Errorf("can't put %s in its place: %w", f.Name, cause(err)), "the pack is half replaced; run this again to finish it"}
		}
	}
	settleDir(r.dir)
	return r.unmark()
}

// unmark says that the pack is whole: half-replaced goes, in one step.
func (r *replacing) unmark() error {
	away := tempName(r.dir)
	if err := rename(filepath.Join(r.dir, halfName), away); err != nil {
		return fmt.Errorf("can't take %s away: %w", filepath.Join(r.dir, halfName), cause(err))
	}
	settleDir(r.dir)
	_ = os.RemoveAll(away) // what stays is swept by the next run
	return nil
}

// move is one change of a name that can be undone.
type move struct{ from, to string }

// retire takes the files of the old pack out of the way: into half-replaced, or,
// where somebody has changed one since it was written, aside under a name of its
// own.
func (r *replacing) retire(list, old packList) error {
	var done []move
	undo := func(name string, err error) error {
		for i := len(done) - 1; i >= 0; i-- {
			if e := rename(done[i].to, done[i].from); e != nil {
				return hint{fmt.Errorf("can't replace %s: %w", name, cause(err)), "the pack is half replaced; run this again to finish it"}
			}
		}
		if e := r.unmark(); e != nil {
			return e
		}
		return hint{fmt.Errorf("can't replace %s: %w; the pack is as it was", filepath.Join(r.dir, name), cause(err)), "close the program that holds it, or choose another folder"}
	}
	retired := filepath.Join(r.dir, halfName, retiredName)
	if err := os.MkdirAll(retired, 0o777); err != nil {
		return undo(halfName, err)
	}
	for _, name := range r.outgoing(list, old) {
		m := move{filepath.Join(r.dir, name), filepath.Join(retired, name)}
		aside, err := r.changed(name, old)
		if err == nil && aside != "" {
			m.to = r.aside(name)
		}
		if err == nil {
			err = rename(m.from, m.to)
		}
		if err != nil {
			return undo(name, err)
		}
		if done = append(done, m); aside != "" {
			fmt.Fprintf(r.talk, "%s %s; it is now %s\n", name, aside, filepath.Base(m.to))
		}
	}
	return nil
}

// outgoing lists the files that have to leave their places: those of the new
// pack that still wait, and those that only the old pack has. An input stays.
func (r *replacing) outgoing(list, old packList) (names []string) {
	for _, f := range list.Files {
		if exists(filepath.Join(r.dir, halfName, f.Name)) && exists(filepath.Join(r.dir, f.Name)) {
			names = append(names, f.Name)
		}
	}
	for _, f := range old.Files {
		path := filepath.Join(r.dir, f.Name)
		if list.has(f.Name) || !exists(path) {
			continue
		}
		if isInput(path, r.input) {
			fmt.Fprintf(r.talk, "%s is of the older pack and stays, since this run reads it\n", f.Name)
			continue
		}
		names = append(names, f.Name)
	}
	return names
}

// changed says what somebody did to a file: changed one of the old pack since it
// was written, or wrote it himself. It is empty for one that is as it was.
func (r *replacing) changed(name string, old packList) (string, error) {
	for _, f := range old.Files {
		if f.Name == name {
			sum, err := sumOf(filepath.Join(r.dir, name))
			if sum != f.SHA256 {
				return "had been changed since it was written", err
			}
			return "", err
		}
	}
	if name == listName {
		return "", nil
	}
	return "is of no pack, and stood in the way", nil
}

// aside is a free name for what somebody changed.
func (r *replacing) aside(name string) string {
	for n := 1; ; n++ {
		to := fmt.Sprintf("earlier-%s", name)
		if n > 1 {
			to = fmt.Sprintf("earlier-%d-%s", n, name)
		}
		if path := filepath.Join(r.dir, to); !exists(path) {
			return path
		}
	}
}
