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

// rename gives a file its name; tests put in its place what fails.
var rename = os.Rename

// writeFile writes a file whole or not at all: into a temporary file beside it,
// flushed, then given its name. It refuses to write over one of its inputs, or
// over what is marked read-only; a file keeps its permissions.
func writeFile(path string, input []string, write func(io.Writer) error) error {
	if err := notAnInput(path, input); err != nil {
		return err
	}
	if real, e := filepath.EvalSymlinks(path); e == nil {
		path = real // the link stays, its target is replaced
	}
	st, err := os.Stat(path)
	switch {
	case err != nil:
		st = nil
	case st.IsDir():
		return fmt.Errorf("can't write %s: it is a folder", path)
	case !st.Mode().IsRegular():
		return writeThrough(path, write)
	}
	if err := notReadOnly(path, st); err != nil {
		return err
	}
	sweep(filepath.Dir(path))
	f, err := tempFile(filepath.Dir(path))
	if err != nil {
		return fmt.Errorf("can't write %s: %w", path, cause(err))
	}
	if st != nil {
		if err := f.Chmod(st.Mode().Perm()); err != nil {
			return errors.Join(fmt.Errorf("can't write %s: %w", path, cause(err)), drop(f))
		}
	}
	if err := fill(f, path, write); err != nil {
		return errors.Join(err, drop(f))
	}
	if err := rename(f.Name(), path); err != nil {
		return errors.Join(fmt.Errorf("can't write %s: %w", path, cause(err)), drop(f))
	}
	settleDir(filepath.Dir(path))
	return f.Close()
}

// drop takes away a file that wasn't completed.
func drop(f *os.File) error {
	err := os.Remove(f.Name())
	f.Close()
	return err
}

// fill writes a file, path in messages, down to the disk.
func fill(f *os.File, path string, write func(io.Writer) error) error {
	b := bufio.NewWriter(f)
	err := write(b)
	if err == nil {
		err = b.Flush()
	}
	if err == nil {
		err = f.Sync()
	}
	if err != nil {
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
	b := bufio.NewWriter(f)
	err = write(b)
	if err == nil {
		err = b.Flush()
	}
	if err = errors.Join(err, f.Close()); err != nil {
		return fmt.Errorf("can't write %s: %w", path, cause(err))
	}
	return nil
}

// notAnInput refuses an output that is also read, under whatever name.
func notAnInput(path string, input []string) error {
	if isInput(path, input) {
		return misuse{fmt.Errorf("the output %s is also an input; choose another name", path)}
	}
	return nil
}

func isInput(path string, input []string) bool {
	out, err := os.Stat(path)
	if err != nil {
		return false
	}
	for _, in := range input {
		if st, err := os.Stat(in); err == nil && os.SameFile(out, st) {
			return true
		}
	}
	return false
}

// notReadOnly refuses a file that somebody has marked so: giving its name to
// another would pass the mark by. st is nil where there is none.
func notReadOnly(path string, st fs.FileInfo) error {
	if st != nil && st.Mode().IsRegular() && st.Mode().Perm()&0o222 == 0 {
		return hint{fmt.Errorf("can't write %s: it is marked read-only", path), "take the mark off, or choose another name"}
	}
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
