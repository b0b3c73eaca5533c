package source

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"blankoff/takeoff/schedule/headings"
)

// list is a schedule of so many rows, some of them long.
func list(rows int, quoted bool) []byte {
	random := rand.New(rand.NewPCG(3, uint64(rows)))
	var b bytes.Buffer
	b.WriteString("tag,kind,width_mm,height_mm,length_mm,note\n")
	for i := range rows {
		note := strings.Repeat("n", random.IntN(90))
		if quoted && i%3 == 0 {
			note = "\"" + note + ", and more\""
		}
		fmt.Fprintf(&b, "D%d,straight,600,400,1500,%s\n", i, note)
	}
	return b.Bytes()
}

// Chunks of any size put together are the text; each begins a line, which has the number
// that counting gives.
func TestChunksAreTheText(t *testing.T) {
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	defer func(size int) { ChunkSize = size }(ChunkSize)
	for _, quoted := range []bool{false, true} {
		data := list(300, quoted)
		for _, ChunkSize = range []int{16, 100, 1000, 5000, 1 << 20} {
			x, err := Open("list.csv", data, lex)
			if err != nil {
				t.Fatal(err)
			}
			for at := (Cut{0, 1}); at.At < x.Size; {
				next := x.Next(at)
				if next.At <= at.At || data[next.At-1] != '\n' || next.Number != 1+bytes.Count(data[:next.At], Newline) {
					t.Fatalf("chunks of %d: from %v to %v", ChunkSize, at, next)
				}
				at = next
			}
		}
	}
}

// A file that is left where it is gives the same text and the same rows ahead as one in
// memory, and one that is cut short meanwhile an error.
func TestSurveyed(t *testing.T) {
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	defer func(size int, from int64) { ChunkSize, SurveyFrom = size, from }(ChunkSize, SurveyFrom)
	ChunkSize, SurveyFrom = 12_000, 0
	data := list(400, false)
	path := filepath.Join(t.TempDir(), "list.csv")
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	held, err := Open(path, data, lex)
	if err != nil {
		t.Fatal(err)
	}
	left := Surveyed(path, lex)
	if left == nil {
		t.Fatal("not surveyed")
	}
	if left.Size != held.Size || left.Lines != held.Lines || left.Form != held.Form {
		t.Errorf("%d bytes, %d lines, form %+v; want %d, %d, %+v", left.Size, left.Lines, left.Form, held.Size, held.Lines, held.Form)
	}
	var whole []byte
	for at := (Cut{0, 1}); at.At < left.Size; {
		next := left.Next(at)
		part, err := left.Read(at.At, next.At, nil)
		if err != nil {
			t.Fatal(err)
		}
		whole, at = append(whole, part...), next
	}
	if !bytes.Equal(whole, data) {
		t.Error("the chunks aren't the file")
	}
	if got, want := fmt.Sprint(left.RowsFrom(0, 5)), fmt.Sprint(held.RowsFrom(0, 5)); got != want {
		t.Errorf("ahead: %s, want %s", got, want)
	}
	if err := os.Truncate(path, int64(len(data)/2)); err != nil {
		t.Fatal(err)
	}
	if _, err := left.Close(); err == nil {
		t.Error("a file that was cut short is taken for the same")
	}
}

// With quotes a row may go on behind the end of its line, so such a file is held.
func TestQuotedIsHeld(t *testing.T) {
	lex, err := headings.BuiltIn()
	if err != nil {
		t.Fatal(err)
	}
	defer func(from int64) { SurveyFrom = from }(SurveyFrom)
	SurveyFrom = 0
	path := filepath.Join(t.TempDir(), "list.csv")
	if err := os.WriteFile(path, list(400, true), 0o644); err != nil {
		t.Fatal(err)
	}
	if Surveyed(path, lex) != nil {
		t.Error("surveyed")
	}
	if _, err := Load(filepath.Join(t.TempDir(), "none.csv")); err == nil {
		t.Error("a missing file was read")
	}
}
