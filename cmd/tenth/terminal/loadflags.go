package terminal

import (
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/title"
)

// DetailFlags are the details of a load: owner, grain and destination.
type DetailFlags struct {
	Grower      string   `help:"Whose grain, by code or name." placeholder:"GROWER" group:"whose"`
	Share       []string `sep:"none" help:"An owner's part, in place of the grower's usual shares; may be repeated." placeholder:"OWNER=2/3" group:"whose"`
	NoShares    bool     `help:"The grower owns all of this load." group:"whose"`
	Commodity   string   `help:"The grain, by id or name." placeholder:"GRAIN" group:"whose"`
	Class       string   `help:"Class of the grain." placeholder:"CLASS" group:"whose"`
	CropYear    string   `help:"Crop year." placeholder:"YEAR" group:"whose"`
	Day         string   `help:"Business day of delivery. Without it, today." placeholder:"YYYY-MM-DD" group:"whose"`
	Truck       string   `help:"Truck, by number or plate." placeholder:"TRUCK" group:"whose"`
	Plate       string   `help:"Plate of the truck." placeholder:"PLATE" group:"whose"`
	Trailer     string   `help:"Plate of the trailer." placeholder:"PLATE" group:"whose"`
	Driver      string   `help:"Driver." placeholder:"NAME" group:"whose"`
	Bin         string   `help:"Pit or bin." placeholder:"BIN" group:"whose"`
	Schedule    string   `help:"Schedule of rates, in place of the set-up's." placeholder:"NAME" group:"whose"`
	Contract    string   `help:"Contract the load is delivered on; brings its price." placeholder:"NUMBER" group:"whose"`
	Price       string   `help:"Price per bushel, hundredweight or tonne, as the rates settle; \"later\" for none yet." placeholder:"MONEY" group:"whose"`
	PriceSource string   `help:"Where the price comes from." placeholder:"WORDS" group:"whose"`
	Sold        bool     `help:"The grain is sold." group:"whose"`
	Stored      bool     `help:"The grain is stored for its owner." group:"whose"`
	Receipt     string   `help:"Warehouse receipt the grain is stored under." placeholder:"NUMBER" group:"whose"`
	Delayed     string   `help:"Delayed-price contract the grain is delivered on; it has no price yet." placeholder:"NUMBER" group:"whose"`
	Bank        bool     `help:"The grain is kept in the grain bank." group:"whose"`
	Undecided   bool     `help:"Nobody has said yet what becomes of the grain." group:"whose"`
	Whose       string   `help:"Whose grain it is, where that does not follow: depositor, house or undecided." placeholder:"WHOSE" group:"whose"`
	OwnerTerms  []string `sep:"none" help:"What becomes of one owner's part, such as 901=stored or 102=sold at 4.15; may be repeated." placeholder:"OWNER=TERMS" group:"whose"`
	Consignee   string   `help:"Who takes grain that leaves." placeholder:"NAME" group:"whose"`
	Agent       string   `help:"Who acts for the owner or the buyer." placeholder:"NAME" group:"whose"`
	Remark      string   `help:"A remark for the ticket." placeholder:"WORDS" group:"whose"`

	Farm          string `help:"Farm it grew on; one of the grower's farms brings its split." placeholder:"FARM" group:"papers"`
	FarmNumber    string `help:"Number by which public offices know the farm." placeholder:"NUMBER" group:"papers"`
	Field         string `help:"Field, or the bin on the farm it comes from." placeholder:"FIELD" group:"papers"`
	GrownIn       string `help:"County and state it grew in." placeholder:"PLACE" group:"papers"`
	Variety       string `help:"Variety or trait its owner declares." placeholder:"NAME" group:"papers"`
	Lot           string `help:"Lot it is kept apart under." placeholder:"LOT" group:"papers"`
	PreviousCargo string `help:"What the truck carried before." placeholder:"WORDS" group:"papers"`
	Zero          string `help:"Whether the scale's zero was shown before weighing." placeholder:"yes|no" group:"papers"`
	Apart         string `help:"How truck and trailer were weighed in two drafts." placeholder:"uncoupled|agreed" group:"papers"`
	OriginWeight  string `help:"Net weight on another certified scale." placeholder:"WEIGHT" group:"papers"`
	OriginTicket  string `help:"Its ticket there." placeholder:"NUMBER" group:"papers"`
	OriginScale   string `help:"The scale there." placeholder:"NAME" group:"papers"`
	StoredFrom    string `help:"First day of storage, where that is not the day of delivery." placeholder:"YYYY-MM-DD" group:"papers"`
	Pad           string `help:"Number of the emergency ticket it was written on while the power was out." placeholder:"NUMBER" group:"papers"`
	PadHour       string `help:"The hour that stands on it." placeholder:"HOUR" group:"papers"`
	Vehicle       string `help:"Railcar or barge." placeholder:"NUMBER" group:"papers"`
	Seals         string `help:"Numbers of the seals." placeholder:"NUMBERS" group:"papers"`
	Lading        string `help:"Number of the bill of lading." placeholder:"NUMBER" group:"papers"`
	Destination   string `help:"Place the grain goes to." placeholder:"PLACE" group:"papers"`
	Carrier       string `help:"Who carries it." placeholder:"NAME" group:"papers"`
	Freight       string `help:"Who pays for the way: the shipper before, or the consignee." placeholder:"prepaid|collect" group:"papers"`
}

// Changed reports whether any of the flags was given.
func (f DetailFlags) Changed() bool { return len(f.Texts()) > 0 }

// Texts are the flags as texts of the fields they fill.
func (f DetailFlags) Texts() Texts {
	t := Texts{}
	for field, text := range map[string]string{
		"grower": f.Grower, "shares": strings.Join(f.Share, "; "), "commodity": f.Commodity, "class": f.Class, "crop": f.CropYear,
		"day": f.Day, "truck": f.Truck, "plate": f.Plate, "trailer": f.Trailer, "agent": f.Agent, "driver": f.Driver, "bin": f.Bin, "schedule": f.Schedule,
		"terms": f.terms(), "whose": f.Whose, "owner-terms": strings.Join(f.OwnerTerms, "; "), "price": f.Price, "price-source": f.PriceSource, "consignee": f.Consignee, "remark": f.Remark,
		"farm": f.Farm, "farm-number": f.FarmNumber, "field": f.Field, "grown-in": f.GrownIn, "variety": f.Variety, "lot": f.Lot, "previous-cargo": f.PreviousCargo, "zero": f.Zero, "apart": f.Apart,
		"origin-weight": f.OriginWeight, "origin-ticket": f.OriginTicket, "origin-scale": f.OriginScale, "stored-from": f.StoredFrom,
		"vehicle": f.Vehicle, "seals": f.Seals, "lading": f.Lading, "pad": f.Pad, "pad-hour": f.PadHour, "destination": f.Destination, "carrier": f.Carrier, "freight": f.Freight,
	} {
		t.Put(field, text)
	}
	if f.NoShares && len(f.Share) == 0 {
		t.Put("shares", "none")
	}
	return t
}

// terms returns the disposition of the grain.
func (f DetailFlags) terms() string {
	switch {
	case f.Stored:
		return string(title.OpenStorage)
	case f.Sold:
		return string(title.CashSale)
	case f.Receipt != "":
		return title.Terms{Under: title.Receipt, No: f.Receipt}.Text()
	case f.Delayed != "":
		return title.Terms{Under: title.DelayedPrice, No: f.Delayed}.Text()
	case f.Bank:
		return string(title.GrainBank)
	case f.Undecided:
		return string(title.Undecided)
	}
	return f.Contract
}

// atTheTerminal is recorded in the book beside values typed here.
var atTheTerminal = entry.Origin{Moisture: "typed at the terminal", Price: "typed"}

// Form returns the form of a load entered by flags; nil is a load not yet in the book.
func (p *Session) Form(l *load.Load, way load.Direction, weights WeightFlags) *entry.Form {
	return entry.New(office.NewEntering(p, p.Desk), entry.Start{
		Book: l, Direction: way, Origin: atTheTerminal,
		DriverOn: weights.driverOn(), Reason: func(string) string { return weights.Manual },
	})
}

// WeightFlags are weights read at the scale.
type WeightFlags struct {
	Gross      []string `sep:"none" help:"Weight of the loaded truck; for two drafts truck=WEIGHT and trailer=WEIGHT." placeholder:"WEIGHT" group:"weights"`
	Tare       []string `sep:"none" help:"Weight of the empty truck, likewise." placeholder:"WEIGHT" group:"weights"`
	StoredTare bool     `help:"Use the truck's stored tare." group:"weights"`
	Scale      string   `help:"Scale they were weighed on, where there are several." placeholder:"SCALE" group:"weights"`
	Manual     string   `help:"Why the weights are typed by hand; the ticket marks them MANUAL WT with it." placeholder:"WHY" group:"weights"`
	DriverOn   string   `help:"Whether the driver was on the truck." enum:"on,off,unsaid" default:"unsaid" group:"weights"`
}

// Weighed reports whether any weight was given.
func (f WeightFlags) Weighed() bool { return len(f.Gross)+len(f.Tare) > 0 || f.StoredTare }

// Texts are the weights as texts of their fields, one for each draft.
func (f WeightFlags) Texts() Texts {
	t := Texts{}
	t.Put("scale", f.Scale)
	for which, typed := range map[load.Which][]string{load.Gross: f.Gross, load.Tare: f.Tare} {
		for _, text := range typed {
			draft, weight, several := strings.Cut(text, "=")
			if !several {
				draft, weight = "", text
			}
			t[entry.WeightID(which, strings.TrimSpace(draft))] = weight
		}
	}
	if f.StoredTare {
		t[string(load.Tare)] = entry.StoredTareText
	}
	return t
}

func (f WeightFlags) driverOn() string {
	if f.DriverOn == "unsaid" {
		return ""
	}
	return f.DriverOn
}

// ConfirmFlags answer the guards' questions about a load.
type ConfirmFlags struct {
	Confirm []string `sep:"none" help:"Answer a question about the load with a reason of its list; may be repeated." placeholder:"QUESTION=REASON"`
}

// Texts returns the answers as texts of their fields; it fails for one that cannot be split from
// its question.
func (f ConfirmFlags) Texts() (Texts, error) {
	t := Texts{}
	for _, text := range f.Confirm {
		question, reason, ok := strings.Cut(text, "=")
		if !ok {
			return nil, Refusal("Write it like moisture=\"tested again, same result\"", "%q is no question and its reason", text)
		}
		t[entry.AnswerField(strings.TrimSpace(question))] = reason
	}
	return t, nil
}

// SampleFlags are the results of the bench.
type SampleFlags struct {
	Moisture string   `help:"Moisture, percent wet basis." placeholder:"PERCENT" group:"sample"`
	Meter    string   `help:"Meter it was read on." placeholder:"METER" group:"sample"`
	Why      string   `help:"Why the moisture is typed." placeholder:"WHY" group:"sample"`
	Factor   []string `sep:"none" help:"Another result; may be repeated." placeholder:"FACTOR=RESULT" group:"sample"`
	NoneSeen bool     `help:"Whatever is counted or noticed and not given was looked for and not found." group:"sample"`
	Sample   string   `help:"Number of the sample." placeholder:"NUMBER" group:"sample"`
	Probes   string   `help:"Where the load was probed." placeholder:"WORDS" group:"sample"`
	Tester   string   `help:"Who tested; without it, who acts." placeholder:"NAME" group:"sample"`
	Grade    string   `help:"Grade, where an inspector has given one." placeholder:"WORDS" group:"sample"`
	Mark     string   `name:"grade-mark" help:"Whether the grade is final." placeholder:"interim|final" group:"sample"`
	Kept     string   `help:"Where the retained sample is." placeholder:"PLACE" group:"sample"`
	Until    string   `help:"Day until which it is kept; without it, as long as the house keeps samples." placeholder:"YYYY-MM-DD" group:"sample"`
	Accept   []string `sep:"none" help:"Settle beyond a limit (a manager's act); may be repeated." placeholder:"LIMIT=REASON" group:"sample"`
}

// Tested reports whether any result was given.
func (f SampleFlags) Tested() bool { return f.Moisture != "" || len(f.Factor) > 0 || f.NoneSeen }

// Texts returns the results as texts of their fields; it fails for one that cannot be split from
// its factor or limit.
func (f SampleFlags) Texts() (Texts, error) {
	t := Texts{}
	for field, text := range map[string]string{
		"moisture": f.Moisture, "meter": f.Meter, "why": f.Why, "number": f.Sample, "tester": f.Tester, "probes": f.Probes, "grade": f.Grade, "grade-mark": f.Mark,
		"kept": f.Kept, "until": f.Until,
	} {
		t.Put(field, text)
	}
	if f.NoneSeen {
		t.Put(entry.NoneSeen, "yes")
	}
	if err := t.PutResults(f.Factor); err != nil {
		return nil, err
	}
	for _, text := range f.Accept {
		limit, reason, ok := strings.Cut(text, "=")
		if !ok {
			return nil, Refusal("Write it like bcfm=\"fed at once\"", "%q is no limit and its reason", text)
		}
		t[entry.AcceptField(strings.TrimSpace(limit))] = reason
	}
	return t, nil
}
