package office

import (
	"cmp"
	"context"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/office/terms"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Load returns the current state of one load.
func Load(ctx context.Context, d Desk, id string) (*load.Load, error) {
	facts, err := d.Reader().FactsOf(ctx, LoadSubject(id))
	if err != nil {
		return nil, err
	}
	l, err := Replay(id, facts)
	if err != nil {
		return nil, err
	}
	return l, AttachCharts(ctx, d, l)
}

// Yard are the loads that have no ticket yet and were not turned away, in the
// order they came.
func Yard(ctx context.Context, d Desk) ([]*load.Load, error) {
	rows, err := d.Reader().Loads(ctx, book.LoadFilter{Phases: []string{string(load.OnYard), string(load.Ready)}})
	if err != nil {
		return nil, err
	}
	out := make([]*load.Load, 0, len(rows))
	for _, r := range rows {
		l, err := Load(ctx, d, r.ID)
		if err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	sortByOpening(out)
	return out, nil
}

// Ticket finds the load of a ticket.
func Ticket(ctx context.Context, d Desk, number int64) (*load.Load, error) {
	rows, err := d.Reader().Loads(ctx, book.LoadFilter{Ticket: number})
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 {
		return nil, NoTicket(number)
	}
	return Load(ctx, d, rows[0].ID)
}

func NoTicket(number int64) error {
	if opening.IsLot(number) {
		return message.NotFound.Errorf("%d is the number of an opening balance, not of a ticket; the paper of the opening tells of it", number)
	}
	return message.NotFound.Errorf("there is no ticket %d in this book. Look the number up on the slip, or find the load by grower, truck or day", number)
}

// Delivered is the load of a ticket, or of an opening balance by its number: what a grower is paid for,
// and what stands on receipts.
func Delivered(ctx context.Context, d Desk, number int64) (*load.Load, error) {
	if !opening.IsLot(number) {
		return Ticket(ctx, d, number)
	}
	all, err := RecordsOf[opening.Opening](ctx, d.Reader())
	if err != nil {
		return nil, err
	}
	if l := opening.LoadNumbered(all, number); l != nil {
		return l, nil
	}
	return nil, NoTicket(number)
}

// PartOf is an owner's part of a load with a ticket, counted from zero; of an opening balance, the
// balance.
func PartOf(l *load.Load, owner int) (settle.Part, error) {
	if l.Balance != nil {
		return balancePart(l), nil
	}
	return terms.PartOf(RowOf(l), owner)
}

// balancePart is an opening balance as the part of a ticket: settled long ago, with nothing to charge.
func balancePart(l *load.Load) settle.Part {
	none := quantity.Zero(quantity.Dollar)
	value := none
	if l.Details.Price != nil {
		value = toCents.Apply(l.Details.Price.Mul(l.Balance.Quantity))
	}
	return settle.Part{
		Net: l.Balance.Settled, Settled: l.Balance.Settled, Quantity: l.Balance.Quantity, Price: l.Details.Price,
		Drying: none, Discounts: none, Premiums: none, Charges: none, Value: value, Payable: value, Services: none, NetValue: value,
	}
}

// toCents rounds what an opening balance is worth at its price.
var toCents = quantity.To("0.01", quantity.HalfUp)

// Replay adds up the journal's facts about one load. No facts at all is a load
// that is not in the book.
func Replay(id string, facts []journal.Fact) (*load.Load, error) {
	if len(facts) == 0 {
		return nil, message.NotFound.Errorf("there is no load %s in this book", id)
	}
	stamped := make([]load.Stamped, 0, len(facts))
	for _, f := range facts {
		fact, err := load.Read(f.Kind, f.Body)
		if err != nil {
			return nil, message.Errorf("fact %d: %w", f.Seq, err)
		}
		stamped = append(stamped, load.Stamped{Fact: fact, Stamp: load.Stamp{At: f.At, Who: f.Who, Desk: f.Desk}})
	}
	return load.Replay(id, stamped)
}

const loadPrefix = "load "

func LoadSubject(loadID string) string { return loadPrefix + loadID }

// LoadOfSubject is the load that a fact's subject names, if it names one.
func LoadOfSubject(subject string) (id string, ok bool) {
	return strings.CutPrefix(subject, loadPrefix)
}

// sortByOpening sorts loads by arrival.
func sortByOpening(loads []*load.Load) {
	slices.SortFunc(loads, func(a, b *load.Load) int {
		return cmp.Or(cmp.Compare(a.Opened.At, b.Opened.At), cmp.Compare(LoadNumber(a.ID), LoadNumber(b.ID)))
	})
}

// LoadNumber is the running number in a load's id.
func LoadNumber(id string) int {
	n, _ := strconv.Atoi(strings.TrimPrefix(id, "L"))
	return n
}

// AttachCharts attaches to a load what its facts name but do not contain: the desk's time and the
// charts of its tests.
func AttachCharts(ctx context.Context, d Desk, l *load.Load) error {
	l.UseClock(d.Local)
	return useCharts(ctx, d, l)
}

// useCharts attaches the charts a load's moisture was looked up in: those in use where their text
// is the same, else the text the book keeps.
func useCharts(ctx context.Context, d Desk, l *load.Load) error {
	texts := l.ChartTexts()
	if len(texts) == 0 {
		return nil
	}
	var charts []*chart.Chart
	for _, c := range texts {
		chart, err := d.Charts().ByID(c.ID)
		if err != nil || chart.Hash != c.Hash {
			if chart, err = keptChart(ctx, d, c); err != nil {
				return err
			}
		}
		charts = append(charts, chart)
	}
	set, err := chart.NewSet(charts...)
	l.UseCharts(set)
	return err
}

func keptChart(ctx context.Context, d Desk, c load.ChartText) (*chart.Chart, error) {
	id, text, err := d.Reader().Edition(ctx, c.Hash)
	if err != nil {
		return nil, err
	}
	return chart.Read("chart "+id+" in the book", []byte(text))
}

// LoadTitle returns the name of a load for a sentence.
func LoadTitle(l *load.Load) message.Text {
	if l.Number == 0 {
		return message.New("Load %v", l.ID)
	}
	return message.New("Ticket %d (load %v)", l.Number, l.ID)
}

// LastLoad returns the newest ticketed load of a grower, or of a truck where no grower is given,
// for defaults when the same one comes again. Found is false when neither has been here.
func LastLoad(ctx context.Context, d Desk, grower, truck string) (l *load.Load, found bool, err error) {
	filter := book.LoadFilter{Grower: grower, Newest: true, Limit: 1}
	if grower == "" {
		filter.Truck = truck
	}
	if grower == "" && truck == "" {
		return nil, false, nil
	}
	rows, err := d.Reader().Loads(ctx, filter)
	if err != nil || len(rows) == 0 {
		return nil, false, err
	}
	l, err = Load(ctx, d, rows[0].ID)
	return l, err == nil, err
}

// LastReceived is the newest load of grain that came and was not sent away again, narrowed by a
// filter: the one that another load may repeat.
func LastReceived(ctx context.Context, d Desk, filter book.LoadFilter) (l *load.Load, found bool, err error) {
	filter.Newest, filter.Limit = true, lookedThrough
	rows, err := d.Reader().Loads(ctx, filter)
	if err != nil {
		return nil, false, err
	}
	came := slices.IndexFunc(rows, func(r book.LoadRow) bool {
		return r.Direction == string(load.Inbound) && r.Phase != string(load.TurnedAway) && r.Phase != string(load.TakenBack)
	})
	if came < 0 {
		return nil, false, nil
	}
	l, err = Load(ctx, d, rows[came].ID)
	return l, err == nil, err
}

// lookedThrough is the number of loads searched for the last one that came in.
const lookedThrough = 50
