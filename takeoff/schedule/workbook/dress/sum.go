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
	if len(formula) < len("SUM(A1:A2)") {
		return false
	}
	f := strings.ToUpper(strings.TrimPrefix(formula, "of:="))
	if strings.HasPrefix(f, "SUBTOTAL(") || strings.HasPrefix(f, "AGGREGATE(") {
		return true
	}
	if !strings.HasPrefix(f, "SUM(") {
		return false
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
