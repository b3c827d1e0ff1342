package daysheet

import (
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

func digestOf(t interface {
	Helper()
	Fatal(...any)
}, s Sheet) string {
	t.Helper()
	text, err := s.Digest(settle.Current)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// frozenDay has a ticket of every kind.
func frozenDay() Facts {
	lines := func(net string) map[string]quantity.Amount {
		return map[string]quantity.Amount{"net": of(net, quantity.Lb), "settled": of("26872", quantity.Lb), "quantity": of("479.86", quantity.Bushel), "charges": of("12.5", quantity.Dollar)}
	}
	k := func(n int64, change func(*Ticket)) Ticket {
		t := Ticket{Number: n, Load: "L1", Day: day, Time: "14:05", Commodity: "corn", Name: "Corn", GrowerID: "G1", Grower: "Ada Field", Truck: "T1", Bin: "Pit 1", Figures: lines("28000")}
		change(&t)
		lb, usd := quantity.Zero(quantity.Lb), quantity.Zero(quantity.Dollar)
		t.Summary = settle.Summary{
			Part: settle.Part{Net: t.Figures["net"], Settled: t.Figures["settled"], Quantity: t.Figures["quantity"], Charges: t.Figures["charges"],
				Drying: usd, Discounts: usd, Premiums: usd, Value: usd, Payable: usd},
			Dockage: lb, Water: lb, Handling: lb, Quality: lb,
		}
		return t
	}
	return Facts{
		Day: day, Last: 7,
		Before: Position{{Commodity: "corn", Name: "Corn", Bin: "Pit 1", Weight: of("100000", quantity.Lb)}},
		Notes:  Notes{Yard: message.Keep(message.Words("A truck waits.")), Samples: message.Keep(message.Words("One is due.")), Disputes: message.Keep(message.Words("One is open.")), Meters: message.Keep(message.Words("One is \"late\"."))},
		Tickets: []Ticket{
			k(8, func(t *Ticket) { t.Disposition = "sold" }), k(9, func(t *Ticket) {
				t.Disposition, t.Contract = "contract", "C-12"
				t.Titles = []title.Terms{{Under: title.Contract, No: "C-12"}, {Whose: title.Depositors, Under: title.DelayedPrice, No: "D-7"}}
			}),
			k(10, func(t *Ticket) { t.Outbound = true }), k(11, func(t *Ticket) { t.Corrects = 3 }), k(12, func(t *Ticket) { t.Reissues = 4 }),
			k(13, func(t *Ticket) { t.Ended, t.EndedBy = day, 14 }), k(0, func(t *Ticket) { t.Refused = true }),
			k(2, func(t *Ticket) { t.Day, t.Ended, t.ReissuedBy, t.ReissuedOn = day.AddDays(-1), day, 12, day }),
		},
	}
}

// titledDay is what the third engine adds to it.
const titledDay = `ticket 9 title "" "contract" "C-12"
ticket 9 title "depositor" "delayed" "D-7"
`

// firstDay is the frozen day as the first engine writes it down.
const firstDay = `day 2026-10-03 after 7
ticket 0 load L1 of 2026-10-03: corn "G1" "T1" "Pit 1" "not decided" refused true ended  by 0 corrects 0
charges $12.50
net 28,000 lb
quantity 479.86 bu
settled 26,872 lb
ticket 2 load L1 of 2026-10-02: corn "G1" "T1" "Pit 1" "not decided" refused false ended 2026-10-03 by 0 corrects 0
reissues 0 by 12
charges $12.50
net 28,000 lb
quantity 479.86 bu
settled 26,872 lb
ticket 8 load L1 of 2026-10-03: corn "G1" "T1" "Pit 1" "sold" refused false ended  by 0 corrects 0
charges $12.50
net 28,000 lb
quantity 479.86 bu
settled 26,872 lb
ticket 9 load L1 of 2026-10-03: corn "G1" "T1" "Pit 1" "contract C-12" refused false ended  by 0 corrects 0
charges $12.50
net 28,000 lb
quantity 479.86 bu
settled 26,872 lb
ticket 10 load L1 of 2026-10-03: corn "G1" "T1" "Pit 1" "not decided" refused false ended  by 0 corrects 0
charges $12.50
net 28,000 lb
quantity 479.86 bu
settled 26,872 lb
ticket 11 load L1 of 2026-10-03: corn "G1" "T1" "Pit 1" "not decided" refused false ended  by 0 corrects 3
charges $12.50
net 28,000 lb
quantity 479.86 bu
settled 26,872 lb
ticket 12 load L1 of 2026-10-03: corn "G1" "T1" "Pit 1" "not decided" refused false ended  by 0 corrects 0
reissues 4 by 0
charges $12.50
net 28,000 lb
quantity 479.86 bu
settled 26,872 lb
ticket 13 load L1 of 2026-10-03: corn "G1" "T1" "Pit 1" "not decided" refused false ended 2026-10-03 by 14 corrects 0
charges $12.50
net 28,000 lb
quantity 479.86 bu
settled 26,872 lb
stock corn "Pit 1" 100,000 lb
note "A truck waits."
note "One is due."
note "One is open."
note "One is \"late\"."
`

// The text that a closed day's hash is taken of never changes again: books in
// the field hold the hash.
func TestDigestsAreFrozen(t *testing.T) {
	want := map[settle.Engine]string{1: firstDay, 2: firstDay, 3: firstDay + titledDay, 4: firstDay + titledDay}
	for _, n := range settle.Engines() {
		if got, err := Make(frozenDay()).Digest(n); err != nil || got != want[n] {
			t.Errorf("engine %s writes the day down as\n%s\nand wrote it down as\n%s\n%v\nPut what is new into the digest of another engine.", n, got, want[n], err)
		}
	}
}

func TestDigestOfAnEngineNotKnown(t *testing.T) {
	if text, err := Make(frozenDay()).Digest(99); err == nil || text != "" {
		t.Errorf("engine 99 wrote %q, %v", text, err)
	}
}
