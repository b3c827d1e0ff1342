package daysheet

import (
	"fmt"

	"pgregory.net/rapid"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

var (
	day   = quantity.MustDate("2026-10-03")
	names = map[string]string{"corn": "Corn", "soybeans": "Soybeans"}
)

func of(text string, unit quantity.Unit) quantity.Amount { return quantity.Of(text, unit) }

// drawn is a ticket as a settlement would leave it: its lines agree with each
// other.
func drawn(t *rapid.T, number int64) Ticket {
	c := rapid.SampledFrom([]string{"corn", "soybeans"}).Draw(t, "commodity")
	k := Ticket{
		Number: number, Load: fmt.Sprintf("L%d", number), Day: day, Time: fmt.Sprintf("%02d:%02d", rapid.IntRange(6, 21).Draw(t, "hour"), number%60),
		Commodity: c, Name: names[c], GrowerID: "G1", Grower: "Ada Field", Truck: "T1", Bin: rapid.SampledFrom([]string{"", "Pit 1", "Bin 2"}).Draw(t, "bin"),
		Disposition: rapid.SampledFrom([]string{"", "sold", "stored", "contract"}).Draw(t, "taken"), Weigher: "Cal Reyes",
		Outbound: rapid.IntRange(0, 5).Draw(t, "way") == 0,
	}
	if k.Disposition == "contract" {
		k.Contract = "C-7"
	}
	unit := rapid.SampledFrom([]quantity.Unit{quantity.Lb, quantity.Lb, quantity.Kg}).Draw(t, "unit")
	k = recorded(k, drawnFigures(t, unit, k.Outbound))
	drawnEnd(t, &k)
	return k
}

// recorded is a ticket with these figures, as the first engine wrote them down.
func recorded(k Ticket, figures map[string]quantity.Amount) Ticket {
	var err error
	k.Figures = figures
	if k.Summary, err = (settle.Recorded{Engine: settle.First, Weighed: k.Outbound, Lines: figures}).Summary(); err != nil {
		panic(err)
	}
	return k
}

func drawnFigures(t *rapid.T, unit quantity.Unit, outbound bool) map[string]quantity.Amount {
	weight := func(name string, most int) quantity.Amount {
		return quantity.Int(int64(rapid.IntRange(0, most).Draw(t, name)), unit)
	}
	cents := func(name string, most int) quantity.Amount {
		return quantity.Int(int64(rapid.IntRange(0, most).Draw(t, name)), quantity.Dollar).Mul(of("0.01", quantity.Plain))
	}
	f := map[string]quantity.Amount{"net": weight("net", 60000).Add(quantity.Int(20000, unit))}
	if outbound {
		return f
	}
	f["dockage"], f["shrink.water"], f["handling"] = weight("dockage", 300), weight("water", 5000), weight("handling", 300)
	f["discount.weight"] = weight("off for quality", 100)
	f["settled"] = f["net"].Sub(f["dockage"]).Sub(f["shrink.water"]).Sub(f["handling"]).Sub(f["discount.weight"])
	per := quantity.Bushel
	if unit == quantity.Kg {
		per = quantity.Tonne
	}
	f["quantity"] = quantity.To("0.01", quantity.HalfUp).Apply(f["settled"].Div(quantity.Int(56, unit.Per(per))))
	f["moisture"] = quantity.Int(int64(rapid.IntRange(100, 300).Draw(t, "moisture")), quantity.Percent).Mul(of("0.1", quantity.Plain))
	f["drying"], f["discount.damage"], f["discount.premium"] = cents("drying", 20000), cents("discount", 3000), cents("premium", 900)
	f["charges"] = f["drying"].Add(f["discount.damage"]).Sub(f["discount.premium"])
	f["value"], f["payable"] = quantity.Zero(quantity.Dollar), quantity.Zero(quantity.Dollar)
	if rapid.Bool().Draw(t, "priced") {
		f["price"] = of("4.15", quantity.Dollar.Per(per))
		f["value"] = quantity.To("0.01", quantity.HalfUp).Apply(f["price"].Mul(f["quantity"]))
		f["payable"] = f["value"].Sub(f["charges"])
	}
	return f
}

// drawnEnd may end the ticket: on its day, later, or today for one of an
// earlier day.
func drawnEnd(t *rapid.T, k *Ticket) {
	switch rapid.IntRange(0, 7).Draw(t, "end") {
	case 0:
		k.Ended, k.EndedWho, k.Reason = day, "Mae Orton", "wrong truck"
	case 1:
		k.Ended, k.EndedBy, k.EndedWho, k.Reason = day.AddDays(3), k.Number+1, "Mae Orton", "wrong tare"
	case 2:
		k.Day, k.Ended, k.EndedWho, k.Reason = day.AddDays(-2), day, "Mae Orton", "paid twice"
	}
}

func drawnFacts(t *rapid.T) Facts {
	f := Facts{Day: day, Last: 40}
	for i := range rapid.IntRange(0, 25).Draw(t, "tickets") {
		f.Tickets = append(f.Tickets, drawn(t, int64(41+i)))
	}
	for _, bin := range []string{"", "Pit 1"} {
		f.Before = append(f.Before, Stock{Commodity: "corn", Name: "Corn", Bin: bin, Weight: quantity.Int(int64(rapid.IntRange(-500, 90000).Draw(t, "before")), quantity.Lb)})
	}
	return f
}
