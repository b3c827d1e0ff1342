package sessiontest

import (
	"context"
	"errors"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/session"
)

// FakeScale is a truck scale of a test. What is neither at rest nor in another
// condition is moving.
type FakeScale struct {
	Weight    quantity.Amount
	AtRest    bool
	Condition session.Condition
	Err       error
}

func (d *FakeScale) Latest() (session.Display, error) {
	condition := d.Condition
	if !d.AtRest && condition == session.AtRest {
		condition = session.Moving
	}
	return session.Display{Weight: d.Weight, Condition: condition}, d.Err
}

func (d *FakeScale) Weigh(context.Context) (quantity.Amount, error) {
	if d.Err == nil && !d.AtRest {
		return quantity.Amount{}, errors.New("the scale is still moving")
	}
	return d.Weight, d.Err
}

func Lb(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }

// FakeStation is a station made of notes.
type FakeStation struct {
	Memory  map[string]string
	Way     string
	Queue   string
	Folders []string
	Linked  int
	LinkErr error
}

func (d *FakeStation) Recall(name string) string { return d.Memory[name] }

func (d *FakeStation) Remember(name, text string) { d.Memory[name] = text }

func (d *FakeStation) MakeFolder(path string) error { d.Folders = append(d.Folders, path); return nil }

func (d *FakeStation) Relink() error { d.Linked++; return d.LinkErr }

func (d *FakeStation) SendPapers(way, queue string) error {
	if way == session.ToQueue && queue == "broken" {
		return errors.New("there is no queue called broken")
	}
	d.Way, d.Queue = way, queue
	return nil
}
