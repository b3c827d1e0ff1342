package scalehouse_test

import (
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/law"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/settle"
)

// Dockage is recorded to the nearest 0.1 % in Canada (C.R.C., c. 889, s. 35), where barley in the
// United States goes down to the half percent (7 CFR 810.104(b)). A ticket from before the elevator
// changed its rule set keeps its own.
func TestCanadianDockageRecorded(t *testing.T) {
	s := canadianScene(t)
	wild := s.under("us").barley("1.57")
	canadian := s.under("canada").barley("1.57")
	if wild.Settled.Law != "" || canadian.Settled.Law == "" {
		t.Fatalf("the tickets keep the laws %q and %q", wild.Settled.Law, canadian.Settled.Law)
	}
	for l, want := range map[*load.Load]string{wild: "1.5 %", canadian: "1.6 %"} {
		worked, err := office.Resettle(ctx, s.Desk, l)
		must(t, err)
		step, ok := worked.Sheet.Step(settle.FactorLine("dockage"))
		if !ok || step.Value().FixedString(1) != want {
			t.Errorf("dockage of 1.57 %% is recorded as %s, want %s", step.Value(), want)
		}
	}
	tables, err := s.TablesKept(ctx, canadian.Settled.Law)
	must(t, err)
	if _, ok := tables.Law().Find("canada", "recording", ""); !ok || tables.Law().Hash() == law.First().Hash() {
		t.Error("the book does not keep the Canadian rules with the ticket")
	}
	s.verify()
}

// under is the scene with another rule set.
func (s *scene) under(rules string) *scene {
	s.t.Helper()
	profile := s.Profile()
	profile.Rules, profile.Grains = rules, []elevator.GrainRule{{Commodity: "barley", Schedule: "metric"}, {Commodity: "wheat-hrs", Schedule: "prairie"}}
	must(s.t, scalehouse.SetProfile(ctx, s.Desk, profile))
	return s
}

// barley issues the ticket of a load of barley.
func (s *scene) barley(dockage string) *load.Load {
	s.t.Helper()
	return s.metric("barley", "12.0", found("dockage", dockage, quantity.Percent))
}

// metric issues the ticket of a load of 26 t.
func (s *scene) metric(commodity, moisture string, findings ...load.Finding) *load.Load {
	s.t.Helper()
	s.now = s.now.Add(time.Hour) // the same truck comes again
	d := details()
	d.Commodity = commodity
	id, err := scalehouse.OpenLoad(ctx, s.Desk, d)
	must(s.t, err)
	for which, kg := range map[load.Which]int64{load.Gross: 41000, load.Tare: 15000} {
		must(s.t, scalehouse.Weigh(ctx, s.Desk, id, load.Weighing{Which: which, Weight: quantity.Int(kg, quantity.Kg), Source: load.FromScale}))
	}
	s.sample(id, moisture, findings...)
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	must(s.t, err)
	l, err := office.Ticket(ctx, s.Desk, number)
	must(s.t, err)
	return l
}

// Rates that take handling are not used in an elevator licensed under the Canada Grain Act (C.R.C.,
// c. 889, s. 30), and are in one that says it is not.
func TestRatesThatBreakTheOrderDoNotLoad(t *testing.T) {
	s := canadianScene(t)
	day := quantity.MustDate("2025-10-01")
	if _, err := s.Rates().On("main", "corn", day); err == nil || !strings.Contains(err.Error(), `rate = "0.25 %"`) {
		t.Errorf("a licensed house settles under rates with handling: %v", err)
	}
	profile := s.Profile()
	profile.Unlicensed = true
	must(t, scalehouse.SetProfile(ctx, s.Desk, profile))
	if _, err := s.Rates().On("main", "corn", day); err != nil {
		t.Errorf("a house that is not licensed: %v", err)
	}
}

// Wheat protein is stated at 12 % moisture in the United States and at 13.5 % in Canada, barley's
// dry (canada-usgrainandseedtrade.info). It is on the ticket with its basis; tickets from before
// the rule print as they did.
func TestProteinHasItsMoistureBasis(t *testing.T) {
	s := canadianSceneAt(t, "2026-11-28 09:00")
	protein := func(commodity string) *load.Load {
		return s.metric(commodity, "12.0", found("dockage", "1.0", quantity.Percent), found("protein", "12.44", quantity.Percent))
	}
	before := s.under("us").protein(protein("wheat-hrs"))
	s.at("2026-12-02 09:00")
	for _, c := range []struct{ got, want string }{
		{before, "12.4 %"},
		{s.protein(protein("wheat-hrs")), "12.4 % (12 % m.b.)"},
		{s.under("canada").protein(protein("wheat-hrs")), "12.4 % (13.5 % m.b.)"},
		{s.protein(protein("barley")), "12.4 % (dry basis)"},
	} {
		if c.got != c.want {
			t.Errorf("the ticket says %q, want %q", c.got, c.want)
		}
	}
	s.verify()
}

// protein returns the ticket's line for it.
func (s *scene) protein(l *load.Load) string {
	s.t.Helper()
	again, err := office.Resettle(ctx, s.Desk, l)
	must(s.t, err)
	for _, section := range scaleticket.Compose(scaleticket.Ticket{House: s.Profile(), Load: l, Settlement: again}).Sections {
		for _, line := range section.Lines {
			if line.Field == "protein" {
				return line.Value
			}
		}
	}
	return ""
}
