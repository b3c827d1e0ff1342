package levy

import (
	"slices"

	"tenthpoint/internal/dated"
	"tenthpoint/internal/digest"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
)

// Base is the amount the rate is applied to.
type Base string

const (
	// Quantity is the bushels, hundredweight or tonnes settled.
	Quantity Base = "quantity"
	// Gross is the value before any quality.
	Gross Base = "gross"
	// Net is the value after discounts and premiums, before services.
	Net Base = "net"
)

// Levy is one deduction.
type Levy struct {
	ID, Title    string
	Jurisdiction string
	Commodity    string
	Event        string // "sale", "payment" or "first-handling"
	Base         Base
	Rate         rule.Cell // money per unit, or a percent
	Cap          rule.Cell // of one settlement
	Buyer        bool      // the house pays it, not the producer
	Refundable   bool
	From, Until  quantity.Date
	Corrects     string
	Source       string // the rule it follows
	Note         string
	ConfirmedBy  string
	ConfirmedOn  quantity.Date

	File string
	Text []byte
	Hash string
}

// Set is all the levies known.
type Set = dated.Set[*Levy]

// NewSet gathers levies and checks those of one line against each other.
var NewSet = dated.NewSet[*Levy]

// Dated is the levy among others of its jurisdiction, grain and base.
func (l *Levy) Dated() dated.Edition {
	return dated.Edition{
		ID: l.ID, Line: l.Jurisdiction + "/" + l.Commodity + "/" + l.Title, From: l.From, Until: l.Until, Corrects: l.Corrects,
		File: l.File, Text: l.Text, Head: "levy",
	}
}

// Days are the days it is taken.
func (l *Levy) Days() message.Text { return l.Dated().Days() }

// IsConfirmed reports whether somebody held the rule against its authority.
func (l *Levy) IsConfirmed() bool { return l.ConfirmedBy != "" }

// Read reads one levy. A non-nil error is a [tomlfile.Problems] with every mistake in the file.
func Read(name string, text []byte) (*Levy, error) {
	file := tomlfile.Parse(name, text)
	l := &Levy{File: name, Text: slices.Clone(text), Hash: digest.Of(text)}
	if err := file.Read(func(root *tomlfile.Table) { l.read(file, root) }); err != nil {
		return nil, err
	}
	return l, nil
}

func (l *Levy) read(file *tomlfile.File, root *tomlfile.Table) {
	t, _ := root.Table("levy", true)
	l.ID, l.Title, l.Jurisdiction = rule.ReadName(t, "id"), t.Text("title"), t.Text("jurisdiction")
	file.SetID(l.ID)
	l.From, l.Until, l.Corrects = t.Date("from"), t.OptionalDate("until"), t.OptionalText("corrects")
	l.Event = t.Choice("event", "sale", "payment", "first-handling")
	l.Buyer = t.Choice("payer", "producer", "buyer") == "buyer"
	l.Refundable = t.Bool("refundable")
	l.Source, l.Note = t.Text("source"), t.OptionalText("note")
	l.Commodity = grain.ReadCommodity(t).ID
	l.readRate(t)
	l.ConfirmedBy, l.ConfirmedOn = t.OptionalText("confirmed_by"), t.OptionalDate("confirmed_on")
	if l.IsConfirmed() == l.ConfirmedOn.IsZero() {
		t.AddProblem("confirmed_on", message.New("a levy is confirmed by somebody on a day"), message.New("Write both confirmed_by and confirmed_on, or neither."))
	}
	dated.Period(t, l.Dated())
}

// readRate reads the base and a rate that fits it.
func (l *Levy) readRate(t *tomlfile.Table) {
	l.Base = Base(t.Choice("base", string(Quantity), string(Gross), string(Net)))
	switch l.Base {
	case Quantity:
		l.Rate = rule.ReadCell(t, "rate", rule.PerQuantityUnits()...)
		rule.NotNegative(t, "rate", l.Rate)
	case Gross, Net:
		l.Rate = rule.ReadPercent(t, "rate")
	default:
		t.IgnoreRest()
		return
	}
	l.Cap = rule.ReadOptionalCell(t, "cap", quantity.Dollar)
	rule.NotNegative(t, "cap", l.Cap)
}
