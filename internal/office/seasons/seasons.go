// Package seasons reads a season out of a book, to be made into pictures.
package seasons

import (
	"context"
	"strings"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/season"
)

// Reader reads seasons of one book. It keeps the times of weighings it has met, so that a second
// reading looks at what is new alone.
type Reader struct {
	desk    office.Desk
	weighed map[string]string // the last weighing of a load, by subject
	seen    int64             // the last fact looked at
}

// NewReader makes a reader of the book at a desk.
func NewReader(d office.Desk) *Reader { return &Reader{desk: d, weighed: map[string]string{}} }

// Read gathers what a season is made of, from one day to another, and holds a day against the
// others; no day is the last one on which anything came in.
func (r *Reader) Read(ctx context.Context, from, to, day quantity.Date) (*season.Facts, error) {
	f := &season.Facts{From: from, To: to, Day: day, Weight: r.desk.Profile().WeightUnit(), Triggers: map[string]quantity.Amount{}}
	for _, part := range []func(context.Context, *season.Facts) error{r.intake, r.weighings, r.loads, r.kept, r.meters} {
		if err := part(ctx, f); err != nil {
			return nil, err
		}
	}
	if f.Day.IsZero() {
		f.Day = lastIntake(f)
	}
	for _, id := range f.Grains() {
		if trigger, some := triggerOn(r.desk, id, to); some {
			f.Triggers[id] = trigger
		}
	}
	return f, nil
}

// intake is the weight received by day, as the position of each day has it.
func (r *Reader) intake(ctx context.Context, f *season.Facts) (err error) {
	if f.Intake, err = r.intakeBetween(ctx, f.From, f.To); err != nil {
		return err
	}
	f.Before, err = r.intakeBetween(ctx, f.From.AddMonths(-12), f.To.AddMonths(-12))
	return err
}

func (r *Reader) intakeBetween(ctx context.Context, from, to quantity.Date) ([]season.Intake, error) {
	rows, err := r.desk.Reader().StockDays(ctx, from.String(), to.String())
	if err != nil {
		return nil, err
	}
	var out []season.Intake
	for _, row := range rows {
		day, err := office.ListedDay(row.Day)
		if err != nil {
			return nil, err
		}
		if came := row.In.Sub(row.Back); !came.IsZero() {
			out = append(out, season.Intake{Day: day, Commodity: row.Commodity, Weight: came})
		}
	}
	return out, nil
}

// lastIntake is the last day on which anything came in; the last of the span where nothing did.
func lastIntake(f *season.Facts) quantity.Date {
	last := quantity.Date{}
	for _, one := range f.Intake {
		if one.Day.After(last) {
			last = one.Day
		}
	}
	if last.IsZero() {
		return f.To
	}
	return last
}

// weighings notes when each load was weighed last.
func (r *Reader) weighings(ctx context.Context, _ *season.Facts) error {
	for fact, err := range r.desk.Reader().Facts(ctx, book.FactFilter{Kind: load.Weighed{}.Kind(), FromSeq: r.seen + 1}) {
		if err != nil {
			return err
		}
		r.weighed[fact.Subject], r.seen = fact.At, fact.Seq
	}
	return nil
}

func (r *Reader) loads(ctx context.Context, f *season.Facts) error {
	rows, err := r.desk.Reader().Loads(ctx, book.LoadFilter{FromDay: f.From.String(), ToDay: f.To.String()})
	if err != nil {
		return err
	}
	examples := map[string]bool{}
	for _, row := range rows {
		one, err := r.load(row)
		if err != nil {
			return err
		}
		f.Loads = append(f.Loads, one)
		examples[row.EditionHash] = true
	}
	for hash := range examples {
		if hash == "" {
			continue
		}
		e, err := r.desk.Kept(ctx, hash)
		if err != nil {
			return err
		}
		f.Example = f.Example || e.Status == rates.Example
	}
	return nil
}

func (r *Reader) load(row book.LoadRow) (season.Load, error) {
	one := season.Load{
		Number: row.Ticket, Commodity: row.Commodity, Outbound: row.Direction == string(load.Outbound),
		InForce: row.Phase == string(load.Ticketed), Again: row.Corrects > 0 || row.Reissues > 0,
	}
	var err error
	if one.Summary, err = row.Recorded().Summary(); err != nil {
		return one, message.Errorf("ticket %d: %w", row.Ticket, err)
	}
	day, hour, _ := strings.Cut(r.desk.Local(row.OpenedAt), " ")
	if err := one.Came.UnmarshalText([]byte(day)); err != nil {
		return one, err
	}
	one.Hour = hour[:min(2, len(hour))]
	one.Waited, one.Timed = minutesBetween(row.OpenedAt, r.weighed[office.LoadSubject(row.ID)])
	return one, nil
}

// minutesBetween is the whole minutes from one fact to a later one; false where there is no later
// one.
func minutesBetween(from, to string) (int, bool) {
	a, errA := time.Parse(journal.TimeLayout, from)
	b, errB := time.Parse(journal.TimeLayout, to)
	if errA != nil || errB != nil || !b.After(a) {
		return 0, false
	}
	return int(b.Sub(a) / time.Minute), true
}

// kept are the storage charges and interest of the settlement sheets of the span.
func (r *Reader) kept(ctx context.Context, f *season.Facts) error {
	none := quantity.Zero(quantity.Dollar)
	f.Kept = season.KeptMoney{Storage: none, Interest: none}
	sheets, err := money.Sheets(ctx, r.desk)
	if err != nil {
		return err
	}
	for _, s := range sheets {
		if s.InForce() && s.Day.Between(f.From, f.To) {
			f.Kept.Storage = plus(f.Kept.Storage, s.Figures["keeping"])
			f.Kept.Interest = plus(f.Kept.Interest, s.Figures["interest"])
		}
	}
	return nil
}

// plus adds money, if there is any.
func plus(sum, a quantity.Amount) quantity.Amount {
	if !quantity.Recorded(a) {
		return sum
	}
	return sum.Add(a)
}

func (r *Reader) meters(ctx context.Context, f *season.Facts) error {
	all, err := office.Meters(ctx, r.desk)
	if err != nil {
		return err
	}
	for _, m := range all {
		log, err := office.ReadMeterLog(ctx, r.desk, m.ID, "", 0)
		if err != nil {
			return err
		}
		f.Meters = append(f.Meters, season.Meter{ID: m.ID, Log: log.Chart})
	}
	return nil
}

// triggerOn is the moisture above which something is taken of a grain under the rates that the house
// settles it by on a day: that of shrink or of drying, whichever comes first.
func triggerOn(d office.Desk, commodity string, day quantity.Date) (trigger quantity.Amount, some bool) {
	schedule, taken := d.Profile().Schedule(commodity)
	if !taken {
		return trigger, false
	}
	e, err := d.Rates().On(schedule, commodity, day)
	if err != nil {
		return trigger, false
	}
	if e.Shrink.Trigger.Given() {
		trigger, some = e.Shrink.Trigger.Amount, true
	}
	if dry := e.Drying.Trigger; dry.Given() && (!some || dry.Amount.Less(trigger)) {
		trigger, some = dry.Amount, true
	}
	return trigger, some
}
