package main

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"time"
)

// tempNamed tells names that only this program gives, to what isn't complete.
var tempNamed = regexp.MustCompile(`^\.blankoff-[0-9a-f]{16}$`)

func tempName(dir string) string {
	return filepath.Join(dir, fmt.Sprintf(".blankoff-%016x", rand.Uint64()))
}

// oldLitter is the age from which what is left behind is swept away where a run
// can't see whether another one still writes it.
const oldLitter = 24 * time.Hour

// tempFile makes a file that isn't complete yet, in a folder. As long as it is
// open no other run takes it for litter.
func tempFile(dir string) (*os.File, error) {
	return hold(func(path string) (*os.File, error) {
		return os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
	}, dir)
}

// tempDir makes a folder for what isn't complete yet, in a folder. It is the
// caller's as long as the handle is open.
func tempDir(dir string) (held *os.File, err error) {
	return hold(func(path string) (*os.File, error) {
		if err := os.Mkdir(path, 0o777); err != nil {
			return nil, err
		}
		return os.Open(path)
	}, dir)
}

// hold makes something under a temporary name and locks it; a run that sweeps
// may be quicker, and then another name is taken.
func hold(make func(path string) (*os.File, error), dir string) (*os.File, error) {
	for range 20 {
		f, err := make(tempName(dir))
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return nil, err
		}
		if lock(f) && same(f) {
			return f, nil
		}
		f.Close()
	}
	return nil, errors.New("other runs of blankoff are in the way")
}

// same reports whether an open file still has its name.
func same(f *os.File) bool {
	here, err := f.Stat()
	there, e := os.Lstat(f.Name())
	return err == nil && e == nil && os.SameFile(here, there)
}

// sweep takes away what runs that were stopped left behind in a folder. What
// another run still writes stays; so does what can't be taken away, since that
// is no reason to fail.
func sweep(dir string) {
	list, err := os.ReadDir(dir)
	if err != nil {
		return
	}
	for _, e := range list {
		if !tempNamed.MatchString(e.Name()) || !e.Type().IsRegular() && !e.IsDir() {
			continue
		}
		path := filepath.Join(dir, e.Name())
		if st, err := e.Info(); err != nil || !locks && time.Since(st.ModTime()) < oldLitter {
			continue
		}
		f, err := os.Open(path)
		if err != nil {
			continue
		}
		if lock(f) {
			_ = os.RemoveAll(path)
		}
		f.Close()
	}
}

// settleDir makes what was renamed in a folder last through a power cut, where
// the file system can.
func settleDir(dir string) {
	if d, err := os.Open(dir); err == nil {
		_ = d.Sync()
		d.Close()
	}
}
