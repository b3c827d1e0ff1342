package report

import "tenthpoint/internal/paper"

const pt = paper.Point

// The letters of a paper, in greys that every printer has.
var (
	plainStyle   = style(9*pt, 0)
	smallStyle   = style(7.5*pt, 70)
	houseStyle   = style(11*pt, 0).Strong()
	titleStyle   = style(15*pt, 0).Strong()
	aboutStyle   = style(10*pt, 0)
	markStyle    = style(9.5*pt, 0).Strong()
	footStyle    = style(7*pt, 70)
	headingStyle = style(11*pt, 0).Strong()
	stepStyle    = style(8.5*pt, 0)
	skippedStyle = style(8.5*pt, 90)
	explainStyle = style(7*pt, 60)
	partStyle    = style(9.5*pt, 0).Strong()
	barStyle     = style(7*pt, 40)
)

func style(size paper.Length, grey uint8) paper.Style {
	return paper.Style{Size: size, Ink: paper.Grey(grey), Lead: paper.LooseLead}
}

var (
	black   = paper.Grey(0)
	noInk   = paper.Ink{}
	barInk  = paper.Grey(110)
	ruleInk = paper.Grey(150)
	rowInk  = paper.Grey(205)
)

// wrap breaks a text into lines no wider than width. No text is one empty line.
func wrap(text string, width paper.Length, s paper.Style) []string {
	return orEmptyLine(s.Wrap(text, width))
}
