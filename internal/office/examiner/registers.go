package examiner

import (
	"context"
	"encoding/json"
	"slices"

	"tenthpoint/internal/book"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/receipts"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Register is one of the examiner's registers. Name is fit for a file name.
type Register struct {
	Name  string
	Paper report.Document
}

// Registers returns the examiner's registers, over the days from one to another, both included.
func Registers(ctx context.Context, d office.Desk, from, to quantity.Date) ([]Register, error) {
	if from.IsZero() || to.IsZero() || to.Before(from) {
		return nil, message.Invalid.Errorf("the period runs from %q to %q; give its first and its last day, in that order", from, to)
	}
	r := registrar{desk: d, ctx: ctx, period: daysheet.Period{From: from, To: to}}
	for _, one := range []struct {
		name  string
		paper func() (report.Document, error)
	}{
		{"tickets", r.tickets}, {"voids", r.voids}, {"overrides", r.overrides}, {"samples", r.samples},
		{"meter-checks", r.meters}, {"days-closed", r.days}, {"disputes", r.disputes},
	} {
		paper, err := one.paper()
		if err != nil {
			return nil, message.Errorf("the register of %s: %w", one.name, err)
		}
		r.out = append(r.out, Register{Name: one.name, Paper: paper})
	}
	err := r.receipts()
	return r.out, err
}

// receipts adds the register of warehouse receipts, all numbers of the series, where a house issues
// any.
func (r *registrar) receipts() error {
	all, err := receipts.All(r.ctx, r.desk)
	if err != nil || len(all) == 0 {
		return err
	}
	r.out = append(r.out, Register{Name: "receipts", Paper: receipts.Register(all, r.desk.Profile(), r.desk.Today())})
	return nil
}

// registrar gathers registers of one period.
type registrar struct {
	desk    office.Desk
	ctx     context.Context
	period  daysheet.Period
	issued  []daysheet.Ticket // in the period, by number
	example bool
	out     []Register
}

func (r *registrar) read(f book.LoadFilter) ([]daysheet.Ticket, error) {
	rows, err := r.desk.Reader().Loads(r.ctx, f)
	if err != nil {
		return nil, err
	}
	out := make([]daysheet.Ticket, 0, len(rows))
	for _, row := range rows {
		t, err := office.SheetTicket(r.desk, row)
		if err != nil {
			return nil, err
		}
		out = append(out, t)
	}
	return out, nil
}

// tickets lists the numbers from the first to the last of the period, also
// those among them that count on another day.
func (r *registrar) tickets() (report.Document, error) {
	var err error
	if r.issued, err = r.read(book.LoadFilter{FromDay: r.period.From.String(), ToDay: r.period.To.String()}); err != nil {
		return report.Document{}, err
	}
	if r.example, err = office.IsExample(r.ctx, r.desk, r.issued); err != nil {
		return report.Document{}, err
	}
	all := r.issued
	if len(all) > 0 {
		if all, err = r.read(book.LoadFilter{FromTicket: all[0].Number, ToTicket: all[len(all)-1].Number}); err == nil {
			err = r.complete(all)
		}
	}
	return daysheet.TicketRegister(r.desk.Profile(), r.period, all, r.example), err
}

// complete adds to tickets what the read models lack: the owners' parts, the inspector's grade, and
// the moisture that a protein is stated at.
func (r *registrar) complete(all []daysheet.Ticket) error {
	for i := range all {
		l, err := office.Load(r.ctx, r.desk, all[i].Load)
		if err != nil {
			return err
		}
		all[i].Grade, all[i].Parts = l.Sample.Grade, office.OwnersParts(l)
		if all[i].ProteinBasis, err = r.proteinBasis(l); err != nil {
			return err
		}
	}
	return nil
}

// proteinBasis is empty for a load without protein, or whose law names no basis.
func (r *registrar) proteinBasis(l *load.Load) (message.Text, error) {
	if !slices.ContainsFunc(l.Sample.Findings, func(f load.Finding) bool { return f.Factor == grain.Protein }) {
		return message.Text{}, nil
	}
	tables, err := office.TablesFor(r.ctx, r.desk, l)
	if err != nil {
		return message.Text{}, err
	}
	c, err := tables.ByID(l.Details.Commodity)
	if err != nil {
		return message.Text{}, err
	}
	if f, has := c.Factor(grain.Protein); has && f.HasBasis() {
		return f.BasisText(), nil
	}
	return message.Text{}, nil
}

func (r *registrar) voids() (report.Document, error) {
	ended, err := r.read(book.LoadFilter{EndedFrom: r.period.From.String(), EndedTo: r.period.To.String()})
	return daysheet.VoidRegister(r.desk.Profile(), r.period, ended, r.example), err
}

func (r *registrar) overrides() (report.Document, error) {
	return daysheet.OverrideRegister(r.desk.Profile(), r.period, r.issued, r.example), nil
}

func (r *registrar) samples() (report.Document, error) {
	all, err := office.SamplesKept(r.ctx, r.desk)
	if err != nil {
		return report.Document{}, err
	}
	var kept []daysheet.KeptSample
	for _, s := range all {
		if s.Taken.After(r.period.To) {
			continue
		}
		kept = append(kept, daysheet.KeptSample{Number: s.Number, Load: s.Load, Ticket: s.TicketNo, Grower: s.GrowerName, Commodity: grain.NameOf(s.Crop),
			Place: s.Place, Taken: s.Taken, Until: s.Until, Held: s.Held.Message()})
	}
	return daysheet.SampleRegister(r.desk.Profile(), r.period, kept), nil
}

func (r *registrar) meters() (report.Document, error) {
	meters, err := office.Meters(r.ctx, r.desk)
	if err != nil {
		return report.Document{}, err
	}
	var records []daysheet.MeterRecord
	for _, m := range meters {
		record := daysheet.MeterRecord{Meter: m}
		if record.Standing, err = office.MeterStatusOn(r.desk, office.ReadNow(r.ctx, r.desk), m, r.period.To); err != nil {
			return report.Document{}, err
		}
		checks, err := office.MeterChecks(r.ctx, r.desk, m.ID)
		if err != nil {
			return report.Document{}, err
		}
		record.Checks = within(checks, r.period)
		records = append(records, record)
	}
	return daysheet.MeterRegister(r.desk.Profile(), r.period, records), nil
}

func within(checks []meter.Check, p daysheet.Period) []meter.Check {
	var out []meter.Check
	for _, c := range checks {
		if c.Day.Between(p.From, p.To) {
			out = append(out, c)
		}
	}
	return out
}

func (r *registrar) days() (report.Document, error) {
	facts, err := office.DaysClosed(r.ctx, r.desk)
	if err != nil {
		return report.Document{}, err
	}
	var days []daysheet.ClosedDay
	for _, f := range facts {
		var closed office.DayClosed
		if err := json.Unmarshal(f.Body, &closed); err != nil {
			return report.Document{}, message.Errorf("fact %d, the closing of a day, cannot be read: %w", f.Seq, err)
		}
		if closed.Day.Between(r.period.From, r.period.To) {
			days = append(days, daysheet.ClosedDay{Day: closed.Day, By: f.Who, At: r.desk.Local(f.At), Remark: closed.Remark, Sheet: closed.Sheet})
		}
	}
	return daysheet.DayRegister(r.desk.Profile(), r.period, days), nil
}

func (r *registrar) disputes() (report.Document, error) {
	all, err := office.Disputes(r.ctx, r.desk)
	if err != nil {
		return report.Document{}, err
	}
	var raised []dispute.Dispute
	for _, one := range all {
		if one.Raised.Day.Between(r.period.From, r.period.To) {
			raised = append(raised, one)
		}
	}
	return daysheet.DisputeRegister(r.desk.Profile(), r.period, raised), nil
}
