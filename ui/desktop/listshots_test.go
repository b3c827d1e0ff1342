package desktop

import (
	"tenthpoint/ui/help"
	"tenthpoint/ui/shell"

	"fyne.io/fyne/v2"
)

// shootLists takes pictures of the lists: tickets, growers, rates, equipment, handbook, each in
// use.
func (s *scene) shootLists(look string, l shell.Look) {
	shoot := func(name string) { s.shoot(look, name, l) }
	ask := func(command, name string) {
		s.Commands.Run(command)
		shoot(name)
		if box := s.UI.FrontDialog(); box != nil {
			box.Dismiss()
		}
	}
	s.Commands.Run("tickets.find")
	s.letters("corrected")
	s.press(fyne.KeyDown)
	s.Commands.Run("tickets.difference")
	shoot("tickets-difference")
	s.Commands.Run("tickets.working")
	shoot("tickets-working")
	s.Commands.Run("tickets.find")
	s.letters("issued")
	ask("tickets.void", "tickets-void")
	s.shootReissue(look, l)
	s.letters(" zebra")
	shoot("tickets-none")

	s.Go("growers")
	s.letters("113")
	shoot("growers-one")
	ask("growers.shares", "growers-shares")
	ask("growers.truck", "growers-truck")

	s.Go("rates")
	s.press(fyne.KeyDown, fyne.KeyDown)
	s.Commands.Run("rates.try")
	shoot("rates-try")
	s.Commands.Run("rates.compare")
	shoot("rates-compare")
	ask("rates.load", "rates-load")
	s.Commands.Run("rates.problems")
	shoot("rates-problems")

	s.Go("gear")
	ask("gear.scale", "gear-scale")
	ask("gear.person", "gear-person")

	s.Go("handbook")
	s.letters("shared")
	shoot("handbook-search")
	s.Screens[indexOf("handbook")].(*help.HandbookScreen).Help("cautions")
	shoot("handbook-cautions")
}

// shootEmpty draws the lists of a book in which nothing has been written: each
// says what to do.
func (s *scene) shootEmpty(look string, l shell.Look) {
	for _, id := range []string{"tickets", "growers", "rates", "gear"} {
		s.Go(id)
		s.shoot(look, id+"-empty", l)
	}
}
