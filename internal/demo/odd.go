package demo

import (
	"context"
	"strings"
	"time"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// oddity is an unusual course of a visit.
type oddity struct {
	late         bool // the sample comes back after the truck is empty
	storedTare   bool
	drafts       bool // truck and trailer weighed apart
	byHand       bool
	grossByHand  bool
	why          string // a weight was typed by hand
	weighedTwice bool
	misnamed     bool // opened under another grower, then amended
	beyond       bool // a result over a limit
	accepted     bool // by the manager
	refused      string
	voided       string
	corrected    string
}

// How often, of a thousand loads.
const (
	lateOf         = 300
	storedTareOf   = 280
	draftsOf       = 400 // of trucks with a trailer
	byHandOf       = 8
	weighedTwiceOf = 10
	misnamedOf     = 15
	beyondOf       = 8
	refusedOf      = 4
	voidedOf       = 6
	correctedOf    = 9
)

func drawOddity(c *chance, t truck) oddity {
	o := oddity{
		late: c.in1000(lateOf), weighedTwice: c.in1000(weighedTwiceOf), misnamed: c.in1000(misnamedOf),
		beyond: c.in1000(beyondOf), accepted: c.in1000(600),
		drafts: t.build.drafts && c.in1000(draftsOf),
	}
	o.storedTare = t.Tare != nil && !o.drafts && c.in1000(storedTareOf)
	if c.in1000(byHandOf) && !o.drafts {
		o.byHand, o.grossByHand, o.why = true, o.storedTare || c.in1000(500), pick(c, whyByHand)
	}
	switch {
	case c.in1000(refusedOf):
		o.refused = pick(c, whyRefused)
	case c.in1000(voidedOf):
		o.voided = pick(c, whyVoid)
	case c.in1000(correctedOf):
		o.corrected = pick(c, []string{wrongTare, wrongMoisture, wrongGrower})
	}
	return o
}

var (
	whyByHand  = []string{"indicator dark, read from the beam", "power was out", "indicator would not settle, read by eye"}
	whyRefused = []string{"hot and musty at the probe", "live insects at the probe", "sour smell; sent home", "driver would not wait"}
	whyVoid    = []string{"issued under the wrong truck", "dumped at another elevator after all", "weighed with the driver on"}
)

// Why a ticket is corrected.
const (
	wrongTare     = "tare read one line too high"
	wrongMoisture = "moisture of the truck before was typed"
	wrongGrower   = "delivered for another grower"
)

// oddActs are the acts that most visits do without.
func (v *visit) oddActs(weighed, done time.Time) []act {
	var acts []act
	if v.odd.refused != "" {
		acts = append(acts, act{weighed.Add(40 * time.Second), v.clerk, v.turnAway})
	}
	if v.odd.misnamed {
		acts = append(acts, act{weighed.Add(20 * time.Second), v.clerk, func(ctx context.Context, w *scalehouse.Batch) error {
			if v.gone {
				return nil
			}
			return scalehouse.Amend(ctx, w, v.id, v.details)
		}})
	}
	if v.odd.voided != "" {
		acts = append(acts, act{done.Add(v.seconds(300, 1200)), Manager, v.void})
	}
	if v.odd.corrected != "" {
		v.season.later = append(v.season.later, act{v.season.nextMorning(v.day, v.seconds(0, 7200)), Manager, v.correct})
	}
	return acts
}

// nextMorning is an hour of the day after.
func (s *season) nextMorning(day int, after time.Duration) time.Time {
	return s.hour(s.first.AddDays(day+1), 7, 0).Add(after)
}

func (v *visit) turnAway(ctx context.Context, w *scalehouse.Batch) error {
	v.gone = true
	return scalehouse.Refuse(ctx, w, v.id, v.odd.refused)
}

// beyondLimit lets the manager accept what may be accepted; all else is turned
// away.
func (v *visit) beyondLimit(ctx context.Context, w *scalehouse.Batch, problems settle.Problems) error {
	for _, p := range problems {
		if p.Accept == "" || !v.odd.accepted {
			v.odd.refused = strings.TrimSuffix(i18n.In(v.season.Language).Text(p.Sentence), ".") // as a clerk would write it
			return v.turnAway(ctx, w)
		}
	}
	at := v.season.clock
	if err := v.season.as(Manager, at); err != nil {
		return err
	}
	for _, p := range problems {
		if err := scalehouse.Accept(ctx, w, v.id, p.Accept, "taken for the flat store, blended off"); err != nil {
			return err
		}
	}
	if err := v.season.as(v.clerk, at); err != nil {
		return err
	}
	v.odd.accepted = false // accepted once: any other limit turns it away
	return v.issue(ctx, w)
}

func (v *visit) void(ctx context.Context, w *scalehouse.Batch) error {
	if v.number == 0 {
		return nil
	}
	return scalehouse.Void(ctx, w, v.number, v.odd.voided)
}

// correct issues a ticket in place of one that was wrong.
func (v *visit) correct(ctx context.Context, w *scalehouse.Batch) error {
	if v.number == 0 {
		return nil
	}
	id, err := scalehouse.Correct(ctx, w, v.number, v.odd.corrected)
	if err != nil {
		return err
	}
	if err := v.mend(ctx, w, id); err != nil {
		return err
	}
	number, err := issue(ctx, w, v.season, id)
	if err != nil {
		return err
	}
	_, err = scalehouse.RecordPrint(ctx, w, number)
	return err
}

// mend corrects the mistake on the ticket.
func (v *visit) mend(ctx context.Context, w *scalehouse.Batch, id string) error {
	switch v.odd.corrected {
	case wrongTare:
		tare := draft(load.Tare, "", v.truck.empty-divisionLb*v.season.chance.between(1, 5))
		if v.odd.drafts {
			tare.Draft, tare.Weight = "trailer", lb(v.truck.empty/2-v.truck.empty/2%divisionLb-divisionLb)
		}
		return scalehouse.Weigh(ctx, w, id, byHand(tare, wrongTare))
	case wrongMoisture:
		again := v.sample
		moisture := *again.Moisture
		moisture.Percent = moisture.Percent.Add(figure(v.season.chance.between(2, 9)*10, quantity.Percent))
		moisture.Reason = wrongMoisture
		again.Moisture = &moisture
		return scalehouse.RecordSample(ctx, w, id, again)
	}
	changed := v.details
	other := pick(v.season.chance, growers)
	changed.Grower, changed.Shares = load.Party{ID: other.ID, Name: other.Name}, owners(other)
	changed.Under, changed.Terms.No, changed.Price, changed.PriceSource = title.OpenStorage, "", nil, ""
	return scalehouse.Amend(ctx, w, id, changed)
}
