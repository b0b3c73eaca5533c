package dress

import (
	"regexp"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"
)

// SumsUp reports the formula of a cell that sums up what is shown above it, or cells of its
// own column above it: SUM(G4:G6) in G7.
func SumsUp(formula string, column, row int) bool {
	if len(formula) < len("A1+A2") {
		return false
	}
	f := strings.ToUpper(strings.TrimPrefix(formula, "of:="))
	if strings.HasPrefix(f, "SUBTOTAL(") || strings.HasPrefix(f, "AGGREGATE(") {
		return true
	}
	if !strings.HasPrefix(f, "SUM(") {
		return ofOthers(f, row)
	}
	m := ownSum.FindStringSubmatch(strings.ReplaceAll(f, "$", ""))
	if m == nil || m[1] != m[3] {
		return false
	}
	own, err := excelize.ColumnNameToNumber(m[1])
	from, _ := strconv.Atoi(m[2])
	to, _ := strconv.Atoi(m[4])
	return err == nil && own == column+1 && to < row && from < to
}

// ownSum is the sum of one range and nothing else, as either kind of file writes it.
var ownSum = regexp.MustCompile(`^SUM\(\[?\.?([A-Z]{1,3})(\d{1,7}):\.?([A-Z]{1,3})(\d{1,7})\]?\)$`)

// ofOthers reports a formula that adds up or counts cells of several rows of its sheet, none of
// which is its own: E2*F2+E3*F3, SUMPRODUCT(E2:E4,F2:F4), COUNTA(A2:A9).
func ofOthers(f string, row int) bool {
	if len(f) > mostFormula || strings.ContainsAny(f, "!") || strings.Contains(f, "[$") {
		return false
	}
	if m := manyRows.FindStringSubmatch(f); m != nil {
		from, _ := strconv.Atoi(m[1])
		to, _ := strconv.Atoi(m[2])
		return to > from && (row < from || row > to)
	}
	if !plusOnly.MatchString(f) {
		return false
	}
	rows := map[int]bool{}
	for _, m := range ofCell.FindAllStringSubmatch(f, -1) {
		n, _ := strconv.Atoi(m[1])
		rows[n] = true
	}
	return len(rows) > 1 && !rows[row] && strings.Contains(f, "+")
}

// mostFormula is the longest formula that is looked at, bytes.
const mostFormula = 2000

var (
	manyRows = regexp.MustCompile(`^(?:SUMPRODUCT|SUMIFS?|COUNTA?|COUNTIFS?)\(\[?\.?\$?[A-Z]{1,3}\$?(\d{1,7}):\.?\$?[A-Z]{1,3}\$?(\d{1,7})\]?[,;)]`)
	plusOnly = regexp.MustCompile(`^\(*\[?\.?[A-Z]{1,3}\d{1,7}[A-Z0-9+*.()\[\]]*$`) // relative ones only
	ofCell   = regexp.MustCompile(`[A-Z]{1,3}(\d{1,7})`)
)
