package scalehouse

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// Probed is the probe sample, recorded before anything is tested: the number goes on the can.
type Probed struct {
	// Number is the sample's, where the elevator has its own numbering; empty takes the next of the
	// book.
	Number string
	Probes []moisture.Probe
	// Place is the shelf of the untested part; empty keeps none.
	Place string
}

// Probe records that a load was probed and gives its sample's number. The day from which the kept
// part may go follows from the elevator's rule.
func Probe(ctx context.Context, at Actor, id string, p Probed) (number string, err error) {
	return result(ctx, at, func(w *Batch) (string, error) {
		keep, err := office.RetentionRule(ctx, w.desk)
		if err != nil && p.Place != "" {
			return "", err
		}
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
			s.Tester = w.desk.Signature()
		}
		s.Probes, s.Kept, s.Until = probeWords(p.Probes), p.Place, quantity.Date{}
		taken := moisture.Sample{
			Number: s.Number, Crop: l.Details.Commodity, Taken: w.desk.Today(), By: s.Tester,
			Probes: p.Probes, Place: p.Place, Keep: keep,
		}
		if wrong := errors.Join(taken.Check()...); wrong != nil {
			return "", wrong
		}
		if p.Place != "" {
			s.Until = taken.KeepThrough()
		}
		return s.Number, RecordSample(ctx, w, id, s)
	})
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

// sampleNumber takes the number asked for, or the next of the book. Two samples on the shelf with
// one number would make disputes unresolvable.
func (w *Batch) sampleNumber(id, asked string) (string, error) {
	if asked = strings.TrimSpace(asked); asked != "" {
		other, err := loadOfSample(w, id, asked)
		if err == nil && other != "" {
			err = message.Refused.Errorf("sample number %s is on load %s already. Take another number", asked, other)
		}
		return asked, err
	}
	for {
		n, err := w.tx.NextNumber(numbering.Sample)
		if err != nil {
			return "", err
		}
		number := fmt.Sprintf("S%d", n)
		if other, err := loadOfSample(w, id, number); err != nil || other == "" {
			return number, err
		}
	}
}

// loadOfSample is another load that carries a sample's number, if one does.
func loadOfSample(w *Batch, id, number string) (other string, err error) {
	if err := w.renewRows(""); err != nil {
		return "", err
	}
	rows, err := w.tx.Loads(book.LoadFilter{Sample: number})
	for _, r := range rows {
		if r.ID != id && (other == "" || r.ID < other) {
			other = r.ID
		}
	}
	return other, err
}

// DiscardSamples records that retained samples were thrown out today, all of them or none. One that
// must still be kept, or that a dispute needs, is refused.
func DiscardSamples(ctx context.Context, d *Desk, names ...string) error {
	kept, err := office.SamplesKept(ctx, d)
	if err != nil {
		return err
	}
	gone := make([]office.SampleDiscarded, len(names))
	for i, name := range names {
		if gone[i], err = discarded(kept, name, d.Today()); err != nil {
			return err
		}
	}
	return d.Batch(ctx, func(w *Batch) error {
		for _, f := range gone {
			if err := SetRecord(ctx, w, f.Load, f); err != nil {
				return err
			}
		}
		return nil
	})
}

// discarded is the fact that a sample was thrown out, where it may be.
func discarded(kept []office.Retained, name string, today quantity.Date) (office.SampleDiscarded, error) {
	r, err := office.SampleNamed(kept, name)
	switch {
	case err != nil:
		return office.SampleDiscarded{}, err
	case !r.Held.IsZero():
		return office.SampleDiscarded{}, message.Refused.Errorf("sample %s is held for %s. Leave it on %s until that is decided", name, r.Held, r.Place)
	case !today.After(r.Until):
		return office.SampleDiscarded{}, message.Refused.Errorf("sample %s is to be kept through %s, and today is %s. Discard it from %s on", name, r.Until, today, r.Until.AddDays(1))
	}
	return office.SampleDiscarded{Load: r.Load, Number: r.Number, Place: r.Place, Until: r.Until, Day: today}, nil
}
