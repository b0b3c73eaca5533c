package main

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

const (
	listName    = "pack.json"     // the list of a pack's files
	halfName    = "half-replaced" // stands in a pack while it is replaced
	halfNote    = "READ-ME.txt"   // says so to a person
	retiredName = "old"           // what was replaced, inside half-replaced
	listAbout   = "the files of a pack written by blankoff, all by one run; where a file doesn't match, it was changed since"
)

const halfText = `The pack in the folder above was being replaced when blankoff was stopped: some
of its files are new and some are old. Run the same command again, which
finishes the replacement first; nothing has to be deleted by hand.
`

// document is one file of a pack.
type document struct {
	name  string
	write func(io.Writer) error
}

// packList names the files of a pack, in the order in which they are written.
type packList struct {
	About string     `json:"about"`
	Files []packFile `json:"files"`
}

type packFile struct {
	Name   string `json:"name"`
	Bytes  int64  `json:"bytes"`
	SHA256 string `json:"sha256"`
}

// has reports whether a pack has a file.
func (l *packList) has(name string) bool {
	for _, f := range l.Files {
		if f.Name == name {
			return true
		}
	}
	return false
}

// readPackList reads the list of a folder; one without has none. A list that
// isn't ours, or names what lies elsewhere, is an error.
func readPackList(dir string) (list packList, err error) {
	path := filepath.Join(dir, listName)
	st, err := os.Stat(path)
	if os.IsNotExist(err) {
		return packList{}, nil
	}
	if err == nil && !st.Mode().IsRegular() {
		return packList{}, hint{fmt.Errorf("%s isn't the list of a pack", path), "choose another folder, or move it away"}
	}
	data, err := readInput("list of a pack", path, mostSettings)
	if err != nil {
		return packList{}, err
	}
	return parsePackList(data, path)
}

func parsePackList(data []byte, path string) (list packList, err error) {
	if err = json.Unmarshal(data, &list); err != nil || list.About != listAbout {
		return packList{}, hint{fmt.Errorf("%s isn't the list of a pack", path), "choose another folder, or move it away"}
	}
	for _, f := range list.Files {
		if f.Name != filepath.Base(f.Name) || !filepath.IsLocal(f.Name) || strings.ContainsAny(f.Name, `/\:`) ||
			strings.HasPrefix(f.Name, ".") || f.Name == halfName || f.Name == listName {
			return packList{}, hint{fmt.Errorf("%s names %q, which no pack holds", path, f.Name), "choose another folder, or move it away"}
		}
	}
	return list, nil
}

// sumOf is the SHA-256 of a file.
func sumOf(path string) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", err
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", err
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}

// stagePack writes the documents and their list into a folder.
func stagePack(stage, dir string, docs []document) error {
	list := packList{About: listAbout}
	for _, d := range docs {
		h, n := sha256.New(), counter(0)
		err := stageFile(stage, dir, d.name, func(w io.Writer) error { return d.write(io.MultiWriter(w, h, &n)) })
		if err != nil {
			return err
		}
		list.Files = append(list.Files, packFile{d.name, int64(n), hex.EncodeToString(h.Sum(nil))})
	}
	return stageFile(stage, dir, listName, func(w io.Writer) error {
		e := json.NewEncoder(w)
		e.SetIndent("", "  ")
		return e.Encode(list)
	})
}

// counter counts the bytes written to it.
type counter int64

func (n *counter) Write(b []byte) (int, error) {
	*n += counter(len(b))
	return len(b), nil
}

// stageFile writes one file of a pack; dir is where it will lie.
func stageFile(stage, dir, name string, write func(io.Writer) error) error {
	f, err := os.OpenFile(filepath.Join(stage, name), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return fmt.Errorf("can't write %s: %w", filepath.Join(dir, name), cause(err))
	}
	defer f.Close()
	return fill(f, filepath.Join(dir, name), write)
}

// writePack writes the documents of a pack into a folder, all or none. A new
// folder appears whole. In one that is there, everything is made beside its
// place first; while names are changed, half-replaced stands in it, so that
// whoever finds it after a kill knows, and the next run ends what was begun.
func writePack(dir string, input []string, docs []document, talk io.Writer) error {
	if !exists(dir) {
		return newPack(dir, docs, talk)
	}
	r, err := openPack(dir, input, talk)
	if err != nil {
		return err
	}
	defer r.held.Close()
	if err := r.fits(docs); err != nil {
		return err
	}
	stage, err := tempDir(r.dir)
	if err != nil {
		return fmt.Errorf("can't write into %s: %w", dir, cause(err))
	}
	defer stage.Close()
	old := false
	for _, d := range docs {
		old = old || exists(filepath.Join(r.dir, d.name))
	}
	err = stagePack(stage.Name(), dir, docs)
	if err == nil {
		err = stageFile(stage.Name(), dir, halfNote, func(w io.Writer) error { _, err := io.WriteString(w, halfText); return err })
	}
	if err == nil {
		err = r.replace(stage.Name())
	}
	if err != nil {
		_ = os.RemoveAll(stage.Name()) // what stays is swept by the next run
		return err
	}
	wrote(talk, dir, old)
	return nil
}

// newPack writes a pack into a folder that isn't there yet.
func newPack(dir string, docs []document, talk io.Writer) (err error) {
	dir = filepath.Clean(dir)
	var made []string
	for up := filepath.Dir(dir); !exists(up); up = filepath.Dir(up) {
		made = append(made, up)
	}
	parent := filepath.Dir(dir)
	defer func() {
		for i := 0; err != nil && i < len(made); i++ {
			_ = os.Remove(made[i])
		}
	}()
	if err := os.MkdirAll(parent, 0o777); err != nil {
		return fmt.Errorf("can't make the folder %s: %w", dir, cause(err))
	}
	sweep(parent)
	stage, err := tempDir(parent)
	if err != nil {
		return fmt.Errorf("can't make the folder %s: %w", dir, cause(err))
	}
	defer stage.Close()
	if err = stagePack(stage.Name(), dir, docs); err == nil {
		settleDir(stage.Name())
		if e := rename(stage.Name(), dir); e != nil {
			err = fmt.Errorf("can't make the folder %s: %w", dir, cause(e))
		}
	}
	if err != nil {
		_ = os.RemoveAll(stage.Name())
		return err
	}
	settleDir(parent)
	wrote(talk, dir, false)
	return nil
}
