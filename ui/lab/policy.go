package lab

import (
	"context"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/law"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// policySheet is the dialog of the rules of testing: the number of tests of a sample, how far they
// may differ, and when a meter must be checked.
type policySheet struct{ session *session.Session }

// AskPolicy asks for changes to the rules of testing.
func (m *Meters) AskPolicy() { policySheet{m.session}.ask() }

// everyCrop is the choice of a policy for all grain without its own.
const everyCrop = "every"

// ask asks for the grain whose policy is to be changed, and then for the policy.
func (s policySheet) ask() {
	options := []model.Option{{Code: everyCrop, Name: s.session.Say("every grain without its own"), ByName: true}}
	options = append(options, s.session.Known().CommodityOptions...)
	s.session.Put(model.Ask{
		Title:  s.session.Say("How the house tests"),
		Text:   s.session.Say("How many tests a sample needs, how far they may differ, and when a meter must be checked."),
		Fields: []model.AskField{{ID: "crop", Label: s.session.Say("For"), Options: options, Value: everyCrop, Chars: 28, Required: true}},
		Yes:    s.session.Say("Go on"),
		Then: func(values map[string]string) {
			crop := values["crop"]
			if crop == everyCrop {
				crop = ""
			}
			s.askFor(crop)
		},
	})
}

func (s policySheet) askFor(crop string) {
	setup, err := office.BenchSetup(context.Background(), s.session.Desk)
	if err != nil {
		s.session.Fail(err)
		return
	}
	name := s.session.GrainName(crop)
	if crop == "" {
		name = s.session.Say("every grain without its own")
	}
	s.session.Put(model.Ask{
		Draft: "policy", Of: "policy " + crop,
		Title: s.session.Say("How the house tests: %s", name), Fields: policyFields(s.session.Language, s.session.Desk.Laws().On(s.session.Desk.Today()), setup, crop),
		Yes: s.session.Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, wrong := readPolicy(s.session.Language, setup, crop, values)
			return wrong
		},
		Then: func(values map[string]string) {
			changed, _ := readPolicy(s.session.Language, setup, crop, values)
			s.write(changed)
		},
	})
}

// policyFields are the fields of the sheet, with the policy in force for the crop.
func policyFields(in session.Language, l law.Law, setup office.Bench, crop string) []model.AskField {
	p := moisture.PolicyFor(setup.Policies, crop)
	return []model.AskField{
		{ID: "count", Label: in.Say("Tests of a sample"), Value: strconv.Itoa(p.Count), Figures: true, Chars: 4, Required: true},
		{ID: "spread", Label: in.Say("They may differ by"), Unit: "pt", Value: session.Bare(p.Spread), Figures: true, Chars: 6, Required: true},
		{ID: "near", Label: in.Say("Near a limit is"), Unit: "pt", Value: session.Bare(p.Near), Figures: true, Chars: 6, Required: true},
		{ID: "nearcount", Label: in.Say("Tests near a limit"), Value: strconv.Itoa(p.NearCount), Figures: true, Chars: 4, Required: true},
		{ID: "authority", Label: in.Say("Meters by the rule of"), Options: authorityOptions(in, l), Value: setup.Authority, Chars: 30, Required: true},
		{ID: "limit", Label: in.Say("The house's own limit"), Unit: "pt", Value: figureText(setup.Limit), Figures: true, Chars: 6},
		{ID: "days", Label: in.Say("Checked every"), Unit: in.Say("days"), Value: strconv.Itoa(setup.EveryDays), Figures: true, Chars: 4, Required: true},
		{ID: "warn", Label: in.Say("Warn before"), Unit: in.Say("days"), Value: strconv.Itoa(setup.WarnDays), Figures: true, Chars: 4, Required: true},
	}
}

func authorityOptions(in session.Language, l law.Law) []model.Option {
	var out []model.Option
	rules, _ := meter.CheckTolerances(l) // errors were reported when it was loaded
	for _, a := range rules {
		out = append(out, model.Option{Code: a.ID, Name: a.Name, Detail: a.Source, ByName: true})
	}
	return append(out, model.Option{Code: office.HouseRule, Name: in.Say("the house, by its own limit"), ByName: true})
}

// wholeField reads a small whole number; pointsField reads points.
var (
	wholeField  = quantity.Field{Unit: quantity.Plain, Min: quantity.Zero(quantity.Plain), Max: quantity.Int(365, quantity.Plain)}
	pointsField = quantity.Field{Unit: quantity.Point, Places: 2, Min: quantity.Zero(quantity.Point), Max: quantity.Int(10, quantity.Point)}
)

// readPolicy applies the dialog to the policy, and returns the errors by field.
func readPolicy(in session.Language, setup office.Bench, crop string, values map[string]string) (office.Bench, map[string]string) {
	wrong := map[string]string{}
	points := func(id, label string) quantity.Amount { return readFigure(in, pointsField, id, label, values, wrong) }
	whole := func(id, label string) int {
		d, _ := readFigure(in, wholeField, id, label, values, wrong).Decimal()
		return int(d.IntPart())
	}
	p := moisture.PolicyFor(setup.Policies, crop)
	p.Crop = crop
	p.Count, p.NearCount = whole("count", in.Say("Tests of a sample")), whole("nearcount", in.Say("Tests near a limit"))
	p.Spread, p.Near = points("spread", in.Say("They may differ by")), points("near", in.Say("Near a limit is"))
	setup.Authority = values["authority"]
	if setup.Authority == office.HouseRule || values["limit"] != "" {
		setup.Limit = points("limit", in.Say("The house's own limit"))
	}
	setup.EveryDays, setup.WarnDays = whole("days", in.Say("Checked every")), whole("warn", in.Say("Warn before"))
	if len(wrong) == 0 {
		for _, err := range p.Check() {
			wrong["count"] = strings.TrimSpace(wrong["count"] + " " + in.Sentence(err))
		}
	}
	others := slices.DeleteFunc(slices.Clone(setup.Policies), func(o moisture.Policy) bool { return o.Crop == crop })
	setup.Policies = append(others, p)
	return setup, wrong
}

// readFigure parses one figure, and adds its error by field.
func readFigure(in session.Language, field quantity.Field, id, label string, values, wrong map[string]string) quantity.Amount {
	field.Name = label
	a, err := in.ParseFigure(field, values[id])
	if err != nil {
		wrong[id] = in.Sentence(err)
	}
	return a
}

func (s policySheet) write(setup office.Bench) {
	if err := scalehouse.SetBench(context.Background(), s.session.Desk, setup); err != nil {
		s.session.Fail(err)
		return
	}
	s.session.Notify(model.OK, s.session.Say("how the house tests is written down."))
	s.session.Changed()
}
