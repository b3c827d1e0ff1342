package bins

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/paper"
	"tenthpoint/internal/report"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/charts"
	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the house drawn to scale over the list of its bins, with the card of the chosen one
// beside it.
type Screen struct {
	*listdetail.Screen
	Bins  *Bins
	house *charts.House
	Card  *listdetail.Paper
}

// cardFigures is the least width of the card beside the list.
const cardFigures = 44

// NewScreen makes the screen of a session.
func NewScreen(f *session.Session) shell.Screen {
	b := NewBins(f)
	s := &Screen{Bins: b, house: charts.NewHouse()}
	s.house.OnChoose = func(key string) { b.Choose(key); s.Refresh() }
	s.Card = &listdetail.Paper{Stop: "card", Pages: b.pages, Shown: b.HasChosen}
	s.Screen = listdetail.New(listdetail.Spec{
		Title: f.Say("Bins"), List: b, Small: true, Reload: b.Reload,
		Head:   listdetail.Head{Counted: b.Counted, Figures: 10},
		Detail: s.Card, Arrange: s.arrange,
		Acts: shell.ActsOf(f.Language, b, f.Say("Bins"), binActs),
		Hint: func() string {
			return f.Say("Down goes through the bins, Enter to the card, Ctrl+T moves grain, Ctrl+M measures a bin up.")
		},
	})
	return s
}

// arrange sets the drawing over the list.
func (s *Screen) arrange(head, list, detail fyne.CanvasObject) fyne.CanvasObject {
	return container.New(listdetail.Sheet{Figures: cardFigures}, container.New(overList{}, head, s.house, list), detail)
}

// Refresh draws the house as it now is.
func (s *Screen) Refresh() {
	s.Screen.Refresh()
	s.house.Set(s.Bins.Pictures())
}

// Show reads the bins again.
func (s *Screen) Show() {
	s.Screen.Show()
	s.house.Set(s.Bins.Pictures())
}

// pages are the card as it prints.
func (b *Bins) pages() *paper.Layout {
	pages := b.card.Layout(report.PageFor(b.session.Desk.Profile().Rules))
	return &pages
}

// binActs are the movements of grain, and the paper.
var binActs = []shell.ActRow[*Bins]{
	{ID: "bins.move", Title: "Move grain", Key: widgets.Ctrl(fyne.KeyT), When: (*Bins).HasChosen, Why: noBin, Do: move(bin.Transfer)},
	{ID: "bins.dry", Title: "Dryer run", Key: widgets.Ctrl(fyne.KeyR), When: (*Bins).HasChosen, Why: noBin, Do: move(bin.Dry)},
	{ID: "bins.measure", Title: "Measure up", Key: widgets.Ctrl(fyne.KeyM), When: (*Bins).HasChosen, Why: noBin, Do: move(bin.MeasureUp)},
	{ID: "bins.heat", Title: "Temperatures", Key: widgets.Ctrl(fyne.KeyH), When: (*Bins).HasChosen, Why: noBin, Do: move(bin.Temperatures)},
	{ID: "bins.print", Title: "Print card", Icon: apptheme.IconPrint, Key: widgets.Ctrl(fyne.KeyP), When: (*Bins).HasChosen, Why: noBin, Do: (*Bins).PrintCard},
	{ID: "bins.blend", Title: "Blend", Key: widgets.CtrlShift(fyne.KeyB), When: (*Bins).HasChosen, Why: noBin, Do: move(bin.Blend), MenuOnly: true, Break: true},
	{ID: "bins.turn", Title: "Turn over", Key: widgets.Ctrl(fyne.KeyU), When: (*Bins).HasChosen, Why: noBin, Do: move(bin.Turn), MenuOnly: true},
	{ID: "bins.clean", Title: "Clean", Key: widgets.CtrlShift(fyne.KeyL), When: (*Bins).HasChosen, Why: noBin, Do: move(bin.Clean), MenuOnly: true},
	{ID: "bins.aerate", Title: "Fans ran", Key: widgets.Ctrl(fyne.KeyI), When: (*Bins).HasChosen, Why: noBin, Do: move(bin.Aerate), MenuOnly: true},
	{ID: "bins.weighOver", Title: "Weigh-over", Key: widgets.CtrlShift(fyne.KeyW), When: (*Bins).HasChosen, Why: noBin, Do: move(bin.WeighOver), MenuOnly: true, Break: true},
	{ID: "bins.writeOff", Title: "Write off", Key: widgets.CtrlShift(fyne.KeyF), When: (*Bins).HasChosen, Why: noBin, Do: move(bin.WriteOff), MenuOnly: true},
	{ID: "bins.dryingLog", Title: "Drying log", Key: widgets.CtrlShift(fyne.KeyR), Do: printDryingLog, MenuOnly: true, Break: true},
	{ID: "bins.measureSheet", Title: "Measure-up sheet", Key: widgets.CtrlShift(fyne.KeyT), When: (*Bins).HasChosen, Why: noBin, Do: printMeasureSheet, MenuOnly: true},
	{ID: "bins.open", Title: "Open the books", Key: widgets.CtrlShift(fyne.KeyO), Do: opens((*openingActs).Open), MenuOnly: true, Break: true},
	{ID: "bins.opening", Title: "Print the opening", Key: widgets.CtrlShift(fyne.KeyG), When: isOpened, Why: noOpening, Do: opens((*openingActs).Print), MenuOnly: true},
	{ID: "bins.openBack", Title: "Take the opening back", Key: widgets.CtrlShift(fyne.KeyZ), When: isOpened, Why: noOpening, Do: opens((*openingActs).TakeBack), MenuOnly: true},
	{ID: "bins.undo", Title: "Take a movement back", Key: widgets.CtrlShift(fyne.KeyU), When: (*Bins).CanUndo, Why: "The bin has no movement of the last 30 days that can be taken back.", Do: (*Bins).Undo, MenuOnly: true},
}

const (
	noBin     = "No bin is chosen."
	noOpening = "The books were opened without balances."
)

func opens(act func(*openingActs)) func(*Bins) { return func(b *Bins) { act(b.opening) } }

func isOpened(b *Bins) bool { return b.opening.IsOpened() }

func move(kind bin.Kind) func(*Bins) { return func(b *Bins) { b.Move(kind) } }
