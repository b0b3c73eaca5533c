// Package cutlist reads a person's own cuts from CSV: the joint by its two tags,
// with the piece number inside a straight. The list that a plan writes has the
// same headings and reads back.
package cutlist

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/gocarina/gocsv"

	"blankoff/planner"
	"blankoff/takeoff"
)

// row is a line of the list. Cells are read as text and understood here, so
// that a missing heading or a slip isn't taken for a 0.
type row struct {
	Tag       string `csv:"tag"`
	Piece     string `csv:"piece"`
	Next      string `csv:"next_tag"`
	NextPiece string `csv:"next_piece"`
}

// Read reads a list of cuts; name is the file's and appears in faults. The error
// says that the file can't be read as a list at all.
func Read(r io.Reader, name string) ([]planner.OwnCut, []takeoff.Fault, error) {
	data, err := io.ReadAll(r)
	if err != nil {
		return nil, nil, fmt.Errorf("cuts file %s: %w", name, err)
	}
	r = bytes.NewReader(data)
	if missing := missingHeadings(data); missing != "" {
		return nil, nil, fmt.Errorf("cuts file %s has no heading %s; expected tag, piece, next_tag, next_piece", name, missing)
	}
	var rows []row
	if err := gocsv.UnmarshalDecoder(decoder(r), &rows); err != nil {
		return nil, nil, fmt.Errorf("cuts file %s: %w; expected a CSV with the headings tag, piece, next_tag, next_piece", name, err)
	}
	var cuts []planner.OwnCut
	var faults []takeoff.Fault
	for i, line := range rows {
		at := takeoff.Place{File: name, Row: i + 2}
		c := planner.OwnCut{At: at, Tag: tagOf(line.Tag), Next: tagOf(line.Next)}
		c.TextPlaced = strings.Trim(strings.Join([]string{line.Tag, line.Piece, line.Next, line.NextPiece}, ","), ",")
		ok := true
		for _, cell := range []struct {
			heading, text string
			to            *int
		}{{"piece", line.Piece, &c.Piece}, {"next_piece", line.NextPiece, &c.NextPiece}} {
			text := strings.TrimSpace(cell.text)
			if text == "" {
				continue
			}
			v, err := strconv.Atoi(text)
			if err != nil || v < 0 {
				ok = false
				faults = append(faults, at.Fault(cell.heading, cell.text, "the number of a piece, from 1 at the plant end, or nothing", fmt.Sprintf("%s '%s' isn't a number of a piece", cell.heading, cell.text)))
				continue
			}
			*cell.to = v
		}
		if c.Tag == "" || c.Next == "" {
			ok = false
			faults = append(faults, at.Fault("tag", c.TextPlaced, "the tags of the two pieces that meet", "a cut needs tag and next_tag"))
		}
		if ok {
			cuts = append(cuts, c)
		}
	}
	return cuts, faults, nil
}

// tagOf is a tag as the schedule has it: a list that a plan writes puts an
// apostrophe before a text that a spreadsheet would take for a formula.
func tagOf(cell string) string {
	text := strings.TrimSpace(cell)
	if rest, ok := strings.CutPrefix(text, "'"); ok && rest != "" && strings.ContainsRune("=+-@\uff1d\uff0b\uff0d\uff20", []rune(rest)[0]) {
		return rest
	}
	return text
}

// missingHeadings names a heading that a list can't do without.
func missingHeadings(data []byte) string {
	c := csv.NewReader(bytes.NewReader(data))
	c.FieldsPerRecord = -1
	head, err := c.Read()
	if err != nil {
		return "" // the decoder says what is wrong
	}
	for _, want := range []string{"tag", "next_tag"} {
		if !slices.ContainsFunc(head, func(h string) bool { return strings.TrimSpace(h) == want }) {
			return want
		}
	}
	return ""
}

// decoder reads CSV whose lines may be of unlike length.
func decoder(r io.Reader) gocsv.SimpleDecoder {
	c := csv.NewReader(r)
	c.FieldsPerRecord = -1
	c.TrimLeadingSpace = true
	return gocsv.NewSimpleDecoderFromCSVReader(c)
}
