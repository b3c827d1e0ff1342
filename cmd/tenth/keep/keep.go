// Package keep holds the commands on keeping grain in store: what moisture it comes
// to, how long it keeps, how it is cooled, dried and blended. They need no book.
package keep

import (
	"fmt"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/worksheet"
)

// Keep has the commands on grain in store, by published curves and tables.
type Keep struct {
	Equilibrium equilibrium `cmd:"" help:"The moisture grain comes to in air, or the air that keeps a moisture."`
	Days        days        `cmd:"" help:"How many days grain keeps, and what of them is used up."`
	Aerate      aerate      `cmd:"" help:"How long a fan takes to cool grain."`
	Dry         dry         `cmd:"" help:"What drying takes, with heat or natural air: water, energy, time, cost."`
	Blend       blendLots   `cmd:"" help:"What mix of lots meets a moisture and test weight."`
}

func (Keep) Help() string {
	return `Advice, never a promise: each answer names the curve or table it is from and what others say. What the house sees in its own bins goes before any of them.

    tenth keep equilibrium --commodity corn --temperature 50F --humidity 70
    tenth keep days --commodity corn --moisture 17 --stood 20@60F --temperature 40F
    tenth keep aerate --airflow 0.1
    tenth keep dry 56000 --commodity corn --from 20 --to 15 --fuel-price "1.80 $/gal"
    tenth keep blend --lot B1=30000,16.8,55 --lot B2=50000,13.2,57 --moisture 15 --test-weight 54`
}

// shown has the flags for printing a working.
type shown struct {
	terminal.LanguageFlag
	Width terminal.Width `help:"Width of the printed working, in letters." default:"76"`
	JSON  bool           `help:"Print for programs: every figure as text."`
}

func (f shown) sheet(t *terminal.Terminal, s *worksheet.Sheet, cautions ...string) error {
	if f.JSON {
		return t.PrintJSON(map[string]any{"working": s})
	}
	fmt.Fprint(t.Stdout, s.TextIn(int(f.Width), t.Printer))
	for _, caution := range cautions {
		t.Say("")
		t.Say("%s", t.Printer.Word(caution))
	}
	return nil
}
