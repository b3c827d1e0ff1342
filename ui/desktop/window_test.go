package desktop

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// A new book opens on its set-up, and nothing else can be done before.
func TestNewBookOpensOnItsSetUp(t *testing.T) {
	s := newScene(t, shell.Look{}, 0)
	if got := Screens[s.Current].ID; got != "setup" {
		t.Fatalf("a new book opens on %s", got)
	}
	if s.Commands.Run("go.yard") != widgets.NotNow {
		t.Error("the yard of an elevator without a name was opened")
	}
	s.focusOrder("setup").Focus("business")
	s.write("Example Siding", "1 Example Road", "Nowhere", "555-0101", "", "", "", "", "", "")
	s.focusOrder("setup").Focus("grain.corn")
	s.write("main")
	s.focusOrder("setup").Focus("person")
	s.write("Ann Example")
	s.UI.Chord(widgets.Ctrl(fyne.KeyS))
	if got := Screens[s.Current].ID; got != "yard" || s.Status.State() != model.OK {
		t.Fatalf("after the set-up the screen is %s and the status line says %q", got, s.Status.Text())
	}
	s.write("", "corn", "T1", "52300", "15.1", "", "", "", "", "", "24120")
	if got := yardOf(s.Window).Form().Now.FirstMissing(); got != "grower" {
		t.Errorf("the first load lacks %q", got)
	}
}

// A new book offers the invented elevator instead, and only a new one.
func TestNewBookOffersTheDemo(t *testing.T) {
	s := newScene(t, shell.Look{}, 0)
	s.Commands.Run("setup.demo")
	if s.opened != "demo.book" {
		t.Errorf("opened %q", s.opened)
	}
	s = newScene(t, shell.Look{}, 40)
	s.Go("setup")
	if s.Commands.Run("setup.demo"); s.opened != "" || s.Status.Text() == "" {
		t.Errorf("a book in use opened %q and said %q", s.opened, s.Status.Text())
	}
}

func (s *scene) focusOrder(id string) *widgets.FocusOrder {
	for i, row := range Screens {
		if row.ID == id {
			return s.Screens[i].FocusOrder()
		}
	}
	s.t.Fatalf("there is no screen %s", id)
	return nil
}

// Enter stays on a field with invalid text, and the message is repeated in full on the status line.
// Escape restores the book's value.
func TestEnterStaysOnWhatIsWrong(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.letCornBeTyped()
	s.focusOrder("yard").Focus("tare")
	s.letters("54300")
	s.press(fyne.KeyEnter)
	if at := s.focusOrder("yard").Current(); at != "tare" {
		t.Errorf("Enter went on to %s", at)
	}
	if said := s.Status.Text(); !strings.Contains(said, "Net would be -2,000 lb") {
		t.Errorf("the status line says %q", said)
	}
	s.press(fyne.KeyEscape)
	if got := yardOf(s.Window).Form().Text("tare"); got != "24,120" {
		t.Errorf("Escape put back %q", got)
	}
	if at := Screens[s.Current].ID; at != "yard" {
		t.Errorf("Escape left for %s", at)
	}
}

// What the status line told of one truck is gone when another is open, and
// what it tells begins with a capital.
func TestStatusIsOfTheTruckInHand(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.letCornBeTyped()
	s.Say(model.Stop, "net would be -2,000 lb")
	if said := s.Status.Text(); !strings.Contains(said, "Net would be") {
		t.Errorf("the status line says %q", said)
	}
	s.press(fyne.KeyF2)
	if said := s.Status.Text(); s.Status.State() != model.Plain || strings.Contains(said, "-2,000") {
		t.Errorf("with another truck in hand the status line says %q", said)
	}
}

// A scale that is linked while the desk is open shows in the sidebar as it moves.
func TestRailFollowsAScaleLinkedLater(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	beat := shell.NewManual()
	w, err := shell.Open(s.Session, Screens, shell.Options{Window: s.fyne, Runner: beat, SetTheme: func(fyne.Theme) {}})
	must(t, err)
	if w.Sidebar.Live.Visible() {
		t.Fatal("a weight is shown where none can be read")
	}
	w.Session.Indicator = deck{}
	beat.Tick()
	if !w.Sidebar.Live.Visible() || w.Sidebar.Live.Value() != "52,300" {
		t.Errorf("the sidebar shows %q of a truck of 52,300 lb", w.Sidebar.Live.Value())
	}
}

// deck is a scale that shows one weight, at rest.
type deck struct{}

func (deck) Latest() (session.Display, error) {
	return session.Display{Weight: quantity.Int(52300, quantity.Lb)}, nil
}

func (d deck) Weigh(context.Context) (quantity.Amount, error) {
	display, err := d.Latest()
	return display.Weight, err
}

// A weight that is waited for is of the truck in sight: another truck's key or
// another screen ends the wait, and the status line says so.
func TestWaitForTheScaleEndsOutOfSight(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	beat := shell.NewManual()
	w, err := shell.Open(s.Session, Screens, shell.Options{Window: s.fyne, Runner: beat, SetTheme: func(fyne.Theme) {}})
	must(t, err)
	w.Session.Indicator = deck{}
	for _, leave := range []func(){func() { w.UI.Press(fyne.KeyF2) }, func() { w.Commands.Run("go.tickets") }} {
		beat.StepAll()
		w.UI.Press(fyne.KeyF3)
		id := yardOf(w).Form().ID()
		before, err := office.Load(t.Context(), s.desk, id)
		must(t, err)
		yardOf(w).FocusOrder().Focus("tare")
		w.UI.Press(fyne.KeyF10)
		leave()
		beat.StepAll()
		if got := w.Status.Text(); !strings.Contains(got, "no weight is taken. The truck was left") {
			t.Errorf("the status line says %q", got)
		}
		after, err := office.Load(t.Context(), s.desk, id)
		must(t, err)
		if len(after.Weighings) != len(before.Weighings) {
			t.Errorf("a weight was taken: %+v", after.Weighings)
		}
	}
}

// With letters too large for the window the form follows the keyboard.
func TestLargeLettersFollowTheKeyboard(t *testing.T) {
	s := newScene(t, shell.Look{Scale: apptheme.TextLargest}, 40)
	s.letCornBeTyped()
	for _, id := range s.focusOrder("yard").IDs() {
		row := yardOf(s.Window).Load.Rows[id]
		if row == nil {
			continue
		}
		s.focusOrder("yard").Focus(id)
		top, scroll := row.Position().Y, yardOf(s.Window).Fields.Scroll
		if top < scroll.Offset.Y || top+row.Size().Height > scroll.Offset.Y+scroll.Size().Height {
			t.Errorf("%s at %v is out of sight: the form stands at %v and shows %v", id, top, scroll.Offset.Y, scroll.Size().Height)
		}
	}
}

// A key opens another truck in the middle of a word; what was typed is
// still there when one comes back.
func TestKeysSwitchTrucks(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.press(fyne.KeyF3)
	second := yardOf(s.Window).Form().ID()
	s.focusOrder("yard").Focus("moisture")
	s.letters("16.4")
	s.press(fyne.KeyF2)
	if yardOf(s.Window).Form().ID() == second {
		t.Fatal("F2 did not take the first truck in hand")
	}
	if got := s.entryText("moisture"); got == "16.4" {
		t.Error("the first truck shows the second one's moisture")
	}
	s.press(fyne.KeyF3)
	if got := s.entryText("moisture"); yardOf(s.Window).Form().ID() != second || got != "16.4" {
		t.Errorf("back on the second truck the moisture is %q", got)
	}
	if s.press(fyne.KeyF9); yardOf(s.Window).Form().ID() != second {
		t.Error("the key of an empty place took something in hand")
	}
}

func (s *scene) entryText(id string) string {
	return yardOf(s.Window).Load.Rows[id].Entry.(*widgets.FieldEntry).Text
}

// While a dialog is open no key reaches the load behind it.
func TestQuestionsHoldTheKeysBack(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.letCornBeTyped()
	s.Commands.Run("load.refuse")
	if s.UI.FrontDialog() == nil {
		t.Fatal("nothing was asked")
	}
	in := yardOf(s.Window).Form().ID()
	s.press(fyne.KeyF12, fyne.KeyF2)
	if len(s.drawer.papers) != 0 || yardOf(s.Window).Form().ID() != in {
		t.Error("a key went past the question")
	}
	s.letters("sour")
	s.press(fyne.KeyEnter)
	if s.UI.FrontDialog() == nil {
		t.Fatal("Enter in the reason refused the load")
	}
	s.press(fyne.KeyEnter) // on the button
	if s.UI.FrontDialog() != nil {
		t.Fatal("the question is still there")
	}
	if !yardOf(s.Window).Form().IsBlank() {
		t.Errorf("after the refusal load %s is in hand: %s", yardOf(s.Window).Form().ID(), s.Status.Text())
	}
	if at := s.focusOrder("yard").Current(); at != "grower" {
		t.Errorf("after the refusal the keyboard is on %q", at)
	}
}

// What a question changes behind an open field is seen in it.
func TestFieldInHandShowsWhatAQuestionChanged(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Commands.Run("load.new")
	s.Commands.Run("load.grower")
	s.answer("777", "Example Hollow", "", "")
	if s.UI.FrontDialog() != nil {
		t.Fatal("the question is still there")
	}
	if got := yardOf(s.Window).Load.Rows["grower"].Entry.(*widgets.Autocomplete).Text; !strings.Contains(got, "Example Hollow") {
		t.Errorf("the grower field shows %q", got)
	}
	if got := yardOf(s.Window).Form().Text("grower"); got != "777" {
		t.Errorf("the load has grower %q", got)
	}
}

// Every act has a label, a key, and a line on the sheet of keys.
func TestEveryActHasItsKey(t *testing.T) {
	s := newScene(t, shell.Look{}, 0)
	for _, c := range s.Commands.List() {
		if len(c.Keys) == 0 {
			t.Errorf("%s (%s) has no key", c.ID, c.Title)
		}
		if c.Group == "" {
			t.Errorf("%s (%s) stands in no menu", c.ID, c.Title)
		}
		if c.EnabledWhen != nil && c.WhyNot == nil {
			t.Errorf("%s (%s) can refuse without a word", c.ID, c.Title)
		}
	}
}

// Light, dark and the size of the letters change the window that is open.
func TestLookChangesWhileOpen(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	s.Commands.Run("desk.dark")
	s.shoot("turned", "dark", shell.Look{Dark: true})
	small := yardOf(s.Window).Load.Sheet.Content.MinSize()
	s.Commands.Run("desk.size")
	if large := yardOf(s.Window).Load.Sheet.Content.MinSize(); large.Height <= small.Height || large.Width <= small.Width {
		t.Errorf("larger letters need %v, ordinary ones %v", large, small)
	}
	if s.Look.Scale != apptheme.TextLarge {
		t.Errorf("after one step the letters are %v", s.Look.Scale)
	}
}

// The invented elevator is marked as long as its book is open.
func TestInventedElevatorIsMarked(t *testing.T) {
	s := newScene(t, shell.Look{}, 40)
	for _, row := range Screens {
		s.Go(row.ID)
		if word := s.Sidebar.Example.Word(); !s.Sidebar.Example.Visible() || word != "example - not for trade" {
			t.Errorf("on %s the mark says %q", row.ID, word)
		}
	}
}
