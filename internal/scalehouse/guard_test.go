package scalehouse_test

import (
	"errors"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entrytest"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/title"
	"tenthpoint/schedules"
)

// guarded is an elevator with all its guards on and a few tickets in its book.
func guarded(t *testing.T) *scalehouse.Desk {
	t.Helper()
	editions, err := schedules.Editions()
	must(t, err)
	return entrytest.Open(t, "guarded", editions)
}

func taken(t *testing.T, d *scalehouse.Desk, details load.Details, grossLb, tareLb int64) string {
	t.Helper()
	id, err := scalehouse.OpenLoad(ctx, d, details)
	must(t, err)
	must(t, scalehouse.Weigh(ctx, d, id, housetest.ScaleWeight(load.Gross, grossLb)))
	must(t, scalehouse.Weigh(ctx, d, id, housetest.ScaleWeight(load.Tare, tareLb)))
	if details.Direction == load.Inbound {
		must(t, scalehouse.RecordSample(ctx, d, id, load.Sample{Moisture: &load.Moisture{Percent: quantity.Of("15.2", quantity.Percent), Method: "typed"}}))
	}
	return id
}

func asks(t *testing.T, err error, question string) guard.Finding {
	t.Helper()
	var asked guard.Asked
	if !errors.As(err, &asked) {
		t.Fatalf("refused with %v, want the question %q", err, question)
	}
	f, found := asked.Find(question)
	if !found {
		t.Fatalf("asked %v, want %q", asked, question)
	}
	return f
}

func inbound() load.Details {
	return load.Details{Direction: load.Inbound, Commodity: "corn", Grower: load.Party{ID: "103", Name: "Cobb Hollow Farm"}, Truck: load.Truck{ID: "44"}}
}

// What leaves a bin is compared with what lies in it.
func TestABinIsNotDrawnBelowEmpty(t *testing.T) {
	d := guarded(t)
	out := inbound()
	out.Direction, out.Bin, out.Consignee = load.Outbound, "B3", "A buyer"
	id := taken(t, d, out, 60000, 24000)
	_, err := scalehouse.Issue(ctx, d, id)
	f := asks(t, err, "overdrawn")
	must(t, scalehouse.Answer(ctx, d, id, f.ID, f.Reasons[0]))
	_, err = scalehouse.Issue(ctx, d, id)
	must(t, err)
}

// Over 105 % of the scale's capacity nothing is recorded, whatever is answered.
func TestNothingIsRecordedBeyondTheScale(t *testing.T) {
	d := guarded(t)
	id, err := scalehouse.OpenLoad(ctx, d, inbound())
	must(t, err)
	if err := scalehouse.Weigh(ctx, d, id, housetest.ScaleWeight(load.Gross, 126020)); !errors.Is(err, message.Invalid) {
		t.Errorf("126,020 lb on a scale of 120,000 lb: %v", err)
	}
	must(t, scalehouse.Weigh(ctx, d, id, housetest.ScaleWeight(load.Gross, 126000)))
}

// An answer takes a reason of the list, and a manager where the elevator says so; it is on the day
// sheet's row and goes along to a ticket that corrects this one.
func TestAnswersAreFacts(t *testing.T) {
	d := guarded(t)
	must(t, scalehouse.SetPerson(ctx, d, elevator.Person{Name: "Cal Reyes", Role: elevator.Clerk}))
	details := inbound()
	price := quantity.Of("41.2", quantity.DollarsPerBu)
	details.Price, details.Under = &price, title.CashSale
	p := d.Profile()
	p.Guards = p.Guards.With(elevator.GuardRule{Guard: "price", Act: elevator.GuardManager})
	must(t, scalehouse.SetProfile(ctx, d, p))
	id := taken(t, d, details, 52300, 24300)
	_, err := scalehouse.Issue(ctx, d, id)
	f := asks(t, err, "price")
	if err := scalehouse.Answer(ctx, d, id, "price", "because"); !errors.Is(err, message.Invalid) {
		t.Errorf("any reason: %v", err)
	}
	must(t, d.SignIn("Cal Reyes"))
	if err := scalehouse.Answer(ctx, d, id, "price", f.Reasons[0]); !errors.Is(err, message.Refused) {
		t.Errorf("a clerk answers for the manager: %v", err)
	}
	must(t, d.SignIn(entrytest.Manager))
	must(t, scalehouse.Answer(ctx, d, id, "price", f.Reasons[0]))
	number, err := scalehouse.Issue(ctx, d, id)
	must(t, err)
	sheet, err := office.DaySheet(ctx, d, d.Today())
	must(t, err)
	if len(sheet.Answered) != 1 || sheet.Answered[0].Number != number || len(sheet.Accepted) != 0 {
		t.Errorf("the day sheet has %v as answered", sheet.Answered)
	}
	again, err := scalehouse.Correct(ctx, d, number, "bin was another")
	must(t, err)
	_, err = scalehouse.Issue(ctx, d, again)
	must(t, err)
}

// What the elevator makes compulsory keeps a ticket back, and no answer helps.
func TestCompulsoryFieldsKeepATicketBack(t *testing.T) {
	d := guarded(t)
	p := d.Profile()
	p.Compulsory = elevator.Compulsories()
	must(t, scalehouse.SetProfile(ctx, d, p))
	id := taken(t, d, inbound(), 52300, 24300)
	if _, err := scalehouse.Issue(ctx, d, id); !errors.Is(err, message.Incomplete) {
		t.Fatalf("without bin, meter, sample and crop year: %v", err)
	}
	whole := inbound()
	whole.Bin, whole.CropYear, whole.Day = "P1", "2025", d.Today()
	must(t, scalehouse.Amend(ctx, d, id, whole))
	must(t, scalehouse.RecordSample(ctx, d, id, load.Sample{Number: "S7", Moisture: &load.Moisture{Percent: quantity.Of("15.2", quantity.Percent), Method: "typed", Meter: "M1"}}))
	_, err := scalehouse.Issue(ctx, d, id)
	must(t, err)
}

// The elevator's own limits go before those of the program, and a guard may be turned off.
func TestTheHouseSetsItsLimits(t *testing.T) {
	d := guarded(t)
	least := quantity.Of("15", quantity.Percent)
	for _, c := range []struct {
		rule elevator.GuardRule
		asks bool
	}{
		{elevator.GuardRule{Guard: "moisture", Commodity: "corn", To: &least}, true},
		{elevator.GuardRule{Guard: "moisture", Commodity: "soybeans", To: &least}, false},
		{elevator.GuardRule{Guard: "moisture", Commodity: "corn", To: &least, Act: elevator.GuardRemark}, false},
		{elevator.GuardRule{Guard: "moisture", Commodity: "corn", To: &least, Act: elevator.GuardOff}, false},
	} {
		p := d.Profile()
		p.Guards = elevator.GuardRules{c.rule, {Guard: "on-yard", Act: elevator.GuardOff}, {Guard: "repeated", Act: elevator.GuardOff}}
		must(t, scalehouse.SetProfile(ctx, d, p))
		_, err := scalehouse.Issue(ctx, d, taken(t, d, inbound(), 52300, 24300))
		if c.asks {
			asks(t, err, "moisture")
		} else if err != nil {
			t.Errorf("%+v: %v", c.rule, err)
		}
	}
}

// Each owner's price is compared with the one posted, as it was when the load was typed: the ticket
// remembers it, and another posted later asks about nothing that was agreed before.
func TestEachOwnersPriceIsComparedWithThePostedOne(t *testing.T) {
	d := guarded(t)
	post := func(price string) {
		must(t, scalehouse.PostPrice(ctx, d, elevator.PostedPrice{Commodity: "corn", Day: d.Today(), Price: quantity.Of(price, quantity.DollarsPerBu)}))
	}
	post("4.10")
	f := entry.New(office.NewEntering(ctx, d), entry.Start{Direction: load.Inbound, Reason: func(string) string { return "read from the indicator" }})
	for field, text := range map[string]string{
		"grower": "102", "commodity": "corn", "truck": "61", "gross": "52300", "tare": "24300", "moisture": "15.2", "price": "posted", "owner-terms": "901=sold at 4.85",
	} {
		f.Set(field, text)
	}
	id, err := scalehouse.Enter(ctx, d, "", f.Facts())
	must(t, err)
	post("6.00")
	_, err = scalehouse.Issue(ctx, d, id)
	own := asks(t, err, "price-901")
	if asked := err.(guard.Asked); len(asked) != 1 || own.Field != "price" {
		t.Errorf("asked %v", asked)
	}
	must(t, scalehouse.Answer(ctx, d, id, own.ID, own.Reasons[0]))
	_, err = scalehouse.Issue(ctx, d, id)
	must(t, err)
	l, err := office.Load(ctx, d, id)
	must(t, err)
	if p := l.Details.Posted; p == nil || p.Price.String() != "$4.10/bu" || p.Who != entrytest.Manager || l.Details.PriceSource != "posted" {
		t.Errorf("the ticket remembers %+v", p)
	}
	if own := l.Details.Shares[1].Own; own.Posted == nil || own.Posted.Price.String() != "$4.10/bu" {
		t.Errorf("the landlord's price remembers %+v", own.Posted)
	}
}

// A bin remembers the lot that came into it last, while grain lies there.
func TestALotIsComparedWithTheLastOneOfItsBin(t *testing.T) {
	d := guarded(t)
	details := inbound()
	details.Bin, details.Lot = "B3", "ORG-1"
	id := taken(t, d, details, 52300, 24300)
	_, err := scalehouse.Issue(ctx, d, id)
	must(t, err) // nothing lies in it yet
	details.Truck.ID, details.Lot = "45", "org-1"
	_, err = scalehouse.Issue(ctx, d, taken(t, d, details, 52320, 24300))
	must(t, err)
	details.Truck.ID, details.Lot = "46", ""
	id = taken(t, d, details, 52340, 24300)
	_, err = scalehouse.Issue(ctx, d, id)
	asks(t, err, "lot")
	details.Truck.ID, details.Lot = "47", "ORG-2"
	id = taken(t, d, details, 52360, 24300)
	_, err = scalehouse.Issue(ctx, d, id)
	f := asks(t, err, "lot")
	must(t, scalehouse.Answer(ctx, d, id, f.ID, f.Reasons[0]))
	_, err = scalehouse.Issue(ctx, d, id)
	must(t, err)
}

// A contract with less room than the load brings is asked about, with what is left of it; the ticket
// that a correction replaces leaves its room free.
func TestAnOverfilledContractIsAskedAbout(t *testing.T) {
	d := guarded(t)
	must(t, scalehouse.SetContract(ctx, d, elevator.ContractTerms{
		Number: "K-7", Grower: "103", Commodity: "corn", Quantity: quantity.Int(700, quantity.Bushel), Price: quantity.Of("4.10", quantity.DollarsPerBu), Until: d.Today().AddDays(30),
	}))
	onContract := func(truck string, gross int64) string {
		price := quantity.Of("4.10", quantity.DollarsPerBu)
		return taken(t, d, load.Details{
			Direction: load.Inbound, Day: d.Today(), Commodity: "corn", Grower: load.Party{ID: "103", Name: "Ada Field"}, Truck: load.Truck{Plate: truck},
			Terms: title.Terms{Under: title.Contract, No: "K-7"}, Price: &price,
		}, gross, 24300)
	}
	first, err := scalehouse.Issue(ctx, d, onContract("T1", 52300)) // 28,000 lb: 500 bu
	must(t, err)
	second := onContract("T2", 52400)
	_, err = scalehouse.Issue(ctx, d, second)
	f := asks(t, err, "contract")
	if f.Field != "terms" || len(f.Reasons) == 0 {
		t.Errorf("the question is %+v", f)
	}
	must(t, scalehouse.Answer(ctx, d, second, f.ID, f.Reasons[0]))
	_, err = scalehouse.Issue(ctx, d, second)
	must(t, err)
	again, err := scalehouse.Correct(ctx, d, first, "bin was B3")
	must(t, err)
	if l, err := office.Load(ctx, d, again); err != nil || l.InPlaceOf() != first {
		t.Fatalf("load %s replaces %d, %v", again, l.InPlaceOf(), err)
	}
	around, err := office.Surroundings(d, office.ReadNow(ctx, d), mustLoad(t, d, again))
	must(t, err)
	if k := around.Contracts; len(k) != 1 || !k[0].Left.More(quantity.Int(190, quantity.Bushel)) || !k[0].Left.Less(quantity.Int(210, quantity.Bushel)) {
		t.Errorf("the contract has %+v left beside the ticket that is replaced", k)
	}
}

// What another seller has brought on a contract is no longer left on it, nor what a card brings that
// has taken a seller's place.
func TestAContractIsFilledByAllItsSellers(t *testing.T) {
	d := guarded(t)
	must(t, scalehouse.SetGrower(ctx, d, elevator.Grower{ID: "110", Name: "Field Farms"}))
	must(t, scalehouse.TakeOver(ctx, d, "102", elevator.Takeover{Grower: "110", Kind: elevator.Merged, Reason: "one grower"}))
	one := quantity.Int(1, quantity.Plain)
	half := func(grower string) elevator.Share {
		return elevator.Share{GrowerID: grower, Parts: one, Of: quantity.Int(2, quantity.Plain)}
	}
	must(t, scalehouse.SetContract(ctx, d, elevator.ContractTerms{
		Number: "K-8", Grower: "103", Commodity: "corn", Quantity: quantity.Int(700, quantity.Bushel), Price: quantity.Of("4.10", quantity.DollarsPerBu), Until: d.Today().AddDays(30),
		Sellers: []elevator.Share{half("103"), half("102")},
	}))
	bring := func(grower, truck string) string {
		price := quantity.Of("4.10", quantity.DollarsPerBu)
		return taken(t, d, load.Details{
			Direction: load.Inbound, Day: d.Today(), Commodity: "corn", Grower: load.Party{ID: grower, Name: "Ada Field"}, Truck: load.Truck{Plate: truck},
			Terms: title.Terms{Under: title.Contract, No: "K-8"}, Price: &price,
		}, 52300, 24300)
	}
	_, err := scalehouse.Issue(ctx, d, bring("110", "T1")) // 28,000 lb: 500 bu
	must(t, err)
	_, err = scalehouse.Issue(ctx, d, bring("103", "T2"))
	asks(t, err, "contract")
}

func mustLoad(t *testing.T, d *scalehouse.Desk, id string) *load.Load {
	t.Helper()
	l, err := office.Load(ctx, d, id)
	must(t, err)
	return l
}
