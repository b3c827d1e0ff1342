package session

import (
	"tenthpoint/ui/model"
) // Card gathers the lines of a sheet.
type Card struct {
	Session *Session
	Lines   []model.CardLine
}

func (c *Card) Add(kind model.CardKind, left, right string) {
	c.Lines = append(c.Lines, model.CardLine{Kind: kind, Left: left, Right: right})
}

func (c *Card) Noted(kind model.CardKind, left, right, note string) {
	c.Lines = append(c.Lines, model.CardLine{Kind: kind, Left: left, Right: right, Note: note})
}

func (c *Card) Part(title string) {
	c.Add(model.CardHeading, title, "")
}
