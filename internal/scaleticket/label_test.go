package scaleticket_test

import (
	"errors"
	"slices"
	"testing"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

// TestLabelBeforeTheTicket: the bag is labelled when the probe is drawn.
func TestLabelBeforeTheTicket(t *testing.T) {
	ticket := tickettest.Preview(t)
	ticket.Load.Sample.Number = "S-7"
	l, err := scaleticket.SampleLabel(ticket)
	if err != nil || l.Until != "No date to discard" || l.Lines[0] != "Corn, Moisture not tested" || l.Lines[1] != "Ticket number at issue, Alder Farm, 2026-10-14" {
		t.Errorf("label %+v, %v", l, err)
	}
}

func TestLabelRefused(t *testing.T) {
	for number, problem := range map[string]errortest.Want{
		"":                     errortest.Invalid(),
		"   ":                  errortest.Invalid(),
		"S-2041-2026-10-14-A7": errortest.Invalid("20"),
		"Probe é":              errortest.Invalid(),
	} {
		ticket := tickettest.Corn(t)
		ticket.Load.Sample.Number = number
		if _, err := scaleticket.SampleLabel(ticket); !problem.Met(err) {
			t.Errorf("sample %q: %v; want an error with %q", number, err, problem)
		}
	}
}

// What the barcode of a truck's label says is read as that truck, and a truck's number typed by hand is
// no label.
func TestTruckLabel(t *testing.T) {
	house, truck := elevator.Profile{Business: "Example", Demo: true}, elevator.Truck{ID: "23", Plate: "XMP 255", Trailer: "T4"}
	l, err := scaleticket.TruckLabel(house, truck, "Cobb Hollow Farm", time.Time{})
	if err != nil || l.Number != "23" || l.Until != "XMP 255" || l.Bars == nil || l.Business != "Example" || l.Mark == "" ||
		!slices.Equal(l.Lines, []string{"Cobb Hollow Farm, T4"}) {
		t.Errorf("the label is %+v, %v", l, err)
	}
	if truck, is := scaleticket.TruckOf(scaleticket.TruckMark + "23"); truck != "23" || !is {
		t.Errorf("read is %q, %v", truck, is)
	}
	for _, other := range []string{"23", "TPT:", "TP2:23", ""} {
		if truck, is := scaleticket.TruckOf(other); is {
			t.Errorf("%q is truck %q", other, truck)
		}
	}
	if _, err := scaleticket.TruckLabel(house, elevator.Truck{ID: "a number with many letters"}, "", time.Time{}); !errors.Is(err, message.Invalid) {
		t.Errorf("bars too thin to print: %v", err)
	}
}
