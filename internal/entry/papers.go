package entry

import (
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// The fields of where grain grew, how it is kept apart, and of the papers that go with it. Few loads
// need them.

func grownFields() []Field {
	return []Field{
		seldom(word("farm-number", "Farm number", WhoPart, func(d *load.Details) *string { return &d.Grown.Number })),
		seldom(word("grown-in", "Grown in", WhoPart, func(d *load.Details) *string { return &d.Grown.Place })),
		seldom(word("variety", "Variety declared", WhoPart, func(d *load.Details) *string { return &d.Grown.Variety })),
		seldom(word("lot", "Lot", WhoPart, func(d *load.Details) *string { return &d.Lot })),
		seldom(word("previous-cargo", "Previous cargo", WhoPart, func(d *load.Details) *string { return &d.Grown.Previous })),
	}
}

func paperFields() []Field {
	return []Field{
		oneOf("zero", "Zero before weighing", map[string]string{"yes": "shown", "shown": "shown", "no": "not shown", "not shown": "not shown"}, func(d *load.Details) *string { return &d.Zero }),
		oneOf("apart", "Truck and trailer", map[string]string{"uncoupled": "uncoupled", "agreed": "agreed"}, func(d *load.Details) *string { return (*string)(&d.Apart) }),
		originWeightField(),
		seldom(word("origin-ticket", "Origin ticket", TermsPart, func(d *load.Details) *string { return &d.Elsewhere.Ticket })),
		seldom(word("origin-scale", "Origin scale", TermsPart, func(d *load.Details) *string { return &d.Elsewhere.Scale })),
		storedFromField(), padField(), padHourField(),
		seldom(word("vehicle", "Railcar or barge", TermsPart, func(d *load.Details) *string { return &d.Shipping.Vehicle })),
		seldom(word("seals", "Seals", TermsPart, func(d *load.Details) *string { return &d.Shipping.Seals })),
		seldom(word("lading", "Bill of lading", TermsPart, func(d *load.Details) *string { return &d.Shipping.Lading })),
		seldom(word("destination", "Destination", TermsPart, func(d *load.Details) *string { return &d.Shipping.Destination })),
		seldom(word("carrier", "Carrier", TermsPart, func(d *load.Details) *string { return &d.Shipping.Carrier })),
		oneOf("freight", "Freight", map[string]string{"prepaid": "prepaid", "collect": "collect"}, func(d *load.Details) *string { return &d.Shipping.Freight }),
	}
}

// oneOf is a detail with few answers, by the words people type for them.
func oneOf(id, label string, answers map[string]string, cell func(*load.Details) *string) Field {
	f := word(id, label, TermsPart, cell)
	f.Seldom = true
	return detail(f, func(d *draft, text string) error {
		answer, known := answers[strings.ToLower(text)]
		if !known && text != "" {
			return message.Invalid.Errorf("%q is no answer here. Choose one of: %s", text, message.Names(", ", slices.Sorted(maps.Keys(answers))))
		}
		*cell(&d.details) = answer
		return nil
	})
}

// originWeightField takes what another certified scale weighed, net.
func originWeightField() Field {
	f := Field{ID: "origin-weight", Label: "Origin weight", Kind: Figure, Part: TermsPart, Seldom: true, shown: func(l *load.Load) string {
		if o := l.Details.Elsewhere; o.Weight != nil {
			return o.Weight.Figure()
		}
		return ""
	}}
	return detail(f, func(d *draft, text string) error {
		if text == "" {
			d.details.Elsewhere.Weight = nil
			return nil
		}
		w, err := ParseWeight("Origin weight", text, d.house.Profile().WeightUnit())
		if err == nil && w.Sign() <= 0 {
			err = message.Invalid.Errorf("the weight of the origin is %s; it is above zero", w)
		}
		if err == nil {
			d.details.Elsewhere.Weight = &w
		}
		return err
	})
}

func storedFromField() Field {
	f := Field{ID: "stored-from", Label: "Stored from", Kind: Day, Part: TermsPart, Seldom: true, shown: func(l *load.Load) string { return l.Details.StoredFrom.String() }}
	return detail(f, func(d *draft, text string) (err error) {
		var day quantity.Date
		if day, err = ParseDay("Stored from", text, d.house.Today()); err == nil {
			d.details.StoredFrom = day
		}
		return err
	})
}

// padField takes the number of the emergency ticket that a load was written on.
func padField() Field {
	f := Field{ID: "pad", Label: "Emergency ticket", Kind: Figure, Part: TermsPart, Seldom: true, shown: func(l *load.Load) string {
		if l.Details.Pad == nil {
			return ""
		}
		return strconv.FormatInt(l.Details.Pad.Number, 10)
	}}
	return detail(f, func(d *draft, text string) error {
		if text == "" {
			d.details.Pad = nil
			return nil
		}
		number, err := strconv.ParseInt(strings.ReplaceAll(text, ",", ""), 10, 64)
		if err != nil || number < 1 {
			return message.Invalid.Errorf("%q is no number of an emergency ticket; type it as it is printed on the pad", text)
		}
		on := load.OnPad{Number: number}
		if d.details.Pad != nil {
			on.Hour = d.details.Pad.Hour
		}
		d.details.Pad = &on
		return nil
	})
}

// padHourField takes the hour that stands on it.
func padHourField() Field {
	f := Field{ID: "pad-hour", Label: "Written at", Kind: Words, Part: TermsPart, Seldom: true, shown: func(l *load.Load) string {
		if l.Details.Pad == nil {
			return ""
		}
		return l.Details.Pad.Hour
	}}
	return detail(f, func(d *draft, text string) error {
		if text == "" {
			return nil
		}
		at, err := time.Parse("15:04", text)
		switch {
		case err != nil:
			return message.Invalid.Errorf("%q is no hour of the day; write it like 14:20", text)
		case d.details.Pad == nil:
			return message.Incomplete.Errorf("the hour %s is that of an emergency ticket; type its number as well", text)
		}
		d.details.Pad = &load.OnPad{Number: d.details.Pad.Number, Hour: at.Format("15:04")}
		return nil
	})
}

// markField takes whether the grade is final.
func markField() Field {
	f := Field{ID: "grade-mark", Label: "Grade is", Kind: Find, Seldom: true, shown: func(l *load.Load) string { return string(l.Sample.Mark) }}
	return found(f, func(d *draft, text string) error {
		switch mark := load.GradeMark(strings.ToLower(text)); mark {
		case "", load.Interim, load.Final:
			d.sample.Mark = mark
			return nil
		}
		return message.Invalid.Errorf("%q is not interim or final; choose one or leave it empty", text)
	})
}
