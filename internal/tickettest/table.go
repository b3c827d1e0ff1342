package tickettest

import (
	"encoding/json"
	"strings"
	"sync"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/title"
)

// Table is every ticket the golden slips are made of, by name.
var Table = []struct {
	Name string
	Make func(testing.TB) scaleticket.Ticket
}{
	{"corn", Corn},
	{"shares", Shares},
	{"landlord", Landlord},
	{"void", voidTicket},
	{"corrected", correctedTicket},
	{"correcting", correctingTicket},
	{"void-reissued", voidReissuedTicket},
	{"reissued", reissuedTicket},
	{"preview", Preview},
	{"empty", Empty},
	{"tonnes", Tonnes},
	{"outbound", outboundTicket},
	{"split", Split},
	{"weight-deductions", weightTicket},
	{"refused", Refused},
	{"local-words", localTicket},
	{"title-undecided", held(title.Terms{})},
	{"title-stored", held(title.Terms{Under: title.OpenStorage})},
	{"title-receipt", held(title.Terms{Under: title.Receipt, No: "1042"})},
	{"title-delayed", held(title.Terms{Under: title.DelayedPrice, No: "D-7"})},
	{"title-contract", held(title.Terms{Under: title.Contract, No: "C-12"})},
	{"title-bank", held(title.Terms{Under: title.GrainBank})},
	{"titles-apart", apartTicket},
	{"titles-landlord", apartLandlord},
}

func CornDetails() load.Details {
	return load.Details{
		Direction: load.Inbound, Day: quantity.MustDate("2026-10-14"),
		Commodity: "corn", Class: "yellow", CropYear: "2026", Schedule: "main",
		Grower: load.Party{ID: "alder", Name: "Alder Farm"},
		Truck:  load.Truck{ID: "12", Plate: "EX 4711", Trailer: "EX 90"},
		Driver: "D. Driver", Bin: "Pit 2", Terms: title.Terms{Under: title.CashSale},
		Price: ref("4.15 $/bu"), PriceSource: "posted 2026-10-14",
	}
}

func WetSample() load.Sample {
	return load.Sample{
		Number: "S-2041", Tester: "T. Tester", Probes: "3",
		Moisture: &load.Moisture{Percent: Of("18.44 %"), Method: "digital meter", Meter: "M-2", Calibration: "2026-A"},
		Findings: []load.Finding{
			{Factor: grain.TestWeight, Amount: ref("52.6 lb/bu")},
			{Factor: grain.Damage, Amount: ref("6.1 %")},
			{Factor: grain.HeatDamage, Amount: ref("0.3 %")},
			{Factor: grain.BrokenCorn, Amount: ref("3.4 %")},
			{Factor: grain.Musty, Present: true},
		},
		Grade: "U.S. No. 3 Yellow Corn", Kept: "shelf 3", Until: quantity.MustDate("2026-10-17"),
	}
}

func Corn(t testing.TB) scaleticket.Ticket {
	return Tell(t, CornDetails()).Truck(Lb(80120), Lb(27820)).Samples(WetSample()).issues(1042).
		Ticket(ExampleElevator(), edition(t, "corn"))
}

func sharedDetails() load.Details {
	d := CornDetails()
	share := func(id, name, parts, Of string) load.Owner {
		return load.Owner{Party: load.Party{ID: id, Name: name}, Parts: quantity.Of(parts, quantity.Plain), Of: quantity.Of(Of, quantity.Plain)}
	}
	d.Shares = []load.Owner{
		share("alder", "Alder Farm", "1", "2"), share("beech", "Beech Land Trust", "1", "3"), share("cedar", "C. Cedar", "1", "6"),
	}
	return d
}

func Shares(t testing.TB) scaleticket.Ticket {
	return Tell(t, sharedDetails()).Truck(Lb(80120), Lb(27820)).Samples(WetSample()).issues(1043).
		Ticket(ExampleElevator(), edition(t, "corn"))
}

func Landlord(t testing.TB) scaleticket.Ticket {
	ticket := Shares(t)
	ticket.Owner = 2
	return ticket
}

func voidTicket(t testing.TB) scaleticket.Ticket {
	ticket := Tell(t, CornDetails()).Truck(Lb(80120), Lb(27820)).Samples(WetSample()).issues(1042).
		happens("M. Manager", load.Voided{Reason: "wrong grower, weighed again", Day: quantity.MustDate("2026-10-14")}).
		Ticket(ExampleElevator(), edition(t, "corn"))
	ticket.Copy = 1
	return ticket
}

func correctedTicket(t testing.TB) scaleticket.Ticket {
	return Tell(t, CornDetails()).Truck(Lb(80120), Lb(27820)).Samples(WetSample()).issues(1042).
		happens("M. Manager", load.Superseded{By: 1058, Reason: "retained sample tested again", Day: quantity.MustDate("2026-10-15")}).
		Ticket(ExampleElevator(), edition(t, "corn"))
}

func correctingTicket(t testing.TB) scaleticket.Ticket {
	s := Tell(t, CornDetails())
	s.facts[0].Fact = load.Opened{Details: CornDetails(), Corrects: 1042, Reason: "retained sample tested again"}
	sample := WetSample()
	sample.Moisture.Percent = Of("17.9 %")
	sample.Moisture.Method = "oven, at the official laboratory"
	sample.Moisture.Meter, sample.Moisture.Calibration = "", ""
	return s.Truck(Lb(80120), Lb(27820)).Samples(sample).issues(1058).Ticket(ExampleElevator(), edition(t, "corn"))
}

// voidReissuedTicket is void, and its grain has ticket 1043.
func voidReissuedTicket(t testing.TB) scaleticket.Ticket {
	ticket := Tell(t, CornDetails()).Truck(Lb(80120), Lb(27820)).Samples(WetSample()).issues(1042).
		happens("M. Manager", load.Voided{Reason: "spoiled in the printer", Day: quantity.MustDate("2026-10-14")}).
		happens("M. Manager", load.Reissued{By: 1043, Day: quantity.MustDate("2026-10-15")}).
		Ticket(ExampleElevator(), edition(t, "corn"))
	ticket.Copy = 1
	return ticket
}

// reissuedTicket is the one in its place.
func reissuedTicket(t testing.TB) scaleticket.Ticket {
	s := Tell(t, CornDetails())
	s.facts[0].Fact = load.Opened{Details: CornDetails(), Reissues: 1042, Reason: "spoiled in the printer"}
	return s.Truck(Lb(80120), Lb(27820)).Samples(WetSample()).issues(1043).Ticket(ExampleElevator(), edition(t, "corn"))
}

// Preview has been weighed full and half tested.
func Preview(t testing.TB) scaleticket.Ticket {
	d := CornDetails()
	d.Driver, d.CropYear, d.Price, d.Under = "", "", nil, ""
	s := Tell(t, d)
	s.weighs(load.Weighing{Which: load.Gross, Weight: Lb(80120), Source: load.FromScale, Scale: "North"})
	s.Samples(load.Sample{Findings: []load.Finding{{Factor: grain.Damage, Amount: ref("6.1 %")}}})
	return s.Ticket(ExampleElevator(), edition(t, "corn"))
}

func Empty(testing.TB) scaleticket.Ticket {
	return scaleticket.Ticket{Copy: scaleticket.Draft, Titles: title.First}
}

func Tonnes(t testing.TB) scaleticket.Ticket {
	d := CornDetails()
	d.Commodity, d.Class, d.Price, d.PriceSource = "wheat-hrs", "", ref("248.50 $/t"), "street price of the day"
	d.Under, d.Terms.No = title.Contract, "C-77"
	sample := load.Sample{
		Number: "S-88", Tester: "T. Tester",
		Moisture: &load.Moisture{Percent: Of("16.2 %"), Method: "digital meter", Meter: "M-7", Calibration: "2026-B"},
		Findings: []load.Finding{
			{Factor: grain.TestWeight, Amount: ref("60.4 lb/bu")},
			{Factor: grain.Dockage, Amount: ref("1.26 %")},
			{Factor: grain.Protein, Amount: ref("13.4 %")},
		},
		Kept: "rack B", Until: quantity.MustDate("2026-10-21"),
	}
	return Tell(t, d).Truck(kg(41230), kg(14870)).Samples(sample).issues(311).Ticket(metricElevator(), edition(t, "wheat-tonnes"))
}

// outboundTicket is dry corn that leaves; the tare was weighed first.
func outboundTicket(t testing.TB) scaleticket.Ticket {
	d := CornDetails()
	d.Direction, d.Consignee, d.Agent = load.Outbound, "Example River Mill", "Example Freight Agency"
	d.Grower, d.Bin, d.Price, d.PriceSource = load.Party{ID: "house", Name: "Example Prairie Elevator"}, "Bin 4", nil, ""
	d.Under, d.Terms.No = title.Contract, "S-2026-19"
	s := Tell(t, d)
	s.weighs(load.Weighing{Which: load.Tare, Weight: Lb(27820), Source: load.FromScale, Scale: "South", DriverOn: "on"})
	s.weighs(load.Weighing{Which: load.Gross, Weight: Lb(79940), Source: load.FromScale, Scale: "North", DriverOn: "on"})
	s.Samples(load.Sample{
		Number: "S-3", Tester: "T. Tester", Moisture: &load.Moisture{Percent: Of("14.6 %"), Method: "digital meter", Meter: "M-2"},
		Findings: []load.Finding{{Factor: grain.TestWeight, Amount: ref("57.1 lb/bu")}},
		Kept:     "shelf 1", Until: quantity.MustDate("2026-10-17"),
	})
	return s.issues(2107).Ticket(ExampleElevator(), edition(t, "corn"))
}

// Split is truck and trailer weighed separately, with a typed weight, a stored tare, a repeated
// weight, an accepted limit and a price to come.
func Split(t testing.TB) scaleticket.Ticket {
	d := CornDetails()
	d.Price, d.PriceSource, d.Under, d.Remark = nil, "", title.OpenStorage, "second load of the day"
	s := Tell(t, d)
	s.weighs(load.Weighing{Which: load.Gross, Draft: "truck", Weight: Lb(47640), Source: load.FromScale, Scale: "North", DriverOn: "on"})
	s.weighs(load.Weighing{Which: load.Gross, Draft: "truck", Weight: Lb(47460), Source: load.FromScale, Scale: "North", DriverOn: "off"})
	s.weighs(load.Weighing{Which: load.Gross, Draft: "trailer", Weight: Lb(38180), Source: load.ByHand, Scale: "North", DriverOn: "off", Reason: "indicator cable broken, read from the dial"})
	s.weighs(load.Weighing{Which: load.Tare, Draft: "truck", Weight: Lb(18240), Source: load.FromScale, Scale: "South", DriverOn: "off"})
	s.weighs(load.Weighing{Which: load.Tare, Draft: "trailer", Weight: Lb(9160), Source: load.StoredTare, Scale: "North", Taken: quantity.MustDate("2026-09-02")})
	sample := WetSample()
	sample.Findings[1].Amount = ref("21.5 %")
	sample.Flags = []load.Flag{
		load.OldFlag("too-cold: Sample at 36 °F is under 40 °F; warm it sealed and test again."), load.OldFlag("spread: Readings lie 0.7 apart, more than 0.5."),
	}
	s.Samples(sample)
	s.happens("M. Manager", load.Accepted{Limit: "damage", Reason: "agreed with the grower by phone"})
	ticket := s.issues(1044).Ticket(ExampleElevator(), edition(t, "corn"))
	ticket.Copy, ticket.MeterNote = 2, message.Words("Meter M-2 was last checked on 2026-09-20; its check was due on 2026-10-04.")
	return ticket
}

// weightTicket takes weight off for foreign matter before the water and for broken kernels after,
// and credits over-dry grain.
func weightTicket(t testing.TB) scaleticket.Ticket {
	d := CornDetails()
	d.Commodity, d.Class, d.Price = "wheat-hrw", "", ref("5.62 $/bu")
	sample := load.Sample{
		Number: "S-9", Tester: "T. Tester",
		Moisture: &load.Moisture{Percent: Of("12.1 %"), Method: "dial meter", Meter: "M-1", Calibration: "chart of 2024"},
		Findings: []load.Finding{
			{Factor: grain.TestWeight, Amount: ref("59.8 lb/bu")},
			{Factor: grain.Dockage, Amount: ref("0.84 %")},
			{Factor: grain.ForeignMaterial, Amount: ref("0.8 %")},
			{Factor: grain.ShrunkenBroken, Amount: ref("6.4 %")},
			{Factor: grain.Protein, Amount: ref("12.5 %")},
		},
	}
	return Tell(t, d).Truck(Lb(61240), Lb(23060)).Samples(sample).issues(77).Ticket(ExampleElevator(), edition(t, "wheat-weight"))
}

func Refused(t testing.TB) scaleticket.Ticket {
	s := Tell(t, CornDetails())
	s.weighs(load.Weighing{Which: load.Gross, Weight: Lb(80120), Source: load.FromScale, Scale: "North", DriverOn: "off"})
	s.Samples(load.Sample{Tester: "T. Tester", Findings: []load.Finding{{Factor: grain.Musty, Present: true}, {Factor: grain.Heating, Present: true}}})
	s.happens("M. Manager", load.Refused{Reason: "heating, sour smell"})
	return s.Ticket(ExampleElevator(), edition(t, "corn"))
}

// localTicket has its days in local order and its words from a translator.
func localTicket(t testing.TB) scaleticket.Ticket {
	ticket := Shares(t)
	ticket.House.Dates = "local"
	ticket.Words = scaleticket.WordsOf(AngleBrackets())
	return ticket
}

// Named is a ticket of the table.
func Named(t testing.TB, name string) scaleticket.Ticket {
	t.Helper()
	for _, c := range Table {
		if c.Name == name {
			return c.Make(t)
		}
	}
	t.Fatalf("no ticket %q", name)
	return scaleticket.Ticket{}
}

// AngleBrackets is a language that can be seen at work: every text of the program between marks.
var AngleBrackets = sync.OnceValue(func() *message.Printer {
	texts := map[string]string{}
	for english := range i18n.Texts("fr") {
		texts[english] = "‹" + english[strings.Index(english, "|")+1:] + "›"
	}
	texts["m/d/y"], texts["%s: %s"] = "d/m/y", "%s: %s"
	file, err := json.Marshal(map[string]any{"language": "fr", "texts": texts})
	if err != nil {
		panic(err)
	}
	catalog, err := message.ReadCatalog(file)
	if err != nil {
		panic(err)
	}
	return message.NewPrinter(catalog)
})
