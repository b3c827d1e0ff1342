package scaleticket_test

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/load"

	"tenthpoint/internal/law"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/sheet"
	"tenthpoint/internal/tickettest"
)

func line(t testing.TB, d scaleticket.Document, section, label string) scaleticket.Line {
	t.Helper()
	s, ok := d.Section(section)
	if !ok {
		t.Fatalf("no section %q", section)
	}
	for _, l := range s.Lines {
		if l.Label == label {
			return l
		}
	}
	t.Fatalf("no line %q in %s", label, section)
	return scaleticket.Line{}
}

// TestOrderOfAScaleTicket: identity, number, party, movement, weight, quality,
// settlement, signature, and the working last.
func TestOrderOfAScaleTicket(t *testing.T) {
	want := "identity number party movement figures weight quality settlement signature working"
	for _, c := range tickettest.Table {
		var ids []string
		for _, s := range scaleticket.Compose(c.Make(t)).Sections {
			if s.ID != "shares" {
				ids = append(ids, s.ID)
			}
		}
		if got := strings.Join(ids, " "); got != want {
			t.Errorf("%s: %s", c.Name, got)
		}
	}
}

// TestNothingIsBlank: whatever a ticket lacks is printed as a word.
func TestNothingIsBlank(t *testing.T) {
	for _, c := range tickettest.Table {
		for _, s := range scaleticket.Compose(c.Make(t)).Sections {
			for _, l := range s.Lines {
				needs := l.Kind == scaleticket.Pair || l.Kind == scaleticket.Total || l.Kind == scaleticket.Struck || l.Kind == scaleticket.SignHere
				if needs && strings.TrimSpace(l.Value) == "" || l.Label == "" && s.Form != scaleticket.Letterhead {
					t.Errorf("%s, %s: a blank in %+v", c.Name, s.ID, l)
				}
			}
		}
	}
}

func TestMissingIsNamedWhereItPrints(t *testing.T) {
	for _, c := range []struct{ name, want string }{
		{"empty", "house.business house.street house.town house.phone grower day commodity truck gross tare moisture edition weigher"},
		{"preview", "tare moisture test-weight weigher"},
		{"corn", ""},
		{"outbound", ""},
		{"refused", ""}, // nothing is to come of a load turned away
	} {
		if got := strings.Join(scaleticket.Compose(tickettest.Named(t, c.name)).Missing(), " "); got != c.want {
			t.Errorf("%s lacks %q, want %q", c.name, got, c.want)
		}
	}
}

func TestMarks(t *testing.T) {
	for _, c := range []struct{ name, marks, stamp string }{
		{"corn", "EXAMPLE - NOT FOR TRADE", ""},
		{"void", "EXAMPLE - NOT FOR TRADE, VOID, REPRINT 1", "VOID"},
		{"corrected", "EXAMPLE - NOT FOR TRADE, CORRECTED BY TICKET 1058", "CORRECTED BY TICKET 1058"},
		{"correcting", "EXAMPLE - NOT FOR TRADE, CORRECTS TICKET 1042", ""},
		{"preview", "EXAMPLE - NOT FOR TRADE, DRAFT", "DRAFT"},
		{"empty", "DRAFT", "DRAFT"},
		{"tonnes", "", ""},
		{"landlord", "EXAMPLE - NOT FOR TRADE, ONE SHARE ONLY", ""},
		{"split", "EXAMPLE - NOT FOR TRADE, REPRINT 2, MANUAL WT, SPLIT-WEIGHED", ""},
		{"refused", "EXAMPLE - NOT FOR TRADE, REFUSED", "REFUSED"},
	} {
		d := scaleticket.Compose(tickettest.Named(t, c.name))
		if got := strings.Join(d.Marks, ", "); got != c.marks || d.Stamp != c.stamp {
			t.Errorf("%s: marks %q, stamp %q; want %q, %q", c.name, got, d.Stamp, c.marks, c.stamp)
		}
	}
}

// TestDemoHouseIsMarked: an invented elevator says so under any rates.
func TestDemoHouseIsMarked(t *testing.T) {
	ticket := tickettest.Tonnes(t)
	ticket.House.Demo = true
	if d := scaleticket.Compose(ticket); !slices.Contains(d.Marks, "EXAMPLE - NOT FOR TRADE") {
		t.Errorf("marks %v", d.Marks)
	}
}

// TestHandlingIsALineOfItsOwn, taken or not.
func TestHandlingIsALineOfItsOwn(t *testing.T) {
	for name, want := range map[string]string{"corn": "−262 lb", "tonnes": "no deduction", "outbound": "no deduction", "preview": "when settled"} {
		if l := line(t, scaleticket.Compose(tickettest.Named(t, name)), "settlement", "Handling loss"); l.Value != want {
			t.Errorf("%s: handling %q, want %q", name, l.Value, want)
		}
	}
}

// TestNothingHasNoSign: a total of zero is neither to the owner nor from the owner.
func TestNothingHasNoSign(t *testing.T) {
	d := scaleticket.Compose(tickettest.Named(t, "outbound"))
	if l := line(t, d, "settlement", "Premiums less discounts and charges"); l.Value != "$0.00" {
		t.Errorf("total %q", l.Value)
	}
}

func TestWeightsOfASplitLoad(t *testing.T) {
	d := scaleticket.Compose(tickettest.Split(t))
	if l := line(t, d, "weight", "Gross, trailer"); l.Mark != "MANUAL WT" || l.Value != "+38,180 lb" || !strings.Contains(l.Notes[0], "typed by J. Clerk, indicator cable broken") {
		t.Errorf("typed weight %+v", l)
	}
	if l := line(t, d, "weight", "Gross, truck, replaced"); l.Kind != scaleticket.Struck || l.Value != "47,640 lb" {
		t.Errorf("replaced weight %+v", l)
	}
	if l := line(t, d, "weight", "Tare, trailer"); !strings.Contains(l.Notes[0], "stored tare of 2026-09-02") {
		t.Errorf("stored tare %+v", l)
	}
}

// TestLightLoadIsWarned: a net under 50 divisions of the scale.
func TestLightLoadIsWarned(t *testing.T) {
	for net, warned := range map[int64]bool{980: true, 1000: false} {
		ticket := tickettest.Tell(t, tickettest.CornDetails()).Truck(tickettest.Lb(27820+net), tickettest.Lb(27820)).Ticket(tickettest.ExampleElevator(), nil)
		weight, _ := scaleticket.Compose(ticket).Section("weight")
		last := weight.Lines[len(weight.Lines)-1]
		if (last.Kind == scaleticket.Warning && strings.Contains(last.Label, "under 50 divisions")) != warned {
			t.Errorf("net %d lb: last line %+v", net, last)
		}
	}
}

// TestNetWithoutSettlement: net and recorded moisture are known before rates
// are.
func TestNetWithoutSettlement(t *testing.T) {
	d := scaleticket.Compose(tickettest.Tell(t, tickettest.CornDetails()).Truck(tickettest.Lb(80120), tickettest.Lb(27820)).Samples(tickettest.WetSample()).Ticket(tickettest.ExampleElevator(), nil))
	for label, want := range map[string]string{"Net": "52,300 lb", "Moisture": "18.4 %", "Dry bushels": "when settled"} {
		if l := line(t, d, "figures", label); l.Value != want {
			t.Errorf("%s is %q, want %q", label, l.Value, want)
		}
	}
}

// TestWrongWayRound: gross and tare swapped show a net below zero, not a
// blank.
func TestWrongWayRound(t *testing.T) {
	d := scaleticket.Compose(tickettest.Tell(t, tickettest.CornDetails()).Truck(tickettest.Lb(24120), tickettest.Lb(24500)).Ticket(tickettest.ExampleElevator(), nil))
	if l := line(t, d, "weight", "Net"); l.Value != "−380 lb" {
		t.Errorf("net %q", l.Value)
	}
}

// TestLandlordSeesNoOneElse: an owner's slip has that owner's money only.
func TestLandlordSeesNoOneElse(t *testing.T) {
	whole, own := scaleticket.Compose(tickettest.Shares(t)), scaleticket.Compose(tickettest.Landlord(t))
	if l := line(t, own, "settlement", "Payable"); l.Value != "$1,125.19" {
		t.Errorf("payable %q", l.Value)
	}
	if l := line(t, own, "party", "This copy is for"); l.Value != "Beech Land Trust 1/3" {
		t.Errorf("copy for %q", l.Value)
	}
	text := sheet.Text(own, sheet.PageColumns)
	for _, others := range []string{"C. Cedar", "$562.61", "$1,687.73"} {
		if strings.Contains(text, others) {
			t.Errorf("the landlord's slip shows %s", others)
		}
		if !strings.Contains(sheet.Text(whole, sheet.PageColumns), others) {
			t.Errorf("the whole slip lacks %s", others)
		}
	}
}

// What another certified scale weighed stands beside the net, with the difference; it settles nothing.
func TestOriginWeight(t *testing.T) {
	details, origin := tickettest.CornDetails(), tickettest.Lb(28060)
	details.Elsewhere = load.Elsewhere{Weight: &origin, Ticket: "4411", Scale: "farm scale"}
	details.Grown = load.Grown{Farm: "Home place", Place: "Saline, Kansas"}
	d := scaleticket.Compose(tickettest.Tell(t, details).Truck(tickettest.Lb(52300), tickettest.Lb(24300)).Ticket(tickettest.ExampleElevator(), nil))
	if l := line(t, d, "weight", "Origin weight"); l.Value != "28,060 lb" || strings.Join(l.Notes, ", ") != "ticket 4411, scale farm scale" {
		t.Errorf("origin %+v", l)
	}
	if l := line(t, d, "weight", "Net less origin weight"); l.Value != "−60 lb" {
		t.Errorf("difference %+v", l)
	}
	if l := line(t, d, "movement", "Farm"); l.Value != "Home place" {
		t.Errorf("farm %+v", l)
	}
}

// Two drafts say whether the trailer was uncoupled (NIST Handbook 44, UR.3.3), and that it is not noted.
func TestSplitWeighingSaysHow(t *testing.T) {
	ticket := tickettest.Split(t)
	ticket.Load.Settled = nil // as a draft of today
	if l := line(t, scaleticket.Compose(ticket), "weight", "Truck and trailer"); l.Value != "not noted whether uncoupled" {
		t.Errorf("unsaid: %+v", l)
	}
	ticket.Load.Details.Apart = load.Uncoupled
	if l := line(t, scaleticket.Compose(ticket), "weight", "Truck and trailer"); l.Value != "uncoupled, each weighed whole" {
		t.Errorf("uncoupled: %+v", l)
	}
}

// TestLawIsToBeConfirmed: what a slip says of the law is to be confirmed, in every language.
func TestLawIsToBeConfirmed(t *testing.T) {
	for _, language := range i18n.Codes() {
		ticket := tickettest.Corn(t)
		ticket.House.Language = language
		foot := scaleticket.Compose(ticket).Footer
		if want := i18n.In(language).Word(law.Confirm); !strings.HasSuffix(foot[len(foot)-1], " "+want) {
			t.Errorf("%s: the foot ends with %q", language, foot[len(foot)-1])
		}
	}
}

// A load turned away has no ticket: its paper does not call itself one, and has the load's number.
func TestRefusedPaperIsNoTicket(t *testing.T) {
	ticket := tickettest.Named(t, "refused")
	d := scaleticket.Compose(ticket)
	number, _ := d.Section("number")
	if first := number.Lines[0]; number.Title != "Load rejected" || first.Label != "Load" || first.Value != ticket.Load.ID || d.Running != "Load "+ticket.Load.ID {
		t.Errorf("%q, %q %q, %q", number.Title, first.Label, first.Value, d.Running)
	}
}
