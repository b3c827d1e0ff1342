package worksheet

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/textwrap"
)

// Text writes the sheet out for people, width characters wide: each step's
// label with its figure at the right edge, and below it the calculation in
// figures, the rounding, the rule's source and any reason. The same sheet
// always gives the same text.
func (s *Sheet) Text(width int) string { return s.TextIn(width, nil) }

// TextIn writes the sheet out in a language.
func (s *Sheet) TextIn(width int, say Translate) string {
	var b strings.Builder
	section := ""
	for _, step := range s.steps {
		if step.section != section {
			section = step.section
			fmt.Fprintf(&b, "\n%s\n", strings.ToUpper(say.text(section)))
		}
		step.text(&b, width, say)
	}
	return strings.TrimPrefix(b.String(), "\n")
}

func (s *Step) text(b *strings.Builder, width int, say Translate) {
	figure := s.PrintedIn(say)
	if s.kind == NotApplied {
		figure = say.text("none")
	}
	b.WriteString(spread(say.text(s.label), figure, width))
	for _, line := range s.ExplainIn(say) {
		for _, part := range textwrap.Lines(unbroken(line), textwrap.InWidth(width-4)) {
			b.WriteString("    " + part + "\n")
		}
	}
}

// Explain is the small print of a step, a line each: the calculation in
// figures with its exact result and rounding, the reason or remark, the
// source.
func (s *Step) Explain() []string { return s.ExplainIn(nil) }

// ExplainIn is the small print of a step in a language.
func (s *Step) ExplainIn(say Translate) []string {
	var lines []string
	if result := s.result(say); result != "" {
		lines = append(lines, result)
	}
	if s.note != "" {
		lines = append(lines, say.text(s.note))
	}
	if s.source != "" {
		lines = append(lines, "["+say.text(s.source)+"]")
	}
	return lines
}

// result is the calculation in figures with its result, or for a figure from outside its rounding;
// empty when there is nothing to add to the figure itself.
func (s *Step) result(say Translate) string {
	figures, printed := s.FiguresIn(say), s.PrintedIn(say)
	isRounded := !s.exact.Equal(s.value)
	switch {
	case s.expr == nil && isRounded:
		return say.text(s.exact.Written()) + s.roundingWords(say)
	case figures == "" || figures == printed:
		return ""
	case isRounded:
		return figures + " = " + say.text(s.exact.String()) + s.roundingWords(say)
	}
	return figures + " = " + printed
}

func (s *Step) roundingWords(say Translate) string {
	step := say.text(quantity.New(s.rounding.Step, s.value.Unit()).Written())
	rounded := fmt.Sprintf(say.text("to %s, %s"), step, say.text(string(s.rounding.Rule)))
	return fmt.Sprintf(" → %s (%s)", s.PrintedIn(say), rounded)
}

// spread sets left and right at the two edges of a line.
func spread(left, right string, width int) string {
	gap := width - utf8.RuneCountInString(left) - utf8.RuneCountInString(right)
	if gap < 1 {
		gap = 1
	}
	return left + strings.Repeat(" ", gap) + right + "\n"
}

// unbroken are the words of a line, a figure and its unit being one.
func unbroken(line string) []string {
	var out []string
	for _, word := range textwrap.Fields(line) {
		if last := len(out) - 1; last >= 0 && endsInFigure(out[last]) && startsAsUnit(word) {
			out[last] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}

func endsInFigure(word string) bool {
	last, _ := utf8.DecodeLastRuneInString(word)
	return last == '…' || last >= '0' && last <= '9'
}

func startsAsUnit(word string) bool {
	first, _ := utf8.DecodeRuneInString(word)
	return first == '%' || first == '°' || unicode.IsLetter(first)
}
