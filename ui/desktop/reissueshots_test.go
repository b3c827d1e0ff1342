package desktop

import (
	"fmt"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/shell"

	"fyne.io/fyne/v2"
)

// shootReissue draws a ticket on its way from void to reissued: the question, the
// void ticket afterward, the one in its place, and the end of its working.
func (s *scene) shootReissue(look string, l shell.Look) {
	find := func(line string) {
		s.Commands.Run("tickets.find")
		s.letters(line)
	}
	find("issued corn")
	number := s.tickets().Tickets.Load().Number
	must(s.t, scalehouse.Void(s.t.Context(), s.desk, number, "torn in the printer"))
	find(fmt.Sprint("ticket ", number))
	s.Commands.Run("tickets.reissue")
	s.shoot(look, "tickets-reissue", l)
	s.UI.FrontDialog().Dismiss()
	id, err := scalehouse.Reissue(s.t.Context(), s.desk, number, "torn in the printer")
	must(s.t, err)
	again, err := scalehouse.Issue(s.t.Context(), s.desk, id)
	must(s.t, err)
	find("corn")
	s.shoot(look, "tickets-reissued", l)
	find(fmt.Sprint("ticket ", number))
	s.shoot(look, "tickets-void-reissued", l)
	find(fmt.Sprint("ticket ", again))
	s.Commands.Run("tickets.working")
	s.press(fyne.KeyReturn, fyne.KeyReturn, fyne.KeyEnd)
	s.shoot(look, "tickets-grade", l)
	s.Commands.Run("tickets.working")
	find("issued")
}
