package house

import (
	"slices"
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scaleticket"
	"time"
)

// Truck keeps the list of trucks.
type Truck struct {
	Add   truckAdd   `cmd:"" help:"Add a truck, or change one."`
	Label truckLabel `cmd:"" help:"Print the label of a truck."`
	List  truckList  `cmd:"" default:"withargs" help:"List trucks."`
}

type truckAdd struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number  string `arg:"" help:"Number of the truck, as clerks type it."`
	Plate   string `help:"Plate." placeholder:"PLATE"`
	Trailer string `help:"Plate of the trailer." placeholder:"PLATE"`
	Grower  string `help:"Usual grower." placeholder:"GROWER"`
	Tare    string `help:"Tare to store." placeholder:"WEIGHT"`
	Taken   string `help:"Day the tare was weighed. Without it, today." placeholder:"YYYY-MM-DD"`
}

func (truckAdd) Help() string {
	return `    tenth truck add 7 --plate "ABC 123" --grower 102 --tare 24300`
}

func (c truckAdd) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		truck := elevator.Truck{ID: c.Number, Plate: c.Plate, Trailer: c.Trailer}
		if c.Grower != "" {
			g, err := entry.Grower(office.NewEntering(p, p.Desk), c.Grower)
			if err != nil {
				return err
			}
			truck.Grower = g.ID
		}
		if err := c.tare(p, &truck); err != nil {
			return err
		}
		if err := scalehouse.SetTruck(p, p.Desk, truck); err != nil {
			return err
		}
		p.Say("Truck %s is written down.", truck.ID)
		return nil
	})
}

func (c truckAdd) tare(p *terminal.Session, truck *elevator.Truck) error {
	if c.Tare == "" {
		return nil
	}
	if len(p.Profile().Scales) == 0 {
		return entry.ErrNoScale
	}
	tare, err := entry.ParseScaleWeight("Tare", c.Tare, p.Profile().Scales[0])
	if err != nil {
		return err
	}
	taken, err := entry.ParseDay("Taken", c.Taken, p.Today())
	if err != nil {
		return err
	}
	if taken.IsZero() {
		taken = p.Today()
	}
	truck.Tare, truck.Taken = &tare, taken
	return nil
}

type truckList struct {
	terminal.BookFlags
	terminal.ListFlags
}

func (c truckList) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		all, err := office.Trucks(p, p.Desk)
		if err != nil {
			return err
		}
		rows := [][]any{}
		for _, t := range all {
			tare := message.New("none")
			if t.Tare != nil {
				tare = message.New("weighed|%s of %s", t.Tare, t.Taken)
			}
			rows = append(rows, []any{t.ID, t.Plate, t.Trailer, t.Grower, tare})
		}
		return p.Table(c.ListFlags, "Truck\tPlate\tTrailer\tGrower\tStored tare", rows, "No truck is written down yet.")
	})
}

type truckLabel struct {
	terminal.BookFlags
	Number string `arg:"" help:"Number of the truck, as clerks type it."`
	Out    string `required:"" help:"Write the label into this folder, as PDF." placeholder:"DIR"`
}

func (truckLabel) Help() string {
	return `A label of 2 1/4 by 1 1/4 inches for the windshield. A reader of barcodes at the desk opens the truck's load by it.

    tenth truck label 7 --out labels`
}

func (c truckLabel) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		trucks, err := office.Trucks(p, p.Desk)
		if err != nil {
			return err
		}
		at := slices.IndexFunc(trucks, func(t elevator.Truck) bool { return t.ID == c.Number })
		if at < 0 {
			return terminal.Refusal("\"tenth truck list\" names them", "no truck has the number %q", c.Number)
		}
		now, err := time.Parse(journal.TimeLayout, p.Desk.Now())
		if err != nil {
			return err
		}
		owners, err := office.Growers(p, p.Desk)
		if err != nil {
			return err
		}
		label, err := scaleticket.TruckLabel(p.Profile(), trucks[at], growerName(owners, trucks[at].Grower), now)
		if err != nil {
			return err
		}
		return p.WriteLabel(label, c.Out, "truck-"+label.Number)
	})
}

// growerName is the name of one of several growers by code; empty where there is none.
func growerName(all []elevator.Grower, code string) string {
	at := slices.IndexFunc(all, func(g elevator.Grower) bool { return g.ID == code })
	if at < 0 {
		return ""
	}
	return all[at].Name
}
