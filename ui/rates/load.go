package rates

import (
	"context"
	"slices"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// tryLoad is the load that editions of a grain are tried on.
type tryLoad struct {
	facts settle.Facts
	// moisture is that of the load, for a comparison.
	moisture quantity.Amount
	from     string // what load that is, in words
	invented bool   // no load at all: results that rates ask for are filled in
}

// triedLoads are the loads that editions are tried on, one for each grain.
type triedLoads struct {
	session *session.Session
	of      map[string]tryLoad
}

func newTriedLoads(f *session.Session) *triedLoads {
	return &triedLoads{session: f, of: map[string]tryLoad{}}
}

// on returns the load that an edition is tried on: what a person typed, else the newest ticket of
// the grain, else an ordinary truck.
func (l *triedLoads) on(e *rates.Edition) tryLoad {
	if known, ok := l.of[e.Commodity.ID]; ok {
		return known
	}
	t, found := newestOf(l.session, e.Commodity.ID)
	if !found {
		t = ordinaryLoad(l.session.Language, e)
	}
	l.of[e.Commodity.ID] = t
	return t
}

// newestOf is the newest inbound ticket of a grain, without its shares.
func newestOf(f *session.Session, commodity string) (tryLoad, bool) {
	ctx := context.Background()
	page, _, err := office.FindTickets(ctx, f.Desk, office.Search{
		Terms: []office.Term{{Text: commodity, Commodities: []string{commodity}}}, Phases: []string{string(load.Ticketed)}, Limit: 20,
	})
	if err != nil {
		return tryLoad{}, false
	}
	for _, row := range page {
		l, err := office.Load(ctx, f.Desk, row.ID)
		if err != nil || l.Details.Commodity != commodity || l.Details.Direction != load.Inbound || l.Sample.Moisture == nil {
			continue
		}
		facts := l.SettleFacts()
		facts.Shares = nil
		return tryLoad{facts: facts, moisture: l.Sample.Moisture.Percent, from: f.Say("the load of ticket %d", l.Number)}, true
	}
	return tryLoad{}, false
}

// ordinaryLoad is a typical truck, for a grain without tickets: two points above the trigger.
func ordinaryLoad(in session.Language, e *rates.Edition) tryLoad {
	gross, tare := quantity.Int(76_000, quantity.Lb), quantity.Int(26_000, quantity.Lb)
	if e.Units.Weight == quantity.Kg {
		gross, tare = quantity.Int(34_000, quantity.Kg), quantity.Int(12_000, quantity.Kg)
	}
	moisture := quantity.Int(15, quantity.Percent)
	if e.Shrink.Trigger.Given() {
		moisture = e.Shrink.Trigger.Amount.Add(quantity.Int(2, quantity.Percent))
	}
	return tryLoad{
		facts:    settle.Facts{Drafts: []settle.Draft{{Gross: gross, Tare: tare, GrossSource: message.New("example"), TareSource: message.New("example")}}},
		moisture: moisture, from: in.Say("an ordinary truck, none has come yet"), invented: true,
	}
}

// neededFindings are results without discount or premium, for the factors an edition requires: a
// quality at its base, no dockage, no smell.
func neededFindings(e *rates.Edition) []settle.Finding {
	var out []settle.Finding
	for _, d := range e.Discounts {
		if d.MustTest && d.Factor.ID != grain.Moisture {
			out = append(out, settle.Finding{Factor: d.Factor.ID, Amount: harmless(d), Source: message.New("example")})
		}
	}
	if factor, ok := e.Commodity.Factor(grain.Dockage); ok && e.Dockage.MustTest {
		out = append(out, settle.Finding{Factor: grain.Dockage, Amount: quantity.Zero(factor.Unit), Source: message.New("example")})
	}
	return out
}

// harmless returns a result of a factor that has neither discount nor premium.
func harmless(d discount.Rule) quantity.Amount {
	if d.Form == discount.PerUnit {
		return d.Base.Amount
	}
	for _, b := range d.Rows {
		switch nothing := !b.Refuse && b.Cell.Amount.IsZero(); {
		case nothing && b.HasHigh && b.HighIn:
			return b.High
		case nothing && b.HasLow && b.LowIn:
			return b.Low
		case nothing && b.HasLow && b.HasHigh:
			return b.Low.Add(b.High).Div(quantity.Int(2, quantity.Plain))
		}
	}
	return quantity.Zero(d.Factor.Unit)
}

// under are the facts as an edition can settle them: with the moisture, and
// without a price that is per another unit.
func (t tryLoad) under(e *rates.Edition) settle.Facts {
	f := t.facts
	if t.invented {
		f.Findings = neededFindings(e)
	}
	f.Moisture = settle.Reading{Percent: t.moisture, Source: message.New("tried")}
	if f.Price != nil && f.Price.Amount.Unit() != quantity.Dollar.Per(e.Units.Settle) {
		f.Price = nil
	}
	return f
}

// Tried describes the load tried.
func (r *Rates) Tried() string {
	e := r.edition()
	if e == nil {
		return ""
	}
	t := r.loads.on(e)
	price := r.session.Say("price not set")
	if p := t.under(e).Price; p != nil {
		price = p.Amount.String()
	}
	return r.session.Say("Tried on %s: net %s, %s, %s. Ctrl+E tries another.", t.from, netOf(t.facts), t.moisture, price)
}

func netOf(f settle.Facts) quantity.Amount {
	net := quantity.Zero(f.Drafts[0].Gross.Unit())
	for _, d := range f.Drafts {
		net = net.Add(d.Gross.Sub(d.Tare))
	}
	return net
}

// AskLoad asks for another load to try: its net, moisture, price and results.
func (r *Rates) AskLoad() {
	e := r.edition()
	if e == nil {
		return
	}
	t := r.loads.on(e)
	net := netOf(t.facts)
	price := ""
	if p := t.under(e).Price; p != nil {
		price = session.Bare(p.Amount)
	}
	fields := []model.AskField{
		{ID: "net", Label: r.session.Say("Net"), Unit: net.Unit().String(), Value: net.Figure(), Chars: 9, Figures: true, Required: true},
		{ID: "moisture", Label: r.session.Say("Moisture"), Unit: "%", Value: session.Bare(t.moisture), Chars: 7, Figures: true, Required: true},
		{ID: "price", Label: r.session.Say("Price"), Unit: quantity.Dollar.Per(e.Units.Settle).String(), Value: price, Chars: 9, Figures: true, Hint: r.session.Say("empty: no price")},
	}
	for _, factor := range triedFactors(e) {
		fields = append(fields, model.AskField{
			ID: string(factor.ID), Label: r.session.Say(session.ShortName(factor)), Unit: factor.Unit.String(), Value: findingValue(r.session.Language, t.facts, factor),
			Chars: 7, Hint: factorHint(r.session.Language, factor),
		})
	}
	r.session.Put(model.Ask{
		Title: r.session.Say("Another load to try"), Text: r.session.Say("Nothing of it is written down."), Fields: fields, Yes: r.session.Say("Try it"),
		Check: func(values map[string]string) map[string]string {
			_, faults := readLoad(r.session.Language, e, net.Unit(), values)
			return faults
		},
		Then: func(values map[string]string) {
			r.loads.of[e.Commodity.ID], _ = readLoad(r.session.Language, e, net.Unit(), values)
			r.forget()
			r.session.Window.Redraw()
		},
	})
}

func factorHint(in session.Language, factor grain.Factor) string {
	if factor.YesNo {
		return in.Say("yes or no; empty: not tested")
	}
	return in.Say("empty: not tested")
}

// triedFactors are the factors an edition looks at, each once.
func triedFactors(e *rates.Edition) []grain.Factor {
	var out []grain.Factor
	add := func(factor grain.Factor) {
		if factor.ID != grain.Moisture && !slices.ContainsFunc(out, func(f grain.Factor) bool { return f.ID == factor.ID }) {
			out = append(out, factor)
		}
	}
	for _, d := range e.Discounts {
		add(d.Factor)
	}
	if dockage, ok := e.Commodity.Factor(grain.Dockage); ok && !e.Dockage.Source.IsZero() {
		add(dockage)
	}
	return out
}

// findingValue returns the load's result of a factor, as it is typed.
func findingValue(in session.Language, f settle.Facts, factor grain.Factor) string {
	for _, found := range f.Findings {
		switch {
		case found.Factor != factor.ID:
		case factor.YesNo:
			return in.YesOrNo(found.Present)
		default:
			return session.Bare(found.Amount)
		}
	}
	return ""
}

// readLoad reads the sheet; the faults are sentences by field.
func readLoad(in session.Language, e *rates.Edition, unit quantity.Unit, values map[string]string) (tryLoad, map[string]string) {
	texts := map[string]string{"net": values["net"], "moisture": values["moisture"], "price": values["price"]}
	for _, factor := range triedFactors(e) {
		texts[string(factor.ID)] = session.PlainText(in, factor, values[string(factor.ID)])
	}
	facts, wrong := entry.Trial{Edition: e, Unit: unit, Needed: []string{"net", "moisture"}, Source: message.New("typed")}.Read(texts)
	faults := map[string]string{}
	for _, f := range wrong {
		faults[f.Field] = in.Sentence(f.Err)
	}
	t := tryLoad{facts: facts, from: in.Say("a load typed here")}
	if reading, ok := facts.Moisture.(settle.Reading); ok {
		t.moisture = reading.Percent
	}
	return t, faults
}
