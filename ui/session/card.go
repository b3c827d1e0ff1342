package session

import (
	"tenthpoint/internal/scaleticket"
) // Card gathers the lines of a sheet.
type Card struct {
	Session *Session
	Lines   []scaleticket.PaperLine
}

func (c *Card) Add(kind scaleticket.PaperKind, left, right string) {
	c.Lines = append(c.Lines, scaleticket.PaperLine{Kind: kind, Left: left, Right: right})
}

func (c *Card) Noted(kind scaleticket.PaperKind, left, right, note string) {
	c.Lines = append(c.Lines, scaleticket.PaperLine{Kind: kind, Left: left, Right: right, Note: note})
}

func (c *Card) Part(title string) {
	c.Add(scaleticket.PaperHeading, title, "")
}
