package lab

import (
	"context"
	"errors"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Type takes the text that now stands in a field.
func (b *Bench) Type(id, text string) {
	s := b.hand
	switch {
	case id == "load":
		b.take(text)
		return
	case s.isOther(id):
		s.form.Type(id, text)
	default:
		s.typed[id] = text
	}
	switch id {
	case "method":
		b.last.method, b.last.meter = text, b.meterFor(meter.Method(text))
		s.typed["meter"] = b.last.meter
	case "meter":
		b.last.meter = text
	case "grain":
		s.workTests()
	}
	s.work()
	b.jot()
}

// meterFor is the meter to offer for a method: the one used last, or the first.
func (b *Bench) meterFor(m meter.Method) string {
	first := ""
	for _, meter := range b.equipment.Meters {
		if meter.Method != m {
			continue
		}
		if meter.ID == b.last.meter {
			return meter.ID
		}
		if first == "" {
			first = meter.ID
		}
	}
	return first
}

// take follows what is typed in the field of loads.
func (b *Bench) take(id string) {
	switch id {
	case "", b.hand.id(): // typed over, but not yet another
	case withoutLoad:
		b.Take("")
	default:
		b.Take(id)
	}
}

// Restore forgets what was typed in a field, and reports whether that changed
// anything.
func (b *Bench) Restore(id string) bool {
	s := b.hand
	defer b.jot()
	if s.isOther(id) {
		return s.form.Restore(id)
	}
	if s.typed[id] == "" || id == "load" || id == "method" || id == "meter" || id == "grain" {
		return false
	}
	delete(s.typed, id)
	s.work()
	return true
}

// Enter is Enter in a field. In the last figure of a test it makes the test;
// a figure that cannot stand keeps the keyboard. It answers the field to go to,
// empty for the one that follows.
func (b *Bench) Enter(id string) (next string) {
	s := b.hand
	if s.next.remarks[id].State == model.Stop && s.typed[id] != "" && id != "chart" && id != "meter" {
		b.session.Say(model.Stop, s.next.remarks[id].Text)
		return id
	}
	if id != lastField(s.method()) || strings.TrimSpace(s.typed[id]) == "" {
		return ""
	}
	if err := b.Add(); err != nil {
		b.session.Fail(err)
		return id
	}
	if s.isTested() && s.found.testing.Result.More == 0 {
		return ""
	}
	return firstFigure(s.method())
}

// firstFigure is where a further test of the same sample begins: mass and
// temperatures stay as they were.
func firstFigure(m meter.Method) string {
	return map[meter.Method]string{meter.ByDial: "dial", meter.Direct: "percent", meter.ByOven: "wet", meter.Typed: "percent"}[m]
}

// Add makes the test that is typed. It is kept whatever the others say; what
// they come to together is told after.
func (b *Bench) Add() error {
	s := b.hand
	if s.crop() == "" {
		return errors.New(session.Say("say first what grain it is"))
	}
	if _, err := s.workAlone(s.next.reading); err != nil {
		return err
	}
	s.tests.Readings = append(slices.Clone(s.tests.Readings), s.next.reading)
	for _, id := range []string{"dial", "percent", "wet", "tare", "dry", "reason"} {
		delete(s.typed, id)
	}
	s.workTests()
	s.work()
	b.keep()
	b.sayTests()
	b.session.Window.Redraw()
	return nil
}

// workAlone works one test out by itself.
func (s *SampleTest) workAlone(r moisture.Reading) (scalehouse.Testing, error) {
	alone := moisture.Tests{Readings: []moisture.Reading{r}}
	return scalehouse.TestSample(context.Background(), s.bench.session.Desk, s.subject(), alone)
}

// sayTests repeats on the status line what the tests come to.
func (b *Bench) sayTests() {
	s := b.hand
	if s.found.fault != nil {
		b.session.Say(model.Stop, session.Sentence(s.found.fault))
		return
	}
	r := s.found.testing.Result
	text := session.Say("Test %d is made; the moisture is %s.", len(s.tests.Readings), r.Moisture.Printed())
	if r.More > 0 {
		b.session.Say(model.Warn, text+" "+session.Say("%d more to make.", r.More))
		return
	}
	b.session.Say(model.OK, text)
}

// Write writes the sample to its load: the tests, the other results, and where
// the kept part is. What is typed for a test is made a test first.
func (b *Bench) Write() error {
	s := b.hand
	if s.load == nil {
		return errors.New(session.Say("No load is chosen. Choose the one this sample is of in the first field"))
	}
	if s.isHalfTyped() {
		if err := b.Add(); err != nil {
			return err
		}
	}
	if s.found.fault != nil {
		return s.found.fault
	}
	if wrong := s.wrongOther(); wrong != "" {
		return errors.New(wrong)
	}
	if err := s.write(); err != nil {
		return err
	}
	b.isWritten()
	b.session.Say(model.OK, s.written())
	b.leave()
	return nil
}

// isHalfTyped reports whether a test is typed that has not been made.
func (s *SampleTest) isHalfTyped() bool {
	return strings.TrimSpace(s.typed[lastField(s.method())]) != ""
}

// wrongOther is what is wrong with the other results as typed.
func (s *SampleTest) wrongOther() string {
	for _, f := range s.fields() {
		if s.isOther(f.ID) && f.State == model.Stop && s.form.IsTyped(f.ID) {
			return f.Note
		}
	}
	return ""
}

// write is the sample going into the book.
func (s *SampleTest) write() error {
	d, ctx := s.bench.session.Desk, context.Background()
	if err := s.writeProbe(); err != nil {
		return err
	}
	sample := s.form.Sample()
	sample.Tester = d.Who().Name
	var err error
	if s.isTested() {
		err = scalehouse.RecordTest(ctx, d, s.load.ID, sample, s.found.testing)
	} else {
		err = scalehouse.RecordSample(ctx, d, s.load.ID, sample)
	}
	if err != nil {
		return err
	}
	for id := range s.form.Typed {
		if s.isOther(id) {
			delete(s.form.Typed, id)
		}
	}
	return s.reload()
}

// writeProbe writes down number, probes and place of the sample, if any of them
// was typed.
func (s *SampleTest) writeProbe() error {
	if s.typed["number"] == "" && s.typed["probes"] == "" && s.typed["place"] == "" {
		return nil
	}
	_, err := scalehouse.Probe(context.Background(), s.bench.session.Desk, s.load.ID, scalehouse.Probed{
		Number: strings.TrimSpace(s.text("number")), Probes: probesOf(s.text("probes")), Place: strings.TrimSpace(s.text("place")),
	})
	if err != nil {
		return err
	}
	for _, id := range []string{"number", "probes", "place"} {
		delete(s.typed, id)
	}
	return s.reload()
}

// reload reads the load from the book again.
func (s *SampleTest) reload() error {
	l, err := office.Load(context.Background(), s.bench.session.Desk, s.load.ID)
	if err == nil {
		s.rebase(l)
		s.work()
	}
	return err
}

// written says what went into the book.
func (s *SampleTest) written() string {
	moisture := session.Say("no moisture")
	if m := s.load.Sample.Moisture; m != nil {
		moisture = m.Percent.String()
	}
	text := session.Say("the sample of load %s, truck %s, is written down: %s.", s.load.ID, session.TruckText(s.load.Details.Truck), moisture)
	if n := len(s.load.Sample.Stops); n > 0 {
		text += " " + session.Say("A doubt stops the ticket: %s", session.Say(s.load.Sample.Stops[0].Sentence))
	}
	return text
}

// leave goes on to where the work is: back to the yard if it sent the sample,
// else to the next one that waits.
func (b *Bench) leave() {
	back := b.back
	b.back = false
	b.session.Changed()
	if back {
		b.session.Go("yard")
		return
	}
	b.read()
	if i := slices.IndexFunc(b.trucks, waitsForTest); i >= 0 {
		b.Take(b.trucks[i].ID)
	}
}

// probesOf reads where the load was probed: a number of probes, or their places
// with commas between.
func probesOf(text string) []moisture.Probe {
	text = strings.TrimSpace(text)
	if n, err := strconv.Atoi(text); err == nil && n > 0 && n <= mostProbes {
		return make([]moisture.Probe, n)
	}
	var out []moisture.Probe
	if head, places, counted := strings.Cut(text, ": "); counted && strings.TrimLeft(head, "0123456789") == "" {
		text = places
	}
	for _, place := range strings.Split(text, ",") {
		if place = strings.TrimSpace(place); place != "" {
			out = append(out, moisture.Probe{Place: place})
		}
	}
	return out
}

// mostProbes is more than any truck is probed.
const mostProbes = 40
