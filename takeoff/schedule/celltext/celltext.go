// Package celltext knows what a cell of a schedule, or a row of cells, is as text: blank, a
// figure, a stroke, an error of a spreadsheet, a label. It knows nothing of headings, so
// nothing of what a cell is of.
package celltext

import (
	"fmt"
	"hash/crc32"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Trim cuts outer white space.
func Trim(s string) string {
	if s != "" && (s[0] <= ' ' || s[0] >= utf8.RuneSelf || s[len(s)-1] <= ' ' || s[len(s)-1] >= utf8.RuneSelf) {
		return strings.TrimSpace(s)
	}
	return s
}

// Shorten makes text fit for a message: not too long, and without characters
// that would upset a terminal.
func Shorten(s string) string {
	const most = 80
	if len(s) > most {
		s = strings.ToValidUTF8(s[:most], "") + "…"
	}
	if !strings.ContainsFunc(s, unicode.IsControl) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '\n' || r == '\r' || r == '\t':
			b.WriteByte(' ')
		case unicode.IsControl(r):
			fmt.Fprintf(&b, "\\x%02x", r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// What is to be thought of a byte at the edge of a cell.
const (
	MayBeSpace = 1 << iota // or part of one
	Odd                    // may start a cell that isn't text or a number
)

// Marks says of a byte at the edge of a cell what is to be thought of it.
var Marks = func() (m [256]uint8) {
	for c := range m {
		if c <= ' ' || c >= utf8.RuneSelf {
			m[c] = MayBeSpace
		}
	}
	for _, c := range []byte("#=-_'\xe2nNE") {
		m[c] |= Odd
	}
	return m
}()

// Unwrap takes off the sign and quotes by which some programs keep a
// spreadsheet from changing text: ="007".
func Unwrap(cell string) string {
	if bare := Trim(strings.TrimPrefix(cell, "'")); len(bare) < len(cell) && bare != "" && strings.ContainsRune("=+-@＝＋－＠", []rune(bare)[0]) {
		return bare // as files of refused rows have it
	}
	inner, wrapped := strings.CutPrefix(cell, `="`)
	if inner, closed := strings.CutSuffix(inner, `"`); wrapped && closed && !strings.Contains(inner, `"`) {
		return Trim(inner)
	}
	return cell
}

// MeansNothing reports a cell that is filled in to say that it is empty, or a line of a form
// to write on.
func MeansNothing(cell string) bool {
	return strings.HasPrefix(cell, "__") && strings.Trim(cell, "_") == "" || len(cell) < 5 && (cell == "-" || cell == "–" || cell == "—" || strings.EqualFold(cell, "n/a") || strings.EqualFold(cell, "null") || cell == `\N`)
}

// ErrorCells are the errors of spreadsheet programs, in English and as other languages name
// some of them. Common practice, no source.
var ErrorCells = []string{"#REF!", "#VALUE!", "#DIV/0!", "#N/A", "#NAME?", "#NUM!", "#NULL!", "#SPILL!", "#CALC!", "#GETTING_DATA", "#####",
	"#BEZUG!", "#WERT!", "#NV", "#ZAHL!", "#VALEUR!", "#NOM?", "#NOMBRE!", "#WAARDE!", "#VERW!", "#VALOR!", "#VALORE!", "#RIF!", "#REFERENS!", "#VÄRDEFEL!", "#SAKNAS!", "#DIV/0", "Err:5"}

// Unreadable reports a character that is none, or steers a terminal.
func Unreadable(r rune) bool {
	return r == utf8.RuneError || unicode.IsControl(r) && r != '\n' && r != '\r' && r != '\t'
}

// The longest cells, in bytes.
const (
	MaxCell = 32767 // as in a workbook
	MaxWord = 1000  // of any column but notes
)

// Wordy reports a cell that starts like a word, or like a unit in brackets.
func Wordy(cell string) bool {
	return unicode.IsLetter(rune(cell[0])) || cell[0] == '(' || cell[0] == '['
}

// Mark marks a row as it stands: others have other marks, as a rule. The sum is the CRC-32C, which
// processors work out.
func Mark(row []byte) uint8 { return uint8(crc32.Checksum(row, castagnoli) * 0x9e3779b1 >> 24) }

var castagnoli = crc32.MakeTable(crc32.Castagnoli)
