package xlsx

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"hash/crc32"
	"io"
	"io/fs"
	"sort"
)

// archive writes the parts of a workbook in the order of their names and
// without a time, so that the same plan gives the same bytes. (excelize takes
// the streamed sheets from a map, in any order.)
type archive struct {
	out   io.Writer
	parts []*part
	open  *part
}

// part is one part, packed already.
type part struct {
	name string
	data bytes.Buffer
	pack *flate.Writer
	crc  uint32
	size uint64
}

func (p *part) Write(b []byte) (int, error) {
	p.crc = crc32.Update(p.crc, crc32.IEEETable, b)
	p.size += uint64(len(b))
	return p.pack.Write(b)
}

// Create begins a part and ends the one before.
func (a *archive) Create(name string) (io.Writer, error) {
	if err := a.end(); err != nil {
		return nil, err
	}
	p := &part{name: name}
	var err error
	if p.pack, err = flate.NewWriter(&p.data, flate.DefaultCompression); err != nil {
		return nil, err
	}
	a.parts, a.open = append(a.parts, p), p
	return p, nil
}

func (a *archive) end() error {
	p := a.open
	a.open = nil
	if p == nil {
		return nil
	}
	return p.pack.Close()
}

// AddFS isn't used by a workbook; it is there to fit the interface.
func (a *archive) AddFS(fs.FS) error { return nil }

// Close writes everything.
func (a *archive) Close() error {
	if err := a.end(); err != nil {
		return err
	}
	sort.SliceStable(a.parts, func(i, j int) bool { return a.parts[i].name < a.parts[j].name })
	z := zip.NewWriter(a.out)
	for _, p := range a.parts {
		w, err := z.CreateRaw(&zip.FileHeader{
			Name: p.name, Method: zip.Deflate, CRC32: p.crc,
			CompressedSize64: uint64(p.data.Len()), UncompressedSize64: p.size,
		})
		if err != nil {
			return err
		}
		if _, err := p.data.WriteTo(w); err != nil {
			return err
		}
	}
	return z.Close()
}
