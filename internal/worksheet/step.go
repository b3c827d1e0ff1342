package worksheet

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Kind is the origin of a step's figure.
type Kind string

const (
	// Given is a figure from outside: weighed, measured, typed.
	Given Kind = "given"
	// Rate is a figure read from a cell of the edition in force.
	Rate Kind = "rate"
	// Worked is a figure calculated from other steps.
	Worked Kind = "worked"
	// NotApplied is a rule that was considered and changes nothing.
	NotApplied Kind = "not applied"
)

// Step is one line of the working. Its figure never changes once made.
type Step struct {
	id             string
	section, label message.Text
	kind           Kind
	expr           Operand
	exact, value   quantity.Amount
	rounding       quantity.Rounding
	source         message.Text
	note, word     *message.Text // nil on most steps; the word is printed in place of the figure
}

// ID returns the step's stable name, such as "shrink.water"; it is unique on its sheet and the same
// for every load, so two sheets can be compared.
func (s *Step) ID() string { return s.id }

// Section is the heading over the step.
func (s *Step) Section() message.Text { return s.section }

// Label is the step's name for people.
func (s *Step) Label() message.Text { return s.label }

// Kind returns the origin of the step's figure.
func (s *Step) Kind() Kind { return s.kind }

// Exact is the figure before rounding.
func (s *Step) Exact() quantity.Amount { return s.exact }

// Value is the figure as printed and as used by later steps.
func (s *Step) Value() quantity.Amount { return s.value }

// Rounding is the rounding between Exact and Value.
func (s *Step) Rounding() quantity.Rounding { return s.rounding }

// Source is the origin of the figure or the rule: an instrument, a person, an edition's row.
func (s *Step) Source() message.Text { return s.source }

// Note is the remark that belongs to the step; for a rule not applied, the
// reason.
func (s *Step) Note() message.Text {
	if s.note == nil {
		return message.Text{}
	}
	return *s.note
}

// Printed is the value with its unit, in as many decimals as its rounding has.
//
// Figures from outside that are not rounded keep the decimals they were
// written with, and so do sums of such figures: $49.03 and $41.57 make $90.60.
func (s *Step) Printed() string {
	switch {
	case s.word != nil:
		return s.word.String()
	case isPlain(s) && s.rounding.IsExact():
		return s.value.Written()
	}
	return s.value.FixedString(s.rounding.Places())
}

// Said is the figure as a sentence names it: as printed, with its remark in brackets.
func (s *Step) Said() message.Text {
	if s.note == nil {
		return message.New("%s", s.Printed())
	}
	return message.New("%s (%s)", s.Printed(), *s.note)
}

// PrintedIn is Printed in a language.
func (s *Step) PrintedIn(p *message.Printer) string {
	if s.word != nil {
		return p.Text(*s.word)
	}
	return figure(p, s.Printed())
}

// figure is a figure with the signs of a language.
func figure(p *message.Printer, printed string) string { return p.Figures().Write(printed) }

// isPlain reports whether a figure has the decimals it should be printed with:
// it was written or rounded so, or is only a sum, a difference or a choice of
// such figures. A product has the decimals of all its factors.
func isPlain(o Operand) bool {
	switch o := o.(type) {
	case *Step:
		return o.expr == nil || !o.rounding.IsExact() || isPlain(o.expr)
	case constant:
		return true
	case Choice:
		return isPlain(o.a) && isPlain(o.b)
	case Expr:
		return o.adds() && o.allPlain()
	}
	return false
}

// adds reports whether the expression is a sum or a difference.
func (e Expr) adds() bool { return e.prefix == "" && e.sign != "×" && e.sign != "÷" }

func (e Expr) allPlain() bool {
	for _, arg := range e.args() {
		if !isPlain(arg) {
			return false
		}
	}
	return true
}

// Formula is the calculation in the labels of its steps, empty for figures
// from outside.
func (s *Step) Formula() string { return s.FormulaIn(nil) }

// FormulaIn is the formula in a language.
func (s *Step) FormulaIn(p *message.Printer) string {
	return s.written(notation{words: true, printer: p})
}

// Figures is the calculation in numbers, empty for figures from outside.
func (s *Step) Figures() string { return s.FiguresIn(nil) }

// FiguresIn returns the calculation in numbers, with its words translated.
func (s *Step) FiguresIn(p *message.Printer) string { return s.written(notation{printer: p}) }

func (s *Step) written(how notation) string {
	if s.expr == nil {
		return ""
	}
	var b strings.Builder
	s.expr.write(&b, how, lowest)
	return b.String()
}

// Uses lists the steps that this one was calculated from, in the order of the expression, each
// once.
func (s *Step) Uses() []*Step {
	var out []*Step
	seen := map[*Step]bool{}
	var walk func(o Operand)
	walk = func(o Operand) {
		switch o := o.(type) {
		case *Step:
			if !seen[o] {
				seen[o] = true
				out = append(out, o)
			}
		case Expr:
			for _, a := range o.args() {
				walk(a)
			}
		case Choice:
			walk(o.a)
			walk(o.b)
		}
	}
	if s.expr != nil {
		walk(s.expr)
	}
	return out
}

func (s *Step) amount() quantity.Amount { return s.value }

func (s *Step) write(b *strings.Builder, how notation, _ int) {
	if how.words {
		b.WriteString(how.printer.Text(s.label))
		return
	}
	b.WriteString(s.PrintedIn(how.printer))
}
