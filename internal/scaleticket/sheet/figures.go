package sheet

import (
	"strings"

	"tenthpoint/internal/paper"
	"tenthpoint/internal/scaleticket"
)

// headline is the figures people look for first, large enough to read at arm's
// length: side by side between two rules.
func headline(s scaleticket.Section, width paper.Length) paper.Block {
	const between, pad = 10 * paper.Point, 5 * paper.Point
	size := headlineSize(s.Lines, width-between*paper.Length(len(s.Lines)-1))
	big := figureStyle.Sized(size)
	b := paper.Block{Above: 8 * paper.Point, Height: pad + labelStyle.Leading() + figureStyle.Leading() + pad*6/10}
	b.Line(0, 0, width, 0, 1.4*paper.Point, leaf)
	b.Line(0, b.Height, width, b.Height, 0.6*paper.Point, leaf)
	spare := width
	for _, l := range s.Lines {
		spare -= figureWidth(l, size)
	}
	step, x := spare/paper.Length(max(1, len(s.Lines)-1)), paper.Length(0)
	for _, l := range s.Lines {
		b.Text(x, pad+labelStyle.Baseline(), upper(l.Label), labelStyle.In(leaf))
		figure(&b.Marks, x, pad+labelStyle.Leading()+figureStyle.Baseline(), l, big)
		x += figureWidth(l, size) + step
	}
	return b.Named(fieldsOf(s.Lines)...).Summing()
}

// leastFigure is the size below which figures are not set, even if they do not fit.
const leastFigure = 7 * paper.Point

// headlineSize returns the largest size in which all figures fit side by side.
func headlineSize(lines []scaleticket.Line, room paper.Length) paper.Length {
	for size := figureStyle.Size; size > leastFigure; size -= paper.Point / 2 {
		sum := paper.Length(0)
		for _, l := range lines {
			sum += figureWidth(l, size)
		}
		if sum <= room {
			return size
		}
	}
	return leastFigure
}

// figureWidth returns the width of a figure with its label above it.
func figureWidth(l scaleticket.Line, size paper.Length) paper.Length {
	return max(labelStyle.Width(upper(l.Label)), figureOnlyWidth(l, size))
}

func figureOnlyWidth(l scaleticket.Line, size paper.Length) paper.Length {
	number, unit, isFigure := figureAndUnit(l.Value)
	if !isFigure {
		return figureStyle.Sized(size * 56 / 100).Width(l.Value)
	}
	w := figureStyle.Sized(size).Width(number)
	if unit != "" {
		w += unitSpace + unitStyle.Width(unit)
	}
	return w
}

const unitSpace = 2.5 * paper.Point

// figure writes a number large with its unit small; words in place of a figure are written smaller.
func figure(m *paper.Marks, x, baseline paper.Length, l scaleticket.Line, big paper.Style) {
	number, unit, isFigure := figureAndUnit(l.Value)
	if !isFigure {
		look := big.Sized(big.Size * 56 / 100).In(quiet)
		if l.Missing {
			look = look.In(stop)
		}
		m.Text(x, baseline, l.Value, look)
		return
	}
	m.Text(x, baseline, number, big)
	m.Text(x+big.Width(number)+unitSpace, baseline, unit, unitStyle)
}

// figureAndUnit parts "52,300 lb", also where the language keeps them together by a no-break space;
// money stays whole. False for words such as "price not set".
func figureAndUnit(value string) (number, unit string, isFigure bool) {
	number, unit, _ = strings.Cut(value, " ")
	if before, after, there := strings.Cut(value, "\u00a0"); there && unit == "" && !strings.HasPrefix(after, "$") {
		number, unit = before, after
	}
	return number, unit, strings.ContainsAny(number, "0123456789")
}

func upper(text string) string { return strings.ToUpper(text) }
