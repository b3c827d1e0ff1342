package desktop

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/sheets"
	"tenthpoint/ui/shell"
)

// shootMoney draws the screens of the money, each in use.
func (s *scene) shootMoney(look string, l shell.Look) {
	shoot := func(name string) { s.shoot(look, name, l) }
	s.Go("settle")
	s.write("102")
	shoot("settle-grower")
	s.press(fyne.KeyDown, fyne.KeyDown)
	s.Commands.Run("settle.choose")
	shoot("settle-refused")
	screen := screenOf[*sheets.SettleScreen](s)
	screen.Form.Typed("price", "4.05")
	screen.Form.Typed("sale", "on")
	shoot("settle-stored")
	s.Commands.Run("settle.part")
	shoot("settle-part")
	s.UI.FrontDialog().Dismiss()
	s.Go("payments")
	shoot("payments-open")
	s.Commands.Run("payments.pay")
	shoot("payments-pay")
	s.UI.FrontDialog().Dismiss()
	s.Go("contracts")
	s.press(fyne.KeyDown, fyne.KeyDown)
	shoot("contracts-chosen")
	s.Commands.Run("contracts.add")
	shoot("contracts-add")
	s.UI.FrontDialog().Dismiss()
	s.Go("prices")
	s.Commands.Run("prices.bid")
	shoot("prices-bid")
	s.UI.FrontDialog().Dismiss()
	s.Go("due")
	shoot("due-list")
}
