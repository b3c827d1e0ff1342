package worksheet

import (
	"iter"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Operand is something an expression can be made of: a [Step], a constant or
// another expression.
type Operand interface {
	amount() quantity.Amount
	write(b *strings.Builder, how notation, binding int)
}

// notation is a way of writing an expression: in words, Net weight × (Moisture − Shrink-to) ÷ …, or
// in figures, 52,300 lb × (25.0 % − 15.5 %) ÷ …
type notation struct {
	words   bool
	printer *message.Printer
}

// Precedence of operators, lowest first.
const (
	lowest = iota
	sums
	products
	highest
)

// Expr is an exact calculation over operands. It is evaluated once, when it is made; nothing in it
// is rounded.
type Expr struct {
	prefix  string // before the first operand: √
	sign    string // between operands
	binding int
	two     [2]Operand // nearly all have no more; the second may be missing
	more    []Operand
	value   quantity.Amount
}

// args are the operands in order. A sequence, unlike a slice, leaves the expression on the stack.
func (e Expr) args() iter.Seq2[int, Operand] {
	return func(yield func(int, Operand) bool) {
		for i, arg := range e.two {
			if arg == nil || !yield(i, arg) {
				return
			}
		}
		for i, arg := range e.more {
			if !yield(len(e.two)+i, arg) {
				return
			}
		}
	}
}

func (e Expr) amount() quantity.Amount { return e.value }

// Value returns the value of the expression, for a rule that must first see whether it applies.
func (e Expr) Value() quantity.Amount { return e.value }

func (e Expr) write(b *strings.Builder, how notation, binding int) {
	if e.binding < binding {
		b.WriteByte('(')
		defer b.WriteByte(')')
	}
	b.WriteString(e.prefix)
	for i, arg := range e.args() {
		inner := e.binding
		if i > 0 {
			b.WriteString(" " + e.sign + " ")
			inner++
		}
		arg.write(b, how, inner)
	}
}

// over is an expression with its operands; its value is the first one's so far.
func over(sign string, binding int, first Operand, rest []Operand) Expr {
	e := Expr{sign: sign, binding: binding, two: [2]Operand{first}, value: first.amount()}
	if len(rest) > 0 {
		e.two[1] = rest[0]
	}
	if len(rest) > 1 {
		e.more = append(e.more, rest[1:]...) // a copy, so that two need no memory of their own
	}
	return e
}

// Sum is a + b + …; all in one unit.
func Sum(first Operand, rest ...Operand) Expr {
	e := over("+", sums, first, rest)
	for _, o := range rest {
		e.value = e.value.Add(o.amount())
	}
	return e
}

// Less is a − b − …; all in one unit.
func Less(first Operand, rest ...Operand) Expr {
	e := over("−", sums, first, rest)
	for _, o := range rest {
		e.value = e.value.Sub(o.amount())
	}
	return e
}

// Times is a × b × …
func Times(first Operand, rest ...Operand) Expr {
	e := over("×", products, first, rest)
	for _, o := range rest {
		e.value = e.value.Mul(o.amount())
	}
	return e
}

// Over is a ÷ b, kept exact.
func Over(a, b Operand) Expr {
	return Expr{sign: "÷", binding: products, two: [2]Operand{a, b}, value: a.amount().Div(b.amount())}
}

// Points is the difference of two percents, in points.
func Points(a, b Operand) Expr {
	e := Less(a, b)
	e.value = e.value.In(quantity.Point)
	return e
}

// AsPercent takes points over as percents, for counting up from a moisture.
func AsPercent(points Operand) Expr {
	e := Same(points)
	e.value = e.value.In(quantity.Percent)
	return e
}

// PercentOf is a percent of something, in that something's unit: 0.5 % of
// 52,300 lb is 261.5 lb.
func PercentOf(percent, of Operand) Expr {
	share := percent.amount().Div(hundredPercent)
	return Expr{sign: "×", binding: products, two: [2]Operand{of, percent}, value: of.amount().Mul(share)}
}

var hundredPercent = quantity.Int(100, quantity.Percent)

// Lower is the smaller of two operands.
func Lower(a, b Operand) Choice {
	return Choice{word: message.Words("the lower of"), a: a, b: b, value: quantity.Min(a.amount(), b.amount())}
}

// Higher is the larger of two operands.
func Higher(a, b Operand) Choice {
	return Choice{word: message.Words("the higher of"), a: a, b: b, value: quantity.Max(a.amount(), b.amount())}
}

// Choice takes one of two operands.
type Choice struct {
	word  message.Text
	a, b  Operand
	value quantity.Amount
}

func (c Choice) amount() quantity.Amount { return c.value }

func (c Choice) write(b *strings.Builder, how notation, _ int) {
	b.WriteString(how.printer.Text(c.word) + " (")
	c.a.write(b, how, lowest)
	b.WriteString("; ")
	c.b.write(b, how, lowest)
	b.WriteByte(')')
}

// Const is a figure that belongs to the formula itself, such as the 100 % in
// 100 − Mf.
func Const(a quantity.Amount) Operand { return constant{a} }

type constant struct{ a quantity.Amount }

func (c constant) amount() quantity.Amount { return c.a }

func (c constant) write(b *strings.Builder, how notation, _ int) {
	b.WriteString(figure(how.printer, c.a.String()))
}

// Same returns an operand unchanged, for a step that only records or rounds.
func Same(o Operand) Expr {
	return Expr{binding: highest, two: [2]Operand{o}, value: o.amount()}
}

// Root is the square root of a, rounded once under r: a root seldom terminates, so unlike other
// expressions it cannot be kept exact. See [quantity.Sqrt].
func Root(a Operand, r quantity.Rounding) Expr {
	return Expr{prefix: "√", binding: highest, two: [2]Operand{a}, value: quantity.Sqrt(a.amount(), r)}
}
