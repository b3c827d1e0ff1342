package sheets

import (
	"context"
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/entry/settling"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paper"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/tariff"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// Draft is the sheet as it now stands: what is drawn, and the order it is issued by.
type Draft struct {
	Fields  []model.Field
	Figures []Figure
	Remark  model.Status  // what is still to be done, or why the sheet cannot be
	Paper   *paper.Layout // as it will print; nil while it cannot be

	order  paysheet.Order
	worked bool // the sheet can be issued
}

// Figure is one of the large figures.
type Figure struct{ Caption, Value, Unit string }

// work works the sheet out by what is typed and chosen now.
func (s *Settle) work() {
	house := settling.House{House: s.house, Grain: s.grain(), Levies: s.levies, Tariff: s.tariff}
	order, problems := settling.ReadSheet(s.texts, house)
	s.Now = Draft{Figures: s.figures(nil), order: order}
	sheet, worked, err := s.draft(problems)
	s.Now.Fields = s.fields(problems)
	if s.Now.Remark = s.remark(problems, err); err != nil || !s.Now.worked {
		return
	}
	s.Now.Figures = s.figures(&worked)
	doc := money.SheetPaper(sheet, worked, paysheet.Rules{Tariff: order.Tariff, Levies: order.Levies}, s.session.GrainName(sheet.Commodity), s.session.Desk, s.session.Language.Printer())
	pages := doc.Layout(report.PageFor(s.session.Desk.Profile().Rules))
	s.Now.Paper = &pages
}

// draft works the sheet out as the act that issues it does, once tickets are chosen and nothing typed
// is wrong.
func (s *Settle) draft(problems typed.Problems) (sheet paysheet.Sheet, worked paysheet.Worked, err error) {
	if s.failed != nil || len(problems) > 0 || len(s.parts) == 0 {
		return sheet, worked, s.failed
	}
	o := &s.Now.order
	for _, chosen := range s.chosen() {
		if text := s.parts[chosen.Number]; text != "" {
			part, err := settling.ReadPart(text, o.Tariff.Settle)
			if err != nil {
				return sheet, worked, err
			}
			chosen.Quantity = &part
		}
		o.Tickets = append(o.Tickets, chosen)
	}
	sheet, worked, err = money.Draft(context.Background(), s.session.Desk, *o, s.around)
	s.Now.worked = err == nil
	return sheet, worked, err
}

// tariff is a tariff by its id; of none, the one in force for the grain, while a grain is known.
func (s *Settle) tariff(id, grain string, day quantity.Date) (*tariff.Edition, error) {
	if grain == "" || s.failed != nil {
		return nil, nil
	}
	if e, known := s.tariffs.ByID(id); known {
		return e, nil
	}
	return office.TariffInForce(s.session.Desk, s.tariffs, grain, day)
}

// remark is the next thing to do, or why the sheet cannot be.
func (s *Settle) remark(problems typed.Problems, err error) model.Status {
	f := s.session
	switch {
	case err != nil:
		return model.Status{State: model.Stop, Text: f.Sentence(err)}
	case s.texts[settling.Grower] == "":
		return model.Status{State: model.Missing, Text: f.Say("Who is settled with?")}
	case len(problems) > 0:
		return model.Status{State: model.Stop, Text: f.Sentence(problems.Err(settling.SheetFields()))}
	case len(s.parts) == 0:
		return model.Status{State: model.Missing, Text: f.Say("Choose tickets with Space.")}
	case s.manager() == "":
		return model.Status{State: model.Missing, Text: f.Say("Which manager settles?")}
	}
	return model.Status{State: model.OK, Text: f.Say("F12 issues the sheet and prints it.")}
}

// figures are the large figures of a sheet; nil for none yet.
func (s *Settle) figures(w *paysheet.Worked) []Figure {
	f := s.session
	out := []Figure{{f.Say("Quantity"), session.NotYet, ""}, {f.Say("Net value"), session.NotYet, ""}, {f.Say("Payable"), session.NotYet, ""}}
	if w == nil {
		return out
	}
	write := f.Signs().Write
	out[0].Value, out[0].Unit = write(w.Quantity.Value().Figure()), w.Quantity.Value().Unit().String()
	out[1].Value, out[2].Value = write(w.Net.Value().FixedString(cents)), write(w.Payable.Value().FixedString(cents))
	return out
}

// cents are the decimals of money.
const cents = 2

// fields are the fields of the form with what is wrong in them.
func (s *Settle) fields(problems typed.Problems) []model.Field {
	filled := ask.Filled{Values: s.texts, Options: s.options, Unit: s.priceUnit()}
	var out []model.Field
	for i, asked := range ask.Fields(s.session, settling.SheetFields(), filled) {
		field := asked.Field()
		err := problems[field.ID]
		switch {
		case field.Value == "" && settling.SheetFields()[i].Required:
			field.Missing = true
		case err != nil:
			field.State, field.Note = model.Stop, s.session.Sentence(err)
		case field.ID == settling.Price:
			field.Reading = s.priceReading(field)
		}
		out = append(out, field)
	}
	manager := model.AskField{ID: managerField, Label: s.session.Say("Manager"), Options: s.session.Managers(), Value: s.manager(), Chars: 24}.Field()
	manager.Missing = manager.Value == ""
	return append(out, manager)
}

// priceUnit is money per the unit that the grain is settled by.
func (s *Settle) priceUnit() quantity.Unit {
	if s.Now.order.Tariff == nil {
		return quantity.DollarsPerBu
	}
	return quantity.Dollar.Per(s.Now.order.Tariff.Settle)
}

// priceReading tells what the text of the price was read as, or which price is posted: that one is
// proposed and never taken by itself.
func (s *Settle) priceReading(field model.Field) string {
	if p := s.Now.order.Price; p != nil && strings.EqualFold(field.Value, entry.PostedText) {
		return s.session.Say("posted: %s", *p)
	}
	if field.Value != "" || s.Now.order.Day.IsZero() || s.grain() == "" {
		return field.Reading
	}
	bid, err := s.house.Posted(s.grain(), s.Now.order.Day)
	if err != nil || bid == nil {
		return field.Reading
	}
	return s.session.Say("posted %s, %s by %s: Ctrl+U takes it", bid.Price, s.session.Desk.Local(bid.At), bid.Who)
}

// options are the choices of a field of the form.
func (s *Settle) options(form typed.Form) []model.Option {
	out := []model.Option{}
	grain, grower := s.grain(), s.texts[settling.Grower]
	switch form {
	case typed.OneContract:
		for _, c := range s.session.Known().Contracts {
			if _, closed := c.Closed(); !closed && c.Commodity == grain && c.IsSeller(grower) {
				out = append(out, model.Option{Code: c.Number, Name: s.session.Text(c.Form.Name()), Detail: s.session.Say("%s at %s", c.Quantity, c.PriceText())})
			}
		}
	case typed.OneTariff:
		if s.tariffs == nil {
			return out
		}
		for _, e := range s.tariffs.All() {
			if e.Commodity.ID == grain {
				out = append(out, model.Option{Code: e.ID, Name: e.Title, Detail: s.session.Text(e.Days())})
			}
		}
	case typed.OneLevy:
		if s.levies == nil {
			return out
		}
		for _, l := range settling.LeviesOf(s.levies, grain, s.session.Desk.Today()) {
			out = append(out, model.Option{Code: l.ID, Name: l.Title, Detail: l.Jurisdiction})
		}
	}
	return out
}

// Fields are the fields of the form.
func (s *Settle) Fields() []model.Field { return s.Now.Fields }

// Type takes the text of a field. Another grower has other tickets.
func (s *Settle) Type(id, text string) {
	if s.texts[id] == text {
		return
	}
	s.texts[id] = text
	if id == settling.Grower {
		clear(s.parts)
		s.readLeft()
	}
	s.keep()
	s.work()
}

// Enter is Enter in a field: from the grower it goes to the tickets, and a wrong text holds it.
func (s *Settle) Enter(id string) (next string) {
	for _, f := range s.Now.Fields {
		if f.ID == id && f.State == model.Stop && f.Note != "" {
			return id
		}
	}
	if id == settling.Grower {
		return ticketsText
	}
	return ""
}

// Restore empties a field; the grower stays, with all that is chosen.
func (s *Settle) Restore(id string) bool {
	if s.texts[id] == "" || id == settling.Grower {
		return false
	}
	s.Type(id, "")
	return true
}

// TakePosted takes the price posted for the day.
func (s *Settle) TakePosted() { s.Type(settling.Price, entry.PostedText) }

// manager is in whose name the sheet is issued.
func (s *Settle) manager() string {
	if who, said := s.texts[managerField]; said {
		return who
	}
	return s.session.ManagerHere()
}
