// Package tickettest has the tickets used by tests, and compares slips with those kept in testdata.
package tickettest

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/slipcode"
	"tenthpoint/internal/title"
)

// The tickets of these tests are invented: no such elevator, grower or truck.

// slips returns the folder of the golden slips and their rates, from any package below the module's
// root.
func slips(t testing.TB) string {
	t.Helper()
	for dir := "."; ; dir = filepath.Join("..", dir) {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return filepath.Join(dir, "testdata", "slip")
		}
		if len(dir) > 60 {
			t.Fatal("no go.mod above this test")
		}
	}
}

// central is five hours behind UTC, as the middle of North America is in
// October; a fixed zone needs no zone files.
var central = time.FixedZone("CDT", -5*3600)

func edition(t testing.TB, name string) *rates.Edition {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(slips(t), "editions", name+".toml"))
	if err != nil {
		t.Fatal(err)
	}
	e, err := rates.Read(name+".toml", text)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

func Lb(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }
func kg(n int64) quantity.Amount { return quantity.Int(n, quantity.Kg) }
func Of(text string) quantity.Amount {
	a, err := quantity.ParseAmount(text)
	if err != nil {
		panic(err)
	}
	return a
}
func ref(text string) *quantity.Amount {
	a := Of(text)
	return &a
}

func ExampleElevator() elevator.Profile {
	return elevator.Profile{
		Business: "Example Prairie Elevator", Street: "12 Rail Street", Town: "Exampleton", Phone: "555 0100",
		Licence: "EX-0417", Rules: "us", RetainDays: 3,
		Scales: []elevator.Scale{
			{ID: "North", Division: Lb(20), Capacity: Lb(140000)},
			{ID: "South", Division: Lb(20), Capacity: Lb(120000)},
		},
		Grains: []elevator.GrainRule{{Commodity: "corn", Schedule: "main"}},
	}
}

func metricElevator() elevator.Profile {
	p := ExampleElevator()
	p.Business, p.Rules = "Example Valley Grain Terminal", "canada"
	p.Scales = []elevator.Scale{{ID: "Deck 1", Division: kg(10), Capacity: kg(63500)}}
	return p
}

// Story is a load as recorded, fact by fact.
type Story struct {
	t     testing.TB
	facts []load.Stamped
	at    time.Time
}

func Tell(t testing.TB, d load.Details) *Story {
	s := &Story{t: t, at: time.Date(2026, 10, 14, 15, 2, 11, 0, time.UTC)}
	return s.happens("J. Clerk", load.Opened{Details: d})
}

// happens adds a fact four minutes after the last.
func (s *Story) happens(who string, f load.Fact) *Story {
	s.facts = append(s.facts, load.Stamped{Fact: f, Stamp: load.Stamp{At: s.at.Format(time.RFC3339), Who: who, Desk: "scale house"}})
	s.at = s.at.Add(4 * time.Minute)
	return s
}

func (s *Story) weighs(w load.Weighing) *Story {
	return s.happens("J. Clerk", load.Weighed{Weighing: w})
}

func (s *Story) Samples(sample load.Sample) *Story {
	return s.happens("T. Tester", load.Sampled{Sample: sample})
}

// Truck weighs one truck full and empty on the north scale.
func (s *Story) Truck(gross, tare quantity.Amount) *Story {
	scale := "North"
	if gross.Unit() == quantity.Kg {
		scale = "Deck 1"
	}
	s.weighs(load.Weighing{Which: load.Gross, Weight: gross, Source: load.FromScale, Scale: scale, DriverOn: "off"})
	return s.weighs(load.Weighing{Which: load.Tare, Weight: tare, Source: load.FromScale, Scale: scale, DriverOn: "off"})
}

// issues settles the load and issues its ticket under a number.
func (s *Story) issues(number int64) *Story {
	s.happens("J. Clerk", load.Settled{Edition: "as shown"})
	return s.happens("J. Clerk", load.Issued{Number: number, Weigher: "Josephine Clerk", Day: quantity.MustDate("2026-10-14"), SlipCode: slipcode.Format})
}

func (s *Story) Load() *load.Load {
	s.t.Helper()
	l, err := load.Replay("L1", s.facts)
	if err != nil {
		s.t.Fatal(err)
	}
	return l
}

// Ticket is the slip of the load, settled under an edition if it can be.
func (s *Story) Ticket(p elevator.Profile, e *rates.Edition) scaleticket.Ticket {
	s.t.Helper()
	l := s.Load()
	t := scaleticket.Ticket{House: p, Load: l, Edition: e, Zone: central, Code: "3fa9c01d22e4", Titles: title.First}
	if l.Number == 0 {
		t.Copy, t.Code = scaleticket.Draft, ""
	}
	for _, m := range l.Missing() {
		t.Problems = append(t.Problems, m.Sentence)
	}
	if e == nil || len(t.Problems) > 0 {
		return t
	}
	settled, err := settle.Settle(l.SettleFacts(), e)
	if err != nil {
		t.Problems = append(t.Problems, message.Of(err))
		return t
	}
	t.Settlement = settled
	return t
}
