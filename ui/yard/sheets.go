package yard

import (
	"context"
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// A sheet is a dialog for what has no field on the form. Its answers are recorded at once, after
// what is typed on the form.

// seldom are the fields of a load that few loads need. They have no place on the
// form and are asked for on a sheet of their own.
var seldom = []string{"driver", "plate", "trailer", "class", "crop", "whose", "consignee", "agent", "number", "probes", "tester", "none-seen", "kept"}

// ofPapers are the fields of where the grain grew, and of the papers that go with it.
var ofPapers = []string{
	"farm", "farm-number", "field", "grown-in", "variety", "lot", "previous-cargo", "zero", "apart", "origin-weight", "origin-ticket", "origin-scale",
	"grade", "grade-mark", "stored-from", "vehicle", "seals", "lading",
}

// papersSheet asks for them.
type papersSheet struct{ detailsSheet }

func (s papersSheet) ask() {
	s.form.session.Put(model.Ask{
		Draft: "papers", Of: s.form.id,
		Title: s.form.session.Say("Where it grew, and its papers"), Fields: s.fieldsOf(ofPapers), Yes: s.form.session.Say("Write down"),
		Check: s.check, Then: s.write,
	})
}

// detailsSheet asks for the fields that few loads need.
type detailsSheet struct{ form *LoadForm }

func (s detailsSheet) ask() {
	s.form.session.Put(model.Ask{
		Draft: "details", Of: s.form.id,
		Title: s.form.session.Say("More about this load"), Fields: s.fields(), Yes: s.form.session.Say("Write down"),
		Check: s.check, Then: s.write,
	})
}

func (s detailsSheet) check(values map[string]string) map[string]string {
	faults := map[string]string{}
	for id, err := range s.form.entering(s.changed(values)).Refused() {
		faults[id] = s.form.session.Sentence(err)
	}
	return faults
}

// fieldsOf are fields of the load as rows of a sheet.
func (s detailsSheet) fieldsOf(ids []string) []model.AskField {
	l := s.form.Now.Load
	var fields []model.AskField
	for _, id := range ids {
		field, _ := s.entryForm().Field(id)
		fields = append(fields, model.AskField{ID: id, Label: s.form.session.Say(field.Label), Value: field.Shown(l), Chars: 26})
	}
	return fields
}

func (s detailsSheet) fields() []model.AskField {
	l := s.form.Now.Load
	return append(s.fieldsOf(seldom),
		model.AskField{ID: "driverOn", Label: s.form.session.Say("Driver is"), Options: driverOptions(s.form.session.Language), Value: s.form.typed.driverOn, Chars: 20, Hint: s.form.session.Say("on the weights to come")},
		model.AskField{ID: "until", Label: s.form.session.Say("Kept until"), Value: l.Sample.Until.String(), Chars: 12, Hint: s.form.session.Say("year-month-day")},
		model.AskField{ID: "schedule", Label: s.form.session.Say("Rates"), Options: s.schedules(), Value: l.Details.Schedule, Chars: 20, Hint: s.form.session.Say("empty: as set up")})
}

func (s detailsSheet) entryForm() *entry.Form { return s.form.Now.form }

// changed are the texts of the sheet that differ from the load.
func (s detailsSheet) changed(values map[string]string) map[string]string {
	out := map[string]string{}
	for id, text := range values {
		if field, known := s.entryForm().Field(id); known && strings.TrimSpace(text) != field.Shown(s.form.Now.Load) {
			out[id] = text
		}
	}
	return out
}

// schedules are those with rates for the commodity.
func (s detailsSheet) schedules() []model.Option {
	out := []model.Option{}
	for _, name := range slices.Compact(s.form.session.Desk.Rates().Schedules(s.entryForm().Commodity())) {
		out = append(out, model.Option{Code: name})
	}
	return out
}

// write stores the sheet in the book, after what is typed on the form.
func (s detailsSheet) write(values map[string]string) {
	f := s.form
	if err := f.Commit(); err != nil {
		f.session.Fail(err)
		return
	}
	if driver, asked := values["driverOn"]; asked {
		f.typed.driverOn = driver
		f.saveDraft()
	}
	if err := f.writeDown(s.changed(values)); err != nil {
		f.session.Fail(err)
		return
	}
	f.session.Changed()
}

// driverOptions are the places of the driver while the truck is weighed.
func driverOptions(in session.Language) []model.Option {
	return []model.Option{{Code: "on", Name: in.Say("on the truck")}, {Code: "off", Name: in.Say("off the truck")}}
}

// sharesSheet asks who shares in a load. A share is typed as a fraction, 1/3, or
// in percent, 33.5.
type sharesSheet struct{ form *LoadForm }

func (s sharesSheet) ask() {
	f := s.form.session
	f.Put(model.Ask{
		Draft: "shares", Of: s.form.id,
		Title:  s.form.session.Say("Who shares in this load?"),
		Text:   s.form.session.Say("Leave all owners out when the grower has all of it."),
		Fields: ask.OwnerFields(f, s.form.Now.Load.Details.Shares), Yes: s.form.session.Say("Write down"),
		Check: s.check,
		Then: func(values map[string]string) {
			if err := s.write(values); err != nil {
				f.Fail(err)
				return
			}
			f.Changed()
		},
	})
}

// check says what is wrong with the sheet: with the shares, then with what becomes
// of the parts.
func (s sharesSheet) check(values map[string]string) map[string]string {
	_, faults := ask.ReadShares(s.form.session, values)
	if len(faults) > 0 {
		return faults
	}
	for _, err := range s.form.entering(s.texts(values)).Refused() {
		faults["terms1"] = s.form.session.Sentence(err)
	}
	return faults
}

// texts are the sheet as fields of the load.
func (s sharesSheet) texts(values map[string]string) map[string]string {
	owners, _ := ask.ReadShares(s.form.session, values)
	var shares []string
	for _, o := range owners {
		shares = append(shares, session.PartyText(o.Party)+"="+entry.PartText(o.Parts, o.Of, o.Drying))
	}
	return map[string]string{"shares": strings.Join(shares, "; "), "owner-terms": ask.OwnerTermsTyped(values, owners)}
}

// write writes down who shares in the load and what becomes of the parts, after what
// is typed on the form.
func (s sharesSheet) write(values map[string]string) error {
	if err := s.form.Commit(); err != nil {
		return err
	}
	return s.form.writeDown(s.texts(values))
}

// growerSheet asks for a new grower, records it and puts the name on the load.
type growerSheet struct{ form *LoadForm }

// AskGrower asks for a new grower.
func (f *LoadForm) AskGrower() { growerSheet{f}.ask() }

func (s growerSheet) ask() {
	s.form.session.Put(model.Ask{
		Draft: "new grower",
		Title: s.form.session.Say("A new grower"),
		Text:  s.form.session.Say("The code is short; typing it finds the grower from now on."),
		Fields: []model.AskField{
			{ID: "code", Label: s.form.session.Say("Code"), Chars: 8, Required: true},
			{ID: "name", Label: s.form.session.Say("Name"), Chars: 30, Required: true},
			{ID: "address", Label: s.form.session.Say("Address"), Chars: 30},
			{ID: "phone", Label: s.form.session.Say("Phone"), Chars: 18},
		},
		Yes: s.form.session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			if g, taken := s.form.session.Known().Grower(strings.TrimSpace(values["code"])); taken {
				return map[string]string{"code": s.form.session.Say("The code belongs to %s. Choose another.", g.Name)}
			}
			return nil
		},
		Then: s.add,
	})
}

func (s growerSheet) add(values map[string]string) {
	f := s.form.session
	g := elevator.Grower{
		ID: strings.TrimSpace(values["code"]), Name: strings.TrimSpace(values["name"]),
		Address: values["address"], Phone: values["phone"],
	}
	if err := scalehouse.SetGrower(context.Background(), f.Desk, g); err != nil {
		f.Fail(err)
		return
	}
	f.Lists = nil
	s.form.Type("grower", g.ID)
	if err := s.form.Commit(); err != nil {
		f.Fail(err)
		return
	}
	f.Notify(model.OK, s.form.session.Say("%s is written down as %s.", g.Name, g.ID))
	f.Changed()
}
