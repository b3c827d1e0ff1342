package lab

import (
	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
)

// benchCell prints the capacitance of a dial meter's test cell.
type benchCell struct {
	terminal.LanguageFlag
	Length string `help:"Length of the cell, in mm." default:"100" placeholder:"MM"`
	Rod    string `help:"Radius of the rod, in mm." default:"4" placeholder:"MM"`
	Can    string `help:"Radius of the can, in mm." default:"8" placeholder:"MM"`
	At     string `help:"Temperature of the water, with F or C." default:"20C" placeholder:"TEMPERATURE"`
	JSON   bool   `help:"Print for programs: every figure as text."`
}

func (benchCell) Help() string {
	return `C = 2 pi e0 er L / ln(b/a). Water stores about 80 times as much as an empty cell, and more the colder it is: that is why a dial follows moisture, the mass of grain and its temperature. It settles nothing; charts do that.

    tenth bench cell
    tenth bench cell --length 120 --rod 5 --can 12 --at 0C`
}

var cellRounding = quantity.To("0.01", quantity.HalfUp)

func (c benchCell) Run(t *terminal.Terminal) error {
	cell := meter.Capacitor{PerMetre: quantity.Int(1000, quantity.Plain)}
	for _, one := range []struct {
		name, text string
		into       *quantity.Amount
	}{{"Length", c.Length, &cell.Length}, {"Rod", c.Rod, &cell.Rod}, {"Can", c.Can, &cell.Can}} {
		a, err := quantity.Field{Name: one.name, Places: 3, Min: quantity.Of("0.001", quantity.Plain), Max: quantity.Int(10_000, quantity.Plain)}.Parse(one.text)
		if err != nil {
			return err
		}
		*one.into = a
	}
	at, err := temperatureIn("Temperature", c.At)
	if err != nil {
		return err
	}
	permittivity, err := meter.WaterPermittivity(at)
	if err != nil {
		return err
	}
	empty, err := cell.Picofarads(quantity.Int(1, quantity.Plain), cellRounding)
	if err != nil {
		return err
	}
	full, err := cell.Picofarads(permittivity, cellRounding)
	if err != nil {
		return err
	}
	permittivity = cellRounding.Apply(permittivity)
	if c.JSON {
		return t.PrintJSON(map[string]string{"empty_pF": empty.Fixed(2), "water_pF": full.Fixed(2), "water_permittivity": permittivity.Fixed(2)})
	}
	t.Say("Empty, the cell has %s pF.", empty.Fixed(2))
	t.Say("Full of water at %s it has %s pF, %s times as much.", at, full.Fixed(2), permittivity.Fixed(2))
	return nil
}
