package keeping

import (
	"errors"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

func pct(text string) quantity.Amount   { return quantity.Of(text, quantity.Percent) }
func degF(text string) quantity.Amount  { return quantity.Of(text, quantity.Fahrenheit) }
func ndays(text string) quantity.Amount { return quantity.Of(text, quantity.Day) }

// From moisture to humidity and back is the same moisture, for every curve and all
// the air it takes.
func TestEquilibriumInvertsItself(t *testing.T) {
	near := pct("0.0000001")
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.SampledFrom(shippedCurves()).Draw(t, "curve")
		temperature := quantity.Int(rapid.Int64Range(-200, 600).Draw(t, "tenths"), quantity.Celsius).Div(quantity.Int(10, quantity.Plain))
		humidity := quantity.Int(rapid.Int64Range(100, 950).Draw(t, "humidity"), quantity.Percent).Div(quantity.Int(10, quantity.Plain))
		m, err := c.Moisture(temperature, humidity)
		if err != nil {
			t.Fatal(err)
		}
		if !wetBasis.Contains(m) {
			return
		}
		back, err := c.Humidity(temperature, m)
		if errors.Is(err, message.Invalid) && (!humidity.More(pct("10.1")) || !humidity.Less(pct("94.9"))) {
			return // the last place fell outside
		}
		if err != nil {
			t.Fatal(err)
		}
		if off := back.Sub(humidity); off.More(near) || off.Less(near.Neg()) {
			t.Fatalf("%s at %s: %s is %s and comes back as %s", c.ID, temperature, humidity, m, back)
		}
	})
}

// Damper air makes wetter grain, warmer air drier grain.
func TestEquilibriumIsMonotone(t *testing.T) {
	for _, c := range shippedCurves() {
		for h := int64(10); h < 95; h += 5 {
			for f := int64(0); f <= 120; f += 20 {
				at := func(f, h int64) quantity.Amount {
					m, err := c.Moisture(quantity.Int(f, quantity.Fahrenheit), quantity.Int(h, quantity.Percent))
					if err != nil {
						t.Fatal(err)
					}
					return m
				}
				if here := at(f, h); !at(f, h+5).More(here) || !at(f+10, h).Less(here) {
					t.Errorf("%s at %d °F and %d %%: %s", c.ID, f, h, here)
				}
			}
		}
	}
}

func TestEquilibriumOutOfReach(t *testing.T) {
	for name, ask := range map[string]func() error{
		"cold":    func() error { _, err := EquilibriumMoisture("corn", degF("-40"), pct("60")); return err },
		"damp":    func() error { _, err := EquilibriumMoisture("corn", degF("60"), pct("99")); return err },
		"wet":     func() error { _, err := EquilibriumHumidity("corn", degF("60"), pct("40")); return err },
		"dry":     func() error { _, err := EquilibriumHumidity("corn", degF("60"), pct("3")); return err },
		"no unit": func() error { _, err := EquilibriumMoisture("corn", pct("60"), pct("60")); return err },
	} {
		if err := ask(); !errors.Is(err, message.Invalid) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := EquilibriumMoisture("sunflower", degF("60"), pct("60")); !errors.Is(err, message.NotFound) {
		t.Errorf("a seed without a curve: %v", err)
	}
}

// Kentucky and NDSU: 16 % soybeans 35 days at 50 °F have used half of 70 days, and
// 70 of 140 days at 40 °F are left.
func TestLifeIsUsedUpCumulatively(t *testing.T) {
	table := tableCalled(t, "ndsu-soybeans")
	life, err := table.Use(pct("16"), []Stretch{{ndays("35"), degF("50")}}, degF("40"))
	if err != nil || !life.Used.Equal(pct("50")) || !life.Left.Days.Equal(ndays("70")) || life.Spent {
		t.Errorf("%+v %v", life, err)
	}
	life, err = table.Use(pct("16"), []Stretch{{ndays("35"), degF("50")}, {ndays("70"), degF("40")}}, degF("40"))
	if err != nil || !life.Spent || !life.Left.Days.IsZero() {
		t.Errorf("used to the last day: %+v %v", life, err)
	}
	for name, c := range map[string]struct{ days, moisture, temperature string }{
		"days below zero": {"-1", "16", "50"}, "too wet": {"1", "28", "50"}, "too warm": {"1", "16", "81"},
	} {
		if _, err := table.Use(pct(c.moisture), []Stretch{{ndays(c.days), degF(c.temperature)}}, degF("40")); !errors.Is(err, message.Invalid) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Wetter or warmer grain never keeps longer, between the cells too.
func TestStorageDaysFall(t *testing.T) {
	for _, table := range shippedTables() {
		for f := int64(20); f < 80; f += 5 {
			for m := int64(140); m < 230; m += 5 {
				days := func(f, m int64) quantity.Amount {
					d, err := table.Days(quantity.Int(m, quantity.Percent).Div(quantity.Int(10, quantity.Plain)), quantity.Int(f, quantity.Fahrenheit))
					if err != nil {
						t.Fatal(err)
					}
					return d.Days
				}
				if here := days(f, m); days(f+5, m).More(here) || days(f, m+5).More(here) {
					t.Errorf("%s at %d °F and %d tenths: %s", table.ID, f, m, here)
				}
			}
		}
	}
}

func step(t *testing.T, s *worksheet.Sheet, id string) quantity.Amount {
	t.Helper()
	found, ok := s.Step(id)
	if !ok {
		t.Fatalf("no step %s", id)
	}
	return found.Value()
}

func expect(t *testing.T, s *worksheet.Sheet, want map[string]string) {
	t.Helper()
	for id, text := range want {
		if got := step(t, s, id); !got.Equal(amount(t, text)) {
			t.Errorf("%s is %s, want %s", id, got, text)
		}
	}
}

// 100 bu of corn from 25.5 to 15.5 % in a fast dryer at $2.50 and $0.10: $51.00 (Midwest Plan
// Service); 7.52 lb of water a dry bushel is 6.63 lb a wet one.
func TestHeatedDrying(t *testing.T) {
	d := Drying{Weight: quantity.Int(5600, quantity.Lb), From: pct("25.5"), To: pct("15.5"), Bushel: quantity.Int(56, quantity.LbPerBushel),
		FuelPrice: amount(t, "2.50 $/gal"), PowerPrice: amount(t, "0.10 $/kWh"), Capacity: amount(t, "400 bu/h"), Labour: amount(t, "20 $/h")}
	s, err := d.WorkHeated()
	if err != nil {
		t.Fatal(err)
	}
	expect(t, s, map[string]string{"water": "663 lb", "quantity": "100 bu", "fuel": "20 gal", "power": "10 kWh",
		"fuel.cost": "50 $", "power.cost": "1 $", "hours": "0.3 h", "labour.cost": "6 $", "cost": "57 $"})
	// AHDB: 100 t from 18 to 15 % take 360 L of gas oil.
	tonnes := Drying{Weight: quantity.Int(100000, quantity.Kg), From: pct("18"), To: pct("15")}
	if s, err = tonnes.WorkHeated(); err != nil {
		t.Fatal(err)
	}
	expect(t, s, map[string]string{"fuel": "360 L"})
}

// NDSU: air at 47 °F and 70 % that takes 70 lb for 100,000 lb brings corn from 21 to 16 % in 42 days at 1 cfm a
// bushel, where 50 are printed; half again the air takes two thirds of the time.
func TestNaturalAir(t *testing.T) {
	n := NaturalAir{Grain: Drying{Weight: quantity.Int(56000, quantity.Lb), From: pct("21"), To: pct("16"), Bushel: quantity.Int(56, quantity.LbPerBushel)},
		Airflow: amount(t, "1 cfm/bu"), Temperature: degF("47"), Horsepower: number("10"), PowerPrice: amount(t, "0.07 $/kWh")}
	out, err := n.Work()
	if err != nil {
		t.Fatal(err)
	}
	expect(t, out.Sheet, map[string]string{"water.each": "3.333 lb/bu", "days": "43 d", "hours": "1032 h", "power": "7740 kWh", "power.cost": "541.80 $"})
	n.Airflow = amount(t, "1.5 cfm/bu")
	if out, err = n.Work(); err != nil || !out.Days.Equal(ndays("29")) {
		t.Errorf("%s %v", out.Days, err)
	}
	n.Temperature = degF("0")
	if _, err := n.Work(); !errors.Is(err, message.Invalid) {
		t.Errorf("frozen air: %v", err)
	}
}

// 0.1 cfm a bushel: 150 hours by one source, 100 by another.
func TestAeration(t *testing.T) {
	s, err := Aeration{Airflow: amount(t, "0.1 cfm/bu"), Horsepower: number("5"), PowerPrice: amount(t, "0.10 $/kWh")}.Work()
	if err != nil {
		t.Fatal(err)
	}
	expect(t, s, map[string]string{"hours.longest": "150 h", "hours.shortest": "100 h", "power": "562.5 kWh", "power.cost": "56.25 $"})
	if _, err := (Aeration{Airflow: amount(t, "0 cfm/bu")}).Work(); !errors.Is(err, message.Invalid) {
		t.Errorf("no air: %v", err)
	}
}

func TestDryingThatCannotBe(t *testing.T) {
	good := Drying{Weight: quantity.Int(5600, quantity.Lb), From: pct("20"), To: pct("15"), Bushel: quantity.Int(56, quantity.LbPerBushel)}
	for name, change := range map[string]func(*Drying){
		"adds water":      func(d *Drying) { d.To = pct("21") },
		"nothing to dry":  func(d *Drying) { d.Weight = quantity.Zero(quantity.Lb) },
		"no bushel":       func(d *Drying) { d.Bushel = quantity.Amount{} },
		"all water":       func(d *Drying) { d.From = pct("100") },
		"another fuel":    func(d *Drying) { d.FuelPrice = amount(t, "1 $/L") },
		"rate for tonnes": func(d *Drying) { d.FuelRate = amount(t, "1.2 L/t/pt") },
		"tonnes an hour":  func(d *Drying) { d.Capacity = amount(t, "10 t/h") },
	} {
		d := good
		change(&d)
		if _, err := d.WorkHeated(); !errors.Is(err, message.Invalid) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestRecommendedMoistures(t *testing.T) {
	got := map[string]string{}
	for _, r := range RecommendedFor("corn", ndays("150")) {
		got[r.Moisture.String()] = r.Source
	}
	if len(got) != 3 || got["15.5 %"] == "" || got["15 %"] == "" || got["14 %"] == "" {
		t.Errorf("corn for five months: %v", got)
	}
	if len(RecommendedFor("lentils", ndays("10"))) != 0 {
		t.Error("something is recommended that nobody read")
	}
}
