package keep

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/keeping"
	"tenthpoint/internal/quantity"
)

type aerate struct {
	shown
	fan
}

// fan is a fan and what its power costs.
type fan struct {
	Airflow    string `help:"Air through the grain, in cfm a bushel." placeholder:"CFM"`
	Horsepower string `help:"Horsepower of the fan." placeholder:"HP"`
	PowerPrice string `help:"Price of power, such as \"0.12 $/kWh\"." placeholder:"MONEY"`
}

func (f fan) read() (airflow, horsepower, price quantity.Amount, err error) {
	if airflow, err = figureIn("Airflow", f.Airflow, keeping.CFMPerBushel, 100); err != nil {
		return
	}
	if horsepower, err = figureIn("Horsepower", f.Horsepower, quantity.Plain, 10000); err != nil {
		return
	}
	price, err = amountIn("Price of power", f.PowerPrice, keeping.DollarsPerKWh)
	return
}

func (aerate) Help() string {
	return `A cooling front passes the grain in 10 to 15 hours over the airflow in cfm a bushel; sources differ by half. Cooling takes about a quarter of a point of moisture out for each 10 °F.

    tenth keep aerate --airflow 0.1 --horsepower 5 --power-price "0.12 $/kWh"`
}

func (c aerate) Run(t *terminal.Terminal) error {
	airflow, horsepower, price, err := c.read()
	if err != nil {
		return err
	}
	s, err := keeping.Aeration{Airflow: airflow, Horsepower: horsepower, PowerPrice: price}.Work()
	if err != nil {
		return err
	}
	return c.sheet(t, s, advice, hotGrain, binEntry)
}
