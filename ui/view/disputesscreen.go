package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// disputesScreen is the list of doubted tickets with the story of the one in
// hand.
type disputesScreen struct {
	window   *Window
	disputes *present.Disputes

	list   *kit.Table
	says   *kit.Remarks
	reader *kit.Reader
	ring   *kit.Ring
}

func newDisputesScreen(f *present.Frame) Screen {
	return &disputesScreen{disputes: present.NewDisputes(f)}
}

// Acts are the steps of a dispute.
func (s *disputesScreen) Acts() []Act {
	group := present.Say("Disputes")
	d := s.disputes
	may := func(step string) func() bool { return func() bool { return d.May(step) } }
	return []Act{
		{Command: kit.Command{
			ID: "disputes.raise", Title: present.Say("Raise"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyE)}, Do: d.Raise,
		}},
		{Command: kit.Command{
			ID: "disputes.sent", Title: present.Say("Sample sent"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyK)},
			EnabledWhen: may("sent"), WhyNot: d.WhyNot, Do: d.AskSent,
		}},
		{Command: kit.Command{
			ID: "disputes.result", Title: present.Say("Result"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyO)},
			EnabledWhen: may("result"), WhyNot: d.WhyNot, Do: d.AskResult,
		}},
		{Command: kit.Command{
			ID: "disputes.decide", Title: present.Say("Decide"), Group: group, Keys: []kit.Key{kit.Bare(fyne.KeyF12)},
			EnabledWhen: may("decide"), WhyNot: d.WhyNot, Do: d.AskDecide,
		}},
		{Command: kit.Command{
			ID: "disputes.file", Title: present.Say("Print file"), Group: group, Icon: kit.IconPrint, Keys: []kit.Key{kit.Ctrl(fyne.KeyP)},
			EnabledWhen: d.HasDispute, WhyNot: d.WhyNot, Do: d.PrintFile,
		}},
		{Command: kit.Command{
			ID: "disputes.proof", Title: present.Say("Print proof"), Group: group, Icon: kit.IconPrint, Keys: []kit.Key{kit.Ctrl(fyne.KeyI)},
			EnabledWhen: d.HasDispute, WhyNot: d.WhyNot, Do: d.PrintProof,
		}},
	}
}

// disputeButtons are the acts under the list.
var disputeButtons = []string{"disputes.raise", "disputes.sent", "disputes.result", "disputes.decide", "disputes.file", "disputes.proof"}

// Build makes the screen's widgets.
func (s *disputesScreen) Build(w *Window) fyne.CanvasObject {
	s.window = w
	by, stand := wordsColumn(present.Say("Raised by"), 14), wordsColumn(present.Say("Waits for"), 14)
	by.Grow, stand.State = true, true
	s.list = kit.NewTable([]kit.Column{
		wordsColumn(present.Say("No"), 4), figuresColumn(present.Say("Ticket"), 6), by, wordsColumn(present.Say("About"), 9),
		spare(wordsColumn(present.Say("Raised"), 10), 1), spare(wordsColumn(present.Say("Until"), 10), 2), stand,
	})
	s.list.Small = true
	s.list.OnChoose = func(_ int, key string) { s.disputes.Choose(key); s.show() }
	s.list.OnOpen = func(int, string) { s.ring.Focus("says") }
	s.says = kit.NewRemarks()
	s.reader = kit.NewReader(s.says)
	s.ring = kit.NewRing(w.stage)
	s.ring.Add("list", s.list)
	s.ring.Add("says", s.reader)
	buttons := buttonRow(w, s.ring, disputeButtons)
	body := container.New(pictureAndSays{}, s.list, s.reader)
	return container.NewBorder(newLabel(present.Say("Disputes"), heading), buttons, nil, nil, body)
}

// Show puts the keyboard on the list.
func (s *disputesScreen) Show() { s.ring.FocusFirst() }

// Hint says what carries the work.
func (s *disputesScreen) Hint() string {
	return present.Say("Ctrl+E raises a dispute, F12 decides one. Nothing of a dispute is ever deleted. Escape goes back.")
}

// Ring is the order of the keyboard.
func (s *disputesScreen) Ring() *kit.Ring { return s.ring }

// Refresh shows the facts as they now are.
func (s *disputesScreen) Refresh() {
	s.disputes.Refresh()
	s.list.Empty = s.disputes.Empty()
	s.list.SetRows(s.disputes.Rows())
	s.list.SetChosen(s.disputes.Chosen())
	s.show()
}

func (s *disputesScreen) show() {
	s.says.Set(s.disputes.Sayings())
	s.reader.Refresh()
	s.window.commands.Refresh()
}
