package office_test

import (
	"testing"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/law"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/settle"
)

// Dockage is recorded to the nearest 0.1 % in Canada (C.R.C., c. 889, s. 35), where barley in the
// United States goes down to the half percent (7 CFR 810.104(b)). A ticket from before the elevator
// changed its rule set keeps its own.
func TestCanadianDockageRecorded(t *testing.T) {
	s := canadianScene(t)
	wild := barley(under(s, "us"), "1.57")
	canadian := barley(under(s, "canada"), "1.57")
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
	s.Verify()
}

// under is the scene with another rule set.
func under(s *scene, rules string) *scene {
	s.T.Helper()
	profile := s.Profile()
	profile.Rules, profile.Grains = rules, []elevator.GrainRule{{Commodity: "barley", Schedule: "metric"}, {Commodity: "wheat-hrs", Schedule: "prairie"}}
	must(s.T, scalehouse.SetProfile(ctx, s.Desk, profile))
	return s
}

// barley issues the ticket of a load of barley.
func barley(s *scene, dockage string) *load.Load {
	s.T.Helper()
	return metric(s, "barley", "12.0", housetest.Found("dockage", dockage, quantity.Percent))
}

// metric issues the ticket of a load of 26 t.
func metric(s *scene, commodity, moisture string, findings ...load.Finding) *load.Load {
	s.T.Helper()
	s.Time = s.Time.Add(time.Hour) // the same truck comes again
	d := housetest.Details()
	d.Commodity = commodity
	id, err := scalehouse.OpenLoad(ctx, s.Desk, d)
	must(s.T, err)
	for which, kg := range map[load.Which]int64{load.Gross: 41000, load.Tare: 15000} {
		must(s.T, scalehouse.Weigh(ctx, s.Desk, id, load.Weighing{Which: which, Weight: quantity.Int(kg, quantity.Kg), Source: load.FromScale}))
	}
	s.Sample(id, moisture, findings...)
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	must(s.T, err)
	l, err := office.Ticket(ctx, s.Desk, number)
	must(s.T, err)
	return l
}

// Rates that take handling are not used in an elevator licensed under the Canada Grain Act (C.R.C.,
// c. 889, s. 30), and are in one that says it is not.
func TestRatesThatBreakTheOrderDoNotLoad(t *testing.T) {
	s := canadianScene(t)
	day := quantity.MustDate("2025-10-01")
	if _, err := s.Rates().On("main", "corn", day); !errortest.Refused("0.25 %", "rate = \"0.25 %\"").Met(err) {
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
		return metric(s, commodity, "12.0", housetest.Found("dockage", "1.0", quantity.Percent), housetest.Found("protein", "12.44", quantity.Percent))
	}
	before := proteinLine(under(s, "us"), protein("wheat-hrs"))
	s.At("2026-12-02 09:00")
	for _, c := range []struct{ got, want string }{
		{before, "12.4 %"},
		{proteinLine(s, protein("wheat-hrs")), "12.4 % (12 % m.b.)"},
		{proteinLine(under(s, "canada"), protein("wheat-hrs")), "12.4 % (13.5 % m.b.)"},
		{proteinLine(s, protein("barley")), "12.4 % (dry basis)"},
	} {
		if c.got != c.want {
			t.Errorf("the ticket says %q, want %q", c.got, c.want)
		}
	}
	s.Verify()
}

// proteinLine returns the ticket's line for it.
func proteinLine(s *scene, l *load.Load) string {
	s.T.Helper()
	again, err := office.Resettle(ctx, s.Desk, l)
	must(s.T, err)
	for _, section := range scaleticket.Compose(scaleticket.Ticket{House: s.Profile(), Load: l, Settlement: again}).Sections {
		for _, line := range section.Lines {
			if line.Field == "protein" {
				return line.Value
			}
		}
	}
	return ""
}
