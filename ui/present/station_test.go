package present

import (
	"context"
	"errors"
	"tenthpoint/internal/quantity"
) // display is a truck scale of a test.
type display struct {
	weight quantity.Amount
	atRest bool
	err    error
}

func (d *display) Latest() (quantity.Amount, bool, error) { return d.weight, d.atRest, d.err }

func (d *display) Weigh(context.Context) (quantity.Amount, error) {
	if d.err == nil && !d.atRest {
		return quantity.Amount{}, errors.New("the scale is still moving")
	}
	return d.weight, d.err
}

func lb(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }

// desktop is a station made of notes.
type desktop struct {
	memory  map[string]string
	way     string
	queue   string
	folders []string
	linked  int
	linkErr error
}

func (d *desktop) Recall(name string) string { return d.memory[name] }

func (d *desktop) Remember(name, text string) { d.memory[name] = text }

func (d *desktop) MakeFolder(path string) error { d.folders = append(d.folders, path); return nil }

func (d *desktop) Relink() error { d.linked++; return d.linkErr }

func (d *desktop) SendPapers(way, queue string) error {
	if way == ToQueue && queue == "broken" {
		return errors.New("there is no queue called broken")
	}
	d.way, d.queue = way, queue
	return nil
}
