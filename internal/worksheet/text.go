package worksheet

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/textwrap"
)

// Text writes the sheet out for people, width characters wide: each step's
// label with its figure at the right edge, and below it the calculation in
// figures, the rounding, the rule's source and any reason. The same sheet
// always gives the same text.
func (s *Sheet) Text(width int) string { return s.TextIn(width, nil) }

// TextIn writes the sheet out in a language.
func (s *Sheet) TextIn(width int, p *message.Printer) string {
	var b strings.Builder
	for _, under := range s.Sections() {
		if !under.Title.IsZero() {
			fmt.Fprintf(&b, "\n%s\n", strings.ToUpper(p.Text(under.Title)))
		}
		for _, step := range under.Steps {
			step.text(&b, width, p)
		}
	}
	return strings.TrimPrefix(b.String(), "\n")
}

func (s *Step) text(b *strings.Builder, width int, p *message.Printer) {
	printed := s.PrintedIn(p)
	if s.kind == NotApplied {
		printed = p.Say("none")
	}
	b.WriteString(spread(p.Text(s.label), printed, width))
	for _, line := range s.ExplainIn(p) {
		for _, part := range textwrap.Lines(textwrap.Words(line), textwrap.InWidth(width-4)) {
			b.WriteString("    " + part + "\n")
		}
	}
}

// Explain is the small print of a step, a line each: the calculation in
// figures with its exact result and rounding, the reason or remark, the
// source.
func (s *Step) Explain() []string { return s.ExplainIn(nil) }

// ExplainIn is the small print of a step in a language.
func (s *Step) ExplainIn(p *message.Printer) []string { return s.ExplainAs(p, s.Note(), s.source) }

// ExplainAs is the small print with another remark and source.
func (s *Step) ExplainAs(p *message.Printer, note, source message.Text) []string {
	lines := make([]string, 0, 3)
	if result := s.result(p); result != "" {
		lines = append(lines, result)
	}
	if said := p.Text(note); said != "" {
		lines = append(lines, said)
	}
	if said := p.Text(source); said != "" {
		lines = append(lines, "["+said+"]")
	}
	return lines
}

// result is the calculation in figures with its result, or for a figure from outside its rounding;
// empty when there is nothing to add to the figure itself.
func (s *Step) result(p *message.Printer) string {
	isRounded := !s.exact.Equal(s.value)
	if s.expr == nil {
		if isRounded {
			return figure(p, s.exact.Written()) + s.roundingWords(p, s.PrintedIn(p))
		}
		return ""
	}
	figures, printed := s.FiguresIn(p), s.PrintedIn(p)
	switch {
	case figures == printed:
		return ""
	case isRounded:
		return figures + " = " + figure(p, s.exact.String()) + s.roundingWords(p, printed)
	}
	return figures + " = " + printed
}

func (s *Step) roundingWords(p *message.Printer, printed string) string {
	step := figure(p, quantity.New(s.rounding.Step, s.value.Unit()).Written())
	return fmt.Sprintf(" → %s (%s)", printed, p.Say("to %s, %s", message.Own(step), string(s.rounding.Rule)))
}

// spread sets left and right at the two edges of a line.
func spread(left, right string, width int) string {
	gap := width - utf8.RuneCountInString(left) - utf8.RuneCountInString(right)
	if gap < 1 {
		gap = 1
	}
	return left + strings.Repeat(" ", gap) + right + "\n"
}
