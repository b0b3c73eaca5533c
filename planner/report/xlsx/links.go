package xlsx

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/xuri/excelize/v2"

	"blankoff/fittings"
	"blankoff/planner/report"
	"blankoff/planner/report/live"
	"blankoff/takeoff"
	"blankoff/takeoff/measuring"
)

// links says where everything stands in the workbook, so that one cell can
// follow another. A formula is only used where it gives the figure of the view.
type links struct {
	v          *report.Plan
	row        map[*takeoff.Item]int             // on the sheet takeoff
	kids       map[*takeoff.Item][]*takeoff.Item // rows that hang on a row, in the order of the file
	split      map[*takeoff.Item]bool            // rows that lie in several stretches
	dims       []fittings.Dim                    // size columns of the sheet takeoff
	at         map[string]string                 // heading to column of the sheet takeoff
	onSections map[string]string                 // the same of other sheets
	onPieces   map[string]string
	onBlanks   map[string]string
	onWindows  map[string]string
	pieces     [][2]int // rows of every section on the sheet pieces, 0: none
	outside    [2]int   // rows of what is in no section there
	blanks     [][2]int // rows of every section on the sheet blanks
	basis      bool     // areas are on a basis other than the exact one
	sheet      float64  // mm
	settings   *settingsTable
	window     *window
	tested     report.Tested
}

// newLinks lays the workbook out.
func newLinks(v *report.Plan) *links {
	l := &links{v: v, tested: v.Tested(), row: map[*takeoff.Item]int{}, kids: map[*takeoff.Item][]*takeoff.Item{}, split: map[*takeoff.Item]bool{}, sheet: v.Settings.Sheet}
	if t := v.Takeoff; t != nil && !l.large() {
		l.basis = !t.Rule.Exact()
		for i := range t.Items {
			if it := t.Items[i].Measured; it != nil {
				l.row[it] = i + 2
			}
		}
		for i := range t.All {
			if it := &t.All[i]; it.Parent >= 0 {
				host := &t.All[it.Parent]
				l.kids[host] = append(l.kids[host], it)
			}
		}
		l.dims = l.usedDims()
	}
	l.at = letters(takeoffColumns(l))
	l.onSections, l.onPieces, l.onBlanks = letters(sectionColumns(l)), letters(pieceColumns()), letters(blankColumns())
	l.layPieces()
	l.settings = newSettings(v)
	l.window = newWindow(v, l.settings)
	l.onWindows = letters(l.window.heads)
	return l
}

// usedDims are the sizes that any row has.
func (l *links) usedDims() (out []fittings.Dim) {
	var used [fittings.NumDims]bool
	for it := range l.row {
		for d := range fittings.NumDims {
			used[d] = used[d] || it.Piece.Sizes.Has(d)
		}
	}
	for d := range fittings.NumDims {
		if used[d] {
			out = append(out, d)
		}
	}
	return out
}

// layPieces counts the rows of the sheets pieces and blanks.
func (l *links) layPieces() {
	see := func(p *report.Piece) {
		if p.From > 1 || p.To < p.Of {
			l.split[p.Item] = true
		}
	}
	if l.large() {
		l.pieces, l.blanks = make([][2]int, len(l.v.Sections)), make([][2]int, len(l.v.Sections))
		return
	}
	next, blank := 2, 2
	for i := range l.v.Sections {
		s := &l.v.Sections[i]
		l.pieces = append(l.pieces, rowsFrom(&next, len(s.Pieces)))
		blanks := len(s.Blanks)
		if s.NotTested != "" { // none is fitted
			blanks = 0
		}
		l.blanks = append(l.blanks, rowsFrom(&blank, blanks))
		for k := range s.Pieces {
			see(&s.Pieces[k])
		}
	}
	l.outside = rowsFrom(&next, len(l.v.Outside))
	for i := range l.v.Outside {
		see(&l.v.Outside[i])
	}
}

// large reports whether something doesn't fit into a sheet, so that cells can't
// follow one another: they hold their figures then.
func (l *links) large() bool {
	pieces, blanks, items := len(l.v.Outside), 0, 0
	for i := range l.v.Sections {
		pieces += len(l.v.Sections[i].Pieces)
		blanks += len(l.v.Sections[i].Blanks)
	}
	if l.v.Takeoff != nil {
		items = len(l.v.Takeoff.Items) + len(l.v.Takeoff.Refused)
	}
	return max(pieces, blanks, items) > lastRow-4
}

// rowsFrom takes n rows.
func rowsFrom(next *int, n int) [2]int {
	first := *next
	*next += n
	if n == 0 {
		return [2]int{}
	}
	return [2]int{first, *next - 1}
}

// letters gives the column of every heading.
func letters(columns []column) map[string]string {
	m := map[string]string{}
	for i, c := range columns {
		if _, ok := m[c.head]; !ok {
			m[c.head], _ = excelize.ColumnNumberToName(i + 1)
		}
	}
	return m
}

// column is the range of a column's rows; "" for none.
func rangeOf(sheet, column string, rows [2]int) string {
	if rows[0] == 0 {
		return ""
	}
	if sheet != "" {
		sheet += "!"
	}
	return fmt.Sprintf("%s%s%d:%s%d", sheet, column, rows[0], column, rows[1])
}

// near reports whether two figures are the same but for the noise of adding up.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-7+1e-9*math.Abs(b) }

// follows is a cell that follows others where the formula is known and gives the
// figure; otherwise it holds the figure alone.
func follows(text string, gives, now float64) any {
	if text == "" || !near(gives, now) {
		return now
	}
	return formula{text, now}
}

// cell is a cell of a row on the sheet takeoff, as another sheet names it.
func (l *links) cell(heading string, it *takeoff.Item) string {
	return "takeoff!" + l.here(heading, it)
}

// here is the same within the sheet.
func (l *links) here(heading string, it *takeoff.Item) string {
	return l.at[heading] + strconv.Itoa(l.row[it])
}

// text writes a formula over the sizes of a row and its host; "" where one of
// them has no row.
func (l *links) text(e *live.Expr, it, host *takeoff.Item, here bool) string {
	if e == nil {
		return ""
	}
	known := true
	text := e.Text(l.inLength(), func(v live.Var) string {
		from := it
		switch {
		case v.Dim == live.SheetMM:
			return l.name("sheet_mm")
		case v.Host:
			from = host
		}
		if l.row[from] == 0 {
			known = false
		}
		if here {
			return l.here(v.Dim.Heading(), from)
		}
		return l.cell(v.Dim.Heading(), from)
	})
	if !known || len(text) > longest {
		return ""
	}
	return text
}

// longest is how long a formula may be; a spreadsheet takes 8192 characters.
const longest = 8000

// host is the row that a row hangs on.
func (l *links) host(it *takeoff.Item) *takeoff.Item {
	if it.Parent < 0 {
		return nil
	}
	return &l.v.Takeoff.All[it.Parent]
}

// lengthOf is how far from the plant end the first k of a straight's pieces
// reach: whole lengths of the row, and pieces of one.
func (l *links) lengthOf(it *takeoff.Item, k, of int) (text string, m float64) {
	n := max(1, of/max(1, it.Quantity))
	whole, rest := k/n, k%n
	length := l.cell("length_mm", it)
	name, pl := l.pieceName(it), l.pieceLength(it)
	var terms []string
	if whole > 0 {
		terms = append(terms, times(whole, length))
		m += float64(whole) * it.Length()
	}
	if rest > 0 {
		terms = append(terms, "MIN("+times(rest, name)+","+length+")")
		m += math.Min(float64(rest)*pl, it.Length())
	}
	return strings.Join(terms, "+"), m
}

func times(n int, what string) string {
	if n == 1 {
		return what
	}
	return strconv.Itoa(n) + "*" + what
}

// pieceName is the name of the setting with that length.
func (l *links) pieceName(it *takeoff.Item) string {
	if it.Piece.Shape == fittings.Rectangular {
		return l.name("piece_rect_mm")
	}
	return l.name("piece_round_mm")
}

func (l *links) pieceLength(it *takeoff.Item) float64 {
	if pl := l.v.Settings.PieceLength; pl > 0 {
		return pl
	}
	return measuring.UsualLength(it.Piece.Shape)
}
