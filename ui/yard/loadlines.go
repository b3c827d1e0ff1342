package yard

import (
	"fmt"
	"slices"
	"strings"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// makeLines lists the fields in working order for a commodity.
func (f *LoadForm) makeLines(commodity string) []line {
	if f.Leaves() {
		return slices.Concat(
			[]line{f.growerLine(), f.consigneeLine(), f.commodityLine(), f.truckLine()}, f.weightLines(load.Gross),
			f.sampleLines(commodity), f.weightLines(load.Tare), []line{f.binLine(), f.remarkLine()})
	}
	return slices.Concat(
		[]line{f.growerLine(), f.commodityLine(), f.truckLine()}, f.weightLines(load.Gross),
		f.sampleLines(commodity), f.weightLines(load.Tare),
		[]line{f.binLine(), f.termsLine(), f.priceLine(), f.remarkLine()})
}

// commodityID is the commodity as typed, or as the book has it. It decides
// which fields there are.
func (f *LoadForm) commodityID() string {
	id, typed := f.Typed["commodity"]
	if !typed {
		return f.inBook().Details.Commodity
	}
	if _, err := grain.ByID(id); err != nil {
		return ""
	}
	return id
}

func (f *LoadForm) growerLine() line {
	label := session.Say("Grower")
	if f.Leaves() {
		label = session.Say("Owner")
	}
	return detail(line{
		ID: "grower", label: label, kind: model.FindField, Part: model.WhoPart, chars: 24,
		options: func() []model.Option { return f.session.Known().GrowerOptions },
		Shown:   func(l *load.Load) string { return session.PartyText(l.Details.Grower) },
		hint:    func(l *load.Load) string { return session.SharesText(l) },
	}, func(text string, to *load.Details) (string, error) {
		if text == "" {
			to.Grower, to.Shares = load.Party{}, nil
			return "", nil
		}
		g, ok := f.session.Known().Grower(text)
		if !ok {
			return "", fmt.Errorf("%s", session.Say("No grower has the code or name %q. Write the grower down first, under New grower", text))
		}
		to.Grower = load.Party{ID: g.ID, Name: g.Name}
		to.Shares = f.session.Known().Owners(g)
		return "", nil
	})
}

func (f *LoadForm) commodityLine() line {
	return detail(line{
		ID: "commodity", label: session.Say("Commodity"), kind: model.FindField, Part: model.WhoPart, chars: 24,
		options: func() []model.Option { return f.session.Known().CommodityOptions },
		Shown:   func(l *load.Load) string { return l.Details.Commodity },
		hint:    f.ratesHint,
	}, func(text string, to *load.Details) (string, error) {
		if text != "" {
			if _, taken := f.session.Desk.Profile().Schedule(text); !taken {
				return "", fmt.Errorf("%s", session.Say("%q is not taken here. Choose one of the list, or add it in the set-up", text))
			}
		}
		to.Commodity = text
		return "", nil
	})
}

// ratesHint names the rates the load will be settled under.
func (f *LoadForm) ratesHint(l *load.Load) string {
	e := f.Now.edition
	if e == nil || l.Details.Commodity == "" {
		return ""
	}
	return session.Say("rates %s", e.ID)
}

func (f *LoadForm) truckLine() line {
	return detail(line{
		ID: "truck", label: session.Say("Truck"), kind: model.OpenField, Part: model.WhoPart, chars: 24,
		options: func() []model.Option { return f.session.Known().TruckOptions },
		Shown:   func(l *load.Load) string { return session.TruckText(l.Details.Truck) },
	}, func(text string, to *load.Details) (string, error) {
		text = strings.TrimSpace(text)
		t, ok := f.session.Known().Truck(text)
		switch {
		case text == "":
			to.Truck = load.Truck{}
		case ok:
			to.Truck = load.Truck{ID: t.ID, Plate: t.Plate, Trailer: t.Trailer}
		default:
			to.Truck = load.Truck{ID: text}
			return session.Say("not seen before"), nil
		}
		return "", nil
	})
}

func (f *LoadForm) binLine() line {
	return detail(line{
		ID: "bin", label: session.Say("Pit or bin"), kind: model.OpenField, Part: model.ClosePart, chars: 12,
		options: func() []model.Option { return f.session.Known().BinOptions },
		Shown:   func(l *load.Load) string { return l.Details.Bin },
	}, func(text string, to *load.Details) (string, error) {
		to.Bin = strings.TrimSpace(text)
		return "", nil
	})
}

func (f *LoadForm) remarkLine() line {
	return detail(line{
		ID: "remark", label: session.Say("Remark"), kind: model.WordsField, Part: model.ClosePart, chars: 24,
		Shown: func(l *load.Load) string { return l.Details.Remark },
	}, func(text string, to *load.Details) (string, error) {
		to.Remark = strings.TrimSpace(text)
		return "", nil
	})
}

// line is how one field of a load form is shown and read.
type line struct {
	ID, label, unit string
	kind            model.FieldKind
	Part            model.Part
	chars           int
	options         func() []model.Option
	// Shown is the field's text for a load in the book.
	Shown func(*load.Load) string
	// hint is what is said beside the field while nothing is wrong.
	hint func(*load.Load) string
	// read puts what was typed on the draft and says how it was understood,
	// or says in words what is wrong with it.
	read func(text string, d *draft) (reading string, err error)
}

// draft gathers what typed texts change of a load.
type draft struct {
	details          load.Details
	Sample           load.Sample
	weighed          []load.Weighing
	amended, sampled bool
}

// isEmpty reports whether the draft changes nothing.
func (d *draft) isEmpty() bool { return !d.amended && !d.sampled && len(d.weighed) == 0 }

// detail is a line about the load itself: its text changes the details.
func detail(l line, set func(text string, to *load.Details) (string, error)) line {
	l.read = func(text string, d *draft) (string, error) {
		reading, err := set(text, &d.details)
		d.amended = d.amended || err == nil
		return reading, err
	}
	return l
}

// finding is a line about the sample.
func sampled(l line, set func(text string, to *load.Sample) (string, error)) line {
	l.read = func(text string, d *draft) (string, error) {
		reading, err := set(text, &d.Sample)
		d.sampled = d.sampled || err == nil
		return reading, err
	}
	return l
}
