package bins

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/bin"
	"tenthpoint/internal/scalehouse"
)

type transfer struct {
	moved
	From   string `arg:"" help:"Bin it is taken from."`
	Into   string `arg:"" help:"Bin it goes into."`
	Weight string `arg:"" optional:"" help:"Weight; without it, all that lies there."`
}

func (transfer) Help() string {
	return `    tenth bin move P1 B1 48000
    tenth bin move B3 B1 --reason "B3 is wanted for wet corn"`
}

func (c transfer) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Transfer, map[string]string{"from": c.From, "into": c.Into, "weight": c.Weight})
}

type blended struct {
	moved
	From []string `sep:"none" required:"" help:"A bin and how much of it; may be repeated." placeholder:"BIN=WEIGHT"`
	Into string   `required:"" help:"Bin the mix goes into." placeholder:"BIN"`
}

func (blended) Help() string {
	return `What mix meets a moisture and a test weight is found by "tenth keep blend".

    tenth bin blend --from B1=30000 --from B2=50000 --into B5`
}

func (c blended) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Blend, map[string]string{"parts": strings.Join(c.From, "; "), "into": c.Into})
}

type turned struct {
	moved
	Bin  string `arg:"" help:"Bin that is turned."`
	Lost string `help:"Weight lost on the way, if it was found." placeholder:"WEIGHT"`
}

func (c turned) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Turn, map[string]string{"from": c.Bin, "lost": c.Lost})
}

type cleaned struct {
	moved
	From       string `arg:"" help:"Bin it is taken from."`
	Into       string `arg:"" help:"Bin the clean grain goes into; it may be the same."`
	Weight     string `help:"Weight that went into the cleaner; without it, all that lies there." placeholder:"WEIGHT"`
	Screenings string `required:"" help:"Weight of the screenings." placeholder:"WEIGHT"`
}

func (c cleaned) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Clean, map[string]string{"from": c.From, "into": c.Into, "weight": c.Weight, "screenings": c.Screenings})
}

type dried struct {
	moved
	From        string `arg:"" help:"Bin it is taken from."`
	Into        string `arg:"" help:"Bin the dried grain goes into."`
	WeightIn    string `required:"" help:"Weight that went into the dryer." placeholder:"WEIGHT"`
	WeightOut   string `required:"" help:"Weight that came out." placeholder:"WEIGHT"`
	MoistureIn  string `required:"" help:"Moisture going in." placeholder:"PERCENT"`
	MoistureOut string `required:"" help:"Moisture coming out." placeholder:"PERCENT"`
	TestWeight  string `help:"Test weight of the dried grain." placeholder:"WEIGHT"`
	Fuel        string `help:"Fuel: gal unless it says L or kWh." placeholder:"FUEL"`
	Power       string `help:"Power for the motors, in kWh." placeholder:"KWH"`
	Hours       string `help:"How long it ran." placeholder:"HOURS"`
}

func (dried) Help() string {
	return `A run that would have added water is refused, with its arithmetic. What of the dry matter does not come out again is dust and breakage, and stands as handling.

    tenth bin dry B3 B1 --weight-in 50000 --weight-out 47000 --moisture-in 20 --moisture-out 15 --fuel 90 --hours 4`
}

func (c dried) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Dry, map[string]string{
		"from": c.From, "into": c.Into, "weight-in": c.WeightIn, "weight-out": c.WeightOut,
		"moisture-in": c.MoistureIn, "moisture-out": c.MoistureOut, "test-weight": c.TestWeight,
		"fuel": c.Fuel, "power": c.Power, "hours": c.Hours,
	})
}

type aerated struct {
	moved
	Bin   string `arg:"" help:"Bin that was aired."`
	Hours string `arg:"" help:"How long the fans ran."`
}

func (c aerated) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Aerate, map[string]string{"from": c.Bin, "hours": c.Hours})
}

type heat struct {
	moved
	Bin      string   `arg:"" help:"Bin whose grain was measured."`
	Readings []string `arg:"" help:"Temperatures from the floor up, with F or C."`
}

func (heat) Help() string { return `    tenth bin temperatures B1 52F 54F 61F` }

func (c heat) Run(t *terminal.Terminal) error {
	return c.enter(t, bin.Temperatures, map[string]string{"from": c.Bin, "readings": strings.Join(c.Readings, " ")})
}

type undo struct {
	terminal.BookFlags
	terminal.WhoFlags
	Number int64  `arg:"" help:"Number of the movement, as on the card of the bin."`
	Reason string `required:"" help:"Why it is taken back." placeholder:"TEXT"`
}

func (undo) Help() string {
	return `The grain goes back by the same weights the other way, on today's business day; both movements stay in the book.

    tenth bin undo 17 --reason "it was B2"`
}

func (c undo) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadWrite, c.Who, func(p *terminal.Session) error {
		m, err := scalehouse.UndoMovement(p, p.Desk, c.Number, c.Reason)
		if err != nil {
			return err
		}
		return moved{}.say(p, m)
	})
}
