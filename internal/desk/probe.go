package desk

import (
	"context"
	"fmt"
	"strings"

	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
)

// Probed is what the probe brought up, written down before anything is tested:
// the number goes on the can.
type Probed struct {
	// Number is the sample's, where the house numbers by a roll of its own;
	// empty takes the next of the book.
	Number string
	Probes []moisture.Probe
	// Place is where the part is kept that is not tested; empty keeps none.
	Place string
}

// Probe writes down that a load was probed and gives its sample's number. The
// day from which the kept part may go follows from the house's rule.
func (d *Desk) Probe(ctx context.Context, id string, p Probed) (number string, err error) {
	keep, err := d.Retention(ctx)
	if err != nil && p.Place != "" {
		return "", err
	}
	err = d.one(ctx, func(w *Work) error {
		number, err = w.Probe(id, p, keep)
		return err
	})
	return number, err
}

// Probe is [Desk.Probe] as part of the work, under a rule of retention.
func (w *Work) Probe(id string, p Probed, keep moisture.Retention) (string, error) {
	l, err := w.load(id)
	if err != nil {
		return "", err
	}
	s := l.Sample
	if s.Number == "" || p.Number != "" && p.Number != s.Number {
		if s.Number, err = w.sampleNumber(id, p.Number); err != nil {
			return "", err
		}
	}
	if s.Tester == "" {
		s.Tester = w.desk.whoOrNobody()
	}
	s.Probes, s.Kept, s.Until = probeWords(p.Probes), p.Place, quantity.Date{}
	taken := moisture.Sample{
		Number: s.Number, Crop: l.Details.Commodity, Taken: w.desk.Today(), By: s.Tester,
		Probes: p.Probes, Place: p.Place, Keep: keep,
	}
	if wrong := inWords(taken.Check()); len(wrong) > 0 {
		return "", sentences(wrong)
	}
	if p.Place != "" {
		s.Until = taken.KeepThrough()
	}
	return s.Number, w.Sample(id, s)
}

// probeWords are the probes as the slip prints them: "3: left front, right
// rear (musty), middle".
func probeWords(probes []moisture.Probe) string {
	var places []string
	for _, p := range probes {
		place := p.Place
		if p.Note != "" {
			place += " (" + p.Note + ")"
		}
		if place != "" {
			places = append(places, place)
		}
	}
	if len(places) == 0 {
		return fmt.Sprint(len(probes))
	}
	return fmt.Sprintf("%d: %s", len(probes), strings.Join(places, ", "))
}

// sampleNumber takes the number asked for, or the next of the book. Two samples
// on the shelf with one number would be a dispute nobody can settle.
func (w *Work) sampleNumber(id, asked string) (string, error) {
	if asked = strings.TrimSpace(asked); asked != "" {
		other, err := w.loadOfSample(id, asked)
		if err == nil && other != "" {
			err = fmt.Errorf("sample number %s is on load %s already. Take another number", asked, other)
		}
		return asked, err
	}
	for {
		n, err := w.tx.NextNumber("sample")
		if err != nil {
			return "", err
		}
		number := fmt.Sprintf("S%d", n)
		if other, err := w.loadOfSample(id, number); err != nil || other == "" {
			return number, err
		}
	}
}

// loadOfSample is another load that carries a sample's number, if one does.
func (w *Work) loadOfSample(id, number string) (other string, err error) {
	if err := w.renewRows(); err != nil {
		return "", err
	}
	err = w.tx.QueryRow("SELECT coalesce(min(id), '') FROM loads WHERE sample = ? AND id <> ?", number, id).Scan(&other)
	return other, err
}
