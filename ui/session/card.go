package session

import (
	"tenthpoint/internal/slip"
) // Card gathers the lines of a sheet.
type Card struct {
	Session *Session
	Lines   []slip.PaperLine
}

func (c *Card) Add(kind slip.PaperKind, left, right string) {
	c.Lines = append(c.Lines, slip.PaperLine{Kind: kind, Left: left, Right: right})
}

func (c *Card) Noted(kind slip.PaperKind, left, right, note string) {
	c.Lines = append(c.Lines, slip.PaperLine{Kind: kind, Left: left, Right: right, Note: note})
}

func (c *Card) Part(title string) {
	c.Add(slip.PaperHeading, title, "")
}
