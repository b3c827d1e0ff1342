package disputes

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the list of doubted tickets with the story of the one in
// hand.
type Screen struct {
	window   *shell.Window
	disputes *Disputes

	list   *widgets.Table
	says   *widgets.Remarks
	reader *widgets.Reader
	ring   *widgets.FocusOrder
}

func NewScreen(f *session.Session) shell.Screen {
	return &Screen{disputes: NewDisputes(f)}
}

// Acts are the steps of a dispute.
func (s *Screen) Acts() []shell.Act {
	group := session.Say("Disputes")
	d := s.disputes
	may := func(step string) func() bool { return func() bool { return d.May(step) } }
	return []shell.Act{
		{Command: widgets.Command{
			ID: "disputes.raise", Title: session.Say("Raise"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyE)}, Do: d.Raise,
		}},
		{Command: widgets.Command{
			ID: "disputes.sent", Title: session.Say("Sample sent"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyK)},
			EnabledWhen: may("sent"), WhyNot: d.WhyNot, Do: d.AskSent,
		}},
		{Command: widgets.Command{
			ID: "disputes.result", Title: session.Say("Result"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyO)},
			EnabledWhen: may("result"), WhyNot: d.WhyNot, Do: d.AskResult,
		}},
		{Command: widgets.Command{
			ID: "disputes.decide", Title: session.Say("Decide"), Group: group, Keys: []widgets.Key{widgets.Bare(fyne.KeyF12)},
			EnabledWhen: may("decide"), WhyNot: d.WhyNot, Do: d.AskDecide,
		}},
		{Command: widgets.Command{
			ID: "disputes.file", Title: session.Say("Print file"), Group: group, Icon: apptheme.IconPrint, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyP)},
			EnabledWhen: d.HasDispute, WhyNot: d.WhyNot, Do: d.PrintFile,
		}},
		{Command: widgets.Command{
			ID: "disputes.proof", Title: session.Say("Print proof"), Group: group, Icon: apptheme.IconPrint, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyI)},
			EnabledWhen: d.HasDispute, WhyNot: d.WhyNot, Do: d.PrintProof,
		}},
	}
}

// disputeButtons are the acts under the list.
var disputeButtons = []string{"disputes.raise", "disputes.sent", "disputes.result", "disputes.decide", "disputes.file", "disputes.proof"}

// Build makes the screen's widgets.
func (s *Screen) Build(w *shell.Window) fyne.CanvasObject {
	s.window = w
	by, stand := shell.WordsColumn(session.Say("Raised by"), 14), shell.WordsColumn(session.Say("Waits for"), 14)
	by.Grow, stand.State = true, true
	s.list = widgets.NewTable([]widgets.Column{
		shell.WordsColumn(session.Say("No"), 4), shell.FiguresColumn(session.Say("Ticket"), 6), by, shell.WordsColumn(session.Say("About"), 9),
		shell.Spare(shell.WordsColumn(session.Say("Raised"), 10), 1), shell.Spare(shell.WordsColumn(session.Say("Until"), 10), 2), stand,
	})
	s.list.Small = true
	s.list.OnChoose = func(_ int, key string) { s.disputes.Choose(key); s.show() }
	s.list.OnOpen = func(int, string) { s.ring.Focus("says") }
	s.says = widgets.NewRemarks()
	s.reader = widgets.NewReader(s.says)
	s.ring = widgets.NewFocusOrder(w.Stage)
	s.ring.Add("list", s.list)
	s.ring.Add("says", s.reader)
	buttons := shell.ButtonRow(w, s.ring, disputeButtons)
	body := container.New(shell.PictureAndSays{}, s.list, s.reader)
	return container.NewBorder(shell.NewLabel(session.Say("Disputes"), shell.Heading), buttons, nil, nil, body)
}

// Show puts the keyboard on the list.
func (s *Screen) Show() { s.ring.FocusFirst() }

// Hint says what carries the work.
func (s *Screen) Hint() string {
	return session.Say("Ctrl+E raises a dispute, F12 decides one. Nothing of a dispute is ever deleted. Escape goes back.")
}

// Ring is the order of the keyboard.
func (s *Screen) Ring() *widgets.FocusOrder { return s.ring }

// Refresh shows the facts as they now are.
func (s *Screen) Refresh() {
	s.disputes.Refresh()
	s.list.Empty = s.disputes.Empty()
	s.list.SetRows(s.disputes.Rows())
	s.list.SetChosen(s.disputes.Chosen())
	s.show()
}

func (s *Screen) show() {
	s.says.Set(s.disputes.Sayings())
	s.reader.Refresh()
	s.window.Commands.Refresh()
}
