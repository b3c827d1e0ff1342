package present

import (
	"tenthpoint/internal/slip"
) // card gathers the lines of a sheet.
type card struct {
	frame *Frame
	lines []slip.PaperLine
}

func (c *card) add(kind slip.PaperKind, left, right string) {
	c.lines = append(c.lines, slip.PaperLine{Kind: kind, Left: left, Right: right})
}

func (c *card) noted(kind slip.PaperKind, left, right, note string) {
	c.lines = append(c.lines, slip.PaperLine{Kind: kind, Left: left, Right: right, Note: note})
}

func (c *card) part(title string) {
	c.add(slip.PaperHeading, title, "")
}
