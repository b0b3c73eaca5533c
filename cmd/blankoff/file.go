package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// writeFile writes a file whole or not at all: into a temporary file beside it,
// flushed, then given its name. It refuses to write over one of its inputs.
func writeFile(path string, input []string, write func(io.Writer) error) (err error) {
	if err := notAnInput(path, input); err != nil {
		return err
	}
	if st, err := os.Stat(path); err == nil && st.IsDir() {
		return fmt.Errorf("can't write %s: it is a folder", path)
	}
	if real, e := filepath.EvalSymlinks(path); e == nil {
		path = real // the link stays, its target is replaced
	}
	if st, e := os.Stat(path); e == nil && !st.Mode().IsRegular() {
		return writeThrough(path, write)
	}
	f, err := os.CreateTemp(filepath.Dir(path), ".blankoff-*")
	if err != nil {
		return fmt.Errorf("can't write %s: %w", path, cause(err))
	}
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
		}
	}()
	b := bufio.NewWriter(f)
	if err = write(b); err != nil {
		return err
	}
	if err = b.Flush(); err != nil {
		return fmt.Errorf("can't write %s: %w", path, cause(err))
	}
	if err = f.Sync(); err != nil {
		return fmt.Errorf("can't write %s: %w", path, cause(err))
	}
	if err = f.Chmod(0o644); err != nil {
		return err
	}
	if err = f.Close(); err != nil {
		return fmt.Errorf("can't write %s: %w", path, cause(err))
	}
	if err = os.Rename(f.Name(), path); err != nil {
		return fmt.Errorf("can't write %s: %w", path, cause(err))
	}
	return nil
}

// writeThrough writes into what isn't a file, such as a pipe: it stays what it
// is.
func writeThrough(path string, write func(io.Writer) error) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return fmt.Errorf("can't write %s: %w", path, cause(err))
	}
	defer f.Close()
	b := bufio.NewWriter(f)
	if err := write(b); err != nil {
		return err
	}
	if err := b.Flush(); err != nil {
		return fmt.Errorf("can't write %s: %w", path, cause(err))
	}
	return nil
}

// notAnInput refuses an output that is also read.
func notAnInput(path string, input []string) error {
	out, err := os.Stat(path)
	if err != nil {
		return nil
	}
	for _, in := range input {
		if st, err := os.Stat(in); err == nil && os.SameFile(out, st) {
			return misuse{fmt.Errorf("the output %s is also an input; choose another name", path)}
		}
	}
	return nil
}

// document is one file of a pack.
type document struct {
	name  string
	write func(io.Writer) error
}

// writePack writes the documents of a pack into a folder. All are made beside
// their places first; only when every one is complete do they get their names.
func writePack(dir string, input []string, docs []document, talk io.Writer) (err error) {
	made, old := !exists(dir), false
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("can't make the folder %s: %w", dir, cause(err))
	}
	stage, err := os.MkdirTemp(dir, ".blankoff-*")
	if err != nil {
		return fmt.Errorf("can't write into %s: %w", dir, cause(err))
	}
	defer func() {
		os.RemoveAll(stage)
		if err != nil && made {
			os.Remove(dir)
		}
	}()
	for _, d := range docs {
		if err := notAnInput(filepath.Join(dir, d.name), input); err != nil {
			return err
		}
		if st, err := os.Stat(filepath.Join(dir, d.name)); err == nil && !st.Mode().IsRegular() {
			return fmt.Errorf("can't write %s: something that isn't a file has that name", filepath.Join(dir, d.name))
		}
		if err := writeFile(filepath.Join(stage, d.name), nil, d.write); err != nil {
			return err
		}
	}
	for _, d := range docs {
		old = old || exists(filepath.Join(dir, d.name))
		if err := os.Rename(filepath.Join(stage, d.name), filepath.Join(dir, d.name)); err != nil {
			return fmt.Errorf("can't put %s in its place: %w", d.name, cause(err))
		}
	}
	wrote(talk, dir, old)
	return nil
}

// wrote says what was written, and whether something older was replaced.
func wrote(talk io.Writer, path string, old bool) {
	over := ""
	if old {
		over = ", over an older one"
	}
	fmt.Fprintf(talk, "wrote %s%s\n", path, over)
}

// cause is what went wrong with a file, without the temporary name that it has
// while it is written.
func cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}
