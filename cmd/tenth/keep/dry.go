package keep

import (
	"errors"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/keeping"
	"tenthpoint/internal/quantity"
)

type dry struct {
	shown
	fan
	Weight      string `arg:"" help:"Weight of the wet grain; lb unless it says kg." placeholder:"WEIGHT"`
	Commodity   string `aliases:"crop" help:"The grain, by id or name: its bushel." placeholder:"GRAIN"`
	From        string `required:"" help:"Moisture the grain has." placeholder:"PERCENT"`
	To          string `required:"" help:"Moisture it is dried to." placeholder:"PERCENT"`
	FuelRate    string `help:"What the house's dryer takes, such as \"0.018 gal/bu/pt\" or \"1.2 L/t/pt\"; without it a published figure." placeholder:"RATE"`
	FuelPrice   string `help:"Price of fuel, such as \"1.80 $/gal\"." placeholder:"MONEY"`
	Capacity    string `help:"What the dryer does over these points, such as \"400 bu/h\"." placeholder:"RATE"`
	Labour      string `help:"Price of an hour of labour, such as \"20 $/h\"." placeholder:"MONEY"`
	Temperature string `help:"With --airflow: temperature of the natural air, with F or C." placeholder:"TEMPERATURE"`
}

func (dry) Help() string {
	return `Without --airflow, drying with heat: water, fuel, power, time and what they cost, as far as prices are given. With --airflow and --temperature, natural air: the days a fan takes, from what air at 70 percent humidity is published to carry off. The house's own dryer and prices go before published figures.

    tenth keep dry 56000 --commodity corn --from 20 --to 15 --fuel-price "1.80 $/gal" --power-price "0.12 $/kWh"
    tenth keep dry "100000 kg" --from 18 --to 15 --fuel-price "0.80 $/L"
    tenth keep dry 560000 --commodity corn --from 20 --to 16 --airflow 1 --temperature 50F --horsepower 10 --power-price "0.12 $/kWh"`
}

func (c dry) Run(t *terminal.Terminal) error {
	d, err := c.drying()
	if err != nil {
		return err
	}
	airflow, horsepower, power, err := c.read()
	if err != nil {
		return err
	}
	if c.Airflow == "" {
		d.PowerPrice = power
		s, err := d.WorkHeated()
		if err != nil {
			return err
		}
		return c.sheet(t, s, advice, hotGrain)
	}
	temperature, err := temperatureIn(c.Temperature)
	if err != nil {
		return err
	}
	natural, err := keeping.NaturalAir{Grain: d, Airflow: airflow, Temperature: temperature, Horsepower: horsepower, PowerPrice: power}.Work()
	if err != nil {
		return err
	}
	if err := c.sheet(t, natural.Sheet, advice, binEntry); err != nil || c.JSON {
		return err
	}
	return c.tellWhetherInTime(t, d, temperature, natural.Days)
}

// tellWhetherInTime holds the days of natural air against those the wet grain keeps.
func (c dry) tellWhetherInTime(t *terminal.Terminal, d keeping.Drying, temperature, needed quantity.Amount) error {
	grain, err := grainIn(c.Commodity)
	if err != nil {
		return err
	}
	tables, err := keeping.Tables(grain)
	if err != nil {
		return nil // no table of this grain: nothing to hold it against
	}
	keeps, err := tables[0].Days(d.From, temperature)
	if err != nil {
		return nil // wetter or warmer than the table goes
	}
	if keeps.Days.Less(needed) && !keeps.AtLeast {
		t.Say("By %s the top layer keeps %s, less than the %s this takes: it would spoil first.", tables[0].ID, keeps, needed)
		return nil
	}
	t.Say("By %s the top layer keeps %s, and this takes %s.", tables[0].ID, keeps, needed)
	return nil
}

func (c dry) drying() (d keeping.Drying, err error) {
	fuels := []quantity.Unit{quantity.Gallon, quantity.Litre}
	var rates, prices []quantity.Unit
	for _, fuel := range fuels {
		rates = append(rates, fuel.Per(quantity.Bushel.Times(quantity.Point)), fuel.Per(quantity.Tonne.Times(quantity.Point)))
		prices = append(prices, quantity.Dollar.Per(fuel))
	}
	var errs []error
	take := func(into *quantity.Amount, a quantity.Amount, err error) { *into, errs = a, append(errs, err) }
	weight, wrong := entry.ParseHeld("Weight", c.Weight, quantity.Lb)
	take(&d.Weight, weight, wrong)
	from, wrong := terminal.ParsePercent("From", c.From)
	take(&d.From, from, wrong)
	to, wrong := terminal.ParsePercent("To", c.To)
	take(&d.To, to, wrong)
	bushel, wrong := bushelOf(c.Commodity)
	take(&d.Bushel, bushel, wrong)
	rate, wrong := amountIn("Fuel rate", c.FuelRate, rates...)
	take(&d.FuelRate, rate, wrong)
	price, wrong := amountIn("Price of fuel", c.FuelPrice, prices...)
	take(&d.FuelPrice, price, wrong)
	capacity, wrong := amountIn("Capacity", c.Capacity, quantity.Bushel.Per(quantity.Hour), quantity.Tonne.Per(quantity.Hour))
	take(&d.Capacity, capacity, wrong)
	labour, wrong := amountIn("Labour", c.Labour, quantity.Dollar.Per(quantity.Hour))
	take(&d.Labour, labour, wrong)
	return d, errors.Join(errs...)
}
