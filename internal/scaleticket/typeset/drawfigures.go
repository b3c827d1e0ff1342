package typeset

import (
	"strings"

	"tenthpoint/internal/scaleticket"
)

// headline is the figures people look for first, large enough to read at arm's
// length: side by side between two rules.
func headline(s scaleticket.Section, width float64) block {
	const between, pad = 10.0, 5.0
	size := headlineSize(s.Lines, width-between*float64(len(s.Lines)-1))
	big := figureStyle.sized(size)
	height := pad + labelStyle.leading() + figureStyle.leading() + pad*0.6
	return block{above: 8, height: height, draw: func(c canvas, x, y float64) {
		c.line(x, y, x+width, y, 1.4, leaf)
		c.line(x, y+height, x+width, y+height, 0.6, leaf)
		spare := width
		for _, l := range s.Lines {
			spare -= figureWidth(l, size)
		}
		step := spare / float64(len(s.Lines)-1)
		for _, l := range s.Lines {
			c.text(x, y+pad+labelStyle.baseline(), upper(l.Label), labelStyle.in(leaf))
			figure(c, x, y+pad+labelStyle.leading()+figureStyle.baseline(), l, big)
			x += figureWidth(l, size) + step
		}
	}}
}

// headlineSize is the largest size in which all figures stand side by side.
func headlineSize(lines []scaleticket.Line, room float64) float64 {
	for size := figureStyle.size; size > 7; size -= 0.5 {
		sum := 0.0
		for _, l := range lines {
			sum += figureWidth(l, size)
		}
		if sum <= room {
			return size
		}
	}
	return 7
}

// figureWidth is what a figure takes with its label above it.
func figureWidth(l scaleticket.Line, size float64) float64 {
	return max(labelStyle.width(upper(l.Label)), figureOnlyWidth(l, size))
}

func figureOnlyWidth(l scaleticket.Line, size float64) float64 {
	number, unit, isFigure := figureAndUnit(l.Value)
	if !isFigure {
		return figureStyle.sized(size * 0.56).width(l.Value)
	}
	w := figureStyle.sized(size).width(number)
	if unit != "" {
		w += unitSpace + unitStyle.width(unit)
	}
	return w
}

const unitSpace = 2.5

// figure writes a number large with its unit small; words that stand for a
// figure are written smaller.
func figure(c canvas, x, baseline float64, l scaleticket.Line, big style) {
	number, unit, isFigure := figureAndUnit(l.Value)
	if !isFigure {
		look := big.sized(big.size * 0.56).in(quiet)
		if l.Missing {
			look = look.in(stop)
		}
		c.text(x, baseline, l.Value, look)
		return
	}
	c.text(x, baseline, number, big)
	if unit != "" {
		c.text(x+big.width(number)+unitSpace, baseline, unit, unitStyle)
	}
}

// figureAndUnit parts "52,300 lb"; false for words such as "price not set".
func figureAndUnit(value string) (number, unit string, isFigure bool) {
	number, unit, _ = strings.Cut(value, " ")
	return number, unit, strings.ContainsAny(number, "0123456789")
}

func upper(text string) string { return strings.ToUpper(text) }
