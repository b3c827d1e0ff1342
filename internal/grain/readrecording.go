package grain

import (
	"slices"

	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// recordingRule is the recording rule of some factors of some grains.
type recordingRule struct {
	factors []FactorID // none: every factor measured in percent
	grains  []string   // none: every grain
	record  quantity.Rounding
	source  string
	basis   quantity.Amount // of moisture; in percent only where one is named
}

func (r recordingRule) fits(c *Commodity, f Factor) bool {
	byFactor := slices.Contains(r.factors, f.ID) || len(r.factors) == 0 && f.Unit == quantity.Percent
	return byFactor && (len(r.grains) == 0 || slices.Contains(r.grains, c.ID))
}

// readRecording sets for each measured factor the first rule that matches.
func (t *Tables) readRecording(f *law.File, root *tomlfile.Table) {
	var rules []recordingRule
	for i, row := range root.Tables("rule") {
		row.SetTitle(message.New("place|rule %d", i+1))
		rules = append(rules, t.recordingRule(f, row))
	}
	if len(rules) == 0 {
		root.AddProblem("", message.New("the file has no [[rule]]"), message.New("Add at least one."))
	}
	for i := range t.commodities {
		c := &t.commodities[i]
		for _, factor := range c.measured() {
			j := slices.IndexFunc(rules, func(r recordingRule) bool { return r.fits(c, *factor) })
			if factor.Unit != quantity.Count && j >= 0 {
				factor.Record, factor.Source, factor.Basis = rules[j].record, rules[j].source, rules[j].basis
				factor.NamesBushel = factor.ID == TestWeight && f.Jurisdiction == "canada"
			}
		}
	}
}

func (t *Tables) recordingRule(f *law.File, row *tomlfile.Table) recordingRule {
	r := recordingRule{record: row.Rounding("record"), source: row.Text("citation")}
	if basis, named := row.OptionalAmount("moisture_basis", quantity.Percent); named {
		r.basis = basis
	}
	for _, id := range row.Texts("factors") {
		if !t.hasFactor(FactorID(id)) {
			row.AddProblem("factors", message.New("no commodity has a factor %q", id), message.New("Mend the spelling."))
		}
		r.factors = append(r.factors, FactorID(id))
	}
	for _, id := range row.Texts("grains") {
		if t.commodity(id) == nil {
			row.AddProblem("grains", message.New("%q is no commodity here", id), message.New("Known here: %v.", t.knownIDs()))
		}
		r.grains = append(r.grains, id)
	}
	law.HowOf(row, f.How)
	return r
}

func (t *Tables) hasFactor(id FactorID) bool {
	return slices.ContainsFunc(t.commodities, func(c Commodity) bool {
		_, has := c.Factor(id)
		return has
	})
}

// readBushels sets the legal weight of each commodity's bushel, or why there is none.
func (t *Tables) readBushels(_ *law.File, root *tomlfile.Table) {
	for i, row := range root.Tables("bushel") {
		row.SetTitle(message.New("place|bushel %d", i+1))
		weight, given := row.OptionalAmount("weight", quantity.LbPerBushel)
		source, id := row.Text("citation"), row.Text("grain")
		c := t.commodity(id)
		switch {
		case c == nil && id != "":
			row.AddProblem("grain", message.New("%q is no commodity here", id), message.New("Known here: %v.", t.knownIDs()))
		case c != nil && c.BushelSource != "":
			row.AddProblem("grain", message.New("%v has two bushels", id), message.New("Keep the one that is law."))
		case given && weight.Sign() <= 0:
			row.AddProblem("weight", message.New("%s is %s", row.Name("weight"), weight.Written()), message.New("Write a weight above zero, or leave the line out where no law names one."))
		case c != nil:
			c.Bushel, c.BushelSource = weight, source
		}
	}
}
