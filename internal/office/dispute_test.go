package office_test

import (
	"testing"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/scalehouse/housetest"
)

// The close of the second business day belongs to official inspections (7 CFR
// 800.126). A house's own grade has the house's posted days, or those it keeps samples;
// Canada's 7 calendar days run from delivery, also over a late ticket.
func TestDeadlineOfADispute(t *testing.T) {
	for name, c := range map[string]struct {
		house    func(*elevator.Profile)
		official bool
		rule     string
		due      string
	}{
		"posted policy":          {func(p *elevator.Profile) { p.DisputeDays = 10 }, false, dispute.House, "2026-10-11"},
		"as long as samples":     {func(p *elevator.Profile) { p.RetainDays = 30 }, false, dispute.House, "2026-10-31"},
		"an official inspection": {func(p *elevator.Profile) { p.DisputeDays = 10 }, true, "us", "2026-10-05"},
		"Canada, from delivery":  {func(p *elevator.Profile) { p.Rules = "canada"; p.Unlicensed = true }, false, "canada", "2026-10-08"},
	} {
		t.Run(name, func(t *testing.T) {
			s := housetest.New(t)
			_, n := s.Ticket()
			s.House(c.house)
			one, _ := s.Raised(n, "moisture", c.official)
			if one.Raised.Rule != c.rule || one.Raised.Due.String() != c.due {
				t.Errorf("rule %s, due %s, want %s and %s", one.Raised.Rule, one.Raised.Due, c.rule, c.due)
			}
		})
	}
}
