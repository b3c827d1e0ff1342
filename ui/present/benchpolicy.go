package present

import (
	"context"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/desk"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// everyCrop is the choice of a policy for all grain without its own.
const everyCrop = "every"

// AskPolicy asks for which grain the house's policy of testing is to be changed,
// and then for the policy.
func (m *Meters) AskPolicy() {
	options := []model.Option{{Code: everyCrop, Name: Say("every grain without its own"), ByName: true}}
	options = append(options, m.frame.known().commodityOptions...)
	m.frame.Put(model.Ask{
		Title:  Say("How the house tests"),
		Text:   Say("How many tests a sample needs, how far they may differ, and when a meter must be checked."),
		Fields: []model.AskField{{ID: "crop", Label: Say("For"), Options: options, Value: everyCrop, Chars: 28, Required: true}},
		Yes:    Say("Go on"),
		Then: func(values map[string]string) {
			crop := values["crop"]
			if crop == everyCrop {
				crop = ""
			}
			m.askPolicyFor(crop)
		},
	})
}

func (m *Meters) askPolicyFor(crop string) {
	setup, err := m.frame.Desk.BenchSetup(context.Background())
	if err != nil {
		m.frame.Fail(err)
		return
	}
	p := moisture.PolicyFor(setup.Policies, crop)
	name := grainName(crop)
	if crop == "" {
		name = Say("every grain without its own")
	}
	whole := func(n int) string { return strconv.Itoa(n) }
	m.frame.Put(model.Ask{
		Draft: "policy", Of: "policy " + crop,
		Title: Say("How the house tests: %s", name),
		Fields: []model.AskField{
			{ID: "count", Label: Say("Tests of a sample"), Value: whole(p.Count), Figures: true, Chars: 4, Required: true},
			{ID: "spread", Label: Say("They may differ by"), Unit: "pt", Value: bare(p.Spread), Figures: true, Chars: 6, Required: true},
			{ID: "near", Label: Say("Near a limit is"), Unit: "pt", Value: bare(p.Near), Figures: true, Chars: 6, Required: true},
			{ID: "nearcount", Label: Say("Tests near a limit"), Value: whole(p.NearCount), Figures: true, Chars: 4, Required: true},
			{ID: "authority", Label: Say("Meters by the rule of"), Options: authorityOptions(), Value: setup.Authority, Chars: 30, Required: true},
			{ID: "limit", Label: Say("The house's own limit"), Unit: "pt", Value: figureText(setup.Limit), Figures: true, Chars: 6},
			{ID: "days", Label: Say("Checked every"), Unit: Say("days"), Value: whole(setup.EveryDays), Figures: true, Chars: 4, Required: true},
			{ID: "warn", Label: Say("Warn before"), Unit: Say("days"), Value: whole(setup.WarnDays), Figures: true, Chars: 4, Required: true},
		},
		Yes: Say("Write down"),
		Check: func(values map[string]string) map[string]string {
			_, wrong := readPolicy(setup, p, crop, values)
			return wrong
		},
		Then: func(values map[string]string) {
			changed, _ := readPolicy(setup, p, crop, values)
			m.setPolicy(changed)
		},
	})
}

func authorityOptions() []model.Option {
	var out []model.Option
	for _, a := range meter.CheckTolerances() {
		out = append(out, model.Option{Code: a.ID, Name: a.Name, Detail: a.Source, ByName: true})
	}
	return append(out, model.Option{Code: desk.HouseRule, Name: Say("the house, by its own limit"), ByName: true})
}

// wholeField reads a small whole number; pointsField reads points.
var (
	wholeField  = quantity.Field{Unit: quantity.Plain, Min: quantity.Zero(quantity.Plain), Max: quantity.Int(365, quantity.Plain)}
	pointsField = quantity.Field{Unit: quantity.Point, Places: 2, Min: quantity.Zero(quantity.Point), Max: quantity.Int(10, quantity.Point)}
)

// readPolicy reads the sheet over what was, and says by field what is wrong.
func readPolicy(setup desk.Bench, p moisture.Policy, crop string, values map[string]string) (desk.Bench, map[string]string) {
	wrong := map[string]string{}
	whole := func(id, label string) int {
		field := wholeField
		field.Name = label
		a, err := field.Parse(values[id])
		if err != nil {
			wrong[id] = sentence(err)
			return 0
		}
		d, _ := a.Decimal()
		return int(d.IntPart())
	}
	points := func(id, label string) quantity.Amount {
		field := pointsField
		field.Name = label
		a, err := field.Parse(values[id])
		if err != nil {
			wrong[id] = sentence(err)
		}
		return a
	}
	p.Crop = crop
	p.Count, p.NearCount = whole("count", Say("Tests of a sample")), whole("nearcount", Say("Tests near a limit"))
	p.Spread, p.Near = points("spread", Say("They may differ by")), points("near", Say("Near a limit is"))
	setup.Authority = values["authority"]
	if setup.Authority == desk.HouseRule || values["limit"] != "" {
		setup.Limit = points("limit", Say("The house's own limit"))
	}
	setup.EveryDays, setup.WarnDays = whole("days", Say("Checked every")), whole("warn", Say("Warn before"))
	if len(wrong) == 0 {
		for _, err := range p.Check() {
			wrong["count"] = strings.TrimSpace(wrong["count"] + " " + sentence(err))
		}
	}
	others := slices.DeleteFunc(slices.Clone(setup.Policies), func(o moisture.Policy) bool { return o.Crop == crop })
	setup.Policies = append(others, p)
	return setup, wrong
}

func (m *Meters) setPolicy(setup desk.Bench) {
	if err := m.frame.Desk.SetBench(context.Background(), setup); err != nil {
		m.frame.Fail(err)
		return
	}
	m.frame.Say(model.OK, Say("how the house tests is written down."))
	m.frame.Changed()
}
