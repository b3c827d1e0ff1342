package present

import (
	"fmt"
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
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
	id, typed := f.typed["commodity"]
	if !typed {
		return f.inBook().Details.Commodity
	}
	if _, err := grain.ByID(id); err != nil {
		return ""
	}
	return id
}

func (f *LoadForm) growerLine() line {
	label := Say("Grower")
	if f.Leaves() {
		label = Say("Owner")
	}
	return detail(line{
		id: "grower", label: label, kind: model.FindField, part: model.WhoPart, chars: 24,
		options: func() []model.Option { return f.frame.known().growerOptions },
		shown:   func(l *load.Load) string { return partyText(l.Details.Grower) },
		hint:    func(l *load.Load) string { return sharesText(l) },
	}, func(text string, to *load.Details) (string, error) {
		if text == "" {
			to.Grower, to.Shares = load.Party{}, nil
			return "", nil
		}
		g, ok := f.frame.known().grower(text)
		if !ok {
			return "", fmt.Errorf("%s", Say("No grower has the code or name %q. Write the grower down first, under New grower", text))
		}
		to.Grower = load.Party{ID: g.ID, Name: g.Name}
		to.Shares = f.frame.known().owners(g)
		return "", nil
	})
}

func (f *LoadForm) commodityLine() line {
	return detail(line{
		id: "commodity", label: Say("Commodity"), kind: model.FindField, part: model.WhoPart, chars: 24,
		options: func() []model.Option { return f.frame.known().commodityOptions },
		shown:   func(l *load.Load) string { return l.Details.Commodity },
		hint:    f.ratesHint,
	}, func(text string, to *load.Details) (string, error) {
		if text != "" {
			if _, taken := f.frame.Desk.Profile().Schedule(text); !taken {
				return "", fmt.Errorf("%s", Say("%q is not taken here. Choose one of the list, or add it in the set-up", text))
			}
		}
		to.Commodity = text
		return "", nil
	})
}

// ratesHint names the rates the load will be settled under.
func (f *LoadForm) ratesHint(l *load.Load) string {
	e := f.now.edition
	if e == nil || l.Details.Commodity == "" {
		return ""
	}
	return Say("rates %s", e.ID)
}

func (f *LoadForm) truckLine() line {
	return detail(line{
		id: "truck", label: Say("Truck"), kind: model.OpenField, part: model.WhoPart, chars: 24,
		options: func() []model.Option { return f.frame.known().truckOptions },
		shown:   func(l *load.Load) string { return truckText(l.Details.Truck) },
	}, func(text string, to *load.Details) (string, error) {
		text = strings.TrimSpace(text)
		t, ok := f.frame.known().truck(text)
		switch {
		case text == "":
			to.Truck = load.Truck{}
		case ok:
			to.Truck = load.Truck{ID: t.ID, Plate: t.Plate, Trailer: t.Trailer}
		default:
			to.Truck = load.Truck{ID: text}
			return Say("not seen before"), nil
		}
		return "", nil
	})
}

func (f *LoadForm) binLine() line {
	return detail(line{
		id: "bin", label: Say("Pit or bin"), kind: model.OpenField, part: model.ClosePart, chars: 12,
		options: func() []model.Option { return f.frame.known().binOptions },
		shown:   func(l *load.Load) string { return l.Details.Bin },
	}, func(text string, to *load.Details) (string, error) {
		to.Bin = strings.TrimSpace(text)
		return "", nil
	})
}

func (f *LoadForm) remarkLine() line {
	return detail(line{
		id: "remark", label: Say("Remark"), kind: model.WordsField, part: model.ClosePart, chars: 24,
		shown: func(l *load.Load) string { return l.Details.Remark },
	}, func(text string, to *load.Details) (string, error) {
		to.Remark = strings.TrimSpace(text)
		return "", nil
	})
}
