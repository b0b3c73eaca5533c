package live

import (
	"math"
	"strconv"
	"strings"

	"blankoff/fittings"
)

// Var is a figure that a formula is worked out from: a size of the row, in the
// unit of its column (mm, degrees, pieces, m2), a size of the row that it hangs
// on, or the thickness of the sheet, mm.
type Var struct {
	Host bool         // of the row that it hangs on
	Dim  fittings.Dim // SheetMM for the thickness of the sheet
}

// SheetMM stands for the thickness of the sheet.
const SheetMM = fittings.NumDims

// Expr is a formula.
type Expr struct {
	op   byte // '#' number, 'v' figure, 'l' see inLength, 'f' function, or + - * / ^
	n    float64
	v    Var
	name string
	args []*Expr
}

func num(n float64) *Expr                   { return &Expr{op: '#', n: n} }
func of(d fittings.Dim) *Expr               { return &Expr{op: 'v', v: Var{Dim: d}} }
func plus(args ...*Expr) *Expr              { return &Expr{op: '+', args: args} }
func minus(a, b *Expr) *Expr                { return &Expr{op: '-', args: []*Expr{a, b}} }
func times(args ...*Expr) *Expr             { return &Expr{op: '*', args: args} }
func over(a, b *Expr) *Expr                 { return &Expr{op: '/', args: []*Expr{a, b}} }
func square(a *Expr) *Expr                  { return &Expr{op: '^', args: []*Expr{a, num(2)}} }
func call(name string, args ...*Expr) *Expr { return &Expr{op: 'f', name: name, args: args} }
func hypot(a, b *Expr) *Expr                { return call("SQRT", plus(square(a), square(b))) }
func half(a *Expr) *Expr                    { return over(a, num(2)) }
func pi() *Expr                             { return call("PI") }

// inLength is how many of the unit of the size columns make one of the unit of
// length, in which areas are worked out: MM, unless the text is asked for in
// other units.
func inLength() *Expr { return &Expr{op: 'l'} }

// MM is how many mm make a metre.
const MM = 1000

// functions are those that formulas use; a spreadsheet has them by the same
// names.
var functions = map[string]func(a []float64) float64{
	"PI":      func([]float64) float64 { return math.Pi },
	"SQRT":    func(a []float64) float64 { return math.Sqrt(a[0]) },
	"SIN":     func(a []float64) float64 { return math.Sin(a[0]) },
	"TAN":     func(a []float64) float64 { return math.Tan(a[0]) },
	"ATAN":    func(a []float64) float64 { return math.Atan(a[0]) },
	"ASIN":    func(a []float64) float64 { return math.Asin(a[0]) },
	"ASINH":   func(a []float64) float64 { return math.Asinh(a[0]) },
	"ABS":     func(a []float64) float64 { return math.Abs(a[0]) },
	"RADIANS": func(a []float64) float64 { return a[0] * math.Pi / 180 },
	"IF": func(a []float64) float64 { // the second unless the first is 0, then the third
		if a[0] != 0 {
			return a[1]
		}
		return a[2]
	},
	"MAX": func(a []float64) float64 { return math.Max(a[0], a[1]) },
}

// Value works the formula out; it is NaN where that can't be done.
func (e *Expr) Value(figure func(Var) float64) float64 {
	switch e.op {
	case '#':
		return e.n
	case 'l':
		return MM
	case 'v':
		return figure(e.v)
	}
	a := make([]float64, len(e.args))
	for i, x := range e.args {
		a[i] = x.Value(figure)
	}
	switch e.op {
	case 'f':
		return functions[e.name](a)
	case '-':
		return a[0] - a[1]
	case '/':
		return a[0] / a[1]
	case '^':
		return a[0] * a[0]
	}
	sum := a[0]
	for _, x := range a[1:] {
		if e.op == '+' {
			sum += x
		} else {
			sum *= x
		}
	}
	return sum
}

// Text is the formula as a spreadsheet takes it, without the sign of equality;
// name gives the cell of a figure. Columns of sizes may be in any unit of which a
// whole number makes the unit of length: MM for mm, with m and m2; 12 for inches,
// with ft and ft2.
func (e *Expr) Text(inLength int, name func(Var) string) string {
	w := writer{length: strconv.Itoa(inLength), name: name}
	w.write(e)
	return w.String()
}

// writer writes a formula.
type writer struct {
	strings.Builder
	length string
	name   func(Var) string
}

// rank is how tightly a formula holds together.
func (e *Expr) rank() int {
	switch e.op {
	case '+', '-':
		return 1
	case '*', '/':
		return 2
	case '^':
		return 3
	}
	return 4
}

func (b *writer) write(e *Expr) {
	switch e.op {
	case 'l':
		b.WriteString(b.length)
	case '#':
		b.WriteString(strconv.FormatFloat(e.n, 'f', -1, 64))
	case 'v':
		b.WriteString(b.name(e.v))
	case 'f':
		b.WriteString(e.name + "(")
		for i, a := range e.args {
			if i > 0 {
				b.WriteByte(',')
			}
			b.write(a)
		}
		b.WriteByte(')')
	default:
		for i, a := range e.args {
			if i > 0 {
				b.WriteByte(e.op)
			}
			inner, outer := a.rank(), e.rank()
			// What stands to the right of a minus or a slash, and a power, holds more.
			if inner < outer || inner == outer && (i > 0 && (e.op == '-' || e.op == '/') || e.op == '^') {
				b.WriteByte('(')
				b.write(a)
				b.WriteByte(')')
			} else {
				b.write(a)
			}
		}
	}
}

// Vars lists the figures that the formula is worked out from, each once.
func (e *Expr) Vars() []Var {
	var out []Var
	seen := map[Var]bool{}
	var walk func(*Expr)
	walk = func(e *Expr) {
		if e.op == 'v' && !seen[e.v] {
			seen[e.v] = true
			out = append(out, e.v)
		}
		for _, a := range e.args {
			walk(a)
		}
	}
	walk(e)
	return out
}
